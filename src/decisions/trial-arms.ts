import type { FactReader, KindFacts, StockFacts, WeakFacts } from '../engine/fact-reader.ts';
import { weakAlive } from '../engine/rescue.ts';
import { meanOf } from '../model/mean.ts';
import type { Cross, Programme } from '../model/programme.ts';
import { wholePower } from '../random/elementary.ts';
import { toldFrom, type RescueSite } from './rescue-sites.ts';
import { takes } from './to-fruit.ts';

/** Which seedlings a trial is made with: weak ones, told by sight, or any, where they are grafted before the weakness shows. */
export type TrialBatch = 'weak' | 'any';

/** What one seedling of each arm does in each future: chance that it is alive when the trial is counted. */
export interface TrialArms {
  readonly grafted: Float64Array;
  readonly left: Float64Array;
  /** Of the seedlings raised, the share that stands and is of the batch at the graft age. */
  readonly standing: Float64Array;
}

export const batchOf = ({ entries: [entry], rescue }: RescueSite): TrialBatch => (rescue.month < toldFrom([entry]) ? 'any' : 'weak');

/**
 * Reads the arms of a trial in futures 0 … futures − 1: seedlings of the site's commonest cross, grafted at its age onto its stock or left on
 * their own roots, counted so many summers later. A graft is alive if it took, came through the stock's winters, and was cured or did not die
 * of the weakness of its top; one that never took and one that died later count alike.
 *
 * **Source:** docs/model.md §5, §7, §8.
 */
export function trialArms(reader: FactReader, site: RescueSite, summers: number, futures: number): TrialArms {
  const [entry] = site.entries;
  const batch = batchOf(site);
  const arms = { grafted: new Float64Array(futures), left: new Float64Array(futures), standing: new Float64Array(futures) };
  for (let run = 0; run < futures; run += 1) {
    reader.goTo(run);
    const weak = reader.weak(entry.id);
    const kind = reader.kind(entry.gives);
    const standing = weakAlive(0, site.rescue.month, weak.onset, weak.halfLife);
    // Of those that still stand, where weak and sound are not told apart.
    const weakShare = batch === 'weak' ? 1 : (weak.share * standing) / (weak.share * standing + 1 - weak.share || 1);
    const left = (one: WeakFacts | null) => leftAlive(site, summers, one, kind);
    const grafted = (one: WeakFacts | null) => graftedAlive(site, summers, one, reader.stock(site.rescue.stock));
    arms.left[run] = weakShare * left(weak) + (1 - weakShare) * left(null);
    arms.grafted[run] = weakShare * grafted(weak) + (1 - weakShare) * grafted(null);
    arms.standing[run] = throughWinters(0, Math.floor(site.rescue.month / 12), kind) * (weak.share * standing + (batch === 'any' ? 1 - weak.share : 0));
  }
  return arms;
}

function leftAlive({ rescue: { month } }: RescueSite, summers: number, weak: WeakFacts | null, kind: KindFacts): number {
  const until = month + 12 * summers;
  const through = throughWinters(Math.floor(month / 12), Math.floor(until / 12), kind);
  return through * (weak ? weakAlive(month, until, weak.onset, weak.halfLife) : 1);
}

function graftedAlive({ rescue }: RescueSite, summers: number, weak: WeakFacts | null, stock: StockFacts): number {
  const until = rescue.month + 12 * summers;
  const top = weak && !weak.inRoots ? weakAlive(rescue.month, until, weak.onset, weak.halfLife) : 1;
  return takes(rescue, stock) * wholePower(1 - stock.yearlyLoss, summers) * top;
}

/** Share of sound seedlings that come through winters `from` + 1 … `to` of their life. */
function throughWinters(from: number, to: number, { firstYearLoss, yearlyLoss }: KindFacts): number {
  if (to <= from) return 1;
  return from === 0 ? (1 - firstYearLoss) * wholePower(1 - yearlyLoss, to - 1) : wholePower(1 - yearlyLoss, to - from);
}

/** What a trial takes besides what the plan does, by the middle of the guesses. */
export interface TrialCost {
  /** Seedlings in the trial, and how many must be raised to have so many of them at the graft age; null where none would ever stand. */
  readonly trees: number;
  readonly raised: number | null;
  readonly grafts: number;
  /** Flowers to pollinate for them; 0 where seed is gathered; null where none would set. */
  readonly flowers: number | null;
  readonly hours: number | null;
}

/** @param n seedlings grafted, and as many left */
export function trialCost(programme: Programme, site: RescueSite, standing: number, n: number, summers: number): TrialCost {
  const [entry] = site.entries;
  const { hours, kinds } = programme;
  const raised = standing > 0 ? Math.ceil((2 * n) / standing) : null;
  const grafts = n * site.rescue.scions;
  const setting = seedlingsPerFlower(programme, entry);
  const byHand = site.generation.pollen !== 'open';
  const flowers = !byHand ? 0 : raised !== null && setting.seedlings > 0 ? Math.ceil(raised / setting.seedlings) : null;
  const nursery = kinds.find(({ id }) => id === entry.gives)?.nurseryShare ?? 0;
  const work =
    raised === null || flowers === null
      ? null
      : flowers * (hours.perFlower + setting.fruits * hours.perFruit) +
        raised * hours.perSeedling +
        grafts * hours.perGraft +
        2 * n * nursery * summers * hours.perPlaceYear;
  return { trees: 2 * n, raised, grafts, flowers, hours: work };
}

function seedlingsPerFlower({ kinds }: Programme, cross: Cross): { readonly fruits: number; readonly seedlings: number } {
  const kindOf = (id: string) => kinds.find((kind) => kind.id === id);
  const [seed, pollen] = [kindOf(cross.seed), kindOf(cross.pollen)];
  const fruits = Math.min(1, meanOf(cross.set) * (seed ? meanOf(seed.fertilityAsSeedParent) : 1) * (pollen ? meanOf(pollen.fertilityAsPollenParent) : 1));
  const seeds = meanOf(cross.seedsPerFruit ?? seed?.seedsPerFruit ?? 1);
  return { fruits, seedlings: fruits * (1 - meanOf(cross.emptyFruit)) * seeds * meanOf(cross.germination) };
}
