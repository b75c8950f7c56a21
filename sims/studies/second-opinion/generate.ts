import { rootOf, Stream } from '../../../src/random/stream.ts';

/**
 * Draws random valid programmes in the input form of the independent program. Left out because the two read them differently on
 * purpose (docs/decisions/0011): going on with the best left, and a leaf test after a look at the seedling.
 */
export function randomProgramme(word: string): Record<string, unknown> {
  const stream = new Stream(rootOf(word)).future(1, 0).key(1);
  const u = () => stream.uniform();
  const chance = (p: number) => u() < p;
  const between = (low: number, high: number) => low + (high - low) * u();
  const whole = (low: number, high: number) => low + Math.floor(u() * (high - low + 1));
  const pick = <T>(list: readonly [T, ...T[]]): T => list[Math.floor(u() * list.length)] ?? list[0];
  const round = (x: number) => Math.round(x * 1000) / 1000;
  /** A share as a plain number, a range or a count. */
  const share = (low: number, high: number): unknown => {
    const middle = round(between(low, high));
    if (chance(0.5)) return middle;
    if (chance(0.6)) return { low: round(Math.max(0, middle - between(0, 0.15))), likely: middle, high: round(Math.min(1, middle + between(0.01, 0.15))) };
    const of = whole(10, 120);
    return { hits: Math.round(middle * of), of, lots: whole(1, 4) };
  };

  const twoKinds = chance(0.4);
  const genes = chance(0.5) ? { g: {} } : chance(0.5) ? { g: {}, h: {} } : { g: { group: 'one', cM: 5 }, h: { group: 'one', cM: round(between(10, 60)) } };
  const two = 'h' in genes;
  const rules = [
    { name: 'one copy', value: { all: { g: 1 } }, weight: 3 },
    { name: 'two copies', value: { all: { g: 2 } }, weight: 2 },
    ...(two
      ? [
          { name: 'both', value: { all: { g: 1, h: 1 } }, weight: 2 },
          { name: 'either', value: { any: { g: 2, h: 2 } }, weight: 1 },
          { name: 'three in all', value: { total: { genes: ['g', 'h'], atLeast: 3 } }, weight: 1 },
        ]
      : []),
  ].filter((_, i) => i === 0 || chance(0.5));
  const kind = () => ({
    firstFruit: chance(0.3) ? whole(2, 5) : { earliest: 2, half: whole(3, 5), ninety: whole(6, 8) },
    familyCv: chance(0.5) ? 0.15 : 0,
    neverFruits: chance(0.5) ? 0.05 : 0,
    regularity: round(between(0.6, 1)),
    firstYearLoss: round(between(0, 0.2)),
    yearlyLoss: round(between(0, 0.06)),
    frostShare: round(between(0.2, 1)),
    flowers: whole(40, 150),
    yearsToFullBloom: whole(1, 4),
    nurseryShare: 0.05,
    plantOutAge: whole(1, 2),
    waitYears: whole(0, 2),
    selfCompatible: chance(0.3),
    seeds: 1,
    atMost: 1,
    ...(chance(0.5) ? { seeds: round(between(1.5, 4)), atMost: 8 } : {}),
  });
  const kinds: Record<string, ReturnType<typeof kind> & Record<string, unknown>> = { plum: kind() };
  if (twoKinds) Object.assign(kinds, { wild: kind(), mixed: { ...kind(), fertilitySeed: round(between(0.3, 1)), fertilityPollen: round(between(0.3, 1)) } });
  const geneState = () => (chance(0.5) ? whole(0, 2) : { frequency: share(0.05, 0.4) });
  const tree = (of: string, seen: unknown) => ({
    kind: of,
    copies: whole(1, 3),
    gardens: chance(0.5) ? ['home'] : ['home', 'far'],
    yearlyLoss: round(between(0, 0.06)),
    flowers: whole(60, 300),
    ...(chance(0.2) ? { bearsFrom: 2027 + whole(1, 4) } : {}),
    genes: Object.fromEntries(Object.keys(genes).map((gene) => [gene, geneState()])),
    values: chance(0.8) ? { size: round(between(35, 65)) } : {},
    seen: seen === null ? {} : { red: seen },
  });
  const source = {
    ...tree('plum', { source: true }),
    bearsFrom: undefined,
    genes: Object.fromEntries(Object.keys(genes).map((gene) => [gene, { frequency: share(0.1, 0.4) }])),
  };
  const trees = {
    Source: source,
    Partner: tree('plum', chance(0.5) ? { showed: 0, seasons: whole(1, 8) } : null),
    ...(twoKinds ? { Wild: tree('wild', null) } : {}),
  };
  const cross = (id: string, seed: string, pollen: string, gives: string, weak: boolean) => ({
    id,
    seed,
    pollen,
    gives,
    set: share(0.1, 0.5),
    straySet: chance(0.5) ? 0.012 : 0,
    seedless: chance(0.5) ? round(between(0, 0.3)) : 0,
    germination: share(0.3, 0.9),
    dormancy: chance(0.2) ? 1 : 0,
    ...(weak
      ? { weakShare: share(0.3, 0.9), weakOnset: whole(0, 4), weakHalfLife: round(between(2, 15)), rootBorne: chance(0.5) ? 0.6 : { fact: 'roots' } }
      : {}),
  });
  const crosses = [cross('plum', 'plum', 'plum', 'plum', chance(0.2))];
  if (twoKinds)
    crosses.push(
      cross('wide', 'plum', 'wild', 'mixed', chance(0.8)),
      cross('back', 'plum', 'mixed', 'mixed', chance(0.3)),
      cross('back2', 'mixed', 'plum', 'mixed', chance(0.3)),
      cross('mixed', 'mixed', 'mixed', 'mixed', chance(0.3)),
    );
  const shown = { shown: 'red', atLeast: 1 };
  const big = { measured: 'size', atLeast: round(between(45, 58)) };
  const wanted = chance(0.5) ? [shown] : chance(0.5) ? [big] : [shown, big];
  const crops = whole(1, 3);
  const stock = {
    stock: {
      yearlyLoss: 0.02,
      places: pick([1, 0.5]),
      precocity: pick<unknown>([0.8, { low: 0.7, likely: 0.9, high: 1.05 }]),
      takeTender: round(between(0.2, 0.6)),
      takeRipe: round(between(0.6, 0.95)),
      ripeMonths: whole(6, 14),
      fertility: pick([1, 1.3]),
    },
  };
  const wide = twoKinds && chance(0.7);
  const onset = Math.max(0, ...crosses.map((entry) => ('weakOnset' in entry ? (entry.weakOnset ?? 0) : 0)));
  const generation = (name: string, parts: Record<string, unknown>) => {
    const judge = parts['judge'] as number;
    return {
      name,
      flowers: whole(20, 120),
      seedlings: whole(5, 40),
      springs: whole(1, 3),
      reciprocal: chance(0.2),
      cover: pick([1, 1, 0.2]),
      ...(chance(0.35)
        ? {
            rescue: {
              who: pick(['weak', 'every']),
              month: round(between(Math.max(0.5, onset), Math.max(onset, 20))),
              stock: 'stock',
              scions: whole(1, 3),
              keepOwnRoots: chance(0.5),
            },
          }
        : {}),
      ...(chance(0.3)
        ? chance(0.6)
          ? { test: { gene: 'g', atLeast: 1, falsePositive: 0.05, falseNegative: 0.1, cull: true } }
          : { look: { trait: 'red', falsePositive: 0.1, falseNegative: 0.1 } }
        : {}),
      ...(chance(0.3) ? { backup: { copies: whole(1, 2), stock: 'stock', garden: pick(['home', 'far']) } } : {}),
      ...(chance(0.3) ? { garden: 'far' } : {}),
      ...parts,
      judge,
    };
  };
  const first = whole(0, 2);
  const keepFirst =
    first === 0
      ? { rank: 'earliest', howMany: whole(1, 3) }
      : { conditions: chance(0.4) ? [big] : [], rank: pick(['first', 'index']), weights: { size: 1 }, howMany: whole(1, 3) };
  const goOn = pick<unknown>([
    { when: 'firstPick' },
    { when: 'enough', atLatest: whole(7, 12) },
    { when: 'allJudged', atLatest: whole(8, 14) },
    { when: 'firstPick', atLatest: 10 },
  ]);
  const generations = [
    generation('F1', { seedParents: ['Source'], pollenParents: chance(0.25) ? 'open' : [wide ? 'Wild' : 'Partner'], judge: first, keep: keepFirst, goOn }),
    ...(chance(0.75)
      ? [
          generation('F2', {
            seedParents: ['picks:F1'],
            pollenParents: pick([['picks:F1'], ['Partner'], ['Source']]),
            judge: crops,
            keep: { conditions: wanted, howMany: whole(1, 2) },
            ...(chance(0.15) && !wide ? { repeat: 2, keep: { conditions: [], howMany: 2 }, goOn: { when: 'firstPick' } } : {}),
          }),
        ]
      : []),
  ];
  if (generations.length === 1) Object.assign(generations[0] ?? {}, { judge: crops, keep: { conditions: wanted, howMany: whole(1, 2) } });
  return {
    title: `Random ${word}`,
    startYear: 2027,
    horizonYear: 2027 + whole(14, 26),
    places: pick([1000, 1000, 30, 12]),
    hoursPerYear: 80,
    luck: pick([0, 0.1]),
    luckGermination: pick([0, 0.1]),
    frost: { chance: share(0.05, 0.4), takes: round(between(0.3, 1)) },
    hands: { bloomDays: 4, hoursADay: pick([8, 8, 0.5]), flowersAnHour: 30 },
    hours: { perFlower: 0.03, perFruit: 0.02, perSeedling: 0.3, perGraft: 0.2, perTest: 0.1, perLook: 0.05, perPlaceYear: 0.5, perJudging: 0.2 },
    facts: { roots: 0.5 },
    gardens: { home: pick([0, 0.02]), far: 0.01 },
    genes,
    kinds,
    traits: {
      red: {
        type: 'shown',
        rule: rules.length > 1 ? { oneOf: rules } : rules[0]?.value,
        penetrance: share(0.7, 1),
        consistency: share(0.5, 1),
        falseShow: pick([0, 0.03]),
        sharedSeason: pick([0, 0.5]),
      },
      size: {
        type: 'measured',
        unit: 'g',
        base: 50,
        sd: 10,
        h2: round(between(0.3, 0.6)),
        t: 0.7,
        cloneShare: 0.5,
        yearShare: 0.4,
        ...(chance(0.3) ? { inbreeding: 8 } : {}),
      },
    },
    trees,
    pools: {
      air: {
        trees: { Partner: 0.4 },
        background: {
          n: whole(2, 12),
          weight: 0.6,
          kind: 'plum',
          genes: Object.fromEntries(Object.keys(genes).map((gene) => [gene, 0.2])),
          values: { size: 50 },
          ...(chance(0.5) ? { spread: { size: 6 } } : {}),
        },
      },
    },
    defaultPool: 'air',
    stocks: stock,
    crosses,
    goal: { of: crops, conditions: wanted, trees: pick([1, 1, 2]) },
    plans: [{ name: 'plan', clearDiscards: chance(0.7), generations }],
  };
}
