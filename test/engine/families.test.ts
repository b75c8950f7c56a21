import { describe, expect, it } from 'vitest';
import { expectMean, expectVariance } from './agreement.ts';
import { climb, momentsOf, type Ladder } from './ladder.ts';
import { generation, kind, measured, neverProven, picksOf, shown, tree, type Document, type MeasuredDocument } from './programmes.ts';

const goal = neverProven();
/** One copy of 64 is worth √(4·V_G/64) = ¼ when V_G = 1 (docs/model.md §3). */
const COPY = 1 / 4;
/** Every value that 8 … 56 favourable copies give; nothing lies beyond (six standard deviations). */
const copies: Ladder = { trait: 'size', from: (8 - 32) * COPY - 1e-9, step: COPY, steps: 49 };
const traits = (changes: Partial<MeasuredDocument> = {}): Document['traits'] => [shown(2), measured(changes)];
const selfing = [kind({ selfCompatible: true, firstFruit: { years: 1 } })];
const unstated = [tree('a'), tree('b')];

describe('value of families, all of it inherited (V_G = 1)', () => {
  it('within full sibs of random trees V_G/2, between families V_G/2 (Bulmer 1980; Falconer & Mackay 1996 ch. 9)', () => {
    const kept = climb(copies, [generation('g', 40)], { goal, traits: traits(), trees: unstated, lastYear: 2006 }, 700);
    for (let s = 1; s < kept.length; s += 1) expect(kept[s]!.every((n, run) => n <= kept[s - 1]![run]!)).toBe(true);
    const runs = momentsOf(copies, kept, false);
    expect(runs.every(({ trees }) => trees === 40)).toBe(true);
    expectMean(
      runs.map(({ variance }) => variance),
      0.5,
      'within',
    );
    const means = runs.map((run) => run.mean);
    expectMean(means, 0, 'mean');
    expectVariance(means, 0.5 + 0.5 / 40, 'between');
  });

  for (const selfings of [1, 2, 3])
    it(`selfing number ${String(selfings)}: within a line V_G/2 · (1 − F) = V_G/${String(2 ** selfings)} (Bulmer 1980)`, () => {
      const line = generation('s', 1, { pollen: 'self', judge: 0, keep: { howMany: 1 } });
      const rounds =
        selfings === 1
          ? [generation('end', 40, { pollen: 'self' })]
          : [
              { ...line },
              ...(selfings === 3 ? [{ ...line, id: 's2', seedParents: picksOf('s') }] : []),
              generation('end', 40, { pollen: 'self', seedParents: picksOf(selfings === 3 ? 's2' : 's') }),
            ];
      const runs = momentsOf(copies, climb(copies, rounds, { goal, traits: traits(), kinds: selfing, trees: unstated, lastYear: 2010 }, 500), false);
      expectMean(
        runs.map(({ variance }) => variance),
        1 / 2 ** selfings,
        'within a line',
      );
      // All trees of all lines vary by (1 + F)·V_G, F = 1 − ½ᵗ; what is not within lines is between them.
      expectVariance(
        runs.map((run) => run.mean),
        2 - 1 / 2 ** selfings - 1 / 2 ** selfings + 1 / 2 ** selfings / 40,
        'between lines',
      );
    });

  it('the mean of a family is the mean of its parents’ stated values', () => {
    const trees = [tree('a', { values: { size: 2 } }), tree('b', { values: { size: -1 } })];
    const runs = momentsOf(copies, climb(copies, [generation('g', 40)], { goal, traits: traits(), trees, lastYear: 2006 }, 500), false);
    expectMean(
      runs.map((run) => run.mean),
      0.5,
    );
  });

  it('a tree of stated value carries the copies that give it, at random places: its gametes are hypergeometric', () => {
    // 44 of 64 copies; selfed offspring 2 gametes of the same tree are not independent, so a × a tree without any copy.
    const trees = [tree('a', { values: { size: 3 } }), tree('b', { values: { size: -8 } })];
    const kept = climb({ ...copies, steps: 33, from: -8 - 1e-9 }, [generation('g', 50)], { goal, traits: traits(), trees, lastYear: 2006 }, 500);
    const choose = (n: number, k: number) => (k < 0 || k > n ? 0 : Array.from({ length: k }, (_, i) => (n - i) / (i + 1)).reduce((x, y) => x * y, 1));
    let above = 1;
    for (let k = 0; k <= 32; k += 1) {
      const shares = Array.from(kept[k]!, (n) => n / 50);
      if (above > 1e-3 && above < 1 - 1e-3) expectMean(shares, above, `${String(k)} copies or more`);
      above -= (choose(44, k) * choose(20, 32 - k)) / choose(64, 32);
    }
  });
});
