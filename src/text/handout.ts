import type { HowOften } from './sentences.ts';
import { counted, listed, whole } from './charts.ts';
import { sourceWords } from './fields.ts';

/** Words of the one-page handout. */

const NB = '\u00a0';
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** “25 November 2026” of “2026-11-25”; what is no such date stands as it is. */
export function longDate(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) ?? [];
  const name = MONTHS[Number(month) - 1];
  return year === undefined || name === undefined ? date : `${String(Number(day))}${NB}${name}${NB}${year}`;
}

/** “2035–2038”; one year when both are the same; “after 2057” where the end lies beyond the last year. */
export function yearsOf(from: number | null, to: number | null, last: number): string {
  if (from === null) return `after ${String(last)}`;
  if (to === null) return `from ${String(from)}`;
  // Word joiners keep the two years on one line.
  return from === to ? String(from) : `${String(from)}\u2060–\u2060${String(to)}`;
}

/** What stands in the place of what was left out. */
export const leftOut = {
  tree: (place: number) => `Tree ${String(place)}`,
  garden: (place: number) => `Garden ${String(place)}`,
  title: 'A breeding programme',
} as const;

export const wantedText = {
  shown: (trait: string, grade: 'any' | 'full' | 'part', atMost: number | null): string => {
    const how = grade === 'full' ? `${trait} in full` : grade === 'part' ? `${trait} in part` : trait;
    if (atMost === null) return how;
    return atMost === 0 ? `never ${how}` : `${how} in ${counted(atMost)} ${atMost === 1 ? 'crop' : 'crops'} at most`;
  },
  atLeast: (trait: string, value: string, unit: string): string => `${trait} ${value}${unit === '' ? '' : `${NB}${unit}`} or more`,
  atMost: (trait: string, value: string, unit: string): string => `${trait} ${value}${unit === '' ? '' : `${NB}${unit}`} or less`,
  test: (gene: string): string => `“${gene}” by leaf test`,
  wanted: (parts: readonly string[]): string => `Wanted: ${listed(parts)}.`,
  proven: (crops: number, trees: number): string =>
    `Proven means judged so in ${counted(crops)} ${crops === 1 ? 'crop' : 'crops'}${trees > 1 ? `, by ${counted(trees)} trees` : ''}.`,
} as const;

/** “7 times in 10”, in the middle of a sentence. */
export function oftenWords(often: HowOften): string {
  switch (often.kind) {
    case 'nearly':
      return 'in nearly every future';
    case 'hardly':
      return 'hardly ever';
    case 'unknown':
      return 'too few futures yet to say how often';
    case 'tenths':
      return often.one ? `${often.words === '1' ? 'once' : `${often.words} time`} in${NB}10` : `${often.words}${NB}times in${NB}10`;
  }
}

export const answerText = {
  /** Before how often. */
  way: (mark: string, only: boolean): string => (only ? 'Our way has one proven' : `Our way, ${mark}, has one proven`),
  by: (year: number): string => ` by ${String(year)}.`,
  /** Sentences of others speak to the reader as “you”. */
  ours: (sentence: string): string => sentence.replace('you would call', 'we would call').replace('If your guesses', 'If our guesses'),
  nothing: (of100: string): string => `In ${of100} of 100 futures we end with nothing we could call proven.`,
  nothingNever: (futures: number): string => `In each of ${whole(futures)} futures we end with something proven.`,
  hard: 'Why it is hard. ',
  sources: (trait: string, names: readonly string[]): string =>
    names.length === 0
      ? `No tree we have is known for ${trait}.`
      : `Only ${counted(names.length)} ${names.length === 1 ? 'tree is' : 'trees are'} known for ${trait}: ${listed(names)}.`,
  seasons: (of100: number): string => `It shows in about ${String(of100)} of 100 seasons.`,
  rules: (count: number): string => `How it is inherited is not known: ${counted(count)} explanations are open.`,
  slow: (years: number, generations: number): string =>
    `From pollen to first fruit takes about ${counted(years)} years${generations > 1 ? `, and ${counted(generations)} generations must fruit, one after the other` : ''}.`,
  weak: (of100: number, cross: string): string => `About ${String(of100)} of 100 seedlings of ${cross} are weak.`,
} as const;

export const timelineText = {
  title: 'All ways on one calendar',
  horizon: 'last judging year',
  key: 'Bough: a generation, as thick as the share of futures still going; dotted in the nursery, pale before fruit, dark while judged. Ring: the pick. Dot and bar: year of a proven tree when it works, half and 8 in 10. Pale block: what our guesses allow.',
  more: (count: number): string => `… ${String(count)} more`,
  never: 'reached in no future',
  guesses: (range: string): string => `guesses allow ${range}`,
  plan: (name: string, chance: string, when: string): string => `${name}: a proven tree ${chance}${when}`,
  half: (year: number, range: string): string => `; when it works, half by ${String(year)}, 8 in 10 in ${range}`,
} as const;

export const asksText = {
  title: (mark: string, name: string): string => `What is asked, for ${mark}: ${name}`,
  titleOnly: 'What is asked, and when',
  before: (year: number): string => `before spring ${String(year)}`,
  springs: (years: string): string => (/^\d{4}$/.test(years) ? `spring ${years}` : `springs ${years}`),
  autumns: (years: string): string => (/^\d{4}$/.test(years) ? `autumn ${years}` : `autumns ${years}`),
  keeper: (names: readonly string[]): string => `Who keeps ${listed(names)}`,
  copy: (single: boolean): string => `wood for a second copy: there is only one ${single ? 'tree' : 'tree of each'}`,
  flowers: (count: string): string => `${count} flowers a spring to pollinate`,
  seed: 'ripe fruit for its seed',
  pollen: 'pollen, dry and named, sent in time for the bloom',
  ground: 'Who has ground',
  places: (count: string, garden: string): string => `room for about ${count} ${count === '1' ? 'tree' : 'trees'}${garden === '' ? '' : `, at ${garden}`}`,
  grafter: 'Who grafts',
  grafts: (count: string, month: string, stock: string): string => `about ${count} seedlings at ${month} months, onto ${stock}`,
  backups: (copies: number, stock: string): string => `${counted(copies)} ${copies === 1 ? 'copy' : 'copies'} of each pick, on ${stock}`,
  grower: 'Who grows them',
  firstFruit: (parts: readonly string[]): string => `look for first fruit: ${parts.join('; ')}`,
  everybody: 'All',
  count: 'note flowers pollinated, fruits, seeds, seedlings up, and what died when',
  taster: 'Who tastes',
  judge: (what: readonly string[]): string => `note for each tree and crop ${listed(what)}`,
  judgeGraded: (trait: string, fruits: number): string => `${trait} in ${String(fruits)} cut fruits`,
  judgeShown: (trait: string): string => `whether it shows ${trait}`,
  judgeMeasured: (trait: string, unit: string): string => (unit === '' ? trait : `${trait} (${unit})`),
} as const;

export const restsText = {
  title: 'What this rests on',
  firstFruit: (kind: string): string => `First fruit, ${kind}`,
  halfBy: (from: string, to: string, half: string): string => `${from}–${to} years, half by ${half}`,
  set: (cross: string): string => `Fruit set, ${cross}`,
  germination: (cross: string): string => `Seeds that come up, ${cross}`,
  weak: (cross: string): string => `Weak seedlings, ${cross}`,
  dead: (cross: string): string => `Half of them dead by, ${cross}`,
  roots: 'Weakness sits in the roots',
  take: (stock: string): string => `Grafts that take, ${stock}, ripe wood`,
  seasons: (trait: string): string => `Seasons it shows, ${trait}`,
  able: (trait: string): string => `Trees that can show it, ${trait}`,
  heritability: (trait: string): string => `Inherited share, ${trait}`,
  explanations: (trait: string): string => `How ${trait} is inherited`,
  odds: (in100: readonly number[]): string => `${String(in100.length)} explanations, ${in100.join(' : ')}`,
  loss: (kind: string): string => `Lost each winter, ${kind}`,
  in100: (text: string): string => `${text} in 100`,
  inUnit: (text: string, unit: string): string => (unit === '' ? text : `${text}${NB}${unit}`),
  belief: 'guess',
  tally: (parts: readonly string[], all: number): string => `Of ${whole(all)} estimates in the programme ${listed(parts)}.`,
  kinds: {
    counted: (n: number) => `${whole(n)} ${n === 1 ? 'is our own count' : 'are our own counts'}`,
    published: (n: number) => `${whole(n)} ${n === 1 ? 'is' : 'are'} published`,
    practice: (n: number) => `${whole(n)} ${n === 1 ? 'is' : 'are'} common practice`,
    remembered: (n: number) => `${whole(n)} ${n === 1 ? 'is' : 'are'} remembered`,
    guess: (n: number) => `${whole(n)} ${n === 1 ? 'is a guess' : 'are guesses'}`,
    invented: (n: number) => `${whole(n)} ${n === 1 ? 'is' : 'are'} invented for the example`,
  },
  sources: 'Sources. ',
  /** “your count” is the breeder’s on the screen; the sheet goes to others. */
  badge: { ...sourceWords, counted: 'our count', practice: 'practice' },
  unsaid: 'not said',
  more: (count: number): string => `and ${whole(count)} more, in the programme`,
} as const;

export const futuresText = {
  title: (mark: string, only: boolean): string => (only ? 'Of 100 futures' : `Of 100 futures, ${mark}`),
  proven: 'a proven tree',
  reasons: {
    noneGoodEnough: 'fruited, none good enough',
    seedlingsDied: 'the seedlings died',
    stillWaiting: (last: number) => `still waiting in ${String(last)}`,
    onlyTreeLost: 'the only pick was lost',
    noFruit: 'no fruit set',
    noSeedling: 'no seedling came up',
    noRoom: 'no room to plant',
  },
  other: 'something else',
  in100: ' in 100: ',
} as const;

export const imprintText = {
  audience: 'for those who lend wood, land or hands',
  care: 'Take care.',
  futures: (runs: number, error: string): string => `${whole(runs)} futures of each way; chances are ${error} in 100 from that number alone.`,
  invented: 'Invented example.',
  rerun: (engine: string, word: string): string => `Orchard Odds, engine ${engine}, shuffle word “${word}”.`,
  open: 'Open it as a story and as your own copy',
  address: (address: string): string => `at ${address}`,
  file: (name: string): string => `To rerun it, ask for the file ${name}.`,
  anew: 'Names left out here are drawn anew there: other futures, the same odds.',
} as const;
