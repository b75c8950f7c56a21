import { placeGene, qualifiesWith } from '../genetics/copies.ts';
import { MOST_WEIGHED } from '../model/limits.ts';
import { wholePower } from '../random/elementary.ts';
import type { Stream } from '../random/stream.ts';
import type { Compiled, CompiledTree } from './compiled.ts';
import type { CompiledRule } from './compiled-genome.ts';
import { TestCrosses } from './test-crosses.ts';

/** Chance of k shows in n seasons at rate p, without the binomial coefficient (the same for every genotype). */
const likelihood = (k: number, n: number, p: number) => wholePower(p, k) * wholePower(1 - p, n - k);

/**
 * Draws the genes of founding trees, conditioned on what was seen of them and of their test crosses under the future's rules: each genotype of
 * the unknown genes is weighed by its chance among trees of the kind and the chance of what was seen (docs/model.md §4).
 */
export class Founders {
  private readonly weights = new Float64Array(MOST_WEIGHED);
  /** Copies by gene of the tree that is being drawn. */
  private readonly copies: Uint8Array;
  private readonly testCrosses: TestCrosses;

  constructor(
    private readonly compiled: Compiled,
    private readonly values: Float64Array,
    private readonly ruleOf: Int32Array,
  ) {
    this.copies = new Uint8Array(compiled.genes.count);
    this.testCrosses = new TestCrosses(compiled, values);
  }

  private rule(trait: number): CompiledRule {
    return this.compiled.shown[trait]!.rules[this.ruleOf[trait]!]!;
  }

  /** Writes the gene words of a tree whose genome begins at word offset `at`, and whether it is able to show each trait to able[ableFrom + trait]. */
  draw(tree: CompiledTree, genome: Int32Array, at: number, able: Uint8Array, ableFrom: number, stream: Stream): void {
    const { compiled, copies } = this;
    const { words } = compiled;
    const { sets } = compiled.kinds[tree.kind]!;
    for (let h = 0; h < sets; h += 1) genome[at + h * words] = 0;
    copies.fill(0);
    const put = (gene: number, n: number) => {
      copies[gene] = n;
      const side = tree.homologueOf[gene]!;
      if (n === 1 && side >= 0) genome[at + side * words]! |= 1 << gene;
      else placeGene(genome, at, words, sets, gene, n, stream);
    };
    const weighed = this.weighedGenes(tree);
    tree.copiesOf.forEach((known, gene) => {
      if (known >= 0) put(gene, Math.min(known, sets));
      else if (!weighed.includes(gene)) {
        let drawn = 0;
        for (let h = 0; h < sets; h += 1) drawn += +(stream.uniform() < this.frequency(tree, gene));
        put(gene, drawn);
      }
    });
    if (weighed.length > 0) {
      let code = this.drawGenotype(tree, weighed, sets, stream.uniform());
      for (const gene of weighed) {
        put(gene, code % (sets + 1));
        code = Math.floor(code / (sets + 1));
      }
    }
    compiled.shown.forEach((_, trait) => {
      able[ableFrom + trait] = +(stream.uniform() < this.chanceAble(tree, trait));
    });
  }

  private frequency(tree: CompiledTree, gene: number): number {
    return this.values[tree.frequencyAt[gene]!]!;
  }

  /** Unknown genes on which something that was seen depends under the future's rules. */
  private weighedGenes(tree: CompiledTree): number[] {
    const genes: number[] = [];
    for (const { trait } of [...tree.seen, ...tree.testCrosses])
      for (const gene of this.rule(trait).genes) if (tree.copiesOf[gene] === -1 && !genes.includes(gene)) genes.push(gene);
    return genes;
  }

  /** Returns the drawn genotype of the weighed genes: their copies as digits to the base sets + 1, the first gene last. */
  private drawGenotype(tree: CompiledTree, genes: readonly number[], sets: number, u: number): number {
    const { weights, copies } = this;
    const base = sets + 1;
    let count = 1;
    for (let i = 0; i < genes.length; i += 1) count *= base;
    let total = 0;
    for (let code = 0; code < count; code += 1) {
      let weight = 1;
      let digits = code;
      for (const gene of genes) {
        const n = digits % base;
        digits = (digits - n) / base;
        copies[gene] = n;
        weight *= chanceOfCopies(n, sets, this.frequency(tree, gene));
      }
      for (const seen of tree.seen) weight *= this.chanceSeen(seen);
      for (const cross of tree.testCrosses) weight *= this.testCrosses.likelihood(cross, this.rule(cross.trait), copies, sets);
      total += weight;
      weights[code] = weight;
    }
    let left = u * total;
    for (let code = 0; code < count - 1; code += 1) {
      left -= weights[code]!;
      if (left < 0) return code;
    }
    // Nothing fits what was seen (all weights 0): the fullest genotype; the check names the contradiction.
    return count - 1;
  }

  private chanceSeen(seen: CompiledTree['seen'][number]): number {
    const trait = this.compiled.shown[seen.trait]!;
    const fits = qualifiesWith(this.rule(seen.trait), this.copies);
    if (seen.source) return fits ? 1 : 0;
    const wrong = likelihood(seen.showed, seen.seasons, this.values[trait.falseShowAt]!);
    if (!fits) return wrong;
    const canShow = this.values[trait.canShowAt]!;
    return canShow * likelihood(seen.showed, seen.seasons, this.values[trait.seasonsAt]!) + (1 - canShow) * wrong;
  }

  /** Chance that the tree is able to show the trait, given its genes and what was seen. */
  private chanceAble(tree: CompiledTree, trait: number): number {
    if (!qualifiesWith(this.rule(trait), this.copies)) return 0;
    const { canShowAt, seasonsAt, falseShowAt } = this.compiled.shown[trait]!;
    const canShow = this.values[canShowAt]!;
    const seen = tree.seen.find((entry) => entry.trait === trait);
    if (!seen) return canShow;
    if (seen.source) return 1;
    const right = canShow * likelihood(seen.showed, seen.seasons, this.values[seasonsAt]!);
    const wrong = (1 - canShow) * likelihood(seen.showed, seen.seasons, this.values[falseShowAt]!);
    return right + wrong > 0 ? right / (right + wrong) : canShow;
  }
}

/** Binomial chance of n copies on so many sets at frequency p. */
function chanceOfCopies(n: number, sets: number, p: number): number {
  if (sets === 2) return n === 0 ? (1 - p) * (1 - p) : n === 1 ? 2 * p * (1 - p) : p * p;
  let ways = 1;
  for (let i = 0; i < n; i += 1) ways = (ways * (sets - i)) / (i + 1);
  return ways * wholePower(p, n) * wholePower(1 - p, sets - n);
}
