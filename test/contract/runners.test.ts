import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { FACT_SETS, FUTURES_A_SET, analyse, type Progress } from '../../src/workers/analysis.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { poolRunner, type Runner } from '../../src/workers/runner.ts';
import { read } from '../engine/programmes.ts';
import { bytesOf } from './bytes.ts';
import { dawdling, quick } from './threads.ts';

const redPear = read(JSON.parse(readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8')));
const ALL = redPear.plans.map((_, p) => p);

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
