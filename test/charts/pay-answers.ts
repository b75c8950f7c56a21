import type { CopiesAnswer } from '../../src/decisions/copies.ts';
import type { GraftMap } from '../../src/decisions/graft-map.ts';
import type { Difference, Outcome } from '../../src/decisions/outcome.ts';
import type { RootsLine } from '../../src/decisions/roots-line.ts';
import { ringsOf, type Standing } from '../../src/decisions/standing.ts';
import type { WhenAnswer } from '../../src/decisions/when.ts';
import type { Interval } from '../../src/results/outlook.ts';
import { aliveAt, takeAt } from '../../src/statistics/graft.ts';

/** Invented answers for pictures: plain figures from closed forms, no futures. */

const around = (value: number, half = 0.015): Interval => ({ value, low: Math.max(0, value - half), high: Math.min(1, value + half) });
const level = (mean: number) => ({ mean, p10: mean, p50: mean, p90: mean });

export const outcome = (chance: number): Outcome => ({
  futures: 4000,
  chance: around(chance),
  trulyGood: around(0.74),
  yearProven: { p10: 2036, p50: chance >= 0.5 ? 2045 : null, p90: null },
  seedlings: level(60),
  fruiting: level(20),
  grafts: level(20),
  treeYears: level(200),
  totalHours: level(260),
  busiestHours: level(40),
});

export function difference(value: number, clear: boolean): Difference {
  const half = clear ? Math.abs(value) / 2 : Math.abs(value) + 0.004;
  const chance = { value, low: value - half, high: value + half };
  return { chance, clear, sooner: around(0.1), later: around(0.05), seedlings: around(0), grafts: around(0), treeYears: around(0), totalHours: around(0) };
}

/** A map of so many columns and rows whose break-even take is given, with an interval of so much to either side. */
export function mapOf(columns: number, breakEven: (months: number) => number, half = 0.08): GraftMap {
  const [from, to] = [1, 96];
  const at = (i: number, of: number) => (i + 0.5) / of;
  const clamp = (share: number) => Math.min(1, Math.max(0, share));
  const halfLives = Array.from({ length: columns }, (_, i) => from * (to / from) ** at(i, columns));
  const takes = Array.from({ length: columns }, (_, i) => at(i, columns));
  const line = halfLives.map((months) => {
    const take = clamp(breakEven(months));
    const width = take === 0 ? 0 : half;
    return { take, low: clamp(take - width), high: clamp(take + width) };
  });
  return {
    from,
    to,
    halfLives,
    takes,
    line,
    cells: takes.flatMap((take) =>
      line.map((edge) => {
        const value = take - edge.take;
        const wins = take > edge.high ? 'graft' : take < edge.low ? 'own' : null;
        return { difference: { value, low: value - half, high: value + half }, wins, futures: 300 } as const;
      }),
    ),
  };
}

/** Rising with the months: 0 up to a year, all of the take at eight years. */
export const RISING = (months: number): number => Math.log(months / 12) / Math.log(8);

export function standingAt(halfLife: number, take: number, spread = 0.4, takeSpread = 0.1): Standing {
  const draws = Array.from({ length: 100 }, (_, i) => ({
    halfLife: halfLife * Math.exp(spread * Math.sin(i)),
    take: take + takeSpread * Math.cos(7 * i),
  }));
  return { ...ringsOf(draws), draws };
}

export const ROOTS: RootsLine = {
  futures: 1000,
  breakEven: { value: 0.25, low: 0.2, high: 0.3 },
  points: Array.from({ length: 21 }, (_, i) => {
    const rootChance = i / 20;
    const value = 0.4 * (rootChance - 0.25);
    return {
      rootChance,
      own: around(0.34),
      grafted: around(0.34 + value),
      trulyGood: { grafted: around(0.74), own: around(0.7) },
      difference: { value, low: value - 0.02, high: value + 0.02 },
      clear: Math.abs(value) > 0.02,
    };
  }),
};

/** Half of the weak dead five months after month 2; wood ripe at a year, take from 4 to 8 of 10: alive × take by the closed form. */
export const WHEN: WhenAnswer = whenOf({ stands: 8, best: 8, level: { from: 5, to: 10 } });

export function whenOf({ stands, best, level: range }: Pick<WhenAnswer, 'stands' | 'best' | 'level'>): WhenAnswer {
  const curve = Array.from({ length: 95 }, (_, i) => {
    const month = 0.5 + i / 4;
    const [alive, take] = [aliveAt(month, 2, 5), takeAt(month, 0.4, 0.8, 12)];
    return { month, alive: level(alive), take: level(take), saved: level(10 * alive * take) };
  });
  const most = curve.reduce((a, b) => (b.saved.mean > a.saved.mean ? b : a));
  return {
    question: 'when',
    plan: 'd',
    done: true,
    futures: 4000,
    clear: false,
    cannotSay: null,
    generation: 'd1',
    name: 'Wide cross',
    stock: 'field-pear',
    who: 'weak',
    scions: 1,
    stands,
    toldFrom: 2,
    curve,
    savesMost: { month: most.month, ofTen: most.saved.mean, overGuesses: level(most.month) },
    chances: [2, 3, 5, 8, 10, 12, 18, 24].map((month) => ({
      month,
      outcome: outcome(0.58 - 0.0004 * (month - best) ** 2),
      minusBest: month === best ? null : difference(-0.0004 * (month - best) ** 2, month < range.from || month > range.to),
    })),
    best,
    level: range,
  };
}

/** Losses of check PC8 of the model page: each copy dies with 4 % a year, through so many winters. */
export const YEARLY_LOSS = 0.04;
export const COPIES: CopiesAnswer = {
  question: 'copies',
  plan: 'd',
  done: true,
  futures: 4000,
  clear: true,
  cannotSay: null,
  tree: 'old-hedgerow',
  name: 'Old Hedgerow',
  startYear: 2027,
  ways: [1, 2, 3, 4].flatMap((copies) =>
    [1, 2].flatMap((gardens) => {
      if (gardens > copies) return [];
      const garden = 0.99;
      const lostBy = Array.from({ length: 31 }, (_, w) => {
        const dead = 1 - (1 - YEARLY_LOSS) ** w;
        const place = (number: number) => 1 - garden ** w * (1 - dead ** number);
        return gardens === 1 ? place(copies) : place(Math.ceil(copies / 2)) * place(Math.floor(copies / 2));
      });
      const asItStands = copies === 1;
      const gain = 0.05 + 0.01 * copies;
      return [
        {
          copies,
          gardens,
          asItStands,
          lostBy,
          lostCounted: around(lostBy.at(-1) ?? 0, 0.05),
          outcome: outcome(asItStands ? 0.58 : 0.58 + gain),
          minusAsItStands: asItStands ? null : { ...difference(gain, true), chance: { value: gain, low: gain - 0.008, high: gain + 0.008 } },
        },
      ];
    }),
  ),
};
