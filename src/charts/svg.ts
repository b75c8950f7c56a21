import { select, type BaseType, type Selection } from 'd3';

/** A picture's own node, or a group in it. */
export type Part = Selection<SVGSVGElement | SVGGElement, unknown, null, undefined>;

/** Starts drawing in an SVG node and sets its size; nothing else may write into the node. */
export function canvas(svg: SVGSVGElement, width: number, height: number): Part {
  // The size stands in viewBox too, so that a page narrower than the last drawing shrinks it for the moment until it is redrawn.
  // A node measured while its row is being folded or turned can have no room at all.
  const room = Math.max(0, width);
  return select<SVGSVGElement | SVGGElement, unknown>(svg)
    .attr('width', room)
    .attr('height', height)
    .attr('viewBox', `0 0 ${String(room)} ${String(height)}`);
}

/** Finds or makes the group of that class directly inside a part. Groups keep the order in which they are first asked for. */
export function group(parent: Part, name: string): Part {
  const found = parent.selectChild<SVGGElement>(`g.${name}`);
  return found.empty() ? parent.append('g').attr('class', name) : found;
}

/** Joins data to elements of one tag and class directly inside a part. */
export function marks<Tag extends keyof SVGElementTagNameMap, Datum>(
  parent: Part,
  tag: Tag,
  name: string,
  data: readonly Datum[],
): Selection<SVGElementTagNameMap[Tag], Datum, SVGSVGElement | SVGGElement, unknown> {
  return parent
    .selectChildren<SVGElementTagNameMap[Tag], Datum>(`${tag}.${name}`)
    .data(data)
    .join((enter) => enter.append<SVGElementTagNameMap[Tag]>(tag).attr('class', name));
}

/** Puts a mark somewhere by a CSS transform, which the page may ease. */
export function place<Node extends BaseType, Datum>(
  marked: Selection<Node, Datum, SVGSVGElement | SVGGElement, unknown>,
  x: (datum: Datum) => number,
  y: (datum: Datum) => number,
): typeof marked {
  return marked.style('transform', (datum) => `translate(${round(x(datum))}px, ${round(y(datum))}px)`);
}

/** Tenths of a pixel are enough, and keep snapshots steady. */
export const round = (px: number): string => String(Math.round(px * 10) / 10);
