import type { IfsAnswer } from '../decisions/ifs.ts';
import type { IfLine, IfPoint } from '../decisions/ifs/line.ts';
import type { IfId, WhyNot } from '../decisions/ifs/way.ts';
import type { Job } from '../decisions/ifs/worth.ts';
import type { Programme } from '../model/programme.ts';
import type { Interval } from '../results/outlook.ts';
import { counted, inTenWords, listed, percent, percentRange, tied, whole } from './charts.ts';
import type { Piece } from './headline.ts';
import { amountDifference, decimals, differenceInWords, differenceRange, ofTen, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';

const NB = '\u00a0';

export const ifsText = {
  asking: 'What if something happens?',
  about: 'One thing happens at a time; the rest, and all luck, is as in the plan as it stands.',
  button: 'Work out what each would change',
  method:
    'Each plan is run anew with the one thing fixed: luck is drawn as ever and then overruled, so frosts, seasons and losses of the calendar year stay shared. What comes later in a future can still turn out otherwise, since an earlier pick changes what follows. The curves rest on fewer futures than the rest and lean on those of the plan as it stands (a control variate, Law & Kelton). Intervals of differences: Bonett & Price 2012. A job is worth the chance with it minus the chance without it, divided by its hours in its own year (ratio of two means, Cochran 1977); one job stands before another only where they differ clearly, future by future.',
  titles: {
    skip: 'You skip this spring',
    frost: 'Frost in the year of the first cross',
    land: 'The land is lost',
    takeover: 'You must stop, or somebody goes on',
    hands: 'A helper comes',
    leafTest: 'A leaf test comes',
  } satisfies Readonly<Record<IfId, string>>,
  whyNot: {
    tooShort: 'The plan is over before it could happen.',
    noFrost: 'A frost takes nothing here, as you have it.',
    noHands: 'This plan crosses nothing by hand.',
    noGene: 'The goal names no gene that a leaf could show and every good tree needs.',
    testedAlready: 'Every generation of this plan has its leaf test already.',
  } satisfies Readonly<Record<WhyNot, string>>,
  across: {
    skip: 'year in which you begin ›',
    frost: 'year of the frost ›',
    land: 'year in which the land is lost ›',
    takeover: 'year in which work ends ›',
    hands: 'year in which the helper comes ›',
    leafTest: 'year from which the test exists ›',
  } satisfies Readonly<Record<IfId, string>>,
  acrossShort: {
    skip: 'you begin in ›',
    frost: 'year of the frost ›',
    land: 'lost in ›',
    takeover: 'year in which work ends ›',
    hands: 'the helper comes in ›',
    leafTest: 'the test exists from ›',
  } satisfies Readonly<Record<IfId, string>>,
  up: 'chance of a proven tree',
  stands: 'as it stands',
  slider: (id: IfId) => `${ifsText.titles[id]}: year to read`,
  none: 'no year chosen',
  keys: '← → moves along the years that were run.',
  coming: 'The curve is on its way…',
  year: 'Year',
  table: 'All of them',
  heads: ['What happens', 'Proven tree', 'Truly good, of those', 'Half by', 'Hours, all years', 'Against the plan as it stands'],
  jobsTitle: 'This spring, most worth an hour first',
  jobsAbout:
    'What each job gains: the chance with it minus the chance without it, on the same futures. What is left out this spring may be made up the next, where the plan has springs left.',
  jobHeads: ['Rank', 'Job', 'Gains', 'Hours, all years', 'Gains an hour'],
  onTop: 'on top of the plan',
  noJobs: 'Nothing can be crossed or gathered yet, so this spring has no job to weigh.',
  noHours: 'no hours stated',
} as const;

const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string | null): string =>
  list.find((entry) => entry.id === id)?.name ?? id ?? '';

/** What happens in a line, for a table. */
export function lineName({ if: id, form, year, garden, leafTest }: IfLine, { gardens }: Pick<Programme, 'gardens'>): string {
  const at = String(year);
  switch (form) {
    case 'begins':
      return `The plan begins in ${at}`;
    case 'sure':
      return `A frost in bloom in ${at}`;
    case 'never':
      return `No frost in ${at}`;
    case 'all':
      return `All land lost in ${at}, the founding trees with it`;
    case 'seedlings':
      return `Land lost in ${at}, the founding trees stand elsewhere`;
    case 'copied':
      return `Land lost in ${at}, with a copy elsewhere of every pick and founding tree`;
    case 'garden':
      return `Garden “${nameOf(gardens, garden)}” lost in ${at}`;
    case 'nobody':
      return `You stop in ${at} and nobody goes on`;
    case 'longer':
      return `Somebody goes on until ${at}`;
    case 'twice':
      return `Twice the hands in bloom, and twice the flowers, from ${at}`;
    case 'every':
      return `A leaf test for “${leafTest?.name ?? id}” from ${at}, in every generation without one`;
    case 'last':
      return `The same test from ${at}, in the last generation only`;
  }
}

/** A few words for the end of its curve. */
export function shortName({ form, garden }: IfLine, { gardens }: Pick<Programme, 'gardens'>): string {
  switch (form) {
    case 'begins':
      return 'begun then';
    case 'sure':
      return 'frost then';
    case 'never':
      return 'no frost';
    case 'all':
      return 'all lost';
    case 'seedlings':
      return 'founders apart';
    case 'copied':
      return 'copies apart';
    case 'garden':
      return nameOf(gardens, garden);
    case 'nobody':
      return 'nobody';
    case 'longer':
      return 'somebody';
    case 'twice':
      return 'twice the hands';
    case 'every':
      return 'tested in all';
    case 'last':
      return 'in the last only';
  }
}

const say = ({ value, low, high }: Interval): string => `${percent(value)} (${percentRange(low, high)})`;

/** "−23 in 100", or that there is no clear difference, with its interval. */
const against = ({ minusAsItStands: { chance, clear } }: IfLine): string => `${differenceInWords(chance, clear)} (${differenceRange(chance)})`;

/** How much a loss or gain is, without its sign: "23 in 100". */
const size = ({ minusAsItStands: { chance } }: IfLine): string => differenceInWords({ ...chance, value: Math.abs(chance.value) }, true).replace('+', '');

/** What one thing comes to: a sentence for each reading. */
export const ifSentences = (lines: readonly IfLine[], programme: Pick<Programme, 'gardens'>): readonly string[] =>
  lines.map((line) => `${lineName(line, programme)}: ${say(line.outcome.chance)}, ${against(line)}.`);

/** What must be known beside it. */
export function besides(lines: readonly IfLine[], { lastYear }: Pick<IfsAnswer, 'lastYear'>): readonly string[] {
  const [first] = lines;
  if (!first) return [];
  if (first.if === 'land') return [landWords(lines, first.before)];
  if (first.if === 'leafTest') return leafTestWords(first, lines);
  if (first.if === 'skip') return [`Your last judging year stays ${String(lastYear)}. Trees age and may be lost meanwhile.`];
  if (!first.hands) return [];
  const { manage, wanted } = first.hands;
  const limit = wanted > manage ? 'hands hold it up' : 'hands do not hold it up';
  return [
    `Your hands manage ${whole(manage)} ${manage === 1 ? 'flower' : 'flowers'} a spring, and the plan asks for up to ${whole(wanted)} in one generation: ${limit}.`,
  ];
}

function landWords(lines: readonly IfLine[], before: Interval | null): string {
  const share = before ? say(before) : '';
  const again = lines.some(({ form }) => form !== 'all');
  return `Where no other ground can be found, what is proven before is all: ${share}.${again ? ' Otherwise you begin again with what lives elsewhere; an early loss leaves time for that.' : ''}`;
}

function leafTestWords({ leafTest }: IfLine, lines: readonly IfLine[]): readonly string[] {
  if (!leafTest) return [];
  const good = lines[0]?.trulyGoodMinus;
  return [
    leafTest.stated ? 'Its errors are those that one of your plans states.' : 'No plan states its errors, so it is taken to read without any.',
    `Hours of work over all years: ${lines.map((line) => `${line.form === 'last' ? 'in the last only' : 'tested in all'} ${amountDifference(line.minusAsItStands.totalHours)}`).join(', ')}.`,
    ...(leafTest.hours > 0 ? [] : ['No hours are stated for a test, so it costs nothing here.']),
    ...(leafTest.needed < 1
      ? [`In ${ofTen(leafTest.needed)} of what you believe of the inheritance no good tree is without the gene; in the rest the test throws good ones away.`]
      : []),
    ...(good ? [`Trees proven that truly are what you saw: ${differenceInWords(good.chance, good.clear)} (${differenceRange(good.chance)}).`] : []),
  ];
}

/** The finding: what would cost most, and what is most worth an hour. */
export function ifsFinding(answer: IfsAnswer, programme: Programme): readonly Piece[] {
  const losses = answer.lines.filter(({ minusAsItStands: { clear, chance } }) => clear && chance.value < 0);
  const worst = losses.reduce<IfLine | undefined>(
    (most, line) => (most && most.minusAsItStands.chance.value <= line.minusAsItStands.chance.value ? most : line),
    undefined,
  );
  const best = firstJob(answer.jobs);
  const cost: readonly Piece[] = worst
    ? [{ text: `${lineName(worst, programme)}: that would cost ${size(worst)}`, strong: true }, { text: '.' }]
    : answer.lines.length === 0
      ? [{ text: ifsText.asking, strong: true }]
      : [{ text: 'Nothing here that could happen makes it clearly worse', strong: true }, { text: '.' }];
  return best ? [...cost, { text: ` This spring an hour gains most on ${jobName(best, programme)}.` }] : cost;
}

/** Beside the chances: how far to trust what is called proven, in the plan as it stands. */
export function ifsTrust({ stands, lastYear }: IfsAnswer): string {
  const said = trulyOfTen(stands.trulyGood);
  const chance = `As it stands ${inTenWords(stands.chance.value)} futures have a proven tree by ${String(lastYear)} (${percentRange(stands.chance.low, stands.chance.high)}${NB}%)`;
  return said === null ? `${chance}.` : `${chance}; ${pay.trulyGood(said)}.`;
}

/** What is read at a year of a picture. */
export function pointWords({ lines, names }: { readonly lines: readonly IfLine[]; readonly names: readonly string[] }, year: number): string {
  const parts = lines.flatMap(({ curve }, i) => {
    const point = curve?.find((one) => one.year === year);
    return point ? [`${names[i] ?? ''} ${pointFigures(point)}`] : [];
  });
  return `${String(year)}: ${parts.join('; ')}.`;
}

/** "30 % (28–31), −29 in 100; truly good 74 % (70–78)". */
export const pointFigures = ({ chance, minusAsItStands, clear, trulyGood }: IfPoint): string =>
  `${say(chance)}, ${differenceInWords(minusAsItStands, clear)}${trulyGood ? `; truly good ${say(trulyGood)}` : ''}`;

/** Only a job that is clearly worth more than all others comes first. */
function firstJob(jobs: readonly Job[] | null): Job | undefined {
  const [first, second] = jobs ?? [];
  return first?.clear === true && first.gain.value > 0 && second?.rank !== first.rank ? first : undefined;
}

/** "grafting one more copy of Old Hedgerow". */
export function jobName({ kind, generation, seed, pollen, year }: Job, { trees, plans }: Pick<Programme, 'trees' | 'plans'>): string {
  const of = nameOf(
    plans.flatMap(({ generations }) => generations),
    generation,
  );
  switch (kind) {
    case 'cross':
      return seed === pollen ? `selfing ${nameOf(trees, seed)}` : `crossing ${tied(`${nameOf(trees, seed)} × ${nameOf(trees, pollen)}`)}`;
    case 'gather':
      return `gathering fruit under ${nameOf(trees, seed)}`;
    case 'moreFlowers':
      return `pollinating as many flowers again for “${tied(of)}”`;
    case 'copy':
      return `grafting one more copy of ${nameOf(trees, seed)}`;
    case 'graft':
      return `the rescue grafts of “${tied(of)}” in ${String(year)}`;
  }
}

/** The ranked jobs in a sentence. */
export function jobsInWords(jobs: readonly Job[], programme: Pick<Programme, 'trees' | 'plans'>): string {
  const [only] = jobs;
  if (!only) return ifsText.noJobs;
  if (jobs.length === 1) return `There is one job: ${jobName(only, programme)}.`;
  const first = jobs.filter(({ rank }) => rank === 1);
  const none = jobs.filter(({ clear }) => !clear);
  const lead =
    first.length > 1
      ? `Between the first ${counted(first.length)} there is ${pay.noDifference} in what an hour gains.`
      : `An hour gains most on ${first.map((job) => jobName(job, programme)).join('')}.`;
  const rest = none.length > 0 ? ` No clear gain at all: ${listed(none.map((job) => jobName(job, programme)))}.` : '';
  return `${lead}${rest}`;
}

/** "+6 in 100 (+5 to +7)". */
export const gainLines = ({ gain, clear }: Job): readonly [string, string] => [differenceInWords(gain, clear), differenceRange(gain)];

/** "1.5 h". */
export const hoursWords = ({ hours }: Job): string =>
  hours.value > 0 ? `${hours.value < 0.95 ? String(Math.round(100 * hours.value) / 100) : decimals(hours.value)}${NB}h` : ifsText.noHours;

/** "+24 in 100 an hour". */
export const hourLines = ({ gainPerHour, clear }: Job): readonly [string, string] =>
  gainPerHour ? [differenceInWords(gainPerHour, clear), differenceRange(gainPerHour)] : [ifsText.noHours, ''];
