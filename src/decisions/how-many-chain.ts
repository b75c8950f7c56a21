import type { Columns } from '../results/columns.ts';
import type { Interval, Stage } from '../results/outlook.ts';
import { Z95 } from '../statistics/interval.ts';
import { heightAt } from '../statistics/isotonic.ts';

const NEVER = -1;

/** What a generation asks of its seedlings: which steps lead from a flower to a tree kept. */
export interface ChainOf {
  /** Position of the generation's first round among the columns. */
  readonly column: number;
  /** Open pollination counts no flowers. */
  readonly pollinates: boolean;
  /** Every seedling is grafted, so that those alive by then are counted. */
  readonly graftsAll: boolean;
  /** A tree must be seen to show something to be kept. */
  readonly mustShow: boolean;
}

/** The same with the numbers of one variant: how many seedlings and picks it has room for. */
export interface ChainLimits {
  readonly seedlings: number;
  readonly picks: number;
}

export interface ChainStep {
  readonly stage: Stage;
  /** Mean over the futures that came to the generation, all its springs together. */
  readonly count: number;
  /** Of the step before, the share that comes here; for seeds: seeds a fruit. Null at the first step. */
  readonly pass: Interval | null;
  /** A limit of the plan's own ends it here in more than half of those futures: all seedlings or picks wanted are there. */
  readonly full: boolean;
}

/** The steps that this generation has, in order. */
export function stagesOf({ pollinates, graftsAll, mustShow }: ChainOf): readonly Stage[] {
  const all: readonly (readonly [Stage, boolean])[] = [
    ['flowers', pollinates],
    ['fruits', true],
    ['seeds', true],
    ['seedlings', true],
    ['aliveAtGraft', graftsAll],
    ['fruiting', true],
    ['showing', mustShow],
    ['kept', true],
  ];
  return all.flatMap(([stage, there]) => (there ? [stage] : []));
}

/** Counts and shares step by step over the futures that came to the generation; empty where none did. */
export function chainOf(of: ChainOf, limits: ChainLimits, columns: Columns): readonly ChainStep[] {
  const first = columns.generation(of.column, 'firstPollination');
  const runs = Array.from(first.keys()).filter((run) => first[run] !== NEVER);
  if (runs.length === 0) return [];
  const countsOf = (stage: Stage) => {
    const column = columns.generation(of.column, stage);
    return runs.map((run) => column[run] ?? 0);
  };
  let before: readonly number[] | null = null;
  return stagesOf(of).map((stage) => {
    const counts = countsOf(stage);
    const limit = stage === 'seedlings' ? limits.seedlings : stage === 'kept' ? limits.picks : Infinity;
    const step: ChainStep = {
      stage,
      count: counts.reduce((sum, n) => sum + n, 0) / counts.length,
      pass: before && ratio(counts, before),
      full: 2 * counts.filter((n) => n >= limit).length > counts.length,
    };
    before = counts;
    return step;
  });
}

/**
 * Returns Σ of / Σ each with its 95 % interval.
 *
 * **Source:** ratio estimator with its linearised variance, Cochran, W. G. (1977) Sampling Techniques, ch. 6 (from memory).
 */
export function ratio(of: readonly number[], each: readonly number[]): Interval | null {
  const n = of.length;
  const total = each.reduce((sum, value) => sum + value, 0);
  if (total === 0) return null;
  const value = of.reduce((sum, one) => sum + one, 0) / total;
  const squares = of.reduce((sum, one, i) => sum + (one - value * (each[i] ?? 0)) ** 2, 0);
  const half = n > 1 ? (Z95 * Math.sqrt((n * squares) / (n - 1))) / total : value;
  return { value, low: Math.max(0, value - half), high: value + half };
}

/** The step that holds a generation back most. */
export interface Narrowest {
  readonly stage: Stage;
  readonly pass: Interval;
  /** Trees kept, as a ratio, if one in ten of those lost at this step were saved. */
  readonly gain: number;
}

/** Of those lost at a step, the share saved that `gain` speaks of. */
const SAVED = 0.1;

/**
 * Returns the step at which saving one in ten of those lost would give most trees. Steps multiply, so that a rate a tenth better gives a
 * tenth more trees wherever it is, and cannot tell them apart; of the lost there are most to save where the share that passes is least:
 * saving one in ten of them multiplies the trees by 1 + (1 − p)/(10 p). Seeds a fruit is no share and stands aside; so does what is thrown
 * away because the plan wants no more: with all seedlings there, the steps up to them are no hindrance, and with all picks made, keeping is not.
 *
 * **Source:** own derivation.
 */
export function narrowestOf(chain: readonly ChainStep[]): Narrowest | null {
  const full = chain.findLastIndex(({ stage, full: all }) => all && stage === 'seedlings');
  return chain.reduce<Narrowest | null>((narrowest, { stage, pass, full: all }, i) => {
    if (i <= full || !pass || stage === 'seeds' || (stage === 'kept' && all) || !(pass.value > 0)) return narrowest;
    if (narrowest && narrowest.pass.value <= pass.value) return narrowest;
    return { stage, pass, gain: 1 + (SAVED * Math.max(0, 1 - pass.value)) / pass.value };
  }, null);
}

/** Counts between two numbers tried, by the interpolation of the read-offs; shares are those of the number tried next to it. */
export function chainBetween(values: readonly number[], chains: readonly (readonly ChainStep[])[], value: number): readonly ChainStep[] {
  const near = values.reduce((best, one, i) => (Math.abs(one - value) < Math.abs((values[best] ?? Infinity) - value) ? i : best), 0);
  const shares = chains[near] ?? [];
  return shares.map((step, s) => {
    const there = values.flatMap((place, i) => {
      const count = chains[i]?.[s]?.count;
      return count === undefined ? [] : [{ place, count }];
    });
    return {
      ...step,
      count: heightAt(
        there.map(({ place }) => place),
        there.map(({ count }) => count),
        value,
      ),
    };
  });
}
