import { formOf, type Estimate, type EstimateBounds, type EstimateForm } from '../../model/estimate.ts';
import type { FieldMeta } from '../../model/fields.ts';
import { fieldText, problems } from '../../text/fields.ts';
import type { Draft } from './draft.ts';
import { numberDraft, unitOf, type NumberRules } from './number-reading.ts';

/** One number of an estimate: the box it stands in. */
export interface Slot {
  readonly key: string;
  readonly label: string;
  readonly rules: NumberRules;
  /** Forms of the whole estimate that may be typed into this box. */
  readonly takes: readonly EstimateForm[];
  readonly draft: Draft<number | undefined>;
}

/** Numbers by the key of their slot. */
export type Numbers = ReadonlyMap<string, number>;

/** Reads the numbers out of an estimate, in the order of their boxes. */
export function numbersOf(estimate: Estimate): Numbers {
  if (typeof estimate === 'number') return new Map([['value', estimate]]);
  if ('value' in estimate) return new Map([['value', estimate.value]]);
  if ('low' in estimate)
    return new Map([
      ['low', estimate.low],
      ['likely', estimate.likely],
      ['high', estimate.high],
    ]);
  if ('hits' in estimate) {
    const { hits, of, lots, unit } = estimate;
    return new Map([['hits', hits], ['of', of], ['lots', lots], ...(unit ? ([['flowers', unit.flowers]] as const) : [])]);
  }
  return new Map(
    estimate.oneOf.flatMap(
      ({ value, weight }, i) =>
        [
          [`value ${String(i)}`, value],
          [`weight ${String(i)}`, weight],
        ] as const,
    ),
  );
}

/** Puts numbers back into an estimate of the same form; a number that is missing keeps its old value. */
export function withNumbers(estimate: Estimate, numbers: Numbers): Estimate {
  const at = (key: string, old: number): number => numbers.get(key) ?? old;
  if (typeof estimate === 'number') return at('value', estimate);
  if ('value' in estimate) return { ...estimate, value: at('value', estimate.value) };
  if ('low' in estimate) return { ...estimate, low: at('low', estimate.low), likely: at('likely', estimate.likely), high: at('high', estimate.high) };
  if ('hits' in estimate) {
    const { unit } = estimate;
    const counted = { ...estimate, hits: at('hits', estimate.hits), of: at('of', estimate.of), lots: at('lots', estimate.lots) };
    return unit ? { ...counted, unit: { ...unit, flowers: at('flowers', unit.flowers) } } : counted;
  }
  return {
    ...estimate,
    oneOf: estimate.oneOf.map(({ value, weight }, i) => ({ value: at(`value ${String(i)}`, value), weight: at(`weight ${String(i)}`, weight) })),
  };
}

const MANY = 1e9;
const FIXED: Readonly<Record<string, Omit<NumberRules, 'unit'>>> = {
  hits: { scale: 'count', min: 0, max: MANY, whole: false, needed: true },
  of: { scale: 'count', min: 0, max: MANY, whole: false, needed: true },
  lots: { scale: 'count', min: 1, max: 10_000, whole: true, needed: true },
  flowers: { scale: 'count', min: 1, max: 1000, whole: true, needed: true },
  weight: { scale: 'number', min: 0, max: MANY, whole: false, needed: true },
};
const LABELS: Readonly<Record<string, string>> = {
  low: fieldText.low,
  likely: fieldText.likely,
  high: fieldText.high,
  hits: fieldText.hits,
  of: fieldText.outOf,
  lots: fieldText.lots,
  flowers: fieldText.flowersInIt,
  weight: fieldText.weight,
  value: fieldText.value,
};

/** Boxes of a count, into which a whole count may be typed. */
const COUNTED: ReadonlySet<string> = new Set(['hits', 'of']);

/** Makes the boxes of an estimate, empty as yet. */
export function slotsOf(estimate: Estimate, { min, max, forms }: EstimateBounds, meta: FieldMeta | undefined): readonly Slot[] {
  const own: NumberRules = { scale: meta?.scale ?? 'number', min, max, whole: false, needed: true, unit: unitOf(meta) };
  return [...numbersOf(estimate).keys()].map((key) => {
    const [kind = '', place] = key.split(' ');
    const fixed = FIXED[kind];
    const rules = fixed ? { ...fixed, unit: '' } : own;
    const label = LABELS[kind] ?? kind;
    const takes: readonly EstimateForm[] = COUNTED.has(kind) ? ['known', 'counted'] : fixed || place !== undefined ? ['known'] : forms;
    return { key, rules, takes, draft: numberDraft(rules.scale), label: place === undefined ? label : `${fieldText.alternative(Number(place) + 1)}, ${label}` };
  });
}

/** What is wrong between numbers that are each right by themselves, and in which boxes. */
export interface Clash {
  readonly problem: string;
  readonly keys: readonly string[];
}

export function clashIn(estimate: Estimate): Clash | undefined {
  if (typeof estimate === 'number' || 'value' in estimate) return undefined;
  if ('low' in estimate) {
    if (estimate.low > estimate.likely) return { problem: problems.order(fieldText.low, fieldText.likely), keys: ['low', 'likely'] };
    return estimate.likely > estimate.high ? { problem: problems.order(fieldText.likely, fieldText.high), keys: ['likely', 'high'] } : undefined;
  }
  if ('hits' in estimate) {
    if (estimate.of <= 0) return { problem: problems.noneCounted, keys: ['of'] };
    return estimate.hits > estimate.of ? { problem: problems.hits, keys: ['hits', 'of'] } : undefined;
  }
  const none = estimate.oneOf.findIndex((option) => option.weight <= 0);
  return none < 0 ? undefined : { problem: problems.noneCounted, keys: [`weight ${String(none)}`] };
}

/** Which boxes an estimate has: the same word means that the boxes can stay as they are. */
export const shapeOf = (estimate: Estimate): string => `${formOf(estimate)} ${[...numbersOf(estimate).keys()].join()}`;

/** The estimate with one more alternative, or without one. */
export function withAlternative(estimate: Estimate, change: 'more' | number): Estimate {
  if (typeof estimate === 'number' || !('oneOf' in estimate)) return estimate;
  const last = estimate.oneOf.at(-1);
  if (change !== 'more') return { ...estimate, oneOf: estimate.oneOf.filter((_, i) => i !== change) };
  return last ? { ...estimate, oneOf: [...estimate.oneOf, { ...last }] } : estimate;
}

/** The count made in clusters of so many flowers, or in single flowers where there is no number. */
export function inClusters(estimate: Estimate, flowers: number | undefined): Estimate {
  if (typeof estimate === 'number' || !('hits' in estimate)) return estimate;
  const { hits, of, lots, source } = estimate;
  return { hits, of, lots, ...(flowers === undefined ? {} : { unit: { name: fieldText.cluster, flowers } }), ...(source ? { source } : {}) };
}
