import { FactReader } from '../engine/fact-reader.ts';
import type { Programme } from '../model/programme.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent } from '../statistics/compare.ts';
import { wilson } from '../statistics/interval.ts';
import { quantileSorted } from '../statistics/order.ts';
import { betweenLevels, overall, percentileInterval, resamples, weightedMean, type Weights } from '../statistics/sensitivity.ts';
import type { UnknownFact } from './unknown-facts.ts';
import { questionStream, type UnknownRuns } from './unknown-runs.ts';

const RESAMPLES = 400;

/** Which way the chance goes with a fact: clearly up, clearly down, or neither as a whole. */
export type Way = 'up' | 'down' | 'level';

export interface FactFigures {
  /** Share of what the facts explain together that this one explains on its own, 0–1. */
  readonly first: Interval;
  /** Share that stays open while this one alone is unknown: its own and all it does together with others. Null until it has been run. */
  readonly total: Interval | null;
  /** Chance where it is high minus chance where it is low (upper and lower half); null where there is no more and less of it. */
  readonly more: { readonly way: Way; readonly difference: Interval } | null;
  /** Futures that came out another way when it alone was drawn anew. */
  readonly changed: { readonly changed: number; readonly of: number };
}

export interface Figures {
  readonly chance: Interval;
  /** Share of the spread of outcomes that is luck, which nobody can learn away, 0–1. */
  readonly luck: Interval;
  /** False when the facts together explain less than the futures made can measure: then no share of it means anything. */
  readonly measurable: boolean;
  readonly facts: readonly FactFigures[];
}

/** Scores by level: how much there is of a fact in each set. Several numbers count alike, each by its spread. */
export function scoresOf(programme: Programme, facts: readonly UnknownFact[], levels: number): readonly (Float64Array | null)[] {
  const reader = new FactReader(programme);
  const values = facts.map(({ numbers }) => numbers.map(() => new Float64Array(levels)));
  for (let level = 0; level < levels; level += 1) {
    reader.goTo(level);
    facts.forEach(({ numbers }, f) =>
      numbers.forEach((place, n) => {
        const list = values[f]?.[n];
        if (list) list[level] = reader.estimate(place);
      }),
    );
  }
  return values.map((lists) => (lists.length === 0 ? null : lists.map(standardised).reduce((sum, list) => sum.map((value, i) => value + (list[i] ?? 0)))));
}

function standardised(values: Float64Array): Float64Array {
  const mean = weightedMean(values);
  const sd = Math.sqrt(weightedMean(values.map((value) => (value - mean) ** 2)));
  return values.map((value) => (sd > 0 ? (value - mean) / sd : 0));
}

/** Works out all figures from the futures run so far. */
export function figuresOf(programme: Programme, runs: UnknownRuns, scores: readonly (Float64Array | null)[]): Figures {
  const together = runs.setLevels();
  const draw = (purpose: string, rows: number) => resamples(rows, RESAMPLES, questionStream(programme, purpose));
  const ofSets = draw('resampled sets', together.sums.length);
  const ofLevels = draw('resampled levels', runs.levels);
  const explained = betweenLevels(together);
  const explainedIn = ofSets.map((taken) => betweenLevels(together, taken));
  const shareOf = (weights: Weights) => betweenLevels(together, weights) / Math.max(overall(together, weights).variance, 1e-12);
  const share = percentileInterval(shareOf(null), ofSets.map(shareOf));
  const mean = percentileInterval(
    overall(together).mean,
    ofSets.map((taken) => overall(together, taken).mean),
  );
  const measurable = explained > 0 && share.low > 0;
  // A share of nothing is nothing: figures stay whole numbers while the facts explain too little to share out.
  const asShare = (variance: number, of: number) => (of > 0 ? variance / of : 0);
  const totals = totalsOf(programme, runs, explained, explainedIn);
  const facts = scores.map((score, f): FactFigures => {
    const levels = runs.levelsOf(f);
    const first = percentileInterval(
      asShare(betweenLevels(levels), explained),
      ofLevels.map((taken, b) => asShare(betweenLevels(levels, taken), explainedIn[b] ?? 0)),
    );
    return {
      first: clipped(first),
      total: totals[f] ?? null,
      more: score && moreOf(score, levels.sums, levels.each, ofLevels),
      changed: { ...(runs.changed[f] ?? { changed: 0, of: 0 }) },
    };
  });
  return { chance: mean, luck: { value: within01(1 - share.value), low: within01(1 - share.high), high: within01(1 - share.low) }, measurable, facts };
}

function totalsOf(programme: Programme, runs: UnknownRuns, explained: number, explainedIn: readonly number[]): readonly (Interval | null)[] {
  const rows = Math.max(0, ...runs.totals.map((list) => list?.length ?? 0));
  if (rows === 0) return runs.totals.map(() => null);
  const ofRows = resamples(rows, RESAMPLES, questionStream(programme, 'resampled rows'));
  return runs.totals.map((list, f) => {
    const { changed, of } = runs.changed[f] ?? { changed: 0, of: 0 };
    const moved = list?.some((row) => row !== 0) === true;
    // Nothing seen is not nothing: ½·E(f − f′)² is at most half the share of futures that come out another way.
    if (!list || !moved) return of === 0 || explained <= 0 ? null : { value: 0, low: 0, high: Math.min(1, wilson(changed, of).high / 2 / explained) };
    const value = weightedMean(list) / explained;
    return clipped(
      percentileInterval(
        value,
        ofRows.map((taken, b) => weightedMean(list, taken) / (explainedIn[b] ?? explained)),
      ),
    );
  });
}

function moreOf(score: Float64Array, sums: Float64Array, each: number, taken: readonly Uint8Array[]): { way: Way; difference: Interval } {
  const middle = quantileSorted(Float64Array.from(score).sort(), 0.5);
  // Where half or more of the levels share the middle value, it goes with the smaller side.
  const above = score.some((value) => value > middle);
  const high = (value: number) => (above ? value > middle : value >= middle);
  const differenceIn = (weights: Weights) => {
    const count = [0, 0];
    const sum = [0, 0];
    score.forEach((value, i) => {
      const side = Number(high(value));
      const w = weights ? (weights[i] ?? 0) : 1;
      count[side] = (count[side] ?? 0) + w;
      sum[side] = (sum[side] ?? 0) + w * (sums[i] ?? 0);
    });
    const [low = 0, up = 0] = count;
    return low > 0 && up > 0 ? ((sum[1] ?? 0) / up - (sum[0] ?? 0) / low) / each : 0;
  };
  const difference = percentileInterval(differenceIn(null), taken.map(differenceIn));
  return { way: clearlyDifferent(difference) ? (difference.value > 0 ? 'up' : 'down') : 'level', difference };
}

const within01 = (value: number) => Math.min(1, Math.max(0, value));

/** Noise may carry a share below 0 or above 1; nobody’s does lie there. */
const clipped = ({ value, low, high }: Interval): Interval => ({ value: within01(value), low: within01(low), high: within01(high) });
