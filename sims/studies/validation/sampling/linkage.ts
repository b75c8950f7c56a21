import { PHASES, phaseOf, recombinationAt } from '../checks/linkage.ts';
import { published } from '../entries.ts';
import { compiledRecombination } from '../plans/compiled-genes.ts';
import type { Sampler, Samplers } from './samplers.ts';
import { Mean, share, streamOf } from './tally.ts';
import { linked, Trees } from './trees.ts';

const each = (ids: RegExp, sampler: Sampler): Samplers => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, sampler]));

/** Gametes of a hybrid with the counted alleles of all genes on one homologue, by what they carry. */
function gametes(
  id: string,
  recombination: readonly number[],
  of: number,
  see: (gamete: number) => void,
  homologues = { a: (1 << (recombination.length + 1)) - 1, b: 0 },
): void {
  const trees = new Trees(3, streamOf(id), linked(...recombination));
  trees.plant(0, homologues.a, homologues.b);
  trees.plant(1, 0, 0);
  for (let i = 0; i < of; i += 1) {
    trees.cross(0, 1, 2);
    see(trees.a(2));
  }
}

/** Share of gametes that carry one of the two counted alleles only. */
const apart: Sampler = (inputs, many) => {
  const of = many(1_000_000);
  let hits = 0;
  gametes(inputs.entry.id, [compiledRecombination(inputs.number('cM'))], of, (gamete) => (hits += Number(gamete === 0b01 || gamete === 0b10)));
  return [share(hits, of)];
};

/** Classes A_B_, A_bb, aaB_, aabb of the selfed seedlings of a double hybrid. */
const second: Sampler = (inputs, many) => {
  const { a, b } = phaseOf(inputs);
  const trees = new Trees(2, streamOf(inputs.entry.id), linked(inputs.number('r')));
  trees.plant(0, a, b);
  const of = many(1_000_000);
  const hits = [0, 0, 0, 0];
  for (let i = 0; i < of; i += 1) {
    trees.cross(0, 0, 1);
    const shows = trees.a(1) | trees.b(1);
    const place = 3 - (((shows & 1) << 1) | (shows >> 1));
    hits[place] = (hits[place] ?? 0) + 1;
  }
  return hits.map((n) => share(n, of));
};

const flanked: Sampler = (inputs, many) => {
  let [both, lost] = [0, 0];
  gametes(inputs.entry.id, [inputs.number('r1'), inputs.number('r2')], many(2_000_000), (gamete) => {
    if ((gamete & 0b101) !== 0b101) return;
    both += 1;
    lost += Number(gamete === 0b101);
  });
  return [share(lost, both)];
};

/** Crosses tree 0 back to tree 1, t times; `wanted` genes are looked for in every round until found. Tree 0 is what remains. */
function backcross(trees: Trees, t: number, wanted: number): void {
  for (let round = 0; round < t; round += 1) {
    do trees.cross(0, 1, 2);
    while ((trees.a(2) & wanted) !== wanted);
    trees.copy(2, 0);
  }
}

/** Covariance of the donor's share at two random places of a chromosome is the variance of its share of the whole. */
const donorVariance: Sampler = (inputs, many) => {
  const stream = streamOf(inputs.entry.id);
  const t = inputs.number('t');
  const products = new Mean();
  const of = many(600_000);
  for (let i = 0; i < of; i += 1) {
    const distance = inputs.number('cM') * Math.abs(stream.uniform() - stream.uniform());
    const trees = new Trees(3, stream, linked(recombinationAt(distance)));
    trees.plant(0, 0b11, 0);
    backcross(trees, t, 0);
    products.add(trees.a(0) === 0b11 ? 0.25 : 0);
  }
  return [products.figure(1, -(0.5 ** (2 * t + 2)))];
};

const donorLength: Sampler = (inputs, many) => {
  const stream = streamOf(inputs.entry.id);
  const of = many(300_000);
  const length = inputs.number('cM');
  let hits = 0;
  for (let i = 0; i < of; i += 1) {
    const trees = new Trees(3, stream, linked(recombinationAt((stream.uniform() * length) / 2)));
    trees.plant(0, 0b11, 0);
    backcross(trees, inputs.number('t'), 0b01);
    hits += Number(trees.a(0) === 0b11);
  }
  return [share(hits, of, length)];
};

export const linkageSamplers: Samplers = {
  ...each(/^haldane-\d+cM$/, apart),
  ...each(/^f2-/, second),
  ...each(/^flank-loss-/, flanked),
  ...each(/^bc-var-/, donorVariance),
  'drag-total-bc6': donorLength,
  'haldane-add': (inputs, many) => {
    const of = many(1_000_000);
    let hits = 0;
    gametes(inputs.entry.id, [inputs.number('r1'), inputs.number('r2')], of, (gamete) => (hits += (gamete ^ (gamete >> 2)) & 1));
    return [share(hits, of)];
  },
  'poly-repulsion-2': (inputs, many) => {
    const of = many(1_000_000);
    let hits = 0;
    gametes(inputs.entry.id, [inputs.number('r')], of, (gamete) => (hits += Number(gamete === 0b00 || gamete === 0b11)), PHASES['repulsion']);
    return [share(hits, of)];
  },
  'flank-single-loss': (inputs, many) => {
    const trees = new Trees(3, streamOf(inputs.entry.id), linked(inputs.number('r')));
    trees.plant(1, 0, 0);
    const of = many(300_000);
    let lost = 0;
    for (let i = 0; i < of; i += 1) {
      trees.plant(0, 0b11, 0);
      // Gene 0 is the marker that is looked for, gene 1 the gene that is wanted.
      backcross(trees, inputs.number('t'), 0b01);
      lost += Number((trees.a(0) & 0b10) === 0);
    }
    return [share(lost, of)];
  },
};
