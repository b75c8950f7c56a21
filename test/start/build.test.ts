import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossBetween, kindOf } from '../../src/catalogue/catalogue.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { sentence } from '../../src/model/problem.ts';
import type { Programme } from '../../src/model/programme.ts';
import { pairsReached } from '../../src/model/reach.ts';
import { draftSchema, EMPTY, filledIn, type Draft } from '../../src/start/answers.ts';
import { buildProgramme } from '../../src/start/build.ts';
import { firstTroubled, troubles } from '../../src/start/problems.ts';
import { drafts } from './arbitrary.ts';

const isKind = (id: string) => kindOf(id) !== undefined;
const RUNS = 100;
const SPRING = 2027;

const RED: Draft = {
  ...EMPTY,
  tree: { name: 'Old Hedgerow', kind: 'pear', trait: 'red flesh', showed: 4, seasons: 6 },
  partners: [{ name: 'Saffron Bell' }],
};
const WIDE: Draft = { ...RED, partners: [{ name: 'Mill Quince', kind: 'quince' }] };

function built(draft: Draft): Programme {
  const reading = buildProgramme(filledIn(draft, SPRING));
  if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(reading.draft ?? null, problem)).join(' '));
  return reading.programme;
}
const shownTrait = ({ traits }: Programme) => {
  const [trait] = traits;
  if (trait?.type !== 'shown') throw new Error('The first trait is the one that shows.');
  return trait;
};
const names = ({ plans }: Programme) => plans.map(({ name }) => name);

describe('a programme built from answers', () => {
  it('is sound, has three plans of different sorts, and runs, whatever the answers (fast-check, fixed seed)', () => {
    const ways = new Set<string>();
    let wide = 0;
    fc.assert(
      fc.property(drafts, (draft) => {
        expect(draftSchema.safeParse(draft).error?.issues).toBeUndefined();
        const answers = filledIn(draft, SPRING);
        fc.pre(firstTroubled(draft, answers, isKind) === undefined);
        const programme = built(draft);
        ways.add(`${answers.way.how} ${answers.rule.split(':')[0] ?? ''} ${answers.goal.measure}`);
        if (programme.kinds.some(({ id }) => id.endsWith('-hybrid'))) wide += 1;
        expect(programme.plans.map(({ mark }) => mark)).toEqual(['A', 'B', 'C']);
        expect(new Set(names(programme)).size).toBe(3);
        expect(new Set(programme.plans.map(({ generations }) => JSON.stringify(generations))).size).toBe(3);
        for (const plan of programme.plans) for (const { entry } of pairsReached(programme, plan)) expect(entry).toBeDefined();
        const small = { ...programme, lastYear: Math.min(programme.lastYear, programme.startYear + 40) };
        const [columns] = new Simulator(small).runs([0, 1, 2], 0, RUNS);
        expect(columns?.runs).toBe(RUNS);
      }),
      { seed: 20261125, numRuns: 150 },
    );
    expect(ways.size, 'sorts of answers tried').toBeGreaterThan(25);
    expect(wide, 'programmes with a hybrid').toBeGreaterThan(50);
  });

  it.each([
    ['of one kind', RED],
    ['by hand only', { ...RED, way: { how: 'hand' } } satisfies Draft],
    ['open seed only', { ...RED, way: { how: 'open' }, partners: [{}] } satisfies Draft],
    ['with another kind', WIDE],
    ['with another kind, by hand', { ...WIDE, way: { how: 'hand' } } satisfies Draft],
    ['with both', { ...RED, partners: [{ name: 'Saffron Bell' }, { name: 'Mill Quince', kind: 'quince' }] } satisfies Draft],
  ])('%s: 100 futures of each plan', (_, draft) => {
    const programme = built(draft);
    const all = new Simulator(programme).runs([0, 1, 2], 0, RUNS);
    expect(all.map(({ runs }) => runs)).toEqual([RUNS, RUNS, RUNS]);
    // Every plan gets as far as seedlings in some future: none is stuck from the start.
    for (const columns of all) expect(Math.max(...columns.run('seedlings'))).toBeGreaterThan(0);
    for (const { name, note } of programme.plans) expect(`${name} ${note ?? ''}`).toContain('Old Hedgerow');
  });

  it('names the plans by what they do with the trees', () => {
    expect(names(built(RED))).toEqual([
      'Open seed of Old Hedgerow, best × best',
      'Brother × sister of Old Hedgerow × Saffron Bell',
      'One large cross, Old Hedgerow × Saffron Bell',
    ]);
    expect(names(built({ ...RED, partners: [{ name: 'Saffron Bell' }, { name: 'Mill Quince', kind: 'quince' }] }))[2]).toBe(
      'Weak ones grafted, Old Hedgerow × Mill Quince',
    );
    expect(names(built({ ...RED, way: { how: 'hand' } }))[0]).toBe('Back to Old Hedgerow, after Saffron Bell');
  });

  it('weighs several explanations where nobody knows how it is inherited, and follows one where somebody does', () => {
    const unknown = shownTrait(built(RED));
    expect(unknown.rules.map(({ name, weight }) => [name, weight])).toEqual([
      ['one copy is enough', 5],
      ['two copies needed', 3],
      ['two genes, one copy of each', 2],
    ]);
    const two = shownTrait(built({ ...RED, known: { rule: 'two' } }));
    expect(two.rules.map(({ needs }) => needs)).toEqual([{ needs: 'all', of: [{ gene: 'wanted', copies: 2 }] }]);
    const one = shownTrait(built({ ...RED, known: { rule: 'one' } }));
    expect(one.rules.map(({ needs }) => needs)).toEqual([{ needs: 'all', of: [{ gene: 'wanted', copies: 1 }] }]);
  });

  it('takes own counts in place of the figures of the catalogue, and its figures with their sources elsewhere', () => {
    const counts = { set: { hits: 18, of: 240, springs: 2 }, germination: { hits: 31, of: 44 }, weak: {} };
    const [cross] = built({ ...RED, counts }).crosses;
    expect(cross).toMatchObject({
      seed: 'pear',
      pollen: 'pear',
      set: { hits: 18, of: 240, lots: 2, source: { kind: 'counted' } },
      germination: { hits: 31, of: 44, lots: 1, source: { kind: 'counted' } },
    });
    const usual = crossBetween('pear', 'pear').cross;
    expect(built(RED).crosses[0]).toMatchObject({ set: usual.set, germination: usual.germination });
    expect(shownTrait(built(RED)).seasonsShown).toMatchObject({ hits: 4, of: 6, source: { kind: 'counted' } });
  });

  it('a partner of another kind brings the hybrid, the ways back, and a plan that grafts the weak', () => {
    const programme = built(WIDE);
    const { cross, hybrid, backcrosses } = crossBetween('pear', 'quince');
    expect(programme.kinds.map(({ id }) => id)).toEqual(['pear', 'quince', hybrid?.id]);
    expect(programme.crosses.map(({ id }) => id)).toEqual(expect.arrayContaining([cross.id, ...backcrosses.map(({ id }) => id)]));
    const rescues = programme.plans.map(({ generations }) => generations[0]?.rescue?.who);
    expect(rescues).toEqual([undefined, undefined, 'weak']);
    expect(programme.plans[2]?.generations[1]?.seedParents).toEqual([{ tree: 'old-hedgerow' }]);
    const counted = built({ ...WIDE, counts: { ...EMPTY.counts, weak: { hits: 47, of: 50 } }, known: { weakMonths: 7 } });
    const weak = counted.crosses.find(({ id }) => id === cross.id)?.weakness;
    expect(weak?.share).toMatchObject({ hits: 47, of: 50, source: { kind: 'counted' } });
    // Onset and half-life together are the age by which half were dead.
    expect(weak?.course).toMatchObject({ halfLife: { source: { kind: 'counted' } } });
  });

  it('ground and hands bound how many flowers and seedlings the plans ask for', () => {
    const small = built({ ...RED, means: { places: 10, hours: 30, bloomDays: 1, hoursADay: 1 } });
    for (const { generations } of small.plans) {
      for (const { flowers, seedlings } of generations) {
        expect(flowers).toBeLessThanOrEqual(40);
        expect(seedlings).toBeLessThanOrEqual(10);
      }
    }
    const [, , large] = built({ ...RED, means: { places: 300, hours: 2000 } }).plans;
    expect(large?.generations[0]?.seedlings).toBe(300);
  });

  it('a measured wish becomes a trait, a goal, and a true value nearer to the ordinary tree than what was seen', () => {
    const programme = built({ ...RED, goal: { measure: 'keeping', ordinary: 8, least: 10, own: 5 } });
    expect(programme.goal.conditions).toEqual([
      { type: 'shown', trait: 'red-flesh', grade: 'any', atLeast: 2 },
      { type: 'measured', trait: 'keeping', atLeast: 10 },
    ]);
    const value = programme.trees[0]?.values['keeping'];
    // Six seasons, h² 0.4, t 0.6: 6 × 0.4/(1 + 5 × 0.6) = 0.6 of the three weeks (Falconer & Mackay 1996, from memory).
    expect(value).toMatchObject({ value: 8 - 0.6 * 3 });
  });
});

describe('troubles', () => {
  const found = (question: Parameters<typeof troubles>[0], draft: Draft) =>
    troubles(question, draft, filledIn(draft, SPRING), isKind).map(({ path, trouble }) => `${path.join('.')} ${trouble}`);

  it('stand beside the answer that is missing or contradicts another', () => {
    expect(found('tree', EMPTY)).toEqual(['tree.name nameMissing', 'tree.kind kindMissing', 'tree.trait traitMissing']);
    expect(found('tree', { ...RED, tree: { ...RED.tree, showed: 7 } })).toEqual(['tree.showed moreThanLooked']);
    expect(found('tree', { ...RED, tree: { ...RED.tree, kind: 'medlar' } })).toEqual(['tree.kind kindGone']);
    expect(found('cross', { ...RED, partners: [{}] })).toEqual(['partners.0.name nameMissing']);
    expect(found('cross', { ...RED, partners: [{}], way: { how: 'open' } })).toEqual([]);
    expect(found('cross', { ...RED, partners: [{ name: ' old hedgerow' }] })).toEqual(['partners.0.name sameName']);
    expect(found('means', { ...RED, means: { firstSpring: 2030, lastYear: 2031 } })).toEqual(['means.lastYear tooSoon']);
    expect(found('means', { ...RED, means: { firstSpring: 2030, lastYear: 2300 } })).toEqual(['means.lastYear tooLate']);
    expect(found('known', { ...RED, counts: { ...EMPTY.counts, set: { hits: 18 } } })).toEqual(['counts.set.of halfCounted']);
    expect(found('known', { ...RED, counts: { ...EMPTY.counts, set: { hits: 18, of: 4 } } })).toEqual(['counts.set.hits moreThanAll']);
    expect(found('goal', { ...RED, goal: { crops: 2, shows: 3 } })).toEqual(['goal.shows moreThanJudged']);
    expect(firstTroubled(RED, filledIn(RED, SPRING), isKind)).toBeUndefined();
  });
});
