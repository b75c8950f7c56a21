/**
 * A FIXTURE: an outlook of four plans with invented numbers, smooth and deterministic. Nothing here was simulated, and nothing here
 * is a claim about pears. It has the traits the pictures must cope with: a plan that mostly dies out, lines that cross, ties.
 */
import type { Comparison, Failure, GenerationOutlook, Interval, Outlook, PlanOutlook, Spread, Stage, YearSpread } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';

export const START = 2027;
export const LAST = 2057;
export const FUTURES = 4000;
const YEARS = Array.from({ length: LAST - START + 1 }, (_, index) => START + index);

/** Share that is there by the end of a year, when half are there by `middle` and 80 % within `give` years each way. */
const by = (middle: number, give: number) => (year: number) =>
  give <= 0 ? (year >= middle ? 1 : 0) : 1 / (1 + Math.exp((-2.197 * (year + 0.5 - middle)) / give));
const interval = (share: number): Interval => wilson(Math.round(share * FUTURES), FUTURES);
const spread = (p10: number, p50: number, p90: number): Spread => ({ mean: (p10 + p50 + p90) / 3, p10, p50, p90 });
const years = (p10: number, p50: number, p90: number): YearSpread => ({ p10, p50, p90: p90 > LAST ? null : p90 });
const nothing = spread(0, 0, 0);

interface GenerationNumbers {
  readonly id: string;
  readonly name: string;
  readonly from: number | null;
  readonly reached: number;
  readonly picked: number;
  /** 10, 50 and 90 % of the futures. */
  readonly begins: readonly [number, number, number];
  readonly fruits: readonly [number, number, number];
  readonly picks: readonly [number, number, number];
  readonly ends: readonly [number, number, number];
  /** Share that has died out by the middle of the unfruited years, if any. */
  readonly dies?: number;
  readonly counts: Partial<Record<Stage, Spread>>;
}

function generation(n: GenerationNumbers): GenerationOutlook {
  const start = by(n.begins[1], (n.begins[2] - n.begins[0]) / 2);
  const end = by(n.ends[1], (n.ends[2] - n.ends[0]) / 2);
  const dies = n.dies ?? 0;
  const death = (year: number) => (dies === 0 ? 1 : 1 - dies * (1 - Math.exp(-Math.max(0, year - n.begins[1] - 1) / 2.6)));
  const stages = {
    flowers: nothing,
    fruits: nothing,
    seeds: nothing,
    seedlings: nothing,
    aliveAtGraft: nothing,
    fruiting: nothing,
    showing: nothing,
    kept: nothing,
    ...n.counts,
  };
  return {
    id: n.id,
    round: 1,
    name: n.name,
    grownFrom: n.from,
    reached: n.reached,
    picked: n.picked,
    firstPollination: years(...n.begins),
    firstSeedling: years(n.begins[0] + 1, n.begins[1] + 1, n.begins[2] + 1),
    firstFruit: years(...n.fruits),
    firstPick: years(...n.picks),
    lastJudged: years(...n.ends),
    going: YEARS.map((year) => n.reached * Math.max(0, start(year) * (1 - end(year - 1)) * death(year))),
    stages,
  };
}

interface PlanNumbers {
  readonly mark: string;
  readonly id: string;
  readonly name: string;
  readonly chance: number;
  readonly middle: number;
  readonly give: number;
  readonly guesses: readonly [number, number];
  readonly trulyGood: number;
  readonly works: readonly [number, number, number];
  readonly half: number | null;
  readonly seedlings: readonly [number, number, number];
  readonly fruiting: readonly [number, number, number];
  readonly hours: readonly [number, number, number];
  readonly places: readonly [number, number, number];
  readonly treeYears: readonly [number, number, number];
  readonly grafts: readonly [number, number, number];
  readonly over: number;
  readonly failures: Partial<Record<Failure, number>>;
  readonly generations: readonly GenerationOutlook[];
}

/** First year in which a plan of the fixture may have a proven tree: before it the curve is cut to nothing. */
const firstYear = (n: PlanNumbers) => Math.floor(n.middle - 2.2 * n.give);

function plan(n: PlanNumbers): PlanOutlook {
  const grows = by(n.middle, n.give);
  const at = (year: number) => (year < firstYear(n) ? 0 : (n.chance * (grows(year) - grows(firstYear(n) - 1))) / (grows(LAST) - grows(firstYear(n) - 1)));
  const [low, high] = n.guesses;
  const none: Readonly<Record<Failure, number>> = {
    onlyTreeLost: 0,
    stillWaiting: 0,
    noFruit: 0,
    noSeedling: 0,
    noRoom: 0,
    seedlingsDied: 0,
    noneGoodEnough: 0,
  };
  return {
    id: n.id,
    mark: n.mark,
    name: n.name,
    runs: FUTURES,
    chance: interval(n.chance),
    guesses: { low, high },
    trulyGood: wilson(Math.round(n.trulyGood * n.chance * FUTURES), Math.round(n.chance * FUTURES)),
    shortfall: [{ trait: 'Sugar', unit: '°Bx', mean: 0.6 }],
    byRule: [
      { trait: 'Red flesh', rule: 'one copy', runs: 2400, chance: wilson(Math.round(Math.min(1, n.chance * 1.2) * 2400), 2400) },
      { trait: 'Red flesh', rule: 'two copies', runs: 1600, chance: wilson(Math.round(n.chance * 0.7 * 1600), 1600) },
    ],
    byFact: [],
    chanceByYear: YEARS.map((year) => ({ year, ...interval(at(year)) })),
    guessesByYear: YEARS.map((year) => ({
      year,
      low: (at(year) * (low + n.chance)) / (2 * n.chance),
      high: Math.min(1, (at(Math.min(LAST, year + 0.4)) * (high + n.chance)) / (2 * n.chance)),
    })),
    yearProven: { p10: n.works[0] + 1, p50: n.half, p90: null },
    whenItWorks: years(...n.works),
    seedlings: spread(...n.seedlings),
    planted: spread(...n.seedlings),
    fruiting: spread(...n.fruiting),
    judgings: spread(...n.fruiting),
    treeYears: spread(...n.treeYears),
    mostPlaces: spread(...n.places),
    busiestHours: spread(...n.hours),
    totalHours: spread(n.hours[0] * 6, n.hours[1] * 6, n.hours[2] * 6),
    grafts: spread(...n.grafts),
    weakSaved: nothing,
    flowers: nothing,
    noRoom: nothing,
    overHours: interval(n.over),
    overMoney: null,
    failures: { ...none, ...n.failures },
    generations: n.generations,
  };
}

const A = plan({
  mark: 'A',
  id: 'open',
  name: 'Open-pollinated seed',
  chance: 0.42,
  middle: 2053.2,
  give: 2.6,
  guesses: [0.22, 0.66],
  trulyGood: 0.74,
  works: [2050, 2053, 2056],
  half: null,
  seedlings: [66, 102, 123],
  fruiting: [39, 61, 79],
  hours: [53, 70, 90],
  places: [38, 51, 64],
  treeYears: [420, 560, 700],
  grafts: [0, 0, 0],
  over: 0.001,
  failures: { noneGoodEnough: 0.15, stillWaiting: 0.43 },
  generations: [
    generation({
      id: 'gathered',
      name: 'Gathered seed',
      from: null,
      reached: 1,
      picked: 0.97,
      begins: [2027, 2027, 2027],
      fruits: [2034, 2035, 2036],
      picks: [2037, 2039, 2041],
      ends: [2039, 2040, 2042],
      counts: { seedlings: spread(30, 46, 60), fruiting: spread(14, 26, 36), kept: spread(1, 1, 1) },
    }),
    generation({
      id: 'pick-seed',
      name: 'Seed of the pick',
      from: 0,
      reached: 0.97,
      picked: 0.42,
      begins: [2038, 2039, 2042],
      fruits: [2046, 2048, 2051],
      picks: [2050, 2053, 2056],
      ends: [2052, 2055, 2058],
      counts: { seedlings: spread(36, 56, 66), fruiting: spread(20, 37, 47), kept: spread(0, 1, 1) },
    }),
  ],
});

const B = plan({
  mark: 'B',
  id: 'sister',
  name: 'Controlled cross, then brother × sister',
  chance: 0.73,
  middle: 2050.6,
  give: 2.4,
  guesses: [0.51, 0.93],
  trulyGood: 0.81,
  works: [2048, 2051, 2054],
  half: 2051,
  seedlings: [72, 154, 206],
  fruiting: [40, 84, 122],
  hours: [59, 116, 173],
  places: [44, 80, 120],
  treeYears: [500, 880, 1220],
  grafts: [2, 4, 6],
  over: 0.17,
  failures: { noneGoodEnough: 0.14, stillWaiting: 0.125, noFruit: 0.005 },
  generations: [
    generation({
      id: 'cross',
      name: 'Cross',
      from: null,
      reached: 1,
      picked: 0.96,
      begins: [2027, 2027, 2027],
      fruits: [2033.5, 2034.5, 2036],
      picks: [2036, 2038, 2040],
      ends: [2037.4, 2039, 2040],
      counts: { flowers: spread(280, 280, 280), seedlings: spread(40, 64, 84), fruiting: spread(12, 29, 40), kept: spread(2, 2, 2) },
    }),
    generation({
      id: 'sib',
      name: 'Brother × sister',
      from: 0,
      reached: 0.95,
      picked: 0.73,
      begins: [2037, 2038, 2040],
      fruits: [2045, 2047, 2049],
      picks: [2048, 2051, 2054],
      ends: [2050, 2053, 2056],
      counts: { flowers: spread(300, 448, 600), seedlings: spread(52, 95, 120), fruiting: spread(26, 58, 80), kept: spread(0, 1, 1) },
    }),
  ],
});

const C = plan({
  mark: 'C',
  id: 'wide',
  name: 'Wide cross, own roots',
  chance: 0.18,
  middle: 2048.8,
  give: 2.6,
  guesses: [0.06, 0.26],
  trulyGood: 0.79,
  works: [2046, 2049, 2053],
  half: null,
  seedlings: [15, 65, 153],
  fruiting: [0, 1, 54],
  hours: [68, 73, 107],
  places: [2, 12, 73],
  treeYears: [20, 120, 640],
  grafts: [0, 0, 2],
  over: 0.01,
  failures: { noneGoodEnough: 0.32, seedlingsDied: 0.46, stillWaiting: 0.02, noFruit: 0.02 },
  generations: [
    generation({
      id: 'wide-cross',
      name: 'Wide cross',
      from: null,
      reached: 1,
      picked: 0.24,
      begins: [2027, 2027, 2027],
      fruits: [2034.5, 2036, 2038],
      picks: [2035.5, 2037, 2039],
      ends: [2037, 2038.5, 2040],
      dies: 0.76,
      counts: { flowers: spread(1200, 1200, 1200), seedlings: spread(15, 60, 90), fruiting: spread(0, 1, 4), kept: spread(0, 0, 1) },
    }),
    generation({
      id: 'back',
      name: 'Pick × Saffron Bell',
      from: 0,
      reached: 0.22,
      picked: 0.18,
      begins: [2035.5, 2037, 2039],
      fruits: [2043, 2045, 2047],
      picks: [2046, 2049, 2053],
      ends: [2048, 2051, 2054],
      counts: { flowers: spread(300, 420, 500), seedlings: spread(50, 78, 100), fruiting: spread(30, 50, 70), kept: spread(1, 1, 1) },
    }),
  ],
});

const D = plan({
  mark: 'D',
  id: 'rescue',
  name: 'Wide cross, rescue graft',
  chance: 0.57,
  middle: 2047.2,
  give: 2.6,
  guesses: [0.25, 0.84],
  trulyGood: 0.79,
  works: [2044, 2047, 2050],
  half: 2050,
  seedlings: [23, 122, 183],
  fruiting: [1, 51, 82],
  hours: [69, 91, 141],
  places: [2, 59, 94],
  treeYears: [60, 610, 960],
  grafts: [10, 22, 30],
  over: 0.03,
  failures: { noneGoodEnough: 0.32, seedlingsDied: 0.08, stillWaiting: 0.025, noFruit: 0.005 },
  generations: [
    generation({
      id: 'wide-graft',
      name: 'Wide cross, grafted',
      from: null,
      reached: 1,
      picked: 0.76,
      begins: [2027, 2027, 2027],
      fruits: [2031.5, 2032.6, 2034],
      picks: [2033, 2034.2, 2036],
      ends: [2034, 2035.4, 2037],
      dies: 0.22,
      counts: {
        flowers: spread(1200, 1200, 1200),
        seedlings: spread(15, 59, 90),
        aliveAtGraft: spread(6, 20, 32),
        fruiting: spread(0, 5, 11),
        kept: spread(0, 1, 1),
      },
    }),
    generation({
      id: 'back-graft',
      name: 'Pick × Saffron Bell',
      from: 0,
      reached: 0.76,
      picked: 0.57,
      begins: [2033, 2034.5, 2036],
      fruits: [2041, 2043, 2045],
      picks: [2044, 2047, 2050],
      ends: [2046, 2049, 2052],
      counts: { flowers: spread(300, 420, 500), seedlings: spread(50, 80, 100), fruiting: spread(30, 52, 70), kept: spread(0, 1, 1) },
    }),
  ],
});

function compare(a: PlanOutlook, b: PlanOutlook, aSooner: number, bSooner: number): Comparison {
  const difference = a.chance.value - b.chance.value;
  const half = 0.02;
  return {
    a: a.id,
    b: b.id,
    aSooner: interval(aSooner),
    bSooner: interval(bSooner),
    tied: interval(1 - aSooner - bSooner),
    chanceDifference: { value: difference, low: difference - half, high: difference + half },
  };
}

export const FIXTURE: Outlook = {
  engine: 'fixture',
  word: 'fixture',
  runs: FUTURES,
  programme: 'fixture',
  startYear: START,
  lastYear: LAST,
  plans: [A, B, C, D],
  comparisons: [
    compare(A, B, 0.12, 0.66),
    compare(A, C, 0.4, 0.16),
    compare(A, D, 0.22, 0.52),
    compare(B, C, 0.65, 0.15),
    compare(B, D, 0.3, 0.5),
    compare(C, D, 0.1, 0.52),
  ],
};

export const FIXTURE_WORDS = {
  open: { short: 'Open-pollinated', note: 'Seed gathered under Old Hedgerow, then under its best seedling. No hands needed.' },
  sister: { short: 'Brother × sister', note: 'Old Hedgerow × Saffron Bell, then its two best red-fleshed seedlings together.' },
  wide: { short: 'Wide, own roots', note: 'Old Hedgerow × Mill Quince on their own roots, then the pick × Saffron Bell.' },
  rescue: { short: 'Rescue graft', note: 'The same cross, 1,200 flowers; at 8 months the weak seedlings are grafted on field pear.' },
};
