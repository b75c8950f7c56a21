import type { PairFigures } from '../build.ts';
import { within } from '../kinds/all.ts';
import { pomePairs } from './pome.ts';
import { stonePairs } from './stone.ts';

/** Every ordered pair that has a figure of its own. */
export const pairs: readonly PairFigures[] = [...within, ...pomePairs, ...stonePairs];
