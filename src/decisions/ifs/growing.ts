import type { Columns } from '../../results/columns.ts';
import type { Futures } from '../futures.ts';
import { extended, runOne, type Variant } from '../steps.ts';

/** Columns of variants, each as long as it has been asked for so far. */
export class Growing {
  private readonly columns = new Map<Variant, Columns>();

  constructor(private readonly futures: Futures) {}

  /** Runs each of these on, up to so many futures; those that are there already are not run again. */
  async to(variants: Iterable<Variant>, runs: number): Promise<void> {
    await Promise.all(
      [...new Set(variants)].map(async (variant) => {
        const before = this.columns.get(variant);
        const from = before?.runs ?? 0;
        if (from < runs) this.columns.set(variant, extended(before, await runOne(this.futures, variant, from, runs - from)));
      }),
    );
  }

  /** All futures of a variant so far; undefined before the first. */
  of(variant: Variant): Columns | undefined {
    return this.columns.get(variant);
  }
}
