import { scaleLinear } from 'd3';
import type { CopiesAnswer, CopiesWay } from '../../decisions/copies.ts';
import { percent } from '../../text/charts.ts';
import { copiesText, wayName } from '../../text/pay-copies.ts';
import type { Box } from '../boxes.ts';
import type { Measure } from '../measure.ts';
import { DASHED, endWords, shareSteps, type Panel } from '../panel/layout.ts';

export interface CopiesLayout {
  readonly width: number;
  readonly height: number;
  readonly panel: Panel;
  /** px of a winter, counted from the first year, and back. */
  readonly x: (winters: number) => number;
  readonly wintersAt: (x: number) => number;
  readonly y: (share: number) => number;
}

const PHONE = 520;
const YEARS = [1, 2, 5, 10, 20, 50];

/** Lays out the chance that the last copy of a tree is lost, by year, for every number of copies and gardens. */
export function copiesLayout({ ways, startYear }: CopiesAnswer, { width, measure }: { readonly width: number; readonly measure: Measure }): CopiesLayout {
  const phone = width < PHONE;
  const lostOf = ({ lostBy }: CopiesWay) => lostBy.at(-1) ?? 0;
  const ends = ways.map((way) => ({
    id: idOf(way),
    of: way.asItStands ? ('plan' as const) : ('ink' as const),
    name: copiesText.end(wayName(way, phone), lostOf(way)),
    value: null,
    lost: lostOf(way),
  }));
  const room = Math.max(...ends.map(({ name }) => measure(name, 17, true))) + 16;
  const plot: Box = { left: phone ? 46 : 56, right: width - room, top: 34, bottom: 34 + (phone ? 240 : 320) };
  const last = Math.max(1, ...ways.map(({ lostBy }) => lostBy.length - 1));
  const steps = shareSteps(0, Math.max(0.02, ...ways.flatMap(({ lostBy }) => lostBy)));
  const x = scaleLinear([0, last], [plot.left, plot.right]);
  const y = scaleLinear([0, steps.at(-1) ?? 1], [plot.bottom, plot.top]);
  return {
    width,
    height: plot.bottom + 36,
    x: (winters) => x(winters),
    wintersAt: (px) => Math.min(last, Math.max(0, Math.round(x.invert(px)))),
    y: (share) => y(share),
    panel: {
      plot,
      across: yearsOf(startYear, last, (plot.right - plot.left) / 62).map((year) => ({ x: x(year - startYear), text: String(year), anchor: 'middle' })),
      up: steps.map((share) => ({ y: y(share), text: percent(share) })),
      stretches: [],
      bands: [],
      curves: ways.map((way) => ({
        id: idOf(way),
        of: way.asItStands ? 'plan' : 'ink',
        width: way.asItStands ? 3.5 : 2,
        dash: way.gardens > 1 ? DASHED : null,
        points: way.lostBy.map((share, winters) => ({ x: x(winters), y: y(share) })),
      })),
      rules: [],
      rings: [],
      words: [{ kind: 'caption', text: copiesText.up, x: plot.left, y: plot.top - 14, anchor: 'start' }],
      ends: endWords(
        ends.map(({ lost, ...end }) => ({ ...end, y: y(lost) })),
        { plot, gap: 12 },
      ),
    },
  };
}

const idOf = ({ copies, gardens }: CopiesWay): string => `${String(copies)} in ${String(gardens)}`;

/** Round years that are not too close; the first and the last are always among them when there is room for no more. */
function yearsOf(startYear: number, last: number, most: number): readonly number[] {
  const step = YEARS.find((size) => last / size <= most) ?? last;
  const first = Math.ceil(startYear / step) * step;
  return Array.from({ length: Math.floor((startYear + last - first) / step) + 1 }, (_, i) => first + i * step);
}
