import { describe, expect, it } from 'vitest';
import { chanceLayout, type ChanceRow } from '../../src/charts/inheritance/layout.ts';
import { ratesLayout } from '../../src/charts/learned/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { RATES } from './learned-rows.ts';

const SIZE = { name: 18, now: 18, strong: 18, unit: 16, note: 16, plain: 16 } as const;
const isBold = (kind: string): boolean => ['name', 'now', 'strong'].includes(kind);

describe.each([1146, 700, 358, 288])('learned numbers at %i px', (width) => {
  const { rows, height } = ratesLayout(RATES, { width, measure: roughMeasure });

  it('stand under each other, every word, curve and button inside its row', () => {
    expect(rows.map(({ id }) => id)).toEqual(RATES.map(({ id }) => id));
    expect(height).toBe(rows.at(-1)?.bottom);
    rows.forEach((row, i) => {
      expect(row.top).toBe(rows[i - 1]?.bottom ?? 0);
      for (const { x, y, text, kind } of row.words) {
        expect(y - 14, text).toBeGreaterThan(row.top);
        expect(y + 5, text).toBeLessThanOrEqual(row.bottom);
        expect(x + roughMeasure(text, SIZE[kind], isBold(kind)), text).toBeLessThanOrEqual(width);
      }
      for (const { x, y } of [...row.before, ...row.after]) {
        expect(x).toBeGreaterThanOrEqual(row.plot.left);
        expect(x).toBeLessThanOrEqual(row.plot.right);
        expect(y).toBeGreaterThanOrEqual(row.plot.top);
        expect(y).toBeLessThanOrEqual(row.plot.base);
      }
      const { left, top, width: room } = row.button;
      expect(left + room).toBeLessThanOrEqual(width);
      expect(top).toBeGreaterThanOrEqual(row.top);
      expect(top + 44).toBeLessThanOrEqual(row.bottom);
    });
  });

  it('keep words, curves and buttons apart', () => {
    for (const { words, plot, button } of rows) {
      const boxes = words.map(({ x, y, text, kind }) => ({
        text,
        left: x,
        right: x + roughMeasure(text, SIZE[kind], isBold(kind)),
        top: y - 14,
        bottom: y + 4,
      }));
      const others = [
        { text: 'curve', left: plot.left, right: plot.right, top: plot.top, bottom: plot.base },
        { text: 'button', left: button.left, right: button.left + button.width, top: button.top, bottom: button.top + 44 },
      ];
      const all = [...boxes, ...others];
      const over = all.flatMap((a, i) =>
        all
          .slice(i + 1)
          .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
          .map((b) => [a.text, b.text]),
      );
      expect(over).toEqual([]);
    }
  });
});

it('draws what has no curve as none, and what runs to infinity no higher than its room', () => {
  const { rows } = ratesLayout(RATES, { width: 1146, measure: roughMeasure });
  expect(rows[1]?.before).toEqual([]);
  const [, , never] = rows;
  expect(never?.before[0]?.y).toBe(never?.plot.top);
  // The middle of what is believed stands at its value on the axis: 0.12 of 0.6.
  const [set] = rows;
  const { left = 0, right = 0 } = set?.plot ?? {};
  expect(set?.middle.x).toBeCloseTo(left + (right - left) * 0.2, 6);
  expect(set?.words.map(({ text }) => text)).toEqual(
    expect.arrayContaining(['now 7–21', 'was 20–60', 'another spring 3.9–25', '70 fruits of 900 flowers', '3 batches, 2027–2029']),
  );
  expect(rows[1]?.words.map(({ text }) => text)).toEqual(expect.arrayContaining(['in use 6.4–7.6']));
});

describe('chances before and now', () => {
  const rows: readonly ChanceRow[] = [
    { id: 'a', name: 'one copy is enough', note: '', before: 0.5, after: 0.72, strong: '72 in 100', plain: 'was 50' },
    { id: 'b', name: 'two genes, one copy of each, said at some length', note: '11 trees', before: null, after: 0, strong: 'under 1 in 100', plain: '' },
  ];

  it.each([1146, 358, 288])('lie on one axis from never to always, with words that end inside %i px', (width) => {
    const layout = chanceLayout(rows, { width, measure: roughMeasure });
    const [one, two] = layout.rows;
    const [never, always] = [layout.ticks[0]?.x ?? 0, layout.ticks.at(-1)?.x ?? 0];
    expect([never, always]).toEqual([one?.left, one?.right]);
    expect(one?.before).toBeCloseTo((never + always) / 2, 6);
    expect(one?.after).toBeCloseTo(never + 0.72 * (always - never), 6);
    expect(two).toMatchObject({ before: null, after: never });
    for (const { words } of layout.rows)
      for (const { x, text, kind } of words) expect(x + roughMeasure(text, SIZE[kind], isBold(kind)), text).toBeLessThanOrEqual(width);
    expect(two?.bottom).toBeLessThanOrEqual(layout.height);
    expect(two?.top).toBe(one?.bottom);
  });
});
