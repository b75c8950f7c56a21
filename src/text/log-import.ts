import { COUNTED, type CountedStage } from '../model/log.ts';
import { stages } from './log.ts';

/** Words of the part of “What has happened?” that brings tables in and takes the log out. */

const n = (value: number): string => value.toLocaleString('en');
const counted = (value: number, one: string, many: string): string => `${n(value)} ${value === 1 ? one : many}`;
const batches = (value: number): string => counted(value, 'batch', 'batches');
const trees = (value: number): string => counted(value, 'tree', 'trees');
const quoted = (text: string): string => `“${text.length > 60 ? `${text.slice(0, 57)}…` : text}”`;

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
/** “3 April 2019”, from 2019-04-03. */
export function dayWords(iso: string): string {
  const [year = '', month, day] = iso.split('-');
  return [day === undefined ? '' : String(Number(day)), month === undefined ? '' : (MONTHS[Number(month) - 1] ?? month), year]
    .filter((part) => part !== '')
    .join(' ');
}

/** What is uncertain about a cell, in a sentence: the cell, and what it was or could be read as. */
export const flags = {
  twoNumbers: (raw: string, [a = '', b = '']: readonly string[]): string => `${quoted(raw)}: ${a} or ${b}? Neither is taken until you choose.`,
  twoDates: (raw: string, [a = '', b = '']: readonly string[]): string =>
    `${quoted(raw)}: ${dayWords(a)} or ${dayWords(b)}? Neither is taken until you choose.`,
  range: (raw: string): string => `${quoted(raw)} is a range: kept in the note, the number left empty.`,
  about: (raw: string, [value = '']: readonly string[]): string => `${quoted(raw)} is taken as ${value}; that it was “about” stands in the note.`,
  atLeast: (raw: string): string => `${quoted(raw)} is a least number: kept in the note, the number left empty.`,
  atMost: (raw: string): string => `${quoted(raw)} is a most: kept in the note, the number left empty.`,
  outOf: (raw: string): string => `${quoted(raw)} is two numbers: kept in the note, the number left empty.`,
  notNumber: (raw: string): string => `${quoted(raw)} is no number: kept in the note.`,
  notWhole: (raw: string): string => `${quoted(raw)} is not whole, and this is counted: kept in the note.`,
  outside: (raw: string, [least = '', most = '']: readonly string[]): string => `${quoted(raw)} does not lie between ${least} and ${most}: kept in the note.`,
  thousands: (raw: string, [value = '', other]: readonly string[]): string =>
    `${quoted(raw)} is taken as ${value}${other === undefined ? '' : `, not ${other}`}.`,
  decimal: (raw: string, [value = '', other]: readonly string[]): string =>
    `${quoted(raw)} is taken as ${value}${other === undefined ? '' : `, not ${other}`}.`,
  nothing: (raw: string): string => `${quoted(raw)} says nothing: left empty.`,
  spaces: (raw: string): string => `${quoted(raw)} has spaces at an end: they are left out.`,
  apostrophe: (_raw: string, [value = '']: readonly string[]): string => `${quoted(value)}: the apostrophe before it is a spreadsheet’s and is left out.`,
  tooLong: (raw: string, [most = '']: readonly string[]): string =>
    `${quoted(raw)} is cut after ${most} letters; the note has as much of the rest as it holds.`,
  seasonName: (raw: string, [first = '', second = '']: readonly string[]): string =>
    `${quoted(raw)} runs from ${first} into ${second}: one of the two years is taken, and the note keeps both.`,
  shortYear: (raw: string, [day = '']: readonly string[]): string => `${quoted(raw)} has a year of two figures: taken as ${dayWords(day)}.`,
  notDate: (raw: string): string => `${quoted(raw)} is no date: kept in the note.`,
  noSuchDay: (raw: string): string => `${quoted(raw)} is a day that no calendar has: kept in the note.`,
  dayLeft: (raw: string, [year = '']: readonly string[]): string => `${quoted(raw)} is a day: the year ${year} is taken, the note keeps the day.`,
  timeLeft: (raw: string, [day = '']: readonly string[]): string => `${quoted(raw)} is taken as ${dayWords(day)}; the note keeps the time.`,
  rowsYear: (raw: string, [day = '']: readonly string[]): string => `${quoted(raw)} has no year: taken as ${dayWords(day)}, the year of its row.`,
  sumRow: (raw: string): string => `${quoted(raw)}: a row of sums is no batch, and stands in the note of the batch above it.`,
  notYear: (raw: string): string => `${quoted(raw)} is no year: kept in the note.`,
  notKnown: (raw: string, [value]: readonly string[]): string =>
    value === undefined ? `${quoted(raw)} is not understood: kept in the note.` : `${quoted(raw)} is taken as ${quoted(value)}; the note keeps your words.`,
  yesNo: (raw: string, [showed = '', cut = '']: readonly string[]): string => `${quoted(raw)} does not say how many fruits: taken as ${showed} of ${cut}.`,
  noSeason: (raw: string): string => `${quoted(raw)} has no season: kept in the note.`,
  notHere: (raw: string): string => `${quoted(raw)} is not in this programme: kept in the note.`,
  differs: (raw: string, [before = '']: readonly string[]): string =>
    `${quoted(raw)} differs from ${before === '' ? 'the empty cell' : quoted(before)} of an earlier row: kept in the note.`,
  yearAssumed: (_raw: string, [year = '']: readonly string[]): string => `No year: taken as ${year}.`,
  noTag: (_raw: string, [tag = '']: readonly string[]): string => `No tag: called ${quoted(tag)}.`,
} as const;

/** Under a cell of the preview. */
export const marks: Readonly<Record<'open' | 'kept' | 'read', string>> = { open: 'not taken: choose', kept: 'kept in the note', read: 'taken: look' };

const stageRole = (words: (stage: CountedStage) => string, family: string): Readonly<Record<string, string>> =>
  Object.fromEntries(COUNTED.map((stage) => [`${family}:${stage}`, words(stage)]));

/** What a column can be, in groups. Traits of the programme come after these. */
export const roles: readonly { readonly group: string; readonly of: Readonly<Record<string, string>> }[] = [
  { group: 'Not a field of the log', of: { keep: 'keep in the note', leave: 'leave out' } },
  {
    group: 'The batch',
    of: {
      batch: 'name of the batch',
      year: 'year or season of bloom',
      cross: 'cross, as A × B',
      seed: 'seed parent',
      pollen: 'pollen parent',
      seedKind: 'kind of the seed parent',
      pollenKind: 'kind of the pollen parent',
      when: 'date',
      apart: 'kept out of the rates',
      batchNote: 'note on the batch',
      id: 'batch id',
      generation: 'generation of a plan',
      route: 'way of raising seed',
      graftedWho: 'which were grafted',
      graftedMonth: 'age at grafting, months',
      graftedOnto: 'batch grafted onto',
    },
  },
  { group: 'Counted', of: stageRole((stage) => stages[stage].button.toLowerCase(), 'count') },
  { group: 'Counted on', of: stageRole((stage) => `${stages[stage].button.toLowerCase()}: date`, 'countWhen') },
  { group: 'Note on a count', of: stageRole((stage) => `${stages[stage].button.toLowerCase()}: note`, 'countNote') },
  { group: 'What befell it', of: { event: 'what happened', eventWhen: 'happened on', eventLost: 'lost to it', eventNote: 'note on it' } },
  {
    group: 'The tree',
    of: {
      tag: 'tag',
      position: 'place, as block-row-tree',
      block: 'block',
      row: 'row',
      tree: 'tree in the row',
      status: 'status',
      statusSince: 'status since',
      firstFruit: 'first fruit in',
      lookedUntil: 'looked at until',
      weak: 'weak on its own roots',
      stock: 'grafted onto',
      picked: 'kept as a pick',
      note: 'note',
      number: 'number in the batch',
      copyWhere: 'a copy stands at',
      copyWhose: 'a copy is with',
      copyNumber: 'number of copies',
    },
  },
  { group: 'Seasons of the tree', of: { season: 'season', seasonNote: 'note on the season' } },
];

const SEPARATORS: Readonly<Record<string, string>> = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'upright strokes' };

interface Understood {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly separator: string;
  readonly crlf: boolean;
  readonly marked: boolean;
  readonly ofTrees: boolean;
}

export const logImport = {
  title: 'Tables in and out',
  intro: 'A table from a spreadsheet, or a notebook typed off. You see first how it is read; nothing is added before you say so.',
  choose: 'Choose a file',
  paste: 'Paste a table',
  pasteLabel: 'The table, with its headings',
  look: 'Look at it',
  pasted: 'the pasted table',
  out: 'Take the log out',
  outIntro: 'Two tables for a spreadsheet. Brought in here again, batches first, they give the same log.',
  batchesFile: 'Batches as CSV',
  treesFile: 'Trees as CSV',
  fileNames: { batches: 'batches', trees: 'trees' },
  empty: 'There is nothing in it.',
  noText: 'It is no text file: save the table as CSV or as tab-separated text first, then choose that file.',
  noRows: 'It has headings and no rows: there is nothing to add.',
  unreadable: 'The file could not be opened. Choose it again.',
  tooLarge: 'The file is larger than 20 MB: cut it into parts.',
  /** What was understood of a table, in sentences. */
  understood: ({ name, rows, columns, separator, crlf, marked, ofTrees }: Understood): string =>
    `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${counted(rows, 'row', 'rows')} of ${counted(columns, 'column', 'columns')}, parted by ${SEPARATORS[separator] ?? separator}${
      crlf ? ', with line ends as on Windows' : ''
    }${marked ? ', marked as UTF-8' : ''}. Read as one row per ${ofTrees ? 'tree' : 'batch'}.`,
  /** How figures, days and seasons are read; only of what the table holds. */
  reads: {
    mark: {
      comma: 'Numbers have a decimal comma.',
      point: 'Numbers have a decimal point.',
      none: 'Whether numbers have a decimal comma or point is not clear yet.',
    },
    order: {
      dayFirst: 'In days the day comes first.',
      monthFirst: 'In days the month comes first.',
      none: 'Whether the day or the month comes first is not clear yet.',
    },
    season: { first: 'A season such as 2004/05 is called after its first year.', second: 'A season such as 2004/05 is called after its second year.' },
    mixed: 'Columns differ in how numbers or days are read: see below.',
  },
  encodings: {
    'windows-1252': 'Its letters are no UTF-8 and were taken for Windows-1252: look whether accents and quotes are right.',
    'utf-16': 'Its letters are UTF-16.',
  } as Readonly<Record<string, string>>,
  above: (lines: readonly string[]): string => `Above the headings: ${lines.map(quoted).join(', ')}. It goes into the note of the first batch.`,
  ragged: (rows: number): string =>
    `${counted(rows, 'row has', 'rows have')} more or fewer cells than there are headings: missing ones are empty, further ones stand in columns of their own.`,
  looseQuotes: 'A quote is opened and never closed, so quotes were taken for letters.',
  cutNotes: (notes: number): string => `${counted(notes, 'note is', 'notes are')} longer than 2,000 letters and will be cut: keep the file.`,
  noRoomInside: (value: number): string =>
    `${counted(value, 'entry finds', 'entries find')} no room: a batch holds 200 counts and 50 events, a tree 60 seasons and 20 copies. Keep the file.`,
  noRoom: (value: number): string => `A log holds 400 batches: ${batches(value)} of the file ${value === 1 ? 'finds' : 'find'} no room.`,
  separator: 'Cells are parted by',
  separatorName: (separator: string): string => SEPARATORS[separator] ?? separator,
  firstLine: 'The first line',
  headed: { yes: 'is headings', no: 'is a row' },
  columns: 'What each column is',
  columnsIntro: 'Each guess can be changed; a choice settles all cells of its column.',
  is: 'is read as',
  isFor: (header: string): string => `${header} is read as`,
  example: (cells: readonly string[]): string => (cells.length === 0 ? 'empty' : cells.map(quoted).join(', ')),
  mark: { label: (header: string): string => `${header}: 1,5 and 1.500`, none: 'choose: comma or point', comma: 'decimal comma', point: 'decimal point' },
  order: {
    label: (header: string): string => `${header}: 3/4 is`,
    none: 'choose: day or month',
    dayFirst: '3 April (day first)',
    monthFirst: 'March 4 (month first)',
  },
  season: { label: (header: string): string => `${header}: 2004/05 is`, first: '2004, its first year', second: '2005, its second year' },
  seen: (trait: string): string => `${trait}: fruits that showed it, of those cut`,
  value: (trait: string): string => `${trait}: measured`,
  traits: 'Traits of the programme',
  parents: 'Parents that are no tree of this programme',
  parentsIntro: 'They are kept by their name. Say the kind once, if you know it: without it their counts teach no rate.',
  parent: (name: string, value: number): string => `${name === '' ? 'Parents not known' : name}, in ${batches(value)}`,
  kind: 'not known',
  year: (rows: number): string => `Year of bloom for ${counted(rows, 'row that gives', 'rows that give')} none`,
  doubts: (value: number): string => `${counted(value, 'cell', 'cells')} to look at`,
  noFlags: 'Every cell was read without doubt.',
  waits: (value: number): string =>
    `${counted(value, 'cell waits', 'cells wait')} for a choice above. Added as it is now, ${value === 1 ? 'it goes' : 'they go'} into the note.`,
  at: (line: number, header: string): string => `Line ${n(line)}, ${header}:`,
  /** After the first few of one sort. */
  alike: (value: number, header: string): string => `${header}: ${counted(value, 'more cell', 'more cells')} of this sort.`,
  more: (value: number): string => `Show ${n(value)} more`,
  preview: 'Preview',
  previewOf: (shown: number, all: number): string => (shown === all ? `All ${counted(all, 'row', 'rows')}` : `The first ${n(shown)} of ${n(all)} rows`),
  line: 'Line',
  become: 'What it becomes',
  becomeBatch: (name: string, year: number, counts: string, number: number): string =>
    [name.includes(String(year)) ? name : `${name} (bloom of ${String(year)})`, counts, number === 0 ? '' : trees(number)]
      .filter((part) => part !== '')
      .join(': '),
  there: (there: number, rows: number): string => `${n(there)} of ${counted(rows, 'row is', 'rows are')} there already.`,
  allThere: (rows: number): string => `Everything in it is there already (${n(rows)} of ${counted(rows, 'row', 'rows')}): there is nothing to add.`,
  differs: (batch: string, tag: string | null): string =>
    tag === null ? `${batch}: the note in the log differs and stays as it is.` : `${batch}, ${tag}: the log says something else and stays as it is.`,
  add: (newBatches: number, grown: number, newTrees: number): string => {
    const parts = [newBatches === 0 ? '' : batches(newBatches), newTrees === 0 ? '' : trees(newTrees)].filter((part) => part !== '');
    return parts.length > 0 ? `Add ${parts.join(', ')}` : `Add to ${batches(grown)}`;
  },
  added: (newBatches: number, grown: number, newTrees: number, name: string): string => {
    const parts = [newBatches === 0 ? '' : batches(newBatches), newTrees === 0 ? '' : trees(newTrees)].filter((part) => part !== '');
    return `${parts.length > 0 ? parts.join(' and ') : `Counts of ${batches(grown)}`} added from ${name}`;
  },
  leave: 'Leave it',
} as const;
