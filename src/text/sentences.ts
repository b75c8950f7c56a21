/**
 * What a plan's outlook says, in sentences: for the page, the handout and the command line.
 * A chance is worded by its whole Monte Carlo interval, so that no sentence claims more than the futures made allow.
 */
import type { Interval, PlanOutlook, Spread } from '../results/outlook.ts';
import { Z95 } from '../statistics/interval.ts';
import { counted, whole } from './charts.ts';

const NB = '\u00a0';

/** Chances beyond these have words instead of tenths. */
const HARDLY = 0.025;
const FEWER = 0.05;

/** How often, as much as a hand can count; `words` stand before "times in 10". */
export type HowOften = { readonly kind: 'hardly' | 'nearly' | 'unknown' } | { readonly kind: 'tenths'; readonly words: string; readonly one: boolean };

/** −1 hardly ever, 0 fewer than 1 in 10, 1 … 9, 10 more than 9 in 10, 11 in nearly every future. */
function level(share: number): number {
  if (share < HARDLY) return -1;
  if (share < FEWER) return 0;
  if (share > 1 - HARDLY) return 11;
  if (share > 1 - FEWER) return 10;
  return Math.round(share * 10);
}

/** One tenth is named alone where no chance that the interval allows is further from it than this. */
const NEAR = 0.075;

/** The tenth, 1 … 9, that every chance of the interval is near to; null where there is none. */
function oneTenth({ value, low, high }: Interval): number | null {
  const tenth = Math.min(9, Math.max(1, Math.round(value * 10)));
  return low >= FEWER && high <= 1 - FEWER && tenth / 10 - low <= NEAR && high - tenth / 10 <= NEAR ? tenth : null;
}

/** Words a chance by the whole of its interval, which holds 0 ≤ low ≤ value ≤ high ≤ 1. */
export function howOften(chance: Interval): HowOften {
  const alone = oneTenth(chance);
  return alone === null ? byEnds(chance) : { kind: 'tenths', words: String(alone), one: alone === 1 };
}

/** An interval wider than this is no answer. */
const TELLS_NOTHING = 0.6;

/** Words a chance by the ends of its interval alone: what two chances have in common is worded alike. */
function byEnds({ low, high }: Interval): HowOften {
  const tenths = (words: string, one = false): HowOften => ({ kind: 'tenths', words, one });
  if (high - low > TELLS_NOTHING) return { kind: 'unknown' };
  const [from, to] = [level(low), level(high)];
  if (from === 11) return { kind: 'nearly' };
  if (to === -1) return { kind: 'hardly' };
  if (to === 0) return tenths('fewer than 1', true);
  if (from === 10) return tenths('more than 9');
  if (from <= 0) return to >= 10 ? { kind: 'unknown' } : fewerThan(Math.floor(high * 10) + 1);
  if (to >= 10) return moreThan(Math.ceil(low * 10) - 1);
  return from === to ? tenths(String(from), from === 1) : tenths(`${String(from)} ${to === from + 1 ? 'or' : 'to'} ${String(to)}`);
}

const fewerThan = (n: number): HowOften => ({ kind: 'tenths', words: `fewer than ${String(n)}`, one: n === 1 });
const moreThan = (n: number): HowOften => (n < 1 ? { kind: 'unknown' } : { kind: 'tenths', words: `more than ${String(n)}`, one: n === 1 });

/** "6 in 10", "6 or 7 in 10", "hardly ever": a chance that stands beside others, so none is named higher than the next without ground. */
export function inTenBeside(chance: Interval): string {
  const often = byEnds(chance);
  switch (often.kind) {
    case 'tenths':
      return `${often.words} in${NB}10`;
    case 'hardly':
      return 'hardly ever';
    case 'nearly':
      return 'nearly always';
    case 'unknown':
      return 'too few futures to say';
  }
}

/** Years between which the futures made leave the year by which half are there; null beyond the last year. */
interface HalfWay {
  readonly from: number | null;
  readonly to: number | null;
}

type Curve = Pick<PlanOutlook, 'chance' | 'runs' | 'chanceByYear'>;

/** Test inversion, as for survival medians: Brookmeyer, R. & Crowley, J. (1982) Biometrics 38:29–41 (from memory). */
function halfOfAll({ chanceByYear }: Curve): HalfWay {
  return { from: chanceByYear.find(({ high }) => high >= 0.5)?.year ?? null, to: chanceByYear.find(({ low }) => low >= 0.5)?.year ?? null };
}

/** The r-th and the (s − r + 1)-th of the s futures that succeed hold their middle year (median by order statistics, Conover 1999, from memory). */
function halfOfSuccesses({ chanceByYear, chance, runs }: Curve): HalfWay {
  const successes = Math.round(chance.value * runs);
  const rank = Math.floor((successes - Z95 * Math.sqrt(successes)) / 2);
  if (rank < 1) return { from: null, to: null };
  const yearOf = (place: number) => chanceByYear.find(({ value }) => Math.round(value * runs) >= place)?.year ?? null;
  return { from: yearOf(rank), to: yearOf(successes - rank + 1) };
}

function byYears(from: number, to: number): string {
  if (from === to) return `by ${String(from)}`;
  return to === from + 1 ? `by ${String(from)} or ${String(to)}` : `between ${String(from)} and ${String(to)}`;
}

/** A median whose interval is wider than this says nothing that helps. */
const WIDEST_YEARS = 10;

function halfClause(plan: Curve): string {
  const all = halfOfAll(plan);
  if (all.from !== null && all.to !== null) return all.to - all.from > WIDEST_YEARS ? '' : `; half of all futures get there ${byYears(all.from, all.to)}`;
  const works = halfOfSuccesses(plan);
  if (works.from === null || works.to === null || works.to - works.from > WIDEST_YEARS) return '';
  return `; when it works, half of the time ${byYears(works.from, works.to)}`;
}

function opening(plan: Pick<PlanOutlook, 'name'> & Curve, lastYear: number): string {
  const often = howOften(plan.chance);
  const tree = `a proven tree by ${String(lastYear)}`;
  switch (often.kind) {
    case 'tenths':
      return `${plan.name}: ${often.words} ${often.one ? 'time' : 'times'} in${NB}10 you have ${tree}${halfClause(plan)}.`;
    case 'nearly':
      return `${plan.name}: in nearly every future you have ${tree}${halfClause(plan)}.`;
    case 'hardly':
      return `${plan.name}: you hardly ever have ${tree}.`;
    case 'unknown':
      return `${plan.name}: too few futures yet to say how often you have ${tree}.`;
  }
}

/** How far a mean or middle value of a count may be off for want of futures (about 95 %). A long thin tail shows in the gap between the two. */
export function countError({ mean, p10, p50, p90 }: Spread, futures: number): number {
  // 80 % of a normal distribution lies within 2.5631 standard deviations; a tail thinner than a tenth that shifts the mean by d has an SD of about 3d.
  const sd = Math.max((p90 - p10) / 2.5631, 3 * Math.abs(mean - p50));
  return futures > 0 ? (Z95 * Math.sqrt(Math.PI / 2) * sd) / Math.sqrt(futures) : Infinity;
}

/**
 * Rounds a count to what a hand can count, and no finer than it is known: 154 → 150, 46 → 45, 7 → 7.
 * @param n at least 0
 * @param error how far it may be off
 */
export function handCount(n: number, error = 0): number {
  let step = n < 12 ? 1 : n < 100 ? 5 : n < 1000 ? 10 : 50;
  let next = step === 1 || step === 10 ? 5 : 2;
  while (step < error && step < n) {
    step *= next;
    next = next === 5 ? 2 : 5;
  }
  return Math.round(n / step) * step;
}

function about(n: number, error: number, one: string, many: string): string {
  const count = handCount(n, error);
  if (count === 0) return `${n === 0 ? 'no' : 'hardly any'} ${many}`;
  return `about ${whole(count)} ${count === 1 ? one : many}`;
}

/** From fewer futures than this a spread says nothing on its own error. */
const FEWEST = 20;

/** Middle hours, whole: the table beside says them so too. */
function hoursWords({ p50 }: Spread): string {
  const hours = Math.round(p50);
  return hours === 0 ? 'hardly any hours' : `about ${whole(hours)} ${hours === 1 ? 'hour' : 'hours'}`;
}

function effort({ seedlings, busiestHours, runs }: Pick<PlanOutlook, 'seedlings' | 'busiestHours' | 'runs'>): string {
  if (runs < FEWEST) return '';
  const raise = about(seedlings.mean, countError(seedlings, runs), 'seedling', 'seedlings');
  const hours = busiestHours.p90 === 0 ? '' : ` and to need ${hoursWords(busiestHours)} in the busiest year`;
  return `Expect to raise ${raise}${hours}.`;
}

/** Where the interval is wider than this, the trees proven are too few to say anything. */
const WIDEST = 0.4;

function trust(trulyGood: Interval | null): string {
  if (trulyGood === null) return '';
  const { low, high } = trulyGood;
  if (high - low > WIDEST) return 'Too few trees were proven to say how many truly are as good as they looked.';
  const say = (words: string, verb = 'are') => `Of ten trees you would call proven, ${words} truly ${verb}.`;
  const alone = oneTenth(trulyGood);
  if (alone !== null) return say(`about ${counted(alone)}`, alone === 1 ? 'is' : 'are');
  const [from, to] = [Math.round(low * 10), Math.round(high * 10)];
  if (to === 0) return say('hardly any');
  if (from === 10) return say('nearly all');
  if (from === to) return say(`about ${counted(from)}`, from === 1 ? 'is' : 'are');
  return say(`${from === 0 ? 'none' : counted(from)} ${to === from + 1 ? 'or' : 'to'} ${counted(to)}`);
}

function guessed(guesses: PlanOutlook['guesses']): string {
  if (guesses === null) return '';
  const off = (words: string) => `If your guesses are off: ${words}.`;
  const [from, to] = [level(guesses.low), level(guesses.high)];
  if (to === -1) return off('still hardly ever');
  if (from === 11) return off('still nearly always');
  if (to <= 0) return off(`still fewer than 1 in${NB}10`);
  if (from >= 10) return off(`still more than 9 in${NB}10`);
  if (from === to) return off(`still ${String(from)} in${NB}10`);
  return off(`${from <= 0 ? 'fewer than 1' : String(from)} to ${to >= 10 ? 'nearly 10' : String(to)} in${NB}10`);
}

interface Part {
  readonly if: string;
  readonly chance: Interval;
}

/** A smaller difference between alternatives changes no plan, and among many alternatives would now and then be luck. */
const MATTERS = 0.1;

/** The chance under each alternative, where some two alternatives are surely apart; else nothing. */
function leaning(parts: readonly Part[]): string {
  const apart = parts.some((a) => parts.some((b) => a.chance.low > b.chance.high && a.chance.value - b.chance.value >= MATTERS));
  const words = parts.map((part) => `${part.if}: ${inTenBeside(part.chance)}`).join('; ');
  return apart ? `${words.replace(/^./, (letter) => letter.toUpperCase())}.` : '';
}

function leans({ byRule, byFact }: Pick<PlanOutlook, 'byRule' | 'byFact'>): string[] {
  const traits = [...new Set(byRule.map(({ trait }) => trait))];
  const facts = [...new Set(byFact.map(({ fact }) => fact))];
  return [
    ...traits.map((trait) => leaning(byRule.filter((part) => part.trait === trait).map(({ rule, chance }) => ({ if: `if “${rule}”`, chance })))),
    ...facts.map((fact) => leaning(byFact.filter((part) => part.fact === fact).map(({ holds, chance }) => ({ if: holds ? `if ${fact}` : 'if not', chance })))),
  ].filter((words) => words !== '');
}

/** Every sentence on a plan; an empty text where there is nothing to say. */
export interface PlanSentences {
  /** The chance, and the year by which half are there. */
  readonly chance: string;
  /** Seedlings to raise, hours in the busiest year. */
  readonly effort: string;
  /** How many of the trees called proven truly are. */
  readonly trust: string;
  /** The range that the guesses allow. */
  readonly guesses: string;
  /** One for each rule of inheritance or fact that the answer leans on. */
  readonly leans: readonly string[];
}

export type SaidPlan = Pick<
  PlanOutlook,
  'name' | 'runs' | 'chance' | 'chanceByYear' | 'guesses' | 'trulyGood' | 'byRule' | 'byFact' | 'seedlings' | 'busiestHours'
>;

/**
 * Says what a plan's outlook is.
 * @param lastYear last judging year, a calendar year
 */
export function planSentences(plan: SaidPlan, lastYear: number): PlanSentences {
  return { chance: opening(plan, lastYear), effort: effort(plan), trust: trust(plan.trulyGood), guesses: guessed(plan.guesses), leans: leans(plan) };
}

/** All of it in one paragraph. */
export function planParagraph(plan: SaidPlan, lastYear: number): string {
  const { chance, effort: work, trust: good, guesses, leans: rules } = planSentences(plan, lastYear);
  return [chance, work, good, guesses, ...rules].filter((words) => words !== '').join(' ');
}
