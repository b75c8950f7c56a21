import { bitCount } from '../../../../src/genetics/genome.ts';
import type { Stream } from '../../../../src/random/stream.ts';
import { published } from '../entries.ts';
import type { Sampler, Samplers } from './samplers.ts';
import { Mean, ratio, streamOf, type Sampled } from './tally.ts';
import { ALL, Trees } from './trees.ts';

/** Next generation of n trees, each of two parents drawn afresh (a tree may be both). Trees 0 … n − 1 are replaced. */
function mate(trees: Trees, n: number, stream: Stream): void {
  for (let tree = 0; tree < n; tree += 1) trees.cross(Math.floor(stream.uniform() * n), Math.floor(stream.uniform() * n), n + tree);
  for (let tree = 0; tree < n; tree += 1) trees.copy(n + tree, tree);
}

/** So many copies of the allele of each of 32 genes among n trees. */
function found(trees: Trees, n: number, copies: number): void {
  for (let tree = 0; tree < n; tree += 1) trees.plant(tree, 2 * tree < copies ? ALL : 0, 2 * tree + 1 < copies ? ALL : 0);
}

interface Fixed {
  /** Genes fixed for the allele, and the generations they took, by population. */
  readonly genes: Float64Array;
  readonly generations: Float64Array;
}

function drift(id: string, n: number, copies: number, populations: number): Fixed {
  const stream = streamOf(id);
  const trees = new Trees(2 * n, stream);
  const [genes, generations] = [new Float64Array(populations), new Float64Array(populations)];
  for (let p = 0; p < populations; p += 1) {
    found(trees, n, copies);
    let fixed = 0;
    let left = ALL;
    for (let t = 1; left !== fixed; t += 1) {
      mate(trees, n, stream);
      let [everywhere, somewhere] = [ALL, 0];
      for (let tree = 0; tree < n; tree += 1) {
        everywhere &= trees.a(tree) & trees.b(tree);
        somewhere |= trees.a(tree) | trees.b(tree);
      }
      generations[p] = (generations[p] ?? 0) + t * bitCount(everywhere & ~fixed);
      fixed = everywhere;
      left = somewhere;
    }
    genes[p] = bitCount(fixed);
  }
  return { genes, generations };
}

const timeToFix: Sampler = (inputs, many) => {
  const n = inputs.number('trees');
  const { genes, generations } = drift(inputs.entry.id, n, inputs.number('copies'), many(n > 20 ? 1500 : 6000));
  return [ratio(generations, genes)];
};

/** Generations to the first tree with two copies, from one copy, for the genes in which there ever is one. */
function timeToShow(id: string, n: number, populations: number): Sampled {
  const stream = streamOf(id);
  const trees = new Trees(2 * n, stream);
  const [genes, generations] = [new Float64Array(populations), new Float64Array(populations)];
  for (let p = 0; p < populations; p += 1) {
    found(trees, n, 1);
    let shown = 0;
    let left = ALL;
    for (let t = 1; (left & ~shown) !== 0; t += 1) {
      mate(trees, n, stream);
      let [twice, somewhere] = [0, 0];
      for (let tree = 0; tree < n; tree += 1) {
        twice |= trees.a(tree) & trees.b(tree);
        somewhere |= trees.a(tree) | trees.b(tree);
      }
      generations[p] = (generations[p] ?? 0) + t * bitCount(twice & ~shown);
      shown |= twice;
      left = somewhere;
    }
    genes[p] = bitCount(shown);
  }
  return ratio(generations, genes);
}

/**
 * Effective number of parents from how alike two of their offspring are: two genes of these, one of each, are the same by descent with
 * chance 1/(2 N). Seen on the heterozygosity of a seedling of the two.
 */
const separateSexes: Sampler = (inputs, many) => {
  const stream = streamOf(inputs.entry.id);
  const trees = new Trees(7, stream);
  const chosen = (count: number): readonly [number, number] => [Math.floor(stream.uniform() * count), Math.floor(stream.uniform() * count)];
  const alike = new Mean();
  const of = many(2_000_000);
  for (let i = 0; i < of; i += 1) {
    const [father, otherFather] = chosen(inputs.number('males'));
    const [mother, otherMother] = chosen(inputs.number('females'));
    for (let tree = 0; tree < 4; tree += 1) trees.plantRandom(tree);
    trees.cross(0, 1, 4);
    trees.cross(mother === otherMother ? 0 : 2, father === otherFather ? 1 : 3, 5);
    trees.cross(4, 5, 6);
    alike.add(1 - bitCount(trees.a(6) ^ trees.b(6)) / 16);
  }
  // 1/(2 N) to N, error to first order.
  const { got, error } = alike.figure();
  return [{ got: 1 / (2 * got), error: error / (2 * got * got) }];
};

const of = (start: string, sampler: Sampler): Samplers => Object.fromEntries(published.filter(({ id }) => id.startsWith(start)).map(({ id }) => [id, sampler]));

export const driftSamplers: Samplers = {
  ...of('wf-exact-', timeToFix),
  ...of('robertson-', (inputs, many) => [timeToShow(inputs.entry.id, inputs.number('trees'), many(inputs.number('trees') > 20 ? 2000 : 20_000))]),
  'Ne-sex-40-10': separateSexes,
  'fix-prob-10': (inputs, many) => {
    // Genes of one population share their pedigree but not their luck: each gene is fixed or lost on its own given the pedigree.
    const { genes } = drift(inputs.entry.id, inputs.number('trees'), inputs.number('copies'), many(4000));
    return [ratio(genes, new Float64Array(genes.length).fill(32))];
  },
};
