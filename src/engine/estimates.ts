import type { Estimate } from '../model/estimate.ts';
import { betaFrom } from '../random/draws.ts';
import { textKey } from '../random/mix.ts';
import { effectiveCount, jeffreys, perFlower } from '../statistics/interval.ts';
import { pertShape } from '../statistics/pert.ts';
import type { Keyed } from './keys.ts';

/** Purpose of the facts stream of one estimate: its place in the document, never its position in a list. */
interface Drawn {
  readonly slot: number;
  readonly place: string;
  readonly key: number;
  /** Beta(alpha, beta) stretched to low…high, or weighted alternatives. */
  readonly alpha: number;
  readonly beta: number;
  readonly low: number;
  readonly high: number;
  readonly flowersPerUnit: number;
  readonly options: readonly { readonly value: number; readonly upTo: number }[] | null;
}

/**
 * Every estimate of a programme in one flat table. `values[slot]` holds the value in the current future; plain numbers are
 * filled once, the others anew by `draw`.
 */
export class EstimateTable {
  readonly values: Float64Array;
  private readonly drawn: readonly Drawn[];

  constructor(entries: readonly { readonly place: string; readonly estimate: Estimate; readonly rho: number }[], means: boolean) {
    this.values = new Float64Array(entries.length);
    const drawn: Drawn[] = [];
    entries.forEach(({ place, estimate, rho }, slot) => {
      if (typeof estimate === 'number') this.values[slot] = estimate;
      else if ('value' in estimate) this.values[slot] = estimate.value;
      else {
        const form = formula(estimate, rho);
        if (form.options === null && (means || form.low === form.high)) this.values[slot] = meanOf(form);
        else drawn.push({ slot, place, key: textKey(place), ...form });
      }
    });
    this.drawn = drawn;
  }

  /** Draws all facts of this form for the future that the stream stands at. */
  draw(facts: Keyed): void {
    const { drawn, values } = this;
    for (const d of drawn) {
      const stream = facts.key(d.key);
      values[d.slot] = inFlowers(
        d.options ? pick(d.options, stream.uniform()) : d.low + (d.high - d.low) * betaFrom(stream, d.alpha, d.beta),
        d.flowersPerUnit,
      );
    }
  }

  /** Places of the estimates that are drawn. An estimate that several entries take from one place is there once. */
  get drawnPlaces(): readonly string[] {
    return [...new Set(this.drawn.map(({ place }) => place))];
  }

  /** Slot of an estimate that is drawn; −1 when nothing is drawn for that place. */
  slotOf(place: string): number {
    return this.drawn.find((entry) => entry.place === place)?.slot ?? -1;
  }

  isDrawn(slot: number): boolean {
    return this.drawn.some((entry) => entry.slot === slot);
  }

  get drawnCount(): number {
    return this.drawn.length;
  }
}

type Formula = Omit<Drawn, 'slot' | 'place' | 'key'>;

/**
 * The distribution behind an estimate. PERT: Malcolm, Roseboom, Clark & Fazar 1959 (weight 4). Count: Jeffreys, Beta(hits + ½,
 * misses + ½), both divided first by the design effect 1 + (of/lots − 1)·ρ of units counted in the same spring.
 */
function formula(estimate: Exclude<Estimate, number | { value: number }>, rho: number): Formula {
  if ('low' in estimate) {
    const { low, likely, high } = estimate;
    // Without any width the value is known; the shape is never used.
    const shape = low === high ? { alpha: 1, beta: 1 } : pertShape(low, likely, high);
    return { ...shape, low, high, flowersPerUnit: 1, options: null };
  }
  if ('hits' in estimate) {
    const { hits, of } = effectiveCount(estimate.hits, estimate.of, estimate.lots, rho);
    return { ...jeffreys(hits, of), low: 0, high: 1, flowersPerUnit: estimate.unit?.flowers ?? 1, options: null };
  }
  const total = estimate.oneOf.reduce((sum, option) => sum + option.weight, 0);
  let upTo = 0;
  const options = estimate.oneOf.map(({ value, weight }) => ({ value, upTo: (upTo += weight / total) }));
  return { alpha: 1, beta: 1, low: 0, high: 1, flowersPerUnit: 1, options };
}

function meanOf({ alpha, beta, low, high, flowersPerUnit }: Formula): number {
  return inFlowers(low + ((high - low) * alpha) / (alpha + beta), flowersPerUnit);
}

function pick(options: readonly { readonly value: number; readonly upTo: number }[], u: number): number {
  let value = 0;
  for (const option of options) {
    value = option.value;
    if (u < option.upTo) break;
  }
  return value;
}

/** A rate in the unit it was counted in, for one flower. */
const inFlowers = (p: number, flowers: number): number => (flowers === 1 ? p : perFlower(p, flowers));
