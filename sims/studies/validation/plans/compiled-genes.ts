import { compile } from '../../../../src/engine/compile.ts';
import { at } from '../entries.ts';
import { documentOf, read } from './base.ts';

/** Recombination that the engine itself gives two genes so far apart (cM). */
export function compiledRecombination(cM: number): number {
  const genes = ['r', 's'].map((id, i) => ({ id, name: id, group: 'one', position: i * cM }));
  return at(compile(read(documentOf('genes', { generations: [{}], rest: { genes } }))).genes.recombination, 1);
}
