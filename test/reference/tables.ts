import seedrandom from 'seedrandom';
import { betaQuantile } from '../../src/statistics/beta.ts';
import { logGamma } from '../../src/statistics/gamma.ts';
import { normalCdf, normalQuantile } from '../../src/statistics/normal.ts';
import type { Checks } from './published.ts';

export const tableChecks: Checks = {
  'table-normal-cdf': (inputs) => inputs.list('z').map(normalCdf),
  'table-normal-points': (inputs) => inputs.list('Q').map((share) => -normalQuantile(share)),
  as241: (inputs) => inputs.list('p').map((p, i) => normalQuantile(p) / inputs.list('z')[i]!),
  'table-gamma': (inputs) => inputs.list('x').map((x) => Math.exp(logGamma(x))),
  'table-t-95': (inputs) =>
    inputs.list('df').map((df) => {
      // The two-sided 5 % of t lie in the lower 5 % of df/(df + t²).
      const x = betaQuantile(0.05, df / 2, 0.5);
      return Math.sqrt(df / x - df);
    }),
  'table-F-95': (inputs) =>
    inputs.list('first').map((first, i) => {
      const second = inputs.list('second')[i]!;
      const x = betaQuantile(0.95, first / 2, second / 2);
      return (second * x) / (first * (1 - x));
    }),
  'rng-alea': (inputs) => {
    const source = seedrandom.alea(inputs.text('text'));
    return [source(), source.double(), source.int32()];
  },
};
