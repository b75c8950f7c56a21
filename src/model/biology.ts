import { z } from 'zod';
import { estimate, share } from './estimate.ts';
import { field, id, name, note, number, reference, whole } from './fields.ts';
import { crossInheritance, geneInheritance, kindInheritance } from './inheritance.ts';
import { MOST_SETS } from './limits.ts';

/** A yes/no fact that several cross entries may share, drawn once per future. */
export const factSchema = z.strictObject({ id, name, chance: share({ label: 'Chance that it is so' }), note });

/** One locus; the allele that is counted is the wanted one. Genes of one group with positions are linked. */
export const geneSchema = z.strictObject({
  id,
  name,
  group: field(z.string().trim().min(1).max(40), {
    label: 'Linkage group',
    help: 'Genes of one group travel together. Leave empty if it segregates freely.',
  }).optional(),
  position: number(0, 1000, { label: 'Position in the group', unit: 'cM' }).optional(),
  ...geneInheritance,
  note,
});

const geneCopies = z
  .array(z.strictObject({ gene: reference('genes', { label: 'Gene' }), copies: whole(1, MOST_SETS, { label: 'At least', unit: 'copies' }) }))
  .min(1)
  .max(6);
/** What a genotype must carry to qualify for a trait. */
const needSchema = z.discriminatedUnion('needs', [
  z.strictObject({ needs: z.literal('all'), of: geneCopies }),
  z.strictObject({ needs: z.literal('any'), of: geneCopies }),
  z.strictObject({
    needs: z.literal('total'),
    genes: z
      .array(reference('genes', { label: 'Gene' }))
      .min(1)
      .max(6),
    copies: whole(1, 6 * MOST_SETS, { label: 'Copies in total' }),
  }),
]);
export const ruleSchema = z.strictObject({
  name,
  weight: number(0.001, 1000, { label: 'Weight', help: 'How strongly you believe in this explanation, against the others.' }),
  weightBefore: number(0.001, 1000, {
    label: 'Weight before your counts',
    help: 'Kept when your counts set the weight, so that the same counts are never weighed twice. Empty: the weight is your own.',
  }).optional(),
  needs: needSchema,
});

export const shownTraitSchema = z.strictObject({
  type: z.literal('shown'),
  id,
  name,
  rules: z.array(ruleSchema).min(1).max(8),
  canShow: share({ label: 'Trees that can show it', help: 'Of the trees with the right genes, the share that is able to show the trait at all.' }).default(1),
  seasonsShown: share({ label: 'Seasons it shows', help: 'An able tree shows the trait in this share of its cropping seasons.' }).default(1),
  falseShow: share({ label: 'Seems to show it, wrongly', help: 'Chance per season that any other tree seems to show it.' }).default(0),
  sharedSeason: number(0, 0.99, {
    label: 'Season luck common to all trees',
    scale: 'share',
    help: 'Share of the season-to-season luck that is good and bad years for every tree.',
  }).default(0.5),
  grade: z
    .strictObject({
      mean: number(0.01, 1, { label: 'Share of the fruit that shows it, on average', scale: 'share' }),
      sd: number(0, 0.49, { label: 'Spread of that share (SD)', scale: 'share' }),
      fruitsCut: whole(1, 100, { label: 'Fruits cut per tree and season' }),
    })
    .optional(),
  emptyIfShown: share({ label: 'Empty fruit on a seed parent that shows it', help: 'Where the trait itself costs seed.' }).default(0),
  note,
});

export const measuredTraitSchema = z.strictObject({
  type: z.literal('measured'),
  id,
  name,
  unit: field(z.string().trim().min(1).max(20), { label: 'Unit' }),
  mean: number(-1e6, 1e6, { label: 'Mean of a reference tree', help: 'The middle of the scale, for all kinds alike.' }),
  sd: estimate(1e-6, 1e6, { label: 'Spread between trees in one season (SD)' }),
  heritability: share({ label: 'Heritability of one season', help: 'Share of that spread (squared) that is inherited.' }),
  repeatability: share({ label: 'Repeatability between seasons', help: 'How far one tree’s seasons agree; at least the heritability.' }),
  travels: share({ label: 'Lasting difference that travels with a graft' }).default(0.5),
  yearShare: share({ label: 'Season noise common to all trees' }).default(0.5),
  inbreeding: estimate(0, 1e6, { label: 'Lost by full inbreeding', help: 'In the trait’s unit, from F = 0 to F = 1.' }).default(0),
  genes: z
    .array(
      z.strictObject({
        gene: reference('genes', { label: 'Gene' }),
        half: number(-1e6, 1e6, { label: 'Half the difference between two copies and none' }),
        dominance: number(-1e6, 1e6, { label: 'One copy, from the middle' }).default(0),
      }),
    )
    .max(6)
    .default([]),
  note,
});
export const traitSchema = z.discriminatedUnion('type', [shownTraitSchema, measuredTraitSchema]);

const years = (label: string) => estimate(1, 60, { label, scale: 'years', unit: 'years' });
export const firstFruitSchema = z.union([
  z.strictObject({ years: years('First fruit at') }),
  z.strictObject({ earliest: years('Earliest'), half: years('Half by'), ninety: years('9 in 10 by') }),
  z.strictObject({
    between: z.strictObject({
      seed: reference('kinds', { label: 'Kind of the seed parent' }),
      pollen: reference('kinds', { label: 'Kind of the pollen parent' }),
    }),
  }),
]);

export const kindSchema = z.strictObject({
  id,
  name,
  firstFruit: firstFruitSchema,
  familySpread: estimate(0, 1, {
    label: 'Spread between families',
    scale: 'share',
    help: 'Coefficient of variation of the years to first fruit between families.',
  }).default(0.15),
  neverFruits: share({ label: 'Never fruits' }).default(0),
  regularity: share({ label: 'Seasons with a crop', help: 'Share of seasons with a crop to judge, once bearing.' }).default(1),
  firstYearLoss: share({ label: 'Lost in the first winter' }).default(0),
  yearlyLoss: share({ label: 'Lost each later winter' }).default(0),
  frostShare: share({ label: 'Hurt by a frost', help: 'Of what a frost takes, the share that this kind loses; late bloomers lose less.' }).default(1),
  flowers: estimate(0, 1e6, { label: 'Flowers of a full-grown pick', scale: 'count', unit: 'flowers' }).default(100),
  yearsToFullBloom: whole(1, 30, { label: 'Years from first to full bloom', scale: 'years', unit: 'years' }).default(4),
  fertilityAsSeedParent: estimate(0, 20, { label: 'Fertility as seed parent', help: 'Multiplies fruit set; 1 for a normal tree.' }).default(1),
  fertilityAsPollenParent: estimate(0, 20, { label: 'Fertility as pollen parent' }).default(1),
  selfCompatible: field(z.boolean(), { label: 'Sets fruit with its own pollen' }).default(false),
  seedsPerFruit: estimate(1, 100, { label: 'Seeds in a fruit that has any', scale: 'number', unit: 'seeds' }).default(1),
  seedsAtMost: whole(1, 100, { label: 'Seeds in a fruit, at most', unit: 'seeds' }).default(1),
  nurseryShare: number(0, 1, { label: 'Room of a seedling in the nursery', unit: 'of a place' }).default(0.05),
  plantOutAge: whole(1, 10, { label: 'Planted out at', scale: 'years', unit: 'years' }).default(1),
  waitYears: whole(0, 10, { label: 'Can wait in the nursery for room', scale: 'years', unit: 'years' }).default(1),
  ...kindInheritance,
  note,
});

const weakCourse = z.union([
  z.strictObject({ halfLife: estimate(0.05, 1200, { label: 'Half are dead by', scale: 'months', unit: 'months after that' }) }),
  z.strictObject({ alive: share({ label: 'Alive at the count' }), atYears: number(0.25, 60, { label: 'Counted at', scale: 'years', unit: 'years' }) }),
]);
const rootBorne = z.union([
  z.strictObject({ chance: share({ label: 'Weakness sits in the roots', help: 'If it does, new roots cure it; if it sits in the top, no graft does.' }) }),
  z.strictObject({ fact: reference('facts', { label: 'Weakness sits in the roots' }) }),
]);

export const weaknessSchema = z.strictObject({
  share: share({ label: 'Seedlings that are weak' }),
  onset: estimate(0, 120, { label: 'Look sound until', scale: 'months', unit: 'months' }),
  course: weakCourse,
  rootBorne,
});

/** What happens to flowers, seeds and seedlings when the seed kind is pollinated by the pollen kind. Ordered: reciprocals differ. */
export const crossSchema = z.strictObject({
  id,
  name,
  seed: reference('kinds', { label: 'Seed parent’s kind' }),
  pollen: reference('kinds', { label: 'Pollen parent’s kind' }),
  gives: reference('kinds', { label: 'Seedlings are' }),
  set: share({ label: 'Fruit set', help: 'Ripe fruits of the flowers pollinated.' }),
  straySet: share({ label: 'Set by stray pollen', help: 'Per flower that the wanted pollen left unset.' }).default(0),
  emptyFruit: share({ label: 'Fruit without sound seed' }).default(0),
  seedsPerFruit: estimate(1, 100, { label: 'Seeds in a fruit that has any', unit: 'seeds' }).optional(),
  seedsAtMost: whole(1, 100, { label: 'Seeds in a fruit, at most', unit: 'seeds' }).optional(),
  germination: share({ label: 'Seeds that come up' }),
  routes: z
    .array(
      z.strictObject({
        id,
        name,
        germination: share({ label: 'Seeds that come up, raised this way' }),
        hoursPerSeed: number(0, 100, { label: 'Hours a seed', scale: 'hours', unit: 'hours' }).default(0),
        moneyPerSeed: number(0, 1e6, { label: 'Money a seed', scale: 'money' }).default(0),
      }),
    )
    .max(6)
    .default([]),
  dormancy: whole(0, 5, { label: 'Extra years the seed lies over', scale: 'years', unit: 'years' }).default(0),
  weakness: weaknessSchema.optional(),
  ...crossInheritance,
  note,
});

export const stockSchema = z.strictObject({
  id,
  name,
  yearlyLoss: share({ label: 'Grafted trees lost each winter' }).default(0),
  place: number(0.01, 3, { label: 'Room of a grafted tree', unit: 'of a place' }).default(1),
  precocity: estimate(0.1, 3, { label: 'Years still to first fruit, multiplied by', help: '1 means the stock changes nothing; 0.8 a fifth sooner.' }).default(
    1,
  ),
  takeTender: share({ label: 'Grafts that take, tender wood', help: 'At one month and before.' }),
  takeRipe: share({ label: 'Grafts that take, ripe wood' }),
  ripeMonths: number(1.5, 60, { label: 'Wood is ripe at', scale: 'months', unit: 'months' }).default(12),
  fertility: estimate(0.1, 20, { label: 'Fertility on this stock, multiplied by' }).default(1),
  note,
});
