import { COUNTED, type Batch, type Count, type CountedStage, type Log, type LoggedTree } from '../model/log.ts';
import { printNumber, readNumber } from '../model/numbers.ts';
import type { Programme } from '../model/programme.ts';
import { csvLine, type CsvCell } from '../results/writers/csv.ts';
import { noteHeader, OWN_HEADERS, STAGE_HEADERS, whenHeader } from './import/headers.ts';
import { entryText, parentText } from './import/parents.ts';

/*
 * The season log as two tables for a spreadsheet: batches, and trees. Read in that order they give the same log again (../seasonlog/import).
 * Text that a spreadsheet would run as a formula gets an apostrophe before it, which the import takes off; text that began with such an
 * apostrophe gets a second one, so that it comes back as it was.
 */

/** Spreadsheets take a file for UTF-8 only if it begins so. */
const MARK = '\u{feff}';

type Names = Pick<Programme, 'trees' | 'kinds' | 'stocks' | 'traits'>;
type Line = Record<string, CsvCell>;

/** “'=x” is no formula, but an import would take its apostrophe for ours. */
const guarded = (cell: CsvCell): CsvCell => (typeof cell === 'string' && /^'+[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell);

/** A number that every spreadsheet and the import read alike: “6.1250”, since “6.125” could be thousands. */
const figure = (value: number): CsvCell => (value < 0 && readNumber(String(value)).ok ? value : printNumber(value));

const table = (headers: readonly string[], lines: readonly Line[]): string =>
  MARK + [headers, ...lines.map((line) => headers.map((header) => guarded(line[header] ?? null)))].map(csvLine).join('');

/** Headings of which at least one line says something, and those that are always there. */
const used = (headers: readonly string[], lines: readonly Line[], always: readonly string[]): string[] =>
  headers.filter((header) => always.includes(header) || lines.some((line) => (line[header] ?? '') !== ''));

const yes = (value: boolean): CsvCell => (value ? 'yes' : null);

/** What a batch is known by, on each of its lines. */
const known = ({ id, name, year }: Batch): Line => ({ [OWN_HEADERS.id]: id, [OWN_HEADERS.batch]: name, [OWN_HEADERS.year]: year });

function about(batch: Batch, programme: Names): Line {
  const { seed, pollen, seedKind, pollenKind, route, generation, grafting, apart, note } = batch;
  const kind = (id: string | undefined): CsvCell => (id === undefined ? null : entryText(programme.kinds, id));
  return {
    [OWN_HEADERS.seed]: parentText(seed, programme),
    [OWN_HEADERS.pollen]: parentText(pollen, programme),
    [OWN_HEADERS.seedKind]: kind(seedKind),
    [OWN_HEADERS.pollenKind]: kind(pollenKind),
    [OWN_HEADERS.route]: route ?? null,
    [OWN_HEADERS.generation]: generation ?? null,
    [OWN_HEADERS.graftedWho]: grafting?.who ?? null,
    [OWN_HEADERS.graftedMonth]: grafting ? figure(grafting.month) : null,
    [OWN_HEADERS.graftedOnto]: grafting ? entryText(programme.stocks, grafting.stock) : null,
    [OWN_HEADERS.apart]: yes(apart),
    [OWN_HEADERS.batchNote]: note ?? null,
  };
}

/** “48 clusters of 5”, or the bare number. */
function countText({ count, unit }: Count): CsvCell {
  if (!unit) return count;
  const many = unit.name === 'branch' ? 'branches' : `${unit.name}s`;
  return `${String(count)} ${count === 1 ? unit.name : many} of ${String(unit.flowers)}`;
}

/** Counts over as few lines as keep their order: a stage that comes again, or out of turn, begins the next line. */
function countLines(counts: readonly Count[]): Line[] {
  const lines: Line[] = [];
  let last: number = COUNTED.length;
  for (const count of counts) {
    const at = COUNTED.indexOf(count.stage);
    if (at <= last) lines.push({});
    const line = lines.at(-1);
    if (line)
      Object.assign(line, {
        [STAGE_HEADERS[count.stage]]: countText(count),
        [whenHeader(count.stage)]: count.when ?? null,
        [noteHeader(count.stage)]: count.note ?? null,
      });
    last = at;
  }
  return lines;
}

const eventLine = ({ what, when, lost, note }: Batch['events'][number]): Line => ({
  [OWN_HEADERS.event]: what,
  [OWN_HEADERS.eventWhen]: when,
  [OWN_HEADERS.eventLost]: lost,
  [OWN_HEADERS.eventNote]: note ?? null,
});

/** Lists side by side: the first line has the first of each. */
function zipped(first: Line, each: Line, ...lists: readonly (readonly Line[])[]): Line[] {
  const length = Math.max(1, ...lists.map((list) => list.length));
  return Array.from({ length }, (_, i) => Object.assign({}, each, i === 0 ? first : {}, ...lists.map((list) => list[i] ?? {})) as Line);
}

const ofStage = (stage: CountedStage): string[] => [STAGE_HEADERS[stage], whenHeader(stage), noteHeader(stage)];
const KNOWN = [OWN_HEADERS.id, OWN_HEADERS.batch, OWN_HEADERS.year, OWN_HEADERS.seed, OWN_HEADERS.pollen];
const ABOUT = [
  OWN_HEADERS.seedKind,
  OWN_HEADERS.pollenKind,
  OWN_HEADERS.route,
  OWN_HEADERS.generation,
  OWN_HEADERS.graftedWho,
  OWN_HEADERS.graftedMonth,
  OWN_HEADERS.graftedOnto,
  OWN_HEADERS.apart,
];

/**
 * Batches of a log as comma-separated values, safe to open in a spreadsheet: a line each, and further lines under the same batch id for a
 * stage that was counted again and for further events.
 */
export function batchesCsv({ batches }: Log, programme: Names): string {
  const lines = batches.flatMap((batch) => zipped(about(batch, programme), known(batch), countLines(batch.counts), batch.events.map(eventLine)));
  const events = [OWN_HEADERS.event, OWN_HEADERS.eventWhen, OWN_HEADERS.eventLost, OWN_HEADERS.eventNote];
  const always = [...KNOWN, OWN_HEADERS.seedKind, OWN_HEADERS.pollenKind];
  return table(used([...KNOWN, ...ABOUT, ...COUNTED.flatMap(ofStage), ...events, OWN_HEADERS.batchNote], lines, always), lines);
}

function treeLine(tree: LoggedTree, programme: Names): Line {
  const { place, status, statusSince, weak, stock, firstFruit, lookedUntil, picked, note } = tree;
  return {
    [OWN_HEADERS.block]: place?.block ?? null,
    [OWN_HEADERS.row]: place?.row ?? null,
    [OWN_HEADERS.tree]: place?.tree ?? null,
    [OWN_HEADERS.status]: status === 'labelLost' ? 'label lost' : status,
    [OWN_HEADERS.statusSince]: statusSince ?? null,
    [OWN_HEADERS.weak]: yes(weak),
    [OWN_HEADERS.stock]: stock === undefined ? null : entryText(programme.stocks, stock),
    [OWN_HEADERS.firstFruit]: firstFruit ?? null,
    [OWN_HEADERS.lookedUntil]: lookedUntil ?? null,
    [OWN_HEADERS.picked]: yes(picked),
    [OWN_HEADERS.note]: note ?? null,
  };
}

const seenHeader = (trait: string, { traits }: Names): string => `seen: ${entryText(traits, trait)}`;
const valueHeader = (trait: string, { traits }: Names): string => `measured: ${entryText(traits, trait)}`;

function seasonLine({ year, seen, values, note }: LoggedTree['seasons'][number], programme: Names): Line {
  return {
    [OWN_HEADERS.season]: year,
    ...Object.fromEntries(Object.entries(seen).map(([trait, { showed, cut }]) => [seenHeader(trait, programme), `${String(showed)} of ${String(cut)}`])),
    ...Object.fromEntries(Object.entries(values).map(([trait, value]) => [valueHeader(trait, programme), figure(value)])),
    [OWN_HEADERS.seasonNote]: note ?? null,
  };
}

const copyLine = ({ where, whose, number }: LoggedTree['copies'][number]): Line => ({
  [OWN_HEADERS.copyWhere]: where,
  [OWN_HEADERS.copyWhose]: whose,
  [OWN_HEADERS.copyNumber]: number,
});

/** Trees of a log as comma-separated values: a line for each season in which a tree was looked at, and for each copy elsewhere. */
export function treesCsv({ batches }: Log, programme: Names): string {
  const lines = batches.flatMap((batch) => {
    const { [OWN_HEADERS.seed]: seed = null, [OWN_HEADERS.pollen]: pollen = null } = about(batch, programme);
    const of: Line = { ...known(batch), [OWN_HEADERS.seed]: seed, [OWN_HEADERS.pollen]: pollen };
    return batch.trees.flatMap((tree, t) =>
      zipped(
        treeLine(tree, programme),
        { ...of, [OWN_HEADERS.number]: t + 1, [OWN_HEADERS.tag]: tree.tag },
        tree.seasons.map((season) => seasonLine(season, programme)),
        tree.copies.map(copyLine),
      ),
    );
  });
  const { block, row, tree, status, statusSince, weak, stock, firstFruit, lookedUntil, picked, season, copyWhere, copyWhose, copyNumber } = OWN_HEADERS;
  const traits = programme.traits.flatMap(({ id }) => [seenHeader(id, programme), valueHeader(id, programme)]);
  const headers = [
    ...KNOWN,
    OWN_HEADERS.number,
    OWN_HEADERS.tag,
    ...[block, row, tree, status, statusSince, weak, stock, firstFruit, lookedUntil, picked, season],
    ...traits,
    ...[OWN_HEADERS.seasonNote, copyWhere, copyWhose, copyNumber, OWN_HEADERS.note],
  ];
  return table(used(headers, lines, [...KNOWN, OWN_HEADERS.number, OWN_HEADERS.tag]), lines);
}
