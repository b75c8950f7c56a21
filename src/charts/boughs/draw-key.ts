import { canvas, group, marks, place, round } from '../svg.ts';
import { defineDots, drawBough, drawChanceParts, drawProven } from './draw.ts';
import type { KeyLayout } from './key.ts';

/** Draws the key in grey. */
export function drawKey(svg: SVGSVGElement, layout: KeyLayout): void {
  const all = canvas(svg, layout.width, layout.height);
  const defs = group(all, 'defs');
  defs.selectChildren('*').remove();
  defineDots(defs, 'key-dots');
  const boughs = group(all, 'boughs');
  boughs.selectChildren('*').remove();
  drawBough(boughs, defs, layout.bough, layout.y, 'key', 'key-dots');
  const signs = group(all, 'marks');
  place(
    marks(signs, 'circle', 'ring', [layout.ring]).attr('r', ({ r }) => r),
    ({ x }) => x,
    ({ y }) => y,
  );
  drawProven(signs, [layout.proven]);
  const { chance } = layout;
  const scale = group(all, 'chance-part').attr('transform', `translate(${round(chance.x)},${round(chance.y - chance.mark.y)})`);
  drawChanceParts(scale, chance.mark);
  const words = group(all, 'words');
  marks(words, 'text', 'note', layout.words)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(words, 'text', 'key-title', layout.title ? [layout.title] : [])
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
}
