import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { FACT_SETS, FUTURES_A_SET, analyse, type Progress } from '../../src/workers/analysis.ts';
import { GivenUp, inlineThread, poolRunner, type Runner, type Thread } from '../../src/workers/runner.ts';
import { document, generation, neverProven, picksOf, plans, read } from '../engine/programmes.ts';
import { bytesOf } from './bytes.ts';

const redPear = read(JSON.parse(readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8')));
const ALL = redPear.plans.map((_, p) => p);

/** Three in a second generation, quick to run: for the second pass. */
const quick = read(
  document({
    lastYear: 2012,
    plans: plans([
      generation('f1', 2, { judge: 0, keep: { howMany: 2 }, goOn: { when: 'enough', count: 2 } }),
      generation('f2', 3, { seedParents: picksOf('f1'), pollen: picksOf('f1') }),
    ]),
  }),
);

/** Answers late, and later for every second request: replies of several threads arrive out of order. */
function dawdling(): Thread {
  const thread = inlineThread(true);
  let asked = 0;
  return {
    ...thread,
    post(request) {
      asked += 1;
      if (request.type === 'load') thread.post(request);
      else setTimeout(() => thread.post(request), asked % 2 === 0 ? 3 : 0);
    },
  };
}

const runners: Readonly<Record<string, () => Runner>> = {
  'inline, one thread': () => poolRunner(() => inlineThread(), 1),
  'serialising, one thread': () => poolRunner(() => inlineThread(true), 1),
  'serialising, three threads': () => poolRunner(() => inlineThread(true), 3),
  'three threads that answer out of order': () => poolRunner(dawdling, 3),
};

describe('the same bytes', () => {
  const whole = bytesOf(new Simulator(redPear).runs(ALL, 0, 500));

  for (const [name, make] of Object.entries(runners))
    for (const chunk of [500, 64, 7])
      it(`${name}, ${String(chunk)} futures in a task`, async () => {
        const runner = make();
        const { columns, factSets } = await analyse(runner, redPear, ALL, { runs: 500, chunk, secondPass: false }, () => undefined);
        runner.end();
        expect(bytesOf(columns)).toEqual(whole);
        expect(factSets).toEqual([null, null, null, null]);
      });

  it('of the second pass, however its sets are dealt out', async () => {
    const alone = new Simulator(quick).factSets([0], 0, FACT_SETS, FUTURES_A_SET);
    for (const [make, setsInTask] of [
      [runners['serialising, one thread']!, 2],
      [runners['three threads that answer out of order']!, 7],
      [runners['serialising, three threads']!, 100],
    ] as const) {
      const runner = make();
      const { factSets } = await analyse(runner, quick, [0], { runs: 10, setsInTask }, () => undefined);
      runner.end();
      expect(factSets).toHaveLength(1);
      expect(factSets[0]).toEqual({ provenBy: alone, sets: FACT_SETS, futures: FUTURES_A_SET });
    }
  });

  it('as results stream in: every report is the first so many futures', async () => {
    const runner = runners['three threads that answer out of order']!();
    const seen: Progress[] = [];
    await analyse(runner, redPear, [3, 1], { runs: 300, chunk: 20, secondPass: false }, (progress) => {
      seen.push(progress);
      const { runs } = progress;
      expect(bytesOf(progress.columns())).toEqual(bytesOf(new Simulator(redPear).runs([3, 1], 0, runs)));
    });
    runner.end();
    const counts = seen.map(({ runs }) => runs);
    expect(counts.at(-1)).toBe(300);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(counts.length).toBeGreaterThan(2);
  });

  it('of a diary, on any runner', async () => {
    const runner = runners['serialising, three threads']!();
    runner.load(redPear);
    expect(await runner.diary(3, 17)).toEqual(new Simulator(redPear).diary(3, 17));
    runner.end();
  });
});

describe('runners', () => {
  it('give up what belongs to an older programme, and answer for the newer', async () => {
    const runner = poolRunner(dawdling, 2);
    const old = analyse(runner, redPear, ALL, { runs: 400, chunk: 20, secondPass: false }, () => undefined);
    const refused = expect(old).rejects.toBeInstanceOf(GivenUp);
    const { columns } = await analyse(runner, quick, [0], { runs: 100, chunk: 9, secondPass: false }, () => undefined);
    await refused;
    runner.end();
    expect(bytesOf(columns)).toEqual(bytesOf(new Simulator(quick).runs([0], 0, 100)));
  });

  it('give up a second pass as well when the newer programme comes with the last report', async () => {
    const runner = poolRunner(() => inlineThread(true), 1);
    const other = read(document({ goal: neverProven(), lastYear: 2012, plans: plans([generation('g', 3)]) }));
    const old = analyse(runner, quick, [0], { runs: 50 }, ({ runs }) => {
      if (runs === 50) runner.load(other);
    });
    await expect(old).rejects.toBeInstanceOf(GivenUp);
    runner.end();
  });

  it('pass an error of a thread on with its name and words, and go on', async () => {
    const runner = poolRunner(() => inlineThread(true), 1);
    runner.load(quick);
    await expect(runner.runs([5], 0, 10)).rejects.toThrow(Error);
    expect(bytesOf(await runner.runs([0], 0, 10))).toEqual(bytesOf(new Simulator(quick).runs([0], 0, 10)));
    runner.end();
  });

  it('replace a thread that breaks: its task fails, the rest is done by the new one', async () => {
    let broken = 0;
    const fragile = (): Thread => {
      const thread = inlineThread(true);
      let report: (error: Error) => void = () => undefined;
      return {
        ...thread,
        listen(reply, breaks) {
          report = breaks;
          thread.listen(reply, breaks);
        },
        post(request) {
          if (request.type === 'runs' && request.from === 20 && broken === 0) {
            broken += 1;
            queueMicrotask(() => report(new Error('out of memory')));
          } else thread.post(request);
        },
      };
    };
    const runner = poolRunner(fragile, 1);
    runner.load(quick);
    const parts = await Promise.allSettled([0, 10, 20, 30].map((from) => runner.runs([0], from, 10)));
    runner.end();
    expect(parts.map(({ status }) => status)).toEqual(['fulfilled', 'fulfilled', 'rejected', 'fulfilled']);
    expect(broken).toBe(1);
    const last = parts[3]!;
    if (last.status === 'fulfilled') expect(bytesOf(last.value)).toEqual(bytesOf(new Simulator(quick).runs([0], 30, 10)));
  });
});
