import { gameteDosages } from '../genetics/polysomic.ts';
import { testCrossShare } from '../genetics/test-cross.ts';
import { wholePower } from '../random/elementary.ts';
import type { Compiled, CompiledTree } from './compiled.ts';
import type { CompiledRule } from './compiled-genome.ts';

/** What test crosses say of a tree's genes; each seedling was looked at in one season (docs/model.md §4). */
export class TestCrosses {
  /** Shares of gametes with 0, 1 … copies, by gene, sets and copies. */
  private readonly gametes = new Map<number, readonly number[]>();

  constructor(
    private readonly compiled: Compiled,
    private readonly values: Float64Array,
  ) {}

  /**
   * Chance of what the seedlings of one test cross showed, but for a factor that is the same for every genotype.
   * @param copies of the tree, by gene
   */
  likelihood({ trait, showed, of }: CompiledTree['testCrosses'][number], rule: CompiledRule, copies: ArrayLike<number>, sets: number): number {
    // A tree with an odd number of sets gives few seedlings, and none that say much.
    if (sets % 2 === 1) return 1;
    const { canShowAt, seasonsAt, falseShowAt } = this.compiled.shown[trait]!;
    const able = this.values[canShowAt]! * testCrossShare(rule, sets / 2, (gene) => this.gamete(sets, gene, copies[gene]!));
    const chance = able * this.values[seasonsAt]! + (1 - able) * this.values[falseShowAt]!;
    return wholePower(chance, showed) * wholePower(1 - chance, of - showed);
  }

  private gamete(sets: number, gene: number, copies: number): readonly number[] {
    const key = (gene * 8 + sets) * 8 + copies;
    const known = this.gametes.get(key);
    if (known) return known;
    const shares = gameteDosages(sets, copies, this.compiled.genes.doubleReduction[gene]);
    this.gametes.set(key, shares);
    return shares;
  }
}
