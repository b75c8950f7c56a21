import { rootOf } from '../../../../src/random/stream.ts';
import { betaQuantile } from '../../../../src/statistics/beta.ts';
import { logGamma } from '../../../../src/statistics/gamma.ts';
import { normalCdf, normalQuantile } from '../../../../src/statistics/normal.ts';
import { at, type Checks } from '../entries.ts';

export const tableChecks: Checks = {
  'chi-crit': (inputs) => {
    // 2m·x of a Beta(ν/2, m) tends to chi-square with ν degrees of freedom; m = 10⁶ leaves an error of a few parts in 10⁶.
    const m = 1e6;
    return inputs.list('df').map((df) => 2 * m * betaQuantile(0.95, df / 2, m));
  },
  'table-normal-cdf': (inputs) => inputs.list('z').map(normalCdf),
  'table-normal-points': (inputs) => inputs.list('Q').map((share) => -normalQuantile(share)),
  as241: (inputs) => inputs.list('p').map((p, i) => normalQuantile(p) / at(inputs.list('z'), i)),
  'table-gamma': (inputs) => inputs.list('x').map((x) => Math.exp(logGamma(x))),
  'table-t-95': (inputs) =>
    inputs.list('df').map((df) => {
      // The two-sided 5 % of t lie in the lower 5 % of df/(df + t²).
      const x = betaQuantile(0.05, df / 2, 0.5);
      return Math.sqrt(df / x - df);
    }),
  'table-F-95': (inputs) =>
    inputs.list('first').map((first, i) => {
      const second = at(inputs.list('second'), i);
      const x = betaQuantile(0.95, first / 2, second / 2);
      return (second * x) / (first * (1 - x));
    }),
  'rng-alea': (inputs) => {
    // The words of a root are the first four numbers of the generator; a double takes two of them.
    const root = rootOf(inputs.text('text'));
    const share = (place: number): number => (at(root, place) >>> 0) / 2 ** 32;
    return [share(0), share(1) + Math.floor(share(2) * 2 ** 21) / 2 ** 53, at(root, 3)];
  },
};
