import type { Needs } from '../../src/genetics/family.ts';
import { trayOf, type Tray } from '../../src/genetics/tray/tray.ts';
import { programmeSchema, type Programme, type ShownTrait, type Tree } from '../../src/model/programme.ts';
import { document, generation, plans, type Document, type ShownDocument } from '../engine/programmes.ts';
import { published } from '../reference/published.ts';

const DUMMY = plans([generation('g', 1)]);
/** Not through the check of whole programmes: it refuses plans, and there are none here worth the name. */
export const programmeOf = (changes: Partial<Document>): Programme => programmeSchema.parse(document({ plans: DUMMY, ...changes }));
export const treeOf = ({ trees }: Programme, id: string): Tree => trees.find((one) => one.id === id)!;
const shownOf = (programme: Programme, id = 'red'): ShownTrait => programme.traits.find((trait) => trait.type === 'shown' && trait.id === id) as ShownTrait;
export const trayIn = (programme: Programme, mother = 'a', father = 'b'): Tray =>
  trayOf(programme, shownOf(programme), treeOf(programme, mother), treeOf(programme, father));

export const need = (...of: [gene: string, copies: 1 | 2][]): Needs => ({ needs: 'all', of: of.map(([gene, copies]) => ({ gene, copies })) });
export const any = (...genes: string[]): Needs => ({ needs: 'any', of: genes.map((gene) => ({ gene, copies: 1 })) });
export const rules = (...needs: Needs[]): ShownDocument['rules'] => needs.map((one, i) => ({ name: `rule ${String(i)}`, weight: 1, needs: one }));
export const genesNamed = (ids: readonly string[]): Document['genes'] => ids.map((id) => ({ id, name: id }));
export const expected = (id: string): number[] => [...published.find((entry) => entry.id === id)!.expected];
