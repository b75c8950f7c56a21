import { binomialInverse } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { FATE, type Fate } from './cohorts.ts';
import { STAGE, stageKey } from './keys.ts';
import type { Batch, Orchard } from './orchard.ts';

/** Seedlings of one batch that have come up, of one kind and fate. */
export interface Seedlings {
  readonly batch: Batch;
  readonly kind: number;
  readonly fate: Fate;
  readonly n: number;
}

/**
 * What the seedlings of a batch will come to. Copies of the seed parent are of her kind; of the others some are no use and gone as
 * they come up (a parent with an odd number of sets), and some will die at an age whatever they stand on. Nobody can tell yet.
 * @param position of the batch among those of its generation that came up this spring
 */
export function fatesOf(orchard: Orchard, batch: Batch, position: number, n: number): Seedlings[] {
  const { compiled, facts, luck, year } = orchard;
  const { usableAt, clonesAt, necrosisShareAt, gives } = compiled.crosses[batch.cross]!;
  if (usableAt < 0 && clonesAt < 0 && necrosisShareAt < 0) return [{ batch, kind: gives, fate: FATE.ordinary, n }];
  luck.key(mix2(stageKey(batch.generation, STAGE.fates, year), position));
  const share = (at: number, otherwise: number) => (at >= 0 ? facts.values[at]! : otherwise);
  const clones = binomialInverse(luck.uniform(), n, share(clonesAt, 0));
  const usable = binomialInverse(luck.uniform(), n - clones, share(usableAt, 1));
  const doomed = binomialInverse(luck.uniform(), usable, share(necrosisShareAt, 0));
  const family = (kind: number, fate: Fate, count: number): Seedlings[] => (count > 0 ? [{ batch, kind, fate, n: count }] : []);
  return [...family(gives, FATE.ordinary, usable - doomed), ...family(gives, FATE.doomed, doomed), ...family(orchard.kindOf(batch.mother), FATE.clone, clones)];
}
