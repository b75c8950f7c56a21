import type { PairFigures } from '../build.ts';
import { within } from '../kinds/all.ts';

/** Every ordered pair that has a figure of its own. */
export const pairs: readonly PairFigures[] = [...within];
