import { canvas, group, marks, round, type Part } from '../svg.ts';
import type { Cell, CellsLayout } from './cells.ts';

/** A leaf of length 1 from its foot at 0,0 to the right, slightly rising. */
const leafPath = (size: number, side: 1 | -1): string => {
  const p = (x: number, y: number) => `${round(side * x * size)},${round(y * size)}`;
  return `M0,0 C${p(0.16, -0.34)} ${p(0.62, -0.62)} ${p(1, -0.5)} C${p(0.98, -0.12)} ${p(0.5, 0.16)} 0,0 Z`;
};
const veinPath = (size: number, side: 1 | -1): string =>
  `M0,0 Q${round(side * 0.4 * size)},${round(-0.12 * size)} ${round(side * 0.76 * size)},${round(-0.36 * size)}`;

/** Textures in the colour of the leaf; solid and bare need none. Ids carry the drawing's own, for several stand under one root. */
function textures(defs: Part, id: string, cell: number): void {
  defs.selectChildren('*').remove();
  // Fine enough that two or three dots go across the smallest leaf.
  const scale = Math.min(1, Math.max(0.7, cell / 50));
  const make = (name: string, size: number) => {
    const pattern = defs.append('pattern').attr('id', `${id}-${name}`).attr('width', size).attr('height', size).attr('patternUnits', 'userSpaceOnUse');
    pattern.append('rect').attr('class', 'leaf-ground').attr('width', size).attr('height', size);
    return pattern;
  };
  make('hatch', 4.5 * scale)
    .attr('patternTransform', 'rotate(40)')
    .append('rect')
    .attr('class', 'leaf-ink')
    .attr('width', 2 * scale)
    .attr('height', 4.5 * scale);
  const dots = make('dots', 5 * scale);
  for (const at of [1.25 * scale, 3.75 * scale])
    dots
      .append('circle')
      .attr('class', 'leaf-ink')
      .attr('cx', at)
      .attr('cy', at)
      .attr('r', 0.95 * scale);
}

const FILL: Readonly<Record<string, string>> = { unable: 'hatch', carrier: 'dots' };

/** Places that stand empty: a stump where a seedling dies, a dashed ring where it is no use. */
const EMPTY: readonly string[] = ['dies', 'useless'];
const isPlant = ({ kind }: Cell): boolean => !EMPTY.includes(kind);

/**
 * Draws seedlings; leaves differ in texture, the able carry a fruit, the right but not able an empty ring, males a flower of bare stamens, copies of
 * the seed parent a label on the stem.
 */
export function drawCells(svg: SVGSVGElement, layout: CellsLayout, id: string): void {
  const all = canvas(svg, layout.width, layout.height);
  const { cell } = layout;
  textures(group(all, 'defs'), id, cell);
  if (layout.pots) drawPots(group(all, 'pots'), layout);
  const stem = cell * (layout.pots ? 0.46 : 0.44);
  const leaf = cell * (layout.pots ? 0.4 : 0.42);
  const plants = marks(group(all, 'plants'), 'g', 'plant', layout.cells)
    .attr('data-kind', ({ kind }) => kind)
    .attr('transform', ({ x, y, lean }) => `translate(${round(x)} ${round(y)}) rotate(${String(lean)})`);
  const part = (tag: 'path' | 'circle', name: string, has: (one: Cell) => boolean) =>
    plants
      .selectAll<SVGElement, Cell>(`${tag}.${name}`)
      .data((one) => (has(one) ? [one] : []))
      .join((enter) => enter.append(tag).attr('class', name.replaceAll('.', ' ')));
  part('path', 'stem', isPlant).attr('d', `M0,0 C${round(-0.04 * cell)},${round(-0.4 * stem)} ${round(0.03 * cell)},${round(-0.7 * stem)} 0,${round(-stem)}`);
  for (const side of [1, -1] as const) {
    const name = side === 1 ? 'right' : 'left';
    // Both leaves start a little below the tip, one lower than the other.
    const at = `translate(0 ${round(-stem * (side === 1 ? 0.86 : 0.74))})`;
    part('path', `leaf.${name}`, isPlant)
      .attr('transform', at)
      .attr('fill', ({ kind }) => (FILL[kind] ? `url(#${id}-${FILL[kind]})` : null))
      .attr('d', leafPath(leaf, side));
    if (layout.pots) part('path', `vein.${name}`, isPlant).attr('transform', at).attr('d', veinPath(leaf, side));
  }
  part('circle', 'fruit', ({ kind }) => kind === 'able' || kind === 'unable')
    .attr('cy', round(-stem - cell * 0.07))
    .attr('r', round(Math.max(2.6, cell * 0.085)));
  part('path', 'stamens', ({ kind }) => kind === 'male').attr('d', stamens(-stem, Math.max(5, cell * 0.16)));
  const label = Math.max(5, cell * 0.17);
  part('path', 'label', ({ kind }) => kind === 'copy').attr(
    'd',
    `M0,${round(-stem * 0.62)} v${round(0.3 * label)} M${round(-label / 2)},${round(-stem * 0.62 + 0.3 * label)} h${round(label)} v${round(1.15 * label)} h${round(-label)} Z`,
  );
  part('path', 'stump', ({ kind }) => kind === 'dies').attr(
    'd',
    `M0,0 V${round(-stem * 0.34)} M0,${round(-stem * 0.2)} l${round(0.07 * cell)},${round(-0.07 * cell)}`,
  );
  part('circle', 'gap', ({ kind }) => kind === 'useless')
    .attr('cy', round(-0.16 * cell))
    .attr('r', round(0.1 * cell));
}

/** Five stamens spread from the tip of the stem. */
function stamens(y: number, length: number): string {
  return [-60, -30, 0, 30, 60]
    .map((degrees) => {
      const angle = (degrees * Math.PI) / 180;
      return `M0,${round(y)} L${round(length * Math.sin(angle))},${round(y - length * Math.cos(angle))}`;
    })
    .join(' ');
}

function drawPots(into: Part, { cell, cells, shelves }: CellsLayout): void {
  const [rim, foot, height, lip] = [0.25 * cell, 0.18 * cell, 0.42 * cell, 0.09 * cell];
  const outline = `M${round(-rim)},0 H${round(rim)} V${round(lip)} H${round(rim * 0.9)} L${round(foot)},${round(height)} H${round(-foot)} L${round(-rim * 0.9)},${round(lip)} H${round(-rim)} Z`;
  marks(into, 'path', 'pot', cells)
    .classed('wanted', ({ wanted }) => wanted)
    .attr('transform', ({ x, y }) => `translate(${round(x)} ${round(y)})`)
    .attr('d', outline);
  marks(into, 'line', 'shelf', shelves)
    .attr('x1', ({ x1 }) => round(x1))
    .attr('x2', ({ x2 }) => round(x2))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
}
