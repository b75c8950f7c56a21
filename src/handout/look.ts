/*
 * Colours and fonts of the sheet and its picture. Both leave the page as files, where its style sheets do not reach, so the light values of
 * `src/styles/tokens.css` are said again here; a test holds the two together.
 */
export const LOOK = {
  paper: '#fff',
  ink: '#23281f',
  ink2: '#555a4b',
  edge: '#84856f',
  rule: '#cfc9b4',
  hair: '#e2ddcb',
  onPlan: '#fdfbf4',
} as const;

export const PLAN_COLOURS: Readonly<Record<string, string>> = {
  A: '#234ea1',
  B: '#2f4710',
  C: '#926511',
  D: '#8f1c58',
  E: '#7e6ccb',
  F: '#1b7a95',
  G: '#b77261',
  H: '#b44066',
};
/** White on these is too faint to read: their letters stand in ink on paper. */
const RINGS = new Set(['E', 'F', 'G', 'H']);

export const colourOf = (mark: string): string => PLAN_COLOURS[mark] ?? LOOK.ink;
export const isRing = (mark: string): boolean => RINGS.has(mark);

export const SERIF_NAME = 'Brygada 1918 Variable';
export const SANS_NAME = 'Source Sans 3 Variable';
export const SERIF = `'${SERIF_NAME}', Georgia, 'Times New Roman', serif`;
export const SANS = `'${SANS_NAME}', 'Segoe UI', 'Helvetica Neue', Arial, sans-serif`;

/** The two fonts as data addresses. */
export interface Fonts {
  readonly serif: string;
  readonly sans: string;
}

/** Rules that bring the fonts along in a file. */
export function fontFaces({ serif, sans }: Fonts): string {
  const face = (name: string, weights: string, address: string) =>
    `@font-face{font-family:'${name}';font-style:normal;font-weight:${weights};src:url(${address}) format('woff2');}`;
  return face(SERIF_NAME, '400 700', serif) + face(SANS_NAME, '200 900', sans);
}
