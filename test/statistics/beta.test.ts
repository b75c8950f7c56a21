import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaCdf, betaPdf, betaQuantile, logBeta } from '../../src/statistics/beta.ts';
import { logGamma } from '../../src/statistics/gamma.ts';

const shape = fc.double({ min: 0.02, max: 2000, noNaN: true });
const chance = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });

describe('log Γ and log B', () => {
  it('meets the factorials', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n++) {
      factorial *= n;
      expect(Math.exp(logGamma(n + 1)) / factorial).toBeCloseTo(1, 12);
    }
  });

  it('keeps the recurrence Γ(x + 1) = x Γ(x) (Abramowitz & Stegun 6.1.15)', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (x) => {
        const size = Math.max(1, Math.abs(logGamma(x + 1)));
        expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x)) / size).toBeLessThan(1e-13);
      }),
    );
  });

  it('is not defined at 0 and below', () => {
    expect(logGamma(0)).toBeNaN();
    expect(logGamma(-1.5)).toBeNaN();
  });

  it('keeps B(a, b + 1) = B(a, b) b/(a + b), also for very uneven shapes', () => {
    for (const [a, b] of [
      [2, 3],
      [0.5, 20.5],
      [3, 1e6],
      [1e5, 0.5],
      [1e4, 2e4],
    ] as const) {
      const size = Math.max(1, Math.abs(logBeta(a, b)));
      expect(Math.abs(logBeta(a, b + 1) - logBeta(a, b) - Math.log(b / (a + b))) / size).toBeLessThan(1e-13);
      expect(logBeta(a, b)).toBe(logBeta(b, a));
    }
  });
});

describe('beta distribution', () => {
  it('is x^a for b = 1 and the uniform for a = b = 1', () => {
    fc.assert(
      fc.property(chance, shape, (x, a) => {
        const exact = x ** a;
        expect(Math.abs(betaCdf(x, a, 1) - exact)).toBeLessThanOrEqual(1e-12 * exact + Number.MIN_VALUE);
        expect(betaCdf(x, 1, 1)).toBeCloseTo(x, 14);
        expect(betaPdf(x, 1, 1)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('is the arcsine law for a = b = ½', () => {
    for (const x of [0.001, 0.1, 0.25, 0.5, 0.9, 0.999]) expect(betaCdf(x, 0.5, 0.5)).toBeCloseTo((2 / Math.PI) * Math.asin(Math.sqrt(x)), 13);
  });

  it('mirrors: I_x(a, b) = 1 − I_{1−x}(b, a) (Abramowitz & Stegun 26.5.2)', () => {
    fc.assert(
      fc.property(chance, shape, shape, (x, a, b) => {
        expect(betaCdf(x, a, b) + betaCdf(1 - x, b, a)).toBeCloseTo(1, 11);
      }),
    );
  });

  it('keeps I_x(a, b) = I_x(a + 1, b) + x^a (1 − x)^b/(a B(a, b)) (Abramowitz & Stegun 26.5.16)', () => {
    fc.assert(
      fc.property(chance, shape, shape, (x, a, b) => {
        const between = (betaPdf(x, a, b) * x * (1 - x)) / a;
        expect(Math.abs(betaCdf(x, a, b) - betaCdf(x, a + 1, b) - between)).toBeLessThan(1e-12);
      }),
    );
  });

  it('has the density as the slope of its probability', () => {
    for (const [x, a, b] of [
      [0.3, 2.1, 3.9],
      [0.05, 18.5, 222.5],
      [0.9, 7, 0.6],
    ] as const) {
      const h = 1e-5;
      // A central difference is good to about h² of the third derivative, here under 1e-6 of the density.
      expect((betaCdf(x + h, a, b) - betaCdf(x - h, a, b)) / (2 * h) / betaPdf(x, a, b)).toBeCloseTo(1, 5);
    }
  });

  it('ends at 0 and 1', () => {
    expect([betaCdf(-1, 2, 3), betaCdf(0, 2, 3), betaCdf(1, 2, 3), betaCdf(2, 2, 3)]).toEqual([0, 0, 1, 1]);
    expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([0, 1]);
    expect([betaPdf(-0.1, 2, 3), betaPdf(0, 2, 3), betaPdf(0, 1, 3), betaPdf(0, 0.5, 3), betaPdf(1, 3, 1), betaPdf(1, 3, 0.5)]).toEqual([
      0,
      0,
      3,
      Infinity,
      3,
      Infinity,
    ]);
  });
});

describe('beta quantile', () => {
  it('is undone by the probability to 1 part in 1e10 of x', () => {
    fc.assert(
      fc.property(chance, shape, shape, (u, a, b) => {
        const x = betaQuantile(u, a, b);
        const slope = betaPdf(x, a, b) * x;
        // Near 1 a double cannot hold x closer than 1e-16, which the slope turns into a gap of probability.
        const allowed = slope * 1e-10 + betaPdf(x, a, b) * 2.3e-16 + 1e-13;
        if (x > 1e-300 && x < 1) expect(Math.abs(betaCdf(x, a, b) - u)).toBeLessThanOrEqual(allowed);
      }),
      { numRuns: 500 },
    );
  });

  it('is exact where the law is a power: u^(1/a) for b = 1', () => {
    fc.assert(
      fc.property(chance, fc.double({ min: 0.05, max: 500, noNaN: true }), (u, a) => {
        const exact = u ** (1 / a);
        expect(Math.abs(betaQuantile(u, a, 1) / exact - 1)).toBeLessThan(1e-10);
      }),
    );
  });

  it('rises with u', () => {
    fc.assert(
      fc.property(chance, chance, shape, shape, (u, v, a, b) => {
        const [low, high] = [Math.min(u, v), Math.max(u, v)];
        expect(betaQuantile(low, a, b)).toBeLessThanOrEqual(betaQuantile(high, a, b) * (1 + 1e-12));
      }),
    );
  });

  it('mirrors: quantile of u under (a, b) and of 1 − u under (b, a) sum to 1', () => {
    fc.assert(
      fc.property(chance, shape, shape, (u, a, b) => {
        const x = betaQuantile(u, a, b);
        // 1 − u is rounded; in x that weighs by the inverse of the density.
        expect(Math.abs(x + betaQuantile(1 - u, b, a) - 1)).toBeLessThanOrEqual(1e-10 + 2.3e-16 / betaPdf(x, a, b));
      }),
    );
  });
});
