import { betaPdf, betaQuantile } from '../../../../src/statistics/beta.ts';
import { logGamma } from '../../../../src/statistics/gamma.ts';
import { aliveAt, bestGraftMonth, takeAt } from '../../../../src/statistics/graft.ts';
import { jeffreys, perFlower } from '../../../../src/statistics/interval.ts';
import { pertMean, pertShape, pertVariance } from '../../../../src/statistics/pert.ts';
import { kaplanMeier, type SurvivalStep } from '../../../../src/statistics/kaplan-meier.ts';
import { firstFruitShape, weibullCdf, weibullQuantile } from '../../../../src/statistics/weibull.ts';
import { range, sum, type Check, type Checks, type Inputs } from '../entries.ts';

const pert: Check = (inputs) => {
  const [low, likely, high] = [inputs.number('low'), inputs.number('likely'), inputs.number('high')];
  const { alpha, beta } = pertShape(low, likely, high);
  return [alpha, beta, pertMean(low, likely, high), pertVariance(low, likely, high)];
};
const pertMiddle: Check = (inputs) => pertMean(inputs.number('low'), inputs.number('likely'), inputs.number('high'));

const graft: Check = (inputs) => {
  const weak = { onset: inputs.number('onset'), halfLife: inputs.number('halfLife') };
  const wood = { takeTender: inputs.number('takeTender'), takeRipe: inputs.number('takeRipe'), ripeMonths: inputs.number('ripeMonths') };
  const saved = (month: number): number => aliveAt(month, weak.onset, weak.halfLife) * takeAt(month, wood.takeTender, wood.takeRipe, wood.ripeMonths);
  const best = bestGraftMonth({ ...weak, ...wood });
  return [best.month, best.savedOutOfTen / 10, saved(1), saved(wood.ripeMonths)];
};

function remission(inputs: Inputs): SurvivalStep[] {
  const event = inputs.list('event');
  return kaplanMeier(inputs.list('times').map((time, i) => ({ time, happened: event[i] === 1 })));
}

export const estimateChecks: Checks = {
  'bda-placenta': (inputs) => {
    const [a, b] = [inputs.number('a'), inputs.number('b')];
    const steps = 4000;
    const shares = range(0, steps).map((i) => i / steps);
    const mean = sum(shares.map((x) => (x * betaPdf(x, a, b)) / steps));
    const variance = sum(shares.map((x) => ((x - mean) ** 2 * betaPdf(x, a, b)) / steps));
    return [mean, Math.sqrt(variance), betaQuantile(0.025, a, b), betaQuantile(0.975, a, b)];
  },
  'pert-5': pertMiddle,
  'pert-10': pertMiddle,
  'pert-beta': (inputs) => {
    const [low, likely, high] = [inputs.number('low'), inputs.number('likely'), inputs.number('high')];
    const { alpha, beta } = pertShape(low, likely, high);
    return [alpha, beta, pertMean(low, likely, high), Math.sqrt(pertVariance(low, likely, high))];
  },
  'ttff-weibull': (inputs) => {
    const curve = { shape: inputs.number('shape'), scale: inputs.number('scale') };
    const start = inputs.number('start');
    const moment = (power: number): number => curve.scale ** power * Math.exp(logGamma(1 + power / curve.shape));
    return [start + moment(1), Math.sqrt(moment(2) - moment(1) ** 2), start + weibullQuantile(0.5, curve), weibullCdf(inputs.number('by') - start, curve)];
  },
  'km-6mp': (inputs) => remission(inputs).map(({ left }) => left),
  'km-risk': (inputs) => remission(inputs).map(({ atRisk }) => atRisk),
  'annual-hazard': (inputs) => {
    const curve = { shape: inputs.number('shape'), scale: inputs.number('scale') };
    const left = (year: number): number => 1 - weibullCdf(year, curve);
    return [...range(1, 6).map((year) => 1 - left(year) / left(year - 1)), weibullCdf(6, curve)];
  },
  'PC6-5': graft,
  'PC6-3': graft,
  'PC6-24': graft,
  PC10: (inputs) => {
    const earliest = inputs.number('earliest');
    const curve = firstFruitShape(earliest, inputs.number('half'), inputs.number('ninety'));
    const by = (season: number): number => weibullCdf(season - earliest + 1, curve);
    return [curve.shape, curve.scale, ...range(3, 14).map((season) => by(season) - by(season - 1))];
  },
  PC12: (inputs) => perFlower(inputs.number('hits') / inputs.number('of'), inputs.number('flowersPerUnit')),
  PC13: pert,
  PC14: (inputs) => {
    const { alpha, beta } = jeffreys(inputs.number('hits'), inputs.number('of'));
    return [alpha, beta, alpha / (alpha + beta)];
  },
};
