import type { FactReader, WeakFacts } from '../engine/fact-reader.ts';
import { meanOf } from '../model/mean.ts';
import type { Columns } from '../results/columns.ts';
import type { Spread } from '../results/outlook.ts';
import { spread } from '../statistics/order.ts';
import type { RescueSite } from './rescue-sites.ts';
import { FACTS_READ } from './standing.ts';
import { bearsGrafted, bearsOnOwnRoots } from './to-fruit.ts';

/** Which seedlings: weak ones told by sight, those that look sound, or any, before the weakness shows. */
export type Batch = 'weak' | 'sound' | 'any';

/** Seedlings standing at the graft age, and what one stock gains on them. Spreads are over what the guesses allow. */
export interface StockUse {
  readonly generation: string;
  readonly name: string;
  readonly cross: string;
  readonly batch: Batch;
  readonly month: number;
  /** Share that comes into bearing, grafted and on own roots. */
  readonly grafted: Spread;
  readonly ownRoots: Spread;
  /** Trees brought into bearing by one stock: (grafted − own roots) / scions. */
  readonly gain: Spread;
  /** Of the trees of this generation that bear, the share kept as picks in the plan's futures; null when none bears. */
  readonly kept: number | null;
  /** Picks gained by ten stocks: 10 × gain × kept. */
  readonly picksByTen: Spread | null;
  /** Share of what the guesses allow in which no other batch gains more from a stock: picks, where the plan keeps some of each; else trees that bear. */
  readonly first: number;
}

/**
 * Ranks who should get the stocks when there are only so many, best first.
 *
 * No future limits the number of grafts, so this is reckoned, not simulated. A stock is worth, on a seedling standing at the graft age,
 * P(takes) × P(bears | grafted) − P(bears | own roots), over its scions; the seedling's genes are not changed by the graft, so all of one
 * generation are alike in what they are worth once they bear, and the order within a generation is that of the gain. Gains add up as long
 * as stocks are fewer than seedlings of the best batch, so the best order is simply from the greatest gain down; batches of different
 * generations are set side by side by how many of their bearing trees the plan keeps. **Source:** own derivation, docs/model.md §7.
 * @param columns of the plan as it stands
 */
export function stockOrder(reader: FactReader, sites: readonly RescueSite[], columns: Columns): readonly StockUse[] {
  const batches = sites.flatMap((site) => site.entries.flatMap((entry) => batchesOf(site, entry.id).map((batch) => ({ site, entry, batch }))));
  const grafted = batches.map(() => new Float64Array(FACTS_READ));
  const own = batches.map(() => new Float64Array(FACTS_READ));
  const first = batches.map(() => 0);
  const keptShares = batches.map(({ site }) => keptOf(columns, site.column));
  const inPicks = keptShares.every((kept) => kept !== null);
  for (let run = 0; run < FACTS_READ; run += 1) {
    reader.goTo(run);
    const gains = batches.map(({ site: { rescue }, entry, batch }, b) => {
      const weak = reader.weak(entry.id);
      const kind = reader.kind(entry.gives);
      const stock = reader.stock(rescue.stock);
      const graftedShare = mixed(batch, weak, (one) => bearsGrafted(rescue, one, kind, stock));
      const ownShare = mixed(batch, weak, (one) => bearsOnOwnRoots(rescue.month, one, kind));
      grafted[b]?.fill(graftedShare, run, run + 1);
      own[b]?.fill(ownShare, run, run + 1);
      return ((graftedShare - ownShare) / rescue.scions) * (inPicks ? (keptShares[b] ?? 1) : 1);
    });
    const most = Math.max(...gains);
    gains.forEach((gain, b) => {
      if (gain === most) first[b] = (first[b] ?? 0) + 1;
    });
  }
  const uses = batches.map(({ site, entry, batch }, b): StockUse => {
    const gains = (grafted[b] ?? new Float64Array()).map((share, run) => (share - (own[b]?.[run] ?? 0)) / site.rescue.scions);
    const kept = keptShares[b] ?? null;
    return {
      generation: site.generation.id,
      name: site.generation.name,
      cross: entry.id,
      batch,
      month: site.rescue.month,
      grafted: spread(grafted[b] ?? []),
      ownRoots: spread(own[b] ?? []),
      gain: spread(gains),
      kept,
      picksByTen: kept === null ? null : spread(gains.map((gain) => 10 * gain * kept)),
      first: (first[b] ?? 0) / FACTS_READ,
    };
  });
  const worth = (use: StockUse) => (inPicks ? (use.picksByTen?.mean ?? 0) : use.gain.mean);
  return uses.sort((a, b) => worth(b) - worth(a));
}

function batchesOf({ entries, rescue }: RescueSite, cross: string): readonly Batch[] {
  const weakness = entries.find(({ id }) => id === cross)?.weakness;
  return weakness && rescue.month < meanOf(weakness.onset) ? ['any'] : ['weak', 'sound'];
}

/** Before the onset all weak are still alive, so any seedling is weak with the share of the cross. */
function mixed(batch: Batch, weak: WeakFacts, chance: (weak: WeakFacts | null) => number): number {
  if (batch === 'any') return weak.share * chance(weak) + (1 - weak.share) * chance(null);
  return chance(batch === 'weak' ? weak : null);
}

function keptOf(columns: Columns, position: number): number | null {
  const sum = (values: Int32Array) => values.reduce((total, value) => total + value, 0);
  const fruiting = sum(columns.generation(position, 'fruiting'));
  return fruiting > 0 ? sum(columns.generation(position, 'kept')) / fruiting : null;
}
