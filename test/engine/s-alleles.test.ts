import { describe, expect, it } from 'vitest';
import { sibCompatibility, selfFertileShare } from '../../src/genetics/incompatibility.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { count, expectMean, expectRatio, expectShare } from './agreement.ts';
import { cross, document, future, generation, kind, neverProven, picksOf, plans, read, shown, tree, type Document } from './programmes.ts';

/** Haldane (1919) J. Genet. 8:299–309. */
const recombination = (cM: number) => (1 - Math.exp((-2 * cM) / 100)) / 2;

const cherry = (changes: Parameters<typeof kind>[0] = {}) => kind({ pollenRejection: 'gametophytic', ...changes });
/** S4' of cherry: never rejected as pollen; its style rejects S4. */
const S4_PRIME = { name: "S4'", like: 'S4', pollenWorks: false, styleWorks: true };

/** One crossing of named trees, every seedling kept and judged once. */
const crossing = (trees: Document['trees'], changes: Partial<Document> = {}, seedlings = 1000): Document =>
  document({
    kinds: [cherry()],
    traits: [shown(1)],
    trees,
    goal: neverProven(),
    plans: plans([generation('g', seedlings)]),
    lastYear: 2007,
    ...changes,
  });

describe('pairs by their S alleles', () => {
  it('half of the pollen works: set as stated, by hand full', () => {
    const trees = [tree('a', { s: 'S3S4' }), tree('b', { s: 'S1S3' })];
    const crosses = [cross({ set: 0.4 })];
    expectMean(future(crossing(trees, { crosses, plans: plans([generation('g', 1000)]) }), 300).generation(0, 'fruits'), 400, 'full set by hand');
    const half = crossing(trees, { crosses, incompatibility: { halfSet: 0.6 } });
    expectMean(future(half, 300).generation(0, 'fruits'), 240, '0.6 of full set');
  });

  it('a pair that shares both alleles is left out, and its flowers go to the others', () => {
    const trees = [tree('a', { s: 'S1S3' }), tree('b', { s: 'S1S3', genes: { r: { copies: 2 } } }), tree('c', { s: 'S4S5' })];
    const columns = future(crossing(trees, { plans: plans([generation('g', 1000, { pollen: [{ tree: 'b' }, { tree: 'c' }] })]) }), 20);
    expect([...new Set(columns.generation(0, 'fruits'))]).toEqual([1000]);
    expect([...new Set(columns.generation(0, 'showing'))]).toEqual([0]);
  });

  it("S3S4 × S3S4' sets and S3S4' × S3S4 does not, crossed both ways round", () => {
    // Both ways would share the flowers; with one barren all of them are on the seed parent that takes the pollen.
    const trees = [tree('a', { s: 'S3S4', flowers: 300 }), tree('b', { s: "S3S4'", flowers: 700 })];
    const both = crossing(trees, { incompatibility: { alleles: [S4_PRIME] }, plans: plans([generation('g', 1000, { reciprocal: true })]) });
    expect([...new Set(future(both, 20).generation(0, 'fruits'))]).toEqual([300]);
  });

  it('what rejects is the style of the seed parent’s kind, and unknown alleles change no byte', () => {
    const plain = document({ plans: plans([generation('g', 200)]) });
    const asked = document({ kinds: [cherry()], plans: plans([generation('g', 200)]) });
    const bytes = (input: Document) => Buffer.from(new Simulator(read(input)).runs([0], 0, 50)[0]!.ints.buffer).toString('base64');
    expect(bytes(asked)).toBe(bytes(plain));
    const tolerant = crossing([tree('a', { s: 'S1S3' }), tree('b', { s: 'S1S3' })], { kinds: [kind()] });
    expect([...new Set(future(tolerant, 5).generation(0, 'fruits'))]).toEqual([1000]);
  });

  it('open pollination: fathers of which no pollen works have no seedlings', () => {
    const trees = [
      tree('a', { s: 'S1S3' }),
      tree('b', { s: 'S1S3', genes: { r: { copies: 2 } } }),
      tree('c', { s: 'S3S4' }),
      tree('d', { genes: { r: { copies: 2 } } }),
    ];
    const air = [
      { tree: 'b', weight: 5 },
      { tree: 'c', weight: 3 },
      { tree: 'd', weight: 1 },
    ];
    const open = crossing(trees, {
      pools: [{ id: 'air', name: 'air', trees: air }],
      defaultPool: 'air',
      plans: plans([generation('g', 400, { pollen: 'open', flowers: 0 })]),
    });
    const columns = future(open, 100);
    expectRatio(columns.generation(0, 'showing'), columns.generation(0, 'fruiting'), 1 / 4);
  });
});

describe('seedlings carry what could be sired', () => {
  const linked = (s: string, homologue: 'a' | 'b', cM: number, changes: Partial<Document> = {}) =>
    crossing([tree('a', { s: 'S3S4' }), tree('b', { s, genes: { r: { copies: 1, homologue } } })], {
      genes: [{ id: 'r', name: 'r', group: '6', position: 40 }],
      incompatibility: { group: '6', position: 40 + cM, alleles: [S4_PRIME] },
      ...changes,
    });
  it.each([
    ['the allele that works', 'a', 10, 1 - recombination(10)],
    ['the allele that fails', 'b', 10, recombination(10)],
    ['the allele that works', 'a', -25, 1 - recombination(25)],
    ['the allele that fails, nowhere else', 'b', 0, 0],
  ] as const)('a gene on the chromosome of %s (%s, %f cM away) follows it', (_, homologue, cM, share) => {
    const columns = future(linked('S1S3', homologue, cM), 60);
    expectRatio(columns.generation(0, 'showing'), columns.generation(0, 'fruiting'), share);
  });

  it('of fully compatible pollen half carries it', () => {
    const columns = future(linked('S1S2', 'a', 10), 60);
    expectRatio(columns.generation(0, 'showing'), columns.generation(0, 'fruiting'), 0.5);
  });

  it('four sets, grains of two: of those without the matched allele two in three carry another one', () => {
    const four = cherry({ ploidy: 4, inheritance: 'polysomic' });
    const genes = [{ id: 'r', name: 'r', group: '6', position: 40 }];
    const share = (homologue: 'a' | 'b') => {
      const trees = [tree('a', { s: 'S1S5S6S7' }), tree('b', { s: 'S1S2S3S4', genes: { r: { copies: 1, homologue } } })];
      return future(crossing(trees, { kinds: [four], genes, incompatibility: { group: '6', position: 40 } }), 60);
    };
    expect([...new Set(share('a').generation(0, 'showing'))]).toEqual([0]);
    const other = share('b');
    expectRatio(other.generation(0, 'showing'), other.generation(0, 'fruiting'), 2 / 3);
  });
});

describe('what comes of their seedlings', () => {
  const RUNS = 1500;
  const second = (next: Parameters<typeof generation>[2], first: Parameters<typeof generation>[2] = {}) =>
    plans([generation('f1', 12, first), generation('f2', 4, { seedParents: picksOf('f1'), pollen: picksOf('f1'), ...next })]);

  it('brother × sister of S1S2 × S3S4: one pair in four sets nothing (East & Mangelsdorf 1925)', () => {
    const trees = [tree('a', { s: 'S1S2' }), tree('b', { s: 'S3S4' })];
    const sibs = crossing(trees, { plans: second({}, { keep: { howMany: 2 } }), lastYear: 2018 });
    const barren = count(future(sibs, RUNS).generation(1, 'fruits'), (fruits) => fruits === 0);
    expectShare(barren, RUNS, sibCompatibility({ s: 'S1S2' }, { s: 'S3S4' }).none);
  });

  it.each([
    ['S1S5', "S3S4'", 0.5],
    ['S3S4', "S3S4'", 1],
  ])('selfs of the seedlings of %s × %s: self-fertile %f (Schmidt & Schulze 1998: 1:1, or all)', (a, b, share) => {
    const alleles = [S4_PRIME];
    expect(selfFertileShare({ s: a }, { s: b }, alleles)).toBe(share);
    const trees = [tree('a', { s: a }), tree('b', { s: b })];
    const selfs = crossing(trees, { incompatibility: { alleles }, plans: second({ pollen: 'self' }, { keep: { howMany: 1 } }), lastYear: 2018 });
    const fertile = count(future(selfs, RUNS).generation(1, 'fruits'), (fruits) => fruits > 0);
    expectShare(fertile, RUNS, share);
  });

  it("a selfed S1S4' passes on S4' alone by its pollen: a gene at S4' on one chromosome is in every seedling, twice in half of them", () => {
    const trees = [tree('a', { s: "S1S4'", genes: { r: { copies: 1, homologue: 'b' } } }), tree('b')];
    const selfed = (copies: 1 | 2) =>
      future(
        crossing(trees, {
          traits: [shown(copies)],
          genes: [{ id: 'r', name: 'r', group: '6', position: 40 }],
          incompatibility: { group: '6', position: 40, alleles: [S4_PRIME] },
          plans: plans([generation('g', 1000, { pollen: 'self' })]),
        }),
        60,
      );
    expect([...new Set(selfed(1).generation(0, 'showing'))]).toEqual([1000]);
    const twice = selfed(2);
    expectRatio(twice.generation(0, 'showing'), twice.generation(0, 'fruiting'), 0.5);
  });

  it('stray pollen of 1.2 % in a seen set of 1.6 %: 74 % are no hybrids, as were 205 of 278 (Arbeloa et al. 2006)', () => {
    const trees = [
      tree('a', { s: 'S1S2' }),
      tree('b', { s: 'S3S4' }),
      tree('c', { s: 'S1S2', genes: { r: { copies: 2 } } }),
      tree('d', { genes: { r: { copies: 2 } } }),
    ];
    const stray = crossing(trees, {
      crosses: [cross({ set: 0.0042, straySet: 0.012 })],
      pools: [
        {
          id: 'air',
          name: 'air',
          trees: [
            { tree: 'c', weight: 9 },
            { tree: 'd', weight: 1 },
          ],
        },
      ],
      defaultPool: 'air',
      plans: plans([generation('g', 100_000, { flowers: 1000 })]),
    });
    const columns = future(stray, 300);
    expectRatio(columns.generation(0, 'showing'), columns.generation(0, 'fruits'), (0.012 * (1 - 0.0042)) / (0.0042 + 0.012 * (1 - 0.0042)));
  });
});
