import { describe, expect, it } from 'vitest';
import { carrierIfNotShown } from '../../src/genetics/population.ts';
import { Inputs, published } from '../reference/published.ts';
import { count, expectMean, expectShare } from './agreement.ts';
import {
  document,
  future,
  generation,
  kind,
  neverProven,
  picksOf,
  plans,
  shown,
  tree,
  type Document,
  type ShownDocument,
  type TreeDocument,
} from './programmes.ts';

const goal = neverProven();
const SEEDLINGS = 100;
const both = (gene: string, other: string): ShownDocument['rules'] => [
  {
    name: 'both',
    weight: 1,
    needs: {
      needs: 'all',
      of: [
        { gene, copies: 1 },
        { gene: other, copies: 1 },
      ],
    },
  },
];

/** Share of a's gametes with both alleles: a × a tree without either. */
function shareBoth(positions: readonly number[], genes: TreeDocument['genes'], pair: readonly [string, string] = ['r', 's'], runs = 600): number[] {
  const ids = ['r', 's', 't'].slice(0, positions.length);
  const input = document({
    goal,
    lastYear: 2006,
    traits: [shown(1, { rules: both(...pair) })],
    genes: ids.map((id, i) => ({ id, name: id, group: 'one', position: positions[i]! })),
    trees: [tree('a', { genes: genes ?? {} }), tree('b')],
    plans: plans([generation('g', SEEDLINGS)]),
  });
  return Array.from(future(input, runs).generation(0, 'showing'), (n) => n / SEEDLINGS);
}

const haldane = (cM: number) => (1 - Math.exp((-2 * cM) / 100)) / 2;

describe('linkage', () => {
  for (const cM of [1, 5, 20, 50, 100])
    it(`${String(cM)} cM apart: both in (1 − r)/2 from coupling, r/2 from repulsion, r = ½(1 − e^(−2d)) (Haldane 1919, J. Genet. 8:299–309)`, () => {
      const r = haldane(cM);
      const state = (homologue: 'a' | 'b') => ({ copies: 1, homologue });
      expectMean(shareBoth([0, cM], { r: state('a'), s: state('a') }), (1 - r) / 2, 'coupling');
      expectMean(shareBoth([3, 3 + cM], { r: state('b'), s: state('a') }), r / 2, 'repulsion');
      const unknown = shareBoth([0, cM], { r: { copies: 1 }, s: { copies: 1 } }, ['r', 's'], 2000);
      expectMean(unknown, 0.25, 'phase not known: half and half over the runs');
      // The phase is one draw a run: the runs are a mixture of the two.
      if (cM <= 5)
        expectShare(
          count(unknown, (share) => share > 0.25),
          2000,
          0.5,
          'coupling drawn',
        );
    });

  it('over three genes: r_AC = r1 + r2 − 2·r1·r2, no interference (Haldane 1919)', () => {
    const genes = { r: { copies: 1, homologue: 'a' as const }, s: { copies: 1, homologue: 'a' as const }, t: { copies: 1, homologue: 'a' as const } };
    const [r1, r2] = [haldane(15), haldane(40)];
    // Written out of order: the position decides, not the order in the list.
    expectMean(shareBoth([0, 55, 15], genes, ['r', 's']), (1 - (r1 + r2 - 2 * r1 * r2)) / 2, 'outer');
    expectMean(shareBoth([0, 55, 15], genes, ['r', 't']), (1 - r1) / 2, 'first and middle');
    expectMean(shareBoth([0, 55, 15], genes, ['t', 's']), (1 - r2) / 2, 'middle and last');
  });

  it('genes of different groups, or without a position, segregate freely', () => {
    const apart = (genes: Document['genes']) =>
      document({
        goal,
        lastYear: 2006,
        traits: [shown(1, { rules: both('r', 's') })],
        genes,
        trees: [tree('a', { genes: { r: { copies: 1 }, s: { copies: 1 } } }), tree('b')],
        plans: plans([generation('g', SEEDLINGS)]),
      });
    const of = (genes: Document['genes']) => Array.from(future(apart(genes), 600).generation(0, 'showing'), (n) => n / SEEDLINGS);
    expectMean(
      of([
        { id: 'r', name: 'r', group: 'one', position: 3 },
        { id: 's', name: 's', group: 'two', position: 3 },
      ]),
      0.25,
    );
    expectMean(
      of([
        { id: 'r', name: 'r' },
        { id: 's', name: 's' },
      ]),
      0.25,
    );
  });
});

describe('many generations', () => {
  it('backcrossing recovers a free gene of the recurrent parent in 1 − ½ⁿ of trees after n back-crosses (from the product rule; e.g. Allard 1960, Principles of Plant Breeding, from memory)', () => {
    for (const rounds of [1, 2, 3, 5]) {
      const first = generation('f1', 1, { judge: 0, keep: { howMany: 1 } });
      const back = generation('bc', 1, { seedParents: picksOf('f1'), pollen: [{ tree: 'a' }], repeat: rounds, judge: 0, keep: { howMany: 1 } });
      const last = generation('end', SEEDLINGS, { seedParents: picksOf('bc'), pollen: [{ tree: 'a' }] });
      const input = document({
        goal,
        lastYear: 2060,
        plans: plans(rounds === 1 ? [first, { ...last, seedParents: picksOf('f1') }] : [first, { ...back, repeat: rounds - 1 }, last]),
      });
      const columns = future(input, 3000);
      const showing = columns.generation(columns.shape.generations - 1, 'showing');
      expectMean(
        Array.from(showing, (n) => n / SEEDLINGS),
        1 - 0.5 ** rounds,
        `${String(rounds)} back-crosses`,
      );
    }
  });

  /** Chances of the copies that two sibs picked at random in generation t carry, “i,j”; each pair is the parents of the next. Markov chain. */
  function sibs(generations: number): ReadonlyMap<string, number> {
    const gamete = (copies: number) => [1 - copies / 2, copies / 2] as const;
    const child = (i: number, j: number) => {
      const [a, b] = [gamete(i), gamete(j)];
      return [a[0] * b[0], a[0] * b[1] + a[1] * b[0], a[1] * b[1]] as const;
    };
    let pair = new Map([['1,0', 1]]);
    for (let t = 0; t < generations; t += 1) {
      const next = new Map<string, number>();
      for (const [key, p] of pair) {
        const [i, j] = key.split(',').map(Number);
        const children = child(i!, j!);
        children.forEach((pi, x) =>
          children.forEach((pj, y) => {
            const to = `${String(x)},${String(y)}`;
            next.set(to, (next.get(to) ?? 0) + p * pi * pj);
          }),
        );
      }
      pair = next;
    }
    return pair;
  }
  const shareOf = (generations: number, copies: number) => [...sibs(generations)].reduce((sum, [key, p]) => sum + (key.startsWith(String(copies)) ? p : 0), 0);

  it('drift between brothers and sisters: the allele stays at its frequency on average, and is fixed with chance ¼ in the end (Kimura 1962, Genetics 47:713–719)', () => {
    const first = generation('f1', 10, { judge: 0, keep: { howMany: 2 }, goOn: { when: 'enough', count: 2 } });
    const round = generation('sib', 10, {
      seedParents: picksOf('f1'),
      pollen: picksOf('f1'),
      repeat: 11,
      judge: 0,
      keep: { howMany: 2 },
      goOn: { when: 'enough', count: 2 },
    });
    const last = generation('end', 60, { seedParents: picksOf('sib'), pollen: picksOf('sib') });
    const kinds = [kind({ firstFruit: { years: 1 } })];
    const runs = 3000;
    const trees = [tree('a', { genes: { r: { copies: 1 } } }), tree('b')];
    const of = (copies: 1 | 2) =>
      Array.from(
        future(document({ goal, kinds, trees, traits: [shown(copies)], lastYear: 2050, plans: plans([first, round, last]) }), runs).generation(12, 'showing'),
        (n) => n / 60,
      );
    const [one, two] = [of(1), of(2)];
    const [hybrids, fixed] = [shareOf(13, 1), shareOf(13, 2)];
    expect(fixed + hybrids / 2).toBeCloseTo(0.25, 12);
    expectMean(two, fixed, 'two copies');
    expectMean(one, hybrids + fixed, 'at least one');
    expectMean(
      one.map((share, run) => (share + two[run]!) / 2),
      0.25,
      'frequency',
    );
    // All sixty carry two copies when both parents do; from any other parents next to never (½⁶⁰).
    const both = sibs(12).get('2,2')!;
    expect(0.25 - both).toBeGreaterThan(0);
    expect(0.25 - both).toBeLessThan(0.05);
    expectShare(
      count(two, (share) => share === 1),
      runs,
      both,
      'fixed',
    );
  });

  it('selfing halves what is heterozygous: F = 1 − ½ᵗ (East & Jones 1919; Falconer & Mackay 1996 ch. 5)', () => {
    const entry = published.find(({ id }) => id === 'F-selfing')!;
    const F = new Inputs(entry).entry.expected;
    const kinds = [kind({ selfCompatible: true, firstFruit: { years: 1 } })];
    const trees = [tree('a', { genes: { r: { copies: 1 } } })];
    for (const t of [1, 2, 4]) {
      const line = generation('s', 1, { pollen: 'self', judge: 0, keep: { howMany: 1 } });
      const last = generation('end', 40, { seedParents: picksOf('s'), pollen: 'self' });
      const rounds =
        t === 1
          ? [{ ...last, seedParents: [{ tree: 'a' }] }]
          : [line, ...(t > 2 ? [{ ...line, id: 's2', seedParents: picksOf('s'), repeat: t - 2 }] : []), { ...last, seedParents: picksOf(t > 2 ? 's2' : 's') }];
      const columns = future(document({ goal, kinds, trees, plans: plans(rounds) }), 6000);
      expectMean(
        Array.from(columns.generation(columns.shape.generations - 1, 'showing'), (n) => n / 40),
        F[t - 1]! / 2,
        `two copies after ${String(t)} selfings`,
      );
    }
  });
});

describe('hidden genotypes', () => {
  /** a (unknown) × a tree with two copies: a quarter … of seedlings show by what a carries. Share of runs in which a carries k copies. */
  function carried(changes: Partial<TreeDocument>, trait: Partial<ShownDocument>, frequency: number, runs = 8000): { none: number; one: number; two: number } {
    const input = document({
      goal,
      lastYear: 2006,
      // The hidden trait sits on gene r; trait “twice” reads the copies of the offspring.
      traits: [
        shown(1, { id: 'twice', name: 'twice', rules: [{ name: 'two', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 2 }] } }] }),
        shown(1, trait),
      ],
      trees: [tree('a', { genes: { r: { frequency } }, ...changes }), tree('b', { genes: { r: { copies: 2 } } })],
      plans: plans([generation('g', 40)]),
    });
    input.goal = neverProven('twice');
    const showing = future(input, runs).generation(0, 'showing');
    // With one copy half of 40 show: none or all of them with chance 2⁻³⁹, which never happens.
    return { none: count(showing, (n) => n === 0), one: count(showing, (n) => n > 0 && n < 40), two: count(showing, (n) => n === 40) };
  }
  const q = 0.15;

  it('copies not known are drawn from the frequency: (1 − q)², 2q(1 − q), q² (Hardy 1908)', () => {
    const { none, one, two } = carried({}, {}, q);
    expectShare(none, 8000, (1 - q) ** 2, 'none');
    expectShare(one, 8000, 2 * q * (1 - q), 'one');
    expectShare(two, 8000, q * q, 'two');
  });

  const pc16 = published.find(({ id }) => id === 'PC16')!;
  it(`${pc16.title}. ${pc16.source}`, () => {
    const seen = { red: { showed: 0, seasons: 1 } };
    const { none, one, two } = carried({ seen }, { rules: [{ name: 'two', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 2 }] } }] }, q);
    expect(two).toBe(0);
    expectShare(one, one + none, carrierIfNotShown(q), 'carrier');
    expect(carrierIfNotShown(q)).toBeCloseTo(pc16.expected[0]!, 12);
  });

  it('a source has two copies in q²/(1 − (1 − q)²) of runs when one is enough', () => {
    const { none, one, two } = carried({ seen: { red: { source: true } } }, {}, 0.2);
    expect(none).toBe(0);
    expectShare(two, one + two, 0.04 / 0.36);
  });

  it('k of n seasons weigh by the binomial of the seasons shown, not being able, and false shows', () => {
    const [can, shows, wrong, f] = [0.9, 0.6, 0.05, 0.3];
    const seen = { red: { showed: 1, seasons: 4 } };
    const { none, one, two } = carried({ seen }, { canShow: can, seasonsShown: shows, falseShow: wrong }, f);
    const one4 = (p: number) => 4 * p * (1 - p) ** 3;
    const right = can * one4(shows) + (1 - can) * one4(wrong);
    const weights = [(1 - f) ** 2 * one4(wrong), 2 * f * (1 - f) * right, f * f * right];
    const all = weights.reduce((a, b) => a + b, 0);
    [none, one, two].forEach((hits, k) => expectShare(hits, 8000, weights[k]! / all, `${String(k)} copies`));
  });
});
