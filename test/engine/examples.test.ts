import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { estimateBounds } from '../../src/model/estimate.ts';
import { sentence } from '../../src/model/problem.ts';
import { programmeSchema, type Generation, type Plan, type Programme, type ShownTrait } from '../../src/model/programme.ts';
import { readProgramme } from '../../src/model/read.ts';
import { bare, isRecord, schemaAt, type Path } from '../../src/model/walk.ts';
import type { Columns } from '../../src/results/columns.ts';
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
  const withoutTest = (varied: Programme) => {
    delete lastOf(planOf(varied, 'kernels')).test;
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
    // Pollinated in year 0, up in year 1, third growing season in year 3.
    const years = Array.from(future(programme, 'stones').generation(0, 'firstFruit')).filter((year) => year >= 0);
    expect(Math.min(...years)).toBe(3);
    expect(count(years, (year) => year === 3) / years.length).toBeGreaterThan(0.5);
  });

  it('raises more from the same flowers with the kernels out, and gets there oftener', () => {
    const [stones, kernels] = futures(programme, ['stones', 'kernels'], (varied) => {
      withoutTest(varied);
      varied.limits.places = 1000;
    });
    expect(Array.from(stones!.generation(0, 'fruiting')).length).toBe(RUNS);
    expectMore(kernels!.run('seedlings'), stones!.run('seedlings'), 'seedlings');
    expectMore(won(kernels!), won(stones!), 'chance');
  });

  it('plants half of what survives the first winter when the leaves are tested (Mendel; no stray pollen: 1:1)', () => {
    // As many round ones are let through as flat ones are lost, 2 % each; 10 % is the mean first-winter loss, (5 + 4·10 + 15)/6.
    const { run } = proxy(
      future(programme, 'kernels', (varied) => {
        lastOf(planOf(varied, 'kernels')).cover = 0;
        varied.limits.places = 1000;
      }),
    );
    expectRatio(run('planted'), run('seedlings'), 0.5 * 0.9, 'planted of seedlings');
  });

  it('needs less land for the leaf test, at no clear loss of chance', () => {
    const tested = future(programme, 'kernels');
    const untested = future(programme, 'kernels', withoutTest);
    expectMore(untested.amount('treeYears'), tested.amount('treeYears'), 'tree-years');
    expectMore(tested.amount('totalMoney'), Array.from(untested.amount('totalMoney'), (money) => money), 'money');
    const difference = Array.from(won(untested), (value, i) => value - won(tested)[i]!);
    expect(mean(difference)).toBeLessThan(0.05);
  });

  it('takes longer by selfing the best, and is truer for it than one cross', () => {
    const [stones, kernels, self] = futures(programme, ['stones', 'kernels', 'self']);
    expectMore(won(self!), won(stones!), 'chance');
    expect(middleYear(self!)).toBeGreaterThan(middleYear(kernels!));
    expectTruer(self!, stones!, 'truly good');
  });

  it('is fooled less by three crops than by one', () => {
    const once = future(programme, 'kernels', (varied) => {
      const last = lastOf(planOf(varied, 'kernels'));
      varied.goal.crops = last.judge = 1;
      for (const condition of [...varied.goal.conditions, ...last.keep.conditions]) if (condition.type === 'shown' && condition.atLeast) condition.atLeast = 1;
    });
    expectTruer(future(programme, 'kernels'), once, 'truly good');
  });
});
