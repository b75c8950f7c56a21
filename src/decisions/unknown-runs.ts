import type { FactMix } from '../engine/fact-mix.ts';
import { DOMAIN } from '../engine/keys.ts';
import type { Programme } from '../model/programme.ts';
import { textKey } from '../random/mix.ts';
import { rootOf, Stream } from '../random/stream.ts';
import { shuffled, totalByRow, type Levels } from '../statistics/sensitivity.ts';
import type { Futures } from './futures.ts';
import type { UnknownFact } from './unknown-facts.ts';

/** Lucks that each set of facts is run with, and how many of them again with one fact drawn anew. */
export const LUCKS = 40;
export const SWAP_LUCKS = 8;

/** Numbers of the lucks of each kind of run stand apart. */
const OF_SETS = 1 << 28;

/** Stream of one purpose of this question: how its design is shuffled, which rows a resample takes. */
export function questionStream(programme: Programme, purpose: string, part = 0): Stream {
  return new Stream(rootOf(programme.shuffleWord)).future(DOMAIN.questions, part).key(textKey(purpose));
}

/**
 * Futures of one plan in which facts are held or drawn anew, growing in steps. Everything is 1 for a proven tree by the last year, 0 for none.
 * Set n of facts is that of future n.
 */
export class UnknownRuns {
  /** Per fact, by its level: proven trees in `replicates` futures each. */
  readonly sums: readonly Float64Array[];
  replicates = 0;
  /** Per set of facts: proven trees in LUCKS futures. */
  private sets = new Float64Array(0);
  /** Outcomes of the sets, at [set · LUCKS + luck]. */
  private outcomes = new Uint8Array(0);
  /** Per fact and row: what it says of the total index; null for a fact that changed nothing in the first look. */
  readonly totals: (readonly number[] | null)[];
  /** Per fact: futures that came out another way when it was drawn anew, of so many. */
  readonly changed: { changed: number; of: number }[];
  private readonly groups: readonly (readonly string[])[];

  constructor(
    private readonly futures: Futures,
    private readonly programme: Programme,
    private readonly facts: readonly UnknownFact[],
    readonly levels: number,
  ) {
    // The last fact is whatever no other names, as the last group of a mix is.
    this.groups = facts.slice(0, -1).map(({ places }) => places);
    this.sums = facts.map(() => new Float64Array(levels));
    this.totals = facts.map(() => []);
    this.changed = facts.map(() => ({ changed: 0, of: 0 }));
  }

  /** Levels of a fact as statistics take them. */
  levelsOf(fact: number): Levels {
    const sums = this.sums[fact] ?? new Float64Array(0);
    return { sums, squares: sums, each: this.replicates };
  }

  /** All facts held together. */
  setLevels(): Levels {
    return { sums: this.sets, squares: this.sets, each: LUCKS };
  }

  /** Goes through all levels so many times in all: each fact in an order of its own, with a new luck for every future. */
  async replicate(upTo: number): Promise<void> {
    const width = this.facts.length;
    const jobs: Promise<void>[] = [];
    for (let replicate = this.replicates; replicate < upTo; replicate += 1) {
      const stream = questionStream(this.programme, 'order of levels', replicate);
      const orders = this.facts.map(() => shuffled(this.levels, stream));
      const sets = new Int32Array(this.levels * width);
      orders.forEach((order, f) => order.forEach((level, row) => (sets[row * width + f] = level)));
      const lucks = Int32Array.from({ length: this.levels }, (_, row) => replicate * this.levels + row);
      jobs.push(
        this.run({ groups: this.groups, sets, lucks }).then((proven) => {
          orders.forEach((order, f) => {
            const sums = this.sums[f];
            if (sums) order.forEach((level, row) => (sums[level] = (sums[level] ?? 0) + (proven[row] ?? 0)));
          });
        }),
      );
    }
    await Promise.all(jobs);
    this.replicates = Math.max(this.replicates, upTo);
  }

  /** Runs the sets of facts up to so many, each with LUCKS lucks. */
  async holdAll(upTo: number): Promise<void> {
    const from = this.sets.length;
    if (upTo <= from) return;
    const proven = await this.run(this.mixOf(from, upTo, LUCKS, () => 0));
    const outcomes = new Uint8Array(upTo * LUCKS);
    outcomes.set(this.outcomes);
    outcomes.set(proven, from * LUCKS);
    const sets = new Float64Array(upTo);
    outcomes.forEach((hit, i) => (sets[Math.floor(i / LUCKS)] = (sets[Math.floor(i / LUCKS)] ?? 0) + hit));
    this.outcomes = outcomes;
    this.sets = sets;
  }

  /**
   * Draws each fact anew alone in the first so many sets, under SWAP_LUCKS of the same lucks; sets must have been run so far.
   * @param keep whether a fact is still worth drawing anew
   */
  async drawAnew(from: number, upTo: number, keep: (fact: number) => boolean): Promise<void> {
    const before = new Uint8Array((upTo - from) * SWAP_LUCKS).map((_, i) => this.outcomes[(from + Math.floor(i / SWAP_LUCKS)) * LUCKS + (i % SWAP_LUCKS)] ?? 0);
    await Promise.all(
      this.facts.map(async (_, f) => {
        const rows = this.totals[f];
        if (!rows || !keep(f)) {
          this.totals[f] = null;
          return;
        }
        // The new draw comes from a set that no other run uses.
        const after = await this.run(this.mixOf(from, upTo, SWAP_LUCKS, (fact) => (fact === f ? this.levels : 0)));
        this.totals[f] = [...rows, ...totalByRow(before, after, SWAP_LUCKS)];
        const tally = this.changed[f];
        if (tally) {
          tally.of += after.length;
          tally.changed += after.reduce((n, hit, i) => n + Number(hit !== before[i]), 0);
        }
      }),
    );
  }

  /** Sets from … upTo − 1, each with its first lucks; a fact is taken from the set so many further on. */
  private mixOf(from: number, upTo: number, lucks: number, further: (fact: number) => number): FactMix {
    const width = this.facts.length;
    const rows = (upTo - from) * lucks;
    const sets = new Int32Array(rows * width);
    const numbers = new Int32Array(rows);
    const shift = this.facts.map((_, f) => further(f));
    for (let row = 0; row < rows; row += 1) {
      const set = from + Math.floor(row / lucks);
      numbers[row] = OF_SETS + set * LUCKS + (row % lucks);
      for (let f = 0; f < width; f += 1) sets[row * width + f] = set + (shift[f] ?? 0);
    }
    return { groups: this.groups, sets, lucks: numbers };
  }

  private async run(mix: FactMix): Promise<Uint8Array> {
    return Uint8Array.from(await this.futures.mixed(this.programme, [0], mix), (year) => Number(year >= 0));
  }
}
