import type { Figure, Row, Study } from './study.ts';
import { WAYS } from './study.ts';

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n');
const list = (figures: readonly Figure[], show: (figure: Figure) => string): string => figures.map(show).join('; ');

const INTRO: Readonly<Record<Row['way'], string>> = {
  'worked out': 'Our functions without luck. They agree when they are within half a unit of the last published digit, or exact but for double rounding.',
  sampled: 'Seedlings made by the meiosis that plans use, and the draws that plans use, many times over. s.e.: standard error of ours.',
  'whole plans': 'Plans with an exact answer, run by the engine from pollination to the judged crop. The sharper of two values is given a row of its own.',
};

const named = (figures: readonly Figure[], show: (figure: Figure) => string): string =>
  list(figures, (figure) => (figure.what === undefined || figures.length === 1 ? show(figure) : `${figure.what} ${show(figure)}`));

function rowCells(row: Row): string[] {
  const what = row.note === undefined ? row.title : `${row.title}. ${row.note}`;
  const start = [
    row.id,
    what,
    `${row.source} (${row.mark})`,
    named(row.figures, ({ published }) => String(published)),
    list(row.figures, ({ ours }) => String(ours)),
  ];
  return row.way === 'worked out' ? [...start, row.verdict] : [...start, list(row.figures, ({ error }) => String(error)), row.verdict];
}

export const zScores = ({ rows }: Study): number[] => rows.flatMap((row) => row.figures.flatMap(({ z }) => (z === null ? [] : [z])));

function skippedBlocks(skipped: Study['skipped']): string {
  const reasons = new Map<string, string[]>();
  for (const { id, reason } of skipped) reasons.set(reason, [...(reasons.get(reason) ?? []), id]);
  return table(
    ['reason', 'how many', 'entries'],
    [...reasons].map(([reason, ids]) => [reason, String(ids.length), ids.join(', ')]),
  );
}

/** The study as a page to read. */
export function report(result: Study): string {
  const { rows, covered, skipped } = result;
  const zs = zScores(result);
  const beyond = (limit: number): number => zs.filter((z) => Math.abs(z) > limit).length;
  const differing = rows.filter(({ verdict }) => verdict === 'differs');
  const summary = WAYS.map((way) => {
    const of = rows.filter((row) => row.way === way);
    const differ = of.filter(({ verdict }) => verdict === 'differs').length;
    return [way, String(of.length), String(of.reduce((n, row) => n + row.figures.length, 0)), String(of.length - differ), String(differ)];
  });
  const marks = (['seen', 'from memory', 'derived'] as const).map((mark) => {
    const ids = new Set(rows.filter((row) => row.mark === mark).map(({ id }) => id));
    return `${String(ids.size)} ${mark}`;
  });
  const squares = zs.reduce((sum, z) => sum + z * z, 0) / zs.length;
  return [
    '# Validation',
    'Every published figure that we know of for what this project computes, against ours. Written by `npm run studies`; do not edit by hand. The same numbers are in [validation.json](validation.json).',
    `Of ${String(covered.length + skipped.length)} known check values of the field, ${String(covered.length)} are computed here and ${String(skipped.length)} are skipped, each with its reason (at the end). Further rows are tables of functions, and exact answers of parts of the model and of whole plans.`,
    `Where a published value comes from: ${marks.join(', ')}. Seen: the source itself was read. From memory: the figure was not looked up again. Derived: it follows from a definition, worked out independently of our code.`,
    table(['way', 'checks', 'figures', 'agree', 'differ'], summary),
    '## Where we differ',
    differing.length === 0
      ? 'Nowhere.'
      : table(
          ['entry', 'published', 'ours', 'why'],
          differing.map((row) => [
            row.id,
            list(row.figures, ({ published }) => String(published)),
            list(row.figures, ({ ours }) => String(ours)),
            row.why ?? '',
          ]),
        ),
    '## How far sampled figures lie off',
    '![Standard errors off the published value, all sampled figures](validation.svg)',
    `${String(zs.length)} sampled figures have a published value sharper than their error. By luck alone, ${(zs.length * 0.0455).toFixed(0)} would lie more than 2 standard errors off and ${(zs.length * 0.0027).toFixed(1)} more than 3; ${String(beyond(2))} and ${String(beyond(3))} do. The mean square is ${squares.toFixed(2)}, by luck 1. Classes of one family add up to a whole, so they are not independent of each other.`,
    ...WAYS.flatMap((way) => [
      `## ${way.charAt(0).toUpperCase()}${way.slice(1)}`,
      INTRO[way],
      table(
        way === 'worked out'
          ? ['entry', 'what', 'source', 'published', 'ours', 'verdict']
          : ['entry', 'what', 'source', 'published', 'ours', 's.e.', 'verdict'],
        rows.filter((row) => row.way === way).map(rowCells),
      ),
    ]),
    '## Skipped',
    skippedBlocks(skipped),
    '',
  ].join('\n\n');
}
