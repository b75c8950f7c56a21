import { describe, expect, it } from 'vitest';
import {
  afterSeasons,
  afterTestCross,
  carryingChance,
  rightChance,
  seedlingShows,
  seedlingsToSettle,
  shownIfCarried,
  testWorth,
  type Hidden,
} from '../../src/genetics/carriers.ts';
import { dosagesInPopulation, gameteDosages } from '../../src/genetics/polysomic.ts';
import { carrierIfNotShown } from '../../src/genetics/population.ts';

const SURE = { canShow: 1, seasons: 1, falseShow: 0 };
/** A recessive that needs every copy, at a frequency among trees of so many sets. */
const recessive = (sets: number, frequency: number): Hidden[] =>
  dosagesInPopulation(sets, frequency).map((chance, copies) => {
    const share = gameteDosages(sets, copies)[sets / 2]!;
    return { chance, carries: share > 0, right: copies === sets, fromTest: share, owed: share };
  });
const odds = (p: number): number => p / (1 - p);

describe('trees that may hide a recessive', () => {
  it('not showing: 2q/(1 + q), as for Hardy and Weinberg’s trees', () => {
    const states = afterSeasons(recessive(2, 0.15), 0, 3, SURE);
    expect(carryingChance(states)).toBeCloseTo(carrierIfNotShown(0.15), 14);
    expect(rightChance(states)).toBe(0);
  });

  it('seen for more seasons are less and less likely to have it, never less than those who cannot show it', () => {
    const how = { canShow: 0.8, seasons: 0.5, falseShow: 0.02 };
    const chances = [0, 1, 2, 4, 8, 60].map((n) => rightChance(afterSeasons(recessive(2, 0.3), 0, n, how)));
    for (const [i, chance] of chances.entries()) if (i > 0) expect(chance).toBeLessThan(chances[i - 1]!);
    const [none, one, two] = dosagesInPopulation(2, 0.3) as [number, number, number];
    expect(chances.at(-1)).toBeCloseTo((0.2 * two) / (none + one + 0.2 * two), 6);
  });

  it('the odds halve for every test-cross seedling that does not show it (genetic counselling: 2/3 and five seedlings are 1/17)', () => {
    const start = afterSeasons(recessive(2, 0.5), 0, 1, SURE);
    expect(carryingChance(start)).toBeCloseTo(2 / 3, 14);
    for (let n = 1; n <= 8; n += 1) expect(odds(carryingChance(afterTestCross(start, 0, n, SURE)))).toBeCloseTo(2 / 2 ** n, 12);
    expect(carryingChance(afterTestCross(start, 0, 5, SURE))).toBeCloseTo(1 / 17, 14);
    expect(carryingChance(afterTestCross(start, 1, 5, SURE))).toBe(1);
  });

  it('of six sets pass it on from three copies on: a twentieth, a fifth, a half of the test cross', () => {
    const states = recessive(6, 0.4);
    expect(states.map(({ fromTest }) => fromTest)).toEqual([0, 0, 0, 1 / 20, 1 / 5, 1 / 2, 1].map((share) => expect.closeTo(share, 12) as number));
    expect(carryingChance(states)).toBeCloseTo(1 - 0.6 ** 6 - 6 * 0.4 * 0.6 ** 5 - 15 * 0.4 ** 2 * 0.6 ** 4, 12);
  });

  it('are not told by a test cross where one copy is enough: the tester alone gives it', () => {
    const dominant: Hidden[] = [
      { chance: 0.9, carries: false, right: false, fromTest: 1, owed: 0 },
      { chance: 0.1, carries: true, right: true, fromTest: 1, owed: 0 },
    ];
    expect(seedlingsToSettle(dominant, SURE)).toBe(Infinity);
    expect(testWorth([{ belief: 1, states: dominant }], SURE)).toMatchObject({ found: 0, perSeedling: 0, ifNone: 0.1 });
  });

  it('are settled 9 times in 10 by the least number that does it: 4 seedlings for one copy of two', () => {
    const states = afterSeasons(recessive(2, 0.2), 0, 1, SURE);
    expect(seedlingsToSettle(states, SURE)).toBe(4);
    expect(shownIfCarried(states, 4, SURE)).toBeCloseTo(15 / 16, 14);
    // Shown in half of the seasons: a quarter of the seedlings show it, 9 are needed.
    const half = { canShow: 1, seasons: 0.5, falseShow: 0 };
    expect(seedlingsToSettle(states, half)).toBe(Math.ceil(Math.log(0.1) / Math.log(0.75)));
  });

  it('are worth testing by the chance that a seedling finds it', () => {
    const worth = (q: number) => testWorth([{ belief: 1, states: afterSeasons(recessive(2, q), 0, 1, SURE) }], SURE);
    expect(worth(0.3).perSeedling).toBeGreaterThan(worth(0.1).perSeedling);
    expect(worth(0.3).found).toBeCloseTo((carrierIfNotShown(0.3) * 15) / 16, 14);
    expect(odds(worth(0.3).ifNone)).toBeCloseTo(odds(carrierIfNotShown(0.3)) / 16, 12);
  });

  it('show by mistake at the false rate', () => {
    expect(seedlingShows(0, { canShow: 0.9, seasons: 0.8, falseShow: 0.05 })).toBe(0.05);
    expect(seedlingShows(0.5, { canShow: 0.9, seasons: 0.8, falseShow: 0.05 })).toBeCloseTo(0.5 * 0.9 * 0.8 + (1 - 0.45) * 0.05, 14);
  });
});
