import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { family, genesOf, offspringShares, phenotypeShares, qualifies, shareQualifying, type Needs } from '../../src/genetics/family.ts';
import { carrierIfNotShown, hardyWeinberg, inbreeding, MATINGS, openPollinated, strayShareOfFruit } from '../../src/genetics/population.ts';

const copies = fc.constantFrom(0, 1, 2);
const genes = ['a', 'b', 'c'];
const tree = fc.record({ a: copies, b: copies, c: copies });
const frequency = fc.double({ min: 0, max: 1, noNaN: true });

describe('family of two trees', () => {
  it('lists every genotype once, with shares that sum to 1 exactly and the mean copies of its parents', () => {
    fc.assert(
      fc.property(tree, tree, (mother, father) => {
        const members = family(mother, father, genes);
        expect(new Set(members.map((member) => JSON.stringify(member.copies))).size).toBe(members.length);
        expect(members.reduce((total, { share }) => total + share, 0)).toBe(1);
        for (const gene of ['a', 'b', 'c'] as const)
          expect(members.reduce((total, member) => total + member.share * member.copies[gene]!, 0)).toBe((mother[gene] + father[gene]) / 2);
      }),
    );
  });

  it('is the same whichever is the mother, for genes of the nucleus', () => {
    fc.assert(
      fc.property(tree, tree, (one, other) => {
        expect(family(one, other, genes)).toEqual(family(other, one, genes));
      }),
    );
  });

  it('breeds true from like parents without two kinds of allele', () => {
    expect(family({ a: 2, b: 0 }, { a: 2 }, ['a', 'b'])).toEqual([{ copies: { a: 2, b: 0 }, share: 1 }]);
    expect(family({}, {}, [])).toEqual([{ copies: {}, share: 1 }]);
  });

  it('refuses trees that are not diploid, and lists too long to show', () => {
    expect(() => family({ a: 3 }, { a: 0 }, ['a'])).toThrow(RangeError);
    expect(() => family({ a: 0.5 }, { a: 0 }, ['a'])).toThrow(RangeError);
    expect(() =>
      family(
        {},
        {},
        Array.from({ length: 13 }, (_, i) => `g${String(i)}`),
      ),
    ).toThrow(RangeError);
  });
});

describe('rules', () => {
  const all: Needs = {
    needs: 'all',
    of: [
      { gene: 'a', copies: 2 },
      { gene: 'b', copies: 1 },
    ],
  };
  const any: Needs = {
    needs: 'any',
    of: [
      { gene: 'a', copies: 2 },
      { gene: 'b', copies: 1 },
    ],
  };
  const total: Needs = { needs: 'total', genes: ['a', 'b', 'c'], copies: 4 };

  it('ask for all, for any, or for a total', () => {
    expect([{ a: 2, b: 1 }, { a: 2, b: 0 }, { a: 1, b: 2 }, {}].map((tree) => qualifies(tree, all))).toEqual([true, false, false, false]);
    expect([{ a: 2, b: 0 }, { a: 1, b: 1 }, { a: 1 }, {}].map((tree) => qualifies(tree, any))).toEqual([true, true, false, false]);
    expect(
      [
        { a: 2, b: 2 },
        { a: 1, b: 1, c: 2 },
        { a: 1, b: 2 },
      ].map((tree) => qualifies(tree, total)),
    ).toEqual([true, true, false]);
    expect(genesOf(total)).toEqual(['a', 'b', 'c']);
    expect(
      genesOf({
        needs: 'any',
        of: [
          { gene: 'a', copies: 1 },
          { gene: 'a', copies: 2 },
        ],
      }),
    ).toEqual(['a']);
  });

  it('give 15:1 to duplicate genes and 1:4:6:4:1 to the copies of two added together (Nilsson-Ehle 1909, from memory)', () => {
    const hybrid = { a: 1, b: 1 };
    expect(
      shareQualifying(hybrid, hybrid, {
        needs: 'any',
        of: [
          { gene: 'a', copies: 1 },
          { gene: 'b', copies: 1 },
        ],
      }),
    ).toBe(15 / 16);
    const atLeast = (count: number): Needs => ({ needs: 'total', genes: ['a', 'b'], copies: count });
    expect(phenotypeShares(family(hybrid, hybrid, ['a', 'b']), [atLeast(4), atLeast(3), atLeast(2), atLeast(1)]).map((share) => share * 16)).toEqual([
      1, 4, 6, 4, 1,
    ]);
  });

  it('divide a family among them, the first that fits, none left over', () => {
    fc.assert(
      fc.property(tree, tree, (mother, father) => {
        const shares = phenotypeShares(family(mother, father, genes), [total, all, any]);
        expect(shares).toHaveLength(4);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(1);
        expect(shares[0]).toBe(shareQualifying(mother, father, total));
      }),
    );
  });
});

describe('population', () => {
  it('keeps its allele frequency from one generation of chance mating to the next (Hardy 1908)', () => {
    fc.assert(
      fc.property(frequency, (q) => {
        const [none, one, two] = hardyWeinberg(q);
        expect(none + one + two).toBeCloseTo(1, 14);
        expect(two + one / 2).toBeCloseTo(q, 14);
        // A random mother open-pollinated by the same population gives that population again.
        const again = [none, one, two].reduce((share, weight, motherCopies) => share + weight * openPollinated(motherCopies, q)[2], 0);
        expect(again).toBeCloseTo(two, 14);
      }),
    );
  });

  it('has carriers 2q/(1 + q) among those that do not show, and all heterozygotes if showing says nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.999, noNaN: true }), (q) => {
        expect(carrierIfNotShown(q)).toBeCloseTo((2 * q) / (1 + q), 12);
        expect(carrierIfNotShown(q, 0)).toBeCloseTo(2 * q * (1 - q), 14);
      }),
    );
    expect(carrierIfNotShown(1)).toBeNaN();
  });

  it('gives open seed of a tree with two copies the pollen’s own frequency', () => {
    expect(openPollinated(2, 0.15)).toEqual([0, 0.85, 0.15]);
    expect(openPollinated(0, 0.15)[2]).toBe(0);
    expect(offspringShares(0.5, 0.5)).toEqual([0.25, 0.5, 0.25]);
  });

  it('is inbred ever more, selfing fastest, half sibs slowest of the closed lines', () => {
    for (const mating of MATINGS) {
      expect(inbreeding(mating, 0)).toBe(0);
      for (let t = 1; t < 30; t++) expect(inbreeding(mating, t)).toBeGreaterThan(inbreeding(mating, t - 1));
    }
    for (let t = 1; t < 30; t++) {
      expect(inbreeding('selfing', t)).toBe(1 - 0.5 ** t);
      expect(inbreeding('fullSibs', t)).toBeGreaterThan(inbreeding('halfSibs', t));
      expect(inbreeding('backcross', t)).toBeLessThan(0.5);
    }
  });

  it('loses heterozygotes under full sibs by 0.809 a generation in the end (Falconer & Mackay 1996, ch. 5: (1 + √5)/4)', () => {
    expect((1 - inbreeding('fullSibs', 40)) / (1 - inbreeding('fullSibs', 39))).toBeCloseTo((1 + Math.sqrt(5)) / 4, 12);
  });

  it('has only stray fruit when the wanted pollen sets nothing, and hardly any when it sets well', () => {
    expect(strayShareOfFruit(0, 0.012)).toBe(1);
    expect(strayShareOfFruit(1, 0.012)).toBe(0);
    expect(strayShareOfFruit(0.3, 0)).toBe(0);
  });
});
