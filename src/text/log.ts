import type { Batch, Count, CountedStage, LoggedTree } from '../model/log.ts';
import type { Programme } from '../model/programme.ts';
import type { Piece } from './headline.ts';

/** Words of “What has happened?”: the season log. */

const NUMBERS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve'];
const n = (value: number): string => value.toLocaleString('en');
const counted = (value: number, one: string, many: string): string => `${n(value)} ${value === 1 ? one : many}`;
const spelled = (value: number, one: string, many: string): string => `${NUMBERS[value] ?? n(value)} ${value === 1 ? one : many}`;

/** One and many of each stage, as they stand behind a number, and the short head of its column. */
export const stages: Readonly<Record<CountedStage, { readonly one: string; readonly many: string; readonly column: string; readonly button: string }>> = {
  flowers: { one: 'flower pollinated', many: 'flowers pollinated', column: 'flowers', button: 'Flowers pollinated' },
  fruits: { one: 'ripe fruit', many: 'ripe fruits', column: 'fruits', button: 'Ripe fruits' },
  seeds: { one: 'sound seed', many: 'sound seeds', column: 'seeds', button: 'Sound seeds' },
  sown: { one: 'seed sown', many: 'seeds sown', column: 'sown', button: 'Seeds sown' },
  cameUp: { one: 'seed came up', many: 'seeds came up', column: 'came up', button: 'Came up' },
  weak: { one: 'weak seedling', many: 'weak seedlings', column: 'weak', button: 'Weak seedlings' },
  grafted: { one: 'seedling grafted', many: 'seedlings grafted', column: 'grafted', button: 'Grafted' },
  took: { one: 'graft took', many: 'grafts took', column: 'took', button: 'Grafts took' },
  planted: { one: 'seedling planted out', many: 'seedlings planted out', column: 'planted', button: 'Planted out' },
  alive: { one: 'alive', many: 'alive', column: 'alive', button: 'Alive' },
  fruiting: { one: 'has borne fruit', many: 'have borne fruit', column: 'fruited', button: 'Borne fruit' },
};

const UNITS: Readonly<Record<NonNullable<Count['unit']>['name'], readonly [string, string]>> = {
  cluster: ['cluster', 'clusters'],
  bag: ['bag', 'bags'],
  bur: ['bur', 'burs'],
  branch: ['branch', 'branches'],
};

export const events: Readonly<Record<Batch['events'][number]['what'], string>> = {
  frost: 'frost',
  drought: 'drought',
  waterlogging: 'waterlogging',
  rodents: 'rodents or deer',
  disease: 'disease',
  moved: 'moved to another place',
  other: 'something else',
};

export const statuses: Readonly<Record<LoggedTree['status'], string>> = { alive: 'alive', dead: 'dead', culled: 'culled', labelLost: 'label lost' };

/** “clusters of 3”, “bags of one flower”. */
export const unitWords = ({ count, unit }: Count): string => (unit ? `${UNITS[unit.name][count === 1 ? 0 : 1]} of ${n(unit.flowers)}` : '');

/** “18 ripe fruits”, “40 clusters of 3 flowers pollinated”. */
export function countWords(count: Count): string {
  const { one, many } = stages[count.stage];
  if (count.unit) return `${n(count.count)} ${unitWords(count)} ${many}`;
  return `${n(count.count)} ${count.count === 1 ? one : many}`;
}

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** “14 May 2031”, “May 2031”, “2031”. */
export function whenWords(when: string): string {
  const [year = '', month, day] = when.split('-');
  const parts = [day === undefined ? '' : String(Number(day)), month === undefined ? '' : (MONTHS[Number(month) - 1] ?? ''), year];
  return parts.filter((part) => part !== '').join('\u00a0');
}

/** A parent in words: a tree’s name, a tag, or what is known of it. */
export function parentWords(parent: Batch['seed'] | Batch['pollen'], { trees }: Pick<Programme, 'trees'>): string {
  if (typeof parent === 'object') return 'tree' in parent ? (trees.find(({ id }) => id === parent.tree)?.name ?? parent.tree) : parent.tag;
  return { open: 'open', self: 'its own pollen', mixed: 'mixed pollen', unknown: 'not known' }[parent];
}

/** “Old Hedgerow × Mill Quince”, “Old Hedgerow, open”. */
export function crossWords({ seed, pollen }: Pick<Batch, 'seed' | 'pollen'>, programme: Pick<Programme, 'trees'>): string {
  const mother = parentWords(seed, programme);
  if (seed === 'unknown' && pollen === 'unknown') return 'parents not known';
  if (typeof pollen === 'object' || pollen === 'unknown') return `${mother} × ${parentWords(pollen, programme)}`;
  return `${mother}, ${parentWords(pollen, programme)}`;
}

/** A name for a new batch, short enough for the document. */
export const batchName = (cross: string, year: number): string => `${Array.from(cross).slice(0, 70).join('')} ${String(year)}`;

/** “B2, row 4, tree 7”. */
export function placeWords(place: LoggedTree['place']): string {
  if (!place) return '';
  const { block, row, tree } = place;
  return [block === '' ? '' : `block ${block}`, row === '' ? '' : `row ${row}`, tree === '' ? '' : `tree ${tree}`].filter((part) => part !== '').join(', ');
}

interface Today {
  readonly batches: number;
  readonly flowers: number | null;
  readonly standing: number;
  readonly fruited: number;
  readonly mayBearFrom: number | null;
  readonly shown: { readonly name: string; readonly showed: number; readonly judged: number } | null;
}

export const log = {
  /** The whole log in a sentence. */
  headline: ({ batches, flowers, standing, fruited, mayBearFrom, shown }: Today): Piece[] => {
    if (batches === 0) return [{ text: 'Nothing is noted yet.' }];
    const start = `${spelled(batches, 'batch', 'batches')}${flowers === null ? '' : `, ${counted(flowers, 'flower', 'flowers')}`}`;
    if (standing === 0 && fruited === 0 && !shown) return [{ text: `${start}; no seedling stands yet.` }];
    const pieces: Piece[] = [{ text: `${start}, ` }, { text: `${counted(standing, 'seedling', 'seedlings')} standing`, strong: true }];
    if (shown)
      return [
        ...pieces,
        { text: '; ' },
        { text: `${n(shown.showed)} of the ${n(shown.judged)} judged`, strong: true },
        { text: ` ${shown.showed === 1 ? 'has' : 'have'} shown ${shown.name}.` },
      ];
    if (fruited > 0) return [...pieces, { text: `; ${n(fruited)} ${fruited === 1 ? 'has' : 'have'} borne fruit.` }];
    return [...pieces, { text: mayBearFrom === null ? '.' : `, the oldest may bear from ${String(mayBearFrom)}.` }];
  },
  lede: 'Counts stand here as you entered them. They say what happened; what they teach is drawn from them, and never changes them.',
  ledeEmpty:
    'Note each batch of seed as you make it: who was crossed with whom, how many flowers, and later how many fruits, seeds and seedlings. Seedlings that stand already can be entered too.',
  title: 'Season log',
  intro: 'One line a batch, in the units it was counted in. Each number is the total so far; an empty place was not counted.',
  addBatch: 'Add a batch',
  undo: 'Undo',
  keep: 'Counts are kept on this device, with or without a connection. Save a copy each winter: a file opens again in ten years; a browser’s store may not.',
  lost: (lost: number, what: string): string => `${n(lost)} lost to ${what}`,
  lostTail: (list: readonly string[]): string => `${list.join(', ')}: kept in the log, not in the rates.`,
  table: {
    batch: 'Batch',
    notCounted: 'not counted',
    all: (cross: string): string => `All of ${cross}`,
    withoutApart: 'without what is kept apart',
    apart: 'kept out of the rates',
    of: (judged: number): string => `of ${n(judged)} judged`,
    flagged: (message: string): string => `${message}; kept as entered.`,
    kindUnsaid: 'A parent’s kind is not said, so its counts teach no rate. It can be chosen under “Edit everything of this batch”.',
    flaggedTrees: (trees: number): string => `${counted(trees, 'tree carries', 'trees carry')} numbers that do not add up; kept as entered.`,
    event: (what: string, when: string): string => `${what}, ${when}`,
  },
  add: {
    title: 'A new batch',
    kind: 'What it is',
    seedOf: 'Seed of a cross, or gathered seed',
    standing: 'Seedlings that stand already',
    year: 'Year of bloom',
    yearStanding: 'Year of bloom, about',
    seed: 'Seed parent',
    pollen: 'Pollen',
    unknown: 'not known',
    open: 'open',
    self: 'its own',
    mixed: 'mixed',
    byTag: 'a tree by its tag…',
    tag: 'Tag of that tree',
    seedKind: 'Kind of the seed parent',
    pollenKind: 'Kind of the pollen parent',
    noKind: 'not known',
    number: 'How many stand',
    firstTag: 'Tag of the first',
    name: 'Name',
    done: 'Add the batch',
    cancel: 'Cancel',
    missing: 'Choose a seed parent and the pollen, or “not known”.',
    missingTag: 'Write the tag of that tree.',
    badYear: 'Write the year with four digits.',
    badNumber: 'Write how many, from 1 to 2,000.',
    full: 'A log holds at most 400 batches. Save a copy and begin another programme.',
    added: (name: string): string => `${name} added`,
  },
  count: {
    title: 'Note a count',
    stage: 'What did you count?',
    number: 'How many altogether',
    so: (words: string, when: string): string => `So far ${words}${when === '' ? '' : `, ${when}`}. Type the new total.`,
    per: 'Counted by',
    flower: 'flower',
    inOne: 'Flowers in one',
    when: 'On',
    done: (words: string): string => `Note ${words}`,
    nothing: 'Note it',
    noted: (words: string, batch: string): string => `${words} noted in ${batch}`,
    takenOut: (words: string, batch: string): string => `${words} taken out of ${batch}`,
    missing: 'Choose what you counted, and how many.',
    badNumber: 'Write a whole number, 0 to 10 million.',
    badUnit: 'Write how many flowers there are in one, 1 to 1,000.',
    full: 'A batch holds at most 200 counts. Take out old ones first.',
    list: 'Counted so far',
    none: 'Nothing is counted yet.',
    takeOut: 'Take out',
    takeOutThat: (words: string): string => `Take out ${words}`,
    undo: (name: string): string => `Undo: ${name}`,
  },
  event: {
    title: 'What befell it',
    note: 'Kept in the log, not in the rates.',
    add: 'Note what happened',
    what: 'What happened',
    when: 'On',
    lost: 'Lost to it',
    words: 'In your words',
    done: 'Note it',
    noted: (what: string, batch: string): string => `${what} noted in ${batch}`,
    takenOut: (what: string, batch: string): string => `${what} taken out of ${batch}`,
    lostWords: (lost: number): string => (lost === 0 ? '' : `, ${n(lost)} lost`),
    badLost: 'Write a whole number, 0 to 10 million.',
    badWhen: 'Choose a day.',
    full: 'A batch holds at most 50 of these.',
  },
  done: {
    title: 'What was done',
    everything: 'Edit everything of this batch',
    sections: { batch: 'The batch', counts: 'Counts' },
    graftCare: 'Keep the knife away from the holding hand; wear a glove on it.',
  },
  trees: {
    title: 'Its trees',
    none: 'No tree of this batch has a tag yet.',
    tally: (standing: number, all: number): string =>
      `${counted(standing, 'tree stands', 'trees stand')} of ${n(all)} entered. A tree that is gone changes its status and stays in the log.`,
    add: 'Add trees',
    number: 'How many',
    firstTag: 'Tag of the first',
    block: 'Block',
    row: 'Row',
    firstPlace: 'First place in the row',
    will: (first: string, last: string, number: number): string => (number === 1 ? `1 tree, tag ${first}` : `${n(number)} trees, tags ${first} … ${last}`),
    done: (number: number): string => (number === 1 ? 'Add 1 tree' : `Add ${n(number)} trees`),
    added: (number: number, batch: string): string => `${counted(number, 'tree', 'trees')} added to ${batch}`,
    bad: 'Write how many, and the tag of the first.',
    full: 'A batch holds at most 2,000 trees.',
    inVain: (year: number): string => `Looked in ${String(year)}: the others have not borne`,
    lookedInVain: (year: number, batch: string): string => `no other tree of ${batch} bears in ${String(year)}`,
    find: 'Find a tag',
    notFound: (tag: string): string => `No tag of this batch holds “${tag}”.`,
    more: (number: number): string => `Show ${n(number)} more`,
    shown: (shown: number, all: number): string => `${n(shown)} of ${n(all)} trees`,
  },
  tree: {
    bears: (year: number): string => `bears since ${String(year)}`,
    notYet: (year: number): string => `not borne by ${String(year)}`,
    showed: (name: string, showed: number, cut: number, seasons: number): string =>
      `${name} in ${n(showed)} of ${n(cut)} fruits, ${counted(seasons, 'season', 'seasons')}`,
    copies: (number: number): string => counted(number, 'copy elsewhere', 'copies elsewhere'),
    picked: 'kept as a pick',
    since: (year: number): string => `since ${String(year)}`,
    status: 'Status',
    statusNow: (tag: string, status: string): string => `${tag}: ${status}`,
    bearsSince: 'Bears since',
    bearsNow: (tag: string, year: number): string => `${tag} bears since ${String(year)}`,
    bearsNot: (tag: string): string => `${tag} has not borne`,
    notBorne: 'not yet',
    pick: 'Kept as a pick',
    pickNow: (tag: string, picked: boolean): string => `${tag} ${picked ? 'kept as a pick' : 'no longer a pick'}`,
    judge: 'Judged in a season',
    season: 'Season',
    cut: 'fruits cut',
    showedOf: 'showed it',
    measured: (name: string, unit: string): string => (name.includes(unit) ? name : `${name}, ${unit}`),
    judgeDone: (year: string): string => `Note season ${year}`,
    judged: (tag: string, year: number): string => `${tag} judged in ${String(year)}`,
    seasonOut: (tag: string, year: number): string => `season ${String(year)} of ${tag} taken out`,
    judgeBad: 'Write the season, and what was cut or measured.',
    takeOut: 'Take out',
    takeOutSeason: (year: number): string => `Take out season ${String(year)}`,
    copiesTitle: 'Copies elsewhere',
    where: 'Where',
    whose: 'With whom',
    copyAdd: 'Add the copy',
    copyAdded: (tag: string, where: string): string => `copy of ${tag} at ${where} noted`,
    copyOut: (tag: string, where: string): string => `copy of ${tag} at ${where} taken out`,
    takeOutCopy: (where: string): string => `Take out the copy at ${where}`,
    copyBad: 'Write where the copy stands.',
    copyCare: 'Wood that crosses a border or a quarantine line needs the plant-health authority’s permit.',
    everything: 'Edit everything of this tree',
    full: 'There is no room for more of these.',
  },
} as const;
