import { AMOUNT_COLUMNS, GENERATION_COLUMNS, MILESTONES, RUN_COLUMNS, YEAR_COLUMNS, type Columns } from '../columns.ts';
import type { Frame } from '../frame.ts';
import { FAILURES } from '../outlook.ts';
import { csvLine, type CsvCell } from './csv.ts';

type Read = (row: number) => CsvCell;

/** One column of the file; a plan that has no such column gives an empty cell. */
interface CsvColumn {
  readonly head: string;
  readonly of: (plan: Columns) => Read;
}

const YEARS: ReadonlySet<string> = new Set(['yearProven', 'yearStood', ...MILESTONES]);

/**
 * Writes every future of every plan as one line of comma-separated values, with a line of heads. Plans come in the order of
 * `frame.plans`, futures are numbered from 1. Years are calendar years, empty for never; rules and failures are in words; the columns of
 * generations that a plan does not have are empty.
 * @param columns one for each of `frame.plans`, in its order
 * @returns the file in pieces, line by line
 */
export function* runsCsv(frame: Frame, columns: readonly Columns[]): Generator<string, void, undefined> {
  const generations = frame.plans.reduce((most, plan) => Math.max(most, plan.generations.length), 0);
  const list = csvColumns(frame, generations);
  yield csvLine(['plan', 'future', ...distinct(list.map(({ head }) => head))]);
  for (const [p, plan] of frame.plans.entries()) {
    const part = columns[p];
    if (!part) continue;
    const cells = list.map(({ of }) => of(part));
    for (let row = 0; row < part.runs; row += 1) yield csvLine([plan.id, row + 1, ...cells.map((read) => read(row))]);
  }
}

function csvColumns(frame: Frame, generations: number): CsvColumn[] {
  const year = (index: number | undefined): CsvCell => (index === undefined || index < 0 ? null : frame.startYear + index);
  const number =
    (column: Int32Array | Float64Array): Read =>
    (row) =>
      column[row] ?? null;
  // Kept in single precision: more digits would be noise.
  const single =
    (column: Float32Array): Read =>
    (row) =>
      Number((column[row] ?? 0).toPrecision(7));
  const years =
    (column: Int32Array): Read =>
    (row) =>
      year(column[row]);
  const read = (name: string, column: Int32Array): Read => (YEARS.has(name) ? years(column) : number(column));
  const word =
    (column: Int32Array, words: readonly string[]): Read =>
    (row) =>
      words[column[row] ?? -1] ?? null;
  return [
    ...RUN_COLUMNS.map((head) => ({ head, of: (plan: Columns) => (head === 'failure' ? word(plan.run(head), FAILURES) : read(head, plan.run(head))) })),
    ...frame.shown.map(({ name, rules }, t) => ({ head: `rule: ${name}`, of: (plan: Columns) => word(plan.rule(t), rules) })),
    ...frame.facts.map(({ name }, f) => ({
      head: name === '' ? `fact ${String(f + 1)}` : `fact: ${name}`,
      of: (plan: Columns) => word(plan.fact(f), ['no', 'yes']),
    })),
    ...Array.from({ length: generations }, (_, g) =>
      GENERATION_COLUMNS.map((name) => ({
        head: `generation ${String(g + 1)}: ${name}`,
        of: (plan: Columns): Read => (g < plan.shape.generations ? read(name, plan.generation(g, name)) : () => null),
      })),
    ).flat(),
    ...originColumns(frame, generations),
    ...AMOUNT_COLUMNS.map((head) => ({ head, of: (plan: Columns) => number(plan.amount(head)) })),
    ...YEAR_COLUMNS.flatMap((name) =>
      Array.from({ length: frame.years }, (_, y) => ({ head: `${name} ${String(frame.startYear + y)}`, of: (plan: Columns) => single(plan.year(name, y)) })),
    ),
    ...frame.measured.map(({ name, unit }, t) => ({
      head: `shortfall: ${name}${unit === '' ? '' : ` (${unit})`}`,
      of: (plan: Columns) => number(plan.shortfall(t)),
    })),
  ];
}

/** Where the genomes of picks come from; empty for a future without picks. */
function originColumns({ origin }: Frame, generations: number): CsvColumn[] {
  if (!origin) return [];
  const read = (of: (plan: Columns, g: number) => Float64Array, g: number) => (plan: Columns) => {
    const column = g < plan.shape.generations ? of(plan, g) : null;
    return (row: number): CsvCell => {
      const value = column?.[row] ?? NaN;
      return Number.isNaN(value) ? null : value;
    };
  };
  return Array.from({ length: generations }, (_, g): CsvColumn[] => {
    const head = `generation ${String(g + 1)}`;
    return [
      ...origin.kinds.map((kind, k) => ({ head: `${head}: share of ${kind}`, of: read((plan) => plan.originShare(g, k), g) })),
      ...(origin.gene === null ? [] : [{ head: `${head}: cM around ${origin.gene}`, of: read((plan) => plan.aroundGene(g), g) }]),
    ];
  }).flat();
}

/** Two traits may carry one name; a table's heads may not. */
function distinct(heads: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return heads.map((head) => {
    const times = (seen.get(head) ?? 0) + 1;
    seen.set(head, times);
    return times === 1 ? head : `${head} (${String(times)})`;
  });
}
