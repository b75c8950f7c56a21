import { copiesAt, qualifiesAt } from '../genetics/copies.ts';
import type { GenotypeRule } from '../genetics/genome.ts';
import type { Compiled } from './compiled.ts';

/** How an individual stands with the breeder. */
export const STATUS = { young: 0, judging: 1, waiting: 2, pick: 3, discarded: 4, father: 5 } as const;

/** Roots and weakness of a seedling: sound or weak on its own roots, grafted and well, grafted but weak in the top. */
export const ROOTS = { sound: 0, weak: 1, grafted: 2, graftedWeak: 3 } as const;

/**
 * All trees that have a genome in one future of one plan, as parallel arrays. Handles: founding trees first, then the anonymous
 * neighbours of every pool, then individuals in the order in which they come to matter.
 */
export class Stand {
  readonly firstIndividual: number;
  count = 0;
  /** Positions of individuals that live, or live on in backups, in order; tidied every winter. */
  living: Int32Array;
  livingCount = 0;
  /** Living individuals that still stand in the nursery. */
  unplanted = 0;
  genome: Int32Array;
  able: Uint8Array;
  generation: Uint8Array;
  status: Uint8Array;
  alive: Uint8Array;
  roots: Uint8Array;
  neverFruits: Uint8Array;
  planted: Uint8Array;
  kind: Uint8Array;
  /** 0: both, 1: male, 2: female. */
  sex: Uint8Array;
  cohort: Int32Array;
  born: Int32Array;
  /** Year of its first flowers, −1 while young. */
  bears: Int32Array;
  units: Int32Array;
  judged: Uint8Array;
  /** Passed the leaf test of its generation. */
  tested: Uint8Array;
  backups: Int32Array;
  /** Order in which it was picked within its generation. */
  ordinal: Int32Array;
  /** Seasons seen to show, by trait: at all, in full, in part. */
  shownAny: Uint8Array;
  shownFull: Uint8Array;
  shownPart: Uint8Array;
  sum: Float64Array;
  /** C + E, and C alone, by measured trait. */
  lasting: Float64Array;
  travels: Float64Array;

  /** Kind of each founding tree and neighbour. */
  readonly founderKind: Uint8Array;
  /** Words a homologue, most homologues of any tree, and words a tree. */
  private readonly words: number;
  private readonly sets: number;
  private readonly stride: number;
  private readonly shownCount: number;
  private readonly measuredCount: number;
  private capacity = 256;

  constructor(compiled: Compiled) {
    this.firstIndividual = compiled.trees.length + compiled.pools.reduce((sum, pool) => sum + (pool.background?.trees ?? 0), 0);
    this.words = compiled.words;
    this.sets = compiled.sets;
    this.stride = compiled.sets * compiled.words;
    this.founderKind = new Uint8Array(this.firstIndividual);
    compiled.trees.forEach(({ kind }, tree) => (this.founderKind[tree] = kind));
    for (const { background } of compiled.pools)
      if (background) this.founderKind.fill(background.kind, background.firstHandle, background.firstHandle + background.trees);
    this.shownCount = compiled.shown.length;
    this.measuredCount = compiled.measured.length;
    const handles = this.firstIndividual + this.capacity;
    const bytes = () => new Uint8Array(this.capacity);
    const ints = () => new Int32Array(this.capacity);
    this.genome = new Int32Array(handles * this.stride);
    this.able = new Uint8Array(handles * this.shownCount);
    this.living = ints();
    this.generation = bytes();
    this.status = bytes();
    this.alive = bytes();
    this.roots = bytes();
    this.neverFruits = bytes();
    this.planted = bytes();
    this.kind = bytes();
    this.sex = bytes();
    this.judged = bytes();
    this.tested = bytes();
    this.cohort = ints();
    this.born = ints();
    this.bears = ints();
    this.units = ints();
    this.backups = ints();
    this.ordinal = ints();
    this.shownAny = new Uint8Array(this.capacity * this.shownCount);
    this.shownFull = new Uint8Array(this.capacity * this.shownCount);
    this.shownPart = new Uint8Array(this.capacity * this.shownCount);
    this.sum = new Float64Array(this.capacity * this.measuredCount);
    this.lasting = new Float64Array(this.capacity * this.measuredCount);
    this.travels = new Float64Array(this.capacity * this.measuredCount);
  }

  /** Word offset of a tree's genome. */
  offset(handle: number): number {
    return handle * this.stride;
  }

  /** Kind of any tree by its handle. */
  kindOf(handle: number): number {
    return handle < this.firstIndividual ? this.founderKind[handle]! : this.kind[handle - this.firstIndividual]!;
  }

  /** Copies of a gene that a tree carries, 0 … sets of its kind. */
  copies(handle: number, gene: number): number {
    return copiesAt(this.genome, this.offset(handle), this.words, this.sets, gene);
  }

  qualifies(rule: GenotypeRule, handle: number): boolean {
    return qualifiesAt(rule, this.genome, this.offset(handle), this.words, this.sets);
  }

  ableAt(handle: number): number {
    return handle * this.shownCount;
  }

  handleOf(individual: number): number {
    return this.firstIndividual + individual;
  }

  /** Forgets all individuals; founders and neighbours stay. */
  clear(): void {
    this.count = 0;
    this.livingCount = 0;
    this.unplanted = 0;
  }

  /** Adds an individual with nothing seen yet and returns its position; the caller fills the rest. */
  add(): number {
    if (this.count === this.capacity) this.grow();
    const i = this.count;
    this.count += 1;
    this.living[this.livingCount] = i;
    this.livingCount += 1;
    this.alive[i] = 1;
    this.sex[i] = 0;
    this.judged[i] = 0;
    this.tested[i] = 0;
    this.backups[i] = 0;
    this.ordinal[i] = -1;
    for (let t = i * this.shownCount; t < (i + 1) * this.shownCount; t += 1) this.shownAny[t] = this.shownFull[t] = this.shownPart[t] = 0;
    for (let t = i * this.measuredCount; t < (i + 1) * this.measuredCount; t += 1) this.sum[t] = 0;
    return i;
  }

  /** Drops the dead from the list of the living, keeping its order. */
  tidy(): void {
    const { living, alive, backups } = this;
    let kept = 0;
    for (let n = 0; n < this.livingCount; n += 1) {
      const i = living[n]!;
      if (alive[i] === 1 || backups[i]! > 0) living[kept++] = i;
    }
    this.livingCount = kept;
  }

  private grow(): void {
    this.capacity *= 2;
    const handles = this.firstIndividual + this.capacity;
    const { capacity, shownCount, measuredCount } = this;
    this.genome = wider(this.genome, new Int32Array(handles * this.stride));
    this.able = wider(this.able, new Uint8Array(handles * shownCount));
    for (const name of ['generation', 'status', 'alive', 'roots', 'neverFruits', 'planted', 'kind', 'sex', 'judged', 'tested'] as const)
      this[name] = wider(this[name], new Uint8Array(capacity));
    for (const name of ['cohort', 'born', 'bears', 'units', 'backups', 'ordinal', 'living'] as const) this[name] = wider(this[name], new Int32Array(capacity));
    for (const name of ['shownAny', 'shownFull', 'shownPart'] as const) this[name] = wider(this[name], new Uint8Array(capacity * shownCount));
    for (const name of ['sum', 'lasting', 'travels'] as const) this[name] = wider(this[name], new Float64Array(capacity * measuredCount));
  }
}

function wider<T extends Int32Array | Uint8Array | Float64Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
