import { describe, expect, it } from 'vitest';
import { copies } from '../../src/decisions/copies.ts';
import { graft } from '../../src/decisions/graft.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { FUTURES_A_TASK, poolFutures } from '../../src/decisions/pool.ts';
import { runInSteps } from '../../src/decisions/steps.ts';
import { onlyPlan, withRescue } from '../../src/decisions/variants.ts';
import { when } from '../../src/decisions/when.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { GivenUp, poolRunner, type Thread } from '../../src/workers/runner.ts';
import { bytesOf } from '../contract/bytes.ts';
import { dawdling, quick } from '../contract/threads.ts';
import { redPear } from './samples.ts';

const turned = withRescue(redPear, 'wide-rescue', ['d1'], null);
const pools: Readonly<Record<string, () => ReturnType<typeof poolRunner>>> = {
  'one thread, every message copied': () => poolRunner(() => inlineThread(true), 1),
  'three threads that answer out of order': () => poolRunner(dawdling, 3),
};

describe('futures of a variant', () => {
  const whole = bytesOf(new Simulator(turned).runs([3, 1], 50, 330));

  it('are the same bytes on the calling thread', async () => {
    expect(bytesOf(await inlineFutures().run(turned, [3, 1], 50, 330))).toEqual(whole);
  });

  for (const [name, make] of Object.entries(pools))
    it(`are the same bytes on ${name}, whatever is loaded`, async () => {
      const runner = make();
      expect(bytesOf(await poolFutures(runner).run(turned, [3, 1], 50, 330))).toEqual(whole);
      runner.load(quick);
      const both = await Promise.all([poolFutures(runner).run(turned, [3, 1], 50, 330), runner.runs([0], 0, 40)]);
      expect(bytesOf(both[0])).toEqual(whole);
      expect(bytesOf(both[1])).toEqual(bytesOf(new Simulator(quick).runs([0], 0, 40)));
      runner.end();
    });

  it('come out right however many variants take turns (more than a thread keeps compiled)', async () => {
    const runner = poolRunner(() => inlineThread(true), 2);
    const words = Array.from({ length: 11 }, (_, i) => ({ ...quick, shuffleWord: `word ${String(i % 10)}` }));
    const futures = poolFutures(runner);
    for (let turn = 0; turn < 2; turn += 1) {
      const columns = await Promise.all(words.map((programme) => futures.run(programme, [0], 0, 30)));
      columns.forEach((one, i) => expect(bytesOf(one)).toEqual(bytesOf(new Simulator(words[i]!).runs([0], 0, 30))));
    }
    runner.end();
  });

  it('in steps are the first so many, joined', async () => {
    const seen: number[] = [];
    const columns = await runInSteps(inlineFutures(), [{ programme: turned, plan: 3 }], [20, 70, 130], ([one], last) => {
      seen.push(one!.runs);
      expect(last).toBe(one!.runs === 130);
    });
    expect(seen).toEqual([20, 70, 130]);
    expect(bytesOf(columns)).toEqual(bytesOf(new Simulator(turned).runs([3], 0, 130)));
  });

  it('of a variant that cannot run: the error comes back, and the next is answered', async () => {
    const runner = poolRunner(() => inlineThread(true), 1);
    await expect(runner.variant(quick, [5], 0, 10)).rejects.toThrow(Error);
    expect(bytesOf(await runner.variant(quick, [0], 0, 10))).toEqual(bytesOf(new Simulator(quick).runs([0], 0, 10)));
    runner.end();
  });
});

/** Notes in which order a thread is asked; answers when told to. */
function watched(): { thread: () => Thread; asked: string[] } {
  const asked: string[] = [];
  return {
    asked,
    thread: () => {
      const inner = inlineThread(true);
      return {
        ...inner,
        post(request) {
          if (request.type !== 'load') asked.push(request.type);
          setTimeout(() => inner.post(request), request.type === 'load' ? 0 : 1);
        },
      };
    },
  };
}

describe('a question on the threads of the page', () => {
  it('waits for the loaded programme, but for the task that runs already', async () => {
    const { thread, asked } = watched();
    const runner = poolRunner(thread, 1);
    runner.load(quick);
    const question = poolFutures(runner).run(quick, [0], 0, 4 * FUTURES_A_TASK);
    await Promise.all([question, runner.runs([0], 0, 5), runner.runs([0], 5, 5)]);
    runner.end();
    expect(asked).toEqual(['variant', 'runs', 'runs', 'variant', 'variant', 'variant']);
  });

  it('outlives a newly loaded programme', async () => {
    const runner = poolRunner(dawdling, 2);
    runner.load(redPear);
    const question = poolFutures(runner).run(turned, [3], 0, 250);
    const old = expect(runner.runs([0], 0, 20)).rejects.toBeInstanceOf(GivenUp);
    runner.load(quick);
    expect(bytesOf(await question)).toEqual(bytesOf(new Simulator(turned).runs([3], 0, 250)));
    await old;
    runner.end();
  });

  it('is dropped at once when it is ended: nothing more is started, another question goes on', async () => {
    const { thread, asked } = watched();
    const runner = poolRunner(thread, 1);
    const ended = new AbortController();
    const refused = expect(poolFutures(runner, ended.signal).run(quick, [0], 0, 20 * FUTURES_A_TASK)).rejects.toBeInstanceOf(GivenUp);
    const other = poolFutures(runner).run(quick, [0], 7, 30);
    ended.abort();
    await refused;
    expect(bytesOf(await other)).toEqual(bytesOf(new Simulator(quick).runs([0], 7, 30)));
    expect(asked).toHaveLength(2);
    await expect(poolFutures(runner, ended.signal).run(quick, [0], 0, 10)).rejects.toBeInstanceOf(GivenUp);
    await expect(inlineFutures(ended.signal).run(quick, [0], 0, 10)).rejects.toBeInstanceOf(GivenUp);
    runner.end();
  });
});

describe('answers', () => {
  const alone = onlyPlan({ ...redPear, runs: 120 }, 'wide-rescue');
  it.each([
    ['graft', () => graft],
    ['when', () => when],
    ['copies', () => copies],
  ] as const)('to “%s” are the same on threads as on the calling thread', async (_, of) => {
    const question = of();
    const ask = (futures: ReturnType<typeof inlineFutures>) =>
      question.ask(alone, { plan: 'wide-rescue', runs: 120, withoutMap: true }, futures, () => undefined);
    const runner = poolRunner(dawdling, 3);
    expect(await ask(poolFutures(runner))).toEqual(await ask(inlineFutures()));
    runner.end();
  });
});
