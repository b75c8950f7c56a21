import type { Case, OutOfScope } from './case.ts';
import { crossing } from './entered/crossing.ts';
import { genes } from './entered/genes.ts';
import { raising } from './entered/raising.ts';
import { scale } from './entered/scale.ts';

const out = (id: string, what: string, reason: string): OutOfScope => ({ id, what, verdict: 'outOfScope', reason });
const LOG = 'A record, not a plan (see records.ts): ';

const outOfScope = [
  out('C09', 'Triploid crab: fruit and seed without a father', 'Seed that copies its mother is not in the model; a seedling has two parents.'),
  out('C11', 'Citrus whose seedlings are partly copies of the mother', 'Seed that copies its mother, and several seedlings of one seed, are not in the model.'),
  out(
    'C12',
    'Fig: a gene that passes through pollen only',
    'An allele is handed on alike by either parent; a gene that kills egg cells, and sex by genotype, are not in the model.',
  ),
  out('C22', 'About 790 seedlings of five crosses, 133 without symptoms', `${LOG}families are not told apart by a total, and no family is learned from one.`),
  out(
    'C23',
    'Years to first fruit of apple and pear families',
    'Means and ranges of different samples (the pear range begins above its mean) make no one curve; husbandry that shortens ages over the years is not in the model.',
  ),
  out('C26', 'Pawpaw seedlings graded by visitors', `${LOG}grades of several tasters. Two scales of one planting are not forced into one number.`),
  out('C31', 'Honeycrisp: a heavy crop costs next year’s bloom', 'A parent offers the same flowers each spring; crop load is not carried over.'),
  out('C32', 'Sports whose colour sits in one layer', 'Layers of a tree are not in the model; a sport that breeds true can be entered as a tree of its own.'),
  out('C34', 'Sweet × sour cherry: which S-alleles can meet', 'Four sets of chromosomes and S-alleles are not in the model: polyploids come later.'),
  out('C35', 'Stored cherimoya pollen', 'Pollen is not stored and not tested; set with stored pollen can be entered as a cross entry of its own.'),
  out('C38', 'A pedigree file of 1,754 entries', `${LOG}import of records and names.`),
  out('C39', 'Two trees of one clone, judged in one season', `${LOG}repeated records of one clone, from which the noise of a judgement is learned.`),
  out('C45', 'Bloom dates of 19 families', 'Days of bloom, and whether two parents meet, are not in the model.'),
  out('C47', 'Citrus between two and four sets', 'Polyploids come later; neither are there two classes of seed in a fruit.'),
  out('C48', 'Freeze screen with trees missing', `${LOG}scores of single seedlings, and whether one that is missing died.`),
] as const;

export const cases: readonly Case[] = [...crossing, ...raising, ...scale, ...genes, ...outOfScope];

/** Every case of the collection, in its order. */
export const IDS =
  'C01 C02 C03 C04 C05 C06 C08 C09 C11 C12 C14 C15 C16 C18 C20 C21 C22 C23 C25 C26 C27 C29 C31 C32 C34 C35 C38 C39 C40 C43 C44 C45 C47 C48'.split(' ');
