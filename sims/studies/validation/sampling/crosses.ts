import { qualifies, type GenotypeRule } from '../../../../src/genetics/genome.ts';
import type { Copies, Needs } from '../../../../src/genetics/family.ts';
import { bitCount } from '../../../../src/genetics/genome.ts';
import { genesOf, ordered, RATIOS, type Ratio } from '../checks/ratios.ts';
import { at } from '../entries.ts';
import type { Sampler, Samplers } from './samplers.ts';
import { share, streamOf } from './tally.ts';
import { ALL, Trees } from './trees.ts';

/** A rule as the engine holds it, genes by their place. */
function compiled(needs: Needs, genes: readonly string[]): GenotypeRule {
  const place = (gene: string): number => genes.indexOf(gene);
  if (needs.needs === 'total') return { mode: 2, genes: needs.genes.map(place), copies: [], total: needs.copies };
  return { mode: needs.needs === 'all' ? 0 : 1, genes: needs.of.map(({ gene }) => place(gene)), copies: needs.of.map(({ copies }) => copies), total: 0 };
}

const homologue = (copies: Copies, genes: readonly string[], which: 1 | 2): number =>
  genes.reduce((word, gene, i) => word | (Number((copies[gene] ?? 0) >= which) << i), 0);

const seedlingsOf =
  (cross: Ratio): Sampler =>
  (inputs, many) => {
    const genes = genesOf(cross);
    const rules = cross.classes.map((needs) => compiled(needs, genes));
    const trees = new Trees(3, streamOf(inputs.entry.id));
    trees.plant(0, homologue(cross.mother, genes, 1), homologue(cross.mother, genes, 2));
    trees.plant(1, homologue(cross.father, genes, 1), homologue(cross.father, genes, 2));
    const hits = new Array<number>(rules.length + 1).fill(0);
    const of = many(1_000_000);
    for (let i = 0; i < of; i += 1) {
      trees.cross(0, 1, 2);
      const found = rules.findIndex((rule) => qualifies(rule, trees.a(2), trees.b(2)));
      const place = found < 0 ? rules.length : found;
      hits[place] = at(hits, place) + 1;
    }
    return ordered(hits, cross).map((n) => share(n, of, cross.of));
  };

/** Thirty-two hybrids at a time: chance that none of n progeny of each has two copies. */
function silent(id: string, progeny: number, tester: number, of: number): number {
  const trees = new Trees(3, streamOf(id));
  trees.plant(0, ALL, 0);
  trees.plant(1, ALL, tester);
  let hits = 0;
  for (let i = 0; i < of / 32; i += 1) {
    let shown = 0;
    for (let k = 0; k < progeny; k += 1) {
      trees.cross(0, 1, 2);
      shown |= trees.a(2) & trees.b(2);
    }
    hits += bitCount(~shown);
  }
  return hits;
}

export const crossSamplers: Samplers = {
  ...Object.fromEntries(Object.entries(RATIOS).map(([id, cross]) => [id, seedlingsOf(cross)])),
  'mendel-misclass': (inputs, many) => {
    const of = 32 * many(100_000);
    return [share(silent(inputs.entry.id, inputs.number('progeny'), 0, of), of)];
  },
  'fix-m-loci': (inputs, many) => {
    const trees = new Trees(2, streamOf(inputs.entry.id));
    const genes = (1 << inputs.number('genes')) - 1;
    trees.plant(0, ALL, 0);
    const of = many(3_000_000);
    let hits = 0;
    for (let i = 0; i < of; i += 1) {
      trees.cross(0, 0, 1);
      if (((trees.a(1) ^ trees.b(1)) & genes) === 0) hits += 1;
    }
    return [share(hits, of)];
  },
};
