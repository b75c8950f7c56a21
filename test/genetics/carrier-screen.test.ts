import { describe, expect, it } from 'vitest';
import { carrierScreen, carrierScreens, type CarrierScreen } from '../../src/genetics/carrier-screen.ts';
import { dosagesInPopulation } from '../../src/genetics/polysomic.ts';
import { carrierIfNotShown } from '../../src/genetics/population.ts';
import { programmeSchema, type Programme, type ShownTrait } from '../../src/model/programme.ts';
import kaki from '../../sims/examples/kaki-sweet.json';

/** Trees of two sets and a recessive that always shows: A seen not to show it, B never watched, C with an empty test cross, T with both copies. */
function recessive(changes: { readonly copies?: number; readonly trees?: Record<string, object>; readonly kind?: object } = {}): Programme {
  const { copies = 2, trees = {}, kind = {} } = changes;
  const tree = (id: string, more: object) => ({
    id,
    name: id.toUpperCase(),
    kind: 'pear',
    flowers: 100,
    genes: { r: { frequency: 0.2 } },
    ...more,
    ...trees[id],
  });
  return programmeSchema.parse({
    ...kaki,
    goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1 },
    genes: [{ id: 'r', name: 'R' }],
    traits: [{ type: 'shown', id: 'red', name: 'red', rules: [{ name: 'two', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies }] } }] }],
    kinds: [{ id: 'pear', name: 'pear', firstFruit: { years: 5 }, ...kind }],
    trees: [
      tree('a', { seen: { red: { showed: 0, seasons: 3 } } }),
      tree('b', {}),
      tree('c', { seen: { red: { showed: 0, seasons: 3 } }, testCrosses: { red: { showed: 0, of: 3 } } }),
      tree('t', { genes: { r: { copies: 2 } } }),
    ],
    pools: [],
    defaultPool: undefined,
    crosses: [{ id: 'x', name: 'pear × pear', seed: 'pear', pollen: 'pear', gives: 'pear', set: 0.2, germination: 0.5 }],
    plans: [
      {
        ...kaki.plans[0],
        generations: [
          {
            id: 'g',
            name: 'cross',
            seedParents: [{ tree: 'a' }],
            pollen: [{ tree: 't' }],
            flowers: 10,
            seedlings: 5,
            springs: 1,
            judge: 1,
            keep: { howMany: 1 },
          },
        ],
      },
    ],
  });
}
const screen = (programme: Programme): CarrierScreen => carrierScreen(programme, programme.traits[0] as ShownTrait);
const of = ({ suspects }: CarrierScreen, id: string) => suspects.find(({ tree }) => tree.id === id)!;
const odds = (p: number): number => p / (1 - p);

describe('which trees may hide a recessive', () => {
  it('is 2q/(1 + q) of trees seen not to show it (Li 1955), and odds halve for each test-cross seedling', () => {
    const found = screen(recessive());
    expect(of(found, 'a').carries).toBeCloseTo(carrierIfNotShown(0.2), 12);
    expect(of(found, 'a').right).toBe(0);
    expect(odds(of(found, 'c').carries)).toBeCloseTo(odds(carrierIfNotShown(0.2)) / 8, 12);
    // Never watched: it may have it, too.
    expect(of(found, 'b').right).toBeCloseTo(0.04, 12);
    expect(of(found, 'b').carries).toBeCloseTo(0.36, 12);
  });

  it('puts the tree that each seedling tells most of first, and names the tester with its years to fruit', () => {
    const found = screen(recessive());
    expect(found.suspects.map(({ tree }) => tree.id)).toEqual(['b', 'a', 'c']);
    expect(found.oneIsEnough).toBe('no');
    // One spring to germination and five seasons to fruit.
    expect(of(found, 'a').testers).toMatchObject([{ tree: { id: 't' }, years: 6 }]);
    expect(of(found, 'a').test.seedlings).toBe(4);
    expect(odds(of(found, 'a').test.ifNone)).toBeCloseTo(odds(carrierIfNotShown(0.2)) / 16, 12);
  });

  it('has no tester in a tree that only gives pollen to males, and none where nothing has all copies', () => {
    expect(of(screen(recessive({ trees: { a: { sex: 'male' }, t: { sex: 'male' } } })), 'a').testers).toEqual([]);
    expect(of(screen(recessive({ trees: { t: { genes: { r: { copies: 1 } } } } })), 'a').testers).toEqual([]);
  });

  it('says that one copy is enough, where a test cross tells nothing', () => {
    const found = screen(recessive({ copies: 1 }));
    expect(found.oneIsEnough).toBe('surely');
    expect(of(found, 'b').test).toMatchObject({ seedlings: Infinity, found: 0 });
  });

  it('with six sets counts who can pass it on: three copies or more', () => {
    const found = screen(recessive({ copies: 6, kind: { ploidy: 6, inheritance: 'polysomic' }, trees: { t: { genes: { r: { copies: 6 } } } } }));
    const shares = dosagesInPopulation(6, 0.2);
    const [three, four, five, six] = shares.slice(3) as [number, number, number, number];
    expect(of(found, 'b').carries).toBeCloseTo(three + four + five + six, 12);
    expect(of(found, 'a').carries).toBeCloseTo((three + four + five) / (1 - six), 12);
    // After three empty test-cross seedlings, each as likely as the gametes say: 19/20, 4/5 and 1/2.
    const left = [three * 0.95 ** 3, four * 0.8 ** 3, five * 0.5 ** 3].reduce((sum, one) => sum + one, 0);
    expect(of(found, 'c').carries).toBeCloseTo(left / (left + 1 - three - four - five - six), 12);
    expect(of(found, 't')).toBeUndefined();
  });

  it('says of which trees nothing can be said, and why', () => {
    const odd = screen(recessive({ kind: { ploidy: 3, inheritance: 'polysomic' } }));
    expect(odd.silent.map(({ tree, why }) => `${tree.id} ${why}`)).toEqual(['a oddSets', 'b oddSets', 'c oddSets']);
    const misfit = screen(recessive({ trees: { b: { seen: { red: { source: true } }, genes: { r: { frequency: 0 } } } } }));
    expect(misfit.silent.map(({ tree, why }) => `${tree.id} ${why}`)).toEqual(['b misfit']);
  });

  it('leaves a trait out where every copy is stated', () => {
    const stated = { genes: { r: { copies: 1 } } };
    expect(carrierScreens(recessive({ trees: { a: stated, b: stated, c: stated } }))).toEqual([]);
  });
});
