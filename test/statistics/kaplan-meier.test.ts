import { describe, expect, it } from 'vitest';
import { chanceBetween, weibullLogLikelihood, type Between } from '../../src/statistics/censored.ts';
import { kaplanMeier } from '../../src/statistics/kaplan-meier.ts';
import { learnGrid, amountAxis } from '../../src/statistics/learn-grid.ts';
import { weibullCdf } from '../../src/statistics/weibull.ts';

/** Weeks in remission, 6-mercaptopurine arm; + means still in remission. Freireich et al. (1963) Blood 21:699–716, as in Cox & Oakes (1984) p. 8. */
const REMISSION = '6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+'
  .split(' ')
  .map((week) => ({ time: parseFloat(week), happened: !week.endsWith('+') }));

/** Millions of revolutions to failure of 23 ball bearings: Lieblein & Zelen (1956) J. Res. Natl. Bur. Stand. 57:273–316 (from memory). */
const BEARINGS = [
  17.88, 28.92, 33, 41.52, 42.12, 45.6, 48.48, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88, 84.12, 93.12, 98.64, 105.12, 105.84, 127.92, 128.04,
  173.4,
];

describe('Kaplan and Meier', () => {
  it('gives the published table of the 6-MP arm (from memory: 0.857 … 0.448; exact fractions 6/7, 96/119, 64/85, 176/255, 32/51, 64/119, 160/357)', () => {
    const steps = kaplanMeier(REMISSION);
    expect(steps.map(({ time }) => time)).toEqual([6, 7, 10, 13, 16, 22, 23]);
    expect(steps.map(({ atRisk }) => atRisk)).toEqual([21, 17, 15, 12, 11, 7, 6]);
    const exact = [6 / 7, 96 / 119, 64 / 85, 176 / 255, 32 / 51, 64 / 119, 160 / 357];
    steps.forEach(({ left }, i) => expect(left).toBeCloseTo(exact[i]!, 12));
    [0.857, 0.807, 0.753, 0.69, 0.627, 0.538, 0.448].forEach((printed, i) => expect(Math.abs(steps[i]!.left - printed)).toBeLessThan(0.0006));
  });

  it('is the plain share where all were followed to the end, and says nothing of nobody', () => {
    const steps = kaplanMeier([3, 1, 2, 2].map((time) => ({ time, happened: true })));
    expect(steps.map(({ left }) => left)).toEqual([0.75, 0.25, 0]);
    expect(kaplanMeier([])).toEqual([]);
    expect(kaplanMeier([{ time: 4, happened: false }])).toEqual([]);
  });
});

/** The curve that tells the data best, by ever finer steps from a start. */
function best(seen: readonly Between[], start: { shape: number; scale: number }): { shape: number; scale: number; log: number } {
  let at = { ...start, log: weibullLogLikelihood(seen, start) };
  for (let step = 0.3; step > 1e-7;) {
    const tries = [
      [1 + step, 1],
      [1 / (1 + step), 1],
      [1, 1 + step],
      [1, 1 / (1 + step)],
    ].map(([a = 1, b = 1]) => {
      const curve = { shape: at.shape * a, scale: at.scale * b };
      return { ...curve, log: weibullLogLikelihood(seen, curve) };
    });
    const next = tries.reduce((most, one) => (one.log > most.log ? one : most));
    if (next.log > at.log) at = next;
    else step /= 2;
  }
  return at;
}

describe('the Weibull likelihood', () => {
  it('is highest at the published fit of the ball bearings: shape 2.10, scale 81.88 (Lawless 1982, Statistical Models and Methods for Lifetime Data; from memory)', () => {
    const { shape, scale, log } = best(
      BEARINGS.map((time) => ({ from: time, to: time })),
      { shape: 1, scale: 50 },
    );
    expect(shape).toBeCloseTo(2.1, 2);
    expect(scale).toBeCloseTo(81.88, 1);
    // SciPy 1.17.1, weibull_min.fit with floc = 0: 2.10206, 81.87832, −113.69129.
    expect(shape).toBeCloseTo(2.10206, 4);
    expect(scale).toBeCloseTo(81.87832, 2);
    expect(log).toBeCloseTo(-113.69129093, 6);
  });

  it('takes those still waiting for what they are: 6-MP arm, shape 1.354, scale 33.77 (Lawless 1982; from memory; SciPy 1.17.1: 1.35373, 33.76518, −41.65868)', () => {
    const seen = REMISSION.map(({ time, happened }) => ({ from: time, to: happened ? time : Infinity }));
    const { shape, scale, log } = best(seen, { shape: 1, scale: 20 });
    expect(shape).toBeCloseTo(1.35373, 4);
    expect(scale).toBeCloseTo(33.76518, 3);
    expect(log).toBeCloseTo(-41.65867848, 6);
  });

  it('takes events known only between two looks: as SciPy 1.17.1 fits CensoredData (4.18533, 6.58542), and its value elsewhere', () => {
    const seen: Between[] = [
      { from: 3, to: 4, times: 2 },
      { from: 4, to: 5, times: 5 },
      { from: 5, to: 6, times: 7 },
      { from: 4, to: 6, times: 3 },
      { from: 6, to: 8, times: 4 },
      { from: 6, to: Infinity, times: 5 },
      { from: 8, to: Infinity, times: 3 },
    ];
    const { shape, scale, log } = best(seen, { shape: 1, scale: 9 });
    // Its own optimiser stops at about four digits.
    expect(shape).toBeCloseTo(4.1853, 2);
    expect(scale).toBeCloseTo(6.5854, 2);
    expect(log).toBeCloseTo(-41.69008269, 6);
    expect(weibullLogLikelihood(seen, { shape: 3, scale: 6 })).toBeCloseTo(-44.18548505791, 9);
  });

  it('shares out all trees: those that bear by a year, later, and never sum to one', () => {
    const curve = { shape: 2.5, scale: 4 };
    const never = 0.2;
    const parts = [0, 1, 2, 3, 4].map((from) => chanceBetween({ from, to: from + 1 }, curve, never));
    const rest = chanceBetween({ from: 5, to: Infinity }, curve, never);
    expect(parts.reduce((sum, one) => sum + one, rest)).toBeCloseTo(1, 12);
    expect(rest).toBeCloseTo(0.2 + 0.8 * (1 - weibullCdf(5, curve)), 12);
  });
});

describe('quadrature over several unknowns', () => {
  it('gives the gamma posterior of a rate: 7 events in 10 years under an exponential prior of mean 2, Gamma(8, 10.5)', () => {
    const [rate] = learnGrid([amountAxis((x) => 0.5 * Math.exp(-0.5 * x), 1e-3, 50, { coarse: 40, fine: 200 })], ([x = 0]) => 7 * Math.log(x) - 10 * x);
    expect(rate!.mean).toBeCloseTo(8 / 10.5, 4);
    expect(rate!.sd).toBeCloseTo(Math.sqrt(8) / 10.5, 3);
    // SciPy 1.17.1, gamma.ppf(0.9, 8, scale = 1/10.5) is checked through the chi-square table: χ²₁₆ at 90 % is 23.542 (NIST; from memory).
    expect(rate!.high).toBeCloseTo(23.542 / 2 / 10.5, 3);
  });
});
