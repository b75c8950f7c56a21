import { describe, expect, it } from 'vitest';
import { Asking, type AskingThread } from '../../src/decisions/asking/asking.ts';
import { inlineAsking } from '../../src/decisions/asking/inline.ts';
import { copies } from '../../src/decisions/copies.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { GivenUp, poolRunner } from '../../src/workers/runner.ts';
import { dawdling } from '../contract/threads.ts';
import { redPear } from './samples.ts';

const never = new AbortController().signal;
const asked = { plan: 'wide-rescue', runs: 250 };

describe('a question on a thread of its own', () => {
  it('has the same answer as on the calling thread, every message copied and futures out of order', async () => {
    const runner = poolRunner(dawdling, 3);
    const asking = new Asking(inlineAsking, runner);
    const partial: number[] = [];
    const answer = await asking.ask('copies', redPear, asked, ({ futures }) => partial.push(futures), never);
    expect(answer).toEqual(await copies.ask(redPear, asked, inlineFutures(), () => undefined));
    expect(partial).toEqual([200, 250]);
    runner.end();
  });

  it('ends as soon as nobody waits for it: it reports no more, and no more futures are run for it', async () => {
    let started = 0;
    const thread = inlineThread();
    const runner = poolRunner(
      () => ({
        ...thread,
        post(request) {
          started += 1;
          thread.post(request);
        },
      }),
      1,
    );
    const asking = new Asking(inlineAsking, runner);
    const end = new AbortController();
    const late: number[] = [];
    const refused = asking.ask(
      'copies',
      redPear,
      { plan: 'wide-rescue', runs: 4000 },
      ({ futures }) => {
        late.push(futures);
        end.abort();
      },
      end.signal,
    );
    await expect(refused).rejects.toBeInstanceOf(GivenUp);
    const before = started;
    await expect(asking.ask('copies', redPear, { plan: 'open-seed', runs: 50 }, () => undefined, never)).resolves.toMatchObject({ done: true, futures: 50 });
    expect(late).toEqual([200]);
    // Seven ways of fifty futures each, and at most the one task that was under way.
    expect(started - before).toBeLessThanOrEqual(8);
    runner.end();
  });

  it('says what went wrong, and a thread that broke is replaced at the next question', async () => {
    const runner = poolRunner(() => inlineThread(), 1);
    let made = 0;
    let broken: (error: Error) => void = () => undefined;
    const fragile = (threads: number): AskingThread => {
      made += 1;
      const thread = inlineAsking(threads);
      return {
        ...thread,
        listen(heard, breaks) {
          broken = breaks;
          thread.listen(heard, breaks);
        },
      };
    };
    const asking = new Asking(fragile, runner);
    const lost = asking.ask('copies', redPear, asked, () => undefined, never);
    broken(new Error('out of memory'));
    await expect(lost).rejects.toThrow('out of memory');
    await expect(asking.ask('copies', redPear, { ...asked, runs: 20 }, () => undefined, never)).resolves.toMatchObject({ done: true });
    expect(made).toBe(2);
    runner.end();
  });

  it('makes no more than 20,000 futures of each way, however many the programme asks for', { timeout: 20_000 }, async () => {
    const runner = poolRunner(() => inlineThread(), 1);
    // One year long, so that the futures cost little.
    const short = { ...redPear, lastYear: redPear.startYear, runs: 1_000_000 };
    const answer = await new Asking(inlineAsking, runner).ask('open', short, { plan: 'open-seed' }, () => undefined, never);
    expect(answer).toMatchObject({ done: true, futures: 20_000 });
    runner.end();
  });

  it('answers that a plan is not there', async () => {
    const runner = poolRunner(() => inlineThread(), 1);
    const answer = await new Asking(inlineAsking, runner).ask('copies', redPear, { plan: 'nowhere' }, () => undefined, never);
    expect(answer).toEqual({ question: 'copies', plan: 'nowhere', done: true, cannotSay: 'noPlan' });
    runner.end();
  });
});
