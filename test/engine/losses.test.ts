import { describe, expect, it } from 'vitest';
import { PlanCheck } from '../reference/plan-checks/plan-checks.ts';
import { count, expectMean, expectShare } from './agreement.ts';
import {
  document,
  future,
  generation,
  kind,
  measured,
  neverProven,
  picksOf,
  plans,
  shown,
  stock,
  tree,
  type Document,
  type GenerationDocument,
} from './programmes.ts';

const SEEDLINGS = 500;
const goal = neverProven();

/** 500 seedlings of one cross, followed to first fruit. */
const raised = (changes: Partial<Document>, g: Partial<GenerationDocument> = {}): Document =>
  document({ goal, lastYear: 2008, plans: plans([generation('g', SEEDLINGS, { judge: 0, keep: { howMany: 1 }, ...g })]), ...changes });

describe('founding trees', () => {
  const pc8 = new PlanCheck('PC8');
  const winters = pc8.setup('winters');
  /** The source bears first in year 8, so that it pollinates only if it has come through eight winters. */
  const waiting = (source: Parameters<typeof tree>[1], changes: Partial<Document> = {}): Document =>
    document({ goal, lastYear: 2009, trees: [tree('a', { bearsFrom: 2000 + winters, ...source }), tree('b')], plans: plans([generation('g', 1)]), ...changes });
  const lives = (input: Document, runs = 10_000) => count(future(input, runs).generation(0, 'firstPollination'), (year) => year === winters);

  it(pc8.name, () => {
    expectShare(lives(waiting({ yearlyLoss: pc8.setup('yearlyLoss') })), 10_000, pc8.expected('alive'));
  });

  it('with three copies are lost when the last copy is', () => {
    expectShare(lives(waiting({ yearlyLoss: 0.2, copies: 3 })), 10_000, 1 - (1 - 0.8 ** 8) ** 3);
  });

  it('copies are dealt in turn over gardens, and a garden is lost as a whole', () => {
    const gardens = [
      { id: 'home', name: 'home', yearlyLoss: 0.05 },
      { id: 'far', name: 'far', yearlyLoss: 0.1 },
      { id: 'safe', name: 'safe', yearlyLoss: 0 },
    ];
    // Three copies over two gardens: two at home, one far away. Its partner stands where nothing is lost.
    const [home, far, copy] = [0.95 ** 8, 0.9 ** 8, 0.8 ** 8];
    const lost = (1 - home * (1 - (1 - copy) ** 2)) * (1 - far * copy);
    const programme = waiting({ yearlyLoss: 0.2, copies: 3, gardens: ['home', 'far'] }, { gardens });
    programme.trees[1] = tree('b', { gardens: ['safe'] });
    expectShare(lives(programme, 40_000), 40_000, 1 - lost);
  });

  it('and everything else in a garden share its one draw a year', () => {
    const gardens = [{ id: 'home', name: 'home', yearlyLoss: 0.08 }];
    // Both trees have to be there in year 8: one draw a year, not two.
    const both = waiting({ gardens: ['home'] }, { gardens });
    both.trees[1] = tree('b', { gardens: ['home'], bearsFrom: 2000 + winters });
    expectShare(lives(both), 10_000, 0.92 ** 8, 'two trees of one garden');
    // Seedlings stand in the home garden unless said.
    const seedlings = (garden?: string) => raised({ gardens: [...gardens, { id: 'far', name: 'far', yearlyLoss: 0 }] }, garden === undefined ? {} : { garden });
    const fruiting = future(seedlings(), 10_000).run('fruiting');
    expectShare(
      count(fruiting, (n) => n === SEEDLINGS),
      10_000,
      0.92 ** 5,
      'seedlings at home',
    );
    expect(new Set(fruiting)).toEqual(new Set([0, SEEDLINGS]));
    expect(new Set(future(seedlings('far'), 20).run('fruiting'))).toEqual(new Set([SEEDLINGS]));
  });

  it('a tree without a stated garden stands at home, in the first', () => {
    const gardens = [
      { id: 'home', name: 'home', yearlyLoss: 0.15 },
      { id: 'safe', name: 'safe', yearlyLoss: 0 },
    ];
    const programme = waiting({}, { gardens });
    programme.trees[1] = tree('b', { gardens: ['safe'] });
    expectShare(lives(programme), 10_000, 0.85 ** 8);
  });

  const pc9 = new PlanCheck('PC9');
  it(pc9.name, () => {
    const weather = { frostChance: pc9.setup('frost'), frostTakes: 1, springLuckSet: 0, springLuckGermination: 0 };
    const columns = future(raised({ weather }, { springs: pc9.setup('springs') }), 10_000);
    expectShare(
      count(columns.run('fruits'), (n) => n === 0),
      10_000,
      pc9.expected('bothLost'),
    );
    expectMean(columns.run('fruiting'), SEEDLINGS * (1 - pc9.expected('bothLost')));
  });
});

describe('picks and their backups', () => {
  /** One pick in the spring of year 6; the next generation starts in year 12 if it can. */
  const kept = (yearlyLoss: number, backup?: GenerationDocument['backup'], changes: Partial<Document> = {}): Document => {
    const first = generation('f1', 1, { judge: 0, keep: { howMany: 1 }, goOn: { when: 'enough', count: 2, atLatest: 12 }, ...(backup ? { backup } : {}) });
    const second = generation('f2', 1, { seedParents: picksOf('f1'), judge: 0 });
    // Losses only once they are picks: the kind's seedlings do not die before first fruit in year 6.
    return document({ goal, lastYear: 2013, plans: plans([first, second]), kinds: [kind({ yearlyLoss: { value: yearlyLoss } })], ...changes });
  };
  const goesOn = (input: Document, runs = 20_000) => future(input, runs);

  it('a pick dies at the loss of its kind', () => {
    const columns = goesOn(kept(0.1));
    // Alive at first fruit: four later winters; then six more.
    expectShare(
      count(columns.generation(1, 'firstPollination'), (year) => year === 12),
      20_000,
      0.9 ** 10,
    );
    expectShare(
      count(columns.generation(0, 'kept'), (n) => n === 1),
      20_000,
      0.9 ** 4,
    );
  });

  it('is dead when its tree and all its backups are: grafted the winter after it was picked, after that winter’s losses', () => {
    const stocks = [stock({ yearlyLoss: 0.25 })];
    const columns = goesOn(kept(0.2, { copies: 2, stock: 'stock' }, { stocks }));
    const picked = count(columns.generation(0, 'kept'), (n) => n === 1);
    // First winter alone; after each winter in which the tree or a copy lives, lost copies are replaced (they all take).
    let [standing, copiesOnly] = [0.8, 0];
    for (let winter = 8; winter <= 12; winter += 1) [standing, copiesOnly] = [standing * 0.8, (standing * 0.2 + copiesOnly) * (1 - 0.25 ** 2)];
    const alive = standing + copiesOnly;
    expectShare(
      count(columns.generation(1, 'firstPollination'), (year) => year === 12),
      picked,
      alive,
    );
  });

  it('the best are chosen in the spring in which the next generation starts, of those that came through the winter', () => {
    const goOn = { when: 'allJudged' as const };
    const first = (rank: 'first' | 'index') => generation('f1', 2, { keep: { howMany: 1, rank, weights: { size: 1 } }, goOn });
    const started = (rank: 'first' | 'index') => {
      const second = generation('f2', 1, { seedParents: picksOf('f1'), judge: 0 });
      const columns = future(
        document({ goal, lastYear: 2009, traits: [shown(2), measured()], kinds: [kind({ yearlyLoss: 0.3 })], plans: plans([first(rank), second]) }),
        20_000,
      );
      const both = Array.from(columns.generation(0, 'fruiting'), (n, run) => (n === 2 ? columns.generation(1, 'firstPollination')[run]! : NaN)).filter(
        (year) => year === year,
      );
      return { hits: count(both, (year) => year === 7), of: both.length };
    };
    const [index, order] = [started('index'), started('first')];
    expectShare(index.hits, index.of, 1 - 0.3 ** 2, 'best by index: either will do');
    expectShare(order.hits, order.of, 0.7, 'first come: picked when judged, and not replaced');
  });

  it('a backup that does not take is tried again the next winter', () => {
    const stocks = [stock({ takeTender: 0.3, takeRipe: 0.5 })];
    const columns = goesOn(kept(0.2, { copies: 1, stock: 'stock' }, { stocks }));
    const picked = count(columns.generation(0, 'kept'), (n) => n === 1);
    // Year by year: the tree alone (no copy yet), or with a copy that nothing kills (take ½ each winter, after losses).
    let [alone, safe] = [1, 0];
    for (let winter = 7; winter <= 12; winter += 1) [alone, safe] = [alone * 0.8 * 0.5, safe + alone * 0.8 * 0.5];
    expectShare(
      count(columns.generation(1, 'firstPollination'), (year) => year === 12),
      picked,
      alone + safe,
    );
  });

  it('a backup in another garden outlives the home garden', () => {
    const gardens = [
      { id: 'home', name: 'home', yearlyLoss: 0.15 },
      { id: 'far', name: 'far', yearlyLoss: 0.05 },
      { id: 'safe', name: 'safe', yearlyLoss: 0 },
    ];
    const trees = [tree('a', { gardens: ['safe'] }), tree('b', { gardens: ['safe'] })];
    const columns = goesOn(kept(0, { copies: 1, stock: 'stock', garden: 'far' }, { stocks: [stock()], gardens, trees }));
    const picked = count(columns.generation(0, 'kept'), (n) => n === 1);
    expectShare(picked, 20_000, 0.85 ** 5, 'home garden until first fruit');
    let [standing, copyOnly] = [0.85, 0];
    for (let winter = 8; winter <= 12; winter += 1) [standing, copyOnly] = [standing * 0.85, (standing * 0.15 + copyOnly) * 0.95];
    expectShare(
      count(columns.generation(1, 'firstPollination'), (year) => year === 12),
      picked,
      standing + copyOnly,
      'tree at home, copy far away',
    );
  });
});
