/** Builds the FIXTURE's plans and generations from a few invented numbers, along smooth curves. */
import type { Failure, GenerationOutlook, Interval, PlanOutlook, Spread, Stage, YearSpread } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';

export const START = 2027;
export const LAST = 2057;
export const FUTURES = 4000;
const YEARS = Array.from({ length: LAST - START + 1 }, (_, index) => START + index);

/** Share that is there by the end of a year, when half are there by `middle` and 80 % within `give` years each way. */
const by = (middle: number, give: number) => (year: number) =>
  give <= 0 ? (year >= middle ? 1 : 0) : 1 / (1 + Math.exp((-2.197 * (year + 0.5 - middle)) / give));
export const interval = (share: number): Interval => wilson(Math.round(share * FUTURES), FUTURES);
export const spread = (p10: number, p50: number, p90: number): Spread => ({ mean: (p10 + p50 + p90) / 3, p10, p50, p90 });
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

export function generation(n: GenerationNumbers): GenerationOutlook {
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

export function plan(n: PlanNumbers): PlanOutlook {
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
