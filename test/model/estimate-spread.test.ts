import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barsOf, curveOf, spreadOf, type Spread } from '../../src/model/estimate-spread.ts';

/** Area under the density between two values, by the midpoint rule. */
function area({ density }: Spread, from: number, to: number, steps = 20_000): number {
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += density(from + ((to - from) * (i + 0.5)) / steps);
  return (sum * (to - from)) / steps;
}

describe('what an estimate says of its value', () => {
  it('has no curve for one number, for alternatives and for a range without width', () => {
    expect(spreadOf(0.5)).toBeUndefined();
    expect(spreadOf({ value: 0.5 })).toBeUndefined();
    expect(
      spreadOf({
        oneOf: [
          { value: 1, weight: 1 },
          { value: 2, weight: 1 },
        ],
      }),
    ).toBeUndefined();
    expect(spreadOf({ low: 0.5, likely: 0.5, high: 0.5 })).toBeUndefined();
  });

  // Mean (low + 4 likely + high)/6: Malcolm, Roseboom, Clark & Fazar (1959) Operations Research 7:646–669.
  it('has the mean and the ends of a PERT range', () => {
    expect(spreadOf({ low: 2, likely: 5, high: 15 })).toMatchObject({ mean: 37 / 6, from: 2, to: 15 });
  });

  it.each([
    ['a range', { low: 0.4, likely: 0.55, high: 0.7 }, 0],
    ['a skew range', { low: 0.955, likely: 0.985, high: 0.997 }, 0],
    ['a count', { hits: 18, of: 240, lots: 1 }, 0],
    ['a count of one spring', { hits: 18, of: 240, lots: 1 }, 0.1],
    ['a count of clusters', { hits: 40, of: 100, lots: 1, unit: { name: 'cluster', flowers: 5 } }, 0],
  ])('%s: a tenth of the area lies below low, a tenth above high, most on the axis', (_, estimate, luck) => {
    const spread = spreadOf(estimate, luck)!;
    const all = area(spread, 'hits' in estimate ? 0 : spread.from, 'hits' in estimate ? 1 : spread.to);
    // The midpoint rule at 20,000 steps is good to far better than a thousandth for these smooth curves.
    expect(area(spread, spread.low, spread.high) / all).toBeCloseTo(0.8, 3);
    expect(area(spread, spread.from, spread.to) / all).toBeGreaterThan(0.998 - 1e-3);
  });

  it('looks less sure when the flowers share one spring, and surer again with more lots', () => {
    const width = (lots: number, luck: number): number => {
      const spread = spreadOf({ hits: 18, of: 240, lots }, luck)!;
      return spread.high - spread.low;
    };
    expect(width(1, 0.1)).toBeGreaterThan(2 * width(1, 0));
    expect(width(6, 0.1)).toBeLessThan(width(1, 0.1));
    expect(width(240, 0.1)).toBeCloseTo(width(1, 0), 12);
  });

  it('draws a curve that is finite, rises to 1 and stays on its axis, even where the density has no end', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 0, max: 100 }), fc.constantFrom(0, 0.1, 0.5), (of, percent, luck) => {
        const spread = spreadOf({ hits: Math.floor((of * percent) / 100), of, lots: 1 }, luck)!;
        const curve = curveOf(spread);
        expect(Math.max(...curve.map(([, height]) => height))).toBe(1);
        for (const [value, height] of curve) {
          expect(value).toBeGreaterThanOrEqual(spread.from);
          expect(value).toBeLessThanOrEqual(spread.to);
          expect(height).toBeGreaterThanOrEqual(0);
        }
        expect(spread.from).toBeLessThan(spread.to);
        expect(spread.low).toBeLessThanOrEqual(spread.high);
      }),
    );
  });

  it('weighs alternatives to one', () => {
    expect(
      barsOf({
        oneOf: [
          { value: 0.2, weight: 5 },
          { value: 0.5, weight: 3 },
        ],
      }),
    ).toEqual([
      [0.2, 0.625],
      [0.5, 0.375],
    ]);
    expect(barsOf(0.4)).toEqual([[0.4, 1]]);
  });
});
