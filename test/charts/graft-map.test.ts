import { describe, expect, it } from 'vitest';
import { gap, inset, type Box } from '../../src/charts/boxes.ts';
import type { MapLabel } from '../../src/charts/graft-map/labels.ts';
import { mapLayout, type MapLayout } from '../../src/charts/graft-map/layout.ts';
import { cellAfter, cellNear, cellUnder, sameCell } from '../../src/charts/graft-map/reading.ts';
import { pointNear, rootsLayout } from '../../src/charts/graft-map/roots.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { mapOf, RISING, ROOTS, standingAt } from './pay-answers.ts';

const options = { width: 690, measure: roughMeasure, mark: 'D', plan: 'd' };
const WIDTHS = [288, 358, 690, 780] as const;
const MAP = mapOf(15, RISING);
const HERE = standingAt(5, 0.6);

/** Where a label stands, by the rough measure. */
function boxOf({ kind, lines, x, y, anchor }: MapLabel): Box {
  const size = kind === 'graft' || kind === 'own' ? 22 : 17;
  const wide = Math.max(...lines.map((words) => roughMeasure(words, size)));
  const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
  return { left, right: left + wide, top: y - 13, bottom: y + 21 * (lines.length - 1) + 3 };
}

/** An edge of the line at a place: straight from column to column. */
function edgeAt({ edges }: MapLayout, x: number, of: 'low' | 'high'): number {
  const after = edges.findIndex((edge) => edge.x >= x);
  const [a, b] = [edges[Math.max(0, after - 1)]!, edges[after]!];
  return a.x === b.x ? b[of] : a[of] + ((b[of] - a[of]) * (x - a.x)) / (b.x - a.x);
}

describe('the map of where grafting wins', () => {
  const layout = mapLayout(MAP, HERE, options);

  it('has months in the logarithm: each doubling is as wide as the next', () => {
    const at = new Map(layout.months.map(({ x, text }) => [text, x]));
    const [three, six, year, two, four, eight] = ['3', '6', '1\u00a0year', '2\u00a0years', '4\u00a0years', '8\u00a0years'].map((text) => at.get(text)!);
    for (const [before, after] of [
      [three, six],
      [six, year],
      [year, two],
      [two, four],
      [four, eight],
    ] as const)
      expect(after! - before!).toBeCloseTo((layout.plot.right - layout.plot.left) * (Math.log(2) / Math.log(96)), 9);
  });

  it('draws the break-even take of every column, its interval round it, to both edges', () => {
    const { top, bottom, left, right } = layout.plot;
    const y = (take: number) => bottom - take * (bottom - top);
    expect(layout.edges[0]!.x).toBe(left);
    expect(layout.edges.at(-1)!.x).toBe(right);
    MAP.line.forEach(({ take, low, high }, i) => {
      const edge = layout.edges[i + 1]!;
      expect(edge.line).toBeCloseTo(y(take), 9);
      expect(edge.low).toBeCloseTo(y(low), 9);
      expect(edge.high).toBeCloseTo(y(high), 9);
    });
  });

  it('puts the programme at the middle of its guesses, the wider ring round the narrower', () => {
    const share = Math.log(HERE.middle.halfLife) / Math.log(96);
    expect(layout.programme.x).toBeCloseTo(layout.plot.left + share * (layout.plot.right - layout.plot.left), 9);
    const [wide, narrow] = layout.rings.map(({ outline }) => Math.max(...outline.map(({ x }) => x)) - Math.min(...outline.map(({ x }) => x)));
    expect(layout.rings.map(({ share: held }) => held)).toEqual([0.9, 0.5]);
    expect(wide).toBeGreaterThan(narrow!);
  });

  it('shows a ring where a guess leaves no room to one side', () => {
    const { rings } = mapLayout(MAP, standingAt(5, 0.5, 0.4, 0), options);
    for (const { outline } of rings) {
      const ys = outline.map(({ y }) => y);
      expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThanOrEqual(10);
    }
  });

  it.each(WIDTHS)('keeps its words apart, inside, and on the side they speak of (%i px)', (width) => {
    for (const map of [MAP, mapOf(5, RISING), mapOf(15, () => 0.5), mapOf(15, () => 0), mapOf(15, () => 1, 0)]) {
      for (const here of [HERE, standingAt(2, 0.9), standingAt(60, 0.1), standingAt(90, 0.95)]) {
        const drawn = mapLayout(map, here, { ...options, width });
        const boxes = drawn.labels.map((label) => ({ label, box: boxOf(label) }));
        for (const [i, { label, box }] of boxes.entries()) {
          expect(inset(box, drawn.plot), label.lines.join()).toBeGreaterThan(-1);
          for (const other of boxes.slice(i + 1)) expect(gap(box, other.box), `${label.kind} and ${other.label.kind}`).toBeGreaterThan(0);
          if (label.kind === 'graft') for (const x of [box.left, label.x, box.right]) expect(box.bottom).toBeLessThan(edgeAt(drawn, x, 'high'));
          if (label.kind === 'own') for (const x of [box.left, label.x, box.right]) expect(box.top).toBeGreaterThan(edgeAt(drawn, x, 'low'));
        }
      }
    }
  });

  it('says under the picture what found no room in it, and only that', () => {
    expect(layout.unsaid).toEqual([]);
    expect(mapLayout(MAP, HERE, { ...options, width: 288 }).unsaid).toEqual(
      expect.arrayContaining(['thick line: neither wins', 'between the dashes: no clear difference']),
    );
    // Grafting wins everywhere: there is neither line nor hatch to speak of.
    expect(
      mapLayout(
        mapOf(15, () => 0),
        HERE,
        options,
      ).unsaid,
    ).toEqual([]);
    expect(
      mapLayout(
        mapOf(15, () => 0),
        HERE,
        options,
      ).labels.map(({ kind }) => kind),
    ).not.toContain('own');
  });
});

describe('reading the map', () => {
  const { cells, plot } = mapLayout(MAP, HERE, options);
  const press = (key: string, shiftKey = false) => ({ key, shiftKey });

  it('has a cell for each place, without gaps, and finds it under the pointer', () => {
    expect(cells).toHaveLength(MAP.cells.length);
    const area = cells.reduce((sum, { left, right, top, bottom }) => sum + (right - left) * (bottom - top), 0);
    expect(area).toBeCloseTo((plot.right - plot.left) * (plot.bottom - plot.top), 6);
    cells.forEach(({ left, right, top, bottom }, i) => expect(cellUnder(cells, (left + right) / 2, (top + bottom) / 2)).toBe(i));
    expect(cellUnder(cells, plot.left - 5, plot.top + 5)).toBeNull();
  });

  it('keeps its place when a finer map comes', () => {
    const coarse = mapOf(5, RISING);
    coarse.cells.forEach((_, at) => {
      const fine = sameCell(coarse, at, MAP);
      expect(MAP.halfLives[fine % 15]).toBeCloseTo(coarse.halfLives[at % 5]!, 9);
      expect(MAP.takes[Math.floor(fine / 15)]).toBeCloseTo(coarse.takes[Math.floor(at / 5)]!, 9);
    });
  });

  it('begins where the programme stands, goes by columns and rows, and stays on the map', () => {
    const start = cellNear(MAP, HERE.middle);
    const [column, row] = [start % 15, Math.floor(start / 15)];
    expect(Math.abs(Math.log(MAP.halfLives[column]! / HERE.middle.halfLife))).toBeLessThanOrEqual(Math.log(96) / 30 + 1e-9);
    expect(Math.abs(MAP.takes[row]! - HERE.middle.take)).toBeLessThanOrEqual(1 / 30 + 1e-9);
    expect(cellAfter(press('ArrowRight'), null, MAP, start)).toBe(start);
    expect(cellAfter(press('ArrowRight'), start, MAP, start)).toBe(start + 1);
    expect(cellAfter(press('ArrowUp'), start, MAP, start)).toBe(start + 15);
    expect(cellAfter(press('ArrowUp', true), start, MAP, start)).toBe(start + 45);
    expect(cellAfter(press('Home'), start, MAP, start)).toBe(row * 15);
    expect(cellAfter(press('End'), start, MAP, start)).toBe(row * 15 + 14);
    expect(cellAfter(press('ArrowLeft'), row * 15, MAP, start)).toBe(row * 15);
    expect(cellAfter(press('PageDown'), column, MAP, start)).toBe(column);
    expect(cellAfter(press('Escape'), start, MAP, start)).toBeNull();
    expect(cellAfter(press('a'), start, MAP, start)).toBeUndefined();
  });
});

describe('the chances over where the weakness sits', () => {
  it.each(WIDTHS)('has both lines, meeting at the break-even, and words inside the picture (%i px)', (width) => {
    const { panel, x, rootChanceAt } = rootsLayout(ROOTS, 0.65, { width, measure: roughMeasure });
    const [own, grafted] = panel.curves;
    expect([own!.id, grafted!.id]).toEqual(['own', 'grafted']);
    // A quarter: the fifth of 20 steps.
    expect(grafted!.points[5]!.y).toBeCloseTo(own!.points[5]!.y, 9);
    expect(grafted!.points[20]!.y).toBeLessThan(own!.points[20]!.y);
    expect(panel.stretches).toEqual([{ from: x(0.2), to: x(0.3) }]);
    expect(pointNear(ROOTS, rootChanceAt(x(0.65)))).toBe(13);
    for (const end of panel.ends) expect(end.x + roughMeasure(end.name, 17, true)).toBeLessThanOrEqual(width);
    for (const { y } of grafted!.points) expect(y).toBeLessThanOrEqual(panel.plot.bottom);
  });
});
