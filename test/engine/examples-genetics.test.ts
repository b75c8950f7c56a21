import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme, ShownTrait } from '../../src/model/programme.ts';
import { expectRatio, mean } from './agreement.ts';
import { expectMore, load, planOf, won } from './example-futures.ts';

const FUTURES = 400;

/** Futures of one plan of an example, changed. */
function run(programme: Programme, plan: string, change: (programme: Programme) => void = () => undefined) {
  const changed = structuredClone(programme);
  change(changed);
  return new Simulator(changed).runs([changed.plans.indexOf(planOf(changed, plan))], 0, FUTURES)[0]!;
}

function shownSurely({ traits }: Programme, id: string): void {
  const trait = traits.find((one): one is ShownTrait => one.id === id && one.type === 'shown')!;
  Object.assign(trait, { canShow: 1, seasonsShown: 1, falseShow: 0 });
}

describe('kaki-sweet', () => {
  const programme = load('kaki-sweet');
  const hiding = (copies: number) => (changed: Programme) => {
    shownSurely(changed, 'sweet');
    changed.trees.find(({ id }) => id === 'plum-moon')!.genes = { sweet: { copies } };
  };

  it('no tree that hides fewer than three copies gives a sweet seedling, and the more it hides the better', () => {
    const [two, three, four] = [2, 3, 4].map((copies) => won(run(programme, 'known-hider', hiding(copies))));
    expect(mean(two!)).toBe(0);
    expectMore(four!, three!, 'four copies against three');
  });

  it('sweet seedlings of a tree with four sweet copies, by a sweet one, are one in five: duplex × nulliplex, C(4,3)/C(6,3)', () => {
    // One seedling each, judged once, goal: sweet. Of futures in which it bore, a fifth have it.
    const columns = run(programme, 'known-hider', (changed) => {
      hiding(4)(changed);
      changed.goal = { ...changed.goal, conditions: [{ type: 'shown', trait: 'sweet', grade: 'any', atLeast: 1 }], crops: 1 };
      const [generation] = planOf(changed, 'known-hider').generations;
      Object.assign(generation!, { seedlings: 1, judge: 1, cover: 0, keep: { ...generation!.keep, conditions: [] } });
    });
    const bore = Array.from(columns.run('judgings'));
    const proven = won(columns);
    expectRatio(
      proven.map((hit, i) => (bore[i]! > 0 ? hit : 0)),
      bore,
      1 / 5,
      'sweet seedlings',
    );
  });
});

describe('cherry-selfing', () => {
  const programme = load('cherry-selfing');

  it('the other way round sets nothing: the style of S4′ still rejects S4, and S3 is shared', () => {
    const columns = run(programme, 'all-self', (changed) => {
      const [generation] = planOf(changed, 'all-self').generations;
      [generation!.seedParents, generation!.pollen] = [[{ tree: 'lone-setter' }], [{ tree: 'dark-vicar' }]];
    });
    expect(mean(columns.run('seedlings'))).toBe(0);
  });

  it('every seedling sets by itself where a form is shared, half where none is (Schmidt & Schulze 1998, Acta Hortic. 468:83–86)', () => {
    const [all, half] = ['all-self', 'half-self'].map((plan) => {
      const columns = run(programme, plan, (changed) => {
        shownSurely(changed, 'selfs');
        changed.goal = { ...changed.goal, conditions: [{ type: 'shown', trait: 'selfs', grade: 'any', atLeast: 1 }], crops: 1 };
        const [generation] = planOf(changed, plan).generations;
        Object.assign(generation!, { seedlings: 1, judge: 1, keep: { ...generation!.keep, conditions: [] } });
      });
      const bore = Array.from(columns.run('judgings'));
      return { bore, hits: won(columns) };
    });
    expect(all!.hits).toEqual(all!.bore);
    expectRatio(half!.hits, half!.bore, 1 / 2, 'self-fertile seedlings');
  });
});

describe('peach-apart', () => {
  const programme = load('peach-apart');

  it('is a matter of linkage: the same plan does better where the genes lie on two chromosomes', () => {
    const free = run(programme, 'selfed', (changed) => {
      for (const gene of changed.genes) delete gene.position;
    });
    expectMore(won(free), won(run(programme, 'selfed')), 'free against in repulsion');
  });
});
