import { describe, expect, it } from 'vitest';
import { Inputs, published } from '../reference/published.ts';
import { count, expectMean, expectShare, expectVariance } from './agreement.ts';
import { cross, document, future, futures, generation, kind, neverProven, plans, tree, type CrossDocument, type Document } from './programmes.ts';

const RUNS = 20_000;
const FLOWERS = 1000;
type Estimate = CrossDocument['set'];

/** Share of 1000 flowers that set, one pair; `springs` springs with luck ρ. */
const shares = (set: Estimate, { rho = 0, springs = 1, changes = {} }: { rho?: number; springs?: number; changes?: Partial<Document> } = {}) => {
  const g = generation('g', 100_000, { flowers: FLOWERS, springs });
  const weather = { frostChance: 0, springLuckSet: rho, springLuckGermination: 0 };
  const columns = future(document({ goal: neverProven(), lastYear: 2004, weather, crosses: [cross({ set })], plans: plans([g]), ...changes }), RUNS);
  return Array.from(columns.run('fruits'), (n) => n / FLOWERS / springs);
};

/** Variance of the share that sets when p has mean m and variance V: V + E[p(1 − p)]·((1 − ρ)/n + ρ), over springs. Beta-binomial moments, Skellam 1948. */
const spreadOf = (m: number, V: number, rho = 0, springs = 1) => V + ((m * (1 - m) - V) * ((1 - rho) / FLOWERS + rho)) / springs;

describe('estimates, seen through fruit set', () => {
  it('low / likely / high is a PERT beta: mean (low + 4·likely + high)/6 (Malcolm, Roseboom, Clark & Fazar 1959); published figures PC13', () => {
    const pc13 = new Inputs(published.find(({ id }) => id === 'PC13')!);
    const [alpha, beta, m, V] = pc13.entry.expected;
    const set = shares({ low: 0.1, likely: 0.3, high: 0.8 });
    expectMean(set, m!);
    expectVariance(set, spreadOf(m!, V!));
    // Third moment of the beta, scaled: skewness is seen, not only spread.
    const scaled = Array.from({ length: 3 }, (_, i) => (alpha! + i) / (alpha! + beta! + i)).reduce((a, b) => a * b, 1);
    const third =
      0.7 ** 3 * scaled +
      3 * 0.49 * 0.1 * ((alpha! * (alpha! + 1)) / ((alpha! + beta!) * (alpha! + beta! + 1))) +
      3 * 0.7 * 0.01 * (alpha! / (alpha! + beta!)) +
      0.001;
    // Binomial noise of 1000 flowers adds 3p²(1 − p)/n and less: E[X³] = p³ + 3p²(1 − p)/n + p(1 − p)(1 − 2p)/n².
    const noise = (3 * (V! + m! * m! - third)) / FLOWERS;
    expectMean(
      set.map((share) => share ** 3),
      third + noise,
      'third moment',
      2e-6,
    );
  });

  it('a count is Beta(hits + ½, of − hits + ½) (Jeffreys); published figures PC14', () => {
    const [a, b, m] = new Inputs(published.find(({ id }) => id === 'PC14')!).entry.expected;
    const set = shares({ hits: 7, of: 47 });
    expectMean(set, m!);
    expectVariance(set, spreadOf(m!, (a! * b!) / ((a! + b!) ** 2 * (a! + b! + 1))));
  });

  const counted = (hits: number, of: number, lots: number, rho: number) => {
    const weight = Math.max(1, 1 + (of / lots - 1) * rho);
    const [a, b] = [hits / weight + 0.5, (of - hits) / weight + 0.5];
    return { m: a / (a + b), V: (a * b) / ((a + b) ** 2 * (a + b + 1)) };
  };
  for (const [hits, of, lots, rho] of [
    [18, 240, 1, 0.1],
    [18, 240, 6, 0.1],
    [18, 240, 1, 0.3],
    [18, 240, 240, 0.2],
  ] as const)
    it(`${String(hits)} of ${String(of)} in ${String(lots)} lots at ρ = ${String(rho)} weighs like ${(of / Math.max(1, 1 + (of / lots - 1) * rho)).toFixed(1)} flowers (docs/model.md §2)`, () => {
      const { m, V } = counted(hits, of, lots, rho);
      const one = shares({ hits, of, lots }, { rho });
      expectMean(one, m);
      expectVariance(one, spreadOf(m, V, rho), 'one spring');
      expectVariance(shares({ hits, of, lots }, { rho, springs: 4 }), spreadOf(m, V, rho, 4), 'four springs');
    });

  it('germination counts use the luck of germination, other counts none', () => {
    const weather = { frostChance: 0, springLuckSet: 0.4, springLuckGermination: 0.2 };
    const g = generation('g', 100_000, { flowers: FLOWERS });
    const germination = future(
      document({ goal: neverProven(), lastYear: 2004, weather, crosses: [cross({ germination: { hits: 18, of: 60 } })], plans: plans([g]) }),
      RUNS,
    );
    const { m, V } = counted(18, 60, 1, 0.2);
    const up = Array.from(germination.generation(0, 'seedlings'), (n) => n / FLOWERS);
    expectMean(up, m, 'germination');
    expectVariance(up, spreadOf(m, V, 0.2), 'germination');
    const losses = future(
      document({ goal: neverProven(), lastYear: 2006, weather, kinds: [kind({ firstYearLoss: { hits: 18, of: 60 } })], plans: plans([g]) }),
      RUNS,
    );
    const lost = Array.from(losses.run('fruiting'), (n) => 1 - n / FLOWERS);
    const plain = counted(18, 60, 1, 0);
    expectMean(lost, plain.m, 'losses');
    expectVariance(lost, spreadOf(plain.m, plain.V), 'losses');
  });

  it('a count in clusters is drawn in clusters, then turned into flowers: 1 − (1 − P)^(1/3); 63 of 127 clusters of three, published figure PC12', () => {
    const unit = { name: 'cluster of three', flowers: 3 };
    const [a, b] = [63.5, 64.5];
    let [weight, m, square] = [0, 0, 0];
    for (let P = 0.0005; P < 1; P += 0.001) {
      const density = Math.exp((a - 1) * Math.log(P) + (b - 1) * Math.log(1 - P) + 88);
      const p = 1 - (1 - P) ** (1 / 3);
      weight += density;
      m += density * p;
      square += density * p * p;
    }
    m /= weight;
    const V = square / weight - m * m;
    const set = shares({ hits: 63, of: 127, unit });
    expectMean(set, m);
    expectVariance(set, spreadOf(m, V));
    const pc12 = new Inputs(published.find(({ id }) => id === 'PC12')!).entry.expected[0]!;
    expect(Math.abs(m - pc12)).toBeLessThan(0.002);
  });

  it('one of several, by weight; once a run, whatever the spring', () => {
    const set = shares(
      {
        oneOf: [
          { value: 0.2, weight: 1 },
          { value: 0.6, weight: 3 },
        ],
      },
      { springs: 3 },
    );
    expectShare(
      count(set, (share) => share > 0.4),
      RUNS,
      0.75,
    );
    expectMean(
      set.filter((share) => share < 0.4),
      0.2,
    );
  });

  it('“as they stand” puts means for ranges and counts, and still draws alternatives, facts and hidden genes', () => {
    const stand = { guessesAsTheyStand: true };
    const pert = shares({ low: 0.1, likely: 0.3, high: 0.8 }, { changes: stand });
    expectMean(pert, 0.35);
    expectVariance(pert, (0.35 * 0.65) / FLOWERS);
    const { m } = counted(18, 240, 1, 0);
    expectVariance(shares({ hits: 18, of: 240 }, { changes: stand }), (m * (1 - m)) / FLOWERS);
    const alternatives = shares(
      {
        oneOf: [
          { value: 0.2, weight: 1 },
          { value: 0.6, weight: 3 },
        ],
      },
      { changes: stand },
    );
    // The mean, 0.5, or one of the two: docs/model.md §2 replaces forms 2 and 3 only.
    expectShare(
      count(alternatives, (share) => share > 0.55),
      RUNS,
      0.75,
    );
    const facts = future(
      document({
        ...stand,
        facts: [{ id: 'f', name: 'f', chance: { low: 0, likely: 0.5, high: 1 } }],
        goal: neverProven(),
        lastYear: 2001,
        plans: plans([generation('g', 1)]),
      }),
      RUNS,
    ).fact(0);
    expectShare(
      count(facts, (fact) => fact === 1),
      RUNS,
      0.5,
      'facts',
    );
    const hidden = future(
      document({
        ...stand,
        trees: [tree('a', { genes: { r: { frequency: { low: 0, likely: 0.3, high: 0.9 } } } }), tree('b', { genes: { r: { copies: 2 } } })],
        goal: neverProven(),
        lastYear: 2006,
        plans: plans([generation('g', 40)]),
      }),
      RUNS,
    );
    expectShare(
      count(hidden.generation(0, 'showing'), (n) => n === 0),
      RUNS,
      (1 - 0.35) ** 2,
      'hidden genes',
    );
  });

  it('a draw belongs to the place where it is written: one for all plans and springs, another for another entry', () => {
    const pert = { low: 0, likely: 0.5, high: 1 };
    const kinds = [kind(), kind({ id: 'quince' })];
    const crosses = [cross({ set: pert }), cross({ id: 'other', pollen: 'quince', set: pert })];
    const g = generation('g', 1e5, { flowers: 100_000 });
    const list = plans([g], [{ ...g, id: 'h', judge: 0 }], [{ ...g, id: 'i', pollen: [{ tree: 'c' }] }]);
    const columns = futures(
      document({ goal: neverProven(), lastYear: 2004, kinds, crosses, trees: [tree('a'), tree('b'), tree('c', { kind: 'quince' })], plans: list }),
      4000,
    );
    const [x, y, other] = columns.map((plan) => Array.from(plan.run('fruits'), (n) => n / 1e5));
    expect(Math.max(...x!.map((share, run) => Math.abs(share - y![run]!)))).toBeLessThan(0.02);
    // PERT 0, ½, 1 is Beta(3, 3): variance 1/28. Independent draws: no correlation.
    expectMean(
      x!.map((share, run) => ((share - 0.5) * (other![run]! - 0.5)) / (1 / 28)),
      0,
      'correlation',
    );
    expectVariance(other!, 1 / 28 + (0.25 - 1 / 28) / 1e5);
  });
});
