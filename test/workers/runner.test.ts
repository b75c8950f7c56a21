import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { analyse } from '../../src/workers/analysis.ts';
import { host } from '../../src/workers/host.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { GivenUp, poolRunner, type Thread } from '../../src/workers/runner.ts';
import { bytesOf } from '../contract/bytes.ts';
import { dawdling, quick } from '../contract/threads.ts';
import { document, generation, neverProven, plans, read } from '../engine/programmes.ts';

const example = read(JSON.parse(readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8')));

describe('runners', () => {
  it('give up what belongs to an older programme, and answer for the newer', async () => {
    const runner = poolRunner(dawdling, 2);
    const old = analyse(runner, example, [0, 1, 2, 3], { runs: 400, chunk: 20, secondPass: false }, () => undefined);
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

describe('a thread’s own answers', () => {
  it('need a programme first', () => {
    const answer = host();
    const said = answer({ type: 'runs', id: 4, plans: [0], from: 0, runs: 1 })?.reply;
    expect(said).toMatchObject({ type: 'failed', id: 4, name: 'Error' });
  });

  it('carry the number of their question, and hand their memory over', () => {
    const answer = host();
    expect(answer({ type: 'load', programme: quick })).toBeNull();
    const runs = answer({ type: 'runs', id: 9, plans: [0], from: 3, runs: 5 });
    expect(runs?.reply).toMatchObject({ type: 'runs', id: 9 });
    expect(runs?.transfer.length).toBeGreaterThanOrEqual(2);
    expect(answer({ type: 'factSets', id: 10, plans: [0], from: 0, sets: 1, futures: 2 })?.reply).toMatchObject({ type: 'factSets', id: 10 });
    expect(answer({ type: 'diary', id: 11, plan: 0, run: 2 })?.reply).toMatchObject({ type: 'diary', id: 11 });
  });
});
