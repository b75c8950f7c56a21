import { log } from '../random/elementary.ts';
import { weibullCdf, type WeibullShape } from './weibull.ts';

/** When something happened, as far as it is known: after `from`, by `to`. `to` is Infinity while it has not happened. */
export interface Between {
  readonly from: number;
  readonly to: number;
  /** How many were seen alike; 1 if left out. */
  readonly times?: number;
}

/**
 * Returns the share of trees that would be seen so: the chance that W falls after `from` and by `to`; for one that has not fruited also the
 * share that never does.
 * @param never share that never fruits, in [0, 1)
 *
 * **Source:** grouped and censored likelihood as in Kalbfleisch & Prentice (2002), The Statistical Analysis of Failure Time Data, ch. 3;
 * never-fruiting share: mixture cure model, Boag (1949) J. R. Stat. Soc. B 11:15–53 (from memory).
 */
export function chanceBetween({ from, to }: Between, curve: WeibullShape, never = 0): number {
  const left = 1 - weibullCdf(from, curve);
  return to === Infinity ? never + (1 - never) * left : (1 - never) * Math.max(0, weibullCdf(to, curve) - (1 - left));
}

/**
 * Returns ln of the likelihood of a Weibull curve. `from` = `to` stands for an exact time and counts with its density.
 *
 * **Source:** as `chanceBetween`; density of Weibull (1951).
 */
export function weibullLogLikelihood(seen: readonly Between[], curve: WeibullShape, never = 0): number {
  return seen.reduce((sum, one) => {
    const { from, to, times = 1 } = one;
    return sum + times * (from === to ? log(1 - never) + logDensity(from, curve) : log(chanceBetween(one, curve, never)));
  }, 0);
}

function logDensity(time: number, { shape, scale }: WeibullShape): number {
  const logRatio = log(time / scale);
  return log(shape / scale) + (shape - 1) * logRatio - Math.exp(shape * logRatio);
}
