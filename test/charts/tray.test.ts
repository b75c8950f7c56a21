import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roughMeasure } from '../../src/charts/measure.ts';
import { cellsLayout, columnsFor } from '../../src/charts/tray/cells.ts';
import { needLayout, readings } from '../../src/charts/tray/need.ts';
import { EIGHT_IN_TEN, valueLayout, type ValueData } from '../../src/charts/tray/value.ts';
import { normalCdf } from '../../src/statistics/normal.ts';

const groups = (able: number, unable: number, carrier: number) => [
  { kind: 'able', count: able, wanted: true },
  { kind: 'unable', count: unable, wanted: false },
  { kind: 'carrier', count: carrier, wanted: false },
  { kind: 'without', count: 20 - able - unable - carrier, wanted: false },
];

describe('cells of the tray', () => {
  it.each([288, 358, 460, 600, 1144])('stand in full rows inside %i px, kind after kind, none on another', (width) => {
    const layout = cellsLayout(groups(6, 1, 7), { width, columns: columnsFor(width), most: 66, pots: true });
    expect(layout.cells.map(({ kind }) => kind).join(' ')).toBe(
      [...Array<string>(6).fill('able'), 'unable', ...Array<string>(7).fill('carrier'), ...Array<string>(6).fill('without')].join(' '),
    );
    expect(layout.cells.filter(({ wanted }) => wanted)).toHaveLength(6);
    expect(layout.width).toBeLessThanOrEqual(width);
    expect(layout.shelves).toHaveLength(20 / columnsFor(width));
    for (const { x, y } of layout.cells) {
      expect(x - layout.cell / 2).toBeGreaterThanOrEqual(-1e-9);
      expect(x + layout.cell / 2).toBeLessThanOrEqual(layout.width + 1e-9);
      // The foot of a plant stands above the shelf of its row, the plant below the shelf above.
      const shelf = layout.shelves.find((one) => one.y > y)!;
      expect(shelf.y - y).toBeLessThan(layout.cell / 2);
      expect(shelf.y).toBeLessThanOrEqual(layout.height);
    }
    const spots = layout.cells.map(({ x, y }) => `${String(Math.round(x))},${String(Math.round(y))}`);
    expect(new Set(spots).size).toBe(20);
  });

  it('are never wider than they may be', () => {
    expect(cellsLayout(groups(20, 0, 0), { width: 1144, columns: 10, most: 66, pots: true }).cell).toBe(66);
    expect(cellsLayout(groups(20, 0, 0), { width: 1144, columns: 20, most: 30, pots: false }).width).toBe(600);
  });
});

describe('how many to raise', () => {
  const atLeastOne = (n: number) => 1 - 0.75 ** n;
  // 3, 6 and 11 seedlings for one in four: 1 − ¾ⁿ ≥ 0.5, 0.8, 0.95.
  const targets = [
    { chance: 0.5, seedlings: 3 },
    { chance: 0.8, seedlings: 6 },
    { chance: 0.95, seedlings: 11 },
  ];
  const data = (most: number, atAll = 1) => ({ targets, atAll, curve: readings(most).map((n) => ({ n, chance: atAll * atLeastOne(n) })) });

  it('reads every number if there are few, and no more than show if there are many', () => {
    expect(readings(12)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    for (const most of [161, 500, 12345]) {
      expect(readings(most).length).toBeLessThan(170);
      expect(readings(most).at(-1)).toBeGreaterThanOrEqual(most);
    }
  });

  it.each([288, 358, 520])('puts a ring where the curve first is at each chance, at %i px', (width) => {
    const layout = needLayout(data(13), { width, measure: roughMeasure });
    layout.levels.forEach(({ ring, y }, i) => {
      const { seedlings } = targets[i]!;
      expect(ring).toBeCloseTo(layout.curve[seedlings]![0], 9);
      // The curve has come to the level there, and had not one seedling before. Pixels run downwards.
      expect(layout.curve[seedlings]![1]).toBeLessThanOrEqual(y + 1e-9);
      expect(layout.curve[seedlings - 1]![1]).toBeGreaterThan(y);
    });
    expect(layout.levels.map(({ raise }) => raise)).toEqual(['3 seedlings', '6 seedlings', '11 seedlings']);
    const label = Math.max(...layout.levels.map(({ raise }) => roughMeasure(raise, 17, true)));
    expect(layout.right + 10 + label).toBeLessThanOrEqual(width);
    for (const [x, y] of layout.curve) {
      expect(x).toBeGreaterThanOrEqual(layout.left);
      expect(x).toBeLessThanOrEqual(layout.right + 1e-9);
      expect(y).toBeGreaterThanOrEqual(layout.top - 1e-9);
      expect(y).toBeLessThanOrEqual(layout.bottom + 1e-9);
    }
  });

  it('says what is not reached, and draws the line that cannot be passed', () => {
    const layout = needLayout(
      { ...data(13, 0.82), targets: [targets[0]!, targets[1]!, { chance: 0.95, seedlings: Infinity }] },
      { width: 400, measure: roughMeasure },
    );
    expect(layout.levels.map(({ ring }) => ring === null)).toEqual([false, false, true]);
    expect(layout.levels[2]!.raise).toBe('not reached');
    const [at80, at95] = [layout.levels[1]!.y, layout.levels[2]!.y];
    expect(layout.ceiling).toBeGreaterThan(at95);
    expect(layout.ceiling).toBeLessThan(at80);
    expect(needLayout(data(13), { width: 400, measure: roughMeasure }).ceiling).toBeNull();
  });

  it('labels its axis without one text on another, ever', () => {
    fc.assert(
      fc.property(fc.integer({ min: 240, max: 700 }), fc.integer({ min: 5, max: 900_000 }), (width, most) => {
        const { ticks, axis, right } = needLayout(data(most), { width, measure: roughMeasure });
        const spans = ticks.map(({ x, text }) => [x - roughMeasure(text, 17) / 2, x + roughMeasure(text, 17) / 2] as const);
        spans.slice(1).forEach(([from], i) => expect(from).toBeGreaterThan(spans[i]![1]));
        const last = spans.at(-1);
        if (last) expect(last[1]).toBeLessThanOrEqual(right - roughMeasure(axis, 16));
      }),
    );
  });
});

describe('a family’s hill', () => {
  const data: ValueData = {
    mean: 8.5,
    within: 1.6,
    between: 0,
    parents: [
      { value: 5.5, text: 'Old Hedgerow 5.5' },
      { value: 11.5, text: 'Saffron Bell 11.5' },
    ],
    goals: [{ value: 10, text: 'goal 10' }],
    print: String,
  };

  it('holds 8 in 10 between the ends of its bar (normal table)', () => {
    expect(normalCdf(EIGHT_IN_TEN) - normalCdf(-EIGHT_IN_TEN)).toBeCloseTo(0.8, 12);
    const layout = valueLayout(data, { width: 600, measure: roughMeasure });
    const perUnit = (layout.parents[1]!.x - layout.parents[0]!.x) / 6;
    expect((layout.middle[1] - layout.middle[0]) / perUnit).toBeCloseTo(2 * EIGHT_IN_TEN * 1.6, 9);
    expect((layout.goals[0]!.x - layout.mean) / perUnit).toBeCloseTo(1.5, 9);
    expect(layout.meanRange).toBeNull();
    // Highest in the middle, and level with the scale at the ends.
    expect(Math.min(...layout.hill.map(([, y]) => y))).toBe(layout.hill[30]![1]);
    expect(layout.hill[30]![0]).toBeCloseTo(layout.mean, 9);
  });

  it('shows where its middle may lie if the parents are not known', () => {
    const { meanRange, mean } = valueLayout({ ...data, between: 1 }, { width: 600, measure: roughMeasure });
    expect(meanRange![0]).toBeLessThan(mean);
    expect(meanRange![1] - mean).toBeCloseTo(mean - meanRange![0], 9);
  });

  it('keeps its labels inside and off one another, wherever parents and goal stand', () => {
    const value = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(value, value, value, value, fc.integer({ min: 280, max: 700 }), (mean, one, other, goal, width) => {
        const layout = valueLayout(
          {
            ...data,
            mean,
            parents: [
              { value: one, text: 'Old Hedgerow 5.5' },
              { value: other, text: 'Saffron Bell 11.5' },
            ],
            goals: [{ value: goal, text: 'goal 10' }],
          },
          { width, measure: roughMeasure },
        );
        const labels = [...layout.parents, ...layout.goals].map(({ textX, textY, text }) => ({
          from: textX - roughMeasure(text, 16) / 2,
          to: textX + roughMeasure(text, 16) / 2,
          textY,
        }));
        labels.forEach((label, i) => {
          expect(label.from).toBeGreaterThanOrEqual(-1e-9);
          expect(label.to).toBeLessThanOrEqual(width + 1e-9);
          for (const before of labels.slice(0, i)) if (before.textY === label.textY) expect(label.from >= before.to || label.to <= before.from).toBe(true);
          expect(label.textY).toBeLessThan(layout.base - 92);
        });
        for (const { x } of [...layout.parents, ...layout.goals]) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(width);
        }
      }),
    );
  });
});
