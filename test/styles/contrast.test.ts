import { describe, expect, it } from 'vitest';
import { files, read } from '../repo/files.ts';
import { contrast, hex, mixed } from './colours.ts';
import { declared, THEMES, token } from './tokens.ts';

const SURFACES = ['paper', 'raise', 'paper2'] as const;
const SOLID = ['a', 'b', 'c', 'd'] as const;
const RINGS = ['e', 'f', 'g', 'h'] as const;
const [TEXT, MARK] = [4.5, 3];

/** Every pair that meets on the page: what, on what, and the contrast that WCAG 2.2 asks of it (1.4.3 texts; 1.4.11 marks, borders and the focus). */
const PAIRS: readonly (readonly [string, string, number])[] = [
  ...['ink', 'ink2', 'warn'].flatMap((text) => SURFACES.map((surface) => [text, surface, TEXT] as const)),
  // Filled buttons, at rest and pointed at.
  ['paper', 'ink', TEXT],
  ['paper', 'ink2', TEXT],
  ...SOLID.flatMap((plan) => [['on-plan', `plan-${plan}`, TEXT] as const, ['on-fill', `fill-${plan}`, TEXT] as const]),
  ...RINGS.map((plan) => ['ink', `fill-${plan}`, TEXT] as const),
  ...[...SOLID, ...RINGS].flatMap((plan) => SURFACES.map((surface) => [`plan-${plan}`, surface, MARK] as const)),
  ...['edge', 'focus'].flatMap((mark) => SURFACES.map((surface) => [mark, surface, MARK] as const)),
];

describe.each(THEMES)('contrast of the %s theme', (theme) => {
  it.each(PAIRS)('%s on %s is at least %s', (over, under, least) => {
    expect(contrast(token(over, theme), token(under, theme))).toBeGreaterThanOrEqual(least);
  });
});

describe('the styles', () => {
  const styles = files.filter((file) => /^src\/(components|styles)\/.*\.(ts|css)$/.test(file) && file !== 'src/styles/tokens.css');
  const used = (property: RegExp) =>
    styles.flatMap((file) => [...read(file).matchAll(property)].map(([, name = '']) => ({ name, file }))).filter(({ name }) => name !== '');

  it('write words in no colour that is not computed here', () => {
    const texts = used(/(?<![\w-])color:\s*var\(--([\w-]+)/g);
    expect(texts.length).toBeGreaterThan(80);
    // A mark's letter and a fill's words are set per plan, from on-plan, on-fill and ink.
    const known = new Set(['ink', 'ink2', 'warn', 'paper', 'mark-ink', 'fill-ink', 'on-plan', 'on-fill']);
    expect(texts.filter(({ name }) => !known.has(name))).toEqual([]);
  });

  it('put words on no ground that is not computed here', () => {
    const grounds = used(/(?<![\w-])background(?:-color)?:\s*var\(--([\w-]+)/g);
    expect(grounds.length).toBeGreaterThan(20);
    // The track of a progress line, in the colour of rules, carries no words.
    const known = new Set<string>([...SURFACES, 'ink', 'ink2', 'mark-ground', 'rule']);
    expect(grounds.filter(({ name }) => !known.has(name))).toEqual([]);
  });

  it('name no token that does not exist', () => {
    const own = new Set(
      styles.flatMap((file) => [...read(file).matchAll(/(?<![\w-])--([\w-]+)['"]?\s*[:,]|setProperty\('--([\w-]+)/g)].map(([, a, b]) => a ?? b ?? '')),
    );
    expect(used(/var\(--([\w-]+)/g).filter(({ name }) => !declared.has(name) && !own.has(name))).toEqual([]);
  });
});

describe('the reckoning of contrast', () => {
  // Black on white is 21 by the definition (WCAG 2.2); #767676 is widely given as the lightest grey that passes on white, at 4.54, and #777777 fails at 4.48 (from memory).
  it.each([
    ['#000', '#fff', 21],
    ['#767676', '#ffffff', 4.54],
    ['#777777', '#ffffff', 4.48],
  ])('%s on %s is %s', (one, other, wanted) => expect(contrast(hex(one), hex(other))).toBeCloseTo(wanted, 2));

  it('mixes as the browsers do', () => {
    // Half white, half black in OKLab is lightness 0.5: #636363 (CSS Color 4, from memory).
    const grey = mixed(hex('#fff'), 0.5, hex('#000')).map((c) => Math.round(c * 255));
    expect(grey).toEqual([99, 99, 99]);
    expect(mixed(hex('#75bffc'), 1, hex('#1b1f1a')).map((c) => Math.round(c * 255))).toEqual([0x75, 0xbf, 0xfc]);
  });
});
