import { bitCount } from '../../../../src/genetics/genome.ts';
import { betaFrom, binomialInverse, lognormalFrom, normalFrom, springRate } from '../../../../src/random/draws.ts';
import { Stream, rootOf } from '../../../../src/random/stream.ts';
import { normalQuantile } from '../../../../src/statistics/normal.ts';
import { published } from '../entries.ts';
import type { Sampler, Samplers } from './samplers.ts';
import { deviation, Mean, mean, share, streamOf, variance } from './tally.ts';
import { Trees } from './trees.ts';

const each = (ids: RegExp, sampler: Sampler): Samplers => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, sampler]));
const draws = (of: number, draw: () => number): Float64Array => Float64Array.from({ length: of }, draw);

/** Variance of 64 free copies, each there with chance ½: V_A of a population that is not inbred, one copy worth 1. */
const ADDITIVE = 16;
const value = (trees: Trees, tree: number): number => bitCount(trees.a(tree)) + bitCount(trees.b(tree));

/** Mean of the normal draws beyond the truncation point of the best share p. */
const truncated: Sampler = (inputs, many) => {
  const stream = streamOf(inputs.entry.id);
  const point = normalQuantile(1 - inputs.number('p'));
  const above = new Mean();
  const of = many(3_000_000);
  for (let i = 0; i < of; i += 1) {
    const z = normalFrom(stream.uniform());
    if (z > point) above.add(z);
  }
  return [above.figure()];
};

/** Mean of the best k of n draws. */
const best: Sampler = (inputs, many) => {
  const stream = streamOf(inputs.entry.id);
  const [n, k] = [inputs.number('n'), inputs.number('k')];
  const means = new Mean();
  const of = many(100_000);
  const group = new Float64Array(n);
  for (let i = 0; i < of; i += 1) {
    for (let j = 0; j < n; j += 1) group[j] = normalFrom(stream.uniform());
    group.sort();
    means.add(group.subarray(n - k).reduce((sum, z) => sum + z, 0) / k);
  }
  return [means.figure()];
};

/** Slope of the child's value on the parent's (or on the mean of both); its error allows for uneven spread. */
function slope(x: Float64Array, y: Float64Array): { readonly got: number; readonly error: number } {
  const middle = (values: Float64Array): number => values.reduce((sum, one) => sum + one, 0) / values.length;
  const [mx, my] = [middle(x), middle(y)];
  let [xx, xy, spread] = [0, 0, 0];
  x.forEach((one, i) => {
    xx += (one - mx) ** 2;
    xy += (one - mx) * ((y[i] ?? NaN) - my);
  });
  const got = xy / xx;
  x.forEach((one, i) => (spread += ((one - mx) * ((y[i] ?? NaN) - my - got * (one - mx))) ** 2));
  return { got, error: Math.sqrt(spread) / xx };
}

/** Half the squared difference of two sibs is on average the variance within their family. Parents inbred to F. */
const withinFamily: Sampler = (inputs, many) => {
  const stream = streamOf(inputs.entry.id);
  const trees = new Trees(4, stream);
  /** One homologue, and another that is alike by descent with chance F at each gene. */
  const plant = (tree: number, F: number): void => {
    let alike = 0;
    for (let gene = 0; gene < 32; gene += 1) if (stream.uniform() < F) alike |= 1 << gene;
    const a = stream.bits();
    trees.plant(tree, a, (a & alike) | (stream.bits() & ~alike));
  };
  const squares = new Mean();
  const of = many(200_000);
  for (let i = 0; i < of; i += 1) {
    plant(0, inputs.number('mother'));
    plant(1, inputs.number('father'));
    for (const sib of [2, 3]) trees.cross(0, 1, sib);
    squares.add((value(trees, 2) - value(trees, 3)) ** 2 / 2 / ADDITIVE);
  }
  return [squares.figure()];
};

/** One batch of n that shares its chance, drawn from Beta(a, b). */
const batches = (id: string, of: number, n: number, a: number, b: number): Float64Array => {
  const stream = streamOf(id);
  return draws(of, () => binomialInverse(stream.fineUniform(), n, springRate(stream, a / (a + b), 1 / (a + b + 1))));
};
const batchChance =
  (k: (number: (key: string) => number) => number): Sampler =>
  (inputs, many) => {
    const number = (key: string): number => inputs.number(key);
    const counts = batches(inputs.entry.id, many(200_000), number('n'), number('alpha'), number('beta'));
    return [share(counts.filter((n) => n === k(number)).length, counts.length)];
  };

export const valueSamplers: Samplers = {
  ...each(/^i-inf-/, truncated),
  ...each(/^(order-max-|i-fin-)/, best),
  ...each(/^mendel-var-\d/, withinFamily),
  ...each(
    /^betabinom-(10|20)-/,
    batchChance((number) => number('k')),
  ),
  'bb-zero': batchChance(() => 0),
  'betabinom-var': (inputs, many) => [variance(batches(inputs.entry.id, many(200_000), inputs.number('n'), inputs.number('alpha'), inputs.number('beta')))],
  'bb-sd-batch': (inputs, many) => {
    const [n, p, size] = [inputs.number('n'), inputs.number('p'), 1 / inputs.number('rho') - 1];
    return [deviation(batches(inputs.entry.id, many(200_000), n, p * size, (1 - p) * size)), null];
  },
  'bda-placenta': (inputs, many) => {
    const stream = streamOf(inputs.entry.id);
    const shares = draws(many(300_000), () => betaFrom(stream, inputs.number('a'), inputs.number('b')));
    return [mean(shares), deviation(shares), null, null];
  },
  'regress-po': (inputs, many) => {
    const stream = streamOf(inputs.entry.id);
    const trees = new Trees(3, stream);
    const noise = Math.sqrt(ADDITIVE / inputs.number('h2') - ADDITIVE);
    const seen = (tree: number): number => value(trees, tree) + noise * normalFrom(stream.uniform());
    const of = many(400_000);
    const [mother, both, children] = [new Float64Array(of), new Float64Array(of), new Float64Array(of)];
    for (let i = 0; i < of; i += 1) {
      for (const tree of [0, 1]) trees.plantRandom(tree);
      trees.cross(0, 1, 2);
      const [m, f] = [seen(0), seen(1)];
      mother[i] = m;
      both[i] = (m + f) / 2;
      children[i] = seen(2);
    }
    return [slope(mother, children), slope(both, children)];
  },
  'crn-uu2': (inputs, many) => {
    // Two plans on the same future draw the same number; on futures of their own they do not.
    const [one, other] = [0, 1].map(() => new Stream(rootOf(`validation/${inputs.entry.id}`)));
    const of = many(1_000_000);
    const difference = (apart: number): Float64Array =>
      Float64Array.from({ length: of }, (_, run) => {
        const u = one?.future(1, run).key(1).uniform() ?? NaN;
        const v =
          other
            ?.future(1, run + apart)
            .key(1)
            .uniform() ?? NaN;
        return u - v * v;
      });
    return [variance(difference(0)), variance(difference(of))];
  },
  'ttff-lognormal': (inputs, many) => {
    const stream = streamOf(inputs.entry.id);
    const cv = Math.sqrt(Math.exp(inputs.number('sigma') ** 2) - 1);
    const years = (u: number): number => inputs.number('min') + inputs.number('median') * lognormalFrom(u, cv);
    const drawn = draws(many(1_000_000), () => years(stream.uniform()));
    const by = drawn.filter((year) => year <= inputs.number('by')).length;
    return [mean(drawn), deviation(drawn), { got: years(0.5), error: 0 }, share(by, drawn.length)];
  },
};
