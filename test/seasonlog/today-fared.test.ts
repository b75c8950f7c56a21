import { describe, expect, it } from 'vitest';
import type { ForecastGeneration } from '../../src/results/forecast.ts';
import { STAGES } from '../../src/results/outlook.ts';
import { fared } from '../../src/seasonlog/today-fared.ts';
import type { GenerationToday, PlanToday } from '../../src/seasonlog/today-types.ts';

const range = (p10: number | null, p50: number | null, p90: number | null) => ({ p10, p50, p90 });
const forecast: ForecastGeneration = {
  id: 'g',
  round: 1,
  name: 'g',
  reached: 1,
  firstPollination: range(2030, 2030, 2031),
  firstSeedling: range(2031, 2031, 2032),
  firstFruit: range(2035, 2037, 2040),
  firstPick: range(2036, 2039, null),
  stages: Object.fromEntries(STAGES.map((stage) => [stage, { p10: 10, p50: 20, p90: 30 }])) as ForecastGeneration['stages'],
};
const came = (changes: Partial<GenerationToday>): PlanToday => ({
  plan: 'p',
  generations: [
    {
      springs: 1,
      firstPollination: 2030,
      raised: 12,
      firstSeedling: 2033,
      firstFruit: 2034,
      firstPick: null,
      kept: 0,
      fruiting: 5,
      counted: { flowers: 40, fruits: 12, seeds: 4, seedlings: 12, grafted: 0 },
      goneOn: false,
      ...changes,
    },
  ],
  seedlings: [],
  trees: [],
  inGround: [],
  notPlaced: [],
});

describe('how a forecast fared', () => {
  const verdicts = (plan: PlanToday, springs: number, year = 2041) => {
    const { years, counts } = fared([forecast], plan, [{ springs, seedlings: 20 }], 2030, year);
    return Object.fromEntries([...years, ...counts].map(({ what, verdict }) => [what, verdict]));
  };

  it('says which years and finished counts lay outside 8 of 10 futures', () => {
    expect(verdicts(came({}), 1)).toEqual({
      firstPollination: 'inside',
      firstSeedling: 'after',
      firstFruit: 'before',
      // Nine in ten futures never reach it for sure, so nothing is overdue.
      firstPick: 'open',
      flowers: 'after',
      fruits: 'inside',
      seeds: 'before',
      seedlings: 'inside',
      fruiting: 'before',
      kept: 'before',
    });
  });

  it('says nothing of counts that may still grow, but of those that are over already', () => {
    expect(verdicts(came({}), 3)).toMatchObject({ flowers: 'after', fruits: 'open', seeds: 'open', kept: 'open' });
  });

  it('calls overdue what nine in ten futures had by now', () => {
    expect(verdicts(came({ firstFruit: null }), 1, 2041)).toMatchObject({ firstFruit: 'overdue' });
    expect(verdicts(came({ firstFruit: null }), 1, 2040)).toMatchObject({ firstFruit: 'open' });
  });
});
