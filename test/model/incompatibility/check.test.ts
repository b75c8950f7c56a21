import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../src/model/problem.ts';
import { parseProgramme } from '../../../src/model/read.ts';
import { cross, document, generation, kind, picksOf, plans, tree, type Document, type GenerationDocument } from '../../engine/programmes.ts';

const cherry = kind({ id: 'pear', name: 'cherry', pollenRejection: 'gametophytic' });
const S4_PRIME = { name: "S4'", like: 'S4', pollenWorks: false, styleWorks: true };

/** An invented orchard of four cherries and whatever generations are asked for. */
const orchard = (generations: readonly GenerationDocument[], changes: Partial<Document> = {}): Document =>
  document({
    kinds: [cherry],
    trees: [tree('a', { s: 'S1S3' }), tree('b', { s: 'S1S3' }), tree('c', { s: 'S3S4' }), tree('d', { s: 'S5S6' })],
    plans: plans(generations),
    ...changes,
  });
const crossed = (mother: string, ...fathers: string[]) => generation('g', 50, { seedParents: [{ tree: mother }], pollen: fathers.map((id) => ({ tree: id })) });

function found(input: Document): readonly Problem[] {
  const reading = parseProgramme(input);
  return reading.ok ? reading.notes : reading.problems;
}
const has = (input: Document, path: string, says: RegExp, stops: boolean) => {
  const problems = found(input);
  const here = problems.filter((problem) => problem.path.join('/') === path && says.test(problem.message));
  expect(here, JSON.stringify(problems)).toHaveLength(1);
  expect(here[0]?.stops).toBe(stops);
  expect(here[0]?.fix?.length).toBeGreaterThan(10);
};

describe('S alleles in the document', () => {
  const withS = (s: string, changes: Partial<Document> = {}) => orchard([crossed('c', 'd')], { trees: [tree('a', { s }), tree('c'), tree('d')], ...changes });
  it('that cannot be read: with the place', () => {
    has(withS('S3X4'), 'trees/0/s', /“X4”, from letter 3, is no S allele/, true);
  });
  it('more than the kind has, unless any set pairs with any', () => {
    has(withS("S6 S13' Sa Snull"), 'trees/0/s', /names 4 S alleles, and cherry has 2/, true);
    const four = { ...cherry, ploidy: 4, inheritance: 'polysomic' as const };
    expect(found(withS('S6 S13 Sa S9', { kinds: [four] }))).toEqual([]);
  });
  it('of a kind that rejects nothing', () => {
    has(withS('S1S2', { kinds: [kind({ name: 'peach' })] }), 'trees/0/s', /peach rejects no pollen/, false);
  });
  it('that read like a mutant and are not described; told once', () => {
    const trees = [tree('a', { s: "S3S4'" }), tree('c', { s: "S1S4'" }), tree('d')];
    has(withS('', { trees }), 'trees/0/s', /S4' reads like an allele that lost a function/, false);
    expect(found(withS('', { trees })).filter(({ message }) => message.includes('lost a function'))).toHaveLength(1);
    expect(found(withS('', { trees, incompatibility: { alleles: [S4_PRIME] } }))).toEqual([]);
  });
  it('that are described by no name, or twice', () => {
    has(withS('S1', { incompatibility: { alleles: [{ name: 'S4S5' }] } }), 'incompatibility/alleles/0/name', /not the name of one S allele/, true);
    has(withS('S1', { incompatibility: { alleles: [S4_PRIME, S4_PRIME] } }), 'incompatibility/alleles/1/name', /described twice/, true);
  });
});

describe('pairs of a plan', () => {
  it('that will not set: no plan if they are all, a note if others are left', () => {
    has(orchard([crossed('a', 'b')]), 'plans/0/generations/0/pollen', /crosses a \(S1S3\) × b \(S1S3\): the seed parent rejects all of that pollen/, true);
    has(orchard([crossed('a', 'b', 'd')]), 'plans/0/generations/0/pollen', /cannot cross a \(S1S3\) × b \(S1S3\)/, false);
  });
  it('one way round alone, with an allele that lost its pollen side', () => {
    const trees = [tree('a', { s: 'S3S4' }), tree('b', { s: "S3S4'" })];
    const alleles = { alleles: [S4_PRIME] };
    has(orchard([crossed('b', 'a')], { trees, incompatibility: alleles }), 'plans/0/generations/0/pollen', /crosses b \(S3S4'\) × a \(S3S4\)/, true);
    has(orchard([crossed('a', 'b')], { trees, incompatibility: alleles }), 'plans/0/generations/0/pollen', /of which the seedlings get S4'/, false);
  });
  it('of which half of the pollen works: what the seedlings get, and what goes with it', () => {
    has(
      orchard([crossed('a', 'c')]),
      'plans/0/generations/0/pollen',
      /only part of the pollen works in a \(S1S3\) × c \(S3S4\), of which the seedlings get S4/,
      false,
    );
    const linked = orchard([crossed('a', 'c')], {
      genes: [{ id: 'r', name: 'dark skin', group: '6', position: 10 }],
      incompatibility: { group: '6', position: 20, halfSet: 0.5 },
    });
    expect(found(linked)[0]?.fix).toBe('Set is taken as 50 % of full set. What is linked to the S gene goes with that allele: dark skin.');
  });
  it('fully compatible: nothing to say', () => {
    expect(found(orchard([crossed('a', 'd')]))).toEqual([]);
  });
  it('in the air alone: all that is there is rejected', () => {
    const air = (...ids: string[]) => ({ pools: [{ id: 'air', name: 'air', trees: ids.map((id) => ({ tree: id, weight: 1 })) }], defaultPool: 'air' });
    const open = generation('g', 50, { pollen: 'open', flowers: 0 });
    has(orchard([open], air('a', 'b')), 'plans/0/generations/0/pool', /a \(S1S3\) rejects all the pollen in “air”/, true);
    expect(found(orchard([open], air('b', 'c')))).toEqual([]);
  });
  it('of brother and sister: a quarter sets nothing and half works in part (East & Mangelsdorf 1925)', () => {
    const sibs = [crossed('a', 'd'), generation('f2', 50, { seedParents: picksOf('g'), pollen: picksOf('g') })];
    has(orchard(sibs), 'plans/0/generations/1/pollen', /about 25 % set nothing.*in 50 % only part/, false);
  });
  it('of a half-compatible cross with its father: half of its seedlings are like him', () => {
    const back = [crossed('a', 'c'), generation('bc', 50, { seedParents: picksOf('g'), pollen: [{ tree: 'c' }] })];
    has(orchard(back), 'plans/0/generations/1/pollen', /about 50 % set nothing.*in 50 % only part/, false);
  });
  it('of trees whose alleles are not known: nothing to say', () => {
    const sibs = [crossed('a', 'b'), generation('f2', 50, { seedParents: picksOf('g'), pollen: picksOf('g') })];
    expect(found(orchard(sibs, { trees: [tree('a'), tree('b', { s: 'S1S2' })] }))).toEqual([]);
  });
  it('selfed: no if it rejects its own pollen, yes with an allele that lost a function', () => {
    const selfed = generation('g', 50, { seedParents: [{ tree: 'a' }], pollen: 'self' });
    has(orchard([selfed]), 'plans/0/generations/0/pollen', /selfs a \(S1S3\), which rejects its own pollen/, true);
    expect(found(orchard([selfed], { trees: [tree('a', { s: "S1S4'" })], incompatibility: { alleles: [S4_PRIME] } }))).toEqual([]);
  });
});

describe('sexes', () => {
  const apart = kind({ maleShare: 0.5 });
  const two = [tree('a', { sex: 'female' }), tree('b', { sex: 'male' })];
  const said = (generations: readonly GenerationDocument[], changes: Partial<Document> = {}) =>
    document({ kinds: [apart], trees: two, plans: plans(generations), ...changes });
  const f2 = generation('f2', 50, { seedParents: picksOf('f1'), pollen: picksOf('f1') });

  it('a tree of which the sex is not said', () => {
    has(said([generation('g', 50)], { trees: [...two, tree('c')] }), 'trees/2/sex', /separate sexes, and taken as both/, false);
  });
  it('a male as seed parent, a female as pollen parent, and one that is to be selfed', () => {
    has(said([generation('g', 50, { seedParents: [{ tree: 'b' }] })]), 'plans/0/generations/0/seedParents', /b as seed parent, which is male/, true);
    has(said([generation('g', 50, { pollen: [{ tree: 'b' }, { tree: 'a' }] })]), 'plans/0/generations/0/pollen', /counts on pollen of a \(female\)/, false);
    const selfing = said([generation('g', 50, { pollen: 'self' })], { kinds: [kind({ maleShare: 0.5, selfCompatible: true })] });
    has(selfing, 'plans/0/generations/0/pollen', /selfs a, which has one sex alone/, true);
  });
  it('picks as pollen parents of which no male is kept', () => {
    has(said([generation('f1', 50), f2]), 'plans/0/generations/1/pollen', /the picks of f1 \(no male is kept\)/, true);
    expect(found(said([generation('f1', 50, { keep: { howMany: 3, males: 2 } }), f2]))).toEqual([]);
  });
  it('fathers by their daughters: of a generation that is judged and crossed by hand', () => {
    const by = generation('f2', 50, { pollen: [{ sires: 'f1', best: 1 }] });
    expect(found(said([generation('f1', 50), by]))).toEqual([]);
    has(said([generation('f1', 50, { judge: 0 }), by]), 'plans/0/generations/1/pollen/0/sires', /of which no crop is judged/, true);
  });
  it('males alone, and males where there are none', () => {
    has(said([generation('g', 50)], { kinds: [kind({ maleShare: 1 })] }), 'plans/0/generations/0', /raises males alone/, true);
    has(
      said([generation('g', 50, { keep: { howMany: 1, males: 1 } })], { kinds: [kind()] }),
      'plans/0/generations/0/keep/males',
      /no kind that it raises has separate sexes/,
      false,
    );
  });
});

it('a parent with an odd number of sets is as good as sterile, unless the cross says what is any use', () => {
  const kinds = [kind(), kind({ id: 'odd', name: 'triploid', ploidy: 3 })];
  const trees = [tree('a', { kind: 'odd' }), tree('b')];
  const entry = (usable: object) => [cross(), cross({ id: 'odd', name: 'odd × pear', seed: 'odd', ...usable })];
  const input = (usable: object) => document({ kinds, trees, crosses: entry(usable), plans: plans([generation('g', 50)]) });
  has(input({}), 'plans/0/generations/0', /counts on triploid, which has 3 sets of chromosomes and is as good as sterile/, true);
  expect(found(input({ usableSeedlings: 0.1 }))).toEqual([]);
});
