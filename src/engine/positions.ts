/** Positions of the entries of each section, by id. */
export type Ids = Readonly<
  Record<'genes' | 'shown' | 'measured' | 'kinds' | 'trees' | 'pools' | 'crosses' | 'stocks' | 'gardens' | 'facts', ReadonlyMap<string, number>>
>;

/** Positions of ids; −1 for “none”. The check has refused unknown ids before anything is compiled. */
export const at = (map: ReadonlyMap<string, number>, id: string | undefined) => (id === undefined ? -1 : (map.get(id) ?? -1));
