import { describe, expect, it } from 'vitest';
import { when } from '../../src/decisions/when.ts';
import { aliveAt } from '../../src/statistics/graft.ts';
import { expectShare } from '../engine/agreement.ts';
import { cross, stock } from '../engine/programmes.ts';
import { oneWeak, redPear, told } from './samples.ts';

const PLAN = { plan: 'plan-0' };
const asked = (halfLife: number, takeTender: number, takeRipe: number, ripeMonths: number, runs: number) =>
  told(
    when,
    oneWeak(1, {
      crosses: [cross({ weakness: { share: 1, onset: 0, course: { halfLife }, rootBorne: { chance: 1 } } })],
      stocks: [stock({ takeTender, takeRipe, ripeMonths })],
    }),
    { ...PLAN, runs },
  );

describe('when to graft', () => {
  // Checks PC6 of the project's exact answers: m* = halfLife/ln 2 − a₀/slope, clipped to [1, ripe]; own derivation.
  it.each([
    [5, 0.3, 0.85, 12, 2.2134752044448174, 0.26536892271152146],
    [3, 0.2, 0.9, 12, 2.1852279798097474, 0.1662371528510657],
    [24, 0.4, 0.8, 9, 9, 0.6168843301631763],
  ])('half dead by %d months: the best month is as check PC6 says', async (halfLife, tender, ripe, ripeMonths, month, saved) => {
    const { answer } = await asked(halfLife, tender, ripe, ripeMonths, 100);
    expect(answer.savesMost.overGuesses.p50).toBeCloseTo(month, 12);
    // The curve is looked at in quarter months, and flat on top: within a quarter month it loses less than 1 %.
    expect(Math.abs(answer.savesMost.month - month)).toBeLessThanOrEqual(0.25);
    expect(answer.savesMost.ofTen / 10).toBeLessThanOrEqual(saved + 1e-12);
    expect(answer.savesMost.ofTen / 10).toBeGreaterThan(0.99 * saved);
    const at1 = answer.curve.find((point) => point.month === 1)!;
    expect(at1.saved.mean / 10).toBeCloseTo(aliveAt(1, 0, halfLife) * tender, 12);
    expect(answer.curve.map((point) => point.month)).toEqual([...answer.curve.map((point) => point.month)].sort((a, b) => a - b));
  });

  it('the plan’s chance at every age is the share saved, where one seedling decides (4 standard errors)', async () => {
    const { answer, reports } = await asked(5, 0.3, 0.85, 12, 3000);
    for (const { month, outcome } of answer.chances) {
      const take = month <= 1 ? 0.3 : month >= 12 ? 0.85 : 0.3 + (0.55 * (month - 1)) / 11;
      expectShare(Math.round(3000 * outcome.chance.value), 3000, aliveAt(month, 0, 5) * take, `${String(month)} months`);
    }
    expect(reports.map(({ futures }) => futures)).toEqual([200, 1000, 3000]);
    // 2½ is the best by reckoning, to the half month; 3 is the plan's own.
    expect(answer.chances.map(({ month }) => month)).toEqual([0.5, 1, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 18, 21, 24]);
    expect(answer.level.from).toBeLessThanOrEqual(answer.best);
    expect(answer.level.to).toBeGreaterThanOrEqual(answer.best);
    // At two years 1 in 28 is left alive: clearly worse, whatever the best is.
    expect(answer.level.to).toBeLessThan(24);
    expect(answer.chances.at(-1)!.minusBest!.clear).toBe(true);
  });

  it('all ages are alike, and nothing is clear, where nobody dies and wood does not ripen', async () => {
    const { answer } = await told(
      when,
      oneWeak(
        1,
        {
          crosses: [cross({ weakness: { share: 1, onset: 120, course: { halfLife: 1000 }, rootBorne: { chance: 1 } } })],
          stocks: [stock({ takeTender: 0.6, takeRipe: 0.6 })],
        },
        { who: 'every', month: 3, stock: 'stock' },
      ),
      { ...PLAN, runs: 500 },
    );
    expect(answer).toMatchObject({ clear: false, level: { from: 0.5, to: 24 }, who: 'every', stands: 3 });
  });

  it('leaves out the ages at which the weak cannot be told yet', async () => {
    const { answer } = await told(when, redPear, { plan: 'wide-rescue', runs: 200 });
    expect(answer.toldFrom).toBe(2);
    expect(answer.chances[0]!.month).toBe(2);
    expect(answer.savesMost.month).toBeGreaterThanOrEqual(2);
    expect(answer).toMatchObject({ stands: 3, who: 'weak', generation: 'd1' });
    expect((await told(when, redPear, { plan: 'wide-own-roots', runs: 100 })).answer).toMatchObject({ stands: null, who: 'weak', generation: 'c1' });
  });
});
