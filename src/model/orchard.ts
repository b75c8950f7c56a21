import { z } from 'zod';
import { estimate, share } from './estimate.ts';
import { field, id, name, note, number, reference, whole } from './fields.ts';
import { treeInheritance } from './inheritance.ts';
import { MOST_SETS } from './limits.ts';

export const gardenSchema = z.strictObject({ id, name, yearlyLoss: share({ label: 'Chance a year that it is lost as a whole' }), note });

const alleleState = z.union([
  z.strictObject({
    copies: whole(0, MOST_SETS, { label: 'Copies' }),
    /** With one copy: which homologue carries it, the first or the second. Same letter for two linked genes: coupling. */
    homologue: field(z.enum(['a', 'b']), { label: 'On chromosome', words: { a: 'a', b: 'b' } }).optional(),
  }),
  z.strictObject({
    frequency: share({ label: 'Frequency among trees of its kind', help: 'Not known for this tree: drawn in each future, and weighed by what was seen.' }),
  }),
]);

const seenSchema = z.union([
  z.strictObject({ source: field(z.literal(true), { label: 'It is the source: it shows the trait' }) }),
  z.strictObject({
    showed: whole(0, 200, { label: 'Seen to show it in', unit: 'seasons' }),
    seasons: whole(1, 200, { label: 'Watched for', unit: 'seasons' }),
  }),
]);

export const treeSchema = z.strictObject({
  id,
  name,
  kind: reference('kinds', { label: 'Kind' }),
  flowers: estimate(0, 1e6, { label: 'Flowers it can offer a spring', scale: 'count', unit: 'flowers' }),
  copies: whole(1, 50, { label: 'Copies standing' }).default(1),
  gardens: z
    .array(reference('gardens', { label: 'Stands in' }))
    .max(20)
    .default([]),
  yearlyLoss: share({ label: 'Chance a year of losing one copy' }).default(0),
  bearsFrom: whole(1500, 3000, { label: 'Bears from', scale: 'year', help: 'Leave empty if it bears already.' }).optional(),
  genes: z.record(z.string(), alleleState).default({}),
  values: z.record(z.string(), estimate(-1e6, 1e6, { label: 'True value', help: 'What it is by its genes.' })).default({}),
  seen: z.record(z.string(), seenSchema).default({}),
  ...treeInheritance,
  note,
});

/** Whose pollen is in the air: named trees, and a background of anonymous neighbours drawn once per future. */
export const poolSchema = z.strictObject({
  id,
  name,
  trees: z
    .array(z.strictObject({ tree: reference('trees', { label: 'Tree' }), weight: number(0, 1e6, { label: 'Weight' }) }))
    .max(30)
    .default([]),
  background: z
    .strictObject({
      trees: whole(1, 2000, { label: 'Anonymous neighbours' }),
      weight: number(0, 1e6, { label: 'Weight of them all' }),
      kind: reference('kinds', { label: 'Kind' }),
      genes: z.record(z.string(), share({ label: 'Allele frequency' })).default({}),
      values: z.record(z.string(), estimate(-1e6, 1e6, { label: 'Mean' })).default({}),
      spread: z.record(z.string(), number(0, 1e6, { label: 'Spread of true values (SD)' })).default({}),
    })
    .optional(),
  note,
});

const luckSource = (label: string) =>
  field(z.string().max(200), { label, help: 'Written when your counts set the number, so that the same counts are never learned from twice.' }).optional();

export const weatherSchema = z.strictObject({
  frostChance: share({ label: 'Springs with a frost in bloom' }).default(0),
  frostTakes: share({ label: 'A frost takes of the flowers' }).default(0.8),
  springLuckSet: number(0, 0.9, {
    label: 'Luck of the spring, fruit set',
    help: '0 if every flower has luck of its own; the nearer to 1, the more a spring is good or bad for all flowers of a pair at once.',
  }).default(0.1),
  springLuckSetSource: luckSource('Where the luck of fruit set comes from'),
  springLuckGermination: number(0, 0.9, { label: 'Luck of the spring, seeds that come up' }).default(0.1),
  springLuckGerminationSource: luckSource('Where the luck of seeds that come up comes from'),
});

export const limitsSchema = z.strictObject({
  places: number(0, 1e6, { label: 'Places for trees', scale: 'count', unit: 'places' }),
  hoursPerYear: number(0, 1e6, { label: 'Hours a year', scale: 'hours', unit: 'hours' }).optional(),
  moneyPerYear: number(0, 1e9, { label: 'Money a year', scale: 'money' }).optional(),
  bloomDays: number(0, 366, { label: 'Days in bloom', unit: 'days' }),
  hoursADay: number(0, 24, { label: 'Hours a day in bloom', scale: 'hours', unit: 'hours' }),
  flowersAnHour: number(0, 10000, { label: 'Flowers an hour', scale: 'count', unit: 'flowers' }),
  bloomMonth: whole(1, 12, {
    label: 'Bloom begins in month',
    help: 'For the pocket card and calendar dates: 4 in much of the north, 10 in much of the south.',
  }).default(4),
  ripeAfter: number(1, 11, { label: 'Fruit is ripe after', scale: 'months', unit: 'months' }).default(5),
});

const rates = (unit: 'hours' | 'money') => {
  const each = (label: string) => number(0, 1e6, { label, scale: unit, ...(unit === 'hours' ? { unit } : {}) }).default(0);
  return z.strictObject({
    perFlower: each('A flower pollinated'),
    perFruit: each('A fruit gathered'),
    perSeedling: each('A seedling raised'),
    perGraft: each('A graft'),
    perTest: each('A leaf test'),
    perLook: each('A seedling looked at'),
    perPlaceYear: each('A place, each year'),
    perJudging: each('A crop judged'),
  });
};
export const hoursSchema = rates('hours');
export const moneySchema = rates('money');

const bound = (label: string) => number(-1e6, 1e6, { label }).optional();
/** What a tree must have been seen to be. */
export const conditionSchema = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('shown'),
    trait: reference('traits', { label: 'Trait' }),
    grade: field(z.enum(['any', 'full', 'part']), { label: 'How much of the fruit', words: { any: 'at all', full: 'in full', part: 'in part' } }).default(
      'any',
    ),
    atLeast: whole(0, 200, { label: 'In at least', unit: 'crops' }).optional(),
    atMost: whole(0, 200, { label: 'In at most', unit: 'crops' }).optional(),
  }),
  z.strictObject({
    type: z.literal('measured'),
    trait: reference('traits', { label: 'Trait' }),
    atLeast: bound('Mean at least'),
    atMost: bound('Mean at most'),
  }),
  z.strictObject({ type: z.literal('test'), gene: reference('genes', { label: 'Leaf test said yes to' }) }),
]);

export const goalSchema = z.strictObject({
  conditions: z.array(conditionSchema).min(1).max(8),
  crops: whole(1, 20, { label: 'Judged crops it takes', unit: 'crops' }),
  trees: whole(1, 50, { label: 'Proven trees wanted' }).default(1),
  breedsTrue: field(z.boolean(), { label: 'Must breed true', help: 'Every copy of the rule’s genes is the wanted one, known by a test.' }).default(false),
});
