import { compatibility, selfFertileShare, sibCompatibility, sProgeny, type STree } from '../../../../src/genetics/incompatibility.ts';
import { alleleBook, type ListedAllele } from '../../../../src/model/incompatibility/alleles.ts';
import { isRejected, workingShare } from '../../../../src/model/incompatibility/pollen.ts';
import { at, published, range, sum, type Check, type Checks } from '../entries.ts';

const each = (ids: RegExp, check: Check): Checks => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, check]));

/**
 * Alleles of the cases that are out of the ordinary. S4', S13', S1': pollen works anywhere, the style still rejects the ordinary allele;
 * S6m, S6m2: the style rejects nothing, the pollen is rejected as S6; Snull: neither side works.
 * **Source:** Hauck and others (2006) Genetics 172:1191–1198 (which side was lost: from memory; the crosses show the pollen's side alone).
 */
const LISTED: readonly ListedAllele[] = [
  { name: "S4'", like: 'S4', pollenWorks: false, styleWorks: true },
  { name: "S13'", like: 'S13', pollenWorks: false, styleWorks: true },
  { name: "S1'", like: 'S1', pollenWorks: false, styleWorks: true },
  { name: 'Snull', pollenWorks: false, styleWorks: false },
  { name: 'S6m', like: 'S6', pollenWorks: true, styleWorks: false },
  { name: 'S6m2', like: 'S6', pollenWorks: true, styleWorks: false },
];

const tree = (s: string, sets = 2): STree => ({ s, sets });
const diploid = (of: readonly number[]): STree => tree(of.map((n) => `S${String(n)}`).join(''));
/** Trees with two different ones of n alleles: a gametophytic population has no others. */
const trees = (n: number): STree[] => range(1, n).flatMap((a) => range(a + 1, n).map((b) => diploid([a, b])));
const book = alleleBook(LISTED);
const allelesOf = (s: string) => (s.match(/S[0-9a-z]+'?/g) ?? []).map(book);
const shareThatWorks = (mother: STree, father: STree): number => workingShare(allelesOf(mother.s), allelesOf(father.s));

const classes: Check = (inputs) => {
  const [mother, father] = [tree(inputs.text('mother')), tree(inputs.text('father'))];
  return [shareThatWorks(mother, father), ...sProgeny(mother, father, LISTED).map(({ share }) => share)];
};

/** Published classes of a cross, in their order: share of each, and 0 for one that does not occur. */
const named: Check = (inputs) => {
  const [mother, father] = [tree(inputs.text('mother')), tree(inputs.text('father'))];
  const found = sProgeny(mother, father, LISTED);
  const wanted = inputs
    .text('classes')
    .split(' ')
    .filter((name) => name !== '');
  const shares = wanted.map((name) => sum(found.filter(({ alleles }) => alleles.join('') === name).map(({ share }) => share)));
  const fertile = inputs.entry.inputs['counted'] === 'self-fertile' ? [selfFertileShare(mother, father, LISTED)] : [];
  return [shareThatWorks(mother, father), ...shares, ...fertile];
};

const pairs: Check = (inputs) => {
  const all = trees(inputs.number('alleles'));
  const counts = { none: 0, half: 0, full: 0 };
  for (const mother of all) for (const father of all) counts[compatibility(mother, father)] += 1 / all.length ** 2;
  return [counts.none, counts.half, counts.full];
};

const randomPollen = (n: number): number => {
  const all = trees(n);
  return sum(all.flatMap((mother) => all.map((father) => shareThatWorks(mother, father)))) / all.length ** 2;
};

const sibs: Check = (inputs) => {
  const { none, half, full } = sibCompatibility(tree(inputs.text('mother')), tree(inputs.text('father')));
  return [none, half, full];
};

/** Whether pollen with two alleles of a sour cherry works in a sweet one: 1 where it does. */
const grains: Check = (inputs) =>
  inputs
    .text('grains')
    .split(' ')
    .map((pair) => Number(!isRejected(allelesOf(pair), allelesOf(inputs.text('mother')))));

export const incompatibilityChecks: Checks = {
  ...each(/^gsi-1\dx\d+$/, classes),
  ...each(/^gsi-pairs-/, pairs),
  ...each(/^gsi-pollen-/, (inputs) => randomPollen(inputs.number('alleles'))),
  ...each(/^gsi-fullsib/, sibs),
  ...each(/^gsi-case-/, named),
  ...each(/^gsi-sour-/, grains),
  'gsi-min': () =>
    at(
      range(2, 6).filter((n) => randomPollen(n) > 0),
      0,
    ),
};
