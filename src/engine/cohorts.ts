import { exp, power } from '../random/elementary.ts';
import { firstFruitShape } from '../statistics/weibull.ts';
import type { Compiled, CompiledKind } from './compiled.ts';

/** Classes of a cohort's seedlings: roots (ROOTS, 0–3) × will ever fruit or not × in the nursery or planted. */
export const CLASSES = 16;
export const classOf = (roots: number, never: number, planted: number) => (roots << 2) | (never << 1) | planted;

/** What becomes of the seedlings of a cohort: as their cross gives, copies of the seed parent, or dead at an age whatever they stand on. */
export const FATE = { ordinary: 0, clone: 1, doomed: 2 } as const;
export type Fate = (typeof FATE)[keyof typeof FATE];

/** Years to first fruit of a family: x = (earliest − 1) + Weibull(shape, scale); shape 0 means that every tree needs `fixed` years. */
export interface FirstFruitCurve {
  start: number;
  shape: number;
  scale: number;
  fixed: number;
}

/**
 * Seedlings that have not fruited, as counts: one cohort per family, cross entry, fate and spring of germination. Nothing is
 * allocated per tree.
 */
export class Cohorts {
  count = 0;
  generation: Int32Array;
  ordinal: Int32Array;
  cross: Int32Array;
  kind: Int32Array;
  mother: Int32Array;
  /** Handle of the father, or −1: drawn per seed from `pool`, among fathers of `poolKind`. */
  father: Int32Array;
  pool: Int32Array;
  poolKind: Int32Array;
  pollinated: Int32Array;
  /** See FATE. */
  fate: Int32Array;
  born: Int32Array;
  counts: Int32Array;
  /** Seedlings left in the cohort; a cohort at 0 is skipped. */
  left: Int32Array;
  /** Classes that can hold seedlings: 4 where none is weak and none is grafted, else all. */
  classes: Int32Array;
  start: Float64Array;
  shape: Float64Array;
  scale: Float64Array;
  fixed: Float64Array;
  /** Share of trees not yet in bearing at the last spring, on own roots and grafted. */
  notYetOwn: Float64Array;
  notYetGrafted: Float64Array;
  private capacity = 64;

  constructor() {
    const ints = () => new Int32Array(this.capacity);
    const reals = () => new Float64Array(this.capacity);
    this.generation = ints();
    this.ordinal = ints();
    this.cross = ints();
    this.kind = ints();
    this.mother = ints();
    this.father = ints();
    this.pool = ints();
    this.poolKind = ints();
    this.pollinated = ints();
    this.fate = ints();
    this.born = ints();
    this.left = ints();
    this.classes = ints();
    this.counts = new Int32Array(this.capacity * CLASSES);
    this.start = reals();
    this.shape = reals();
    this.scale = reals();
    this.fixed = reals();
    this.notYetOwn = reals();
    this.notYetGrafted = reals();
  }

  clear(): void {
    this.count = 0;
  }

  add(): number {
    if (this.count === this.capacity) this.grow();
    const c = this.count;
    this.count += 1;
    this.left[c] = 0;
    this.counts.fill(0, c * CLASSES, (c + 1) * CLASSES);
    this.notYetOwn[c] = 1;
    this.notYetGrafted[c] = 1;
    return c;
  }

  /** Share of the cohort not yet in bearing in the season it is `age`: own roots. */
  notYet(c: number, age: number): number {
    const shape = this.shape[c]!;
    if (shape === 0) return age < this.fixed[c]! ? 1 : 0;
    const over = age - this.start[c]!;
    return over <= 0 ? 1 : exp(-power(over / this.scale[c]!, shape));
  }

  private grow(): void {
    this.capacity *= 2;
    for (const name of [
      'generation',
      'ordinal',
      'cross',
      'kind',
      'mother',
      'father',
      'pool',
      'poolKind',
      'pollinated',
      'fate',
      'born',
      'left',
      'classes',
    ] as const) {
      const to = new Int32Array(this.capacity);
      to.set(this[name]);
      this[name] = to;
    }
    const counts = new Int32Array(this.capacity * CLASSES);
    counts.set(this.counts);
    this.counts = counts;
    for (const name of ['start', 'shape', 'scale', 'fixed', 'notYetOwn', 'notYetGrafted'] as const) {
      const to = new Float64Array(this.capacity);
      to.set(this[name]);
      this[name] = to;
    }
  }
}

/** Three seasons of a kind in the current future, sorted; a fixed kind gives three times the same. A hybrid's follow its parents', seed parent two to one. */
function seasons(compiled: Compiled, kind: CompiledKind, values: Float64Array, depth = 0): readonly [number, number, number] {
  if (kind.firstFruitForm === 2 && depth < 4) {
    const seed = seasons(compiled, compiled.kinds[kind.betweenSeed]!, values, depth + 1);
    const pollen = seasons(compiled, compiled.kinds[kind.betweenPollen]!, values, depth + 1);
    return [(2 * seed[0] + pollen[0]) / 3, (2 * seed[1] + pollen[1]) / 3, (2 * seed[2] + pollen[2]) / 3];
  }
  const e = values[kind.earliestAt]!;
  if (kind.firstFruitForm === 0) return [e, e, e];
  const m = values[kind.halfAt]!;
  const t = values[kind.ninetyAt]!;
  const low = Math.min(e, m, t);
  const high = Math.max(e, m, t);
  // The middle one is taken, not reckoned: a rounded sum could fall outside the other two.
  return [low, Math.max(Math.min(e, m), Math.min(Math.max(e, m), t)), high];
}

/**
 * Curve of a family: shifted Weibull through “half by” and “nine in ten by”, its scale multiplied by the family effect
 * (`family` given the kind's spread; not asked where every tree needs the same time).
 * **Source:** own derivation, docs/model.md “First fruit”.
 */
export function firstFruitCurve(compiled: Compiled, kind: CompiledKind, values: Float64Array, family: (spread: number) => number): FirstFruitCurve {
  const [earliest, half, ninety] = seasons(compiled, kind, values);
  if (earliest === ninety) return { start: 0, shape: 0, scale: 0, fixed: earliest };
  // Drawn seasons may fall together; a thousandth of a year apart is as good as together.
  const { shape, scale } = firstFruitShape(earliest, half, Math.max(ninety, half + 0.001));
  return { start: earliest - 1, shape, scale: scale * family(values[kind.familySpreadAt]!), fixed: 0 };
}
