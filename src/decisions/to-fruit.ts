import { power } from '../random/elementary.ts';
import type { KindFacts, StockFacts, WeakFacts } from '../engine/fact-reader.ts';
import { weakAlive } from '../engine/rescue.ts';
import { takeAt } from '../statistics/graft.ts';

/** How a seedling would be grafted: age in months, scions, and whether it stays on its own roots when none takes. */
export interface Grafting {
  readonly month: number;
  readonly scions: number;
  readonly keepOwnRoots: boolean;
}

/** Points at which the years to first fruit are taken: the middles of ten equally likely parts. */
const PARTS = 10;

/** Share of seedlings for which at least one scion takes. */
export function takes({ month, scions }: Grafting, stock: StockFacts): number {
  return 1 - power(1 - takeAt(month, stock.takeTender, stock.takeRipe, stock.ripeMonths), scions);
}

/**
 * Returns the chance that a seedling alive at an age comes into bearing on its own roots. Trees that never fruit are left out: they are
 * the same share of all.
 * @param month its age
 * @param weak how it dies if it is weak; null for a sound one
 *
 * **Source:** docs/model.md §5, §7, §8: a tree of age J has come through J winters, the first at the first-year loss.
 */
export function bearsOnOwnRoots(month: number, weak: WeakFacts | null, kind: KindFacts): number {
  return overYears(kind, (years) => ownTo(month, Math.ceil(years), weak, kind));
}

/**
 * Returns the chance that a seedling alive at the graft age comes into bearing when it is grafted: it takes, and lives on with the
 * stock's loss; weakness of the top goes on as before. A graft at exactly 12 or 24 months follows that winter.
 *
 * **Source:** docs/model.md §5, §7, §8.
 */
export function bearsGrafted(grafting: Grafting, weak: WeakFacts | null, kind: KindFacts, stock: StockFacts): number {
  const { month } = grafting;
  const take = takes(grafting, stock);
  const took = overYears(kind, (years) => {
    const at = month / 12;
    const bears = Math.ceil(years <= at ? years : at + (years - at) * stock.precocity);
    const winters = Math.max(0, bears - Math.floor(at));
    return power(1 - stock.yearlyLoss, winters) * (weak && !weak.inRoots ? weakTo(month, bears, weak) : 1);
  });
  return take * took + (grafting.keepOwnRoots ? (1 - take) * bearsOnOwnRoots(month, weak, kind) : 0);
}

function overYears({ yearsToFruit }: KindFacts, chance: (years: number) => number): number {
  let sum = 0;
  for (let part = 0; part < PARTS; part += 1) sum += chance(yearsToFruit((part + 0.5) / PARTS));
  return sum / PARTS;
}

function ownTo(month: number, years: number, weak: WeakFacts | null, { firstYearLoss, yearlyLoss }: KindFacts): number {
  const through = Math.floor(month / 12);
  const first = through === 0 && years > 0 ? 1 - firstYearLoss : 1;
  const later = Math.max(0, years - Math.max(1, through));
  return first * power(1 - yearlyLoss, later) * (weak ? weakTo(month, years, weak) : 1);
}

const weakTo = (month: number, years: number, { onset, halfLife }: WeakFacts): number => weakAlive(month, Math.max(month, 12 * years), onset, halfLife);
