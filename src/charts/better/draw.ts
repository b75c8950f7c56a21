import { line } from 'd3';
import { drawLetters } from '../letter.ts';
import { canvas, group, marks, round, type Part } from '../svg.ts';
import { RING, type BetterLayout, type Cross, type Point } from './layout.ts';

export interface BetterLooks {
  /** Id of the plan that is read; null for none. */
  readonly plan: string | null;
}

const through = line<Point>()
  .x(({ x }) => x)
  .y(({ y }) => y);

/** Draws the plans found, the user's own, the front between them and how sure each place is. */
export function drawBetter(svg: SVGSVGElement, layout: BetterLayout, { plan }: BetterLooks): void {
  const { plot, front, rings, crosses, seen, letters, leaders } = layout;
  const all = canvas(svg, layout.width, layout.height);
  const ground = group(all, 'ground');
  marks(ground, 'path', 'beaten', front.length > 0 ? [front] : []).attr('d', (points) => `${through(points) ?? ''} V${round(plot.top)} Z`);
  drawGrid(group(all, 'grid'), layout);
  marks(group(all, 'seen'), 'circle', 'seen-dot', seen)
    .attr('data-mark', ({ mark }) => mark)
    .attr('cx', ({ x }) => round(x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 2.5);
  marks(group(all, 'front'), 'path', 'front-line', front.length > 0 ? [front] : []).attr('d', (points) => through(points));
  marks(group(all, 'crosses'), 'path', 'cross', crosses).attr(
    'd',
    ({ x, y, left, right, top, bottom }) => `M${round(left)},${round(y)} H${round(right)} M${round(x)},${round(top)} V${round(bottom)}`,
  );
  const ringed = group(all, 'rings');
  marks(ringed, 'circle', 'found', rings)
    .attr('data-mark', ({ mark }) => mark)
    .classed('unclear', ({ unclear }) => unclear)
    .attr('cx', ({ x }) => round(x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', RING);
  marks(group(all, 'leaders'), 'path', 'leader', leaders).attr('d', ({ from, to }) => `M${round(from.x)},${round(from.y)} L${round(to.x)},${round(to.y)}`);
  drawWords(group(all, 'words'), layout);
  drawLetters(group(all, 'letters'), letters, { around: true, lifted: null });
  const read = crosses.filter(({ id }) => id === plan);
  drawReading(group(all, 'reading'), layout, read);
}

function drawReading(into: Part, { plot, letters }: BetterLayout, read: readonly Cross[]): void {
  marks(into, 'path', 'reading-rule', read).attr(
    'd',
    ({ x, y }) => `M${round(plot.left)},${round(y)} H${round(x)} M${round(x)},${round(plot.bottom)} V${round(y)}`,
  );
  for (const name of ['read-halo', 'read-ring'])
    marks(into, 'circle', name, read)
      .attr('cx', ({ id, x }) => round(letters.find(({ plan }) => plan === id)?.x ?? x))
      .attr('cy', ({ id, y }) => round(letters.find(({ plan }) => plan === id)?.y ?? y))
      .attr('r', ({ id }) => (letters.find(({ plan }) => plan === id)?.r ?? RING) + 5);
}

function drawGrid(into: Part, { plot, years, trees, lastYear }: BetterLayout): void {
  const down = (name: string, at: readonly { readonly x: number }[]) =>
    marks(into, 'line', name, at)
      .attr('x1', ({ x }) => round(x))
      .attr('x2', ({ x }) => round(x))
      .attr('y1', plot.top)
      .attr('y2', plot.bottom);
  const across = (name: string, at: readonly { readonly y: number }[]) =>
    marks(into, 'line', name, at)
      .attr('x1', plot.left)
      .attr('x2', plot.right)
      .attr('y1', ({ y }) => round(y))
      .attr('y2', ({ y }) => round(y));
  down('hair', years);
  across('hair', trees.slice(1));
  across('baseline', trees.slice(0, 1));
  down('horizon', lastYear ? [lastYear] : []);
}

function drawWords(into: Part, { plot, years, trees, lastYear, rings, corner, captions }: BetterLayout): void {
  const shown = years.filter(({ x }) => lastYear === null || lastYear.x - x > 46);
  marks(into, 'text', 'tick', shown)
    .attr('x', ({ x }) => round(x))
    .attr('y', plot.bottom + 25)
    .text(({ text }) => text);
  marks(into, 'text', 'last-year', lastYear ? [lastYear] : [])
    .attr('x', ({ x }) => round(x))
    .attr('y', plot.bottom + 25)
    .text(({ text }) => text);
  marks(into, 'text', 'amount', trees)
    .attr('x', plot.left - 10)
    .attr('y', ({ y }) => round(y + 6))
    .attr('text-anchor', 'end')
    .text(({ text }) => text);
  marks(into, 'text', 'axis-caption', [
    { x: plot.right, y: plot.bottom + 50, anchor: 'end', text: captions.years },
    { x: 0, y: plot.top - 20, anchor: 'start', text: captions.trees },
  ])
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(
    into,
    'text',
    'number',
    rings.flatMap(({ label, number }) => (label ? [{ ...label, number }] : [])),
  )
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ number }) => String(number));
  const lines = corner ? corner.lines.map((text, i) => ({ text, x: corner.x, y: corner.y + 21 * i })) : [];
  marks(into, 'text', 'corner', lines)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
}
