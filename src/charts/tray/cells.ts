/** Twenty seedlings in rows, each drawn for what it would be. */
export interface Cell {
  /** Middle of the plant's foot, px. */
  readonly x: number;
  readonly y: number;
  readonly kind: string;
  readonly wanted: boolean;
  /** Lean of the plant in degrees, so that a row looks grown and not printed. */
  readonly lean: number;
}

export interface CellsLayout {
  readonly width: number;
  readonly height: number;
  /** Width of one cell, px: everything about a plant is in proportion to it. */
  readonly cell: number;
  readonly pots: boolean;
  readonly cells: readonly Cell[];
  /** One under each row. */
  readonly shelves: readonly { readonly x1: number; readonly x2: number; readonly y: number }[];
}

export interface CellGroup {
  readonly kind: string;
  readonly count: number;
  readonly wanted: boolean;
}

export interface CellsOptions {
  readonly width: number;
  readonly columns: number;
  /** Widest a cell may get, px. */
  readonly most: number;
  readonly pots: boolean;
}

/** Height of a row, of a pot's rim above its shelf and of the room above, in cells. */
const ROW = 1.36;
const POT = 0.42;
const ROW_BARE = 1.02;
const FOOT_BARE = 0.06;
const LEANS = [-5, 3, 7, -2, -8, 4, 1, -4, 6, -1];

/** Five in a row on a phone, where ten would be too narrow to tell apart; a strip without pots takes twice as many. */
export const columnsFor = (width: number, strip = false): number => (width < 460 ? 5 : 10) * (strip ? 2 : 1);

/** Lays seedlings out in rows, kind after kind. */
export function cellsLayout(groups: readonly CellGroup[], { width, columns, most, pots }: CellsOptions): CellsLayout {
  const cell = Math.min(most, width / columns);
  const all = groups.flatMap(({ kind, count, wanted }) => Array.from({ length: count }, () => ({ kind, wanted })));
  const rows = Math.ceil(all.length / columns);
  const row = cell * (pots ? ROW : ROW_BARE);
  const foot = (n: number) => (n + 1) * row - cell * (pots ? POT : FOOT_BARE);
  const end = cell * columns;
  return {
    width: end,
    height: Math.ceil(rows * row + 1),
    cell,
    pots,
    cells: all.map(({ kind, wanted }, i) => ({
      kind,
      wanted,
      x: ((i % columns) + 0.5) * cell,
      y: foot(Math.floor(i / columns)),
      lean: LEANS[(i * 7) % LEANS.length] ?? 0,
    })),
    shelves: Array.from({ length: rows }, (_, n) => ({ x1: 0, x2: end, y: (n + 1) * row })),
  };
}
