import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareQualifying, type Needs } from '../../src/genetics/family.ts';
import { chanceAtAll, chanceOfAtLeast } from '../../src/genetics/tray/needed.ts';
import { mixtureOf, SEEDLINGS, shareWanted, WANTED, type Tray } from '../../src/genetics/tray/tray.ts';
import type { Programme } from '../../src/model/programme.ts';
import { shown, tree, type Document, type ShownDocument, type TreeDocument } from '../engine/programmes.ts';
import { published } from '../reference/published.ts';
import { any, expected, genesNamed, need, programmeOf, rules, trayIn } from './tray-programmes.ts';

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
  it('1 : 2 : 1, and the recessive that not every tree shows (Mendel 1866; entries.json)', () => {
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
  ] as const)('%s of a selfed hybrid (sources in entries.json)', (id, needs, place) => {
    const parts = expected(id);
    expect(f2(needs).shares.able).toBe(parts[place]! / parts.reduce((sum, part) => sum + part, 0));
  });

  it('9 : 6 : 1 and 15 : 1: any of two genes (Griffiths et al.; entries.json)', () => {
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

  it('carry a recessive with chance 2q/(1 + q) if they do not show it (Li 1955; entries.json PC16)', () => {
    const entry = published.find(({ id }) => id === 'PC16')!;
    const q = entry.inputs['frequency'] as number;
    const mixture = mixtureOf(trayIn(unseen({ red: { showed: 0, seasons: 3 } }, {}, q)), 'able');
    expect(mixture.find(({ share }) => share === 0.5)!.weight).toBeCloseTo(entry.expected[0]!, 12);
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
