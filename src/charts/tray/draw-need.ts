import { curveMonotoneX, line } from 'd3';
import { canvas, group, marks, place, round } from '../svg.ts';
import type { NeedLayout } from './need.ts';

const path = line<readonly [number, number]>()
  .x(([x]) => x)
  .y(([, y]) => y)
  .curve(curveMonotoneX);

/** Draws the chance against seedlings raised. */
export function drawNeed(svg: SVGSVGElement, layout: NeedLayout): void {
  const all = canvas(svg, layout.width, layout.height);
  const { levels, ticks, bottom, left, right } = layout;
  const grid = group(all, 'grid');
  marks(grid, 'line', 'level-rule', levels)
    .classed('missed', ({ ring }) => ring === null)
    .attr('x1', round(left))
    .attr('x2', round(right))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  marks(grid, 'line', 'baseline', [bottom]).attr('x1', round(left)).attr('x2', round(right)).attr('y1', round).attr('y2', round);
  marks(
    grid,
    'line',
    'drop',
    levels.flatMap(({ ring, y }) => (ring === null ? [] : [{ x: ring, y }])),
  )
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', round(bottom));
  marks(grid, 'line', 'ceiling', layout.ceiling === null ? [] : [layout.ceiling])
    .attr('x1', round(left))
    .attr('x2', round(right))
    .attr('y1', round)
    .attr('y2', round);
  marks(group(all, 'curve'), 'path', 'chance-of', [layout.curve]).attr('d', path);
  place(
    marks(
      group(all, 'rings'),
      'circle',
      'read-off',
      levels.flatMap(({ ring, y }) => (ring === null ? [] : [{ x: ring, y }])),
    ).attr('r', 5.5),
    ({ x }) => x,
    ({ y }) => y,
  );
  const words = group(all, 'words');
  marks(words, 'text', 'note', levels)
    .attr('text-anchor', 'end')
    .attr('x', round(left - 10))
    .attr('y', ({ y }) => round(y + 5.5))
    .text(({ label }) => label);
  marks(words, 'text', 'raise', levels)
    .classed('missed', ({ ring }) => ring === null)
    .attr('x', round(right + 10))
    .attr('y', ({ y }) => round(y + 5.5))
    .text(({ raise }) => raise);
  marks(words, 'text', 'tick', ticks)
    .attr('x', ({ x }) => round(x))
    .attr('y', round(bottom + 22))
    .text(({ text }) => text);
  marks(words, 'text', 'axis-name', [layout.axis])
    .attr('text-anchor', 'end')
    .attr('x', round(right))
    .attr('y', round(bottom + 22))
    .text((text) => text);
}
