import { drawLetters } from '../letter.ts';
import { canvas, group, marks, round, type Part } from '../svg.ts';
import type { FailLayout } from './layout.ts';
import type { FailPlace } from './places.ts';

export interface FailLooks {
  readonly lifted: string | null;
  /** The segment that is read; null for none. */
  readonly place: FailPlace | null;
}

/** Draws the stacked bars. */
export function drawFailures(svg: SVGSVGElement, layout: FailLayout, { lifted, place: read }: FailLooks): void {
  const all = canvas(svg, layout.width, layout.height);
  const resting = ({ plan }: { readonly plan: string }) => lifted !== null && lifted !== plan;
  grounds(group(all, 'defs'));
  const { segments } = layout;
  marks(group(all, 'bars'), 'rect', 'segment', segments)
    .attr('data-mark', ({ mark }) => mark)
    .attr('data-plan', ({ plan }) => plan)
    .attr('data-ground', ({ ground }) => ground)
    .classed('resting', resting)
    .attr('fill', ({ ground }) => (ground === 'hatch' || ground === 'dots' || ground === 'lines' ? `url(#ground-${ground})` : null))
    .attr('x', ({ x }) => round(x + 0.5))
    .attr('y', ({ y }) => round(y + 0.5))
    .attr('width', ({ width }) => round(Math.max(0.5, width - 1)))
    .attr('height', ({ height }) => round(height - 1));
  const lines = segments.flatMap(({ lines: texts, plan, mark, ground }) => texts.map((line) => ({ ...line, plan, mark, ground })));
  marks(group(all, 'bar-words'), 'text', 'on-bar', lines)
    .attr('data-mark', ({ mark }) => mark)
    .attr('data-ground', ({ ground }) => ground)
    .classed('resting', resting)
    .classed('name', ({ bold }) => bold)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .style('font-size', layout.names.length > 0 ? '16px' : '17px')
    .text(({ text }) => text);
  const words = group(all, 'words');
  marks(words, 'text', 'bar-name', layout.names)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
  marks(words, 'text', 'note', layout.also)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
  drawLetters(group(all, 'letters'), layout.letters, { lifted });
  marks(group(all, 'reading'), 'rect', 'read-frame', read ? [read] : [])
    .attr('x', ({ x }) => round(x - FRAME))
    .attr('y', ({ y }) => round(y - FRAME))
    .attr('width', ({ width }) => round(width + 2 * FRAME))
    .attr('height', ({ height }) => round(height + 2 * FRAME));
}

/** How far the frame of what is read stands off its segment, px. */
const FRAME = 1.5;

const PATTERNS = { hatch: 'M0,8 L8,0 M-2,2 L2,-2 M6,10 L10,6', dots: 'M4,4 h0.01', lines: 'M0,2 H8 M0,6 H8' } as const;

function grounds(defs: Part): void {
  if (!defs.selectChild('pattern').empty()) return;
  for (const [name, path] of Object.entries(PATTERNS)) {
    const pattern = defs.append('pattern').attr('id', `ground-${name}`).attr('width', 8).attr('height', 8).attr('patternUnits', 'userSpaceOnUse');
    pattern.append('rect').attr('class', 'ground-paper').attr('width', 8).attr('height', 8);
    pattern.append('path').attr('class', `ground-${name}`).attr('d', path);
  }
}
