import { meanOf } from '../model/mean.ts';
import type { Cross, Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent } from '../statistics/compare.ts';
import { wilson, Z95 } from '../statistics/interval.ts';
import { withChoice, type RescueSite } from './rescue-sites.ts';
import type { Variant } from './steps.ts';
import { withRootChance } from './variants.ts';

const STEPS = 20;

/** What grafting gains against the chance that weakness sits in the roots, all else as the programme says. */
export interface RootsLine {
  /** From never in the roots (0) to always (1): the chance with grafting, the chance on own roots, and the one minus the other. */
  readonly points: readonly RootsPoint[];
  /** Above this chance grafting wins; null where the line does not cross 0. Low and high: where the 95 % band does, at the ends 0 and 1. */
  readonly breakEven: Interval | null;
  readonly futures: number;
}

export interface RootsPoint {
  readonly rootChance: number;
  readonly grafted: Interval;
  readonly own: Interval;
  /** Of the trees proven, the share that truly is what was seen, with grafting and on own roots; null when none was. */
  readonly trulyGood: { readonly grafted: Interval | null; readonly own: Interval | null };
  readonly difference: Interval;
  readonly clear: boolean;
}

/** The chance that weakness sits in the roots as the programme states it, at the middle of the guesses. */
export function rootChanceOf({ facts }: Programme, { weakness }: Cross): number {
  if (!weakness) return 0;
  const { rootBorne } = weakness;
  const stated = 'chance' in rootBorne ? rootBorne.chance : facts.find(({ id }) => id === rootBorne.fact)?.chance;
  return stated === undefined ? 0 : meanOf(stated);
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
  const at = (p: number) => mixed(ifRoots, ifTop, p, GAIN);
  const points = Array.from({ length: STEPS + 1 }, (_, i): RootsPoint => {
    const rootChance = i / STEPS;
    const difference = at(rootChance);
    return {
      rootChance,
      grafted: mixed(graftedRoots, graftedTop, rootChance, SHARE),
      own: mixed(ownRoots, ownTop, rootChance, SHARE),
      trulyGood: { grafted: trulyGood(columns[0], columns[2], rootChance), own: trulyGood(columns[1], columns[3], rootChance) },
      difference,
      clear: clearlyDifferent(difference),
    };
  });
  return { points, breakEven: breakEven(at), futures: ifRoots.length };
}

/** Trees of both kinds of futures, weighed by how often each comes: Wilson's interval on the trees that this is worth. */
function trulyGood(ifSo: Columns | undefined, ifNot: Columns | undefined, p: number): Interval | null {
  const trees = (name: 'proven' | 'trulyGood') => p * total(ifSo?.run(name)) + (1 - p) * total(ifNot?.run(name));
  const proven = trees('proven');
  return proven > 0 ? wilson(trees('trulyGood'), proven) : null;
}

const total = (values: Int32Array | undefined): number => values?.reduce((sum, value) => sum + value, 0) ?? 0;

/** Lowest figure there is, and two futures that are added to the sum of squares, so that no interval has no width. */
const GAIN = { least: -1, added: [-1, 1] } as const;
const SHARE = { least: 0, added: [0, 1] } as const;

/**
 * Mean of p·(if so) + (1 − p)·(if not), with its 95 % interval from single futures. Of a gain the two futures added are one gained and one
 * lost, as in the adjusted interval of Bonett & Price (2012) for paired shares; of a share, one with a tree and one without, as in that of
 * Agresti & Coull (1998) Am. Stat. 52:119–126 (both from memory).
 */
function mixed(ifSo: Int8Array, ifNot: Int8Array, p: number, { least, added }: typeof GAIN | typeof SHARE): Interval {
  const n = ifSo.length;
  const weight = p * p + (1 - p) * (1 - p);
  let sum = 0;
  let squares = weight * added.reduce<number>((all, value) => all + value * value, 0);
  for (let i = 0; i < n; i += 1) {
    const d = p * (ifSo[i] ?? 0) + (1 - p) * (ifNot[i] ?? 0);
    sum += d;
    squares += d * d;
  }
  const mean = sum / n;
  const half = Z95 * Math.sqrt(Math.max(0, squares / n - mean * mean) / n);
  return { value: mean, low: Math.max(least, mean - half), high: Math.min(1, mean + half) };
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
