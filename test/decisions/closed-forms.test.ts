import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakEvens, crossing, neverFalling } from '../../src/decisions/break-even.ts';
import { lost } from '../../src/decisions/copies.ts';
import { ringsOf } from '../../src/decisions/standing.ts';
import { bearsGrafted, bearsOnOwnRoots } from '../../src/decisions/to-fruit.ts';
import { weakAlive } from '../../src/engine/rescue.ts';
import { PC7 } from './samples.ts';

const kindOf = (years: number, firstYearLoss = 0, yearlyLoss = 0) => ({ firstYearLoss, yearlyLoss, yearsToFruit: () => years });
const stockOf = (take: number, yearlyLoss = 0, precocity = 1) => ({ takeTender: take, takeRipe: take, ripeMonths: 12, yearlyLoss, precocity });
const grafting = (month: number, scions = 1, keepOwnRoots = false) => ({ month, scions, keepOwnRoots });

describe('a weak seedling up to its first fruit', () => {
  // Check PC7 of the project's own exact answers for whole plans (derived by hand: 2^(−1/5); times take and 0.98⁶; 2^(−14)).
  const weak = { share: 1, onset: PC7.onset, halfLife: PC7.halfLife };
  const stock = stockOf(PC7.take, PC7.stockLoss);
  const kind = kindOf(PC7.years);
  const alive = weakAlive(0, PC7.month, PC7.onset, PC7.halfLife);

  it('as the exact answers of check PC7 say', () => {
    expect(alive).toBeCloseTo(0.8705505632961241, 12);
    expect(alive * bearsGrafted(grafting(PC7.month), { ...weak, inRoots: true }, kind, stock)).toBeCloseTo(0.3855852918263674, 12);
    expect(alive * bearsGrafted(grafting(PC7.month), { ...weak, inRoots: false }, kind, stock)).toBeCloseTo(2.703376406445311e-5, 15);
    expect(bearsOnOwnRoots(0, { ...weak, inRoots: true }, kind)).toBeCloseTo(6.103515625e-5, 15);
  });

  it('a sound one as check PC5 says: 0.9 through the first winter, 0.97 through six more', () => {
    expect(bearsOnOwnRoots(0, null, kindOf(7, 0.1, 0.03))).toBeCloseTo(0.7496748044360998, 12);
    // Standing at 14 months it has the first winter behind it.
    expect(bearsOnOwnRoots(14, null, kindOf(7, 0.1, 0.03))).toBeCloseTo(0.97 ** 6, 12);
  });

  it('with more scions, its own roots to fall back on, a stock that hastens, and a graft that follows the winter of its month', () => {
    expect(bearsGrafted(grafting(3, 2), null, kind, stockOf(0.5))).toBeCloseTo(0.75, 12);
    expect(bearsGrafted(grafting(3, 1, true), null, kindOf(6, 0.1, 0), stockOf(0.5))).toBeCloseTo(0.5 + 0.5 * 0.9, 12);
    // Half of the 5.75 years still ahead: bears at 3.125, so in season 4, after four winters.
    expect(bearsGrafted(grafting(3), null, kind, stockOf(1, 0.1, 0.5))).toBeCloseTo(0.9 ** 4, 12);
    expect(bearsGrafted(grafting(12), null, kind, stockOf(1, 0.1))).toBeCloseTo(0.9 ** 5, 12);
  });
});

describe('a tree in copies', () => {
  it('alone, as check PC8 says: 0.96 through eight winters', () => {
    expect(1 - lost(1, 0.04, [], 8)).toBeCloseTo(0.7213895789838334, 12);
  });

  it('as every fate of copies and gardens, counted through', () => {
    // One winter, three copies over two gardens (two in the first): 2⁵ fates.
    const [own, losses] = [0.3, [0.2, 0.1] as const];
    let gone = 0;
    for (let fate = 0; fate < 32; fate += 1) {
      const dead = (bit: number) => (fate & (1 << bit)) !== 0;
      const chance = [0, 1, 2, 3, 4].reduce((p, bit) => p * (dead(bit) ? (bit < 3 ? own : losses[bit - 3]!) : 1 - (bit < 3 ? own : losses[bit - 3]!)), 1);
      if ([0, 1, 2].every((copy) => dead(copy) || dead(3 + (copy % 2)))) gone += chance;
    }
    expect(lost(3, own, losses, 1)).toBeCloseTo(gone, 12);
  });

  it('is never safer with fewer copies, in fewer gardens, or for longer', () => {
    const share = fc.double({ min: 0, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), share, share, fc.integer({ min: 0, max: 40 }), (copies, own, garden, winters) => {
        const now = lost(copies, own, [garden], winters);
        expect(lost(copies + 1, own, [garden], winters)).toBeLessThanOrEqual(now + 1e-12);
        expect(lost(copies, own, [garden, garden], winters)).toBeLessThanOrEqual(now + 1e-12);
        expect(lost(copies, own, [garden], winters + 1)).toBeGreaterThanOrEqual(now - 1e-12);
      }),
    );
  });
});

describe('the break-even line', () => {
  it('rests on values that never fall: the closest to 1, 3, 2, 4, 3, 0 by hand', () => {
    expect(Array.from(neverFalling([1, 3, 2, 4, 3, 0]))).toEqual([1, 2.4, 2.4, 2.4, 2.4, 2.4]);
    expect(Array.from(neverFalling([2, 1, 5, 4]))).toEqual([1.5, 1.5, 4.5, 4.5]);
    expect(Array.from(neverFalling([]))).toEqual([]);
  });

  it('closest, and with the same sum, for any values', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 1, maxLength: 12 }),
        fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 12, maxLength: 12 }),
        (values, steps) => {
          const fit = neverFalling(values);
          fit.slice(1).forEach((value, i) => expect(value).toBeGreaterThanOrEqual(fit[i]! - 1e-9));
          const far = (other: ArrayLike<number>) => values.reduce((sum, value, i) => sum + (value - other[i]!) ** 2, 0);
          expect(fit.reduce((a, b) => a + b, 0)).toBeCloseTo(
            values.reduce((a, b) => a + b, 0),
            8,
          );
          let at = -15;
          const rising = values.map((_, i) => (at += steps[i]!));
          expect(far(fit)).toBeLessThanOrEqual(far(rising) + 1e-8);
        },
      ),
    );
  });

  it('crosses between takes, at the ends where one choice always wins', () => {
    expect(crossing([0.1, 0.3, 0.5], [-2, -1, 3])).toBeCloseTo(0.35, 12);
    expect(crossing([0.1, 0.3], [1, 2])).toBe(0);
    expect(crossing([0.1, 0.3], [-2, -1])).toBe(1);
  });

  it('has an interval that shrinks with the root of the futures, holds the line, and is the same for the same word', () => {
    // Gain 1 in the first 100·t % of futures, −1 in a fixed 30 %: crosses at take 0.3.
    const takes = Array.from({ length: 9 }, (_, i) => (i + 1) / 10);
    const column = (futures: number) =>
      takes.map((take) => Int8Array.from({ length: futures }, (_, i) => Number((i * 7) % 10 < 10 * take - 1e-9) - Number((i * 3) % 10 < 3)));
    const [few] = breakEvens(takes, [column(100)], 'word');
    const [many] = breakEvens(takes, [column(1600)], 'word');
    expect(many!.take).toBeCloseTo(0.3, 1);
    for (const line of [few!, many!]) {
      expect(line.low).toBeLessThanOrEqual(line.take);
      expect(line.high).toBeGreaterThanOrEqual(line.take);
    }
    expect(many!.high - many!.low).toBeLessThan((few!.high - few!.low) / 2);
    expect(breakEvens(takes, [column(100)], 'word')).toEqual([few]);
    expect(breakEvens(takes, [column(100)], 'another')).not.toEqual([few]);
  });
});

describe('rings round the guesses', () => {
  const points = Array.from({ length: 500 }, (_, i) => ({
    halfLife: Math.exp(((i * 37) % 500) / 250 + ((i * 37) % 500 > 300 ? 1 : 0)),
    take: ((i * 101) % 500) / 500,
  }));
  const inside = (outline: readonly { halfLife: number; take: number }[], { halfLife, take }: { halfLife: number; take: number }) => {
    let odd = false;
    outline.forEach((a, i) => {
      const b = outline[(i + 1) % outline.length]!;
      const [xa, xb, x] = [Math.log(a.halfLife), Math.log(b.halfLife), Math.log(halfLife)];
      if (a.take > take !== b.take > take && x < xa + ((xb - xa) * (take - a.take)) / (b.take - a.take)) odd = !odd;
    });
    return odd;
  };

  it('hold the shares that they say', () => {
    const { rings } = ringsOf(points, [0.5, 0.7]);
    for (const { share, outline } of rings) {
      const held = points.filter((point) => inside(outline, point)).length / points.length;
      // The outline of 48 chords lies within 1 − cos(π/48) = 0.2 % of the ring.
      expect(Math.abs(held - share), String(share)).toBeLessThan(0.02);
    }
  });

  it('close up where nothing is left open', () => {
    const { middle, rings } = ringsOf([
      { halfLife: 5, take: 0.4 },
      { halfLife: 5, take: 0.4 },
    ]);
    expect(middle.halfLife).toBeCloseTo(5, 12);
    for (const { outline } of rings) for (const point of outline) expect(point).toEqual(middle);
  });
});
