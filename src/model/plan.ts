import { z } from 'zod';
import { field, id, name, note, number, reference, whole } from './fields.ts';
import { keepMales, siresSchema } from './inheritance.ts';
import { MOST_SETS } from './limits.ts';
import { conditionSchema } from './orchard.ts';

const treeParent = z.strictObject({ tree: reference('trees', { label: 'Tree' }) });
const picksParent = z.strictObject({ picksOf: reference('generations', { label: 'Picks of' }) });
const parentSchema = z.union([treeParent, picksParent]);
/** Pollen can also come from the fathers of judged seedlings. */
const fatherSchema = z.union([treeParent, picksParent, siresSchema]);

const errorRate = (label: string) => number(0, 1, { label, scale: 'share' }).default(0);
const testSchema = z.strictObject({
  gene: reference('genes', { label: 'Gene tested' }),
  copies: whole(1, MOST_SETS, { label: 'Reads “at least”', unit: 'copies' }),
  falsePositive: errorRate('Says yes, wrongly'),
  falseNegative: errorRate('Says no, wrongly'),
  cull: field(z.boolean(), { label: 'Discard those that fail, before planting out' }).default(true),
});
const lookSchema = z.strictObject({
  trait: reference('traits', { label: 'Trait seen on the seedling' }),
  keepIfShown: field(z.boolean(), { label: 'Keep those that show it' }).default(true),
  falsePositive: errorRate('Seems to show it, wrongly'),
  falseNegative: errorRate('Missed, wrongly'),
});
export const rescueSchema = z.strictObject({
  who: field(z.enum(['none', 'weak', 'every']), { label: 'Graft', words: { none: 'none', weak: 'weak ones', every: 'every seedling' } }),
  month: number(0.5, 24, { label: 'At age', scale: 'months', unit: 'months' }),
  stock: reference('stocks', { label: 'Onto' }),
  scions: whole(1, 3, { label: 'Scions a seedling' }).default(1),
  keepOwnRoots: field(z.boolean(), { label: 'Stays on its own roots if no scion takes' }).default(false),
});
const keepSchema = z.strictObject({
  conditions: z.array(conditionSchema).max(8).default([]),
  rank: field(z.enum(['first', 'earliest', 'index']), {
    label: 'Which first',
    words: { first: 'first come', earliest: 'earliest fruit', index: 'best by index' },
  }).default('first'),
  weights: z.record(z.string(), number(-1e6, 1e6, { label: 'Weight in the index' })).default({}),
  howMany: whole(1, 100, { label: 'Keep', unit: 'trees' }),
  males: keepMales,
  bestLeft: field(z.boolean(), { label: 'If none is good enough, go on with the best' }).default(false),
});
const goOnSchema = z.strictObject({
  when: field(z.enum(['firstPick', 'enough', 'allJudged']), {
    label: 'Go on when',
    words: { firstPick: 'the first pick is made', enough: 'enough picks were made', allJudged: 'all are judged' },
  }),
  count: whole(1, 100, { label: 'Enough is', unit: 'picks' }).optional(),
  atLatest: whole(1, 60, { label: 'At the latest after', scale: 'years', unit: 'years' }).optional(),
});
const backupSchema = z.strictObject({
  copies: whole(1, 10, { label: 'Grafted copies of each pick' }),
  stock: reference('stocks', { label: 'On stock' }),
  garden: reference('gardens', { label: 'In garden' }).optional(),
});

export const generationSchema = z.strictObject({
  id,
  name,
  seedParents: z.array(parentSchema).min(1).max(20),
  pollen: z.union([z.literal('open'), z.literal('self'), z.array(fatherSchema).min(1).max(20)]),
  reciprocal: field(z.boolean(), { label: 'Cross both ways round' }).default(false),
  selfs: field(z.boolean(), { label: 'Self the picks too' }).default(false),
  pool: reference('pools', { label: 'Pollen in the air' }).optional(),
  cross: reference('crosses', { label: 'Cross entry', help: 'Leave empty: found by the two kinds.' }).optional(),
  route: reference('routes', { label: 'Seed raised by' }).optional(),
  cover: number(0, 1, { label: 'Stray pollen let through', scale: 'share', help: '100 % without bags; bags and cages lower it.' }).default(1),
  flowers: whole(0, 1000000, { label: 'Flowers each spring', unit: 'flowers' }),
  seedlings: whole(1, 100000, { label: 'Seedlings wanted', unit: 'seedlings' }),
  springs: whole(1, 60, { label: 'Springs, at most', unit: 'springs' }),
  after: reference('generations', { label: 'Begins after' }).optional(),
  garden: reference('gardens', { label: 'Stands in garden' }).optional(),
  repeat: whole(1, 20, { label: 'Times in a row' }).default(1),
  judge: whole(0, 20, { label: 'Judge for', unit: 'crops' }),
  test: testSchema.optional(),
  look: lookSchema.optional(),
  rescue: rescueSchema.optional(),
  keep: keepSchema,
  goOn: goOnSchema.default({ when: 'firstPick' }),
  backup: backupSchema.optional(),
});

export const MARKS = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'] as const;
export const planSchema = z.strictObject({
  id,
  /** Letter and colour of the plan, kept for life. */
  mark: z.enum(MARKS),
  name,
  note,
  clearDiscards: field(z.boolean(), { label: 'Discarded trees leave the next winter' }).default(true),
  generations: z.array(generationSchema).min(1).max(12),
});
