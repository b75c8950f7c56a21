import { z } from 'zod';
import {
  crossSchema,
  factSchema,
  geneSchema,
  kindSchema,
  stockSchema,
  traitSchema,
  type measuredTraitSchema,
  type shownTraitSchema,
  type firstFruitSchema,
  type ruleSchema,
} from './biology.ts';
import { incompatibilitySchema, originSchema } from './inheritance.ts';
import { logSchema } from './log.ts';
import { field, note, number, reference, whole } from './fields.ts';
import { conditionSchema, gardenSchema, goalSchema, hoursSchema, limitsSchema, moneySchema, poolSchema, treeSchema, weatherSchema } from './orchard.ts';
import { MARKS, planSchema, type generationSchema } from './plan.ts';

export const FORMAT = 'orchard-odds programme';
export const VERSION = 4;

/** Says in the file what its numbers are. Part of the version: another wording would be another version, so no file can say otherwise unnoticed. */
const UNITS =
  'shares from 0 to 1; ages, waits and crops in years; “onset”, “halfLife” and ages of grafts in months; positions of genes in centimorgans; ' +
  'room in places for one full-grown tree; work in hours; money in your own';

/** The whole document a breeder keeps. Units: shares 0–1, ages in years, graft ages and onsets in months. */
export const programmeSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  units: z.literal(UNITS).default(UNITS),
  title: field(z.string().trim().min(1).max(120), { label: 'Title' }),
  /** True for the invented programmes that come with the app: the screen says so. */
  example: z.boolean().default(false),
  note,
  startYear: whole(1500, 3000, { label: 'First spring', scale: 'year' }),
  lastYear: whole(1500, 3000, { label: 'Your last judging year', scale: 'year' }),
  shuffleWord: field(z.string().min(1).max(100), { label: 'Shuffle word', help: 'The same word gives the same futures again.' }),
  runs: number(100, 1000000, { label: 'Futures', scale: 'count' }),
  guessesAsTheyStand: field(z.boolean(), {
    label: 'Take my guesses as they stand',
    help: 'Uses the middle of every range and count. Rules of inheritance, yes/no facts and hidden genes are still drawn.',
  }).default(false),
  goal: goalSchema,
  limits: limitsSchema,
  hours: hoursSchema.prefault({}),
  money: moneySchema.optional(),
  weather: weatherSchema.prefault({}),
  facts: z.array(factSchema).max(20).default([]),
  genes: z.array(geneSchema).max(32).default([]),
  incompatibility: incompatibilitySchema.optional(),
  origin: originSchema.optional(),
  traits: z.array(traitSchema).min(1).max(8),
  kinds: z.array(kindSchema).min(1).max(30),
  gardens: z.array(gardenSchema).max(20).default([]),
  trees: z.array(treeSchema).min(1).max(60),
  pools: z.array(poolSchema).max(20).default([]),
  defaultPool: reference('pools', { label: 'Pollen in the air, unless a plan says otherwise' }).optional(),
  crosses: z.array(crossSchema).max(80).default([]),
  stocks: z.array(stockSchema).max(20).default([]),
  plans: z.array(planSchema).min(1).max(MARKS.length),
  log: logSchema.prefault({}),
});

export type Programme = z.infer<typeof programmeSchema>;
export type Plan = z.infer<typeof planSchema>;
export type Generation = z.infer<typeof generationSchema>;
/** A seed parent, and where pollen can come from. */
export type Parent = Generation['seedParents'][number];
export type Father = Exclude<Generation['pollen'], string>[number];
export type Tree = z.infer<typeof treeSchema>;
export type Kind = z.infer<typeof kindSchema>;
export type Cross = z.infer<typeof crossSchema>;
export type Stock = z.infer<typeof stockSchema>;
export type Pool = z.infer<typeof poolSchema>;
export type Trait = z.infer<typeof traitSchema>;
export type ShownTrait = z.infer<typeof shownTraitSchema>;
export type MeasuredTrait = z.infer<typeof measuredTraitSchema>;
export type FirstFruit = z.infer<typeof firstFruitSchema>;
export type Rule = z.infer<typeof ruleSchema>;
export type Condition = z.infer<typeof conditionSchema>;
