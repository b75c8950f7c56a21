import { describe, expect, it } from 'vitest';
import type { Programme } from '../../src/model/programme.ts';
import { lessonKey } from '../../src/state/lessons/lesson-key.ts';
import { inlineLearning } from '../../src/state/lessons/inline.ts';
import { Learner, type LearningThread } from '../../src/state/lessons/learner.ts';
import type { FromLearner } from '../../src/state/lessons/protocol.ts';
import { LessonsStore } from '../../src/state/lessons/lessons-store.ts';
import { batch, counts, withLog } from '../seasonlog/orchard.ts';

const seasons = (fruits: number): Programme => withLog([batch('a', 2027, { counts: counts({ flowers: 100, fruits }) })]);

/** A pause that ends when it is told to. */
function pauses() {
  const waiting: (() => void)[] = [];
  return {
    waiting,
    pause: () => new Promise<void>((resolve) => waiting.push(resolve)),
    end: () => waiting.splice(0).forEach((resolve) => resolve()),
  };
}

const later = () => new Promise((resolve) => setTimeout(resolve, 0));
async function until(there: () => boolean): Promise<void> {
  for (let round = 0; round < 200 && !there(); round += 1) await later();
  expect(there()).toBe(true);
}

const hitsOf = (store: LessonsStore) => store.state.lessons?.rates.find(({ what }) => what === 'set')?.counts.hits;

describe('the lessons of the log', () => {
  it('depend on the month of bloom, by which counts are dated, and not on the spring that forecasts begin from', () => {
    const programme = seasons(20);
    const { log, limits } = programme;
    expect(lessonKey({ ...programme, limits: { ...limits, bloomMonth: 10 } })).not.toBe(lessonKey(programme));
    expect(lessonKey({ ...programme, limits: { ...limits, places: 7 } })).toBe(lessonKey(programme));
    expect(lessonKey({ ...programme, log: { ...log, forecastFrom: 2031 } })).toBe(lessonKey(programme));
  });

  it('are learned when somebody looks, stay while they are overtaken, and come anew after a pause', async () => {
    const { pause, end, waiting } = pauses();
    const [first, second] = [seasons(20), seasons(30)];
    const store = new LessonsStore(first, new Learner(inlineLearning), pause);
    await later();
    expect(store.state).toMatchObject({ lessons: null, learning: false });
    store.look();
    expect(store.state.learning).toBe(true);
    await until(() => store.state.lessons !== null);
    expect(store.state).toMatchObject({ of: first, stale: false, learning: false, failure: null });
    expect(hitsOf(store)).toBe(20);

    store.update(second);
    expect(store.state).toMatchObject({ of: first, stale: true, learning: true });
    expect(hitsOf(store)).toBe(20);
    await later();
    expect(waiting).toHaveLength(1);
    end();
    await until(() => !store.state.learning);
    expect(store.state).toMatchObject({ of: second, stale: false });
    expect(hitsOf(store)).toBe(30);
  });

  it('are there at once when the log is as it was, and for edits that they do not hang on', async () => {
    const { pause, waiting } = pauses();
    const first = seasons(20);
    const store = new LessonsStore(first, new Learner(inlineLearning), pause);
    store.look();
    await until(() => store.state.lessons !== null);
    const { lessons } = store.state;
    store.update(seasons(30));
    store.update(first);
    expect(store.state).toMatchObject({ of: first, stale: false, learning: false });
    const renamed = { ...first, title: 'Renamed' };
    store.update(renamed);
    expect(store.state).toMatchObject({ of: renamed, stale: false, learning: false });
    expect(store.state.lessons).toBe(lessons);
    expect(waiting).toHaveLength(1);
  });

  it('end their thread when nobody looks any more, and begin again with a new one', async () => {
    let ended = 0;
    const silent = (): LearningThread => ({ post: () => undefined, listen: () => undefined, end: () => (ended += 1) });
    let made = 0;
    const store = new LessonsStore(seasons(20), new Learner(() => ((made += 1) === 1 ? silent() : inlineLearning())), () => Promise.resolve());
    const leave = store.look();
    const other = store.look();
    leave();
    leave();
    expect(ended).toBe(0);
    other();
    await later();
    expect(store.state.learning).toBe(false);
    expect(ended).toBe(1);
    store.look();
    await until(() => store.state.lessons !== null);
    expect(made).toBe(2);
  });

  it('say why there are none, and can be asked for again', async () => {
    let broken: (error: Error) => void = () => undefined;
    const heard: ((message: FromLearner) => void)[] = [];
    let made = 0;
    const breaking = (): LearningThread => ({
      post: () => queueMicrotask(() => broken(new Error('out of memory'))),
      listen: (hear, whenBroken) => {
        heard.push(hear);
        broken = whenBroken;
      },
      end: () => undefined,
    });
    const store = new LessonsStore(seasons(20), new Learner(() => ((made += 1) === 1 ? breaking() : inlineLearning())), () => Promise.resolve());
    store.look();
    await until(() => store.state.failure !== null);
    expect(store.state).toMatchObject({ failure: 'out of memory', learning: false, lessons: null });
    store.retry();
    await until(() => store.state.lessons !== null);
    expect(store.state.failure).toBeNull();
  });
});
