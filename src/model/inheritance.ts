import { z } from 'zod';
import { estimate, share } from './estimate.ts';
import { field, number, reference, whole } from './fields.ts';
import { MOST_SETS } from './limits.ts';

/*
 * The finer points of inheritance, all optional: how many sets of chromosomes a kind has and how they pair, pollen that is rejected,
 * sexes, seedlings that are copies of their mother, hybrids that die of two genes, and where pieces of the genome come from.
 */

/** Fields of a kind. */
export const kindInheritance = {
  ploidy: whole(2, MOST_SETS, {
    label: 'Sets of chromosomes',
    unit: 'sets',
    help: '2 for most fruit; 4 for sour cherry, 6 for kaki and European plum. 3 and 5 are as good as sterile unless a cross says otherwise.',
  }).default(2),
  inheritance: field(z.enum(['disomic', 'polysomic']), {
    label: 'How the sets pair',
    words: { disomic: 'two by two, each with its own partner', polysomic: 'any with any' },
    help: 'Two by two: each gene is inherited as with two sets, and has 0, 1 or 2 copies. Any with any: as many copies as sets.',
  }).default('disomic'),
  pollenRejection: field(z.enum(['none', 'gametophytic']), {
    label: 'Rejects pollen that is like itself',
    words: { none: 'no', gametophytic: 'yes: by the S allele in the pollen' },
    help: 'As in cherry, plum, almond, apple and pear: pollen fails if the seed parent has the same S allele. Give the trees their S alleles.',
  }).default('none'),
  maleShare: share({ label: 'Seedlings that are male', help: 'For kinds with separate sexes: they give pollen and never fruit.' }).default(0),
};

/** Fields of a gene. */
export const geneInheritance = {
  doubleReduction: number(0, 0.3, {
    label: 'Double reduction',
    help: 'Chance that two copies in a gamete are the same copy of the parent; only where any set pairs with any. At most 1/6 with four sets, 3/10 with six.',
  }).default(0),
  passes: field(z.enum(['both', 'pollen', 'seed']), {
    label: 'Passed on by',
    words: { both: 'seed and pollen parent', pollen: 'the pollen parent alone', seed: 'the seed parent alone' },
  }).default('both'),
};

/** Name of an S allele as the trade writes it: S3, S4\u2032, Sa, Sf, Snull. */
const alleleName = (label: string) => field(z.string().trim().min(1).max(12), { label });

/** S alleles of the programme: where the gene lies, and those that do not work on both sides. */
export const incompatibilitySchema = z.strictObject({
  group: field(z.string().trim().min(1).max(40), { label: 'Linkage group of the S gene', help: 'The same as that of genes that travel with it.' }).optional(),
  position: number(0, 1000, { label: 'Position in the group', unit: 'cM' }).optional(),
  halfSet: number(0, 1, {
    label: 'Set where half of the pollen works, of full set',
    scale: 'share',
    help: 'Half is ample for a flower pollinated by hand.',
  }).default(1),
  alleles: z
    .array(
      z.strictObject({
        name: alleleName('S allele'),
        like: alleleName('Otherwise like').optional(),
        pollenWorks: field(z.boolean(), { label: 'Is recognised in pollen', help: 'If not, pollen with it is never rejected.' }).default(true),
        styleWorks: field(z.boolean(), { label: 'Recognises pollen in the style', help: 'If not, it rejects no pollen.' }).default(true),
      }),
    )
    .max(60)
    .default([]),
});

/** Chromosomes along which it is followed which kind each piece came from. */
export const originSchema = z.strictObject({
  chromosomes: whole(1, 32, { label: 'Chromosomes of one set', help: '17 in apple and pear, 8 in cherry, plum, peach and almond.' }),
  length: number(10, 1000, { label: 'Length of each', unit: 'cM', help: 'About 70 in fruit trees.' }),
});

/** Fields of a tree. */
export const treeInheritance = {
  s: field(z.string().trim().max(80), {
    label: 'S alleles',
    help: 'As they are written: S3S4, S1S?, S6 S13 Sa Snull. What is left out or “S?” counts as compatible.',
  }).optional(),
  bloomDay: whole(0, 120, {
    label: 'Begins to bloom',
    unit: 'days after the first tree',
    help: 'Only for a warning: pollen of a tree that opens later must be kept from the spring before. Leave empty if they bloom together.',
  }).optional(),
  sex: field(z.enum(['both', 'male', 'female']), { label: 'Sex', words: { both: 'both', male: 'male', female: 'female' } }).default('both'),
  testCrosses: z
    .record(
      z.string(),
      z.strictObject({
        showed: whole(0, 100000, { label: 'Seedlings that showed it', unit: 'seedlings' }),
        of: whole(1, 100000, { label: 'Seedlings looked at', unit: 'seedlings' }),
      }),
    )
    .default({}),
};

/** Seedlings that die at an age of what both parents gave them: no rootstock saves them. */
const necrosisSchema = z.strictObject({
  share: share({ label: 'Seedlings that die of it' }),
  months: estimate(0.1, 240, { label: 'They die at', scale: 'months', unit: 'months' }),
});

/** Fields of a cross entry. */
export const crossInheritance = {
  usableSeedlings: share({
    label: 'Seedlings that are any use',
    help: 'Of a parent with an odd number of sets few seedlings are whole. Without this such a parent counts as sterile.',
  }).optional(),
  motherClones: share({
    label: 'Seedlings that are copies of the seed parent',
    help: 'Seed made without a father, as in most citrus and some crab apples.',
  }).default(0),
  necrosis: necrosisSchema.optional(),
};

/** Fathers chosen by their daughters. */
export const siresSchema = z.strictObject({
  sires: reference('generations', { label: 'Fathers of the seedlings of' }),
  best: whole(1, 20, { label: 'The best', unit: 'fathers', help: 'By the mean index of their judged seedlings.' }),
});

/** Field of a keep rule. */
export const keepMales = whole(0, 100, { label: 'Males kept as fathers', unit: 'trees' }).default(0);
