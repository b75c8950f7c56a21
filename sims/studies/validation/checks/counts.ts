import { atLeast, betaBinomialPmf, binomialCdf, binomialPmf, plantsNeeded } from '../../../../src/statistics/binomial.ts';
import { pairedDifference } from '../../../../src/statistics/compare.ts';
import { clopperPearson, wilson, Z95 } from '../../../../src/statistics/interval.ts';
import { normalCdf, normalQuantile } from '../../../../src/statistics/normal.ts';
import { published, range, sum, type Check, type Checks } from '../entries.ts';

const bounds =
  (interval: typeof wilson): Check =>
  (inputs) => {
    const { low, high } = interval(inputs.number('hits'), inputs.number('of'));
    return [low, high];
  };
const each = (start: string, check: Check): Checks => Object.fromEntries(published.filter(({ id }) => id.startsWith(start)).map(({ id }) => [id, check]));

const variance = (pmf: readonly number[]): number => {
  const mean = sum(pmf.map((p, k) => p * k));
  return sum(pmf.map((p, k) => p * (k - mean) ** 2));
};

/** Chance that something of this chance per season, half of its luck common to all, fails in all of s draws of one season. */
function never(chance: number, shared: number, draws: number): number {
  const threshold = normalQuantile(chance);
  // Equal steps sum a smooth bell to double precision; ±9 leaves out less than 1e-18.
  const step = 1 / 64;
  return sum(
    range(-9 * 64, 9 * 64).map((i) => {
      const z = i * step;
      const bell = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
      return bell * step * normalCdf(-(threshold + Math.sqrt(shared) * z) / Math.sqrt(1 - shared)) ** draws;
    }),
  );
}

export const countChecks: Checks = {
  ...each('sedcole-', (inputs) => plantsNeeded(inputs.number('q'), inputs.number('r'), inputs.number('P'))),
  ...each('wilson-', bounds(wilson)),
  ...each('clopper-', bounds(clopperPearson)),
  ...each('liability-ever-', (inputs) => 1 - never(inputs.number('K'), inputs.number('t'), inputs.number('s'))),
  'ln-formula': (inputs) => plantsNeeded(inputs.number('q'), 1, inputs.number('P')),
  'even-chance-error': (inputs) => plantsNeeded(inputs.number('q'), 1, inputs.number('P')),
  'rule-of-three': (inputs) => clopperPearson(0, inputs.number('n'), 0.9).high,
  'betabinom-10-4': (inputs) => betaBinomialPmf(inputs.number('k'), inputs.number('n'), inputs.number('alpha'), inputs.number('beta')),
  'betabinom-20-7': (inputs) => betaBinomialPmf(inputs.number('k'), inputs.number('n'), inputs.number('alpha'), inputs.number('beta')),
  'betabinom-var': (inputs) =>
    variance(range(0, inputs.number('n')).map((k) => betaBinomialPmf(k, inputs.number('n'), inputs.number('alpha'), inputs.number('beta')))),
  'negbin-1': (inputs) => {
    // P(wait > n) = P(fewer than r successes in n); 400 trees leave (3/4)^400 = 1e-50.
    const waiting = range(0, 400).map((n) => binomialCdf(inputs.number('r') - 1, n, inputs.number('q')));
    const mean = sum(waiting);
    return [mean, sum(waiting.map((more, n) => (2 * n + 1) * more)) - mean * mean];
  },
  'negbin-cdf': (inputs) => atLeast(inputs.number('successes'), inputs.number('trials'), inputs.number('q')),
  'median-ci-50': (inputs) => binomialCdf(inputs.number('b') - 1, inputs.number('n'), 0.5) - binomialCdf(inputs.number('a') - 1, inputs.number('n'), 0.5),
  'median-ci-100': (inputs) => binomialCdf(inputs.number('b') - 1, inputs.number('n'), 0.5) - binomialCdf(inputs.number('a') - 1, inputs.number('n'), 0.5),
  'crn-identity': (inputs) => {
    // Two yes/no outcomes of chance ½ with this correlation disagree each way in (1 − ρ)/4 of the futures; so many that the added pairs vanish.
    const of = 4e14;
    const disagree = ((1 - inputs.number('rho')) / 4) * of;
    const { low, high } = pairedDifference(disagree, disagree, of);
    return (((high - low) / 2 / Z95) ** 2 * of * inputs.number('varX')) / 0.25;
  },
  'mc-se': (inputs) => {
    // At one half Wilson's interval is exactly as wide as the plain one with z² more trials.
    const [p, z] = [inputs.number('p'), inputs.number('z')];
    const halfWidth = (of: number): number => (wilson(p * of, of, z).high - wilson(p * of, of, z).low) / 2;
    let [few, many] = [100, 1e6];
    for (let i = 0; i < 100; i++) {
      const middle = (few + many) / 2;
      if (halfWidth(middle) > inputs.number('halfWidth')) few = middle;
      else many = middle;
    }
    return Math.ceil(many + z * z);
  },
  'liability-2season': (inputs) => 1 - 2 * never(inputs.number('K'), inputs.number('t'), 1) + never(inputs.number('K'), inputs.number('t'), 2),
  'bb-zero': (inputs) => betaBinomialPmf(0, inputs.number('n'), inputs.number('alpha'), inputs.number('beta')),
  'bb-n95': (inputs) => {
    const [alpha, beta, P] = [inputs.number('alpha'), inputs.number('beta'), inputs.number('P')];
    const allowed = (1 - P) * (1 + 1e-12); // 9/180 is exactly one in twenty
    const shared = range(1, 1000).find((n) => betaBinomialPmf(0, n, alpha, beta) <= allowed);
    return [shared ?? Infinity, plantsNeeded(alpha / (alpha + beta), 1, P)];
  },
  'bb-sd-batch': (inputs) => {
    const [n, p, rho] = [inputs.number('n'), inputs.number('p'), inputs.number('rho')];
    const size = 1 / rho - 1;
    const counts = range(0, n);
    return [variance(counts.map((k) => betaBinomialPmf(k, n, p * size, (1 - p) * size))), variance(counts.map((k) => binomialPmf(k, n, p)))].map(Math.sqrt);
  },
};
