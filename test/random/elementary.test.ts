import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exp, log, power, wholePower } from '../../src/random/elementary.ts';

/** Math itself is right to within a unit or two in the last place, so this is what may lie between. */
const CLOSE = 1e-14;
const relative = (got: number, expected: number) => (got === expected ? 0 : Math.abs(got - expected) / Math.abs(expected));
const run = { seed: 3, numRuns: 5000 };

describe('exp, log and powers from plain arithmetic', () => {
  it('log agrees with Math.log over all magnitudes', () => {
    const positive = fc.oneof(
      fc.double({ min: 1e-300, max: 1e300, noNaN: true }),
      fc.double({ min: 0.5, max: 2, noNaN: true }),
      fc.double({ min: 1 - 1e-6, max: 1 + 1e-6, noNaN: true }),
    );
    fc.assert(
      fc.property(positive, (x) => {
        expect(relative(log(x), Math.log(x))).toBeLessThanOrEqual(CLOSE);
      }),
      run,
    );
  });

  it('exp agrees with Math.exp between overflow and the smallest normal number', () => {
    fc.assert(
      fc.property(fc.oneof(fc.double({ min: -708, max: 709.7, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true })), (x) => {
        expect(relative(exp(x), Math.exp(x))).toBeLessThanOrEqual(CLOSE);
      }),
      run,
    );
  });

  it('power agrees with Math.pow; the error of the exponent grows with it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e3, noNaN: true }), fc.double({ min: -20, max: 20, noNaN: true }), (x, y) => {
        const size = Math.abs(y * Math.log(x));
        expect(relative(power(x, y), Math.pow(x, y))).toBeLessThanOrEqual(CLOSE * Math.max(1, size));
      }),
      run,
    );
  });

  it('whole powers agree with Math.pow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 0, max: 400 }), (x, n) => {
        const expected = Math.pow(x, n);
        if (expected < 1e-300) expect(wholePower(x, n)).toBeLessThan(1e-299);
        else expect(relative(wholePower(x, n), expected)).toBeLessThanOrEqual(CLOSE * Math.max(1, n / 10));
      }),
      run,
    );
  });

  it('ends are those of Math', () => {
    for (const x of [0, -1, NaN, Infinity]) expect(log(x)).toBe(Math.log(x));
    for (const x of [0, 710, 1e9, -746, -1e9, Infinity, -Infinity, NaN]) expect(exp(x)).toBe(Math.exp(x));
    expect(log(1)).toBe(0);
    expect([power(0, 0), power(0, 2), power(7, 0), wholePower(0, 0), wholePower(0, 3), wholePower(5, 1)]).toEqual([1, 0, 1, 1, 0, 5]);
    // Below the smallest normal number only the absolute size can be right.
    for (const x of [-709, -720, -740, -744]) expect(Math.abs(exp(x) - Math.exp(x))).toBeLessThanOrEqual(5e-324 + CLOSE * Math.exp(x));
    for (const x of [5e-324, 1e-310]) expect(relative(log(x), Math.log(x))).toBeLessThanOrEqual(CLOSE);
  });
});
