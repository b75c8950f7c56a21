import { qualifies } from '../genetics/genome.ts';
import { MAX_WEIGHED_GENES } from '../model/limits.ts';
import { wholePower } from '../random/elementary.ts';
import type { Stream } from '../random/stream.ts';
import type { Compiled, CompiledRule, CompiledTree } from './compiled.ts';

/** Chance of k shows in n seasons at rate p, without the binomial coefficient (the same for every genotype). */
const likelihood = (k: number, n: number, p: number) => wholePower(p, k) * wholePower(1 - p, n - k);

/**
 * Draws the gene words of founding trees, conditioned on what was seen of them under the future's rules: each genotype of the
 * unknown genes is weighed by its chance among trees of the kind and the chance of what was seen (docs/model.md §4).
 */
export class Founders {
  private readonly weights = new Float64Array(3 ** MAX_WEIGHED_GENES);

  constructor(
    private readonly compiled: Compiled,
    private readonly values: Float64Array,
    private readonly ruleOf: Int32Array,
  ) {}

  private rule(trait: number): CompiledRule {
    return this.compiled.shown[trait]!.rules[this.ruleOf[trait]!]!;
  }

  /** Writes gene words to genome[a] and genome[b], and whether the tree is able to show each trait to able[ableFrom + trait]. */
  draw(tree: CompiledTree, genome: Int32Array, a: number, b: number, able: Uint8Array, ableFrom: number, stream: Stream): void {
    let wordA = 0;
    let wordB = 0;
    const put = (gene: number, copies: number) => {
      if (copies === 2) {
        wordA |= 1 << gene;
        wordB |= 1 << gene;
      } else if (copies === 1) {
        const side = tree.homologueOf[gene]!;
        if (side === 0 || (side === -1 && stream.uniform() < 0.5)) wordA |= 1 << gene;
        else wordB |= 1 << gene;
      }
    };
    const weighed = this.weighedGenes(tree);
    tree.copiesOf.forEach((known, gene) => {
      if (known >= 0) put(gene, known);
      else if (!weighed.includes(gene)) put(gene, +(stream.uniform() < this.frequency(tree, gene)) + +(stream.uniform() < this.frequency(tree, gene)));
    });
    if (weighed.length > 0) {
      const drawn = this.drawGenotype(tree, weighed, wordA, wordB, stream.uniform());
      let code = drawn;
      for (const gene of weighed) {
        put(gene, code % 3);
        code = Math.floor(code / 3);
      }
    }
    genome[a] = wordA;
    genome[b] = wordB;
    this.compiled.shown.forEach((_, trait) => {
      able[ableFrom + trait] = +(stream.uniform() < this.chanceAble(tree, trait, wordA, wordB));
    });
  }

  private frequency(tree: CompiledTree, gene: number): number {
    return this.values[tree.frequencyAt[gene]!]!;
  }

  /** Unknown genes on which something that was seen depends under the future's rules. */
  private weighedGenes(tree: CompiledTree): number[] {
    const genes: number[] = [];
    for (const { trait } of tree.seen) for (const gene of this.rule(trait).genes) if (tree.copiesOf[gene] === -1 && !genes.includes(gene)) genes.push(gene);
    return genes;
  }

  /** Returns the drawn genotype of the weighed genes, as base-3 digits of copies. */
  private drawGenotype(tree: CompiledTree, genes: readonly number[], wordA: number, wordB: number, u: number): number {
    const { weights } = this;
    const count = 3 ** genes.length;
    let total = 0;
    for (let code = 0; code < count; code += 1) {
      let a = wordA;
      let b = wordB;
      let weight = 1;
      let digits = code;
      for (const gene of genes) {
        const copies = digits % 3;
        digits = (digits - copies) / 3;
        const p = this.frequency(tree, gene);
        weight *= copies === 0 ? (1 - p) * (1 - p) : copies === 1 ? 2 * p * (1 - p) : p * p;
        if (copies > 0) a |= 1 << gene;
        if (copies > 1) b |= 1 << gene;
      }
      for (const seen of tree.seen) weight *= this.chanceSeen(seen, a, b);
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

  private chanceSeen(seen: CompiledTree['seen'][number], a: number, b: number): number {
    const trait = this.compiled.shown[seen.trait]!;
    const fits = qualifies(this.rule(seen.trait), a, b);
    if (seen.source) return fits ? 1 : 0;
    const wrong = likelihood(seen.showed, seen.seasons, this.values[trait.falseShowAt]!);
    if (!fits) return wrong;
    const canShow = this.values[trait.canShowAt]!;
    return canShow * likelihood(seen.showed, seen.seasons, this.values[trait.seasonsAt]!) + (1 - canShow) * wrong;
  }

  /** Chance that the tree is able to show the trait, given its genes and what was seen. */
  private chanceAble(tree: CompiledTree, trait: number, a: number, b: number): number {
    if (!qualifies(this.rule(trait), a, b)) return 0;
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
