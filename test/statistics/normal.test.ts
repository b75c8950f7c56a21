import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalQuantile } from '../../src/statistics/normal.ts';

/** φ(z)·(z + z³/3 + z⁵/15 + …) + ½, for moderate z. Marsaglia, G. (2004) J. Stat. Softw. 11(4). */
function bySeries(z: number): number {
  let term = z;
  let total = z;
  for (let odd = 3; odd < 400; odd += 2) {
    term *= (z * z) / odd;
    total += term;
  }
  return 0.5 + (total * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
}

/** Laplace's continued fraction of the upper tail, for z ≥ 3. Abramowitz & Stegun (1964) 26.2.14. */
function upperByFraction(z: number): number {
  let fraction = z;
  for (let k = 400; k >= 1; k--) fraction = z + k / fraction;
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI) / fraction;
}

describe('normal probability', () => {
  it('agrees with its power series from −4 to 4 (Marsaglia 2004)', () => {
    // All terms have one sign, so the sum keeps about 15 digits; ten roundings of one half are 2e-15.
    for (let z = -4; z <= 4; z += 0.03125) expect(Math.abs(normalCdf(z) - bySeries(z))).toBeLessThan(2e-15);
  });

  it('agrees with the continued fraction of the tail to 1 part in 1e13 (Abramowitz & Stegun 26.2.14)', () => {
    for (let z = 3; z <= 30; z += 0.125) expect(Math.abs(normalCdf(-z) / upperByFraction(z) - 1)).toBeLessThan(1e-13);
  });

  it('mirrors and ends at 0 and 1', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (z) => {
        expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 15);
      }),
    );
    expect([normalCdf(0), normalCdf(-Infinity), normalCdf(Infinity)]).toEqual([0.5, 0, 1]);
    expect(normalCdf(NaN)).toBeNaN();
  });
});

describe('normal quantile', () => {
  it('undoes the probability', () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        // Towards +8 a probability near 1 is rounded to 1.1e-16, which the density turns into a gap in z.
        const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
        expect(Math.abs(normalQuantile(normalCdf(z)) - z)).toBeLessThanOrEqual(1e-13 + (z > 0 ? 2.3e-16 / density : 0));
      }),
      { numRuns: 1000 },
    );
  });

  it('rises, and mirrors about one half', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-300, max: 0.5, noNaN: true }), fc.double({ min: 1.0001, max: 2, noNaN: true }), (p, factor) => {
        expect(normalQuantile(p * factor)).toBeGreaterThan(normalQuantile(p));
        if (p > 1e-3) expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(p), 11);
      }),
    );
  });

  it('has no value outside 0 … 1', () => {
    expect([normalQuantile(0), normalQuantile(0.5), normalQuantile(1)]).toEqual([-Infinity, 0, Infinity]);
    expect(normalQuantile(-0.1)).toBeNaN();
    expect(normalQuantile(1.1)).toBeNaN();
    expect(normalQuantile(NaN)).toBeNaN();
  });
});
