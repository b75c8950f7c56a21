import type { Programme } from '../../src/model/programme.ts';
import { measured, read } from '../engine/programmes.ts';
import { bare } from './orchard.ts';

const NAMES: Readonly<Record<string, readonly [string, string]>> = {
  hedgerow: ['old-hedgerow', 'Old Hedgerow'],
  bell: ['saffron-bell', 'Saffron Bell'],
  mill: ['mill-quince', 'Mill Quince'],
};

/** The invented orchard with the names that breeders would write, a trait that is seen and one that is measured. */
export function orchardNamed(): Programme {
  const programme = read(bare({ traits: [...bare().traits, measured({ id: 'brix', name: 'Brix', unit: '°Bx' })] }));
  return {
    ...programme,
    trees: programme.trees.map((tree) => ({ ...tree, id: NAMES[tree.id]?.[0] ?? tree.id, name: NAMES[tree.id]?.[1] ?? tree.name })),
    traits: programme.traits.map((trait) => (trait.type === 'shown' ? { ...trait, name: 'Red flesh' } : trait)),
  };
}
