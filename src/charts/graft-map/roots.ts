import { scaleLinear } from 'd3';
import type { RootsLine } from '../../decisions/roots-line.ts';
import { percent } from '../../text/charts.ts';
import { rootsText } from '../../text/pay-graft.ts';
import type { Measure } from '../measure.ts';
import { DASHED, endWords, shareSteps, type Panel } from '../panel/layout.ts';

export interface RootsLayout {
  readonly width: number;
  readonly height: number;
  readonly panel: Panel;
  /** px of a chance that weakness sits in the roots, and back. */
  readonly x: (rootChance: number) => number;
  readonly rootChanceAt: (x: number) => number;
}

const PHONE = 520;

/** Lays out the chance with and without a graft against the chance that weakness sits in the roots. */
export function rootsLayout(
  { points, breakEven }: RootsLine,
  here: number | null,
  { width, measure }: { readonly width: number; readonly measure: Measure },
): RootsLayout {
  const phone = width < PHONE;
  const last = points.at(-1);
  const ends = (['grafted', 'own'] as const).map((id) => ({ id, name: rootsText.lines[id], value: percent(last?.[id].value ?? 0) }));
  const room = Math.max(...ends.map(({ name }) => measure(name, 17, true))) + 14;
  const plot = { left: phone ? 46 : 56, right: width - room - 4, top: 34, bottom: 34 + (phone ? 220 : 260) };
  const steps = shareSteps(
    Math.min(...points.flatMap(({ grafted, own }) => [grafted.low, own.low])),
    Math.max(...points.flatMap(({ grafted, own }) => [grafted.high, own.high])),
  );
  const x = scaleLinear([0, 1], [plot.left, plot.right]);
  const y = scaleLinear([steps[0] ?? 0, steps.at(-1) ?? 1], [plot.bottom, plot.top]);
  const lines = (['own', 'grafted'] as const).map((id) => ({ id, of: id === 'grafted' ? ('plan' as const) : ('ink' as const) }));
  const unclear = points.filter(({ clear }) => !clear).map(({ rootChance }) => rootChance);
  return {
    width,
    height: plot.bottom + 60,
    x: (chance) => x(chance),
    rootChanceAt: (px) => Math.min(1, Math.max(0, x.invert(px))),
    panel: {
      plot,
      across: [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => ({ x: x(share), text: String(Math.round(10 * share)), anchor: 'middle' })),
      up: steps.map((share) => ({ y: y(share), text: percent(share) })),
      stretches: breakEven
        ? [{ from: x(breakEven.low), to: x(breakEven.high) }]
        : unclear.length > 1
          ? [{ from: x(Math.min(...unclear)), to: x(Math.max(...unclear)) }]
          : [],
      bands: lines.map(({ id, of }) => ({
        id,
        of,
        points: points.map((point) => ({ x: x(point.rootChance), low: y(point[id].low), high: y(point[id].high) })),
      })),
      curves: lines.map(({ id, of }) => ({
        id,
        of,
        width: of === 'plan' ? 3.5 : 2,
        dash: of === 'plan' ? null : DASHED,
        points: points.map((point) => ({ x: x(point.rootChance), y: y(point[id].value) })),
      })),
      rules: [
        ...(breakEven ? [{ x: x(breakEven.value), from: plot.top, to: plot.bottom, kind: 'level' as const }] : []),
        ...(here === null ? [] : [{ x: x(here), from: plot.top, to: plot.bottom, kind: 'place' as const }]),
      ],
      rings: [],
      words: [
        ...(here === null
          ? []
          : [
              {
                kind: 'plain' as const,
                text: rootsText.here(here),
                x: x(here),
                y: plot.top - 12,
                anchor: here > 0.75 ? ('end' as const) : here < 0.25 ? ('start' as const) : ('middle' as const),
              },
            ]),
        {
          kind: 'caption',
          text: phone ? rootsText.acrossShort : rootsText.across,
          x: phone ? plot.left + (width - plot.left) / 2 : plot.right,
          y: plot.bottom + 50,
          anchor: phone ? 'middle' : 'end',
        },
      ],
      ends: endWords(
        ends.map(({ id, name, value }) => ({ id, of: id === 'grafted' ? 'plan' : 'ink', name, value, y: y(last?.[id].value ?? 0) })),
        { plot, gap: 10 },
      ),
    },
  };
}

/** The point of the line nearest to a chance. */
export const pointNear = ({ points }: RootsLine, rootChance: number): number =>
  points.reduce((best, point, i) => (Math.abs(point.rootChance - rootChance) < Math.abs((points[best]?.rootChance ?? 2) - rootChance) ? i : best), 0);
