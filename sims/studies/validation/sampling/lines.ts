import { bitCount } from '../../../../src/genetics/genome.ts';
import { published } from '../entries.ts';
import type { Sampler, Samplers } from './samplers.ts';
import { Mean, share, streamOf } from './tally.ts';
import { ALL, Trees } from './trees.ts';

/** F of each generation: what is left of the half that is heterozygous in a tree that is not inbred. One value a line, of 32 genes. */
function inbred(id: string, generations: number, of: number, line: (trees: Trees, see: (t: number, tree: number) => void) => void): Mean[] {
  const means = Array.from({ length: generations }, () => new Mean());
  const trees = new Trees(40, streamOf(id));
  for (let i = 0; i < of; i += 1) line(trees, (t, tree) => means[t]?.add(1 - bitCount(trees.a(tree) ^ trees.b(tree)) / 16));
  return means;
}

const line =
  (full: number, run: (generations: number) => (trees: Trees, see: (t: number, tree: number) => void) => void): Sampler =>
  (inputs, many) => {
    const generations = inputs.entry.expected.length;
    return inbred(inputs.entry.id, generations, many(full), run(generations)).map((mean) => mean.figure());
  };

/** Share of free genes that are the recurrent parent's, t back-crosses after the hybrid. */
const recurrent: Sampler = (inputs, many) => {
  const trees = new Trees(3, streamOf(inputs.entry.id));
  trees.plant(1, ALL, ALL);
  const shares = new Mean();
  const of = many(100_000);
  for (let i = 0; i < of; i += 1) {
    trees.plant(0, 0, ALL);
    for (let t = 0; t < inputs.number('t'); t += 1) {
      trees.cross(0, 1, 2);
      trees.copy(2, 0);
    }
    shares.add((bitCount(trees.a(0)) + bitCount(trees.b(0))) / 64);
  }
  return [shares.figure()];
};

export const lineSamplers: Samplers = {
  ...Object.fromEntries(published.filter(({ id }) => id.startsWith('bc-rp-')).map(({ id }) => [id, recurrent])),
  'bc-nloci': (inputs, many) => {
    const trees = new Trees(3, streamOf(inputs.entry.id));
    const genes = (1 << inputs.number('n')) - 1;
    trees.plant(1, ALL, ALL);
    const of = many(300_000);
    let hits = 0;
    for (let i = 0; i < of; i += 1) {
      trees.plant(0, 0, ALL);
      for (let t = 0; t < inputs.number('t'); t += 1) {
        trees.cross(0, 1, 2);
        trees.copy(2, 0);
      }
      hits += Number((trees.a(0) & trees.b(0) & genes) === genes);
    }
    return [share(hits, of)];
  },
  'F-selfing': line(200_000, (generations) => (trees, see) => {
    trees.plantRandom(0);
    for (let t = 0; t < generations; t += 1) {
      trees.cross(0, 0, 1);
      trees.copy(1, 0);
      see(t, 0);
    }
  }),
  'F-fullsib': line(100_000, (generations) => (trees, see) => {
    for (const tree of [2, 3]) trees.plantRandom(tree);
    for (const tree of [0, 1]) trees.cross(2, 3, tree);
    for (let t = 0; t < generations; t += 1) {
      for (const tree of [2, 3]) trees.cross(0, 1, tree);
      for (const tree of [2, 3]) trees.copy(tree, tree - 2);
      see(t, 0);
    }
  }),
  // Every tree has another mother, so one female fewer is left each generation. Trees from 0, with the male first; children from 20.
  'F-halfsib': line(60_000, (generations) => (trees, see) => {
    const most = generations + 3;
    for (let tree = 0; tree <= most; tree += 1) trees.plantRandom(tree);
    for (let t = -1; t < generations; t += 1) {
      const females = most - 1 - t;
      for (let mother = 1; mother <= females; mother += 1) trees.cross(mother, 0, 20 + mother - 1);
      for (let tree = 0; tree < females; tree += 1) trees.copy(20 + tree, tree);
      if (t >= 0) see(t, 0);
    }
  }),
  'F-backcross-rb': line(100_000, (generations) => (trees, see) => {
    for (const tree of [1, 2]) trees.plantRandom(tree);
    trees.cross(2, 1, 0);
    for (let t = 0; t < generations; t += 1) {
      trees.cross(0, 1, 2);
      trees.copy(2, 0);
      see(t, 0);
    }
  }),
};
