import { describe, expect, it } from 'vitest';
import { PlanCheck } from '../reference/plan-checks/plan-checks.ts';
import { chanceOneKept } from '../reference/plan-checks/season-luck.ts';
import { count, expectMean, expectRatio, expectShare, mean, total } from './agreement.ts';
import { document, future, generation, neverProven, picksOf, plans, shown, type Document, type ShownDocument } from './programmes.ts';

const RUNS = 12_000;

interface BrotherSister {
  readonly seedlings: number;
  readonly judge?: number;
  readonly needed?: number;
  readonly trait?: Partial<ShownDocument>;
  readonly more?: Partial<Document>;
}

/** rr × RR, then brother × sister: a quarter of the second generation has two copies of r. */
function brotherSister({ seedlings, judge = 1, needed = 1, trait = {}, more = {} }: BrotherSister): Document {
  const conditions = [{ type: 'shown' as const, trait: 'red', atLeast: needed }];
  const first = generation('f1', 10, { judge: 0, keep: { howMany: 2 }, goOn: { when: 'enough', count: 2 } });
  const second = generation('f2', seedlings, { seedParents: picksOf('f1'), pollen: picksOf('f1'), judge, keep: { conditions, howMany: 100 } });
  return document({ traits: [shown(2, trait)], goal: { conditions, crops: judge }, plans: plans([first, second]), ...more });
}

const yearsOf = (years: Int32Array) => [...new Set(years)].sort((a, b) => a - b);

describe('one recessive gene, brother × sister', () => {
  const pc1 = new PlanCheck('PC1');
  it(pc1.name, () => {
    const columns = future(brotherSister({ seedlings: pc1.setup('seedlings') }), RUNS);
    const years = columns.run('yearProven');
    expectShare(
      count(years, (year) => year >= 0),
      RUNS,
      pc1.expected('chance'),
    );
    expect(yearsOf(years)).toEqual([-1, pc1.expected('year')]);
    expect(yearsOf(columns.generation(0, 'firstPollination'))).toEqual([0]);
    expect(yearsOf(columns.generation(0, 'firstSeedling'))).toEqual([1]);
    expect(yearsOf(columns.generation(0, 'firstPick'))).toEqual([6]);
    expect(yearsOf(columns.generation(1, 'firstPollination'))).toEqual([6]);
    expect(yearsOf(columns.generation(1, 'firstSeedling'))).toEqual([7]);
    expect(yearsOf(columns.generation(1, 'firstFruit'))).toEqual([12]);
    // The good trees of the second generation bear, and are proven, in the same season.
    expect(columns.run('yearStood')).toEqual(years);
    expect(columns.run('trulyGood')).toEqual(columns.run('proven'));
    expectMean(columns.run('proven'), pc1.setup('seedlings') / 4, 'showing trees a run');
  });

  const pc2 = new PlanCheck('PC2');
  it(pc2.name, () => {
    const goal = { conditions: [{ type: 'shown' as const, trait: 'red', atLeast: 1 }], crops: 1, trees: pc2.setup('wanted') };
    const columns = future(brotherSister({ seedlings: pc2.setup('seedlings'), more: { goal } }), RUNS);
    expectShare(
      count(columns.run('yearProven'), (year) => year >= 0),
      RUNS,
      pc2.expected('chance'),
    );
  });
});

const traitOf = (check: PlanCheck, sharedSeason: number): Partial<ShownDocument> => ({
  canShow: check.setup('canShow'),
  seasonsShown: check.setup('seasonsShown'),
  falseShow: check.setup('falseShow'),
  sharedSeason,
});

describe('seen in k of n crops', () => {
  for (const id of ['PC3-11', 'PC3-21', 'PC3-32']) {
    const check = new PlanCheck(id);
    const [judge, needed, seedlings] = [check.setup('judged'), check.setup('needed'), check.setup('seedlings')];
    it(check.name, () => {
      const columns = future(brotherSister({ seedlings, judge, needed, trait: traitOf(check, 0), more: { shuffleWord: id } }), RUNS);
      const kept = columns.generation(1, 'kept');
      expectMean(
        Array.from(kept, (n) => n / seedlings),
        check.expected('keptShare'),
        'kept',
      );
      expect(columns.run('proven')).toEqual(kept);
      expectRatio(columns.run('trulyGood'), columns.run('proven'), check.expected('trueAmongKept'), 'true among kept');
      const years = columns.run('yearProven');
      expectShare(
        count(years, (year) => year >= 0),
        RUNS,
        check.expected('chanceOneKept'),
        'one kept',
      );
      expect(yearsOf(years)).toEqual([-1, check.expected('year')]);
      expect(total(columns.run('judgings'))).toBe(RUNS * seedlings * judge);
    });
  }

  for (const id of ['PC3s-11', 'PC3s-32']) {
    const check = new PlanCheck(id);
    const [judged, needed, seedlings] = [check.setup('judged'), check.setup('needed'), check.setup('seedlings')];
    it(`${check.name}; the stated figure is allowed its ${String(check.goodTo)}, our own integral nothing`, () => {
      const sharedSeason = check.setup('sharedSeason');
      const columns = future(brotherSister({ seedlings, judge: judged, needed, trait: traitOf(check, sharedSeason), more: { shuffleWord: id } }), RUNS);
      const hits = count(columns.run('yearProven'), (year) => year >= 0);
      expectShare(hits, RUNS, check.expected('chanceOneKept'), 'stated', check.goodTo);
      const exact = chanceOneKept(
        {
          share: check.setup('share'),
          canShow: check.setup('canShow'),
          seasonsShown: check.setup('seasonsShown'),
          falseShow: check.setup('falseShow'),
          sharedSeason,
          judged,
          needed,
        },
        seedlings,
      );
      expectShare(hits, RUNS, exact, 'integral');
    });
  }
});

describe('which genotypes qualify', () => {
  // Second generation of AaBb (docs/model.md §9): shares in sixteenths. Sources: Mendel 1866 for 9 : 7 and 1 of 16 by the product rule;
  // Griffiths et al., An Introduction to Genetic Analysis, "Gene interaction" (9 : 7, 15 : 1).
  const needs = {
    'both, one copy each: 9 of 16': [
      9,
      {
        needs: 'all',
        of: [
          { gene: 'r', copies: 1 },
          { gene: 's', copies: 1 },
        ],
      },
    ],
    'either, one copy: 15 of 16': [
      15,
      {
        needs: 'any',
        of: [
          { gene: 'r', copies: 1 },
          { gene: 's', copies: 1 },
        ],
      },
    ],
    'both, two copies: 1 of 16': [
      1,
      {
        needs: 'all',
        of: [
          { gene: 'r', copies: 2 },
          { gene: 's', copies: 2 },
        ],
      },
    ],
    'either, two copies: 7 of 16': [
      7,
      {
        needs: 'any',
        of: [
          { gene: 'r', copies: 2 },
          { gene: 's', copies: 2 },
        ],
      },
    ],
    'three copies in all: 5 of 16': [5, { needs: 'total', genes: ['r', 's'], copies: 3 }],
    'two of r, one of s: 3 of 16': [
      3,
      {
        needs: 'all',
        of: [
          { gene: 'r', copies: 2 },
          { gene: 's', copies: 1 },
        ],
      },
    ],
  } satisfies Record<string, [number, ShownDocument['rules'][number]['needs']]>;

  for (const [name, [sixteenths, rule]] of Object.entries(needs))
    it(name, () => {
      const columns = future(
        brotherSister({
          seedlings: 16,
          trait: { rules: [{ name, weight: 1, needs: rule }] },
          more: {
            goal: neverProven(),
            genes: ['r', 's'].map((id) => ({ id, name: id })),
            trees: [
              { id: 'a', name: 'a', kind: 'pear', flowers: 1e6, genes: { r: { copies: 2 }, s: { copies: 2 } } },
              { id: 'b', name: 'b', kind: 'pear', flowers: 1e6 },
            ],
          },
        }),
        4000,
      );
      expectMean(columns.generation(1, 'showing'), sixteenths);
    });

  it('the rule itself is drawn by weight, once a run for every plan', () => {
    const rules = [
      { name: 'one', weight: 5, needs: { needs: 'all' as const, of: [{ gene: 'r', copies: 1 }] } },
      { name: 'two', weight: 3, needs: { needs: 'all' as const, of: [{ gene: 'r', copies: 2 }] } },
    ];
    const columns = future(brotherSister({ seedlings: 40, trait: { rules }, more: { goal: neverProven() } }), RUNS);
    const rule = columns.rule(0);
    expectShare(
      count(rule, (drawn) => drawn === 0),
      RUNS,
      5 / 8,
    );
    const showing = columns.generation(1, 'showing');
    const under = (which: number) => Array.from(showing).filter((_, run) => rule[run] === which);
    expectMean(under(0), 30, 'one copy is enough: three quarters');
    expectMean(under(1), 10, 'two copies needed: a quarter');
    expect(mean(under(0))).toBeGreaterThan(mean(under(1)));
  });
});
