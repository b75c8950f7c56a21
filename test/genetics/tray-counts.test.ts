import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceAtAll, chanceOfAtLeast, eightInTen, gather, seedlingsNeeded } from '../../src/genetics/tray/needed.ts';
import { largestRemainder } from '../../src/genetics/tray/tray.ts';
import { atLeast, plantsNeeded } from '../../src/statistics/binomial.ts';
import { published } from '../reference/published.ts';

describe('cells', () => {
  it('add up, and none is a whole cell from its share', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 6 }), (parts) => {
        const total = parts.reduce((sum, part) => sum + part, 0);
        fc.pre(total > 1e-6);
        const counts = largestRemainder(parts, 20);
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(20);
        counts.forEach((count, i) => expect(Math.abs(count - (20 * parts[i]!) / total)).toBeLessThan(1 + 1e-9));
      }),
    );
  });

  it('are the quotas where these are whole, and go to the largest remainders where not', () => {
    expect(largestRemainder([0.25, 0.5, 0.25], 20)).toEqual([5, 10, 5]);
    expect(largestRemainder([1 / 3, 1 / 3, 1 / 3], 20)).toEqual([7, 7, 6]);
    // Quotas 6.61, 0.73, 6.75, 5.90: 17 whole cells, the last three to 5.90, 6.75 and 0.73.
    expect(largestRemainder([0.3305, 0.0367, 0.3376, 0.2952], 20)).toEqual([6, 1, 7, 6]);
  });
});

describe('seedlings needed', () => {
  const sedcole = published.filter(({ id }) => id.startsWith('sedcole-'));
  it('has cases', () => expect(sedcole.length).toBeGreaterThan(10));
  it.each(sedcole.map((entry) => [entry.id, entry] as const))(
    'of one known share: %s (Sedcole 1977, Crop Sci. 17:667; entries.json)',
    (_, { inputs, expected: [n] }) => {
      const value = (key: string) => {
        const [top, bottom = 1] = String(inputs[key]).split('/').map(Number);
        return top! / bottom;
      };
      expect(seedlingsNeeded([{ weight: 1, share: value('q') }], inputs['r'] as number, value('P'))).toBe(n);
    },
  );

  it('over what the parents may be: all seedlings share them', () => {
    const half = [
      { weight: 0.5, share: 0.5 },
      { weight: 0.5, share: 0 },
    ];
    // ½·(1 − ½ⁿ) ≥ 0.45 first at n = 4 (15/32 = 0.469; n = 3 gives 7/16 = 0.4375).
    expect(seedlingsNeeded(half, 1, 0.45)).toBe(4);
    // It comes ever nearer to ½ and never is: no number is enough, nor for more.
    expect(chanceAtAll(half)).toBe(0.5);
    for (const P of [0.5, 0.8]) expect(seedlingsNeeded(half, 1, P)).toBe(Infinity);
    // Where half of the cases give nothing else, r seedlings are enough for ½.
    expect(
      seedlingsNeeded(
        [
          { weight: 0.5, share: 1 },
          { weight: 0.5, share: 0 },
        ],
        3,
        0.5,
      ),
    ).toBe(3);
    expect(
      seedlingsNeeded(
        [
          { weight: 0.5, share: 1 },
          { weight: 0.5, share: 0.5 },
        ],
        1,
        0.95,
      ),
    ).toBe(plantsNeeded(0.5, 1, 0.9));
    expect(seedlingsNeeded([{ weight: 1, share: 1e-9 }], 1, 0.95)).toBe(Infinity);
  });

  it('merges very many shares without moving a chance by more than a millionth', () => {
    const many = Array.from({ length: 6000 }, (_, i) => ({ weight: 1 / 6000, share: (i + 1) / 6000 }));
    const merged = gather(many);
    expect(merged.length).toBeLessThan(2500);
    for (const [r, n] of [
      [1, 5],
      [3, 40],
      [10, 300],
    ] as const) {
      const exact = many.reduce((sum, { weight, share }) => sum + weight * atLeast(r, n, share), 0);
      expect(Math.abs(chanceOfAtLeast(r, n, merged) - exact)).toBeLessThan(1e-6);
    }
  });

  it('8 in 10 trays: counts with a tenth below and a tenth above, by the binomial itself', () => {
    const mixture = [
      { weight: 0.5, share: 0.5 },
      { weight: 0.5, share: 0.1 },
    ];
    const [low, high] = eightInTen(mixture, 20);
    const upTo = (k: number) => 1 - mixture.reduce((sum, { weight, share }) => sum + weight * atLeast(k + 1, 20, share), 0);
    expect([upTo(low - 1) < 0.1, upTo(low) >= 0.1, upTo(high - 1) < 0.9, upTo(high) >= 0.9]).toEqual([true, true, true, true]);
    expect(eightInTen([{ weight: 1, share: 0 }], 20)).toEqual([0, 0]);
    expect(eightInTen([{ weight: 1, share: 1 }], 20)).toEqual([20, 20]);
  });
});
