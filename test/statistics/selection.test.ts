import { describe, expect, it } from 'vitest';
import { normalFrom } from '../../src/random/draws.ts';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { dominates, fronts, ranking, roomOf } from '../../src/statistics/fronts.ts';
import { againstBest, clearlyBeaten, studentQuantile } from '../../src/statistics/selection.ts';

const luck = new Stream(rootOf('selection')).future(1, 0).key(1);
const normal = () => normalFrom(luck.uniform());
const PROBLEMS = 400;

/** So many futures that all plans live through: what a future has in common, and what each plan has of its own. */
function samples(means: readonly number[], futures: number, shared: number): Float64Array[] {
  const common = Float64Array.from({ length: futures }, () => shared * normal());
  return means.map((mean) => common.map((luckOfAll) => mean + luckOfAll + normal()));
}

/** Share of the problems in which something that must rarely happen did, against the share that is stated, at 4 standard errors. */
function expectAtMost(times: number, of: number, share: number): void {
  expect(times / of).toBeLessThanOrEqual(share + 4 * Math.sqrt((share * (1 - share)) / of));
}

describe('Student’s t', () => {
  // Student's table as printed in Abramowitz & Stegun (1964) Table 26.10 (from memory, three decimals).
  it.each([
    [0.975, 1, 12.706],
    [0.975, 10, 2.228],
    [0.95, 20, 1.725],
    [0.995, 5, 4.032],
    [0.9995, 30, 3.646],
    [0.025, 10, -2.228],
  ])('below p = %d with %d degrees of freedom', (p, freedom, t) => {
    expect(studentQuantile(p, freedom)).toBeCloseTo(t, 3);
  });

  it('is the normal with many degrees of freedom, and 0 in the middle', () => {
    expect(studentQuantile(0.975, 1e7)).toBeCloseTo(1.959964, 5);
    expect(studentQuantile(0.5, 7)).toBe(0);
  });

  // Dunnett, C. W. (1955) J. Am. Stat. Assoc. 50:1096–1121, Table 1a, one-sided, 95 %, endless degrees of freedom (from memory): exact where
  // all plans have luck of their own. Bonferroni takes no such thing for granted, so it lies above, and not by much.
  it.each([
    [1, 1.64],
    [2, 1.92],
    [4, 2.16],
    [9, 2.42],
  ])('shared out over %d comparisons it lies a little above Dunnett’s', (others, dunnett) => {
    const bonferroni = studentQuantile(1 - 0.05 / others, 1e7);
    expect(bonferroni).toBeGreaterThan(dunnett - 0.005);
    expect(bonferroni).toBeLessThan(1.06 * dunnett);
  });
});

describe('against the best', () => {
  it('is the paired t interval for two plans', () => {
    // Differences 1, 2, 3, 6: mean 3, SD √(14/3), standard error √(14/12) = 1.080; t at 95 % one-sided with 3 degrees of freedom 2.353 (table as above).
    const [a, b] = againstBest(
      [
        [11, 12, 13, 16],
        [10, 10, 10, 10],
      ],
      0.95,
    );
    const half = 2.353 * Math.sqrt(14 / 12);
    expect(a!.low).toBe(0);
    expect(a!.high).toBeCloseTo(3 + half, 2);
    expect(a!.mayBeBest).toBe(false);
    expect(b!.high).toBe(0);
    expect(b!.low).toBeCloseTo(-3 - half, 2);
    expect(b!.mayBeBest).toBe(true);
  });

  it('says nothing of one plan, and refuses plans that lived through different futures', () => {
    expect(againstBest([[1, 2]], 0.95)).toEqual([{ low: 0, high: 0, mayBeBest: true }]);
    expect(() => againstBest([[1, 2], [1]], 0.95)).toThrow(RangeError);
    expect(() => clearlyBeaten([[1], [2]], [[1], [2]], 0.95)).toThrow(RangeError);
  });

  // Hsu 1984: all intervals hold together, and the best is kept, at least as often as stated. Means near each other are the hard case.
  it.each([
    [[0, 0.1, 0.1, 0.2, 0.3, 1], 0.95],
    [[0, 0, 0, 0, 0, 0], 0.95],
    [[0, 0.2, 0.4, 0.4, 0.4, 0.4], 0.8],
  ])('keeps the best of means %j at least %d of the time, and all intervals hold', (means, confidence) => {
    let lost = 0;
    let wrong = 0;
    let narrowed = 0;
    for (let problem = 0; problem < PROBLEMS; problem += 1) {
      const found = againstBest(samples(means, 60, 2), confidence);
      const truth = means.map((mean, i) => mean - Math.min(...means.filter((_, l) => l !== i)));
      if (!found[0]!.mayBeBest) lost += 1;
      if (found.some(({ low, high }, i) => truth[i]! < low || truth[i]! > high)) wrong += 1;
      narrowed += found.filter(({ mayBeBest }) => !mayBeBest).length;
    }
    expectAtMost(lost, PROBLEMS, 1 - confidence);
    expectAtMost(wrong, PROBLEMS, 1 - confidence);
    // It does rule plans out, where some are behind by a good deal.
    if (Math.max(...means) > 0) expect(narrowed).toBeGreaterThan(PROBLEMS / 2);
  });

  it('would lose the best more often if it promised less: the level is no slack', () => {
    let lost = 0;
    for (let problem = 0; problem < PROBLEMS; problem += 1) if (!againstBest(samples([0, 0], 60, 2), 0.6)[0]!.mayBeBest) lost += 1;
    // Two equal plans: lost in just 40 of 100.
    expect(Math.abs(lost / PROBLEMS - 0.4)).toBeLessThanOrEqual(4 * Math.sqrt(0.24 / PROBLEMS));
  });
});

describe('clearly beaten on two things', () => {
  const beaten = (years: readonly number[], trees: readonly number[], futures: number, confidence = 0.95) =>
    clearlyBeaten(samples(years, futures, 2), samples(trees, futures, 2), confidence);

  it('names the one that beats most clearly, and leaves those that trade one thing for the other', () => {
    expect(beaten([0, 5, 9, 6], [9, 5, 0, 6], 200)).toEqual([-1, -1, -1, 1]);
    expect(beaten([0, 5, 6], [0, 5, 6], 200)).toEqual([-1, 0, 0]);
  });

  it('leaves a plan that is worse on one thing and no clear difference on the other', () => {
    expect(beaten([0, 3], [0, 0], 30)).toEqual([-1, -1]);
  });

  it('counts what is alike in every future as no worse', () => {
    const trees = [7, 9, 8, 7];
    const years = samples([0, 3], 4, 0).map((values, i) => values.map((value) => i * 3 + 0.01 * value));
    expect(clearlyBeaten(years, [trees, trees], 0.95)).toEqual([-1, 0]);
    expect(clearlyBeaten([trees, trees], [trees, trees], 0.95)).toEqual([-1, -1]);
    // Ahead by the same in every future is as clear as can be.
    expect(clearlyBeaten([trees, trees.map((n) => n + 1)], [trees, trees.map((n) => n + 1)], 0.95)).toEqual([-1, 0]);
    expect(clearlyBeaten([trees, trees.map((n) => n + 1)], [trees, trees.map((n) => n - 1)], 0.95)).toEqual([-1, -1]);
  });

  it.each([
    [[0, 0.3, 0.6, 0.9], [0.9, 0.6, 0.3, 0], 0.9],
    // At the very edge: level on one thing with three that are far ahead on the other.
    [[0.001, 0, 0, 0], [0, 9, 9, 9], 0.8],
    [[0, 0, 0, 0], [0, 0, 0, 0], 0.8],
  ])('calls nothing on the front beaten, years %j and trees %j, with more than the stated risk', (years, trees, confidence) => {
    let wrong = 0;
    for (let problem = 0; problem < PROBLEMS; problem += 1) if (beaten(years, trees, 60, confidence).some((by) => by >= 0)) wrong += 1;
    expectAtMost(wrong, PROBLEMS, 1 - confidence);
  });

  it('promises no more than it must: two plans, level on one thing and far apart on the other', () => {
    let wrong = 0;
    for (let problem = 0; problem < PROBLEMS; problem += 1) if (beaten([0, 0], [0, 9], 60, 0.6)[1] === 0) wrong += 1;
    // One of two comparisons: beaten by luck in 20 of 100.
    expect(Math.abs(wrong / PROBLEMS - 0.2)).toBeLessThanOrEqual(4 * Math.sqrt(0.16 / PROBLEMS));
  });

  it('finds what is clearly beaten nearly always', () => {
    let found = 0;
    for (let problem = 0; problem < 100; problem += 1) if (beaten([0, 3, 1], [3, 0, 4], 100).join() === '-1,-1,0') found += 1;
    expect(found).toBeGreaterThan(95);
  });
});

describe('fronts', () => {
  const points = [
    { years: 1, trees: 9 },
    { years: 5, trees: 5 },
    { years: 9, trees: 1 },
    { years: 6, trees: 6 },
    { years: 5, trees: 6 },
    { years: 9, trees: 9 },
  ];

  it('sorts by what beats what: Deb et al. (2002)', () => {
    expect(dominates(points[1]!, points[3]!)).toBe(true);
    expect(dominates(points[1]!, points[0]!)).toBe(false);
    expect(dominates(points[1]!, points[1]!)).toBe(false);
    expect(fronts(points)).toEqual([[0, 1, 2], [4], [3], [5]]);
    expect(fronts([])).toEqual([]);
  });

  it('gives the ends endless room and the others what lies between their neighbours', () => {
    expect(
      roomOf([
        { years: 0, trees: 10 },
        { years: 1, trees: 5 },
        { years: 2, trees: 4 },
        { years: 10, trees: 0 },
      ]),
    ).toEqual([Infinity, 2 / 10 + 6 / 10, 9 / 10 + 5 / 10, Infinity]);
  });

  it('ranks front by front, the crowded last', () => {
    expect(ranking(points).slice(0, 3).toSorted()).toEqual([0, 1, 2]);
    expect(ranking(points).slice(3)).toEqual([4, 3, 5]);
    const line = [0, 1, 2, 3, 3.1, 10].map((years) => ({ years, trees: 10 - years }));
    expect(ranking(line)).toHaveLength(6);
    expect(ranking(line).slice(0, 2).toSorted()).toEqual([0, 5]);
    // 3 and 3.1 crowd each other: one of them goes first.
    expect([3, 4]).toContain(ranking(line).at(-1));
  });
});
