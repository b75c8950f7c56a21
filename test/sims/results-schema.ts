import { z } from 'zod';
import { FAILURES, STAGES } from '../../src/results/outlook.ts';

const share = z.number().min(0).max(1);
const interval = z.strictObject({ value: share, low: share, high: share }).refine(({ value, low, high }) => low <= value && value <= high);
const difference = z
  .strictObject({ value: z.number(), low: z.number().min(-1), high: z.number().max(1) })
  .refine(({ value, low, high }) => low <= value && value <= high);
const spread = z.strictObject({ mean: z.number(), p10: z.number(), p50: z.number(), p90: z.number() }).refine(({ p10, p50, p90 }) => p10 <= p50 && p50 <= p90);
const year = z.int().min(2027).max(2057);
const years = z.strictObject({ p10: year.nullable(), p50: year.nullable(), p90: year.nullable() });
const given = <Shape extends z.ZodRawShape>(shape: Shape) => z.array(z.strictObject({ ...shape, runs: z.int().min(0), chance: interval }));

const stageSchema = z
  .object({
    id: z.string(),
    round: z.int().min(1),
    name: z.string(),
    reached: share,
    picked: share,
    firstPollination: years,
    firstFruit: years,
    firstPick: years,
  })
  .and(z.object(Object.fromEntries(STAGES.map((stage) => [stage, spread]))));

const planSchema = z.object({
  id: z.string(),
  mark: z.string(),
  name: z.string(),
  runs: z.int(),
  chance: interval,
  guesses: z.strictObject({ low: share, high: share }),
  trulyGood: interval.nullable(),
  byRule: given({ trait: z.string(), rule: z.string() }),
  byFact: given({ fact: z.string(), holds: z.boolean() }),
  chanceByYear: z.array(z.strictObject({ year, value: share, low: share, high: share })),
  yearProven: years,
  whenItWorks: years,
  failures: z.strictObject(Object.fromEntries(FAILURES.map((reason) => [reason, share]))),
  stages: z.array(stageSchema).min(1),
  seedlings: spread,
  planted: spread,
  fruiting: spread,
  treeYears: spread,
  mostPlaces: spread,
  busiestHours: spread,
  grafts: spread,
  flowers: spread,
});

/** What other programs may rely on in the runner's JSON, written down a second time. */
export const resultsSchema = z.strictObject({
  format: z.literal('orchard-odds results'),
  version: z.literal(1),
  engine: z.string().min(1),
  word: z.string(),
  runs: z.int(),
  guessesAsTheyStand: z.boolean(),
  programme: z.string().regex(/^[0-9a-f]{64}$/),
  title: z.string(),
  startYear: year,
  lastYear: year,
  plans: z.array(planSchema),
  comparisons: z.array(z.strictObject({ a: z.string(), b: z.string(), aSooner: interval, bSooner: interval, tied: interval, chanceDifference: difference })),
});
