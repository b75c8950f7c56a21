import serifItalic from '@fontsource-variable/brygada-1918/files/brygada-1918-latin-wght-italic.woff2?inline';
import serif from '@fontsource-variable/brygada-1918/files/brygada-1918-latin-wght-normal.woff2?inline';
import sansItalic from '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-italic.woff2?inline';
import sans from '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2?inline';
import { SANS_NAME, SERIF_NAME } from '../../handout/look.ts';

/** The letters that are within these fonts, as their publisher says (the `unicode-range` of their style sheet). */
export const LATIN =
  'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD';
/** Letters with the accents of further Latin alphabets. */
const FURTHER = 'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+1E00-1E9F,U+1EF2-1EFF,U+2113';
const isFurther = /[\u0100-\u0130\u0132-\u0151\u0154-\u02ba\u1e00-\u1e9f\u1ef2-\u1eff\u2113]/;

const face = (name: string, weights: string, style: string, letters: string, address: string): string =>
  `@font-face{font-family:'${name}';font-style:${style};font-weight:${weights};src:url(${address}) format('woff2');unicode-range:${letters};}`;

const FAMILIES = [
  { name: SERIF_NAME, weights: '400 700', normal: serif, italic: serifItalic },
  { name: SANS_NAME, weights: '200 900', normal: sans, italic: sansItalic },
] as const;

/** Rules that bring along the fonts that a drawing uses, and no other. */
export async function facesFor(drawing: Element): Promise<string> {
  const texts = [...drawing.querySelectorAll('[font-family]')];
  const all = drawing.textContent;
  const rules = FAMILIES.flatMap(({ name, weights, normal, italic }) => {
    const own = texts.filter((text) => (text.getAttribute('font-family') ?? '').includes(name));
    if (own.length === 0) return [];
    const leans = own.some((text) => text.getAttribute('font-style') === 'italic');
    return [face(name, weights, 'normal', LATIN, normal), ...(leans ? [face(name, weights, 'italic', LATIN, italic)] : [])];
  });
  if (!isFurther.test(all)) return rules.join('');
  const { serifFurther, sansFurther } = await import('./further-faces.ts');
  return [...rules, face(SERIF_NAME, '400 700', 'normal', FURTHER, serifFurther), face(SANS_NAME, '200 900', 'normal', FURTHER, sansFurther)].join('');
}
