import { describe, expect, it } from 'vitest';
import { count, expectMean, expectShare, expectVariance, mean } from './agreement.ts';
import { Nursery } from './genomes.ts';
import { cross, document, future, generation, kind, measured, neverProven, plans, shown, tree, type Document } from './programmes.ts';

const N = 20_000;
const any = (ploidy: number) => kind({ ploidy, inheritance: 'polysomic', selfCompatible: true });
const carrying = (id: string, copies: number) => tree(id, { genes: { r: { copies } } });

/** Tree a with so many copies of r, tree b with none, of a kind with so many sets of which any pairs with any. */
const pair = (ploidy: number, copies: number, alpha = 0, changes: Partial<Document> = {}) =>
  document({
    plans: plans([generation('g', 1)]),
    kinds: [any(ploidy)],
    genes: [{ id: 'r', name: 'r', doubleReduction: alpha }],
    trees: [carrying('a', copies), carrying('b', 0)],
    ...changes,
  });

const expectShares = (got: readonly number[], expected: readonly number[], what: string) => {
  const all = got.reduce((a, b) => a + b, 0);
  got.forEach((hits, i) => {
    expectShare(hits, all, expected[i] ?? 0, `${what}: ${String(i)} copies`);
  });
};

describe('gametes with four sets, any pairing with any', () => {
  it.each([0, 0.1, 1 / 6])('a duplex gives 1 : 4 : 1 and more of the ends with double reduction %f (Haldane 1930, J. Genet. 22:359–372)', (alpha) => {
    const ends = (1 + 2 * alpha) / 6;
    expectShares(new Nursery(pair(4, 2, alpha)).dosages(0, 1, N), [ends, 1 - 2 * ends, ends], 'AAaa × aaaa');
  });

  it.each([0, 0.1, 1 / 6])('a simplex gives α/4 with two copies (Fisher & Mather 1943, Ann. Eugen. 12:1–23): α = %f', (alpha) => {
    expectShares(new Nursery(pair(4, 1, alpha)).dosages(0, 1, N), [1 / 2 + alpha / 4, 1 / 2 - alpha / 2, alpha / 4], 'Aaaa × aaaa');
  });

  it('AAaa selfed: 1 : 8 : 18 : 8 : 1, so 35 : 1 where one copy shows (Muller 1914, Am. Nat. 48:508–512; Allard 1960)', () => {
    expectShares(
      new Nursery(pair(4, 2)).dosages(0, 0, N),
      [1, 8, 18, 8, 1].map((n) => n / 36),
      'AAaa selfed',
    );
  });
});

describe('gametes with six sets', () => {
  it('1 : 9 : 9 : 1 from three copies, 1 : 3 : 1 from two (Haldane 1930)', () => {
    expectShares(
      new Nursery(pair(6, 3)).dosages(0, 1, N),
      [1, 9, 9, 1].map((n) => n / 20),
      'three copies',
    );
    expectShares(
      new Nursery(pair(6, 2)).dosages(0, 1, N),
      [1, 3, 1].map((n) => n / 5),
      'duplex × nulliplex',
    );
  });

  it('double reduction: one copy twice and one of the other five (α = 0.2)', () => {
    // From one copy in six: twice it if it is the one that is doubled (1/6); once if it is among the others (5/6 · 1/5).
    const [apart, alpha] = [1 / 2, 0.2];
    const two = alpha / 6;
    const one = (1 - alpha) * apart + (alpha * 5) / 6 / 5;
    expectShares(new Nursery(pair(6, 1, alpha)).dosages(0, 1, N), [1 - one - two, one, two], 'simplex');
  });

  it('a whole plan: all six copies needed, 1 seedling in 5 of duplex for the other allele × one without it (trade figure for sweet kaki; the same by C(4,3)/C(6,3))', () => {
    const seedlings = 100;
    const input = pair(6, 4, 0, {
      trees: [carrying('a', 4), carrying('b', 6)],
      traits: [shown(2, { rules: [{ name: 'all six', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 6 }] } }] })],
      goal: neverProven(),
      lastYear: 2006,
      plans: plans([generation('g', seedlings)]),
    });
    expectMean(
      Array.from(future(input, 300).generation(0, 'showing'), (n) => n / seedlings),
      1 / 5,
    );
  });
});

describe('linkage with four sets', () => {
  it('Haldane 1919: a gamete carries both of two coupled alleles in (1 − r)/2, plus what chance brings together', () => {
    const cM = 20;
    const r = (1 - Math.exp((-2 * cM) / 100)) / 2;
    const state = { copies: 1, homologue: 'a' } as const;
    const nursery = new Nursery(
      pair(4, 1, 0, {
        genes: ['r', 's'].map((id, i) => ({ id, name: id, group: 'one', position: i * cM })),
        trees: [tree('a', { genes: { r: state, s: state } }), tree('b')],
      }),
    );
    let both = 0;
    let rAlone = 0;
    for (let n = 0; n < N; n += 1) {
      const seedling = nursery.breed(0, 1);
      const [first, second] = [nursery.stand.copies(seedling, 0), nursery.stand.copies(seedling, 1)];
      both += +(first === 1 && second === 1);
      rAlone += +(first === 1 && second === 0);
      nursery.stand.clear();
    }
    // The homologue is in half of the gametes' pairs as it is; a crossover puts one of the two alleles on its partner, which stays behind.
    expectShare(both, N, (1 - r) / 2, 'both');
    expectShare(rAlone, N, r / 2, 'one without the other');
  });
});

describe('crosses between ploidies', () => {
  const kinds = [any(2), { ...any(4), id: 'four', name: 'four' }, { ...any(3), id: 'three', name: 'three' }];
  const triploids = document({
    plans: plans([generation('g', 1)]),
    kinds,
    trees: [carrying('a', 1), tree('b', { kind: 'four', genes: { r: { copies: 2 } } }), tree('c', { kind: 'three', genes: { r: { copies: 1 } } })],
    crosses: [cross({ pollen: 'four', gives: 'three' })],
  });

  it('2x × 4x gives the sum of both gametes: (1/2, 1/2) with (1 : 4 : 1)/6', () => {
    expectShares(
      new Nursery(triploids).dosages(0, 1, N, 2),
      [1, 5, 5, 1].map((n) => n / 12),
      'triploids',
    );
  });

  it('a triploid gives one copy or two, as the seedlings’ kind says: 1/3 and 2/3 of one copy in three', () => {
    const nursery = new Nursery(triploids);
    // × the diploid tree without the allele would need a tree b of its own: count over copies that came with the pollen of a nulliplex four.
    const other = new Nursery({ ...triploids, trees: [tree('a'), tree('b', { kind: 'four' }), ...triploids.trees.slice(2)] });
    expect(nursery.compiled.sets).toBe(4);
    expectShares(other.dosages(2, 0, N, 0), [2 / 3, 1 / 3], 'to diploid seedlings');
    expectShares(other.dosages(2, 0, N, 2), [1 / 3, 2 / 3], 'to triploid seedlings');
  });
});

describe('genes that one parent alone passes on', () => {
  it.each([
    ['pollen', 0, 1],
    ['seed', 1, 0],
    ['both', 1, 1],
  ] as const)('passed on by %s', (passes, bySeed, byPollen) => {
    const nursery = new Nursery(document({ plans: plans([generation('g', 1)]), genes: [{ id: 'r', name: 'r', passes }] }));
    expect(nursery.dosages(0, 1, 50)[bySeed]).toBe(50);
    expect(nursery.dosages(1, 0, 50)[byPollen]).toBe(50);
  });
});

describe('measured traits with more than two sets', () => {
  it.each([2, 3, 4, 6])('a reference population with %i sets has variance V_G (docs/model.md, Genome)', (ploidy) => {
    const nursery = new Nursery(
      pair(ploidy, 0, 0, {
        traits: [shown(1), measured()],
        trees: Array.from({ length: 40 }, (_, t) => carrying(t === 0 ? 'a' : t === 1 ? 'b' : `t${String(t)}`, 0)),
        ...(ploidy === 3 ? { crosses: [cross({ usableSeedlings: 0.1 })] } : {}),
      }),
    );
    const values: number[] = [];
    for (let run = 0; run < 50; run += 1) {
      nursery.future(run);
      for (let t = 0; t < 40; t += 1) values.push(nursery.facts.scales[0]!.geneticOf(nursery.stand.genome, nursery.stand.offset(t), ploidy));
    }
    expectMean(values, 0);
    expectVariance(values, 1);
  });

  it('within full sibs of random trees half of V_G, whatever the sets', () => {
    const nursery = new Nursery(pair(6, 0, 0, { traits: [shown(1), measured()] }));
    const variances: number[] = [];
    for (let run = 0; run < 600; run += 1) {
      nursery.future(run);
      const values = Array.from({ length: 20 }, () => nursery.facts.scales[0]!.geneticOf(nursery.stand.genome, nursery.stand.offset(nursery.breed(0, 1)), 6));
      const middle = mean(values);
      variances.push(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1));
    }
    // Of six copies at frequency ½ a gamete takes three without putting back: variance of the gamete half of the tree's own, so ½ V_G in all.
    expectMean(variances, 0.5);
  });

  it.each([0, 2])(
    'a stated value is reached to the nearest copy, genes of large effect and inbreeding included (lost by full inbreeding: %f)',
    (inbreeding) => {
      const genes = [{ gene: 'r', half: 0.5, dominance: 0.2 }];
      for (const value of [-1.2, 0, 0.9]) {
        const input = pair(6, 2, 0, {
          traits: [shown(1), measured({ inbreeding, genes })],
          trees: [tree('a', { values: { size: value }, genes: { r: { copies: 2 } } }), tree('b')],
        });
        const { facts, stand } = new Nursery(input);
        const scale = facts.scales[0]!;
        // Half a copy; with inbreeding the next copy may also meet its like.
        const step = scale.effects[6]! / 2 + (inbreeding * 5) / (16 * 15);
        expect(Math.abs(scale.geneticOf(stand.genome, stand.offset(0), 6) - value)).toBeLessThanOrEqual(step);
      }
    },
  );
});

describe('hidden copies', () => {
  /** Copies of tree a over futures, from not known at frequency q. */
  const drawn = (changes: Partial<Document>, runs = 4000, ploidy = 4) => {
    const nursery = new Nursery(pair(ploidy, 0, 0, changes));
    return Array.from({ length: runs }, (_, run) => {
      nursery.future(run);
      return nursery.stand.copies(0, 0);
    });
  };
  const q = 0.3;
  const unknown = { genes: { r: { frequency: q } } };
  const binomial = [0, 1, 2, 3, 4].map((n) => [1, 4, 6, 4, 1][n]! * q ** n * (1 - q) ** (4 - n));
  const posterior = (likelihood: readonly number[]) => {
    const weights = binomial.map((p, n) => p * likelihood[n]!);
    const all = weights.reduce((a, b) => a + b, 0);
    return weights.map((w) => w / all);
  };
  const expectCopies = (got: readonly number[], expected: readonly number[], what: string) => {
    expected.forEach((p, n) => {
      expectShare(
        count(got, (copies) => copies === n),
        got.length,
        p,
        `${what}: ${String(n)} copies`,
      );
    });
  };

  it('are binomial where nothing was seen', () => {
    expectCopies(drawn({ trees: [tree('a', unknown), tree('b')] }), binomial, 'unseen');
  });

  it('are weighed by what was seen: not shown in 4 seasons of 2 in 10 where two copies show it (Bayes)', () => {
    const traits = [shown(2, { seasonsShown: 0.2 })];
    const seen = { red: { showed: 0, seasons: 4 } };
    expectCopies(drawn({ traits, trees: [tree('a', { ...unknown, seen }), tree('b')] }), posterior([1, 1, 0.8 ** 4, 0.8 ** 4, 0.8 ** 4]), 'seen');
  });

  it('are weighed by test crosses: 1 of 3 seedlings by a tester with all copies showed it, where four copies are needed', () => {
    // Half of a full set comes from the tester; a seedling shows it if the tree's gamete has two copies: C(n,2)/6.
    const traits = [shown(2, { rules: [{ name: 'four', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 4 }] } }] })];
    const testCrosses = { red: { showed: 1, of: 3 } };
    const showing = [0, 0, 1 / 6, 1 / 2, 1];
    expectCopies(
      drawn({ traits, trees: [tree('a', { ...unknown, testCrosses }), tree('b')] }),
      posterior(showing.map((p) => p * (1 - p) ** 2)),
      'test-crossed',
    );
  });

  it('halve the odds of a carrier with two sets for each test-cross seedling that does not show it', () => {
    // Two copies needed; a tree that was seen not to show it is 1 or 0 copies.
    const trees = [tree('a', { ...unknown, seen: { red: { showed: 0, seasons: 1 } }, testCrosses: { red: { showed: 0, of: 3 } } }), tree('b')];
    const got = drawn({ trees, kinds: [kind()] }, 4000, 2);
    const odds = ((2 * q * (1 - q)) / (1 - q) ** 2) * 0.5 ** 3;
    expectShare(
      count(got, (copies) => copies === 1),
      got.length,
      odds / (1 + odds),
    );
    expect(Math.max(...got)).toBe(1);
  });
});
