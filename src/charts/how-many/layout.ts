import { scaleLinear, scaleLog } from 'd3';
import { curve } from '../../decisions/how-many-curve.ts';
import type { HowManyAnswer } from '../../decisions/how-many.ts';
import { firstReaching, heightAt } from '../../statistics/isotonic.ts';
import { percent, percentRange, whole } from '../../text/charts.ts';
import { howManyText, neverReached } from '../../text/pay-how-many.ts';
import { leverWords } from '../../text/pay-how-many-names.ts';
import type { Box } from '../boxes.ts';
import type { Letter } from '../letter.ts';
import type { Measure } from '../measure.ts';
import { DASHED, DOTTED, endWords, type AcrossTick, type Panel, type PanelWords } from '../panel/layout.ts';

export interface HowManyLayout {
  readonly width: number;
  readonly height: number;
  readonly panel: Panel;
  /** The numbers past which more buys little, from x to x; null where more still helps. */
  readonly level: { readonly from: number; readonly to: number } | null;
  /** Rules at the chances that are read off. */
  readonly levels: readonly { readonly y: number; readonly text: string; readonly never: boolean }[];
  readonly hours: readonly AcrossTick[];
  readonly hoursY: number;
  /** Where half of the futures need the whole of the hours limit; null where that is at no number tried. */
  readonly limit: { readonly x: number; readonly words: PanelWords } | null;
  /** The plan as it stands, on the line of the last year. */
  readonly present: Letter | null;
  /** Place of each number tried, and of its chances. */
  readonly places: readonly { readonly x: number; readonly ys: readonly number[] }[];
}

export interface HowManyOptions {
  readonly width: number;
  readonly measure: Measure;
  readonly mark: string;
}

const PHONE = 520;
const SIZE = 17;
/** Dash and thickness by year, the last one first. */
const LOOKS = [
  { dash: null, width: 3.5 },
  { dash: DASHED, width: 3 },
  { dash: DOTTED, width: 3 },
] as const;
const HIGHEST = 0.95;
const READ = [0.5, 0.8, HIGHEST];
/** Room between two numbers on an axis, px. */
const APART = 12;

/** Lays out the chances by three years against a number, even in its logarithm unless it begins at none. */
export function howManyLayout(answer: HowManyAnswer, { width, measure, mark }: HowManyOptions): HowManyLayout {
  const { points, years, lever } = answer;
  const phone = width < PHONE;
  const plot: Box = { left: phone ? 48 : 62, right: width - (phone ? 62 : 138), top: 74, bottom: 74 + (phone ? 300 : Math.min(400, Math.round(width * 0.5))) };
  const values = points.map(({ value }) => value);
  const [first = 1, last = 2] = [values[0], values.at(-1)];
  const x =
    first > 0 && last > first ? scaleLog([first, last], [plot.left, plot.right]) : scaleLinear([first, Math.max(last, first + 1)], [plot.left, plot.right]);
  const y = scaleLinear([0, 1], [plot.bottom, plot.top]);
  const lines = years.map((year, i) => {
    const of = (end: 'value' | 'low' | 'high') => curve(points, i, end, answer.rises);
    return { year, look: LOOKS[years.length - 1 - i] ?? LOOKS[0], value: of('value'), low: of('low'), high: of('high'), chance: points.at(-1)?.chances[i] };
  });
  const at = (list: readonly number[], i: number) => y(list[i] ?? 0);
  const never = neverReached(answer);
  const rings = answer.readOffs.flatMap(({ at: place, already, chance }) => (place === null || already ? [] : [{ x: x(place), y: y(chance) }]));
  const panel: Panel = {
    plot,
    across: ticks(
      values.map((value) => ({ x: x(value), text: whole(value) })),
      measure,
      plot,
      [values.indexOf(answer.present)],
    ),
    up: [0].map((share) => ({ y: y(share), text: percent(share) })),
    stretches: [],
    bands: lines.map(({ year, low, high }) => ({
      id: String(year),
      of: 'plan',
      points: values.map((value, i) => ({ x: x(value), low: at(low, i), high: at(high, i) })),
    })),
    curves: lines.map(({ year, look, value }) => ({
      id: String(year),
      of: 'plan',
      ...look,
      points: values.map((place, i) => ({ x: x(place), y: at(value, i) })),
    })),
    rules: [],
    rings,
    words: [
      { kind: 'caption', text: phone ? leverWords[lever].axisShort : leverWords[lever].axis, x: plot.right, y: plot.bottom + 52, anchor: 'end' },
      { kind: 'aside', text: howManyText.hoursCaption, x: plot.left, y: 20, anchor: 'start' },
      ...(never ? [neverWords(never.text, y, plot, phone)] : []),
    ],
    ends: endWords(
      lines.map(({ year, value, chance }) => ({
        id: String(year),
        of: 'plan',
        name: phone ? String(year) : `${howManyText.by(year)}  ${percent(value.at(-1) ?? 0)}`,
        value: phone ? percent(value.at(-1) ?? 0) : chance ? `${percentRange(chance.low, chance.high)}\u00a0%` : null,
        y: at(value, values.length - 1),
      })),
      { plot, gap: 10 },
    ),
  };
  return {
    width,
    height: plot.bottom + 62,
    panel,
    level: answer.heldBack && answer.enough < last ? { from: x(answer.enough), to: plot.right } : null,
    levels: READ.map((chance) => ({ y: y(chance), text: percent(chance), never: never?.chances.includes(chance) === true })),
    hours: ticks(
      points.map(({ value, outcome }) => ({ x: x(value), text: howManyText.hours(outcome.busiestHours.p50) })),
      measure,
      plot,
      [values.length - 1],
    ),
    hoursY: 46,
    limit: limitOf(answer, x, plot),
    present: presentOf(answer, lines.at(-1)?.value ?? [], x, y, mark, phone),
    places: values.map((value, i) => ({ x: x(value), ys: lines.map((line) => at(line.value, i)) })),
  };
}

type Scale = (value: number) => number;

/** Said once, over the highest rule: whatever is not reached, that is not, so no line comes there. */
function neverWords(text: string, y: Scale, plot: Box, phone: boolean): PanelWords {
  return { kind: 'aside', text: phone ? text.replace(/:.*$/, ': not reached') : text, x: plot.left + 10, y: y(HIGHEST) - 5, anchor: 'start' };
}

/** Numbers under or over their places; those without room are left out, the wanted ones first. */
function ticks(all: readonly { readonly x: number; readonly text: string }[], measure: Measure, plot: Box, wanted: readonly number[]): readonly AcrossTick[] {
  const order = [...wanted, 0, all.length - 1, ...all.keys()].filter((i, place, list) => i >= 0 && list.indexOf(i) === place);
  const taken: { left: number; right: number }[] = [];
  const shown = new Set<number>();
  for (const i of order) {
    const tick = all[i];
    if (!tick) continue;
    const half = measure(tick.text, SIZE) / 2;
    const [left, right] = [tick.x - half, tick.x + half];
    if (taken.some((other) => left < other.right + APART && right > other.left - APART) || left < plot.left - 40) continue;
    taken.push({ left, right });
    shown.add(i);
  }
  return all.map(({ x, text }, i) => ({ x, text: shown.has(i) ? text : '', anchor: 'middle' }));
}

function limitOf({ points, limits }: HowManyAnswer, x: Scale, plot: Box): HowManyLayout['limit'] {
  if (limits.hours === null) return null;
  const values = points.map(({ value }) => value);
  const hours = points.map(({ outcome }) => outcome.busiestHours.p50);
  const { at, already } = firstReaching(values, hours, limits.hours);
  if (at === null || already) return null;
  const place = x(at);
  const left = place > (plot.left + plot.right) / 2;
  const words: PanelWords = {
    kind: 'strong',
    text: howManyText.limit(limits.hours),
    x: place + (left ? -8 : 8),
    y: plot.bottom - 12,
    anchor: left ? 'end' : 'start',
  };
  return { x: place, words };
}

function presentOf(answer: HowManyAnswer, heights: readonly number[], x: Scale, y: Scale, mark: string, phone: boolean): Letter | null {
  const { points, present, plan } = answer;
  if (points.length === 0) return null;
  const height = heightAt(
    points.map(({ value }) => value),
    heights,
    present,
  );
  return { mark, plan, x: x(present), y: y(height), r: phone ? 12 : 13 };
}
