import type { Cross, Kind, Programme, Tree } from './programme.ts';

/*
 * What the schema fills in where the finer points of inheritance are left out, for code that builds entries itself.
 */

export const PLAIN_KIND = { ploidy: 2, inheritance: 'disomic', pollenRejection: 'none', maleShare: 0 } as const satisfies Partial<Kind>;
export const PLAIN_GENE = { doubleReduction: 0, passes: 'both' } as const satisfies Partial<Programme['genes'][number]>;
export const PLAIN_TREE = { sex: 'both', testCrosses: {} } as const satisfies Partial<Tree>;
export const PLAIN_CROSS = { motherClones: 0 } as const satisfies Partial<Cross>;
