import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent } from '../statistics/compare.ts';
import { Z95 } from '../statistics/interval.ts';
import { withChoice, type RescueSite } from './rescue-sites.ts';
import type { Variant } from './steps.ts';
import { withRootChance } from './variants.ts';

const STEPS = 20;

/** What grafting gains against the chance that weakness sits in the roots, all else as the programme says. */
export interface RootsLine {
  /** From never in the roots (0) to always (1): chance with grafting minus chance on own roots. */
  readonly points: readonly { readonly rootChance: number; readonly difference: Interval; readonly clear: boolean }[];
  /** Above this chance grafting wins; null where the line does not cross 0. Low and high: where the 95 % band does, at the ends 0 and 1. */
  readonly breakEven: Interval | null;
  readonly futures: number;
}

/** Four ways to run: grafted and not, with the weakness in the roots and not. */
export function rootsVariants(programme: Programme, site: RescueSite): readonly Variant[] {
  const who = site.stands === 'none' ? site.rescue.who : site.stands;
  return [1, 0].flatMap((chance) => {
    const fixed = site.entries.reduce((edited, { id }) => withRootChance(edited, id, chance), programme);
    return ([who, 'none'] as const).map((choice): Variant => ({ programme: withChoice(fixed, site, choice), plan: 0 }));
  });
}

/**
 * Mixes the futures in which weakness sits in the roots with those in which it does not: it is one yes/no draw, so the gain at a chance p is
 * p·(gain if so) + (1 − p)·(gain if not), exactly, on the same futures. Crosses with facts of their own are taken to have the same answer.
 * @param columns of `rootsVariants`, in their order
 */
export function rootsLine(columns: readonly Columns[]): RootsLine | null {
  const [graftedRoots, ownRoots, graftedTop, ownTop] = columns.map((one) => Int8Array.from(one.run('yearProven'), (year) => (year < 0 ? 0 : 1)));
  if (!graftedRoots || !ownRoots || !graftedTop || !ownTop) return null;
  const ifRoots = graftedRoots.map((proven, i) => proven - (ownRoots[i] ?? 0));
  const ifTop = graftedTop.map((proven, i) => proven - (ownTop[i] ?? 0));
  const at = (p: number) => gain(ifRoots, ifTop, p);
  const points = Array.from({ length: STEPS + 1 }, (_, i) => {
    const rootChance = i / STEPS;
    const difference = at(rootChance);
    return { rootChance, difference, clear: clearlyDifferent(difference) };
  });
  return { points, breakEven: breakEven(at), futures: ifRoots.length };
}

/** Mean gain at chance p, with its 95 % interval from the differences of single futures; one of each is added so that it never has no width. */
function gain(ifRoots: Int8Array, ifTop: Int8Array, p: number): Interval {
  const n = ifRoots.length;
  let sum = 0;
  // A pair of futures with a gain and a loss of one, as in the adjusted interval of Bonett & Price (2012) for paired shares.
  let squares = 2 * (p * p + (1 - p) * (1 - p));
  for (let i = 0; i < n; i += 1) {
    const d = p * (ifRoots[i] ?? 0) + (1 - p) * (ifTop[i] ?? 0);
    sum += d;
    squares += d * d;
  }
  const mean = sum / n;
  const half = Z95 * Math.sqrt(Math.max(0, squares / n - mean * mean) / n);
  return { value: mean, low: Math.max(-1, mean - half), high: Math.min(1, mean + half) };
}

function breakEven(at: (p: number) => Interval): Interval | null {
  const [none, all] = [at(0).value, at(1).value];
  // Grafting gains by a cure: a line that falls, or never crosses, has no chance above which it wins.
  if (!(none < 0 && all > 0)) return null;
  const grid = Array.from({ length: 201 }, (_, i) => i / 200);
  return {
    value: -none / (all - none),
    low: grid.find((p) => at(p).high >= 0) ?? 0,
    high: grid.findLast((p) => at(p).low <= 0) ?? 1,
  };
}
