import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { meanOf } from '../../src/model/mean.ts';
import type { Programme, ShownTrait } from '../../src/model/programme.ts';
import { isRecord } from '../../src/model/walk.ts';
import type { Columns } from '../../src/results/columns.ts';
import { FAILURES } from '../../src/results/outlook.ts';
import { count, errorOfMean, expectRatio, mean, total } from './agreement.ts';
import { estimatesIn, expectMore, expectTruer, FOLDER, future, futures, lastOf, load, middleYear, planOf, textOf, won } from './example-futures.ts';

const all = readdirSync(FOLDER).map((file) => file.replace(/\.json$/, ''));
const sourced = ['backcross-apple', 'cherry-selfing', 'half-result', 'kaki-sweet', 'peach-apart', 'peach-quick', 'slow-walnut'];

describe.each(all)('the example %s', (name) => {
  const programme = load(name);
  const run = () =>
    futures(
      programme,
      programme.plans.map(({ id }) => id),
    );

  it('says that it is invented, and what each plan is', () => {
    expect(programme.example).toBe(true);
    expect(programme.note).toMatch(/^An invented example: trees, places.* made up\./);
    expect(programme.plans.length).toBeGreaterThanOrEqual(2);
    expect(programme.plans.length).toBeLessThanOrEqual(4);
    expect(programme.plans.map(({ mark }) => mark).join('')).toBe('ABCD'.slice(0, programme.plans.length));
    for (const { note } of programme.plans) expect(note?.length).toBeGreaterThan(20);
  });

  it('can be reached by every plan and is sure by none; the best and the worst differ', () => {
    const columns = run();
    const chances = columns.map((plan) => mean(won(plan)));
    for (const chance of chances) {
      expect(chance).toBeGreaterThan(0.1);
      expect(chance).toBeLessThan(0.95);
    }
    const at = (extreme: number) => won(columns[chances.indexOf(extreme)]!);
    expectMore(at(Math.max(...chances)), at(Math.min(...chances)), 'best against worst');
  });

  it('is a real choice: no plan is best on chance, on years and on trees at once', () => {
    const columns = run();
    const best = (values: readonly number[], extreme: number) => values.map((value) => value === extreme);
    const chances = columns.map((plan) => mean(won(plan)));
    const years = columns.map(middleYear);
    for (const trees of [columns.map((plan) => mean(plan.run('seedlings'))), columns.map((plan) => mean(plan.amount('treeYears')))]) {
      const marks = [best(chances, Math.max(...chances)), best(years, Math.min(...years)), best(trees, Math.min(...trees))];
      expect(columns.filter((_, p) => marks.every((mark) => mark[p])).length).toBe(0);
    }
  });
});

describe.each(sourced)('the numbers of %s', (name) => {
  it('each say where they come from; what is not a guess or invented says whether it was seen', () => {
    const estimates = estimatesIn(JSON.parse(textOf(name)));
    expect(estimates.length).toBeGreaterThan(30);
    for (const [path, estimate] of estimates) {
      const source = isRecord(estimate) ? estimate['source'] : undefined;
      expect(source, path).toMatchObject({ kind: expect.stringMatching(/^(published|practice|guess|invented)$/) as unknown });
      if (!isRecord(source)) continue;
      if (source['kind'] === 'published') expect(source['note'], path).toMatch(/seen( in (abstract or )?excerpt)?[;)]|from memory/);
      if (source['kind'] === 'practice') expect(source['note'], path).toMatch(/no source|from memory/);
    }
    const kinds = new Set(estimates.map(([, estimate]) => isRecord(estimate) && isRecord(estimate['source']) && estimate['source']['kind']));
    expect(kinds).toEqual(new Set(['published', 'practice', 'guess', 'invented']));
  });
});

describe('peach-quick', () => {
  const programme = load('peach-quick');
  const last = (varied: Programme) => lastOf(planOf(varied, 'kernels'));
  const untested = (varied: Programme) => {
    delete last(varied).test;
  };

  it('compares open seed, a cross, two ways of raising, a leaf test and selfing, and judges three crops', () => {
    const [gathered, stones, kernels, self] = programme.plans.map(lastOf);
    expect(gathered?.pollen).toBe('open');
    expect([stones?.route, kernels?.route]).toEqual(['as-they-fall', 'kernels-out']);
    expect([stones?.seedParents, stones?.pollen, stones?.flowers]).toEqual([kernels?.seedParents, kernels?.pollen, kernels?.flowers]);
    expect([stones?.test, kernels?.test?.gene]).toEqual([undefined, 'flat']);
    expect([self?.pollen, programme.kinds[0]?.selfCompatible, programme.goal.crops]).toEqual(['self', true, 3]);
  });

  it('fruits in the third growing season and not before (Fruit Var. Hort. Dig. 10:55, 1956)', () => {
    // Pollinated in year 0, up in year 1: the third growing season is year 3.
    const years = Array.from(future(programme, 'stones').generation(0, 'firstFruit')).filter((year) => year >= 0);
    expect(Math.min(...years)).toBe(3);
    expect(count(years, (year) => year === 3)).toBeGreaterThan(years.length / 2);
  });

  it('raises more from the same flowers with the kernels out, and gets there oftener', () => {
    const [stones, kernels] = futures(programme, ['stones', 'kernels'], untested);
    expectMore(kernels!.run('seedlings'), stones!.run('seedlings'), 'seedlings');
    expectMore(won(kernels!), won(stones!), 'chance');
  });

  it('plants half of what comes through the first winter when the leaves are tested (Mendel: 1:1, stray pollen kept out)', () => {
    // As large a share of the round ones is let through as of the flat ones is lost; first-winter loss averages (5 + 4·10 + 15)/6 = 10 %.
    const columns = future(programme, 'kernels', (varied) => {
      last(varied).cover = 0;
      varied.limits.places = 1000;
    });
    expectRatio(columns.run('planted'), columns.run('seedlings'), 0.5 * 0.9, 'planted of seedlings');
  });

  it('needs less land and more money for the leaf test', () => {
    const [tested, plain] = [future(programme, 'kernels'), future(programme, 'kernels', untested)];
    expectMore(plain.amount('treeYears'), tested.amount('treeYears'), 'tree-years');
    expectMore(tested.amount('totalMoney'), plain.amount('totalMoney'), 'money');
  });

  it('takes longer by selfing the best, which is oftener there and oftener true than one cross', () => {
    const [stones, kernels, self] = futures(programme, ['stones', 'kernels', 'self']);
    expect(middleYear(self!)).toBeGreaterThan(middleYear(kernels!));
    expectMore(won(self!), won(stones!), 'chance');
    expectTruer(self!, stones!, 'selfing');
  });

  it('is fooled less by three crops than by one', () => {
    const once = future(programme, 'kernels', (varied) => {
      varied.goal.crops = last(varied).judge = 1;
      for (const list of [varied.goal.conditions, last(varied).keep.conditions])
        for (const condition of list) if (condition.type === 'shown' && condition.atLeast !== undefined) condition.atLeast = 1;
    });
    expectTruer(future(programme, 'kernels'), once, 'three crops');
  });
});

describe('slow-walnut', () => {
  const programme = load('slow-walnut');

  it('is slow, has one source tree in the garden most at risk, and plans that differ in where trees stand', () => {
    const { firstFruit } = programme.kinds[0]!;
    expect(firstFruit).toMatchObject({
      half: { low: 10, high: 12, source: { kind: 'practice', note: expect.stringContaining('common practice, no source') as unknown } },
    });
    const sources = programme.trees.filter(({ seen }) => Object.values(seen).some((entry) => 'source' in entry));
    expect(sources.map(({ copies, gardens }) => [copies, gardens])).toEqual([[1, ['home']]]);
    const losses = programme.gardens.map(({ yearlyLoss }) => meanOf(yearlyLoss));
    expect(losses[0]).toBe(Math.max(...losses));
    const [home, backedUp, far] = programme.plans.map(lastOf);
    expect({ ...backedUp, id: home?.id, backup: undefined }).toEqual({ ...home, backup: undefined });
    expect([home?.backup, backedUp?.backup?.garden, far?.garden]).toEqual([undefined, 'churchyard', 'far-field']);
  });

  it('bears no nut on own roots before the ninth year', () => {
    const years = Array.from(future(programme, 'home').generation(0, 'firstFruit')).filter((year) => year >= 0);
    expect(Math.min(...years)).toBeGreaterThanOrEqual(1 + 9);
  });

  it('comes oftener to its end when picks are grafted elsewhere: fewer only trees are lost', () => {
    const [home, backedUp] = futures(programme, ['home', 'backed-up']);
    expectMore(won(backedUp!), won(home!), 'chance');
    const lost = (columns: Columns) => Array.from(columns.run('failure'), (failure) => +(FAILURES[failure] === 'onlyTreeLost'));
    expectMore(lost(home!), lost(backedUp!), 'only tree lost');
    const safe = (varied: Programme) => {
      varied.gardens[0]!.yearlyLoss = varied.kinds[0]!.yearlyLoss = 0;
    };
    expect(won(future(programme, 'backed-up', safe))).toEqual(won(future(programme, 'home', safe)));
  });

  it('gains more from safe ground for the seedlings than from the backups', () => {
    const [backedUp, moved] = [
      future(programme, 'backed-up'),
      future(programme, 'home', (varied) => {
        lastOf(planOf(varied, 'home')).garden = 'far-field';
      }),
    ];
    expectMore(won(moved), won(backedUp), 'chance');
  });

  it('has no years for five judged crops: on own roots less than half the chance is left, and the limbs come first', () => {
    const ids = programme.plans.map(({ id }) => id);
    const three = futures(programme, ids).map(won);
    const five = futures(programme, ids, (varied) => {
      varied.goal.crops = 5;
    }).map(won);
    for (const p of [0, 1, 2]) {
      expectMore(
        three[p]!.map((value) => value / 2),
        five[p]!,
        `${ids[p]!}: half the chance against five crops`,
      );
      expectMore(five[3]!, five[p]!, `five crops: limbs against ${ids[p]!}`);
    }
  });

  it('bears sooner on an old tree’s limbs, on a tenth of the land, and oftener fails', () => {
    const [own, limbs] = futures(programme, ['backed-up', 'limbs']);
    expect(middleYear(limbs!)).toBeLessThan(middleYear(own!));
    expectMore(
      Array.from(own!.amount('treeYears'), (years) => years / 10),
      limbs!.amount('treeYears'),
      'a tenth of the tree-years',
    );
    expectMore(won(own!), won(limbs!), 'chance');
  });
});

describe('backcross-apple', () => {
  const programme = load('backcross-apple');

  it('carries a dominant gene of a small crab four times back to a large self-incompatible apple, with costs stated', () => {
    expect(programme.kinds.map(({ selfCompatible }) => selfCompatible)).toEqual([false]);
    expect(programme.traits[0]).toMatchObject({ type: 'shown', rules: [{ needs: { of: [{ copies: 1 }] } }] });
    const [gold, crab] = programme.trees.map(({ values }) => meanOf(values['weight'] ?? NaN));
    expect(crab).toBeLessThan(gold! / 5);
    expect(programme.goal.conditions).toContainEqual({ type: 'measured', trait: 'weight', atLeast: 175 });
    const crossedBack = programme.plans.map(({ generations }) =>
      generations.filter(({ pollen }) => Array.isArray(pollen) && pollen.every((parent) => 'picksOf' in parent)).reduce((sum, { repeat }) => sum + repeat, 0),
    );
    expect(crossedBack).toEqual([4, 4, 4, 2]);
    const [byTest, bySight, inField] = programme.plans;
    expect(byTest?.generations.every((entry) => entry.test && !entry.look)).toBe(true);
    expect(bySight?.generations.every((entry) => entry.look && !entry.test)).toBe(true);
    expect(inField?.generations.every((entry) => !entry.look && !entry.test && entry.judge > 0)).toBe(true);
    expect(bySight?.generations[0]?.look?.falsePositive).toBeGreaterThan(byTest?.generations[0]?.test?.falsePositive ?? 1);
    expect([programme.hours.perTest, programme.hours.perLook, programme.money?.perTest, programme.limits.moneyPerYear].every((value) => (value ?? 0) > 0)).toBe(
      true,
    );
  });

  const test = () => future(programme, 'leaf-test');
  const sight = () => future(programme, 'by-sight');
  const field = () => future(programme, 'field');
  const twice = () => future(programme, 'twice');

  it('keeps the gene far oftener by leaf test than by sight, for more money', () => {
    expectMore(won(test()), won(sight()), 'chance');
    expectMore(test().amount('totalMoney'), sight().amount('totalMoney'), 'money');
  });

  it('loses what sight loses to its errors: with those of the leaf test it does as well', () => {
    const sharp = future(programme, 'by-sight', (varied) => {
      for (const { look } of planOf(varied, 'by-sight').generations) if (look) look.falsePositive = look.falseNegative = 0.02;
    });
    expectMore(won(sharp), won(sight()), 'chance');
    const differences = won(sharp).map((value, i) => value - won(test())[i]!);
    expect(Math.abs(mean(differences))).toBeLessThanOrEqual(4 * errorOfMean(differences));
  });

  it('needs less land by leaf test than by judging in the field', () => {
    expectMore(field().amount('treeYears'), test().amount('treeYears'), 'tree-years');
    expectMore(field().run('judgings'), test().run('judgings'), 'crops judged');
  });

  it('is years sooner with two crosses back, and its proven trees are seldomer as large as they seemed', () => {
    expect(middleYear(twice())).toBeLessThan(middleYear(test()));
    expectTruer(test(), twice(), 'four times back');
  });
});

describe('half-result', () => {
  const programme = load('half-result');
  const stoneless = (varied: Programme): ShownTrait => {
    const [trait] = varied.traits;
    if (trait?.type !== 'shown') throw new Error('The first trait is shown or not.');
    return trait;
  };
  /** Drops the condition on half-results, or asks for none of them, in the goal and where picks are kept. */
  const part = (atMost: number | null) => (varied: Programme) => {
    const asked = (list: Programme['goal']['conditions']) =>
      list.flatMap((condition) =>
        condition.type === 'shown' && condition.grade === 'part' ? (atMost === null ? [] : [{ ...condition, atMost }]) : [condition],
      );
    varied.goal.conditions = asked(varied.goal.conditions);
    for (const plan of varied.plans) lastOf(plan).keep.conditions = asked(lastOf(plan).keep.conditions);
  };

  it('grades the fruit, skips seasons, links two genes, costs seed, and lets the mother be chosen', () => {
    const { grade, seasonsShown, emptyIfShown, rules } = stoneless(programme);
    expect(grade?.mean).toBeLessThan(1);
    expect(grade?.fruitsCut).toBe(5);
    expect(meanOf(seasonsShown)).toBeLessThan(0.9);
    expect(meanOf(emptyIfShown)).toBeGreaterThan(0.5);
    expect(rules[0]?.needs).toMatchObject({ needs: 'all', of: programme.genes.map(({ id }) => ({ gene: id, copies: 2 })) });
    expect(new Set(programme.genes.map(({ group }) => group)).size).toBe(1);
    expect(programme.goal.conditions.slice(0, 2)).toEqual([
      { type: 'shown', trait: 'stoneless', grade: 'full', atLeast: 2 },
      { type: 'shown', trait: 'stoneless', grade: 'part', atMost: 1 },
    ]);
    const nan = [{ tree: 'toothless-nan' }];
    const [mother, father, both] = programme.plans.map(lastOf);
    expect([mother?.seedParents, father?.pollen, both?.reciprocal]).toEqual([nan, nan, true]);
  });

  it('finds seed in 9 of 40 fruits where Nan is the mother, and four times as often the other way round', () => {
    const [nan, picks] = futures(programme, ['nan-mother', 'picks-mother'], (varied) => {
      for (const plan of varied.plans) lastOf(plan).springs = 1;
    });
    const seeds = (columns: Columns) => columns.generation(1, 'seeds');
    const fruits = (columns: Columns) => columns.generation(1, 'fruits');
    // A tenth of the fruit is empty anyway, and of the rest the PERT mean (60 + 4·75 + 90)/6 = 75 %; one seed in each that is left.
    expectRatio(seeds(nan!), fruits(nan!), 0.9 * 0.25, 'Nan the mother');
    expect(total(seeds(picks!)) / total(fruits(picks!))).toBeGreaterThan(3.5 * 0.9 * 0.25);
  });

  it('is worth turning round: with Nan the father there are more seedlings and more chance', () => {
    const [nan, picks] = futures(programme, ['nan-mother', 'picks-mother']);
    expectMore(picks!.run('seedlings'), nan!.run('seedlings'), 'seedlings');
    expectMore(won(picks!), won(nan!), 'chance');
    const free = futures(programme, ['nan-mother', 'picks-mother'], (varied) => {
      stoneless(varied).emptyIfShown = 0;
    });
    expectMore(won(free[0]!), won(nan!), 'chance, if it cost no seed');
  });

  it('suffers from half-results: fewer are allowed, fewer trees are proven; if each crop were all or nothing, more', () => {
    const base = won(future(programme, 'brother-sister'));
    expectMore(won(future(programme, 'brother-sister', part(null))), base, 'half-results do not count');
    expectMore(base, won(future(programme, 'brother-sister', part(0))), 'not one half-result');
    const whole = future(programme, 'brother-sister', (varied) => {
      delete stoneless(varied).grade;
    });
    expectMore(won(whole), base, 'all or nothing');
  });

  it('owes much of brother × sister to the linkage, and gets sweeter trees from it', () => {
    const loose = future(programme, 'brother-sister', (varied) => {
      for (const gene of varied.genes) delete gene.group;
    });
    const [picks, sister] = futures(programme, ['picks-mother', 'brother-sister']);
    expectMore(won(sister!), won(loose), 'chance');
    expectTruer(sister!, picks!, 'brother × sister');
    expect(middleYear(sister!)).toBeGreaterThan(middleYear(picks!));
  });
});
