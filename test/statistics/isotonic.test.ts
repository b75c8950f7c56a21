import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstReaching, heightAt, isotonic } from '../../src/statistics/isotonic.ts';

const values = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 14 });

/** The minimax formula: the fit at i is the least, over ends at or after i, of the greatest mean that ends there and starts at or before i. */
function byMeans(list: readonly number[], weights: readonly number[]): number[] {
  const mean = (from: number, to: number) => {
    let sum = 0;
    let weight = 0;
    for (let k = from; k <= to; k += 1) {
      sum += list[k]! * weights[k]!;
      weight += weights[k]!;
    }
    return sum / weight;
  };
  return list.map((_, i) => Math.min(...list.slice(i).map((_end, more) => Math.max(...list.slice(0, i + 1).map((_start, from) => mean(from, i + more))))));
}

describe('values that nowhere fall', () => {
  it('are as worked out by hand', () => {
    expect(isotonic([1, 3, 2, 4, 3, 0])).toEqual([1, 2.4, 2.4, 2.4, 2.4, 2.4]);
    expect(isotonic([3, 1], [1, 3])).toEqual([1.5, 1.5]);
    expect(isotonic([])).toEqual([]);
  });

  // Min-max formula of Barlow, Bartholomew, Bremner & Brunk (1972) ch. 1 (from memory): another way to the same fit.
  it('agree with the min-max formula, for any values and weights', () => {
    fc.assert(
      fc.property(values, fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 14, maxLength: 14 }), (list, weights) => {
        const fit = isotonic(list, weights);
        byMeans(list, weights).forEach((expected, i) => expect(fit[i]).toBeCloseTo(expected, 9));
      }),
    );
  });
});

describe('where a curve reaches a level', () => {
  const places = [10, 20, 40, 80];
  const heights = [0.1, 0.3, 0.5, 0.9];

  it('is between the places on the logarithm, at the first where it is there already, and nowhere past the last', () => {
    // Half way from 0.3 to 0.5 on the logarithm: 20·√2.
    expect(firstReaching(places, heights, 0.4)).toEqual({ at: 20 * Math.SQRT2, already: false });
    expect(firstReaching(places, heights, 0.1)).toEqual({ at: 10, already: true });
    expect(firstReaching(places, heights, 0.91)).toEqual({ at: null, already: false });
    expect(firstReaching([0, 2, 4], [0.1, 0.3, 0.5], 0.4).at).toBeCloseTo(3, 12);
    expect(firstReaching([], [], 0.5)).toEqual({ at: null, already: false });
  });

  it('turns heights back into places', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.11, max: 0.9, noNaN: true }), (level) => {
        const { at } = firstReaching(places, heights, level);
        expect(heightAt(places, heights, at!)).toBeCloseTo(level, 9);
      }),
    );
    expect([heightAt(places, heights, 5), heightAt(places, heights, 500)]).toEqual([0.1, 0.9]);
  });
});
