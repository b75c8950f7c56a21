import { describe, expect, it } from 'vitest';
import type { Answer, AskOptions, NoAnswer } from '../../src/decisions/question.ts';
import { setAt } from '../../src/model/edits.ts';
import type { Programme } from '../../src/model/programme.ts';
import { AnswersStore } from '../../src/state/answers-store.ts';
import { GivenUp } from '../../src/workers/runner.ts';
import { redPear } from '../decisions/samples.ts';
import { read } from '../engine/programmes.ts';

interface Call {
  readonly question: string;
  readonly programme: Programme;
  readonly options: AskOptions;
  readonly report: (partial: Answer) => void;
  readonly done: (answer: Answer | NoAnswer) => void;
  readonly fail: (error: Error) => void;
  readonly ended: AbortSignal;
}

/** Notes what is asked, and answers when the test says so. */
function desk() {
  const calls: Call[] = [];
  return {
    calls,
    ask: (question: string, programme: Programme, options: AskOptions, report: (partial: Answer) => void, ended: AbortSignal) =>
      new Promise<Answer | NoAnswer>((done, fail) => {
        ended.addEventListener('abort', () => fail(new GivenUp('ended')));
        calls.push({ question, programme, options, report, done, fail, ended });
      }),
  };
}

const answer = (question: string, futures: number): Answer => ({ question, plan: 'wide-rescue', done: futures > 100, futures, clear: true, cannotSay: null });
const wide: AskOptions = { plan: 'wide-rescue' };
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const last = <T>(list: readonly T[]): T => {
  const entry = list.at(-1);
  if (entry === undefined) throw new Error('Nothing was asked.');
  return entry;
};
const edited = (path: readonly (string | number)[], value: unknown) => read(setAt(redPear, [...path], value));

describe('questions asked of the document', () => {
  it('are asked one after another, and their answers sharpen', async () => {
    const { calls, ask } = desk();
    const store = new AnswersStore(redPear, { ask });
    store.ask('graft', wide, true);
    store.ask('when', wide, true);
    expect(calls.map(({ question }) => question)).toEqual(['graft']);
    expect(store.state.get('when')).toMatchObject({ answer: null, asking: true });
    last(calls).report(answer('graft', 100));
    expect(store.state.get('graft')).toMatchObject({ answer: { futures: 100 }, asking: true, stale: false });
    last(calls).done(answer('graft', 4000));
    await settled();
    expect(store.state.get('graft')).toMatchObject({ answer: { futures: 4000 }, asking: false });
    expect(calls.map(({ question }) => question)).toEqual(['graft', 'when']);
  });

  it('are not asked twice', async () => {
    const { calls, ask } = desk();
    const store = new AnswersStore(redPear, { ask });
    store.ask('graft', wide, true);
    store.ask('graft', wide, true);
    last(calls).done(answer('graft', 4000));
    await settled();
    store.ask('graft', wide, true);
    expect(calls).toHaveLength(1);
    store.ask('graft', { plan: 'open-seed' }, true);
    expect(calls).toHaveLength(2);
    expect(store.state.get('graft')).toMatchObject({ stale: true, asking: true });
  });

  it('are asked anew when what they depend on has changed, and only then', async () => {
    const { calls, ask } = desk();
    const store = new AnswersStore(redPear, { ask });
    store.ask('graft', wide, true);
    store.update(edited(['title'], 'Another title'));
    expect(calls).toHaveLength(1);
    expect(last(calls).ended.aborted).toBe(false);
    last(calls).done(answer('graft', 4000));
    await settled();
    const later = edited(['lastYear'], redPear.lastYear + 1);
    store.update(later);
    expect(store.state.get('graft')).toMatchObject({ stale: true, asking: true });
    expect(last(calls).programme).toBe(later);
    // Undone before it was answered: the answer that is there is right again.
    store.update(redPear);
    expect(last(calls).ended.aborted).toBe(true);
    await settled();
    expect(store.state.get('graft')).toMatchObject({ stale: false, asking: false, answer: { futures: 4000 } });
    expect(calls).toHaveLength(2);
  });

  it('that look at the other plans too are overtaken by a change of any of them; others by their own plan’s alone', async () => {
    for (const [question, overtaken] of [
      ['unknowns', true],
      ['ifs', true],
      ['better', true],
      ['graft', false],
    ] as const) {
      const { calls, ask } = desk();
      const store = new AnswersStore(redPear, { ask });
      store.ask(question, wide, false);
      last(calls).done(answer(question, 4000));
      await settled();
      const other = redPear.plans.findIndex(({ id }) => id !== 'wide-rescue');
      store.update(edited(['plans', other, 'generations', 0, 'flowers'], 17));
      expect(store.state.get(question), question).toMatchObject({ stale: overtaken, asking: false });
    }
  });

  it('that are much work become overtaken, and are not begun again by themselves', async () => {
    const { calls, ask } = desk();
    const store = new AnswersStore(redPear, { ask });
    store.ask('graft', wide, false);
    last(calls).done(answer('graft', 4000));
    await settled();
    store.update(edited(['lastYear'], redPear.lastYear + 1));
    expect(store.state.get('graft')).toMatchObject({ stale: true, asking: false });
    expect(calls).toHaveLength(1);
    store.ask('graft', wide, false);
    expect(calls).toHaveLength(2);
  });

  it('that would be asked otherwise now are overtaken, until somebody asks', async () => {
    const { calls, ask } = desk();
    const store = new AnswersStore(redPear, { ask });
    store.reword('graft', wide);
    expect(store.state.get('graft')).toBeUndefined();
    store.ask('graft', wide, false);
    last(calls).done(answer('graft', 4000));
    await settled();
    store.reword('graft', { plan: 'open-seed' });
    expect(store.state.get('graft')).toMatchObject({ stale: true, asking: false });
    store.reword('graft', wide);
    expect(store.state.get('graft')).toMatchObject({ stale: false, asking: false });
    expect(calls).toHaveLength(1);
    store.reword('graft', { plan: 'open-seed' });
    store.ask('graft', { plan: 'open-seed' }, false);
    expect(last(calls).options.plan).toBe('open-seed');
  });

  it('end when nobody looks any more, and the next has its turn', async () => {
    const { calls, ask } = desk();
    const store = new AnswersStore(redPear, { ask });
    store.ask('graft', wide, true);
    store.ask('when', wide, true);
    last(calls).report(answer('graft', 100));
    store.leave('graft');
    await settled();
    expect(calls.map(({ question, ended }) => [question, ended.aborted])).toEqual([
      ['graft', true],
      ['when', false],
    ]);
    expect(store.state.get('graft')).toMatchObject({ asking: false, answer: { futures: 100 } });
    // Half an answer is finished when somebody looks again.
    store.ask('graft', wide, true);
    last(calls).done(answer('when', 4000));
    await settled();
    expect(last(calls).question).toBe('graft');
  });

  it('say why they stopped, and can be tried again', async () => {
    const { calls, ask } = desk();
    const store = new AnswersStore(redPear, { ask });
    store.ask('graft', wide, true);
    last(calls).fail(new Error('out of memory'));
    await settled();
    expect(store.state.get('graft')).toMatchObject({ failure: 'out of memory', asking: false });
    store.ask('graft', wide, true);
    expect(calls).toHaveLength(1);
    store.retry('graft');
    expect(calls).toHaveLength(2);
    expect(store.state.get('graft')).toMatchObject({ failure: null, asking: true });
  });
});
