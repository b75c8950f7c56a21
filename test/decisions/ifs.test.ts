import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerText } from '../../sims/run/ask.ts';
import { ifs, type IfsAnswer } from '../../src/decisions/ifs.ts';
import { jobsOf } from '../../src/decisions/ifs/jobs.ts';
import { spreadOut } from '../../src/decisions/ifs/line.ts';
import { ASKED, IFS } from '../../src/decisions/ifs/registry.ts';
import type { IfId } from '../../src/decisions/ifs/way.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import type { Variant } from '../../src/decisions/steps.ts';
import { onlyPlan } from '../../src/decisions/variants.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import { Z95 } from '../../src/statistics/interval.ts';
import { GivenUp } from '../../src/workers/runner.ts';
import { bytesOf } from '../contract/bytes.ts';
import { expectMean, expectShare } from '../engine/agreement.ts';
import { cross, document, generation, kind, plans, read, shown, START, tree, type Document } from '../engine/programmes.ts';
import { redPear, told } from './samples.ts';

const apple = read(JSON.parse(readFileSync(new URL('../../sims/examples/backcross-apple.json', import.meta.url), 'utf8')));
const RESCUE = { plan: 'wide-rescue' };
/** An interval is 1.96 standard errors wide to each side: four are so much more. */
const FOUR = 4 / Z95;
const linesOf = (answer: IfsAnswer, id: IfId) => answer.lines.filter((line) => line.if === id);

/** Ways of an if for a plan, and futures of one of them. */
function waysOf(programme: Programme, plan: string, id: IfId) {
  const alone = onlyPlan(programme, plan);
  const ways = IFS.find((one) => one.id === id)!.ways(alone, alone.plans[0]!, programme.plans);
  return typeof ways === 'string' ? ways : ways.map((way) => ({ ...way, columns: (year: number, runs = 60) => futuresOf(way.variant(year), runs) }));
}
const futuresOf = ({ programme, whatIf }: Variant, runs: number) => new Simulator(programme, whatIf).runs([0], 0, runs)[0]!;

describe('what if something happens', () => {
  it('answers with a line for every reading, each with its curve, and the jobs', async () => {
    const { answer } = await told(ifs, redPear, { ...RESCUE, runs: 40 });
    expect(answer.lines.map((line) => `${line.if} ${line.form}`)).toEqual([
      'skip begins',
      'frost sure',
      'frost never',
      'land all',
      'land seedlings',
      'land copied',
      'takeover nobody',
      'takeover longer',
      'hands twice',
      'leafTest every',
      'leafTest last',
    ]);
    expect(answer).toMatchObject({ question: 'ifs', done: true, clear: true, cannot: [], startYear: 2027, lastYear: 2057, futures: 40 });
    for (const line of answer.lines) {
      expect(line.outcome.futures).toBe(40);
      if (line.curve === null) continue;
      expect(line.curveFutures).toBe(40);
      expect(line.curve.map(({ year }) => year)).toEqual(line.curve.map(({ year }) => year).sort((a, b) => a - b));
      const here = line.curve.find(({ year }) => year === line.year)!;
      expect(here.chance.value, `${line.if} ${line.form}`).toBeCloseTo(line.outcome.chance.value, 12);
      expect(here.minusAsItStands).toEqual(line.minusAsItStands.chance);
      expect(here.trulyGood).toEqual(line.outcome.trulyGood);
      for (const { chance, minusAsItStands } of line.curve) expect(chance.value - answer.stands.chance.value).toBeCloseTo(minusAsItStands.value, 12);
    }
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  it('first roughly, then sharper: lines before curves', async () => {
    const { reports } = await told(ifs, redPear, { ...RESCUE, runs: 700, if: 'frost' });
    expect(reports.map(({ futures, done }) => [futures, done])).toEqual([
      [200, false],
      [200, false],
      [700, false],
      [700, true],
    ]);
    expect(reports.map(({ lines: [line] }) => [line!.curve!.length > 0, line!.curveFutures])).toEqual([
      [false, 0],
      [true, 200],
      [true, 200],
      [true, 600],
    ]);
  });

  it('one of them, in a year of one’s own; a year that it cannot have is left alone', async () => {
    for (const asked of ASKED.filter((id) => id !== 'jobs')) {
      const { answer } = await told(ifs, redPear, { ...RESCUE, runs: 30, if: asked, year: 2040 });
      expect(new Set(answer.lines.map((line) => line.if))).toEqual(new Set([asked]));
      expect(answer.jobs).toBeNull();
      for (const { year, form } of answer.lines) expect(year === 2040 || form === 'longer' || form === 'never', form).toBe(true);
    }
    const { answer } = await told(ifs, redPear, { ...RESCUE, runs: 30, if: 'jobs' });
    expect(answer.lines).toEqual([]);
    expect(answer.jobs!.length).toBeGreaterThan(2);
    expect(await ifs.ask(redPear, { plan: 'nobody' }, inlineFutures(), () => undefined)).toMatchObject({ cannotSay: 'noPlan', done: true });
  });

  it('is given up when it is no longer asked', async () => {
    const ended = new AbortController();
    const asked = ifs.ask(redPear, { ...RESCUE, runs: 100 }, inlineFutures(ended.signal), () => ended.abort());
    await expect(asked).rejects.toBeInstanceOf(GivenUp);
  });

  it('reads as an outline', async () => {
    const { answer } = await told(ifs, redPear, { ...RESCUE, runs: 30, if: 'frost' });
    const text = answerText({ answers: [answer] } as unknown as Parameters<typeof answerText>[0]);
    expect(text).toMatch(/minus as it stands:/);
    expect(text).not.toMatch(/undefined|\[object/);
  });
});

describe('each if', () => {
  const alone = bytesOf(new Simulator(redPear).runs([3], 0, 60));

  it.each<[IfId, string, number]>([
    ['land', 'all', 2058],
    ['land', 'seedlings', 2058],
    ['hands', 'twice', 2058],
    ['leafTest', 'every', 2058],
    ['leafTest', 'last', 2058],
    ['skip', 'begins', 2027],
    ['takeover', 'nobody', 2058],
    ['takeover', 'longer', 2057],
    ['frost', 'sure', 2058],
  ])('%s (%s) that comes too late to matter is the plan as it stands, byte for byte', (id, form, year) => {
    const ways = waysOf(redPear, 'wide-rescue', id);
    if (typeof ways === 'string') throw new Error(ways);
    expect(bytesOf([ways.find((way) => way.form === form)!.columns(year)])).toEqual(alone);
  });

  /** Later is never worse in the mean. A single future may flip where an earlier pick changes what follows; where nothing follows, none can. */
  it('land lost later, and stopping later, never lower the chance, in any future', () => {
    for (const [id, form] of [
      ['land', 'all'],
      ['takeover', 'nobody'],
    ] as const) {
      const ways = waysOf(redPear, 'wide-rescue', id);
      if (typeof ways === 'string') throw new Error(ways);
      const way = ways.find((one) => one.form === form)!;
      const proven = [2034, 2040, 2046, 2052, 2058].map((year) => way.columns(year, 150).run('yearProven'));
      for (const [later, columns] of proven.slice(1).entries())
        for (let i = 0; i < 150; i += 1) if (proven[later]![i]! >= 0) expect(columns[i]).toBe(proven[later]![i]);
    }
  });

  it('beginning later never raises the chance by more than the paired error', async () => {
    const { answer } = await told(ifs, redPear, { ...RESCUE, runs: 600, if: 'skip' });
    for (const { minusAsItStands: minus } of answer.lines[0]!.curve!) expect(minus.value).toBeLessThanOrEqual((FOUR * (minus.high - minus.low)) / 2);
    expect(answer.lines[0]!.curve!.at(-1)!.chance.value).toBe(0);
  });

  it('frost: for sure at most as stated, as stated at most never', async () => {
    const { answer } = await told(ifs, redPear, { ...RESCUE, runs: 400, if: 'frost' });
    const [falls, spares] = answer.lines;
    expect(falls!.minusAsItStands.chance.high).toBeLessThan(0);
    expect(spares!.minusAsItStands.chance.low).toBeGreaterThan(0);
    expect(spares!.curve).toBeNull();
  });

  it('going on for ten more years holds the chance by every year between', async () => {
    const { answer } = await told(ifs, { ...redPear, lastYear: 2042 }, { ...RESCUE, runs: 300, if: 'takeover' });
    const [nobody, longer] = answer.lines;
    expect(longer!.curve!.map(({ year }) => year)).toEqual(Array.from({ length: 11 }, (_, i) => 2042 + i));
    const chances = longer!.curve!.map(({ chance }) => chance.value);
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances[0]).toBeCloseTo(answer.stands.chance.value, 12);
    expect(longer!.minusAsItStands).toMatchObject({ clear: true, later: { value: 0 } });
    const until2047 = new Simulator({ ...redPear, lastYear: 2047 }).runs([3], 0, 300)[0]!.run('yearProven');
    expect(chances[5]).toBeCloseTo(until2047.filter((year) => year >= 0).length / 300, 12);
    expect(nobody!.curve!.at(-1)!.chance.value).toBeCloseTo(answer.stands.chance.value, 12);
  });

  it('land: what is proven before stands beside it; with all lost it is all', async () => {
    const { answer } = await told(ifs, redPear, { ...RESCUE, runs: 300, if: 'land', year: 2045 });
    const [all, seedlings, copied] = answer.lines;
    expect(all!.before).toEqual(all!.outcome.chance);
    for (const line of [seedlings!, copied!]) {
      expect(line.before).toEqual(all!.before);
      expect(line.outcome.chance.value).toBeGreaterThan(all!.outcome.chance.value);
    }
  });

  it('land is asked of each garden that the plan uses, where it uses several; not of founding trees that stand somewhere for certain', () => {
    const gardens = ['home', 'hill', 'far'].map((id) => ({ id, name: id, yearlyLoss: 0.01 }));
    const forms = (programme: Programme) => {
      const ways = waysOf(programme, 'wide-rescue', 'land');
      return typeof ways === 'string' ? ways : ways.map(({ form, garden }) => [form, garden]);
    };
    const lost = [
      ['all', null],
      ['copied', null],
    ];
    expect(forms({ ...redPear, gardens })).toEqual(lost);
    const trees = redPear.trees.map((one) => (one.id === 'mill-quince' ? { ...one, gardens: ['hill'] } : one));
    expect(forms({ ...redPear, gardens, trees })).toEqual([...lost, ['garden', 'home'], ['garden', 'hill']]);
  });

  it('a leaf test is for a gene that the goal needs, with the errors that some plan states; or it is said why there is none', async () => {
    const { answer } = await told(ifs, apple, { plan: 'by-sight', runs: 200, if: 'leafTest' });
    expect(linesOf(answer, 'leafTest').map(({ form, leafTest }) => [form, leafTest])).toEqual(
      ['every', 'last'].map((form) => [form, { gene: 'clean', name: 'clean', needed: 1, stated: true, hours: 0.1 }]),
    );
    // Seen by sight alone, one seedling in five is kept wrongly: a test that errs once in fifty makes more of the trees proven true.
    expect(answer.lines[0]!.trulyGoodMinus.chance.low).toBeGreaterThan(0);
    expect(waysOf(apple, 'leaf-test', 'leafTest')).toBe('testedAlready');
    const measuredOnly = { ...apple, goal: { ...apple.goal, conditions: apple.goal.conditions.filter(({ type }) => type === 'measured') } };
    expect(waysOf(measuredOnly, 'by-sight', 'leafTest')).toBe('noGene');
    const eitherGene = shown(1, {
      rules: [
        {
          name: 'either',
          weight: 1,
          needs: {
            needs: 'any',
            of: [
              { gene: 'r', copies: 1 },
              { gene: 's', copies: 1 },
            ],
          },
        },
      ],
    });
    const genes = ['r', 's'].map((id) => ({ id, name: id }));
    expect(waysOf(read(document({ genes, traits: [eitherGene], plans: plans([generation('g', 1)]) })), 'plan-0', 'leafTest')).toBe('noGene');
  });

  it('cannot be, where nothing of the kind is there', () => {
    const bare = read(document({ weather: { frostChance: 0.2, frostTakes: 0 }, plans: plans([generation('g', 1)]) }));
    expect(waysOf(bare, 'plan-0', 'frost')).toBe('noFrost');
    expect(waysOf(redPear, 'open-seed', 'frost')).not.toBe('noFrost');
    const gathered: Programme = { ...redPear, plans: redPear.plans.map((plan) => ({ ...plan, generations: plan.generations.slice(0, 1) })) };
    expect(waysOf(gathered, 'open-seed', 'hands')).toBe('noHands');
    expect(waysOf({ ...redPear, lastYear: redPear.startYear }, 'wide-rescue', 'land')).toBe('tooShort');
  });
});

describe('this spring’s jobs', () => {
  /** One flower a pair and spring sets with this chance; its seedling carries the trait, and is in time only if it is made this spring. */
  const SET = 0.3;
  const HOURS = { perFlower: 0.5, perFruit: 0.25, perGraft: 0.75 };
  const oneChance = (changes: Partial<Document> = {}, flowers = 1) =>
    read(
      document({
        lastYear: START + 7,
        kinds: [kind({ firstFruit: { years: 6 } })],
        trees: ['a', 'b', 'c'].map((id) => tree(id, { genes: { r: { copies: 2 } } })),
        crosses: [cross({ set: SET })],
        hours: HOURS,
        plans: plans([generation('g', flowers, { seedlings: 4, springs: 6 })]),
        ...changes,
      }),
    );
  const RUNS = 3000;

  it('the one cross is worth the whole chance, and as many flowers again what a second flower adds', async () => {
    const programme = oneChance();
    expect(
      new Simulator(programme)
        .runs([0], 0, 50)[0]!
        .run('yearProven')
        .some((year) => year === 7),
    ).toBe(true);
    const { answer } = await told(ifs, programme, { plan: 'plan-0', runs: RUNS, if: 'jobs' });
    const job = (of: string) => answer.jobs!.find(({ kind: what }) => what === of)!;
    expect(answer.jobs!.map(({ kind: what }) => what).sort()).toEqual(['cross', 'moreFlowers']);
    expectShare(Math.round(RUNS * job('cross').gain.value), RUNS, SET);
    // One flower of two: the second adds to the futures in which the first failed.
    expectShare(Math.round(RUNS * job('moreFlowers').gain.value), RUNS, SET * (1 - SET));
    expect(job('cross')).toMatchObject({ inPlan: true, clear: true, year: START, seed: 'a', pollen: 'b', generation: 'g' });
    expect(job('moreFlowers').inPlan).toBe(false);
    // Half an hour a flower, a quarter an hour for the fruit it may set.
    const width = (job('cross').hours.high - job('cross').hours.low) / 2 / Z95;
    expect(Math.abs(job('cross').hours.value - (0.5 + 0.25 * SET))).toBeLessThanOrEqual(4 * width);
    expect(job('cross').gainPerHour!.value).toBeCloseTo(job('cross').gain.value / job('cross').hours.value, 12);
    expect(job('cross')).toMatchObject({ rank: 1 });
    expect(job('moreFlowers')).toMatchObject({ rank: 2 });
  });

  it('two pairs alike have no clear difference: one rank', async () => {
    const programme = oneChance({ plans: plans([generation('g', 2, { seedlings: 4, pollen: [{ tree: 'b' }, { tree: 'c' }] })]) });
    const { answer } = await told(ifs, programme, { plan: 'plan-0', runs: 1000, if: 'jobs' });
    const pairs = answer.jobs!.filter(({ kind: what }) => what === 'cross');
    expect(pairs.map(({ seed, pollen }) => `${seed!} ${pollen!}`).sort()).toEqual(['a b', 'a c']);
    expect(pairs.map(({ rank }) => rank)).toEqual([1, 1]);
    // Left out, the other pair is still made: what is gained is what only this one would have given.
    for (const { gain } of pairs) expectShare(Math.round(1000 * gain.value), 1000, SET * (1 - SET));
  });

  it('a copy of a tree costs one graft, and gains what its loss would take', async () => {
    const lossy = oneChance({
      trees: ['a', 'b'].map((id) => tree(id, { yearlyLoss: id === 'a' ? 0.5 : 0, genes: { r: { copies: 2 } } })),
      lastYear: START + 8,
    });
    const { answer } = await told(ifs, lossy, { plan: 'plan-0', runs: RUNS, if: 'jobs' });
    const copies = answer.jobs!.filter(({ kind: what }) => what === 'copy');
    expect(copies).toHaveLength(1);
    expect(copies[0]).toMatchObject({ seed: 'a', inPlan: false, hours: { value: 0.75, low: 0.75, high: 0.75 }, clear: true });
    // Two springs are in time. The second fails if the one tree is lost in the winter between (½), with two copies only if both are (¼).
    expectMean([copies[0]!.gain.value, copies[0]!.gain.value], (1 - SET) * SET * 0.25, '', (4 * (copies[0]!.gain.high - copies[0]!.gain.low)) / 2 / Z95);
  });

  it('are those of the first spring in which anything can be crossed; gathered fruit and rescue grafts among them', () => {
    const kinds = (plan: string) => jobsOf(onlyPlan(redPear, plan), onlyPlan(redPear, plan).plans[0]!).map(({ kind: what, year }) => [what, year]);
    expect(kinds('wide-rescue')).toEqual([
      ['cross', 2027],
      ['moreFlowers', 2027],
      ['copy', 2027],
      ['copy', 2027],
      ['graft', 2028],
    ]);
    expect(kinds('open-seed').slice(0, 1)).toEqual([['gather', 2027]]);
    const young = oneChance({ trees: ['a', 'b'].map((id) => tree(id, { bearsFrom: START + 2, genes: { r: { copies: 2 } } })) });
    expect(jobsOf(young, young.plans[0]!).map(({ year }) => year)).toEqual([START + 2, START + 2]);
  });
});

describe('years of a curve', () => {
  it('are the first five, where curves are steep, and then span the whole, with the year of the line among them', () => {
    const years = Array.from({ length: 31 }, (_, i) => 2027 + i);
    const picked = spreadOut(years, 2041);
    expect(picked).toHaveLength(13);
    expect(picked.slice(0, 5)).toEqual([2027, 2028, 2029, 2030, 2031]);
    expect(Math.max(...picked.slice(1).map((year, i) => year - (picked[i] ?? year)))).toBeLessThanOrEqual(4);
    expect(picked.at(-1)).toBe(2057);
    expect(picked).toContain(2041);
    expect(spreadOut([2030, 2031], 2040)).toEqual([2030, 2031]);
    expect(spreadOut([], 2040)).toEqual([]);
  });
});
