import { marks, place, type Part } from './svg.ts';

export interface Letter {
  readonly mark: string;
  readonly plan: string;
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Draws plan letters on their discs; on top of other drawing they may have a paper ring around them. */
export function drawLetters(into: Part, letters: readonly Letter[], options: { around?: boolean; lifted: string | null }): void {
  const groups = place(
    marks(into, 'g', 'letter', letters).attr('data-mark', ({ mark }) => mark),
    ({ x }) => x,
    ({ y }) => y,
  );
  groups.classed('ringed', options.around === true).classed('resting', ({ plan }) => options.lifted !== null && options.lifted !== plan);
  groups
    .selectAll<SVGCircleElement, Letter>('circle.disc')
    .data((letter) => [letter])
    .join('circle')
    .attr('class', 'disc')
    .attr('r', ({ r }) => r - 1.5);
  groups
    .selectAll<SVGCircleElement, Letter>('circle.around')
    .data((letter) => (options.around ? [letter] : []))
    .join('circle')
    .attr('class', 'around')
    .attr('r', ({ r }) => r + 1.2);
  groups
    .selectAll<SVGTextElement, Letter>('text')
    .data((letter) => [letter])
    .join('text')
    .attr('dy', '0.35em')
    .style('font-size', '16px')
    .text(({ mark }) => mark);
}
