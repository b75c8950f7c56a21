import { readSAlleles } from '../../model/incompatibility/reading.ts';
import type { Path } from '../../model/walk.ts';
import { sText } from '../../text/inheritance.ts';

/** How a text is read that has a way of its own to be written: what is wrong with it, and what was understood. */
export interface Written {
  readonly problem: string;
  readonly understood: string;
}

/** Reads S alleles of a tree, and the name of one where one is described; undefined for other texts. */
export function writtenAt(path: Path, text: string): Written | undefined {
  const key = path.at(-1);
  const isTree = path[0] === 'trees' && key === 's';
  const isOne = path.includes('alleles') && (key === 'name' || key === 'like');
  if ((!isTree && !isOne) || text.trim() === '') return undefined;
  const reading = readSAlleles(text);
  if (!reading.ok) return { problem: sText.unread(reading.message), understood: '' };
  if (isOne) return { problem: reading.alleles.length === 1 && reading.alleles[0] !== null ? '' : sText.oneName, understood: '' };
  return { problem: '', understood: sText.readAs(reading.alleles) };
}
