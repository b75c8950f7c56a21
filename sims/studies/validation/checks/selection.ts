import { family, offspringShares } from '../../../../src/genetics/family.ts';
import { hardyWeinberg, inbreeding } from '../../../../src/genetics/population.ts';
import { binomialPmf } from '../../../../src/statistics/binomial.ts';
import { normalCdf, normalQuantile } from '../../../../src/statistics/normal.ts';
import { pertVariance } from '../../../../src/statistics/pert.ts';
import { published, range, sum, type Check, type Checks } from '../entries.ts';

const bell = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/** Mean of the best share p of a normal population, in standard deviations. */
const intensity = (p: number): number => bell(normalQuantile(1 - p)) / p;

/** Mean of the best k of n normal values: of each of them the density, by equal steps of a smooth integrand. **Source:** own derivation. */
const bestOf: Check = (inputs) => {
  const [n, k] = [inputs.number('n'), inputs.number('k')];
  const step = 1 / 64;
  return sum(
    range(-9 * 64, 9 * 64).map((i) => {
      const z = i * step;
      // Fewer than k of the other n − 1 are better.
      const among = sum(range(0, k - 1).map((better) => binomialPmf(better, n - 1, normalCdf(-z))));
      return (z * bell(z) * step * n * among) / k;
    }),
  );
};

/** Mean and variance of the copies of all genes, over shares. */
function spreadOf(shares: readonly { readonly value: number; readonly share: number }[]): { mean: number; variance: number } {
  const mean = sum(shares.map(({ value, share }) => value * share));
  return { mean, variance: sum(shares.map(({ value, share }) => share * (value - mean) ** 2)) };
}
const spreadOfCopies = (shares: readonly number[]): number => spreadOf(shares.map((share, value) => ({ value, share }))).variance;

const each = (ids: RegExp, check: Check): Checks => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, check]));

export const selectionChecks: Checks = {
  ...each(/^i-(inf|2dp)-/, (inputs) => intensity(inputs.number('p'))),
  ...each(/^x-trunc-/, (inputs) => normalQuantile(1 - inputs.number('p'))),
  ...each(/^(order-max-|order-2-exact|i-fin-)/, bestOf),
  'response-basic': (inputs) => intensity(inputs.number('p')) * inputs.number('h2') * Math.sqrt(inputs.number('Vp')),
  'mendel-var-enum': (inputs) => {
    const trees = hardyWeinberg(inputs.number('q'));
    const within = sum(trees.flatMap((mother, m) => trees.map((father, f) => mother * father * spreadOfCopies(offspringShares(m / 2, f / 2)))));
    return within / spreadOfCopies(trees);
  },
  'castle-wright': (inputs) => {
    const [k, a] = [inputs.number('k'), inputs.number('a')];
    const genes = range(1, k).map(String);
    const hybrid = Object.fromEntries(genes.map((gene) => [gene, 1]));
    const copies = family(hybrid, hybrid, genes).map((member) => ({ value: a * sum(Object.values(member.copies)), share: member.share }));
    return (2 * a * k) ** 2 / (8 * spreadOf(copies).variance);
  },
  'selfing-2x': () => (1 - inbreeding('selfing', 2)) / (1 - inbreeding('selfing', 1)),
  'selfing-95-2x': (inputs) => range(1, 100).find((t) => inbreeding('selfing', t) >= inputs.number('share')) ?? NaN,
  'pert-sd': (inputs) => Math.sqrt(pertVariance(inputs.number('low'), inputs.number('likely'), inputs.number('high'))),
};
