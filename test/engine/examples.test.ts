import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { estimateBounds } from '../../src/model/estimate.ts';
import { meanOf } from '../../src/model/mean.ts';
import { sentence } from '../../src/model/problem.ts';
import { programmeSchema, type Generation, type Plan, type Programme, type ShownTrait } from '../../src/model/programme.ts';
import { readProgramme } from '../../src/model/read.ts';
import { bare, isRecord, schemaAt, type Path } from '../../src/model/walk.ts';
import type { Columns } from '../../src/results/columns.ts';
import { FAILURES } from '../../src/results/outlook.ts';
import { count, errorOfMean, expectRatio, mean, total } from './agreement.ts';

const FOLDER = new URL('../../sims/examples/', import.meta.url);
const RUNS = 2000;

function load(name: string): Programme {
  const text = readFileSync(new URL(`${name}.json`, FOLDER), 'utf8');
  const reading = readProgramme(text);
  if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(reading.draft, problem)).join('\n'));
  expect(reading.notes, name).toEqual([]);
  return reading.programme;
}

const planOf = (programme: Programme, id: string): Plan => {
  const plan = programme.plans.find((entry) => entry.id === id);
  if (!plan) throw new Error(`No plan “${id}”`);
  return plan;
};
const lastOf = (plan: Plan): Generation => plan.generations.at(-1)!;

/** Futures 0 … RUNS − 1 of the plans named, in that order; the word is the example's own. */
function futures(programme: Programme, ids: readonly string[], change: (programme: Programme) => void = () => undefined): Columns[] {
  const varied = structuredClone(programme);
  change(varied);
  return new Simulator(varied).runs(
    ids.map((id) => varied.plans.indexOf(planOf(varied, id))),
    0,
    RUNS,
  );
}
const future = (programme: Programme, id: string, change?: (programme: Programme) => void): Columns => futures(programme, [id], change)[0]!;

const won = (columns: Columns) => Array.from(columns.run('yearProven'), (year) => +(year >= 0));

/** Two columns of the same futures: the first is larger by more than 4 standard errors of the paired difference. */
function expectMore(more: ArrayLike<number>, less: ArrayLike<number>, what: string): void {
  const differences = Array.from(more, (value, i) => value - less[i]!);
  const z = mean(differences) / errorOfMean(differences);
  expect(z, `${what}: ${String(mean(more))} against ${String(mean(less))}, z`).toBeGreaterThan(4);
}

/** Of the trees proven, the share that truly is: larger in the first by more than 4 standard errors of the two shares. */
function expectTruer(more: Columns, less: Columns, what: string): void {
  const [a, b] = [more, less].map((columns) => {
    const proven = total(columns.run('proven'));
    const share = total(columns.run('trulyGood')) / proven;
    return { share, variance: (share * (1 - share)) / proven };
  });
  expect((a!.share - b!.share) / Math.sqrt(a!.variance + b!.variance), `${what}: ${String(a!.share)} against ${String(b!.share)}, z`).toBeGreaterThan(4);
}

/** Year in which half of the successes are there. */
function middleYear(columns: Columns): number {
  const years = Array.from(columns.run('yearProven')).filter((year) => year >= 0);
  return years.sort((a, b) => a - b)[Math.floor(years.length / 2)]!;
}

/** Every estimate that the file states, with its path. */
function estimatesIn(document: unknown, value: unknown = document, path: Path = []): [string, unknown][] {
  const schema = schemaAt(programmeSchema, path, document);
  if (schema && estimateBounds.has(bare(schema).schema)) return [[path.join('/'), value]];
  if (Array.isArray(value)) return value.flatMap((entry: unknown, i) => estimatesIn(document, entry, [...path, i]));
  return isRecord(value) ? Object.entries(value).flatMap(([key, entry]) => estimatesIn(document, entry, [...path, key])) : [];
}

const all = readdirSync(FOLDER).map((file) => file.replace(/\.json$/, ''));
const four = ['backcross-apple', 'half-result', 'peach-quick', 'slow-walnut'];

describe.each(all)('the example %s', (name) => {
  const programme = load(name);
  const columns = futures(
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
    const chances = columns.map((plan) => mean(won(plan)));
    for (const chance of chances) {
      expect(chance).toBeGreaterThan(0.1);
      expect(chance).toBeLessThan(0.95);
    }
    const at = (extreme: number) => won(columns[chances.indexOf(extreme)]!);
    expectMore(at(Math.max(...chances)), at(Math.min(...chances)), 'best against worst');
  });

  it('is a real choice: no plan is best on chance, on years and on trees at once', () => {
    const best = (values: readonly number[], extreme: number) => values.map((value) => value === extreme);
    const chances = columns.map((plan) => mean(won(plan)));
    const years = columns.map(middleYear);
    for (const trees of [columns.map((plan) => mean(plan.run('seedlings'))), columns.map((plan) => mean(plan.amount('treeYears')))]) {
      const marks = [best(chances, Math.max(...chances)), best(years, Math.min(...years)), best(trees, Math.min(...trees))];
      expect(columns.filter((_, p) => marks.every((mark) => mark[p])).length).toBe(0);
    }
  });
});

describe.each(four)('the numbers of %s', (name) => {
  it('each say where they come from; what is not a guess or invented says whether it was seen', () => {
    const estimates = estimatesIn(JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), 'utf8')));
    expect(estimates.length).toBeGreaterThan(40);
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
    expectTruer(self!, stones!, 'truly good');
  });

  it('is fooled less by three crops than by one', () => {
    const once = future(programme, 'kernels', (varied) => {
      varied.goal.crops = last(varied).judge = 1;
      for (const list of [varied.goal.conditions, last(varied).keep.conditions])
        for (const condition of list) if (condition.type === 'shown' && condition.atLeast !== undefined) condition.atLeast = 1;
    });
    expectTruer(future(programme, 'kernels'), once, 'truly good');
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

  it('has no years for five judged crops: with them most of the chance is gone', () => {
    const patient = (varied: Programme) => {
      varied.goal.crops = 5;
    };
    for (const { id } of programme.plans.slice(0, 3)) {
      const half = won(future(programme, id)).map((value) => value / 2);
      expectMore(half, won(future(programme, id, patient)), `${id}: half the chance against five crops`);
    }
  });

  it('bears sooner on an old tree’s limbs, on a tenth of the land, and oftener fails', () => {
    const [home, limbs] = futures(programme, ['home', 'limbs']);
    expect(middleYear(limbs!)).toBeLessThan(middleYear(home!));
    expectMore(
      Array.from(home!.amount('treeYears'), (years) => years / 10),
      limbs!.amount('treeYears'),
      'a tenth of the tree-years',
    );
    expectMore(won(home!), won(limbs!), 'chance');
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
    const [test, sight, field] = programme.plans;
    expect(test?.generations.every((entry) => entry.test && !entry.look)).toBe(true);
    expect(sight?.generations.every((entry) => entry.look && !entry.test)).toBe(true);
    expect(field?.generations.every((entry) => !entry.look && !entry.test && entry.judge > 0)).toBe(true);
    expect(sight?.generations[0]?.look?.falsePositive).toBeGreaterThan(test?.generations[0]?.test?.falsePositive ?? 1);
    expect([programme.hours.perTest, programme.hours.perLook, programme.money?.perTest, programme.limits.moneyPerYear].every((value) => (value ?? 0) > 0)).toBe(
      true,
    );
  });

  const [test, sight, field, twice] = futures(programme, ['leaf-test', 'by-sight', 'field', 'twice']);

  it('keeps the gene far oftener by leaf test than by sight, for more money', () => {
    expectMore(won(test!), won(sight!), 'chance');
    expectMore(test!.amount('totalMoney'), sight!.amount('totalMoney'), 'money');
  });

  it('loses what sight loses to its errors: with those of the leaf test it does as well', () => {
    const sharp = future(programme, 'by-sight', (varied) => {
      for (const { look } of planOf(varied, 'by-sight').generations) if (look) look.falsePositive = look.falseNegative = 0.02;
    });
    expectMore(won(sharp), won(sight!), 'chance');
    const differences = won(sharp).map((value, i) => value - won(test!)[i]!);
    expect(Math.abs(mean(differences))).toBeLessThanOrEqual(4 * errorOfMean(differences));
  });

  it('needs less land by leaf test than by judging in the field', () => {
    expectMore(field!.amount('treeYears'), test!.amount('treeYears'), 'tree-years');
    expectMore(field!.run('judgings'), test!.run('judgings'), 'crops judged');
  });

  it('is years sooner with two crosses back, and its trees are less oftener as large as they seemed', () => {
    expect(middleYear(twice!)).toBeLessThan(middleYear(test!));
    expectTruer(test!, twice!, 'truly good');
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
    expectTruer(sister!, picks!, 'truly good');
    expect(middleYear(sister!)).toBeGreaterThan(middleYear(picks!));
  });
});
