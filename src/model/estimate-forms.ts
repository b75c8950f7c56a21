import { pertMean, pertVariance } from '../statistics/pert.ts';
import { estimate as estimateSchema, formOf, type Counted, type Estimate, type EstimateForm, type Ranged, type Source } from './estimate.ts';
import type { Scale } from './fields.ts';
import { printNumber } from './numbers.ts';

/** What an estimate may hold: the bounds of its field. */
export interface Bounds {
  readonly min: number;
  readonly max: number;
}

const anyEstimate = estimateSchema(-Infinity, Infinity, { label: 'Estimate', scale: 'share' });

/** Takes a value for an estimate if it has the form of one, whatever its bounds. */
export function readEstimate(value: unknown): Estimate | undefined {
  const read = anyEstimate.safeParse(value);
  return read.success ? read.data : undefined;
}

export const sourceOf = (estimate: Estimate): Source | undefined => (typeof estimate === 'number' ? undefined : estimate.source);

/** Returns the estimate with another source; a bare number becomes one with a source beside it. */
export function withSource(estimate: Estimate, source: Source): Estimate {
  return typeof estimate === 'number' ? { value: estimate, source } : { ...estimate, source };
}

/** Returns the numbers alone; a number that only carried a source becomes a bare one. */
export function withoutSource(estimate: Estimate): Estimate {
  if (typeof estimate === 'number') return estimate;
  if ('value' in estimate) return estimate.value;
  if ('low' in estimate) return { low: estimate.low, likely: estimate.likely, high: estimate.high };
  if ('oneOf' in estimate) return { oneOf: estimate.oneOf };
  const { hits, of, lots, unit } = estimate;
  return { hits, of, lots, ...(unit ? { unit } : {}) };
}

const clamp = ({ min, max }: Bounds, value: number): number => Math.min(max, Math.max(min, value));
/** Rounds to so many digits that a hand would write; a clamped end stays where it is. */
const tidy = (value: number, digits = 3): number => Number(value.toPrecision(digits));

/** Chance per flower from a chance per cluster of n in which any one flower is enough: 1 − (1 − p)^(1/n). */
export function perFlower(perUnit: number, flowers: number): number {
  return -Math.expm1(Math.log1p(-perUnit) / flowers);
}

/**
 * Returns the Beta(a, b) of a count in its own unit: Jeffreys' a = hits + ½, b = misses + ½.
 * @param sameSpringLuck how alike flowers of one spring and pair are (intraclass correlation, 0 if not at all): hits and misses are first
 *   divided by max(1, 1 + (of/lots − 1)·ρ), so that many flowers of one spring do not look surer than they are
 *
 * **Source:** Jeffreys prior for a binomial chance; design effect of Kish (1965), Survey Sampling.
 */
export function countShape({ hits, of, lots }: Counted, sameSpringLuck = 0): { a: number; b: number } {
  const effect = Math.max(1, 1 + (of / lots - 1) * sameSpringLuck);
  return { a: hits / effect + 0.5, b: (of - hits) / effect + 0.5 };
}

/** The middle of an estimate: its value, likely value, counted share (per flower) or weighted mean. */
export function middleOf(estimate: Estimate): number {
  if (typeof estimate === 'number') return estimate;
  if ('value' in estimate) return estimate.value;
  if ('low' in estimate) return estimate.likely;
  if ('hits' in estimate) return perFlower(estimate.hits / estimate.of, estimate.unit?.flowers ?? 1);
  const weight = estimate.oneOf.reduce((sum, option) => sum + option.weight, 0);
  return estimate.oneOf.reduce((sum, option) => sum + option.value * option.weight, 0) / weight;
}

/** A range that can be argued with: half of the way to the nearer end for a share, a quarter to either side for the rest. */
function around(value: number, bounds: Bounds, isShare: boolean): Omit<Ranged, 'source'> {
  const room = isShare ? Math.min(value, 1 - value) / 2 : Math.abs(value) / 4;
  const half = room > 0 ? room : isShare ? 0.05 : Math.min(1, (bounds.max - bounds.min) / 10);
  return { low: clamp(bounds, tidy(value - half)), likely: value, high: clamp(bounds, tidy(value + half)) };
}

/** Middle as counted; ends three standard deviations off, where a PERT range of the same spread has them. */
function rangeOfCount(count: Counted, bounds: Bounds): Omit<Ranged, 'source'> {
  const { a, b } = countShape(count);
  const mean = a / (a + b);
  const sd = Math.sqrt((mean * (1 - mean)) / (a + b + 1));
  const flowers = count.unit?.flowers ?? 1;
  const end = (value: number): number => tidy(perFlower(clamp({ min: 0, max: 1 }, value), flowers));
  const likely = clamp(bounds, tidy(middleOf(count)));
  return { low: Math.min(likely, clamp(bounds, end(mean - 3 * sd))), likely, high: Math.max(likely, clamp(bounds, end(mean + 3 * sd))) };
}

function toRange(estimate: Estimate, bounds: Bounds, isShare: boolean): Omit<Ranged, 'source'> {
  if (typeof estimate === 'number' || 'value' in estimate) return around(middleOf(estimate), bounds, isShare);
  if ('low' in estimate) return { low: estimate.low, likely: estimate.likely, high: estimate.high };
  if ('hits' in estimate) return rangeOfCount(estimate, bounds);
  const values = estimate.oneOf.map((option) => option.value);
  return { low: Math.min(...values), likely: tidy(middleOf(estimate)), high: Math.max(...values) };
}

/** As many as weigh like the range (same mean and spread); twenty where one number says nothing of its spread. */
function toCount(estimate: Estimate): Omit<Counted, 'source'> {
  if (typeof estimate === 'number' || 'value' in estimate) {
    const share = clamp({ min: 0, max: 1 }, middleOf(estimate));
    const of = [20, 50, 100].find((n) => Math.abs(Math.round(share * n) / n - share) < 0.005) ?? 200;
    return { hits: Math.round(share * of), of, lots: 1 };
  }
  const { low, likely, high } = toRange(estimate, { min: 0, max: 1 }, true);
  const mean = pertMean(low, likely, high);
  const variance = pertVariance(low, likely, high);
  const of = variance > 0 ? clamp({ min: 1, max: 10_000 }, Math.round((mean * (1 - mean)) / variance - 2)) : 20;
  return { hits: clamp({ min: 0, max: of }, Math.round(mean * (of + 1) - 0.5)), of, lots: 1 };
}

function toAlternatives(estimate: Estimate, bounds: Bounds, isShare: boolean): { value: number; weight: number }[] {
  const { low, likely, high } = toRange(estimate, bounds, isShare);
  if (typeof estimate === 'number' || 'value' in estimate)
    return [
      { value: likely, weight: 1 },
      { value: likely === high ? low : high, weight: 1 },
    ];
  // The weights with which a PERT range counts its three numbers.
  return [
    { value: low, weight: 1 },
    { value: likely, weight: 4 },
    { value: high, weight: 1 },
  ];
}

/**
 * Writes an estimate in another form and keeps its middle; the source goes along. Going to fewer numbers loses what they said
 * of the spread, so the way back is undo.
 * @param bounds of the field
 * @param isShare a share narrows towards 0 and 1; only a share can be a count
 */
export function toForm(estimate: Estimate, form: EstimateForm, bounds: Bounds, isShare: boolean): Estimate {
  if (formOf(estimate) === form) return estimate;
  const source = sourceOf(estimate);
  const kept = source ? { source } : {};
  if (form === 'known') return source ? { value: tidy(middleOf(estimate)), source } : tidy(middleOf(estimate));
  if (form === 'ranged') return { ...toRange(estimate, bounds, isShare), source: source ?? { kind: 'guess', note: '' } };
  if (form === 'counted') return { ...toCount(estimate), source: source ?? { kind: 'counted', note: '' } };
  return { oneOf: toAlternatives(estimate, bounds, isShare), ...kept };
}

/** Prints an estimate's numbers without unit: “8”, “40–55–70”, “18 of 240”, “20 or 50”. */
export function printEstimate(estimate: Estimate, scale: Scale = 'number'): string {
  const print = (value: number): string => printNumber(value, scale);
  if (typeof estimate === 'number') return print(estimate);
  if ('value' in estimate) return print(estimate.value);
  if ('low' in estimate) return [estimate.low, estimate.likely, estimate.high].map(print).join('–');
  if ('hits' in estimate) {
    const { hits, of, unit } = estimate;
    return `${printNumber(hits)} of ${printNumber(of)}${unit ? ` ${unit.name}s of ${String(unit.flowers)}` : ''}`;
  }
  return estimate.oneOf.map((option) => print(option.value)).join(' or ');
}
