import { svg, html, nothing, type TemplateResult } from 'lit';
import type { Estimate } from '../../model/estimate.ts';
import { barsOf, curveOf, type Spread } from '../../model/estimate-spread.ts';

const WIDTH = 80;
const HEIGHT = 40;
/** The axis lies a little above the lower edge, the highest point a little below the upper one, so that no stroke is cut. */
const BASE = HEIGHT - 3;
const RISE = BASE - 4;
/** Of the width left empty beside the outermost bars. */
const BAR_ROOM = 8;

const digits = (n: number): string => n.toFixed(1);

/** Lays a curve out on the sketch: its line, and the same closed along the axis for the tint. */
export function curvePaths(spread: Spread): { line: string; area: string } {
  const x = (value: number): string => digits(((value - spread.from) / (spread.to - spread.from)) * WIDTH);
  const curve = curveOf(spread);
  const line = curve.map(([value, height], i) => `${i === 0 ? 'M' : 'L'}${x(value)},${digits(BASE - RISE * height)}`).join('');
  const first = curve[0]?.[0] ?? spread.from;
  const last = curve.at(-1)?.[0] ?? spread.to;
  return { line, area: `${line}L${x(last)},${String(BASE)}L${x(first)},${String(BASE)}Z` };
}

/** Lays alternatives out: one bar each, as high as its weight. */
export function barLines(estimate: Estimate): readonly { x: number; top: number }[] {
  const bars = barsOf(estimate);
  const values = bars.map(([value]) => value);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const most = Math.max(...bars.map(([, share]) => share));
  return bars.map(([value, share]) => ({
    x: BAR_ROOM + (high > low ? (value - low) / (high - low) : 0.5) * (WIDTH - 2 * BAR_ROOM),
    top: BASE - (RISE * share) / most,
  }));
}

/** Draws how likely each value is; hidden from screen readers, because the words beside it say the same. */
export function sketch(estimate: Estimate, spread: Spread | undefined): TemplateResult | typeof nothing {
  if (!spread && (typeof estimate === 'number' || !('oneOf' in estimate))) return nothing;
  const { line, area } = spread ? curvePaths(spread) : { line: '', area: '' };
  const shape = spread
    ? svg`<path class="tint" d=${area}></path><path class="line" d=${line}></path>`
    : barLines(estimate).map(({ x, top }) => svg`<line class="bar" x1=${digits(x)} x2=${digits(x)} y1=${String(BASE)} y2=${digits(top)}></line>`);
  return html`<svg class="sketch" viewBox="0 0 ${WIDTH} ${HEIGHT}" width=${WIDTH} height=${HEIGHT} aria-hidden="true">
    <line class="axis" x1="0" x2=${WIDTH} y1=${BASE + 0.5} y2=${BASE + 0.5}></line>
    ${shape}
  </svg>`;
}
