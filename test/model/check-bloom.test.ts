import { describe, expect, it } from 'vitest';
import { checkProgramme } from '../../src/model/check.ts';
import type { Programme } from '../../src/model/programme.ts';
import { samplePear } from '../components/fields/sample.ts';

/** The sample, its first generation crossing its first tree with its second; bloom days as given. */
function crossed(days: readonly (number | undefined)[], reciprocal = false): Programme {
  const programme = samplePear();
  const [seed, pollen] = programme.trees;
  const [plan] = programme.plans;
  const generation = { ...plan!.generations[0]!, seedParents: [{ tree: seed!.id }], pollen: [{ tree: pollen!.id }], reciprocal };
  return {
    ...programme,
    trees: programme.trees.map((tree, t) => ({ ...tree, bloomDay: days[t] })),
    plans: [{ ...plan!, generations: [generation, ...plan!.generations.slice(1)] }],
  };
}
const said = (programme: Programme) =>
  checkProgramme(programme)
    .filter(({ message }) => message.includes('needs pollen before'))
    .map(({ message, stops }) => ({ message, stops }));

describe('pollen of a tree that blooms after the seed parent', () => {
  it('is told of, and stops nothing', () => {
    const programme = crossed([2, 9]);
    const [seed, pollen] = programme.trees;
    expect(said(programme)).toEqual([
      { message: `needs pollen before it is there: that of ${pollen!.name} comes 7 days after ${seed!.name} opens`, stops: false },
    ]);
  });
  it('is no matter the other way round, on the same day, or where nothing is said', () => {
    for (const days of [[9, 2], [4, 4], [4, undefined], [undefined, 4], []]) expect(said(crossed(days))).toEqual([]);
  });
  it('is told of one of the two ways when both are crossed', () => {
    expect(said(crossed([9, 2], true))).toHaveLength(1);
  });
});
