import type { ChainStep, Narrowest } from '../decisions/how-many-chain.ts';
import type { HeldBack, Point, ReadOff } from '../decisions/how-many-curve.ts';
import type { ExactAnswer, Needed } from '../decisions/how-many-exact.ts';
import type { LeverId } from '../decisions/how-many-levers.ts';
import type { HowManyAnswer } from '../decisions/how-many.ts';
import type { Interval } from '../results/outlook.ts';
import { inTenWords, listed, percent, percentRange, whole } from './charts.ts';
import type { Piece } from './headline.ts';
import { besideEachOther, differenceInWords, differenceRange, ofTen, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';
import { heldWords, leftWords, leverWords, passWords, stageWords, stepWords } from './pay-how-many-names.ts';
import { handCount } from './sentences.ts';

const NB = '\u00a0';

export const howManyText = {
  asking: 'How many flowers?',
  about: 'Every number lives through the same futures; all else is as the plan says.',
  lever: 'Number of',
  generation: 'In',
  chance: 'Planned for a chance of',
  chances: [
    { id: '0.5', name: `5 in${NB}10` },
    { id: '0.8', name: `8 in${NB}10` },
    { id: '0.95', name: `95 in${NB}100` },
  ],
  coming: 'The picture is being worked out…',
  by: (year: number) => `by ${String(year)}`,
  hours: (hours: number) => `${whole(hours < 100 ? Math.round(hours) : handCount(hours))}${NB}h`,
  hoursCaption: 'hours in the busiest year',
  limit: (hours: number) => `your ${whole(hours)} hours`,
  slider: 'Number to read',
  none: 'no number chosen',
  keys: (mark: string) => `${mark} marks the plan as it stands. ← → goes from number to number.`,
  asItStands: 'as the plan stands',
  readOffs: 'Read-offs',
  readOffsOf: (lever: LeverId) => `Read-offs, ${leverWords[lever].choice}`,
  chanceHead: 'Chance',
  not: 'no',
  backwards: 'Planned backwards',
  backwardsNote: 'Middle counts of the futures that come to this generation, all its springs together; small: of 100, how many come from the step before.',
  reckoned: 'A check from your rates alone, not the answer',
  tableHeads: (lever: LeverId, years: readonly number[]) => [
    leverWords[lever].choice.replace(/^./, (letter) => letter.toUpperCase()),
    ...years.map((year) => `Proven tree by ${String(year)}`),
    'Truly good, of those',
    'Seedlings',
    'Hours in the busiest year',
    'Against the plan as it stands',
  ],
  method:
    'Each number is tried on the plan’s own futures. Where more cannot cost, the chances are made to rise with the number (pool adjacent violators, Ayer et al. 1955) and read off between the numbers tried, evenly in their logarithm; the range of a read-off is where the ends of the 95 % intervals (Wilson 1927) reach the same chance. “As good” is the fewest that is less than 2 in 100 below the best, or not clearly below it by paired intervals (Bonett & Price 2012) widened for the number of comparisons (Dunn 1961). The narrowest step is the one at which saving one in ten of those lost would give most trees. The reckoned number solves the binomial for so many trees (Sedcole 1977), summed over what the guesses and the parents’ genes may be.',
} as const;

/** Below this every one counts. */
const FEW = 50;
const hand = (n: number): string => whole(n < FEW ? Math.round(n) : handCount(n));
/** "about 150", rounded as a hand can count. */
const about = (n: number): string => (n < 10 ? String(Math.round(n)) : `about ${hand(n)}`);
const count = (lever: LeverId, n: number): string => `${whole(n)}${NB}${n === 1 ? leverWords[lever].one : leverWords[lever].many}${leverWords[lever].each}`;
/** The year of the last of the points' chances. */
const lastOf = (years: readonly number[]): string => String(years.at(-1) ?? '');

const pointAt = (points: readonly Point[], value: number): Point | undefined => points.find((point) => point.value === value);

/** The section's finding: more, fewer, or as it stands. */
export function howManyFinding(answer: HowManyAnswer): readonly Piece[] {
  const { lever, points, enough, best, present, clear, years, heldBack } = answer;
  const [now, other] = [pointAt(points, present), pointAt(points, enough)];
  if (!now || !other) return [{ text: leverWords[lever].question }];
  const [before, after] = besideEachOther(now.outcome.chance.value, other.outcome.chance.value);
  const stands = `a proven tree ${inTenWords(now.outcome.chance.value)}`;
  if (clear) {
    const rest = heldBack ? '' : '; no more were tried';
    return [
      { text: count(lever, enough), strong: true },
      { text: `, not ${whole(present)}, would raise the chance of a proven tree by ${lastOf(years)} from ${before} to ` },
      { text: after, strong: true },
      { text: `${enough > present ? rest : ''}.` },
    ];
  }
  if (enough < present)
    return [
      { text: `${count(lever, enough)} would do as well as ${whole(present)}`, strong: true },
      { text: `: no clear difference in the chance of a proven tree by ${lastOf(years)}, ${inTenWords(other.outcome.chance.value)}.` },
    ];
  return [
    { text: `${count(lever, present)} ${present === 1 ? 'is' : 'are'} as good as any number tried`, strong: true },
    { text: best > present ? `: no clear difference with more; ${stands} by ${lastOf(years)}.` : `; ${stands} by ${lastOf(years)}.` },
  ];
}

/** How far a proven tree is to be trusted at the number that is enough; empty where none was proven. */
export function howManyTrust({ points, enough }: HowManyAnswer): string {
  const trusted = trulyOfTen(pointAt(points, enough)?.outcome.trulyGood ?? null);
  return trusted === null ? '' : `${pay.trulyGood(trusted).replace(/^o/, 'O')}.`;
}

/** How far a proven tree is to be trusted, and what the numbers end at: small sentences beside the picture. */
export function howManyNotes(answer: HowManyAnswer): readonly string[] {
  const { lever, points, enough, heldBack, limits } = answer;
  const [at, last] = [pointAt(points, enough), points.at(-1)];
  if (!at || !last) return [];
  const trust = howManyTrust(answer);
  return [
    heldBack
      ? `${enough === 0 ? `${count(lever, 0)} will do; more` : `Past ${count(lever, enough)} more`} buys little: what holds you back then is ${held(heldBack)}.`
      : moreHelps(answer, last),
    ...allRaised(answer, at),
    ...(limits.offered !== null && limits.offered <= last.value
      ? [`The seed parents offer about ${whole(limits.offered)} flowers a spring; more cannot be tried.`]
      : []),
    ...(limits.hands !== null && limits.hands <= last.value
      ? [`Hands manage ${whole(limits.hands)} ${limits.hands === 1 ? 'flower' : 'flowers'} in one bloom; more cannot be tried.`]
      : []),
    ...hoursNote(answer),
    ...(trust === '' ? [] : [trust]),
  ];
}

function hoursNote({ limits, points }: HowManyAnswer): readonly string[] {
  const { hours } = limits;
  if (hours === null) return [];
  const over = points.find(({ outcome }) => outcome.busiestHours.p50 >= hours);
  if (over === undefined) return [`At every number tried, half of the futures stay within your ${whole(hours)} ${hours === 1 ? 'hour' : 'hours'}.`];
  const share = over.overHours ? ` (${ofTen(over.overHours.value)} futures go over it)` : '';
  return [`Your ${hours === 1 ? 'hour is' : `${whole(hours)} hours are`} used up in half of the futures by ${whole(over.value)}${share}.`];
}

const held = ({ failure, share, generation }: HeldBack): string =>
  `${heldWords[failure]} (${percent(share.value)} of all futures, ${percentRange(share.low, share.high)}; most of them in “${generation}”)`;

const moreHelps = ({ lever, best, enough }: HowManyAnswer, last: Point): string =>
  best === last.value && enough === last.value
    ? `Up to ${count(lever, last.value)}, more is better throughout.`
    : `${count(lever, enough)}: nothing tried is clearly better.`;

function allRaised({ lever }: HowManyAnswer, { allRaised: all }: Point): readonly string[] {
  if (lever !== 'flowers' || !all || all.value < 0.5) return [];
  return [`At that number all seedlings you want come up in ${ofTen(all.value)} futures. For more, raise “Seedlings wanted”.`];
}

/** Chances that are reached at no number tried, by any year: "80 and 95 %: not reached at any number of flowers". */
export function neverReached({ readOffs, lever }: HowManyAnswer): { readonly text: string; readonly chances: readonly number[] } | null {
  const chances = [...new Set(readOffs.map(({ chance }) => chance))].filter((chance) => readOffs.every((one) => one.chance !== chance || one.at === null));
  if (chances.length === 0) return null;
  return {
    text: `${listed(chances.map((chance) => String(Math.round(100 * chance))))}${NB}%: not reached with any number of ${leverWords[lever].many}`,
    chances,
  };
}

/** A read-off as two lines of a cell: the number, and what the futures made leave open. */
export function readOffLines({ at, already, low, high }: ReadOff): readonly [string, string] {
  if (at === null) return [howManyText.not, low === null ? '' : `perhaps from ${hand(low)}`];
  if (already) return [at <= 1 ? whole(at) : `${whole(Math.round(at))} or fewer`, ''];
  return [about(at), `${hand(low ?? at)}–${high === null ? 'more than tried' : hand(high)}`];
}

/** What is planned backwards, in a sentence or two. */
export function backwardsWords({ backwards, lever, points, years }: HowManyAnswer): readonly Piece[] {
  if (!backwards) return [];
  const { wanted, trees, needed, at, narrowest } = backwards;
  const top = points.reduce<Interval | null>((best, { outcome: { chance } }) => (best && best.value >= chance.value ? best : chance), null);
  const goal = `For ${trees === 1 ? 'one proven tree' : `${whole(trees)} proven trees`} ${timesWords(wanted)} by ${lastOf(years)}: `;
  const [number, range] = readOffLines(needed);
  const found: readonly Piece[] =
    needed.at === null
      ? [
          { text: top && top.high >= wanted ? 'just short of it' : `not reached with any number of ${leverWords[lever].many} tried`, strong: true },
          {
            text: top
              ? `; at best ${percent(top.value)} (${percentRange(top.low, top.high)})${needed.low === null ? '' : `, from about ${hand(needed.low)} on`}.`
              : '.',
          },
        ]
      : [{ text: ofLever(number, lever), strong: true }, { text: range === '' ? '.' : ` (${range}).` }];
  return [{ text: goal }, ...found, ...(narrowest ? narrowWords(narrowest, at, needed.at === null, lever) : [])];
}

/** "about 40 flowers each spring", "1 flower each spring". */
const ofLever = (number: string, lever: LeverId): string =>
  `${number} ${number === '1' ? leverWords[lever].one : leverWords[lever].many}${leverWords[lever].each}`;

const timesWords = (chance: number): string => inTenWords(chance).replace(`${NB}in`, `${NB}times in`);

function narrowWords({ stage, pass }: Narrowest, at: number, said: boolean, lever: LeverId): readonly Piece[] {
  const with_ = said ? `With ${ofLever(about(at), lever)} the narrowest step is ` : 'The narrowest step is ';
  return [{ text: ` ${with_}` }, { text: stepWords[stage], strong: true }, { text: `: ${shareWords(pass)} ${passWords[stage]}.` }];
}

const shareWords = ({ value, low, high }: Interval): string => `${tenthless(value)} of${NB}100 (${percentRange(low, high)})`;
const tenthless = (share: number): string => (share > 0 && share < 0.095 ? String(Math.round(1000 * share) / 10) : String(Math.round(100 * share)));

/** A step of the chain: its count and what comes from the step before. */
export function chainWords({ stage, count: n, pass, full }: ChainStep): { readonly count: string; readonly pass: string } {
  const number = n < 10 ? String(Math.round(10 * n) / 10) : whole(handCount(n));
  const [one, many] = stageWords[stage];
  const share = pass === null ? '' : stage === 'seeds' ? `${String(Math.round(10 * pass.value) / 10)} a fruit` : `${tenthless(pass.value)} of${NB}100`;
  const words = full && (stage === 'seedlings' || stage === 'kept') ? 'all that you want' : share;
  return { count: `${number}${NB}${number === '1' ? one : many}`, pass: words };
}

/** The reckoned answer, in sentences. */
export function exactWords({ name, trees, trait, wanted, flowers, seedlings, atMost, leavesOut }: ExactAnswer): readonly string[] {
  const what = trait ? `seen to show ${trait.name} in ${whole(trait.atLeast)} of ${whole(Math.max(1, trait.crops))} crops` : 'in fruit in time';
  const goal = `${trees === 1 ? 'one tree' : `${whole(trees)} trees`} of “${name}” ${what} ${timesWords(wanted)}`;
  const first =
    flowers.at === null
      ? `By rates alone no number of flowers gives ${goal}: with ever more the chance comes to ${percent(atMost)}.`
      : `By rates alone it takes ${neededWords(flowers)} ${flowers.at === 1 ? 'flower' : 'flowers'} in all${seedlings.at === null ? '' : `, or ${neededWords(seedlings)} ${seedlings.at === 1 ? 'seedling' : 'seedlings'}`}, for ${goal}.`;
  return [first, `That leaves out ${listed(leavesOut.map((one) => leftWords[one]))}.`];
}

const neededWords = ({ at, low, high }: Needed): string => {
  const range = low === high ? '' : ` (${low === null ? '' : whole(low)}–${high === null ? 'over a million' : whole(high)})`;
  return `${whole(at ?? 0)}${range}`;
};

/** What is read at a number tried. */
export function pointWords({ lever, years }: HowManyAnswer, { value, chances, outcome, minusPresent }: Point): string {
  const each = years.map((year, y) => {
    const chance = chances[y];
    return chance ? `by ${String(year)} ${percent(chance.value)} (${percentRange(chance.low, chance.high)})` : '';
  });
  const trusted = trulyOfTen(outcome.trulyGood);
  const hours = `half of the futures need up to ${howManyText.hours(outcome.busiestHours.p50)} in the busiest year`;
  const against = minusPresent
    ? `against the plan as it stands ${differenceInWords(minusPresent.chance, minusPresent.clear)} (${differenceRange(minusPresent.chance)})`
    : howManyText.asItStands;
  return `${count(lever, value)}: ${each.join(', ')}; ${against}; ${hours}${trusted === null ? '' : `; ${pay.trulyGood(trusted)}`}.`;
}

/** What the picture shows, for those who do not see it. */
export function howManySummary(answer: HowManyAnswer): string {
  const first = answer.points[0];
  const last = answer.points.at(-1);
  if (!first || !last) return '';
  return `Chance of a proven tree by ${lastOf(answer.years)} against ${leverWords[answer.lever].choice}: ${percent(first.outcome.chance.value)} at ${whole(first.value)}, ${percent(last.outcome.chance.value)} at ${whole(last.value)}.`;
}
