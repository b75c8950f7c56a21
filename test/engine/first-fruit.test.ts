import { describe, expect, it } from 'vitest';
import { Inputs, published } from '../reference/published.ts';
import { count, expectMean, expectShare, expectVariance } from './agreement.ts';
import {
  cross,
  document,
  future,
  generation,
  kind,
  neverProven,
  plans,
  stock,
  tree,
  type Document,
  type GenerationDocument,
  type KindDocument,
} from './programmes.ts';

const goal = neverProven();

/** One seedling a run, cross in year 0: its years to first fruit are the year of first fruit − 1. */
const one = (kinds: KindDocument[], changes: Partial<Document> = {}, g: Partial<GenerationDocument> = {}): Document =>
  document({ goal, kinds, plans: plans([generation('g', 1, { judge: 0, keep: { howMany: 1 }, ...g })]), ...changes });
const yearsToFruit = (input: Document, runs: number) => Array.from(future(input, runs).generation(0, 'firstFruit'), (year) => year - 1);

/** P(x ≤ season) for x = (e − 1) + F·Weibull, F lognormal of median 1 with the stated coefficient of variation. Trapezoid over F. Own derivation, docs/model.md §8. */
function firstFruitBy(season: number, e: number, m: number, t: number, cv: number): number {
  const k = Math.log(Math.log(10) / Math.LN2) / Math.log((t - e + 1) / (m - e + 1));
  const scale = (m - e + 1) / Math.LN2 ** (1 / k);
  const weibull = (x: number) => (x <= 0 ? 0 : 1 - Math.exp(-((x / scale) ** k)));
  if (cv === 0) return weibull(season - e + 1);
  const sigma = Math.sqrt(Math.log(1 + cv * cv));
  let sum = 0;
  for (let z = -8; z <= 8; z += 0.05) sum += 0.05 * Math.exp(-0.5 * z * z) * weibull((season - e + 1) / Math.exp(sigma * z));
  return sum / Math.sqrt(2 * Math.PI);
}

const three = { earliest: 4, half: 7, ninety: 10 };

describe('years to first fruit', () => {
  const pc10 = published.find(({ id }) => id === 'PC10')!;
  it(`${pc10.title}. ${pc10.source}`, () => {
    const inputs = new Inputs(pc10);
    const [first, last] = [3, 14];
    const chances = inputs.entry.expected.slice(2);
    expect(chances).toHaveLength(last - first + 1);
    const years = yearsToFruit(one([kind({ firstFruit: three })]), 40_000);
    chances.forEach((p, i) =>
      expectShare(
        count(years, (year) => year === first + i),
        40_000,
        p,
        `season ${String(first + i)}`,
      ),
    );
  });

  it('a family effect stretches the years after the earliest season: lognormal of median 1, drawn once for a pair and run', () => {
    const slow = kind({ firstFruit: three, familySpread: 0.4 });
    const years = yearsToFruit(one([slow]), 40_000);
    for (const season of [4, 5, 7, 10, 13])
      expectShare(
        count(years, (year) => year <= season),
        40_000,
        firstFruitBy(season, 4, 7, 10, 0.4),
        `by season ${String(season)}`,
      );
    // Of 100 seedlings of one family the spread between runs is that of the family: the same seedlings in two families differ less.
    const bearing = (pollen: string[]) =>
      Array.from(
        future(
          one(
            [slow],
            { lastYear: 2008, trees: [tree('a'), tree('b'), tree('c')] },
            { seedlings: 200, flowers: 200, pollen: pollen.map((id) => ({ tree: id })) },
          ),
          6000,
        ).run('fruiting'),
        (n) => n / 200,
      );
    // Given the family factor f, by season 7: Weibull(4/f). E and variance over z by trapezoid.
    const sigma = Math.sqrt(Math.log(1.16));
    let [e1, e2] = [0, 0];
    for (let z = -8; z <= 8; z += 0.02) {
      const p = givenFamily(7, Math.exp(sigma * z));
      const weight = (0.02 * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
      e1 += weight * p;
      e2 += weight * p * p;
    }
    const between = e2 - e1 * e1;
    const within = e1 - e2;
    expectVariance(bearing(['b']), between + within / 200, 'one family');
    expectVariance(bearing(['b', 'c']), between / 2 + within / 200, 'two families');
  });

  it('one number is that for every tree, without a family effect', () => {
    expect(new Set(yearsToFruit(one([kind({ familySpread: 0.5 })]), 200))).toEqual(new Set([5]));
  });

  it('a hybrid kind follows its parents, the seed parent counted twice', () => {
    const kinds = [
      kind({ firstFruit: { years: 9 } }),
      kind({ id: 'quince', firstFruit: { years: 3 } }),
      kind({ id: 'hybrid', firstFruit: { between: { seed: 'pear', pollen: 'quince' } } }),
    ];
    const by = (seed: string, pollen: string) => {
      const trees = [tree('a', { kind: seed }), tree('b', { kind: pollen })];
      return one(kinds, { trees, crosses: [cross({ seed, pollen, gives: 'hybrid' })] });
    };
    expect(new Set(yearsToFruit(by('pear', 'quince'), 20))).toEqual(new Set([7]));
  });

  it('seasons drawn out of order are put in order', () => {
    const loose = { earliest: { low: 3, likely: 6, high: 9 }, half: { low: 4, likely: 7, high: 10 }, ninety: { low: 7, likely: 8, high: 12 } };
    const years = yearsToFruit(one([kind({ firstFruit: loose })]), 4000);
    expect(Math.min(...years.filter((year) => year > 0))).toBeGreaterThanOrEqual(3);
    expect(count(years, (year) => year < 0)).toBe(0);
  });

  it('a graft turns the years ahead x into g + (x − g)·precocity', () => {
    const grafted = (month: number, precocity: number, firstFruit: KindDocument['firstFruit']) =>
      one([kind({ firstFruit })], { stocks: [stock({ precocity })] }, { rescue: { who: 'every', month, stock: 'stock' } });
    // 6 years: at 12 months 1 + 5·½ = 3.5 → season 4; at 24 months 2 + 4·½ = 4; at 6 months ½ + 5½·0.8 = 4.9 → 5; slower: 1 + 5·1.3 = 7.5 → 8.
    for (const [month, precocity, season] of [
      [12, 0.5, 4],
      [24, 0.5, 4],
      [6, 0.8, 5],
      [12, 1.3, 8],
      [12, 1, 6],
    ] as const)
      expect(new Set(yearsToFruit(grafted(month, precocity, { years: 6 }), 20)), `${String(month)} months × ${String(precocity)}`).toEqual(new Set([season]));
    // Spread ages: x' ≤ j when x ≤ g + (j − g)/precocity.
    const years = yearsToFruit(grafted(6, 0.7, three), 20_000);
    for (const season of [3, 4, 5, 6, 8])
      expectShare(
        count(years, (year) => year <= season),
        20_000,
        firstFruitBy(0.5 + (season - 0.5) / 0.7, 4, 7, 10, 0),
        `by season ${String(season)}`,
      );
  });

  it('winters thin a slow family as it goes: the chance to bear at all is Σ P(J = j)·0.9·0.95^(j − 1)', () => {
    const slow = kind({ firstFruit: three, firstYearLoss: 0.1, yearlyLoss: 0.05 });
    const columns = future(one([slow], { lastYear: 2040 }, { seedlings: 100, flowers: 100 }), 2000);
    let expected = 0;
    for (let j = 4; j <= 39; j += 1) expected += (firstFruitBy(j, 4, 7, 10, 0) - firstFruitBy(j - 1, 4, 7, 10, 0)) * 0.9 * 0.95 ** (j - 1);
    expectMean(
      Array.from(columns.run('fruiting'), (n) => n / 100),
      expected,
    );
    // Median of the shifted Weibull is the stated season itself.
    expect(firstFruitBy(7, 4, 7, 10, 0)).toBeCloseTo(0.5, 12);
    expect(firstFruitBy(10, 4, 7, 10, 0)).toBeCloseTo(0.9, 12);
  });
});

/** P(x ≤ season) of the 4 / 7 / 10 kind when the family factor is f. */
function givenFamily(season: number, f: number): number {
  const k = Math.log(Math.log(10) / Math.LN2) / Math.log(7 / 4);
  const scale = 4 / Math.LN2 ** (1 / k);
  return 1 - Math.exp(-(((season - 3) / f / scale) ** k));
}
