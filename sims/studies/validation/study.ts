import { checks } from './checks/all.ts';
import { at, entries, Inputs, isSkipped, published, type Entry } from './entries.ts';
import { planFigures, type PlanFigure } from './plans/samples.ts';
import { samplers } from './sampling/all.ts';
import type { Sampled } from './sampling/tally.ts';
import { agrees, allowed, DIFFERENCES } from './verdict.ts';

export const WAYS = ['worked out', 'sampled', 'whole plans'] as const;
export type Verdict = 'exact' | 'to the digits published' | 'within 4 s.e.' | 'differs';

/** One published figure against ours. */
export interface Figure {
  readonly what?: string;
  readonly published: number;
  readonly ours: number;
  /** Standard error; 0 where nothing was sampled. */
  readonly error: number;
  /** Errors that ours lies off; null where nothing was sampled, or the published digits are no finer than the error. */
  readonly z: number | null;
}

/** One check: a published entry computed in one way. */
export interface Row {
  readonly id: string;
  readonly way: (typeof WAYS)[number];
  readonly title: string;
  readonly source: string;
  readonly mark: Entry['mark'];
  readonly note?: string;
  readonly figures: readonly Figure[];
  readonly verdict: Verdict;
  readonly why?: string;
}

export interface Study {
  readonly rows: readonly Row[];
  readonly covered: readonly string[];
  readonly skipped: readonly { readonly id: string; readonly title: string; readonly source: string; readonly reason: string }[];
}

/** Digits of the files: fewer than arithmetic is good for, so that the last place of another machine's exp is not seen. */
const digits = (value: number, places: number): number => Number(value.toPrecision(places));

/** The number of a sampled figure and its error: of a count, the binomial error at the published chance. */
export function measured(sampled: Sampled, expected: number): { readonly ours: number; readonly error: number } {
  if ('got' in sampled) return { ours: sampled.got, error: sampled.error };
  const { hits, of, times } = sampled;
  const p = Math.min(1, Math.max(0, expected / times));
  return { ours: (times * hits) / of, error: times * Math.sqrt((p * (1 - p)) / of) };
}

type About = Pick<Entry, 'id' | 'title' | 'source' | 'mark' | 'tolerance' | 'note'>;

function rowOf(way: Row['way'], about: About, figures: readonly (Omit<Figure, 'z'> & { readonly tolerance: number | undefined })[]): Row {
  const agree = figures.every(({ tolerance, published: expected, ours, error }) => agrees(tolerance === undefined ? {} : { tolerance }, expected, ours, error));
  const why = DIFFERENCES[about.id];
  const exact = figures.every(
    ({ tolerance, published: expected }) => allowed(tolerance === undefined ? {} : { tolerance }, expected) <= 1e-9 * Math.max(1, Math.abs(expected)),
  );
  return {
    id: about.id,
    way,
    title: about.title,
    source: about.source,
    mark: about.mark,
    ...(about.note === undefined ? {} : { note: about.note }),
    figures: figures.map(({ tolerance, what, published: expected, ours, error }) => ({
      ...(what === undefined ? {} : { what }),
      published: digits(expected, 10),
      ours: digits(ours, way === 'worked out' ? 10 : 6),
      error: digits(error, 2),
      z: error > 0 && allowed(tolerance === undefined ? {} : { tolerance }, expected) < error / 4 ? Number(((ours - expected) / error).toFixed(2)) : null,
    })),
    verdict: !agree ? 'differs' : way !== 'worked out' ? 'within 4 s.e.' : exact ? 'exact' : 'to the digits published',
    ...(!agree && why !== undefined ? { why } : {}),
  };
}

/** Worked out with our functions, without luck. */
export function workedRows(): Row[] {
  return published.flatMap((entry) => {
    const check = checks[entry.id];
    if (!check) return [];
    const computed = check(new Inputs(entry));
    const got = typeof computed === 'number' ? [computed] : computed;
    if (got.length !== entry.expected.length) throw new RangeError(`${entry.id} gives ${String(got.length)} figures.`);
    return [
      rowOf(
        'worked out',
        entry,
        got.map((ours, i) => ({ published: at(entry.expected, i), ours, error: 0, tolerance: entry.tolerance })),
      ),
    ];
  });
}

/** Sampled with our meiosis and draws. @param many how many of the full number of trials to make */
export function sampledRows(many: (full: number) => number): Row[] {
  return published.flatMap((entry) => {
    const sampler = samplers[entry.id];
    if (!sampler) return [];
    const figures = sampler(new Inputs(entry), many);
    if (figures.length !== entry.expected.length) throw new RangeError(`${entry.id} gives ${String(figures.length)} figures.`);
    return [
      rowOf(
        'sampled',
        entry,
        figures.flatMap((sampled, i) => {
          const expected = at(entry.expected, i);
          return sampled ? [{ published: expected, ...measured(sampled, expected), tolerance: entry.tolerance }] : [];
        }),
      ),
    ];
  });
}

/** Whole plans run by the engine. @param many how many of the full number of futures to run */
export function planRows(many: (full: number) => number): Row[] {
  const groups = new Map<string, PlanFigure[]>();
  for (const figure of planFigures(many)) {
    const key = `${figure.id} ${figure.source}`;
    groups.set(key, [...(groups.get(key) ?? []), figure]);
  }
  return [...groups.values()].map((figures) =>
    rowOf(
      'whole plans',
      at(figures, 0),
      figures.map(({ key, expected, goodTo, sampled }) => ({
        what: key,
        published: expected,
        ...measured(sampled, expected),
        tolerance: goodTo > 0 ? goodTo : undefined,
      })),
    ),
  );
}

/** Everything, at full numbers. Words are fixed: the same bytes every time. */
export function study(): Study {
  const all = (full: number): number => full;
  return {
    rows: [...workedRows(), ...sampledRows(all), ...planRows(all)],
    covered: entries.flatMap((entry) => (isSkipped(entry) ? [] : [entry.id])),
    skipped: entries.flatMap((entry) => (isSkipped(entry) ? [{ id: entry.id, title: entry.title, source: entry.source, reason: entry.skip }] : [])),
  };
}
