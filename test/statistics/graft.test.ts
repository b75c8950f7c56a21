import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aliveAt, bestGraftMonth, GRAFT_UNTIL, halfLifeFromSurvivors, takeAt, weakLeft } from '../../src/statistics/graft.ts';

const share = fc.double({ min: 0.01, max: 1, noNaN: true });
const weakSeedlings = fc.record({
  onset: fc.double({ min: 0, max: 20, noNaN: true }),
  halfLife: fc.double({ min: 0.2, max: 60, noNaN: true }),
  takeTender: share,
  takeRipe: share,
  ripeMonths: fc.double({ min: 1.5, max: 40, noNaN: true }),
});

describe('weak seedlings and grafts by age', () => {
  it('look sound until the onset, then halve every half-life', () => {
    expect([0, 2, 7, 12].map((month) => aliveAt(month, 2, 5))).toEqual([1, 1, expect.closeTo(0.5, 14), expect.closeTo(0.25, 14)]);
    expect(aliveAt(6 * 12, 2, 5)).toBeCloseTo(2 ** -14, 18); // 70 months after the onset are 14 half-lives
  });

  it('take evenly better from one month to ripe wood', () => {
    expect([0.5, 1, 6.5, 12, 30].map((month) => takeAt(month, 0.3, 0.85, 12))).toEqual([0.3, 0.3, expect.closeTo(0.575, 14), 0.85, 0.85]);
  });
});

describe('best month to graft', () => {
  it('is not beaten by any other month that a plan can choose', () => {
    fc.assert(
      fc.property(weakSeedlings, fc.constantFrom(0.5, 1, 3), (weak, earliest) => {
        const best = bestGraftMonth(weak, earliest);
        const saved = (month: number): number => aliveAt(month, weak.onset, weak.halfLife) * takeAt(month, weak.takeTender, weak.takeRipe, weak.ripeMonths);
        const from = Math.max(weak.onset, earliest);
        expect(best.month).toBeGreaterThanOrEqual(from);
        expect(best.month).toBeLessThanOrEqual(GRAFT_UNTIL);
        expect(best.aliveAtBest).toBe(aliveAt(best.month, weak.onset, weak.halfLife));
        expect(best.savedOutOfTen).toBeCloseTo(10 * saved(best.month), 12);
        for (let i = 0; i <= 500; i++) expect(saved(from + ((GRAFT_UNTIL - from) * i) / 500)).toBeLessThanOrEqual(best.savedOutOfTen / 10 + 1e-14);
      }),
    );
  });

  it('is where the gain in take equals the loss of trees (derivative 0 inside the range)', () => {
    const weak = { onset: 0, halfLife: 5, takeTender: 0.3, takeRipe: 0.85, ripeMonths: 12 };
    const { month } = bestGraftMonth(weak);
    const slope = (0.85 - 0.3) / 11;
    expect(slope / takeAt(month, 0.3, 0.85, 12)).toBeCloseTo(Math.LN2 / 5, 12);
  });

  it('waits for the onset, and goes by it when the wood is ripe before', () => {
    const wood = { takeTender: 0.3, takeRipe: 0.85, ripeMonths: 12 };
    expect(bestGraftMonth({ onset: 4, halfLife: 1, ...wood })).toMatchObject({ month: 4, aliveAtBest: 1 });
    expect(bestGraftMonth({ onset: 15, halfLife: 5, ...wood })).toEqual({ month: 15, aliveAtBest: 1, savedOutOfTen: 8.5 });
  });

  it('is the youngest age when waiting gains nothing', () => {
    const flat = { onset: 0, halfLife: 5, takeTender: 0.6, takeRipe: 0.6, ripeMonths: 12 };
    expect(bestGraftMonth(flat).month).toBe(1);
    expect(bestGraftMonth(flat, 0.5).month).toBe(0.5);
    expect(bestGraftMonth({ ...flat, takeRipe: 0.4 }).month).toBe(1);
  });

  it('looks below one month only when asked: the weak die there while the take stays that of tender wood', () => {
    const weak = { onset: 0, halfLife: 5, takeTender: 0.3, takeRipe: 0.85, ripeMonths: 12 };
    expect(bestGraftMonth(weak).month).toBeCloseTo(2.2134752044448174, 12);
    expect(bestGraftMonth(weak, 0.5)).toMatchObject({ month: 0.5 });
    expect(bestGraftMonth({ ...weak, halfLife: 12 }, 0.5).month).toBeGreaterThan(1);
  });

  it('stays within two years, however slowly they die', () => {
    expect(bestGraftMonth({ onset: 0, halfLife: 1000, takeTender: 0.1, takeRipe: 0.9, ripeMonths: 40 }).month).toBe(GRAFT_UNTIL);
  });
});

describe('half-life from a count of survivors', () => {
  it('is found again from the count it would give (docs/model.md §7)', () => {
    fc.assert(
      fc.property(
        share,
        fc.double({ min: 0.3, max: 30, noNaN: true }),
        fc.double({ min: 0.5, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        share,
        (weakShare, halfLife, atYears, onset, ordinarySurvival) => {
          const left = aliveAt(12 * atYears, onset, halfLife);
          fc.pre(12 * atYears - onset > 0.5 && left > 1e-3 && left < 0.999);
          const alive = ordinarySurvival * (1 - weakShare + weakShare * left);
          const found = halfLifeFromSurvivors({ weakShare, alive, atYears, ordinarySurvival, onset });
          // The share left is known to about 1e-16/weakShare, its logarithm to that over (1 − left)·left.
          expect(Math.abs(found! / halfLife - 1)).toBeLessThan(1e-15 / weakShare / (left * (1 - left)) + 1e-12);
        },
      ),
    );
  });

  it('does not exist when more died than were weak, none of the weak died, none are weak, or it was too early', () => {
    const count = { weakShare: 0.5, alive: 0.6, atYears: 1, ordinarySurvival: 0.9, onset: 2 };
    expect(halfLifeFromSurvivors(count)).not.toBeNull();
    expect(halfLifeFromSurvivors({ ...count, alive: 0.4 })).toBeNull();
    expect(weakLeft({ ...count, alive: 0.4 })).toBeLessThan(0);
    expect(halfLifeFromSurvivors({ ...count, alive: 0.95 })).toBeNull();
    expect(weakLeft({ ...count, alive: 0.95 })).toBeGreaterThan(1);
    expect(halfLifeFromSurvivors({ ...count, weakShare: 0, alive: 0.9 })).toBeNull();
    expect(halfLifeFromSurvivors({ ...count, atYears: 0.1 })).toBeNull();
    expect(halfLifeFromSurvivors({ ...count, ordinarySurvival: 0 })).toBeNull();
  });
});
