import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { family } from '../../src/genetics/family.ts';
import { linkedGametes } from '../../src/genetics/polysomic-linkage.ts';
import { fixedAfter, heterozygosityKept } from '../../src/genetics/polysomic-lines.ts';
import {
  chromatidDoubleReduction,
  dosagesInPopulation,
  gameteDosages,
  mostDoubleReduction,
  polysomicFamily,
  polysomicShareQualifying,
  seedlingDosages,
} from '../../src/genetics/polysomic.ts';

const sum = (shares: readonly number[]): number => shares.reduce((total, one) => total + one, 0);
const mean = (shares: readonly number[]): number => sum(shares.map((share, n) => share * n));
/** A tree of 2, 4 or 6 sets with some copies, and double reduction it can have. */
const tree = fc
  .constantFrom(2, 4, 6)
  .chain((sets) => fc.record({ sets: fc.constant(sets), copies: fc.integer({ min: 0, max: sets }), part: fc.double({ min: 0, max: 1, noNaN: true }) }));

describe('gametes of several sets', () => {
  it('sum to 1 and carry half of the copies on average, with double reduction too', () => {
    fc.assert(
      fc.property(tree, ({ sets, copies, part }) => {
        const shares = gameteDosages(sets, copies, part * mostDoubleReduction(sets));
        expect(shares).toHaveLength(sets / 2 + 1);
        expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
        expect(sum(shares)).toBeCloseTo(1, 12);
        expect(mean(shares)).toBeCloseTo(copies / 2, 12);
      }),
    );
  });

  it('of two sets are Mendel’s, whatever is said of double reduction', () => {
    expect(gameteDosages(2, 1, 0.1)).toEqual([0.5, 0.5]);
    expect(polysomicFamily({ sets: 2, copies: { a: 1, b: 2 } }, { sets: 2, copies: { a: 1 } }, ['a', 'b'])).toEqual(
      family({ a: 1, b: 2 }, { a: 1 }, ['a', 'b']),
    );
  });

  it('without double reduction keep the dosages of a randomly mated population', () => {
    const trees = dosagesInPopulation(6, 0.3);
    const pollen = [0, 1, 2, 3].map((n) => sum(trees.map((share, copies) => share * gameteDosages(6, copies)[n]!)));
    pollen.forEach((share, n) => {
      expect(share).toBeCloseTo(dosagesInPopulation(3, 0.3)[n]!, 12);
    });
  });

  it('come together over crosses of unlike sets', () => {
    // Four sets by two: three sets, each parent giving half of its own.
    expect(seedlingDosages({ sets: 4, copies: 2 }, { sets: 2, copies: 1 })).toEqual(
      [1 / 12, 5 / 12, 5 / 12, 1 / 12].map((share) => expect.closeTo(share, 12) as number),
    );
  });

  it('qualify by dosage over several genes', () => {
    const mother = { sets: 4, copies: { a: 2, b: 4 } };
    // Both copies of a in a gamete of a duplex, against a tester with all: 1/6; b is there on every set.
    const both = {
      needs: 'all',
      of: [
        { gene: 'a', copies: 4 },
        { gene: 'b', copies: 4 },
      ],
    } as const;
    const tester = { sets: 4, copies: { a: 4, b: 4 } };
    expect(polysomicShareQualifying(mother, tester, { ...both, of: [...both.of] })).toBeCloseTo(1 / 6, 12);
    expect(polysomicShareQualifying(mother, tester, { needs: 'total', genes: ['a', 'b'], copies: 7 })).toBeCloseTo(5 / 6, 12);
  });

  it('are refused for odd sets, impossible copies and more double reduction than there can be', () => {
    expect(() => gameteDosages(3, 1)).toThrow(RangeError);
    expect(() => gameteDosages(4, 5)).toThrow(RangeError);
    expect(() => gameteDosages(4, 2, 0.2)).toThrow(RangeError);
    expect(() => gameteDosages(6, 2, 0.3)).not.toThrow();
    expect(chromatidDoubleReduction(4)).toBeLessThan(mostDoubleReduction(4));
    expect(chromatidDoubleReduction(2)).toBe(0);
  });
});

describe('linked genes of several sets', () => {
  const free = [0, 1].map((g) => ({ id: `g${String(g)}`, recombination: 0.5, alone: true }));

  it('one by one are as without the other', () => {
    fc.assert(
      fc.property(tree, fc.double({ min: 0, max: 0.5, noNaN: true }), ({ sets, copies, part }, r) => {
        const alpha = part * mostDoubleReduction(sets);
        const homologues = Array.from({ length: sets }, (_, h) => (h < copies ? 0b01 : 0) | (h === 0 ? 0b10 : 0));
        const gametes = linkedGametes(homologues, [free[0]!, { ...free[1]!, recombination: r }], alpha);
        [copies, 1].forEach((expected, g) => {
          gameteDosages(sets, expected, alpha).forEach((share, n) => {
            expect(sum(gametes.filter((gamete) => gamete.copies[g] === n).map((gamete) => gamete.share))).toBeCloseTo(share, 10);
          });
        });
      }),
      { numRuns: 40 },
    );
  });

  it('stay together in coupling without recombination', () => {
    const gametes = linkedGametes([0b11, 0, 0, 0], [free[0]!, { ...free[1]!, recombination: 0 }]);
    expect(gametes.map(({ copies }) => copies).sort()).toEqual([
      [0, 0],
      [1, 1],
    ]);
    for (const { share } of gametes) expect(share).toBeCloseTo(0.5, 12);
  });
});

describe('selfed lines of several sets', () => {
  it('lose heterozygosity as the factor says: all alleles different, so that a tree is fixed by descent alone', () => {
    // Of two sets every plant that is not fixed is Aa: (½)^t.
    expect(fixedAfter([1, 1], 3)).toEqual([0, 0.5, 0.75, 0.875]);
    // Of four, fixation slows to the factor: 1 − fixed shrinks by 5/6 a generation in the end.
    const fixed = fixedAfter([1, 1, 1, 1], 60);
    expect((1 - fixed[60]!) / (1 - fixed[59]!)).toBeCloseTo(heterozygosityKept(4), 6);
  });

  it('are fixed faster with double reduction', () => {
    expect(heterozygosityKept(4, 1 / 7)).toBeLessThan(heterozygosityKept(4));
    const plain = fixedAfter([2, 2], 10);
    const doubled = fixedAfter([2, 2], 10, 1 / 7);
    expect(doubled[10]!).toBeGreaterThan(plain[10]!);
    // Its own slow end: the same factor with double reduction.
    const long = fixedAfter([1, 1, 1, 1], 60, 1 / 7);
    expect((1 - long[60]!) / (1 - long[59]!)).toBeCloseTo(heterozygosityKept(4, 1 / 7), 6);
  });
});
