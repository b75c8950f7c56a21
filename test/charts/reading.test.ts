import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stepPlaces } from '../../src/charts/flower-to-pick/places.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { placeAfter } from '../../src/charts/reading.ts';
import { failLayout } from '../../src/charts/why-futures-fail/layout.ts';
import { failPlaces } from '../../src/charts/why-futures-fail/places.ts';
import { cloudLayout } from '../../src/charts/years-against-trees/layout.ts';
import { cloudPlaces } from '../../src/charts/years-against-trees/places.ts';
import { FIXTURE } from './fixture.ts';
import { FIXTURE_FUTURES } from './fixture-futures.ts';

const options = { width: 1144, measure: roughMeasure, words: {} };
const nameOf = (id: string) => FIXTURE.plans.find((plan) => plan.id === id)?.name ?? id;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('reading from place to place', () => {
  const groups = ['a', 'a', 'a', 'b', 'c', 'c'];
  const press = (key: string, at: number | null, shiftKey = false) => placeAfter({ key, shiftKey }, at, groups);

  it('goes on and back in reading order, and stays at the ends', () => {
    expect([press('ArrowRight', 2), press('ArrowLeft', 3), press('ArrowRight', 5), press('ArrowLeft', 0)]).toEqual([3, 2, 5, 0]);
    expect([press('Home', 4), press('End', 0), press('Escape', 4), press('x', 4)]).toEqual([0, 5, null, undefined]);
  });

  it('goes to the same place of the next group, or its last one where the group is shorter', () => {
    expect([press('ArrowDown', 2), press('ArrowDown', 3), press('ArrowUp', 5), press('ArrowUp', 3)]).toEqual([3, 4, 3, 0]);
    expect([press('ArrowDown', 5), press('ArrowUp', 1), press('ArrowRight', 1, true)]).toEqual([5, 1, 3]);
  });

  it('begins at an end, and has nothing to say without places', () => {
    expect([press('ArrowRight', null), press('ArrowLeft', null), press('ArrowDown', null)]).toEqual([0, 5, 0]);
    expect(placeAfter({ key: 'Home', shiftKey: false }, null, [])).toBeUndefined();
  });

  it('reaches every place by one key, and never leaves the list', () => {
    let at: number | null | undefined = null;
    const seen = new Set<number>();
    for (let n = 0; n < groups.length; n += 1) {
      at = press('ArrowRight', at ?? null);
      if (typeof at === 'number') seen.add(at);
    }
    expect(seen.size).toBe(groups.length);
    fc.assert(
      fc.property(
        fc.constantFrom('ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End'),
        fc.boolean(),
        fc.option(fc.integer({ min: 0, max: groups.length - 1 })),
        (key, shiftKey, from) => {
          const next = placeAfter({ key, shiftKey }, from, groups);
          expect(next).toBeGreaterThanOrEqual(0);
          expect(next).toBeLessThan(groups.length);
        },
      ),
    );
  });
});

describe('the places of a picture', () => {
  it('are steps of a cloud that hold the shares they say, and the futures without a tree', () => {
    const layout = cloudLayout(FIXTURE, FIXTURE_FUTURES, options);
    const places = cloudPlaces(layout, nameOf);
    for (const { plan, yearProven, seedlings } of FIXTURE_FUTURES) {
      const won = [...yearProven].flatMap((year, index) => (year > 0 ? [{ year, seedlings: seedlings[index]! }] : []));
      const { steps } = layout.clouds.find((cloud) => cloud.plan === plan)!;
      for (const [index, share] of [0.1, 0.5, 0.9].entries()) {
        const { year, seedlings: n } = steps[index]!;
        // A quantile: at most that share lies below it, at least that share at or below; whole numbers.
        expect(won.filter((future) => future.year < year).length / won.length).toBeLessThanOrEqual(share + 1 / won.length);
        expect(won.filter((future) => future.year <= year).length / won.length).toBeGreaterThanOrEqual(share - 1 / won.length);
        expect(won.filter((future) => future.seedlings < n - 1).length / won.length).toBeLessThanOrEqual(share + 1 / won.length);
        expect(won.filter((future) => future.seedlings <= n + 1).length / won.length).toBeGreaterThanOrEqual(share - 1 / won.length);
      }
      expect(places.filter((place) => place.plan === plan)).toHaveLength(won.length < yearProven.length ? 4 : 3);
    }
    expect(plain(places.at(-1)!.words)).toMatch(
      /^Wide cross, rescue graft: no tree by 2057 in \d+ of 100 futures; half of those raise [\d,]+ seedlings or fewer$/u,
    );
  });

  it('are the segments of a bar, and together say all futures', () => {
    const places = failPlaces(failLayout(FIXTURE, options), nameOf);
    for (const plan of FIXTURE.plans) {
      const words = places.filter((place) => place.plan === plan.id).map((place) => plain(place.words));
      const sum = words.reduce((total, text) => total + Number(/in (?:under )?(\d+) of 100 futures$/u.exec(text)?.[1]), 0);
      // Each is rounded to a whole number: off by at most half of one.
      expect(Math.abs(sum - 100)).toBeLessThanOrEqual(words.length / 2);
      expect(words[0]).toBe(`${plan.name}: a proven tree in ${String(Math.round(plan.chance.value * 100))} of 100 futures`);
    }
  });

  it('are the steps from flower to pick, and say who gets so far', () => {
    const places = stepPlaces(FIXTURE);
    const panels = FIXTURE.plans.reduce((sum, plan) => sum + plan.generations.length, 0);
    expect(new Set(places.map(({ group }) => group)).size).toBe(panels);
    const graft = places.filter(({ plan }) => plan === 'rescue').map(({ words }) => plain(words));
    expect(graft[0]).toBe('Wide cross, rescue graft, Wide cross, grafted: 1,200 flowers, in 8 of 10 futures or more');
    expect(graft[1]).toBe('Wide cross, rescue graft, Wide cross, grafted: 59 seedlings; 8 in 10 futures between 15 and 90');
    expect(graft.at(-1)).toMatch(/among the 76 of 100 futures that get so far$/u);
  });
});
