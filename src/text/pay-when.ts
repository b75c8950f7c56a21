import type { ChanceAt, WhenAnswer } from '../decisions/when.ts';
import type { Interval } from '../results/outlook.ts';
import { percent, percentRange, plusMinus } from './charts.ts';
import type { Piece } from './headline.ts';
import { decimals, differenceInWords, differenceRange, halves, monthsInWords, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';

const NB = '\u00a0';

/** "2 to 3 months", "8 months". */
const months = (from: number, to: number): string =>
  from === to ? `${halves(from)}${NB}${from === 1 ? 'month' : 'months'}` : `${halves(from)} to ${halves(to)}${NB}months`;
const month = (at: number): string => months(at, at);

export const whenText = {
  asking: 'At what age should they be grafted?',
  about: 'Waiting ripens the wood, but the weak ones die meanwhile.',
  method:
    'Upper picture: of ten weak seedlings, the share alive at an age × the share of grafts that take at it, reckoned at each quarter month in 400 draws of your guesses, and its mean. Lower picture: the whole plan, run on the same futures at each age; the shaded ages are those next to the best whose paired difference from it has a 95 % interval that holds 0 (Bonett & Price 2012).',
  names: { take: 'take, of 10', alive: 'alive, of 10', saved: 'alive × take' },
  short: { take: 'take', alive: 'alive', saved: 'saved' },
  by: (lastYear: number) => `by ${String(lastYear)}`,
  best: (at: number, ofTen: number) => `best at ${month(at)}: ${decimals(ofTen)} of 10 saved`,
  bestShort: (at: number) => `best: ${month(at)}`,
  level: (from: number, to: number) => `${months(from, to)}: ${pay.noDifference}`,
  chance: (lastYear: number) => `chance by ${String(lastYear)}`,
  error: ({ low, high }: Interval) => `${plusMinus(low, high)} in${NB}100`,
  errorShort: ({ low, high }: Interval) => plusMinus(low, high),
  across: 'age at grafting, months from germination ›',
  acrossShort: 'months from germination ›',
  stands: (at: number) => `the plan: ${month(at)}`,
  slider: 'Age at grafting to read',
  none: 'no age chosen',
  keys: '← → moves the age.',
  heads: ['Grafted at', 'Alive, of 10', 'Take, of 10', 'Saved, of 10', 'Proven tree', 'Truly good, of those', 'Against the best age'],
  plan: 'What it does to the whole plan',
  early: 'Too early, too late',
  rests: 'What it rests on',
} as const;

/** The section's finding: the best age, and the stretch that no future made tells apart from it. */
export function whenFinding({ best, level }: WhenAnswer): readonly Piece[] {
  if (level.from === level.to) return [{ text: `Graft at ${month(best)}` }];
  return [
    {
      text: `Graft at ${month(best)}; ${level.from === best ? `up to ${month(level.to)}` : level.to === best ? `from ${month(level.from)}` : `from ${months(level.from, level.to)}`}: ${pay.noDifference}`,
    },
  ];
}

const chanceOf = ({ value, low, high }: Interval): string => `${percent(value)} (${percentRange(low, high)})`;

/** What the age does to the plan. */
export function wholePlan(answer: WhenAnswer, lastYear: number): readonly string[] {
  const { chances, best, level, stands, clear } = answer;
  const at = chances.find((chance) => chance.month === best);
  if (!at) return [];
  const truly = trulyOfTen(at.outcome.trulyGood);
  const flat = level.from === level.to ? '' : ` From ${months(level.from, level.to)} it is flat, with ${pay.noDifference}: choose the month that suits you.`;
  const own = chances.find((chance) => chance.month === stands);
  return [
    `Lower picture: the chance of a proven tree by ${String(lastYear)}, at best ${chanceOf(at.outcome.chance)} at ${month(best)}.${flat}`,
    ...(truly === null ? [] : [`${pay.trulyGood(truly).replace(/^o/, 'O')}.`]),
    ...(stands === null || !own
      ? ['The plan as it stands grafts nothing here.']
      : stands === best
        ? [`The plan grafts at ${month(stands)}: the best of the ages run.`]
        : [
            `The plan grafts at ${month(stands)}: ${clear && own.minusBest ? `${differenceInWords(own.minusBest.chance, true)} against the best` : pay.noDifference} (${own.minusBest ? differenceRange(own.minusBest.chance) : ''}).`,
          ]),
  ];
}

/** Which side is dearer: the first and the last age that were run, against the best. */
export function tooEarlyTooLate({ chances, best, level, curve }: WhenAnswer): readonly string[] {
  const [first, last] = [chances[0], chances.at(-1)];
  const alive = (at: number) => curve.reduce((near, point) => (Math.abs(point.month - at) < Math.abs(near.month - at) ? point : near), curve[0] ?? NOWHERE);
  const side = (one: ChanceAt | undefined, words: string) =>
    one?.minusBest && one.month !== best && (one.month < level.from || one.month > level.to)
      ? [
          `${words} at ${month(one.month)} the chance is ${chanceOf(one.outcome.chance)}, ${differenceInWords(one.minusBest.chance, one.minusBest.clear)} against the best: ${decimals(10 * alive(one.month).alive.mean)} of 10 weak seedlings are still alive and ${decimals(10 * alive(one.month).take.mean)} of 10 grafts take.`,
        ]
      : [];
  return [...side(first, 'Too early,'), ...side(last, 'Too late,')];
}

const NOTHING = { mean: 0, p10: 0, p50: 0, p90: 0 };
const NOWHERE = { month: 0, alive: NOTHING, take: NOTHING, saved: NOTHING };

/** What the best month rests on. */
export function whenRests({ savesMost, toldFrom, who, scions }: WhenAnswer): readonly string[] {
  const { p10, p90 } = savesMost.overGuesses;
  return [
    `Of ten weak seedlings most are saved at ${month(savesMost.month)}: ${decimals(savesMost.ofTen)}${scions > 1 ? `, with ${String(scions)} scions each` : ''}.`,
    halves(p10) === halves(p90)
      ? `Whatever your guesses allow, that month is ${month(p10)}.`
      : `Over what your guesses allow, that month lies from ${months(p10, p90)} (8 in 10).`,
    ...(who === 'weak' && toldFrom > 0 ? [`Before ${month(toldFrom)} the weak ones cannot be told, so the plan is run from then on.`] : []),
  ];
}

/** An age, read aloud. */
export function ageWords({ curve }: WhenAnswer, { month: at, outcome, minusBest }: ChanceAt): string {
  const point = curve.reduce((near, one) => (Math.abs(one.month - at) < Math.abs(near.month - at) ? one : near), curve[0] ?? NOWHERE);
  const truly = trulyOfTen(outcome.trulyGood);
  const against = minusBest
    ? `${differenceInWords(minusBest.chance, minusBest.clear)} against the best age (${differenceRange(minusBest.chance)})`
    : 'the best age run';
  return `At ${month(at)}: of 10 weak ${decimals(10 * point.alive.mean)} alive, of 10 grafts ${decimals(10 * point.take.mean)} take, so ${decimals(point.saved.mean)} saved. Chance ${chanceOf(outcome.chance)}${truly === null ? '' : `, of ten called proven about ${truly} truly good`}; ${against}.`;
}

/** "5 months" for a table; the same words as in sentences. */
export const ageHead = (at: number): string => (at < 12 || at % 12 !== 0 ? month(at) : monthsInWords(at));
