import type { Piece } from './headline.ts';
import { learnable, myCounts } from './log-learned.ts';

/** Words of “What your counts have taught”, “How is it inherited?” and “Keep the losers”. */

const NB = '\u00a0';
const n = (value: number): string => value.toLocaleString('en');
const counted = (value: number, one: string, many: string): string => `${n(value)} ${value === 1 ? one : many}`;

type What = keyof typeof learnable;
type Scale = 'share' | 'months' | 'years';
interface Range {
  readonly low: number;
  readonly high: number;
}

/** What a learned number counts in: shares stand per hundred. */
export const rateUnits: Readonly<Record<What, string>> = {
  set: 'per 100 flowers',
  germination: 'per 100 seeds',
  weakShare: 'per 100 seedlings',
  halfDeadBy: 'months',
  takeTender: 'per 100 grafts',
  takeRipe: 'per 100 grafts',
  firstWinter: 'per 100 trees',
  laterWinters: 'per 100 trees',
  halfFruitBy: 'years',
  ninetyFruitBy: 'years',
  neverFruits: 'per 100 trees',
  luckOfSet: '0: all springs alike, 100: all or nothing',
  luckOfGermination: '0: all springs alike, 100: all or nothing',
};

/** A number of a row: per hundred, or months or years. Three digits would claim more than counts can tell. */
export function rateNumber(value: number, scale: Scale): string {
  const shown = scale === 'share' ? 100 * value : value;
  return shown < 9.95 ? shown.toFixed(1).replace(/\.0$/, '') : shown.toFixed(0);
}

export function rateRange({ low, high }: Range, scale: Scale): string {
  const [from, to] = [rateNumber(low, scale), rateNumber(high, scale)];
  return from === to ? from : `${from}–${to}`;
}

/** Where a row was counted: how many batches, and when. */
export const whereWords = ({ from, to, batches }: { from: number; to: number; batches: number }): string =>
  `${counted(batches, 'batch', 'batches')}, ${from === to ? String(from) : `${String(from)}–${String(to)}`}`;

/** What was counted behind a row, in its own words; empty where that is not one count. */
export function countedWords(what: What, { hits, of }: { hits: number; of: number }): string {
  const share: Partial<Record<What, string>> = {
    set: `${counted(hits, 'fruit', 'fruits')} of ${counted(of, 'flower', 'flowers')}`,
    germination: `${n(hits)} of ${counted(of, 'seed', 'seeds')}`,
    weakShare: `${n(hits)} of ${counted(of, 'seedling', 'seedlings')}`,
    halfDeadBy: `${n(hits)} of ${counted(of, 'seedling', 'seedlings')} died`,
    takeTender: `${n(hits)} of ${counted(of, 'graft', 'grafts')}`,
    takeRipe: `${n(hits)} of ${counted(of, 'graft', 'grafts')}`,
    firstWinter: `${n(hits)} of ${counted(of, 'tree', 'trees')} lost`,
    laterWinters: `${n(hits)} of ${counted(of, 'tree', 'trees')} lost`,
    halfFruitBy: `${n(hits)} of ${counted(of, 'tree', 'trees')} have borne`,
    ninetyFruitBy: `${n(hits)} of ${counted(of, 'tree', 'trees')} have borne`,
    neverFruits: `${n(hits)} of ${counted(of, 'tree', 'trees')} have borne`,
  };
  return share[what] ?? '';
}

interface Row {
  readonly name: string;
  readonly of: string;
  readonly scale: Scale;
  readonly used: boolean;
  readonly before: { readonly mean: number; readonly low?: number; readonly high?: number } | null;
  readonly after: Range;
  readonly nextSpring: Range | null;
  readonly counted: string;
  readonly where: string;
}

const beforeWords = ({ before, scale }: Pick<Row, 'before' | 'scale'>): string =>
  before === null
    ? ''
    : before.low !== undefined && before.high !== undefined
      ? rateRange({ low: before.low, high: before.high }, scale)
      : rateNumber(before.mean, scale);

/** The name of a row and what it belongs to, as one. */
export const rowName = ({ name, of }: Pick<Row, 'name' | 'of'>): string => (of === '' ? name : `${name}, ${of}`);

export const lessons = {
  title: 'What your counts have taught',
  intro: 'Dashed: what was believed before. Filled: with your counts. The upright line marks the middle; the numbers give 8 in 10.',
  working: 'reading your counts…',
  again: 'The log has changed: reading it again…',
  failed: (message: string) => `The counts could not be read: ${message}.`,
  retry: 'Try again',
  stale: 'This is from the log as it was before the last change.',
  /** @param far rows whose number of before lies outside 8 in 10 of what the counts say */
  finding: (rows: number, used: number, far: readonly { readonly name: string; readonly now: string; readonly was: string }[]): Piece[] => {
    const start: Piece[] = [{ text: 'Your counts speak to ' }, { text: counted(rows, 'number of this programme', 'numbers of this programme'), strong: true }];
    const taken = used === 0 ? '' : used === rows ? ', and the programme uses them all' : `; it uses ${n(used)} of them`;
    const [first] = far;
    if (!first) return [...start, { text: `${taken}. None lies clearly off what it says.` }];
    const others = far.length === 1 ? 'One lies clearly off' : `${n(far.length)} lie clearly off`;
    return [...start, { text: `${taken}. ${others}: ${first.name} is ` }, { text: first.now, strong: true }, { text: `, not ${first.was}.` }];
  },
  now: (row: Pick<Row, 'after' | 'scale' | 'used'>) => `${row.used ? 'in use' : 'now'} ${rateRange(row.after, row.scale)}`,
  was: (row: Pick<Row, 'before' | 'scale'>) => (row.before === null ? '' : `was ${beforeWords(row)}`),
  another: (range: Range | null, scale: Scale) => (range === null ? '' : `another spring ${rateRange(range, scale)}`),
  use: 'Use my counts',
  useFor: (name: string) => `Use my counts: ${name}`,
  useAll: (rows: number) => `Use my counts for all ${n(rows)}`,
  used: (name: string) => `my counts used: ${name}`,
  usedAll: (rows: number) => `my counts used for ${counted(rows, 'number', 'numbers')}`,
  back: 'Go back',
  backFor: (name: string) => `Go back to what it was: ${name}`,
  wentBack: (name: string) => `back to what it was: ${name}`,
  waits: 'wait until the log is read again',
  picture: 'Each number before and with your counts',
  slider: 'Number to read',
  none: 'nothing read',
  place: (row: Row) =>
    [
      `${rowName(row)}: ${row.used ? 'the programme uses your counts, ' : 'with your counts '}${rateRange(row.after, row.scale)}, 8 times in${NB}10`,
      row.before === null ? '' : `before ${beforeWords(row)}`,
      row.nextSpring === null ? '' : `another spring ${rateRange(row.nextSpring, row.scale)}`,
      row.counted,
      row.where,
    ]
      .filter((part) => part !== '')
      .join('; '),
  summary: 'Each number of the programme that the log speaks to, as it was believed before and with the counts.',
  heads: [
    'Number',
    'Counted in',
    'Before',
    'With your counts, middle',
    '8 in 10',
    '9 in 10',
    'Another spring, 8 in 10',
    'Counted',
    'Where',
    'In the programme',
  ],
  uses: (from: number, to: number) => myCounts(from, to),
  usesNot: 'not yet',
  unsaid: 'said another way',
  luckNote: 'Luck of the spring is one number for the whole orchard: the more springs differ, the less one spring tells, and the wider the next is forecast.',
  wave: (name: string, winter: number, took: string) =>
    `${name}: winter ${String(winter)} of its age took about ${took} in 100 at once. The loss of other winters is learned without it.`,
  apart: 'Keep a blow out of the rates',
  apartNote: 'Trees and flowers lost to something noted are never counted against a rate. A batch that was spoilt altogether can be kept out as a whole.',
  apartFor: (name: string, what: string) => `${name}: ${what}`,
  apartSet: (name: string, apart: boolean) => (apart ? `${name} kept out of the rates` : `${name} counted in the rates`),
  leftOut: (lines: number) => `${counted(lines, 'count was', 'counts were')} left out, and why`,
} as const;

const percent = (share: number): string => (share > 0 && share < 0.005 ? 'under 1' : String(Math.round(100 * share)));
const of100 = (chance: number): string => `${percent(chance)} in${NB}100`;

export const inheritanceText = {
  title: (trait: string) => `How is ${trait} inherited?`,
  families: (families: number, showed: number, of: number) =>
    `${n(showed)} of ${counted(of, 'seedling', 'seedlings')} looked at in ${counted(families, 'family', 'families')} showed it. Dashed ring: believed before. Dot: with your counts.`,
  slider: 'Explanation to read',
  chance: of100,
  was: (share: number) => `was ${percent(share)}`,
  place: (name: string, before: number, after: number) => `${name}: ${percent(after)} in${NB}100 with your counts, ${percent(before)} before`,
  heads: ['Explanation', 'Believed before', 'With your counts', 'What was seen'],
  use: 'Take these chances',
  useFor: (trait: string) => `Take these chances for ${trait}`,
  used: 'The programme believes what your counts say.',
  label: (trait: string) => `chances of the explanations of ${trait} from my counts`,
  back: 'Go back to what was believed',
  wentBack: (trait: string) => `chances of the explanations of ${trait} as they were before my counts`,
  further: 'Other explanations that were tried',
  furtherLine: (name: string, words: string) => `${name}: beside the best of yours, what was seen ${words}`,
  byFamily: 'What each family showed',
  familyHeads: ['Family', 'Showed it', 'Looked at'],
  leftOut: 'Left out',
  summary: (trait: string) => `Chance of each explanation of ${trait}, before and with the counts.`,
} as const;

export const losersText = {
  title: 'Keep the losers',
  finding: (trees: number, most: number, chance: number, trait: string): Piece[] => [
    { text: `${counted(trees, 'tree', 'trees')} did not show ${trait}. ` },
    { text: `${n(most)} of them`, strong: true },
    { text: ` may carry it unseen, about ` },
    { text: `${String(Math.round(10 * chance))} times in${NB}10`, strong: true },
    { text: ' each: think of that before one is felled.' },
  ],
  intro: 'A tree that does not show it may pass it on. Trees of one family that were seen alike have the same chance.',
  seen: (showed: number, seasons: number) =>
    showed === 0 ? `looked at in ${counted(seasons, 'season', 'seasons')}` : `${n(showed)} of ${counted(seasons, 'season', 'seasons')}`,
  note: (trees: number, seen: string) => `${counted(trees, 'tree', 'trees')}, ${seen}`,
  chance: of100,
  slider: 'Group of trees to read',
  place: (name: string, trees: number, chance: number) => `${name}: ${counted(trees, 'tree', 'trees')}, each carries it ${of100(chance)}`,
  groupHeads: ['Trees', 'How many', 'Carries it'],
  list: 'Tree by tree, the likeliest carriers first',
  heads: ['Tag', 'Stands', 'Family', 'Seasons looked at', 'Carries it'],
  nowhere: 'place not noted',
  status: { alive: '', dead: 'dead', culled: 'culled', labelLost: 'label lost' },
  more: (more: number) => `Show ${n(more)} more`,
  summary: (trait: string) => `Chance that trees which did not show ${trait} carry it, by family.`,
} as const;
