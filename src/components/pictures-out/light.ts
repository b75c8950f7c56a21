import tokens from '../../styles/tokens.css?raw';

/** The two sides of `light-dark(a, b)`: commas inside further brackets do not part them. */
function lightSide(inside: string): string {
  const deep = (text: string): number => [...text.matchAll(/[()]/g)].reduce((depth, [sign]) => depth + (sign === '(' ? 1 : -1), 0);
  const comma = [...inside.matchAll(/,/g)].find(({ index }) => deep(inside.slice(0, index)) === 0);
  return inside.slice(0, comma?.index).trim();
}

/**
 * Colours, sizes and strokes of the light page on white, on a wide screen: by name, as custom properties. Read from the page's own tokens,
 * for a browser in the dark has only the dark ones at hand.
 */
export const LIGHT: ReadonlyMap<string, string> = new Map([
  ...[...(/:root \{([^}]*)\}/.exec(tokens)?.[1] ?? '').matchAll(/(--[\w-]+):\s*([^;]+);/g)].map(([, name = '', value = '']): [string, string] => {
    const both = /^light-dark\((.*)\)$/s.exec(value);
    return [name, both ? lightSide(both[1] ?? '') : value];
  }),
  ['--paper', '#fff'],
  ['--raise', '#fff'],
  ['--move', '0ms'],
]);
