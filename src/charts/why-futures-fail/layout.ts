import type { Failure, Outlook, PlanOutlook } from '../../results/outlook.ts';
import { failText } from '../../text/charts-more.ts';
import { roomFor } from '../calendar.ts';
import type { Letter } from '../letter.ts';
import { shortName, type WordsByPlan } from '../marks.ts';
import { clip, wrap, type Measure } from '../measure.ts';

/** Ground of a failure: none of the trees was good (plain), trees died (hatch), time ran out (dots), nothing to raise (lines). */
type Ground = 'success' | 'plain' | 'hatch' | 'dots' | 'lines';

const GROUNDS: Readonly<Record<Failure, Ground>> = {
  noneGoodEnough: 'plain',
  seedlingsDied: 'hatch',
  onlyTreeLost: 'hatch',
  stillWaiting: 'dots',
  noFruit: 'lines',
  noSeedling: 'lines',
  noRoom: 'lines',
};
/** From the end of the way backwards: first what failed at the last step. */
const ORDER: readonly Failure[] = ['noneGoodEnough', 'onlyTreeLost', 'seedlingsDied', 'stillWaiting', 'noFruit', 'noSeedling', 'noRoom'];

interface Segment {
  readonly plan: string;
  readonly mark: string;
  readonly reason: Failure | 'success';
  readonly ground: Ground;
  readonly share: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly { readonly x: number; readonly y: number; readonly text: string; readonly bold: boolean }[];
}

export interface FailLayout {
  readonly width: number;
  readonly height: number;
  readonly letters: readonly Letter[];
  readonly names: readonly { readonly plan: string; readonly x: number; readonly y: number; readonly text: string }[];
  readonly segments: readonly Segment[];
  /** Reasons too thin for words of their own, under the bar. */
  readonly also: readonly { readonly plan: string; readonly x: number; readonly y: number; readonly text: string }[];
}

export interface FailOptions {
  readonly width: number;
  readonly measure: Measure;
  readonly words: WordsByPlan;
}

const GAP = 2;
const LEAST_SHARE = 0.0005;
const LINE = 19;

/** Lays out one stacked bar per plan. */
export function failLayout({ plans }: Outlook, { width, measure, words }: FailOptions): FailLayout {
  const phone = roomFor(width) === 'phone';
  const left = phone ? 0 : 36;
  const bar = phone ? 46 : 50;
  const size = phone ? 16 : 17;
  let top = 0;
  const rows = plans.map((plan) => {
    const head = phone ? 30 : 6;
    const y = top + head;
    const segments = segmentsOf(plan, { left, width: width - left, y, height: bar, size, measure, pad: phone ? 7 : 14 });
    const quiet = segments.filter(({ reason, lines }) => reason !== 'success' && (lines.length === 0 || !lines.some(({ bold }) => bold)));
    const text =
      quiet.length === 0
        ? ''
        : failText.also(
            quiet.flatMap(({ reason, share }) => (reason === 'success' ? [] : [{ reason, share }])),
            quiet.length === segments.length - 1,
          );
    const lines = text === '' ? [] : wrap(text, width - left, 16, measure);
    const row = { plan, y, segments, also: lines.map((line, index) => ({ plan: plan.id, x: left, y: y + bar + 19 + index * LINE, text: line })) };
    top = y + bar + (lines.length > 0 ? 8 + lines.length * LINE : 0) + 14;
    return row;
  });
  return {
    width,
    height: top,
    letters: rows.map(({ plan, y }) => ({ plan: plan.id, mark: plan.mark, x: phone ? 12 : 13, y: phone ? y - 15 : y + bar / 2, r: phone ? 12 : 13 })),
    names: phone
      ? rows.map(({ plan, y }) => ({ plan: plan.id, x: 32, y: y - 9, text: clip(plan.name, width - 34, 16, measure, true) || shortName(plan, words) }))
      : [],
    segments: rows.flatMap(({ segments }) => segments),
    also: rows.flatMap(({ also }) => also),
  };
}

interface BarRoom {
  readonly left: number;
  readonly width: number;
  readonly y: number;
  readonly height: number;
  readonly size: number;
  readonly pad: number;
  readonly measure: Measure;
}

function segmentsOf({ id, mark, chance, failures }: PlanOutlook, room: BarRoom): Segment[] {
  const parts: readonly { reason: Segment['reason']; share: number; ground: Ground }[] = [
    { reason: 'success' as const, share: chance.value, ground: 'success' as const },
    ...ORDER.map((reason) => ({ reason, share: failures[reason], ground: GROUNDS[reason] })),
  ].filter(({ share }) => share >= LEAST_SHARE);
  let before = 0;
  return parts.map(({ reason, share, ground }) => {
    const x = room.left + before * room.width;
    const width = Math.max(1, share * room.width - GAP);
    before += share;
    return { plan: id, mark, reason, ground, share, x, y: room.y, width, height: room.height, lines: linesOf(reason, share, x, width, room) };
  });
}

/** The longest words that fit: the reason and its percent, a short reason, the number alone, or nothing. */
function linesOf(reason: Segment['reason'], share: number, x: number, width: number, { y, height, size, pad, measure }: BarRoom): Segment['lines'] {
  const words = reason === 'success' ? failText.success : failText.failure(reason);
  const percent = failText.percent(share);
  const name = [words.long, words.short].find((text) => Math.max(measure(text, size, true), measure(percent, size)) + 1.6 * pad <= width);
  const middle = y + height / 2;
  if (name !== undefined)
    return [
      { x: x + pad, y: middle - 4, text: name, bold: true },
      { x: x + pad, y: middle + 15, text: percent, bold: false },
    ];
  const number = failText.number(share);
  const room = measure(number, size, true);
  return room + 6 <= width ? [{ x: x + (width - room) / 2, y: middle + 6, text: number, bold: false }] : [];
}
