import { scaleLinear } from 'd3';
import type { TrialPoint, TrialWatch } from '../../decisions/trial.ts';
import type { Interval } from '../../results/outlook.ts';
import { trialText } from '../../text/pay-trial.ts';
import type { Measure } from '../measure.ts';
import { DASHED, DOTTED, endWords, type Of, type Panel, type PanelCurve } from '../panel/layout.ts';

export interface TrialLayout {
  readonly width: number;
  readonly height: number;
  readonly panel: Panel;
  /** Under this line a gain is too small to be measured. */
  readonly zone: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  /** px of a size, and back to the nearest. */
  readonly x: (n: number) => number;
  readonly nAt: (x: number) => number;
}

const PHONE = 560;
/** Gains of less than this are drawn as what they are: next to nothing. */
const LEAST = 0.01;
const TICKS = [2, 5, 10, 15, 20] as const;

/** Steps of an axis of gains, in shares, from 0. */
export function gainSteps(most: number): readonly number[] {
  const top = Math.max(LEAST, most);
  const step = [0.0025, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2].find((size) => top / size <= 5) ?? 0.5;
  return Array.from({ length: Math.ceil(top / step - 1e-9) + 1 }, (_, i) => Math.round(i * step * 1e4) / 1e4);
}

const zoneOf = ({ worth }: TrialPoint): number => worth.high - worth.value;

/** Lays out what trials of each size are worth: a line for each time of counting with its band, the upper rule, and what cannot be measured. */
export function trialLayout(watched: readonly TrialWatch[], { width, measure }: { readonly width: number; readonly measure: Measure }): TrialLayout {
  const phone = width < PHONE;
  const long = watched.at(-1);
  const names = [...watched.map(({ summers }) => trialText.summers(summers)), trialText.perfect];
  const beside = Math.max(...names.map((name) => measure(name, 17, true))) + 14;
  const plot = { left: phone ? 40 : 50, right: phone ? width - 6 : width - beside - 4, top: 44, bottom: 44 + (phone ? 240 : 280) };
  const all = watched.flatMap(({ points, perfect }) => [perfect.value, ...points.flatMap((point) => [point.worth.high, zoneOf(point)])]);
  const steps = gainSteps(Math.max(0, ...all));
  const sizes = long?.points.map(({ n }) => n) ?? [];
  const [from, to] = [sizes[0] ?? 2, sizes.at(-1) ?? 20];
  const x = scaleLinear([from, to], [plot.left + 8, plot.right - 8]);
  const y = scaleLinear([0, steps.at(-1) ?? LEAST], [plot.bottom, plot.top]).clamp(true);
  const of = (watch: TrialWatch): Of => (watch === long ? 'plan' : 'ink');
  const perfect = long?.perfect.value ?? 0;
  const ends = [
    { id: 'perfect', of: 'ink' as const, name: trialText.perfect, value: null, y: y(perfect) },
    ...watched.map((watch) => ({
      id: String(watch.summers),
      of: of(watch),
      name: trialText.summers(watch.summers),
      value: null,
      y: y(watch.points.at(-1)?.worth.value ?? 0),
    })),
  ];
  return {
    width,
    height: plot.bottom + (phone ? 60 + 24 * names.length : 60),
    x: (n) => x(n),
    nAt: (px) => Math.min(to, Math.max(from, Math.round(x.invert(px)))),
    zone: long?.points.map((point) => ({ x: x(point.n), low: y(0), high: y(zoneOf(point)) })) ?? [],
    panel: {
      plot,
      across: TICKS.filter((n) => n >= from && n <= to).map((n) => ({ x: x(n), text: String(n), anchor: 'middle' })),
      up: steps.map((gain) => ({ y: y(gain), text: String(Math.round(gain * 1e4) / 100) })),
      stretches: [],
      // One band: two that cover each other read as a third. The table has the other's intervals.
      bands: long ? [{ id: String(long.summers), of: of(long), points: long.points.map(({ n, worth }) => band(x(n), worth, y)) }] : [],
      curves: [
        { id: 'perfect', of: 'ink', width: 2, dash: DOTTED, points: [plot.left, plot.right].map((at) => ({ x: at, y: y(perfect) })) },
        ...watched.map((watch): PanelCurve => ({
          id: String(watch.summers),
          of: of(watch),
          width: watch === long ? 3.5 : 2,
          dash: watch === long ? null : DASHED,
          points: watch.points.map(({ n, worth }) => ({ x: x(n), y: y(worth.value) })),
        })),
      ],
      rules: [],
      rings: [],
      words: [
        { kind: 'strong', text: phone ? trialText.upShort : trialText.up, x: 0, y: plot.top - 22, anchor: 'start' },
        {
          kind: 'caption',
          text: phone ? trialText.acrossShort : trialText.across,
          x: phone ? plot.left + (plot.right - plot.left) / 2 : plot.right,
          y: plot.bottom + 50,
          anchor: phone ? 'middle' : 'end',
        },
        ...zoneWords(long, plot, y),
      ],
      ends: phone ? underEnds(ends, plot) : endWords(ends, { plot, gap: 10 }),
    },
  };
}

const band = (x: number, { low, high }: Interval, y: (gain: number) => number) => ({ x, low: y(Math.max(0, low)), high: y(Math.max(0, high)) });

/** On a phone there is no room beside the lines: a key under the picture, each name behind a piece of its line. */
const KEY_LINE = 30;
function underEnds(
  ends: readonly { readonly id: string; readonly of: Of; readonly name: string; readonly value: string | null }[],
  plot: Panel['plot'],
): Panel['ends'] {
  return ends.map((end, i) => {
    const y = plot.bottom + 82 + 24 * i;
    return { ...end, x: plot.left + KEY_LINE + 10, y, lineX: plot.left + KEY_LINE, lineY: y - 6 };
  });
}

/** Written in the zone, on the ground of the plot; above it where it is too flat for a line of words. */
function zoneWords(long: TrialWatch | undefined, plot: Panel['plot'], y: (gain: number) => number): Panel['words'] {
  if (!long) return [];
  const top = y(Math.max(...long.points.map(zoneOf)));
  return [{ kind: 'aside', text: trialText.zone, x: plot.right - 10, y: plot.bottom - top >= 34 ? plot.bottom - 10 : top - 10, anchor: 'end' }];
}

/** Pieces of line before the names of a key under the picture; none where the names stand beside their lines. */
export function keyLines({ panel: { ends, curves, plot } }: TrialLayout): readonly {
  readonly x: number;
  readonly y: number;
  readonly of: Of;
  readonly width: number;
  readonly dash: string | null;
  readonly to: number;
}[] {
  return ends.flatMap(({ id, x, lineY }) => {
    const curve = curves.find((one) => one.id === id);
    return curve && x < plot.right ? [{ x: x - 10 - KEY_LINE, to: x - 10, y: lineY, of: curve.of, width: curve.width, dash: curve.dash }] : [];
  });
}
