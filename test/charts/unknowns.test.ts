import { describe, expect, it } from 'vitest';
import { barsLayout, type Matters } from '../../src/charts/unknowns/layout.ts';

const interval = (value: number, low: number, high: number) => ({ value, low, high });
const FACTS: readonly Matters[] = [
  { id: 'roots', first: interval(0.65, 0.58, 0.74), total: interval(0.68, 0.5, 0.9) },
  { id: 'set', first: interval(0.12, 0.09, 0.16), total: interval(0.14, 0.07, 0.2) },
  { id: 'small', first: interval(0, 0, 0.02), total: null },
];

describe('bars of what matters', () => {
  it.each([640, 300, 120])('begin at 0 on one scale, in the order of the facts, at %i px', (width) => {
    const { rows, ticks } = barsLayout(FACTS, width);
    const zero = ticks[0]!.x;
    const unit = (ticks.at(-1)!.x - zero) / (Number(ticks.at(-1)!.text) / 100);
    expect(rows.map(({ id }) => id)).toEqual(['roots', 'set', 'small']);
    rows.forEach((row, i) => {
      const { first, total } = FACTS[i]!;
      expect(row.first).toBeCloseTo(zero + unit * first.value, 6);
      expect(row.whisker.from).toBeCloseTo(zero + unit * first.low, 6);
      expect(row.whisker.to).toBeCloseTo(zero + unit * first.high, 6);
      if (total) expect(row.total).toBeCloseTo(zero + unit * total.value, 6);
      else expect(row.total).toBeNull();
    });
    expect(rows[2]!.first).toBe(zero);
  });

  it.each([640, 300, 120, 60])('stay inside the column, whiskers and all, with hairlines that do not crowd, at %i px', (width) => {
    const { rows, ticks } = barsLayout(FACTS, width);
    for (const { first, total, whisker } of rows) for (const x of [first, total ?? 0, whisker.from, whisker.to]) expect(x).toBeLessThanOrEqual(width);
    expect(ticks.at(-1)!.x).toBeLessThanOrEqual(width);
    ticks.slice(1).forEach(({ x }, i) => expect(x - ticks[i]!.x).toBeGreaterThan(width > 100 ? 40 : 20));
  });

  it('have no outline inside the bar: the two shares are estimated apart', () => {
    const { rows } = barsLayout([{ id: 'one', first: interval(0.12, 0.1, 0.15), total: interval(0.09, 0.04, 0.15) }], 400);
    expect(rows[0]!.total).toBeNull();
  });

  it('do not make small shares look large: the scale goes to 20 of 100 at least', () => {
    const { ticks } = barsLayout([{ id: 'one', first: interval(0.03, 0.01, 0.05), total: null }], 400);
    expect(Number(ticks.at(-1)!.text)).toBe(20);
    expect(barsLayout([], 400).rows).toEqual([]);
  });

  it('end at 100 where a fact is everything', () => {
    const { ticks, rows } = barsLayout([{ id: 'all', first: interval(1, 0.97, 1), total: interval(1, 0.9, 1) }], 400);
    expect(ticks.at(-1)!.text).toBe('100');
    expect(rows[0]!.first).toBe(ticks.at(-1)!.x);
  });
});
