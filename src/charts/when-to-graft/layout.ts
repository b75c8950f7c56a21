import { scaleLinear } from 'd3';
import type { WhenAnswer } from '../../decisions/when.ts';
import { percent } from '../../text/charts.ts';
import { whenText } from '../../text/pay-when.ts';
import { boxAt, inset, type Box } from '../boxes.ts';
import type { Letter } from '../letter.ts';
import type { Measure } from '../measure.ts';
import { DASHED, DOTTED, endWords, shareSteps, type Panel, type PanelCurve, type PanelWords } from '../panel/layout.ts';

export interface WhenLayout {
  readonly width: number;
  readonly height: number;
  /** Of ten weak seedlings: alive, take, saved. */
  readonly upper: Panel;
  /** The plan's chance. */
  readonly lower: Panel;
  /** The age at which the plan grafts, on its chance; null where it grafts nothing. */
  readonly stands: Letter | null;
  /** From the best month of the upper panel down through the lower. */
  readonly drop: { readonly x: number; readonly from: number; readonly to: number };
  readonly x: (month: number) => number;
  readonly monthAt: (x: number) => number;
  readonly y: (share: number) => number;
  /** All of the picture that is read, both panels. */
  readonly plot: Box;
}

export interface WhenOptions {
  readonly width: number;
  readonly measure: Measure;
  readonly mark: string;
  readonly lastYear: number;
}

const PHONE = 520;
const LAST_MONTH = 24;

/** Lays out two panels over one axis of ages: what is saved of ten weak seedlings, and the chance of the whole plan. */
export function whenLayout(answer: WhenAnswer, { width, measure, mark, lastYear }: WhenOptions): WhenLayout {
  const phone = width < PHONE;
  const names = { ...(phone ? whenText.short : whenText.names), chance: phone ? whenText.by(lastYear) : whenText.chance(lastYear) };
  const lastChance = answer.chances.at(-1)?.outcome.chance;
  const error = lastChance ? (phone ? whenText.errorShort : whenText.error)(lastChance) : '';
  const room = Math.max(measure(error, 16.5), ...Object.values(names).map((words) => measure(words, 17, true))) + 16;
  const left = phone ? 46 : 56;
  const plot: Box = { left, right: width - room, top: 14, bottom: 14 + (phone ? 200 : 250) };
  const below: Box = { ...plot, top: plot.bottom + 56, bottom: plot.bottom + 56 + (phone ? 150 : 190) };
  const x = scaleLinear([0, LAST_MONTH], [plot.left, plot.right]);
  const { savesMost, level, best } = answer;
  const upper = upperPanel(answer, plot, x, measure, names, phone);
  const lower = lowerPanel(answer, below, x, { name: names.chance, error, phone, width });
  const own = answer.chances.find(({ month }) => month === answer.stands);
  const stretch = level.from === level.to ? [] : [{ from: x(level.from), to: x(level.to) }];
  const levelWords = level.from === level.to ? '' : whenText.level(level.from, level.to);
  const words: PanelWords = {
    kind: 'aside',
    text: levelWords,
    // At the begin of the stretch, or as near to it as the edge allows.
    x: Math.max(0, Math.min(x(level.from) + 8, width - measure(levelWords, 17))),
    anchor: 'start',
    y: below.top - 18,
  };
  return {
    width,
    height: below.bottom + 60,
    upper: { ...upper, stretches: stretch },
    lower: { ...lower.panel, stretches: stretch.map(({ from, to }) => ({ from, to })), words: [...lower.panel.words, words] },
    stands: own ? { mark, plan: answer.plan, x: x(own.month), y: lower.y(own.outcome.chance.value), r: 12 } : null,
    drop: { x: x(savesMost.month), from: upper.rings[0]?.y ?? plot.top, to: best === savesMost.month ? below.bottom : plot.bottom },
    x: (month) => x(month),
    monthAt: (px) => x.invert(px),
    y: lower.y,
    plot: { left: plot.left, right: plot.right, top: plot.top, bottom: below.bottom },
  };
}

type Scale = (value: number) => number;

function upperPanel(
  { curve, savesMost }: WhenAnswer,
  plot: Box,
  x: Scale,
  measure: Measure,
  names: Readonly<Record<'alive' | 'take' | 'saved', string>>,
  phone: boolean,
): Panel {
  const y = scaleLinear([0, 1], [plot.bottom, plot.top]);
  const line = (id: 'alive' | 'take' | 'saved'): PanelCurve => ({
    id,
    of: id === 'saved' ? 'plan' : 'ink',
    width: id === 'saved' ? 3.5 : 2,
    dash: id === 'alive' ? DOTTED : id === 'take' ? DASHED : null,
    points: curve.map((point) => ({ x: x(point.month), y: y(id === 'saved' ? point.saved.mean / 10 : point[id].mean) })),
  });
  const curves = [line('alive'), line('take'), line('saved')];
  const ring = { x: x(savesMost.month), y: y(savesMost.ofTen / 10) };
  const ends = (['take', 'alive', 'saved'] as const).map((id) => ({
    id,
    of: id === 'saved' ? ('plan' as const) : ('ink' as const),
    name: names[id],
    value: null,
  }));
  return {
    plot,
    across: [0, 6, 12, 18, 24].map((month) => ({ x: x(month), text: '', anchor: 'middle' })),
    up: [0, 0.5, 1].map((share) => ({ y: y(share), text: String(10 * share) })),
    stretches: [],
    bands: [{ id: 'saved', of: 'plan', points: curve.map(({ month, saved }) => ({ x: x(month), low: plot.bottom, high: y(saved.mean / 10) })) }],
    curves,
    rules: [],
    rings: [ring],
    words: [bestWords(ring, phone ? whenText.bestShort(savesMost.month) : whenText.best(savesMost.month, savesMost.ofTen), curves, plot, measure)],
    ends: endWords(
      ends.map((end) => ({ ...end, y: curves.find(({ id }) => id === end.id)?.points.at(-1)?.y ?? plot.bottom })),
      { plot, gap: 10 },
    ),
  };
}

const HIGH = 22;

/** The best month in words: near its ring, where they cover as little of the lines as can be. */
function bestWords(ring: { readonly x: number; readonly y: number }, text: string, curves: readonly PanelCurve[], plot: Box, measure: Measure): PanelWords {
  const wide = measure(text, 17, true);
  const spots = [-12, 26, -40, 54, -70, 84, -100, -130, -160].flatMap((down) =>
    [12, 40, -12 - wide].map((aside) => boxAt(ring.x + aside, ring.y + down - 17, wide, HIGH)),
  );
  const covered = (box: Box) =>
    curves.reduce(
      (sum, { points }) => sum + points.filter(({ x, y }) => x > box.left - 2 && x < box.right + 2 && y > box.top - 1 && y < box.bottom + 1).length,
      0,
    );
  const inside = spots.filter((box) => inset(box, plot) >= 0);
  const [first] = inside.length > 0 ? inside : spots;
  const free = inside.reduce((a, b) => (covered(b) < covered(a) ? b : a), first ?? boxAt(ring.x, ring.y, wide, HIGH));
  return { kind: 'strong', text, x: free.left, y: free.top + 17, anchor: 'start' };
}

function lowerPanel(
  { chances, best }: WhenAnswer,
  plot: Box,
  x: Scale,
  { name, error, phone, width }: { readonly name: string; readonly error: string; readonly phone: boolean; readonly width: number },
): { readonly panel: Panel; readonly y: Scale } {
  const all = chances.map(({ outcome }) => outcome.chance);
  const steps = shareSteps(Math.min(...all.map(({ low }) => low)), Math.max(...all.map(({ high }) => high)));
  const y = scaleLinear([steps[0] ?? 0, steps.at(-1) ?? 1], [plot.bottom, plot.top]);
  const top = chances.find(({ month }) => month === best);
  const last = chances.at(-1);
  return {
    y: (share) => y(share),
    panel: {
      plot,
      across: [0, 6, 12, 18, 24].map((month) => ({ x: x(month), text: String(month), anchor: 'middle' })),
      up: steps.map((share) => ({ y: y(share), text: percent(share) })),
      stretches: [],
      bands: [
        { id: 'chance', of: 'plan', points: chances.map(({ month, outcome: { chance } }) => ({ x: x(month), low: y(chance.low), high: y(chance.high) })) },
      ],
      curves: [
        { id: 'chance', of: 'plan', width: 3, dash: null, points: chances.map(({ month, outcome: { chance } }) => ({ x: x(month), y: y(chance.value) })) },
      ],
      rules: [],
      rings: top ? [{ x: x(top.month), y: y(top.outcome.chance.value) }] : [],
      words: [
        {
          kind: 'caption',
          text: phone ? whenText.acrossShort : whenText.across,
          x: phone ? width - 4 : plot.right,
          y: plot.bottom + 50,
          anchor: 'end',
        },
      ],
      ends: last ? endWords([{ id: 'chance', of: 'plan', name, value: error, y: y(last.outcome.chance.value) }], { plot, gap: 10 }) : [],
    },
  };
}

/** Index of the age nearest to a month. */
export const ageNear = ({ chances }: WhenAnswer, month: number): number =>
  chances.reduce((best, chance, i) => (Math.abs(chance.month - month) < Math.abs((chances[best]?.month ?? Infinity) - month) ? i : best), 0);
