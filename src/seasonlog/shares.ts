import type { Path } from '../model/problem.ts';
import type { Programme } from '../model/programme.ts';
import type { Estimate } from '../model/estimate.ts';
import type { Lot } from '../statistics/between-springs.ts';
import type { LeftOut, LeftOutReason, PlacedBatch } from './batches.ts';
import { fullest, lossesOf } from './counts.ts';

/** Estimates of a cross entry that plain counts speak to. */
export type ShareName = 'set' | 'germination' | 'weakShare';

/** One count that speaks to one estimate. */
export interface ShareFact {
  readonly what: ShareName;
  readonly path: Path;
  readonly estimate: Estimate;
  readonly cross: number;
  /** Name of the way of raising seed, where germination is its own. */
  readonly route: string | undefined;
  /** Counts of one spring and pair share its luck. */
  readonly spring: string;
  readonly year: number;
  readonly batch: string;
  readonly lot: Lot;
}

export interface Facts<T> {
  readonly facts: T[];
  readonly leftOut: LeftOut[];
}

/** Finds the counts that speak to fruit set, germination and the share of weak seedlings, as lots of one spring and pair. */
export function shareFacts(programme: Programme, placed: readonly PlacedBatch[]): Facts<ShareFact> {
  const facts: ShareFact[] = [];
  const leftOut: LeftOut[] = [];
  for (const one of placed) {
    const { batch, entry } = one;
    const cross = programme.crosses.indexOf(entry);
    const losses = lossesOf(programme, one);
    const out = (why: LeftOutReason, about: string): void => void leftOut.push({ batch: batch.id, name: batch.name, why, about });
    const add = (fact: Omit<ShareFact, 'cross' | 'batch'>): void => {
      if (fact.lot.of <= 0) return;
      if (fact.lot.hits > fact.lot.of) out('doesNotAddUp', `${fact.what}: ${String(fact.lot.hits)} of ${String(fact.lot.of)}`);
      else facts.push({ ...fact, cross, batch: batch.id });
    };
    if (losses.flowers > 0) out('eventLoss', `${String(losses.flowers)} flowers`);
    if (losses.seeds > 0) out('eventLoss', `${String(losses.seeds)} seeds`);

    const lot = setLot(one, losses.flowers);
    if (lot)
      add({
        what: 'set',
        path: ['crosses', cross, 'set'],
        estimate: entry.set,
        route: undefined,
        spring: `${String(batch.year)} ${one.pair}`,
        year: batch.year,
        lot,
      });

    const up = fullest(batch, 'cameUp');
    const sown = fullest(batch, 'sown') ?? fullest(batch, 'seeds');
    const route = entry.routes.findIndex(({ id }) => id === batch.route);
    const raised = entry.routes[route];
    if (up && sown)
      add({
        what: 'germination',
        path: raised ? ['crosses', cross, 'routes', route, 'germination'] : ['crosses', cross, 'germination'],
        estimate: raised ? raised.germination : entry.germination,
        route: raised?.name,
        // The luck of coming up belongs to the cross and the spring, not to the pair.
        spring: String(one.germinates),
        year: one.germinates,
        lot: { hits: up.count, of: sown.count - losses.seeds },
      });

    const weak = fullest(batch, 'weak');
    if (weak && up) {
      if (entry.weakness)
        add({
          what: 'weakShare',
          path: ['crosses', cross, 'weakness', 'share'],
          estimate: entry.weakness.share,
          route: undefined,
          spring: batch.id,
          year: one.germinates,
          lot: { hits: weak.count, of: up.count },
        });
      else if (weak.count > 0) out('noWeakness', String(weak.count));
    }
  }
  return { facts, leftOut };
}

/**
 * Fruits of flowers, or of the units they were counted in. A cluster, bag or bur succeeds once, if any of its flowers does; where more fruits
 * than units ripened, and on branches, flowers are what is counted.
 */
function setLot({ batch, fertility }: PlacedBatch, lostFlowers: number): Lot | undefined {
  const [flowers, fruits] = [fullest(batch, 'flowers'), fullest(batch, 'fruits')];
  if (!flowers || !fruits) return undefined;
  const inUnit = flowers.unit?.flowers ?? 1;
  const units = flowers.count - Math.round(lostFlowers / inUnit);
  const times = fertility === 1 ? {} : { times: fertility };
  if (inUnit > 1 && flowers.unit?.name !== 'branch' && fruits.count <= units) return { hits: fruits.count, of: units, flowers: inUnit, ...times };
  return { hits: fruits.count, of: flowers.count * inUnit - lostFlowers, ...times };
}

/** Puts counts of one spring (and pair) together: they share its luck. */
export function lotsOf(facts: readonly ShareFact[]): Lot[] {
  const found = new Map<string, Lot>();
  for (const { spring, lot } of facts) {
    const key = [spring, lot.flowers ?? 1, lot.times ?? 1].join('\n');
    const before = found.get(key);
    found.set(key, before ? { ...lot, hits: before.hits + lot.hits, of: before.of + lot.of } : lot);
  }
  return [...found.values()];
}
