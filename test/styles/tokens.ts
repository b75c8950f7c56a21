import { read } from '../repo/files.ts';
import { hex, mixed, type Rgb } from './colours.ts';

export type Theme = 'light' | 'dark';
export const THEMES = ['light', 'dark'] as const;

/** The declarations of the first block, which hold in both themes; what narrow screens, forced colours and paper change comes after. */
const [block = ''] = read('src/styles/tokens.css').split(/^}/m);
export const declared = new Map([...block.matchAll(/^\s*--([\w-]+):\s*([^;]+);/gm)].map(([, name = '', value = '']) => [name, value.trim()]));

/** Parts of a list in brackets, split at its own commas only. */
function parts(list: string): string[] {
  const found: string[] = [''];
  let depth = 0;
  for (const letter of list) {
    if (letter === '(') depth += 1;
    if (letter === ')') depth -= 1;
    if (letter === ',' && depth === 0) found.push('');
    else found.push((found.pop() ?? '') + letter);
  }
  return found.map((part) => part.trim());
}

function colourOf(value: string, theme: Theme): Rgb {
  const [, call = '', inside = ''] = /^([\w-]+)\((.*)\)$/.exec(value) ?? [];
  if (call === 'var') return token(inside.replace(/^--/, ''), theme);
  if (call === 'light-dark') return colourOf(parts(inside)[theme === 'light' ? 0 : 1] ?? '', theme);
  if (call === 'color-mix') {
    const [space, one = '', other = ''] = parts(inside);
    const [, colour = '', percent] = /^(.*) (\d+)%$/.exec(one) ?? [];
    if (space !== 'in oklab' || percent === undefined) throw new RangeError(`A mix not known here: ${value}`);
    return mixed(colourOf(colour, theme), Number(percent) / 100, colourOf(other, theme));
  }
  return hex(value);
}

/** The colour of a token in a theme. */
export function token(name: string, theme: Theme): Rgb {
  const value = declared.get(name);
  if (value === undefined) throw new RangeError(`No token --${name}`);
  return colourOf(value, theme);
}
