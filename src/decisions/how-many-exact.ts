import type { Generation, Plan, Programme } from '../model/programme.ts';
import type { Interval } from '../results/outlook.ts';
import { wholePower } from '../random/elementary.ts';
import { atLeast } from '../statistics/binomial.ts';
import { Z95 } from '../statistics/interval.ts';
import { seedsPerFruitTable } from '../statistics/truncated-poisson.ts';
import { RateReader, type Rates } from './how-many-rates.ts';
import { settingOf, type LeftOut, type Setting } from './how-many-setting.ts';

/** A number reckoned from rates and shares alone, before any future is run. */
export interface ExactAnswer {
  readonly generation: string;
  readonly name: string;
  /** Trees wanted of it, and what they must be: seen to show the trait in so many of their crops; null: only come to fruit. */
  readonly trees: number;
  readonly trait: { readonly id: string; readonly name: string; readonly atLeast: number; readonly crops: number } | null;
  readonly wanted: number;
  /** Flowers, over all springs together, and seedlings that give so many trees with that chance; null: no number up to a million does. */
  readonly flowers: Needed;
  readonly seedlings: Needed;
  /** What the chance comes to with ever more. */
  readonly atMost: number;
  /** Chance at each number tried of the lever shown; empty where the lever is another. */
  readonly curve: readonly ({ readonly tried: number } & Interval)[];
  readonly leavesOut: readonly LeftOut[];
}

/** The interval is that of having looked at so many facts only; the bounds are the number itself where nothing is guessed. */
export interface Needed {
  readonly at: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

const MOST = 1_000_000;
/** Facts looked at, and facts times what the parents may be. */
const MOST_FACTS = 300;
const WORK = 9000;
/** A chance reached exactly must count as reached although sums of weights are rounded. */
const ROUNDING = 1e-12;

/** Chance of enough trees from so many flowers or seedlings. */
export interface Reckoned {
  readonly ofFlowers: (flowers: number) => Interval;
  readonly ofSeedlings: (seedlings: number) => Interval;
}

/**
 * Reckons how many flowers and seedlings a generation needs where that rests on rates and one trait's share alone: the first generation of
 * a plan, of one pair of named trees. Flowers of a pair are alike and independent, so the number of wanted trees from n flowers has the
 * n-th power of one flower's generating function; for one tree n = ln(1 − P)/ln(1 − p). Averaged over what the guesses allow (the futures'
 * own facts) and over what the parents may be.
 * @param wanted chance wanted, in (0, 1)
 * @returns null where there is no such answer
 *
 * **Source:** Sedcole, J. R. (1977) Crop Science 17:667–668 for the number of plants; generating functions: Feller (1968) An Introduction to
 * Probability Theory, vol. 1, ch. XI–XII (from memory).
 */
export function exactAnswer(programme: Programme, plan: Plan, generation: Generation, wanted: number, tried: Tried): ExactAnswer | null {
  const setting = settingOf(programme, plan, generation);
  if (!setting) return null;
  const { ofFlowers, ofSeedlings } = reckon(programme, setting);
  const { trait, trees, k, crops, leavesOut } = setting;
  const chance = tried.lever === 'flowers' ? ofFlowers : tried.lever === 'seedlings' ? ofSeedlings : null;
  const springs = tried.lever === 'flowers' ? generation.springs : 1;
  return {
    generation: generation.id,
    name: generation.name,
    trees,
    trait: trait && { id: trait.id, name: trait.name, atLeast: k, crops },
    wanted,
    flowers: needed(ofFlowers, wanted),
    seedlings: needed(ofSeedlings, wanted),
    atMost: ofFlowers(MOST).value,
    curve: chance ? tried.values.map((value) => ({ tried: value, ...chance(value * springs) })) : [],
    leavesOut,
  };
}

export interface Tried {
  readonly lever: string;
  readonly values: readonly number[];
}

/** Chances of enough trees from so many flowers or seedlings, over what the guesses allow. */
export function reckon(programme: Programme, setting: Setting): Reckoned {
  const { mixture, trees, k, crops } = setting;
  const reader = new RateReader(programme, setting);
  const facts = reader.certain ? 1 : Math.max(50, Math.min(MOST_FACTS, Math.floor(WORK / mixture.length)));
  const tables = new Map<number, Float64Array>();
  const drawn = Array.from({ length: facts }, (_, run) => {
    const rates = reader.at(run);
    const table = tables.get(rates.seeds) ?? seedsPerFruitTable(rates.seeds, rates.seedsAtMost);
    tables.set(rates.seeds, table);
    return mixture.map(({ weight, share }) => {
      const good = rates.lasts * seenShare(rates, share, k, crops, setting.trait !== null);
      return { weight, good, flower: flowerOf(rates, table, good * rates.germination, trees) };
    });
  });
  return {
    ofSeedlings: (n) => over(drawn, ({ good }) => atLeast(trees, Math.round(n), Math.min(1, good))),
    ofFlowers: (n) => over(drawn, ({ flower }) => 1 - sum(raised(flower, Math.round(n)))),
  };
}

/** Share of judged trees that are seen to show the trait in at least k of their crops. */
function seenShare({ canShow, seasons, falseShow }: Rates, share: number, k: number, crops: number, judged: boolean): number {
  if (!judged) return 1;
  const able = share * canShow;
  return able * atLeast(k, Math.max(1, crops), seasons) + (1 - able) * atLeast(k, Math.max(1, crops), falseShow);
}

interface One {
  readonly weight: number;
  readonly good: number;
  readonly flower: readonly number[];
}

/** Mean over the facts of Σ weight × chance, with the 95 % interval of having looked at so many facts. */
function over(drawn: readonly (readonly One[])[], chance: (one: One) => number): Interval {
  const values = drawn.map((ways) => ways.reduce((total, one) => total + one.weight * chance(one), 0));
  const mean = sum(values) / values.length;
  const variance = values.reduce((total, value) => total + (value - mean) ** 2, 0) / Math.max(1, values.length - 1);
  const half = Z95 * Math.sqrt(variance / values.length);
  return { value: mean, low: Math.max(0, mean - half), high: Math.min(1, mean + half) };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/**
 * Returns the chances of 0 … most − 1 wanted trees from one flower.
 * @param good chance that a seed becomes one
 */
export function flowerOf({ fruit }: Pick<Rates, 'fruit'>, seeds: ArrayLike<number>, good: number, most: number): readonly number[] {
  const chances = Array.from({ length: most }, (_, j) => (j === 0 ? 1 - fruit : 0));
  for (let s = 1; s <= seeds.length; s += 1)
    for (let j = 0; j < Math.min(most, s + 1); j += 1)
      chances[j] = (chances[j] ?? 0) + fruit * (seeds[s - 1] ?? 0) * (atLeast(j, s, good) - atLeast(j + 1, s, good));
  return chances;
}

/** The n-th power of a polynomial, cut to its own length. */
export function raised(polynomial: readonly number[], n: number): readonly number[] {
  const [first = 0] = polynomial;
  if (polynomial.length === 1) return [wholePower(first, n)];
  let result: number[] = polynomial.map((_, i) => (i === 0 ? 1 : 0));
  let square = [...polynomial];
  for (let left = n; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result = product(result, square);
    if (left > 1) square = product(square, square);
  }
  return result;
}

function product(a: readonly number[], b: readonly number[]): number[] {
  return a.map((_, k) => a.slice(0, k + 1).reduce((total, value, i) => total + value * (b[k - i] ?? 0), 0));
}

/** Least number with that chance, and the bounds that the facts looked at leave open. */
function needed(chance: (n: number) => Interval, wanted: number): Needed {
  const least = (height: (at: Interval) => number): number | null => {
    const enough = (n: number) => height(chance(n)) >= wanted - ROUNDING;
    if (!enough(MOST)) return null;
    let short = 0;
    let plenty = 1;
    while (!enough(plenty)) {
      short = plenty;
      plenty = Math.min(MOST, 2 * plenty);
    }
    while (plenty - short > 1) {
      const middle = Math.floor((short + plenty) / 2);
      if (enough(middle)) plenty = middle;
      else short = middle;
    }
    return plenty;
  };
  return { at: least(({ value }) => value), low: least(({ high }) => high), high: least(({ low }) => low) };
}
