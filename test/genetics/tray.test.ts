import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareQualifying, type Needs } from '../../src/genetics/family.ts';
import { courseOf } from '../../src/genetics/tray/course.ts';
import { chanceAtAll, chanceOfAtLeast, eightInTen, gather, seedlingsNeeded } from '../../src/genetics/tray/needed.ts';
import { familyValue } from '../../src/genetics/tray/measured.ts';
import { largestRemainder, mixtureOf, SEEDLINGS, shareWanted, trayOf, WANTED, type Tray } from '../../src/genetics/tray/tray.ts';
import { programmeSchema, type MeasuredTrait, type Programme, type ShownTrait, type Tree } from '../../src/model/programme.ts';
import { atLeast, plantsNeeded } from '../../src/statistics/binomial.ts';
import { cross, document, generation, kind, measured, plans, shown, tree, type Document, type ShownDocument, type TreeDocument } from '../engine/programmes.ts';
import { published } from '../reference/published.ts';

const DUMMY = plans([generation('g', 1)]);
/** Not through the check of whole programmes: it refuses plans, and there are none here worth the name. */
const programmeOf = (changes: Partial<Document>): Programme => programmeSchema.parse(document({ plans: DUMMY, ...changes }));
const treeOf = ({ trees }: Programme, id: string): Tree => trees.find((one) => one.id === id)!;
const shownOf = (programme: Programme, id = 'red'): ShownTrait => programme.traits.find((trait) => trait.type === 'shown' && trait.id === id) as ShownTrait;
const trayIn = (programme: Programme, mother = 'a', father = 'b'): Tray =>
  trayOf(programme, shownOf(programme), treeOf(programme, mother), treeOf(programme, father));

const need = (...of: [gene: string, copies: 1 | 2][]): Needs => ({ needs: 'all', of: of.map(([gene, copies]) => ({ gene, copies })) });
const any = (...genes: string[]): Needs => ({ needs: 'any', of: genes.map((gene) => ({ gene, copies: 1 })) });
const rules = (...needs: Needs[]): ShownDocument['rules'] => needs.map((one, i) => ({ name: `rule ${String(i)}`, weight: 1, needs: one }));
const genesNamed = (ids: readonly string[]): Document['genes'] => ids.map((id) => ({ id, name: id }));
const expected = (id: string): number[] => [...published.find((entry) => entry.id === id)!.expected];

/** Tray of a selfed hybrid with one copy of each gene of a, b, c. */
function f2(needs: Needs, changes: Partial<ShownDocument> = {}): Tray {
  const ids = ['a', 'b', 'c'];
  return trayIn(
    programmeOf({
      genes: genesNamed(ids),
      traits: [shown(1, { rules: rules(needs), ...changes })],
      trees: [tree('a', { genes: Object.fromEntries(ids.map((id) => [id, { copies: 1 }])) })],
    }),
    'a',
    'a',
  );
}

describe('ratios', () => {
  it('1 : 2 : 1, and the recessive that not every tree shows (Mendel 1866; published.json)', () => {
    const [two, one, none] = expected('mendel-1to2to1').map((part) => part / 4);
    const { shares } = f2(need(['a', 2]));
    expect([shares.able, shares.carrier, shares.without]).toEqual([two, one, none]);
    const partly = f2(need(['a', 2]), { canShow: 0.6 });
    expect(partly.shares.able).toBeCloseTo(expected('penetrance-3to1')[0]!, 15);
    expect(partly.shares.unable).toBeCloseTo(0.25 - 3 / 20, 15);
  });

  it.each([
    ['mendel-9331', need(['a', 1], ['b', 1]), 0],
    ['mendel-trihybrid', need(['a', 1], ['b', 1], ['c', 1]), 0],
    ['epistasis-9-7', need(['a', 1], ['b', 1]), 0],
    ['epistasis-12-3-1', need(['a', 1]), 0],
    // Only the tree with two copies of the gene that lets the second show, and one of that, shows it: the 3 of 13 : 3.
    ['epistasis-13-3', need(['a', 2], ['b', 1]), 1],
  ] as const)('%s of a selfed hybrid (sources in published.json)', (id, needs, place) => {
    const parts = expected(id);
    expect(f2(needs).shares.able).toBe(parts[place]! / parts.reduce((sum, part) => sum + part, 0));
  });

  it('9 : 6 : 1 and 15 : 1: any of two genes (Griffiths et al.; published.json)', () => {
    const [both, one, none] = expected('epistasis-9-6-1');
    expect(f2(any('a', 'b')).shares.able).toBe((both! + one!) / 16);
    expect(f2(any('a', 'b')).shares.without).toBe(none! / 16);
  });

  it('agree with the plain enumeration of free genes for every pair of known genotypes and every sort of rule', () => {
    const ids = ['a', 'b', 'c'];
    const copies = fc.record({ a: fc.constantFrom(0, 1, 2), b: fc.constantFrom(0, 1, 2), c: fc.constantFrom(0, 1, 2) });
    const needs = fc.constantFrom<Needs>(
      need(['a', 2], ['b', 1]),
      any('a', 'c'),
      { needs: 'total', genes: ids, copies: 3 },
      {
        needs: 'any',
        of: [
          { gene: 'a', copies: 1 },
          { gene: 'a', copies: 2 },
        ],
      },
    );
    const state = (of: Record<string, number>) => ({ genes: Object.fromEntries(Object.entries(of).map(([gene, n]) => [gene, { copies: n as 0 | 1 | 2 }])) });
    fc.assert(
      fc.property(copies, copies, needs, (mother, father, rule) => {
        const programme = programmeOf({
          genes: genesNamed(ids),
          traits: [shown(1, { rules: rules(rule) })],
          trees: [tree('a', state(mother)), tree('b', state(father))],
        });
        expect(trayIn(programme).shares.able).toBe(shareQualifying(mother, father, rule));
      }),
      { numRuns: 60 },
    );
  });
});

describe('linkage', () => {
  /** Written out here once more, not taken from the project. */
  const haldane = (cM: number) => (1 - Math.exp((-2 * cM) / 100)) / 2;
  type Homologue = 'a' | 'b' | undefined;
  const selfed = (positions: readonly number[], sides: readonly Homologue[], needs: Needs): Tray => {
    const ids = ['a', 'b', 'c'].slice(0, positions.length);
    return trayIn(
      programmeOf({
        genes: ids.map((id, i) => ({ id, name: id, group: 'one', position: positions[i]! })),
        traits: [shown(1, { rules: rules(needs) })],
        trees: [tree('a', { genes: Object.fromEntries(ids.map((id, i) => [id, { copies: 1, ...(sides[i] ? { homologue: sides[i] } : {}) }])) })],
      }),
      'a',
      'a',
    );
  };

  // F2 classes ½ + θ : ¼ − θ : ¼ − θ : θ, θ = ((1 − r)/2)² in coupling, (r/2)² in repulsion: Fisher & Balmukand (1928) J. Genet. 20:79 (from memory).
  it.each([5, 20, 80])('F2 at %i cM in coupling and in repulsion, r = ½(1 − e^(−2d)) (Haldane 1919, J. Genet. 8:299–309)', (cM) => {
    const r = haldane(cM);
    for (const [sides, theta] of [
      [['a', 'a'], ((1 - r) / 2) ** 2],
      [['b', 'b'], ((1 - r) / 2) ** 2],
      [['a', 'b'], (r / 2) ** 2],
    ] as const) {
      const both = selfed([3, 3 + cM], sides, need(['a', 1], ['b', 1]));
      expect(both.shares.able).toBeCloseTo(0.5 + theta, 14);
      expect(both.shares.without).toBeCloseTo(theta, 14);
      expect(both.shares.carrier).toBeCloseTo(2 * (0.25 - theta), 14);
    }
  });

  it('of phase unknown: each phase is one case of chance ½, which all seedlings share', () => {
    const r = haldane(20);
    const tray = selfed([0, 20], [undefined, undefined], need(['a', 2], ['b', 2]));
    const mixture = mixtureOf(tray, 'able');
    expect(mixture.map(({ weight }) => weight)).toEqual([0.5, 0.5]);
    expect(mixture[0]!.share).toBeCloseTo((r / 2) ** 2, 14);
    expect(mixture[1]!.share).toBeCloseTo(((1 - r) / 2) ** 2, 14);
  });

  it('between outer genes whose middle one the rule leaves out: r = r₁ + r₂ − 2r₁r₂, no interference (Haldane 1919); written out of order', () => {
    const [r1, r2] = [haldane(15), haldane(40)];
    const r = r1 + r2 - 2 * r1 * r2;
    expect(selfed([0, 55, 15], ['a', 'a', 'a'], need(['a', 2], ['b', 2])).shares.able).toBeCloseTo(((1 - r) / 2) ** 2, 14);
    // All three from one homologue: no change over between either pair of neighbours.
    expect(selfed([0, 55, 15], ['a', 'a', 'a'], need(['a', 2], ['b', 2], ['c', 2])).shares.able).toBeCloseTo((((1 - r1) * (1 - r2)) / 2) ** 2, 14);
  });

  it('is none between groups, nor without a position', () => {
    const of = (genes: Document['genes']) =>
      trayIn(
        programmeOf({
          genes,
          traits: [shown(1, { rules: rules(need(['a', 2], ['b', 2])) })],
          trees: [tree('a', { genes: { a: { copies: 1 }, b: { copies: 1 } } })],
        }),
        'a',
        'a',
      ).shares.able;
    expect(
      of([
        { id: 'a', name: 'a', group: 'one', position: 3 },
        { id: 'b', name: 'b', group: 'two', position: 3 },
      ]),
    ).toBe(1 / 16);
    expect(
      of([
        { id: 'a', name: 'a', group: 'one' },
        { id: 'b', name: 'b', group: 'one', position: 3 },
      ]),
    ).toBe(1 / 16);
  });
});

describe('parents that are not known', () => {
  const unseen = (seen: TreeDocument['seen'], changes: Partial<ShownDocument> = {}, frequency = 0.15): Programme =>
    programmeOf({
      traits: [shown(2, changes)],
      trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { frequency } }, ...(seen ? { seen } : {}) })],
    });

  it('follow Hardy–Weinberg where nothing was seen (Hardy 1908)', () => {
    const mixture = mixtureOf(trayIn(unseen(undefined)), 'able');
    expect(mixture.map(({ share }) => share)).toEqual([0, 0.5, 1]);
    expect(mixture.map(({ weight }) => weight)).toEqual([0.85 ** 2, 2 * 0.15 * 0.85, 0.15 ** 2].map((weight) => expect.closeTo(weight, 15) as number));
    // Its own pollen: ¼ of a carrier’s seedlings, and both gametes are of one and the same tree.
    const selfed = mixtureOf(trayIn(unseen(undefined), 'b', 'b'), 'able');
    expect(selfed.map(({ share }) => share)).toEqual([0, 0.25, 1]);
  });

  it('carry a recessive with chance 2q/(1 + q) if they do not show it (Li 1955; published.json PC16)', () => {
    const entry = published.find(({ id }) => id === 'PC16')!;
    const q = entry.inputs['frequency'] as number;
    const mixture = mixtureOf(trayIn(unseen({ red: { showed: 0, seasons: 3 } }, {}, q)), 'able');
    expect(mixture.find(({ share }) => share === 0.5)!.weight).toBeCloseTo(entry.expected[0]!, entry.tolerance === undefined ? 12 : 3);
    expect(mixture.find(({ share }) => share === 0.5)!.weight).toBeCloseTo((2 * q) / (1 + q), 12);
  });

  it('are weighed by k of n seasons, trees that can show it and false shows: Bayes’ rule by hand', () => {
    const [q, can, often, wrong] = [0.3, 0.8, 0.6, 0.05];
    const of = (p: number) => p ** 2 * (1 - p) ** 3;
    const [fit, not] = [can * of(often) + (1 - can) * of(wrong), of(wrong)];
    const [p0, p1, p2] = [(1 - q) ** 2 * not, 2 * q * (1 - q) * not, q ** 2 * fit];
    const tray = trayIn(unseen({ red: { showed: 2, seasons: 5 } }, { canShow: can, seasonsShown: often, falseShow: wrong }, q));
    expect(tray.shares.able + tray.shares.unable).toBeCloseTo((p1 / 2 + p2) / (p0 + p1 + p2), 12);
    expect(tray.shares.able).toBeCloseTo(can * (tray.shares.able + tray.shares.unable), 14);
  });

  it('a source qualifies for certain; one that nothing fits is named', () => {
    expect(trayIn(unseen({ red: { source: true } })).shares.able).toBe(1);
    const impossible = trayIn(unseen({ red: { showed: 2, seasons: 2 } }, {}, 0));
    expect(impossible.rules[0]!.misfits.map(({ id }) => id)).toEqual(['b']);
    expect(trayIn(unseen({ red: { showed: 0, seasons: 2 } })).rules[0]!.misfits).toEqual([]);
  });

  it('learn from another trait on the same gene, under each of its rules', () => {
    // Red leaf rests on one copy of r, or on gene s: seen on b, it makes r sure in the first case and says nothing in the second.
    const leaf = shown(1, {
      id: 'leaf',
      name: 'red leaf',
      rules: [
        { name: 'r', weight: 3, needs: need(['r', 1]) },
        { name: 's', weight: 1, needs: need(['s', 1]) },
      ],
    });
    const q = 0.2;
    const programme = programmeOf({
      genes: genesNamed(['r', 's']),
      traits: [shown(2), leaf],
      trees: [
        tree('a', { genes: { r: { copies: 2 } } }),
        tree('b', { genes: { r: { frequency: q }, s: { frequency: 0.1 } }, seen: { leaf: { source: true } } }),
      ],
    });
    const sure = (q * (1 - q) + q ** 2) / (1 - (1 - q) ** 2);
    expect(trayIn(programme).shares.able).toBeCloseTo(0.75 * sure + 0.25 * q, 12);
  });
});

describe('any tray', () => {
  const ids = ['a', 'b', 'c'];
  const state = fc.oneof(
    fc.record({ copies: fc.constantFrom(0, 1, 2), homologue: fc.constantFrom('a', 'b') }, { requiredKeys: ['copies'] }),
    fc.record({ frequency: fc.double({ min: 0, max: 1, noNaN: true }) }),
  );
  const seen = fc.option(
    fc.oneof(
      fc.constant({ source: true } as const),
      fc.tuple(fc.nat(6), fc.nat(6)).map(([k, more]) => ({ showed: k, seasons: k + more + 1 })),
    ),
    { nil: undefined },
  );
  const anyTree = fc.record({ a: state, b: state, c: state, seen });
  const rate = fc.double({ min: 0.01, max: 0.99, noNaN: true });

  it('has shares that sum to 1, under each rule and over all, weights that sum to 1, and chances that never fall with more seedlings', () => {
    fc.assert(
      fc.property(anyTree, anyTree, rate, rate, rate, fc.boolean(), (one, other, canShow, seasonsShown, falseShow, self) => {
        const treeFor = (id: string, { seen: watched, ...genes }: typeof one) => tree(id, { genes, ...(watched ? { seen: { red: watched } } : {}) });
        const programme = programmeOf({
          genes: [
            { id: 'a', name: 'a', group: 'g', position: 10 },
            { id: 'b', name: 'b', group: 'g', position: 35 },
            { id: 'c', name: 'c' },
          ],
          traits: [
            shown(1, { canShow, seasonsShown, falseShow, rules: rules(need(['a', 1], ['b', 2]), any('b', 'c'), { needs: 'total', genes: ids, copies: 3 }) }),
          ],
          trees: [treeFor('a', one), treeFor('b', other)],
        });
        const tray = trayIn(programme, 'a', self ? 'a' : 'b');
        for (const shares of [tray.shares, ...tray.rules.map((rule) => rule.shares)]) {
          expect(SEEDLINGS.reduce((sum, kind) => sum + shares[kind], 0)).toBeCloseTo(1, 11);
          for (const kind of SEEDLINGS) expect(shares[kind]).toBeGreaterThanOrEqual(0);
        }
        expect(tray.rules.reduce((sum, rule) => sum + rule.belief, 0)).toBeCloseTo(1, 12);
        for (const wanted of WANTED) {
          const mixture = mixtureOf(tray, wanted);
          expect(mixture.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 11);
          expect(mixture.reduce((sum, { weight, share }) => sum + weight * share, 0)).toBeCloseTo(shareWanted(tray.shares, wanted), 11);
          let last = 0;
          for (const n of [1, 2, 5, 20, 100]) {
            const chance = chanceOfAtLeast(2, n, mixture);
            expect(chance).toBeGreaterThanOrEqual(last - 1e-12);
            expect(chance).toBeLessThanOrEqual(chanceAtAll(mixture) + 1e-12);
            last = chance;
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  it('refuses lists too long to count', () => {
    const linked = ['a', 'b', 'c', 'd', 'e', 'f'];
    const unknown = { genes: Object.fromEntries(linked.map((id) => [id, { frequency: 0.3 }])) };
    const programme = programmeOf({
      genes: linked.map((id, i) => ({ id, name: id, group: 'g', position: 10 * i })),
      traits: [shown(1, { rules: rules(any(...linked)) })],
      trees: [tree('a', unknown), tree('b', unknown)],
    });
    expect(() => trayIn(programme)).toThrow(RangeError);
    expect(trayIn(programme, 'a', 'a').shares.able).toBeGreaterThan(0.5);
  });
});

describe('cells', () => {
  it('add up, and none is a whole cell from its share', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 6 }), (parts) => {
        const total = parts.reduce((sum, part) => sum + part, 0);
        fc.pre(total > 1e-6);
        const counts = largestRemainder(parts, 20);
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(20);
        counts.forEach((count, i) => expect(Math.abs(count - (20 * parts[i]!) / total)).toBeLessThan(1 + 1e-9));
      }),
    );
  });

  it('are the quotas where these are whole, and go to the largest remainders where not', () => {
    expect(largestRemainder([0.25, 0.5, 0.25], 20)).toEqual([5, 10, 5]);
    expect(largestRemainder([1 / 3, 1 / 3, 1 / 3], 20)).toEqual([7, 7, 6]);
    // Quotas 6.61, 0.73, 6.75, 5.90: 17 whole cells, the last three to 5.90, 6.75 and 0.73.
    expect(largestRemainder([0.3305, 0.0367, 0.3376, 0.2952], 20)).toEqual([6, 1, 7, 6]);
  });
});

describe('seedlings needed', () => {
  const sedcole = published.filter(({ id }) => id.startsWith('sedcole-'));
  it('has cases', () => expect(sedcole.length).toBeGreaterThan(10));
  it.each(sedcole.map((entry) => [entry.id, entry] as const))(
    'of one known share: %s (Sedcole 1977, Crop Sci. 17:667; published.json)',
    (_, { inputs, expected: [n] }) => {
      const value = (key: string) => {
        const [top, bottom = 1] = String(inputs[key]).split('/').map(Number);
        return top! / bottom;
      };
      expect(seedlingsNeeded([{ weight: 1, share: value('q') }], inputs['r'] as number, value('P'))).toBe(n);
    },
  );

  it('over what the parents may be: all seedlings share them', () => {
    const half = [
      { weight: 0.5, share: 0.5 },
      { weight: 0.5, share: 0 },
    ];
    // ½·(1 − ½ⁿ) ≥ 0.45 first at n = 4 (15/32 = 0.469; n = 3 gives 7/16 = 0.4375).
    expect(seedlingsNeeded(half, 1, 0.45)).toBe(4);
    // It comes ever nearer to ½ and never is: no number is enough, nor for more.
    expect(chanceAtAll(half)).toBe(0.5);
    for (const P of [0.5, 0.8]) expect(seedlingsNeeded(half, 1, P)).toBe(Infinity);
    // Where half of the cases give nothing else, r seedlings are enough for ½.
    expect(
      seedlingsNeeded(
        [
          { weight: 0.5, share: 1 },
          { weight: 0.5, share: 0 },
        ],
        3,
        0.5,
      ),
    ).toBe(3);
    expect(
      seedlingsNeeded(
        [
          { weight: 0.5, share: 1 },
          { weight: 0.5, share: 0.5 },
        ],
        1,
        0.95,
      ),
    ).toBe(plantsNeeded(0.5, 1, 0.9));
    expect(seedlingsNeeded([{ weight: 1, share: 1e-9 }], 1, 0.95)).toBe(Infinity);
  });

  it('merges very many shares without moving a chance by more than a millionth', () => {
    const many = Array.from({ length: 6000 }, (_, i) => ({ weight: 1 / 6000, share: (i + 1) / 6000 }));
    const merged = gather(many);
    expect(merged.length).toBeLessThan(2500);
    for (const [r, n] of [
      [1, 5],
      [3, 40],
      [10, 300],
    ] as const) {
      const exact = many.reduce((sum, { weight, share }) => sum + weight * atLeast(r, n, share), 0);
      expect(Math.abs(chanceOfAtLeast(r, n, merged) - exact)).toBeLessThan(1e-6);
    }
  });

  it('8 in 10 trays: counts with a tenth below and a tenth above, by the binomial itself', () => {
    const mixture = [
      { weight: 0.5, share: 0.5 },
      { weight: 0.5, share: 0.1 },
    ];
    const [low, high] = eightInTen(mixture, 20);
    const upTo = (k: number) => 1 - mixture.reduce((sum, { weight, share }) => sum + weight * atLeast(k + 1, 20, share), 0);
    expect([upTo(low - 1) < 0.1, upTo(low) >= 0.1, upTo(high - 1) < 0.9, upTo(high) >= 0.9]).toEqual([true, true, true, true]);
    expect(eightInTen([{ weight: 1, share: 0 }], 20)).toEqual([0, 0]);
    expect(eightInTen([{ weight: 1, share: 1 }], 20)).toEqual([20, 20]);
  });
});

describe('measured traits', () => {
  const value = (changes: Partial<Document>, mother = 'a', father = 'b') => {
    const programme = programmeOf({ traits: [shown(2), measured()], ...changes });
    const trait = programme.traits.find((one) => one.type === 'measured') as MeasuredTrait;
    return familyValue(programme, trait, treeOf(programme, mother), treeOf(programme, father));
  };

  it('average their parents; within the family V_G/2, less one part in 32·2 − 1 where copies are placed for certain (Bulmer 1980, from memory; docs/model.md §3)', () => {
    const of = value({ trees: [tree('a', { values: { size: 1 } }), tree('b', { values: { size: -1 } })] });
    expect(of.mean).toBe(0);
    expect(of.between).toBe(0);
    // 36 and 28 of 64 copies: 2·36·28/(64·63) of the loci mixed in each.
    expect(of.within ** 2).toBeCloseTo((2 * 36 * 28) / (64 * 63), 14);
  });

  it('of unknown parents: within V_G/2, mean V_G/4 for each; selfed V_G, for it is the tree’s own value', () => {
    const cross = value({ trees: [tree('a'), tree('b')] });
    expect(cross.within ** 2).toBeCloseTo(0.5, 14);
    expect(cross.between ** 2).toBeCloseTo(0.5, 14);
    const selfed = value({ trees: [tree('a')] }, 'a', 'a');
    expect([selfed.within ** 2, selfed.between ** 2]).toEqual([expect.closeTo(0.5, 14), expect.closeTo(1, 14)]);
  });

  it('at the end of the scale nothing varies, and values beyond it count as the end', () => {
    const of = value({ trees: [tree('a', { values: { size: 8 } }), tree('b', { values: { size: 100 } })] });
    expect([of.mean, of.within]).toEqual([8, 0]);
  });

  it('a gene of −a, d, +a in the F2: mean d/2, variance a²/2 + d²/4 (Falconer & Mackay 1996 ch. 8, p = ½)', () => {
    const [a, d] = [3, 1];
    const single = (trees: TreeDocument[]) =>
      value(
        { genes: [{ id: 'r', name: 'r' }], traits: [shown(2), measured({ heritability: 0, genes: [{ gene: 'r', half: a, dominance: d }] })], trees },
        'a',
        'a',
      );
    const of = single([tree('a', { genes: { r: { copies: 1 } }, values: { size: d } })]);
    expect(of.mean).toBeCloseTo(d / 2, 14);
    expect(of.within ** 2).toBeCloseTo(a ** 2 / 2 + d ** 2 / 4, 14);
    expect(of.between).toBe(0);
    // Not known whether it has one copy: by Hardy–Weinberg at ½ the mean of a selfed family is −a, d/2 or a.
    const unknown = single([tree('a', { genes: { r: { frequency: 0.5 } }, values: { size: 0 } })]);
    expect(unknown.between ** 2).toBeCloseTo((2 * a ** 2 + 2 * (d / 2) ** 2) / 4 - (d / 4) ** 2, 14);
  });

  it('selfing takes off half of what full inbreeding costs: F = ½ (Falconer & Mackay 1996 ch. 14)', () => {
    const of = value({ traits: [shown(2), measured({ inbreeding: 2 })], trees: [tree('a', { values: { size: 1 } })] }, 'a', 'a');
    expect([of.mean, of.lost]).toEqual([0, 1]);
  });
});

describe('course of the seed', () => {
  const kinds = [
    kind({ firstFruit: { earliest: 6, half: 8, ninety: 10 } }),
    kind({ id: 'quince', name: 'quince', firstFruit: { years: 3 }, fertilityAsPollenParent: 0.5 }),
    kind({ id: 'hybrid', name: 'hybrid', firstFruit: { between: { seed: 'pear', pollen: 'quince' } }, neverFruits: 0.05 }),
  ];
  const programme = programmeOf({
    kinds,
    facts: [{ id: 'roots', name: 'sits in the roots', chance: { low: 0.2, likely: 0.5, high: 0.8, source: { kind: 'guess', note: '' } } }],
    trees: [tree('a', { bearsFrom: 2004 }), tree('b', { kind: 'quince' })],
    crosses: [
      cross({ straySet: 0.018, set: 0.2 }),
      cross({
        id: 'wide',
        seed: 'pear',
        pollen: 'quince',
        gives: 'hybrid',
        set: 0.4,
        straySet: 0.012,
        emptyFruit: 0.3,
        dormancy: 1,
        weakness: { share: 0.9, onset: 2, course: { halfLife: 5 }, rootBorne: { fact: 'roots' } },
      }),
    ],
  });
  const of = (mother: string, father: string) => courseOf(programme, treeOf(programme, mother), treeOf(programme, father));

  it('a hybrid’s seasons follow its parents’, the seed parent’s two to one (docs/model.md §8), from the first spring both bear', () => {
    // (2·6 + 3)/3 = 5, (2·8 + 3)/3 = 6⅓, (2·10 + 3)/3 = 7⅔: in whole seasons 5, 7 and 8.
    expect(of('a', 'b')).toMatchObject({ seasons: { earliest: 5, half: 7, ninety: 8 }, pollinated: 2004, toGermination: 2, never: 0.05, emptyFruit: 0.3 });
    expect(of('a', 'b')!.weak).toEqual({ share: 0.9, onset: 2, halfLife: 5, inRoots: 0.5 });
  });

  it('counts strays among the fruit: what the wanted pollen left, the pollen parent’s fertility in it (docs/model.md §6)', () => {
    expect(of('a', 'b')!.stray).toBeCloseTo((0.012 * 0.8) / (0.2 + 0.012 * 0.8), 14);
    expect(of('a', 'a')).toMatchObject({ seasons: { earliest: 6, half: 8, ninety: 10 }, weak: null, selfSterile: true });
  });

  it('is nothing without an entry for that order of kinds', () => expect(of('b', 'a')).toBeNull());
});
