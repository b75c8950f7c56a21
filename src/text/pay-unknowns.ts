import type { RankedFact, UnknownsAnswer } from '../decisions/unknowns.ts';
import type { RestsOn, UnknownFact, UnknownKind } from '../decisions/unknown-facts.ts';
import type { Flip, FlipSide } from '../decisions/unknown-flips.ts';
import type { WayToLearn } from '../decisions/unknown-ways.ts';
import type { Interval } from '../results/outlook.ts';
import { counted, percent, percentRange, whole } from './charts.ts';
import { fieldText, sourceWords } from './fields.ts';
import type { Piece } from './headline.ts';
import { differenceInWords, differenceRange, ofTen, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';
import { handCount } from './sentences.ts';

const NB = '\u00a0';

const capital = (text: string): string => text.replace(/^./, (letter) => letter.toUpperCase());

export const unknownsText = {
  asking: 'Which unknown matters most?',
  about: 'What makes one future end otherwise than another: luck, and each thing that you do not know.',
  button: 'Find out',
  heads: {
    what: 'What you do not know',
    matters: 'How much it matters, of 100',
    way: 'Which way',
    rests: 'Now rests on',
    learn: 'Cheapest way to learn it',
  },
  axis: 'Of 100 parts that are not luck. Bar: on its own, with the range that luck leaves open. Outline: together with the others.',
  alone: 'on its own',
  together: 'with the others',
  smallHeads: { what: 'What you do not know', most: 'Matters at most, of 100', rests: 'Now rests on' },
  small: (n: number) =>
    n === 1
      ? 'One more unknown matters little, or too little to tell apart from the luck of the futures made'
      : `${capital(counted(n))} more unknowns matter little, or too little to tell apart from the luck of the futures made`,
  changedNone: (futures: number) => `changed none of ${whole(futures)} futures`,
  flips: 'Plans that change places',
  caution: 'Knives: keep the holding hand behind the blade. Ask your plant health authority before seedlings or scions leave the garden.',
  practice: 'The ways to learn it are common practice, no source; hours go by this programme’s own speeds.',
  method:
    'Shares of the variance of the outcome (proven tree or none): Sobol’ indices of first order and total (Sobol’ 1993; Homma & Saltelli 1996). Luck is drawn anew in every future, so its share is what all facts held together leave open. On its own: each fact is held at each of its values while all else is drawn anew, in a replicated design (McKay 1995; Mara & Rakoto Joseph 2008), analysed as one-way variance. With the others: one fact at a time is drawn anew under the same luck (Jansen 1999), the square taken over two lucks so that luck adds nothing; the two are estimated apart, so this one can come out below the first within its range. Ranges: the middle 95 % of 400 resamples of rows (Efron 1979; Archer, Saltelli & Sobol’ 1997). Hidden genes of a tree are one fact: what rule and frequency still leave open. Plans change places where 95 % ranges of their differences, wide enough for all pairs and alternatives looked at (Dunn 1961), lie on opposite sides of 0.',
} as const;

type Asks = (name: string, fact: UnknownFact) => string;

/** The fact as a breeder would ask for it, to follow “worth finding out:”. */
const ASKS: Readonly<Record<UnknownKind, Asks>> = {
  roots: (name, { id }) => (id.startsWith('facts/') ? `whether ${name}` : `whether weakness sits in the roots of ${name}`),
  rule: (name) => `how ${name} is inherited`,
  set: (name) => `the fruit set of ${name}`,
  stray: (name) => `how much stray pollen sets on ${name}`,
  emptyFruit: (name) => `how much fruit of ${name} is empty`,
  seeds: (name) => `how many seeds a fruit of ${name} holds`,
  germination: (name) => `how many seeds of ${name} come up`,
  weakShare: (name) => `how many seedlings of ${name} are weak`,
  dying: (name) => `how soon the weak ones of ${name} die`,
  take: (name) => `how many grafts take on ${name}`,
  stockLoss: (name) => `how many trees are lost on ${name}`,
  precocity: (name) => `how much sooner trees fruit on ${name}`,
  stockFertility: (name) => `how much fruit trees set on ${name}`,
  firstFruit: (name) => `how many years ${name} takes to first fruit`,
  neverFruits: (name) => `how many seedlings of ${name} never fruit`,
  regularity: (name) => `in how many seasons ${name} crops`,
  losses: (name) => `how many trees of ${name} a winter takes`,
  frost: () => 'how often frost hits the bloom',
  frostShare: (name) => `how much a frost takes of ${name}`,
  flowers: (name) => `how many flowers a full-grown ${name} has`,
  fertility: (name) => `how fertile ${name} is`,
  canShow: (name) => `how many trees can show ${name}`,
  seasons: (name) => `in how many seasons ${name} shows`,
  falseShow: (name) => `how often a tree seems to show ${name} and does not`,
  emptyIfShown: (name) => `how much fruit is empty where ${name} shows`,
  inherited: (name) => `how far ${name} is inherited`,
  travels: (name) => `how far ${name} travels with a graft`,
  inbreeding: (name) => `what inbreeding costs in ${name}`,
  treeFlowers: (name) => `how many flowers ${name} offers`,
  treeLoss: (name) => `how soon ${name} is lost`,
  treeValue: (name, { trait }) => `the true ${trait} of ${name}`,
  treeGenes: (name) => `which hidden genes ${name} carries`,
  neighbours: (name) => `what the pollen of ${name} carries`,
  gardenLoss: (name) => `how soon ${name} is lost as a whole`,
  families: () => 'how early each family comes into fruit',
};

export const factAsks = (fact: UnknownFact): string => ASKS[fact.kind](fact.name, fact);
export const factLabel = (fact: UnknownFact): string => capital(factAsks(fact).replace(/^whether /, ''));

/** Where “more” is a later year, not a larger count. */
const LATER: ReadonlySet<UnknownKind> = new Set<UnknownKind>(['firstFruit', 'dying', 'precocity']);

export interface WayWords {
  readonly way: string;
  readonly range: string;
}

/** Which way the chance goes with a fact, and by how much between its lower and its upper half; of a rule or a yes/no fact the chance with each. */
export function wayWords({ more, alternatives, kind }: RankedFact): readonly WayWords[] {
  if (alternatives.length > 0)
    return alternatives.map(({ name, chance, trulyGood }) => {
      const said = name === 'yes' ? 'if so' : name === 'no' ? 'if not' : `if ${name}`;
      const truly = trulyOfTen(trulyGood);
      return {
        way: `${said}: ${percent(chance.value)}`,
        range: `${percentRange(chance.low, chance.high)}${truly === null ? '' : `, ${truly} of ten truly good`}`,
      };
    });
  if (!more) return [{ way: 'either way', range: '' }];
  if (more.way === 'level') return [{ way: 'either way', range: `${differenceInWords(more.difference, false)} from low to high` }];
  const word = LATER.has(kind) ? 'later' : 'more';
  return [{ way: `${word} is ${more.way === 'up' ? 'better' : 'worse'}`, range: `${differenceRange(more.difference)} in${NB}100 from low to high` }];
}

type Learn = (n: string, fact: UnknownFact) => string;

const LEARN: Readonly<Record<UnknownKind, Learn>> = {
  roots: (n) => `graft ${n} weak seedlings, watch two summers`,
  rule: (n) => `judge ${n} seedlings of the first cross`,
  set: (n) => `one more spring of ${n} flowers, counted`,
  stray: (n) => `leave ${n} flowers unpollinated, count their fruit`,
  emptyFruit: (n) => `cut ${n} fruits open`,
  seeds: (n) => `count the seeds of ${n} fruits`,
  germination: (n) => `sow ${n} seeds, count what comes up`,
  weakShare: (n) => `sort ${n} seedlings into weak and sound`,
  dying: () => 'count the living each month',
  take: (n) => `${n} more grafts`,
  stockLoss: () => 'count the grafted trees each spring, three years',
  precocity: (n) => `graft ${n} seedlings, leave as many, compare their first fruit`,
  stockFertility: () => 'count the fruit of grafted trees and of others',
  firstFruit: () => 'write down sowing dates and first fruit',
  neverFruits: () => 'write down which seedlings never fruit',
  regularity: () => 'note each year which trees crop',
  losses: () => 'count in autumn and again in spring, two years',
  frost: () => 'ask the nearest weather station for its frost dates',
  frostShare: (n) => `after the next frost, look into ${n} blossoms`,
  flowers: (n) => `count the flowers of ${n} full-grown trees`,
  fertility: (n) => `pollinate ${n} flowers with it and count the fruit`,
  canShow: (n) => `judge ${n} seedlings of two trees that show it`,
  seasons: (n) => `judge a tree that shows it for ${n} more crops`,
  falseShow: (n) => `judge ${n} crops of trees that cannot show it`,
  emptyIfShown: (n) => `cut ${n} fruits of a tree that shows it`,
  inherited: (n) => `judge ${n} seedlings and their parents over two crops`,
  travels: (n) => `graft ${n} picks and judge both for two crops`,
  inbreeding: (n) => `judge ${n} seedlings of one brother × sister cross`,
  treeFlowers: () => 'count them once in full bloom',
  treeLoss: () => 'look at it each spring',
  treeValue: (n) => `judge it for ${n} more crops`,
  treeGenes: (n) => `cross it with a plain tree and judge ${n} seedlings`,
  neighbours: () => 'walk round in the fruiting season and look',
  gardenLoss: () => 'ask whoever knows the place',
  families: () => 'cannot be known before a family fruits',
};

const SMALL = 10;

/** What to do, and what it takes: hours, trees, seasons. */
export function learnWords(fact: UnknownFact & { readonly learn: WayToLearn }): { readonly what: string; readonly takes: string } {
  const { learn } = fact;
  const number = learn.count <= SMALL ? counted(learn.count) : String(learn.count);
  return { what: LEARN[fact.kind](number, fact), takes: takesWords(learn) };
}

function takesWords({ hours, trees, seasons, afterFruit }: WayToLearn): string {
  if (hours === null) return '';
  const work = hours === 0 ? 'no extra work' : hours < 1 ? `under an hour` : hours < 1.5 ? 'about 1 hour' : `about ${String(handCount(hours))} hours`;
  return [
    work,
    ...(trees > 0 ? [`${counted(trees)} trees`] : []),
    ...(seasons > 0 ? [`${counted(seasons)} ${seasons === 1 ? 'season' : 'seasons'}`] : []),
    ...(afterFruit ? ['once there is fruit'] : []),
  ].join(', ');
}

export const restsWords = (restsOn: RestsOn): string => (restsOn === 'unsaid' ? fieldText.noSource : sourceWords[restsOn]);

const parts = (share: number): string => String(Math.round(100 * share));
export const shareWords = ({ value }: Interval): string => parts(value);
export const shareRange = ({ low, high }: Interval): string => `${parts(low)}–${parts(high)}`;
/** The most that a small one can matter, of 100. */
export function atMost({ first, total, changed }: RankedFact): string {
  if (changed.of > 0 && changed.changed === 0) return unknownsText.changedNone(changed.of);
  return String(Math.max(1, Math.ceil(100 * (total ?? first).high)));
}

/** Luck first, then the fact that matters most. */
export function unknownsFinding(answer: UnknownsAnswer): readonly Piece[] {
  const { facts, luck, measurable, clear } = answer;
  const lucky: Piece = { text: `${parts(luck.value)} in${NB}100 is luck`, strong: true };
  if (!measurable) return [{ text: 'What you do not know explains ' }, { text: 'less than we can measure', strong: true }, { text: ': nearly all is luck' }];
  // Only what is told from nothing on its own can lead.
  const [first, second] = facts.filter((fact) => fact.clear && fact.first.low > 0);
  if (!first) return [lucky, { text: '; of the rest no single unknown stands out' }];
  const named = (fact: RankedFact): Piece => ({ text: factAsks(fact), strong: true });
  if (!clear && second) return [lucky, { text: '; of the rest, ' }, named(first), { text: ' and ' }, named(second), { text: ` lead: ${pay.noDifference}` }];
  if (!clear) return [lucky, { text: '; of the rest, ' }, named(first), { text: ` leads the others by ${pay.noDifference}` }];
  return [lucky, { text: '; of the rest, ' }, named(first), { text: ' matters most' }];
}

/** What the finding stands on: the chance, and luck’s share with its range. */
export function luckNote(answer: UnknownsAnswer, mark: string, lastYear: number): string {
  const { chance, trulyGood, luck, measurable } = answer;
  const truly = trulyOfTen(trulyGood);
  const proven = `Plan ${mark} has a proven tree by ${String(lastYear)} in ${percent(chance.value)} of the futures (${percentRange(chance.low, chance.high)})${truly === null ? '' : `; ${pay.trulyGood(truly)}`}.`;
  const [low, high] = [parts(luck.low), parts(luck.high)];
  const share = low === high ? low : `${low}–${high}`;
  const rest = measurable
    ? `No one can learn luck away; the other ${parts(1 - luck.value)} ${parts(1 - luck.value) === '1' ? 'is' : 'are'} what you do not know, shared out below.`
    : 'What is left for your guesses is too little to share out among them with so many futures.';
  return `${proven} Of 100 parts of what makes futures differ, ${share} are luck. ${rest}`;
}

/** From this share of luck on, nothing that can be found out changes much. Our own bound. */
const MOSTLY_LUCK = 0.95;

/** “Worth finding out: …”; null where nothing clearly matters. */
export function worthWords({ facts, worth, luck }: UnknownsAnswer): string | null {
  const fact = facts.find(({ id }) => id === worth);
  if (!fact) return null;
  const { what, takes } = learnWords(fact);
  const lead = luck.value < MOSTLY_LUCK ? 'Worth finding out' : 'Nearly all is luck, so finding out changes little. Most of that little';
  return `${lead}: ${factAsks(fact)}. ${capital(what)}: ${takes}.`;
}

const inCase = ({ alternative }: FlipSide, fact: UnknownFact): string =>
  fact.kind === 'rule' ? `if ${alternative}` : alternative === 'yes' ? `if ${factAsks(fact).replace(/^whether /, '')}` : 'if not';

/** Two plans that change places, and by how much each is ahead. */
export function flipWords({ plans: [first, second], under: [one, other] }: Flip, fact: UnknownFact, markOf: (plan: string) => string): string {
  const [a, b] = [markOf(first), markOf(second)];
  // The yes before the no, or else “if not” would have nothing to refer to.
  const sides = [
    { side: one, ahead: a, behind: b, by: one.difference },
    { side: other, ahead: b, behind: a, by: { value: -other.difference.value, low: -other.difference.high, high: -other.difference.low } },
  ].sort((x, y) => Number(x.side.alternative === 'no') - Number(y.side.alternative === 'no'));
  const said = sides.map(
    ({ side, ahead, behind, by }) =>
      `${inCase(side, fact)}, ${ahead} is ahead of ${behind} by ${differenceInWords(by, true).replace('+', '')} (${differenceRange(by).replaceAll('+', '')})`,
  );
  return `${capital(said.join('; '))}. By your guesses the first is so ${ofTen(sides[0]?.side.belief ?? 0)} times.`;
}
