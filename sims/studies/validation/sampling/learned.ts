import { parseProgramme } from '../../../../src/model/read.ts';
import { FORMAT, VERSION, type Programme } from '../../../../src/model/programme.ts';
import { betaFrom, binomialInverse, lognormalFrom, springRate } from '../../../../src/random/draws.ts';
import type { Stream } from '../../../../src/random/stream.ts';
import { learnRates } from '../../../../src/seasonlog/learned.ts';
import type { Learnable } from '../../../../src/seasonlog/learned-types.ts';
import { pertShape } from '../../../../src/statistics/pert.ts';
import { firstFruitShape, weibullQuantile } from '../../../../src/statistics/weibull.ts';
import type { Samplers } from './samplers.ts';
import { share, streamOf } from './tally.ts';

/** What the simulated breeder states beforehand; the truth of each orchard is drawn from it. */
const STATED = {
  set: [0.1, 0.2, 0.4],
  germination: [0.5, 0.7, 0.85],
  weakShare: [0.6, 0.8, 0.95],
  takeTender: [0.2, 0.4, 0.7],
  takeRipe: [0.7, 0.85, 0.95],
  firstWinter: [0.02, 0.1, 0.25],
  laterWinters: [0.01, 0.03, 0.08],
  halfFruitBy: [5, 7, 9],
  ninetyFruitBy: [9, 11, 14],
} as const;
type Truth = Record<keyof typeof STATED | 'neverFruits', number>;
const NEVER = { hits: 3, of: 60 };
const EARLIEST = 4;
const FAMILY_SPREAD = 0.15;
const LUCK = 0.1;
/** Weight of the beta that the luck of an orchard's springs is drawn from. */
const LUCK_WEIGHT = 10;

/** Rates in the order of the published figures. */
const RATES: readonly (keyof Truth & Learnable)[] = [
  'set',
  'germination',
  'weakShare',
  'takeTender',
  'takeRipe',
  'firstWinter',
  'laterWinters',
  'halfFruitBy',
  'ninetyFruitBy',
  'neverFruits',
];

const range = ([low, likely, high]: readonly [number, number, number]) => ({ low, likely, high });

function programmeWith(batches: readonly unknown[]): Programme {
  const kind = { firstFruit: { years: 5 } };
  const parents = [{ tree: 'a' }];
  const reading = parseProgramme({
    format: FORMAT,
    version: VERSION,
    title: 'Simulated orchard',
    startYear: 2000,
    lastYear: 2030,
    shuffleWord: 'orchard',
    runs: 100,
    goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1 },
    limits: { places: 100, bloomDays: 10, hoursADay: 8, flowersAnHour: 20 },
    weather: { springLuckSet: LUCK, springLuckGermination: LUCK },
    genes: [{ id: 'r', name: 'r' }],
    traits: [{ type: 'shown', id: 'red', name: 'red', rules: [{ name: 'one', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 1 }] } }] }],
    kinds: [
      {
        id: 'pear',
        name: 'pear',
        firstFruit: { earliest: EARLIEST, half: range(STATED.halfFruitBy), ninety: range(STATED.ninetyFruitBy) },
        familySpread: FAMILY_SPREAD,
        neverFruits: NEVER,
        firstYearLoss: range(STATED.firstWinter),
        yearlyLoss: range(STATED.laterWinters),
      },
      { ...kind, id: 'quince', name: 'quince' },
      { ...kind, id: 'both', name: 'both' },
    ],
    trees: ['a', 'b', 'c'].map((id) => ({ id, name: id, kind: id === 'c' ? 'quince' : 'pear', flowers: 100 })),
    crosses: [
      { id: 'within', name: 'within', seed: 'pear', pollen: 'pear', gives: 'pear', set: range(STATED.set), germination: range(STATED.germination) },
      {
        id: 'wide',
        name: 'wide',
        seed: 'pear',
        pollen: 'quince',
        gives: 'both',
        set: 0.3,
        germination: 0.5,
        weakness: { share: range(STATED.weakShare), onset: 2, course: { halfLife: 5 }, rootBorne: { chance: 0.5 } },
      },
    ],
    stocks: [{ id: 'stock', name: 'stock', takeTender: range(STATED.takeTender), takeRipe: range(STATED.takeRipe) }],
    plans: [
      {
        id: 'plan',
        mark: 'A',
        name: 'plan',
        generations: [
          { id: 'one', name: 'one', seedParents: parents, pollen: [{ tree: 'b' }], flowers: 10, seedlings: 10, springs: 1, judge: 1, keep: { howMany: 1 } },
        ],
      },
    ],
    log: { batches },
  });
  if (!reading.ok) throw new RangeError(reading.problems.map(({ message }) => message).join(' '));
  return reading.programme;
}

function truthOf(stream: Stream): Truth {
  const draw = ([low, likely, high]: readonly [number, number, number]): number => {
    const { alpha, beta } = pertShape(low, likely, high);
    return low + (high - low) * betaFrom(stream, alpha, beta);
  };
  const drawn = Object.fromEntries(Object.entries(STATED).map(([key, stated]) => [key, draw(stated)]));
  const of = (key: keyof typeof STATED): number => drawn[key] ?? NaN;
  return {
    set: of('set'),
    germination: of('germination'),
    weakShare: of('weakShare'),
    takeTender: of('takeTender'),
    takeRipe: of('takeRipe'),
    firstWinter: of('firstWinter'),
    laterWinters: of('laterWinters'),
    halfFruitBy: of('halfFruitBy'),
    ninetyFruitBy: of('ninetyFruitBy'),
    neverFruits: betaFrom(stream, NEVER.hits + 0.5, NEVER.of - NEVER.hits + 0.5),
  };
}

/** The log that a breeder of an orchard of this truth would keep: two to five springs, one or two pairs, one wide cross that is grafted. */
function logOf(truth: Truth, stream: Stream): unknown[] {
  const count = (n: number, p: number): number => binomialInverse(stream.uniform(), n, p);
  const between = (low: number, high: number): number => low + Math.floor(stream.uniform() * (high - low + 1));
  const luckOf = (): number => betaFrom(stream, LUCK * LUCK_WEIGHT, (1 - LUCK) * LUCK_WEIGHT);
  const [luckSet, luckUp] = [luckOf(), luckOf()];
  const [springs, pairs] = [between(2, 5), between(1, 2)];
  const paces = Array.from({ length: pairs }, () => lognormalFrom(stream.uniform(), FAMILY_SPREAD));
  const { shape, scale } = firstFruitShape(EARLIEST, truth.halfFruitBy, truth.ninetyFruitBy);
  const batches: unknown[] = [];
  for (let s = 0; s < springs; s += 1) {
    const year = 2000 + s;
    const up = springRate(stream, truth.germination, luckUp);
    paces.forEach((pace, p) => {
      const flowers = between(30, 150);
      const fruits = count(flowers, springRate(stream, truth.set, luckSet));
      const cameUp = count(4 * fruits, up);
      const one = count(cameUp, 1 - truth.firstWinter);
      const four = count(one, (1 - truth.laterWinters) ** 3);
      const looked = year + 1 + between(6, 11);
      const trees = Array.from({ length: Math.min(15, four) }, (_, t) => {
        const bears = stream.uniform() >= truth.neverFruits;
        const first = year + 1 + Math.ceil(EARLIEST - 1 + pace * weibullQuantile(stream.uniform(), { shape, scale }));
        return { tag: `${String(year)}.${String(p)}.${String(t)}`, lookedUntil: looked, ...(bears && first <= looked ? { firstFruit: first } : {}) };
      });
      const counted = { flowers, fruits, sown: 4 * fruits, cameUp };
      batches.push({
        id: `b${String(year)}-${String(p)}`,
        name: 'b',
        year,
        seed: { tree: 'a' },
        pollen: { tree: p === 0 ? 'b' : 'a' },
        counts: [
          ...Object.entries(counted).map(([stage, number]) => ({ stage, count: number })),
          { stage: 'alive', count: one, when: String(year + 2) },
          { stage: 'alive', count: four, when: String(year + 5) },
        ],
        trees,
      });
    });
  }
  [1, 12].forEach((month) => {
    const [cameUp, grafted] = [between(20, 60), between(8, 30)];
    const counted = { cameUp, weak: count(cameUp, truth.weakShare), grafted, took: count(grafted, month === 1 ? truth.takeTender : truth.takeRipe) };
    batches.push({
      id: `wide-${String(month)}`,
      name: 'wide',
      year: 2003,
      seed: { tree: 'a' },
      pollen: { tree: 'c' },
      grafting: { who: 'some', month, stock: 'stock' },
      counts: Object.entries(counted).map(([stage, number]) => ({ stage, count: number })),
    });
  });
  return batches;
}

/** How many of so many simulated orchards have each true rate within the range that nine in ten parts of belief lie in. */
export function coverage(word: string, orchards: number): { readonly rate: Learnable; readonly hits: number; readonly of: number }[] {
  const stream = streamOf(word);
  const tally = RATES.map((rate) => ({ rate, hits: 0, of: 0 }));
  for (let o = 0; o < orchards; o += 1) {
    const truth = truthOf(stream);
    const { rates } = learnRates(programmeWith(logOf(truth, stream)), (from, to) => `counts ${String(from)} to ${String(to)}`);
    for (const row of tally) {
      const learned = rates.find(({ what, of }) => what === row.rate && (of.id !== 'wide') === (row.rate !== 'weakShare'));
      if (!learned) continue;
      row.of += 1;
      if (truth[row.rate] >= learned.after.nine.low && truth[row.rate] <= learned.after.nine.high) row.hits += 1;
    }
  }
  return tally;
}

/** An orchard of several seasons is many draws: the full number is 400, a quick look takes a twentieth. */
const TRIALS_AN_ORCHARD = 10;

export const learnedSamplers: Samplers = {
  'learned-rates-cover': (inputs, many) =>
    coverage(inputs.entry.id, Math.round(many(inputs.number('orchards') * TRIALS_AN_ORCHARD) / TRIALS_AN_ORCHARD)).map(({ hits, of }) => share(hits, of)),
};
