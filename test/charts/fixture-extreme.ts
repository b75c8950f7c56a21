/** A FIXTURE: the same invented figures bent to the edges of what may come: eight plans, long names, a plan that never works, repeated rounds. */
import type { GenerationOutlook, Outlook, PlanOutlook } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { FIXTURE, FUTURES } from './fixture.ts';

const MARKS = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'] as const;
const never = { p10: null, p50: null, p90: null };
const nothing = { mean: 0, p10: 0, p50: 0, p90: 0 };

function unreached(generation: GenerationOutlook): GenerationOutlook {
  return {
    ...generation,
    reached: 0,
    picked: 0,
    firstPollination: never,
    firstSeedling: never,
    firstFruit: never,
    firstPick: never,
    lastJudged: never,
    going: generation.going.map(() => 0),
    stages: {
      flowers: nothing,
      fruits: nothing,
      seeds: nothing,
      seedlings: nothing,
      aliveAtGraft: nothing,
      fruiting: nothing,
      showing: nothing,
      kept: nothing,
    },
  };
}

/** No future of it ends well: its last generation is never reached. */
function hopeless(plan: PlanOutlook): PlanOutlook {
  const none = wilson(0, FUTURES);
  return {
    ...plan,
    name: 'Never in a lifetime',
    chance: none,
    guesses: null,
    guessesByYear: null,
    trulyGood: null,
    byRule: [],
    chanceByYear: plan.chanceByYear.map(({ year }) => ({ year, ...none })),
    whenItWorks: never,
    yearProven: never,
    failures: { ...plan.failures, noneGoodEnough: 0, stillWaiting: 0.2, seedlingsDied: 0.8 },
    generations: plan.generations.map((generation, index) => (index === 0 ? generation : unreached(generation))),
  };
}

/** The first generation three times over. */
function repeated(plan: PlanOutlook): PlanOutlook {
  const [first, last] = plan.generations;
  if (!first || !last) return plan;
  const rounds = [0, 1, 2].map((round) => ({
    ...first,
    round: round + 1,
    grownFrom: round === 0 ? null : round - 1,
    going: first.going.map((_, index) => first.going[index - round * 4] ?? 0),
  }));
  return {
    ...plan,
    name: 'A plan whose name goes on for as long as names are let go on, all eighty of it',
    generations: [...rounds, { ...last, grownFrom: 2 }],
  };
}

const source = (index: number): PlanOutlook => {
  const plan = FIXTURE.plans[index % FIXTURE.plans.length];
  if (!plan) throw new Error('The fixture has plans.');
  return plan;
};

export const EXTREME: Outlook = {
  ...FIXTURE,
  plans: MARKS.map((mark, index) => {
    const plan: PlanOutlook = { ...source(index), id: `plan-${mark.toLowerCase()}`, mark };
    return mark === 'E' ? hopeless(plan) : mark === 'F' ? repeated(plan) : plan;
  }),
  comparisons: [],
};
