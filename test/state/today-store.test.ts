import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { TodayStore, type TodayState } from '../../src/state/today-store.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { poolRunner } from '../../src/workers/runner.ts';
import { document, generation, plans, read, shown, START, tree } from '../engine/programmes.ts';

const programme = read(
  document({
    runs: 400,
    plans: plans([generation('g', 6)]),
    traits: [shown(2)],
    trees: [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })],
    log: { batches: [{ id: 'b', name: 'b', year: START, seed: { tree: 'a' }, pollen: { tree: 'b' }, counts: [{ stage: 'alive', count: 3, when: '2002' }] }] },
  }),
);

describe('the forecast from today beside the first one', () => {
  it('runs both on the same futures, first a quick look, and does not run them twice', async () => {
    const store = new TodayStore(poolRunner(() => inlineThread(true), 2));
    const seen: TodayState[] = [];
    store.subscribe((state) => seen.push(state));
    await store.ask(programme, START + 3);
    expect(seen.map(({ done }) => done)).toEqual([0, 300, 400]);
    const chance = (log: typeof programme.log) => {
      const years = new Simulator({ ...programme, log }).runs([0], 0, 400)[0]!.run('yearProven');
      return Array.from(years).filter((year) => year >= 0).length / 400;
    };
    expect(store.state).toMatchObject({ year: START + 3, stale: false, failure: null });
    expect(store.state.now?.plans[0]?.chance.value).toBe(chance({ ...programme.log, forecastFrom: START + 3 }));
    expect(store.state.first?.plans[0]?.chance.value).toBe(chance(programme.log));
    await store.ask(programme, START + 3);
    expect(seen).toHaveLength(3);
  });

  it('keeps old figures as stale while newer ones come, and drops what nobody waits for', async () => {
    const store = new TodayStore(poolRunner(() => inlineThread(), 1));
    await store.ask(programme, START + 3);
    const other = store.ask(programme, START + 4);
    expect(store.state).toMatchObject({ stale: true, year: START + 3 });
    store.leave();
    await other;
    expect(store.state).toMatchObject({ stale: true, year: START + 3 });
    await store.ask(programme, START + 4);
    expect(store.state).toMatchObject({ stale: false, year: START + 4 });
  });
});
