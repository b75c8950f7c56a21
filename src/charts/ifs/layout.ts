import { scaleLinear, ticks } from 'd3';
import type { IfLine, IfPoint } from '../../decisions/ifs/line.ts';
import type { Interval } from '../../results/outlook.ts';
import { percent } from '../../text/charts.ts';
import { ifsText } from '../../text/pay-ifs.ts';
import type { Box } from '../boxes.ts';
import type { Measure } from '../measure.ts';
import { DASHED, DOTTED, endWords, shareSteps, type Of, type Panel } from '../panel/layout.ts';

/** One if with its readings, all over years. */
export interface IfPicture {
  /** At least one, each with a curve. */
  readonly lines: readonly IfLine[];
  /** Words at the ends of the curves, in the order of the lines. */
  readonly names: readonly string[];
  /** Chance of the plan as it stands. */
  readonly stands: Interval;
}

export interface IfLayout {
  readonly width: number;
  readonly height: number;
  readonly panel: Panel;
  /** Years that any curve was run at, rising. */
  readonly years: readonly number[];
  readonly x: (year: number) => number;
  readonly y: (share: number) => number;
}

const PHONE = 520;
/** A year and the gap after it, px. */
const YEAR_ROOM = 58;
const DASHES = [null, DASHED, DOTTED, '14 4 2 4'] as const;

/** Lays out the chance of a proven tree by the year in which something happens, with the plan as it stands as a level line. */
export function ifLayout(picture: IfPicture, { width, measure }: { readonly width: number; readonly measure: Measure }): IfLayout {
  const phone = width < PHONE;
  const { stands, names } = picture;
  const lines = picture.lines.map((line, i) => ({
    line,
    points: line.curve ?? [],
    of: ofLine(i),
    dash: DASHES[i % DASHES.length] ?? null,
    name: names[i] ?? '',
  }));
  const years = yearsOf(picture.lines);
  const [first, last] = [years[0] ?? 0, years.at(-1) ?? 1];
  const points = lines.flatMap((one) => one.points);
  const steps = shareSteps(
    Math.min(stands.value, ...points.map(({ chance }) => chance.low)),
    Math.max(stands.value, ...points.map(({ chance }) => chance.high)),
  );
  const room = Math.max(...[...names, ifsText.stands].map((name) => measure(name, 17, true))) + 16;
  const plot: Box = { left: phone ? 46 : 54, right: width - room, top: 36, bottom: 36 + (phone ? 190 : 200) };
  const x = scaleLinear([first, Math.max(first + 1, last)], [plot.left, plot.right]);
  const y = scaleLinear([steps[0] ?? 0, steps.at(-1) ?? 1], [plot.bottom, plot.top]);
  const end = (curve: readonly IfPoint[]) => y(curve.at(-1)?.chance.value ?? 0);
  return {
    width,
    height: plot.bottom + 60,
    years,
    x: (year) => x(year),
    y: (share) => y(share),
    panel: {
      plot,
      across: ticksOf(first, last, (plot.right - plot.left) / YEAR_ROOM).map((year) => ({ x: x(year), text: String(year), anchor: 'middle' })),
      up: steps.map((share) => ({ y: y(share), text: percent(share) })),
      stretches: [],
      bands: lines.map(({ line, points: run, of }) => ({
        id: idOf(line),
        of,
        points: run.map(({ year, chance }) => ({ x: x(year), low: y(chance.low), high: y(chance.high) })),
      })),
      curves: [
        {
          id: 'stands',
          of: 'ink',
          width: 1,
          dash: '4 4',
          points: [
            { x: plot.left, y: y(stands.value) },
            { x: plot.right, y: y(stands.value) },
          ],
        },
        ...lines.map(({ line, points: run, of, dash }) => ({
          id: idOf(line),
          of,
          width: of === 'plan' ? 3.5 : 2,
          dash,
          points: run.map(({ year, chance }) => ({ x: x(year), y: y(chance.value) })),
        })),
      ],
      rules: [],
      rings: lines.flatMap(({ line, points: run }) =>
        run.filter(({ year }) => year === line.year).map(({ year, chance }) => ({ x: x(year), y: y(chance.value) })),
      ),
      words: [{ kind: 'caption', text: ifsText.up, x: plot.left, y: plot.top - 14, anchor: 'start' }, ...captionOf(picture, plot, width, measure)],
      ends: endWords(
        [
          ...lines.map(({ line, points: run, of, name }) => ({ id: idOf(line), of, name, value: null, y: end(run) })),
          { id: 'stands', of: 'ink', name: ifsText.stands, value: null, y: y(stands.value) },
        ],
        { plot, gap: 12 },
      ),
    },
  };
}

export const idOf = ({ form, garden }: IfLine): string => (garden === null ? form : `${form} ${garden}`);

const ofLine = (i: number): Of => (i === 0 ? 'plan' : 'ink');

/** Years that any of the lines was run at, rising. */
export const yearsOf = (lines: readonly IfLine[]): readonly number[] =>
  [...new Set(lines.flatMap(({ curve }) => (curve ?? []).map(({ year }) => year)))].sort((a, b) => a - b);

/** Under the axis, ending at its right end; in the middle of the picture where it would not fit. */
function captionOf({ lines: [first] }: IfPicture, plot: Box, width: number, measure: Measure): Panel['words'] {
  if (!first) return [];
  const whole = ifsText.across[first.if];
  const fits = measure(whole, 17, true) <= plot.right - 4;
  const text = fits ? whole : ifsText.acrossShort[first.if];
  return fits
    ? [{ kind: 'caption', text, x: plot.right, y: plot.bottom + 50, anchor: 'end' }]
    : [{ kind: 'caption', text, x: plot.left + (width - plot.left) / 2, y: plot.bottom + 50, anchor: 'middle' }];
}

/** Round years that are not too close; the first and the last where there is room for no more. */
function ticksOf(first: number, last: number, most: number): readonly number[] {
  for (let count = Math.max(1, Math.floor(most)); count > 1; count -= 1) {
    const found = [...new Set(ticks(first, last, count).map(Math.round))].filter((year) => year >= first && year <= last);
    if (found.length <= most) return found;
  }
  return most >= 1 && last > first ? [first, last] : [first];
}

/** The year nearest to a place, by its position among the years. */
export const yearNear = ({ years, x }: IfLayout, px: number): number =>
  years.reduce((best, year, i) => (Math.abs(x(year) - px) < Math.abs(x(years[best] ?? year) - px) ? i : best), 0);
