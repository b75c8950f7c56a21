import { describe, expect, it } from 'vitest';
import { roughMeasure } from '../../src/charts/measure.ts';
import { endWords, shareSteps } from '../../src/charts/panel/layout.ts';
import { ageNear, whenLayout } from '../../src/charts/when-to-graft/layout.ts';
import { WHEN, whenOf } from './pay-answers.ts';

const options = { width: 690, measure: roughMeasure, mark: 'D', lastYear: 2057 };
const WIDTHS = [288, 358, 690, 780] as const;

describe('the picture of when to graft', () => {
  const layout = whenLayout(WHEN, options);
  const curve = (id: string) => layout.upper.curves.find((one) => one.id === id)!;
  const upperY = (share: number) => layout.upper.plot.bottom - share * (layout.upper.plot.bottom - layout.upper.plot.top);

  it('lets half of the weak be dead one half-life after they show (definition of a half-life)', () => {
    const at = curve('alive').points.find(({ x }) => Math.abs(x - layout.x(7)) < 1e-6)!;
    expect(at.y).toBeCloseTo(upperY(0.5), 9);
  });

  it('draws saved as alive × take, its ring at the top of it, dropped to the axis', () => {
    const [alive, take, saved] = [curve('alive'), curve('take'), curve('saved')];
    saved.points.forEach(({ y }, i) => {
      const share = (py: number) => (layout.upper.plot.bottom - py) / (layout.upper.plot.bottom - layout.upper.plot.top);
      expect(share(y)).toBeCloseTo(share(alive.points[i]!.y) * share(take.points[i]!.y), 9);
    });
    expect(layout.upper.rings[0]!.y).toBeCloseTo(Math.min(...saved.points.map(({ y }) => y)), 9);
    expect(layout.drop.x).toBe(layout.upper.rings[0]!.x);
    // Told apart without colour.
    expect(new Set([alive.dash, take.dash, saved.dash]).size).toBe(3);
  });

  it('shades the level ages through both panels, over one axis; nothing where the best stands alone', () => {
    for (const { stretches } of [layout.upper, layout.lower]) expect(stretches).toEqual([{ from: layout.x(5), to: layout.x(10) }]);
    expect(layout.lower.plot).toMatchObject({ left: layout.upper.plot.left, right: layout.upper.plot.right });
    const alone = whenLayout(whenOf({ stands: null, best: 8, level: { from: 8, to: 8 } }), options);
    expect([alone.upper.stretches, alone.lower.stretches, alone.stands]).toEqual([[], [], null]);
  });

  it('puts the plan’s letter on its chance at its own age', () => {
    expect(layout.stands).toMatchObject({ mark: 'D', x: layout.x(8), y: layout.y(0.58) });
  });

  it('reads the nearest age that was run', () => {
    expect(WHEN.chances[ageNear(WHEN, layout.monthAt(layout.x(9.2)))]!.month).toBe(10);
    expect(WHEN.chances[ageNear(WHEN, -3)]!.month).toBe(2);
    expect(WHEN.chances[ageNear(WHEN, 30)]!.month).toBe(24);
  });

  it.each(WIDTHS)('keeps words and lines inside (%i px)', (width) => {
    for (const answer of [
      WHEN,
      whenOf({ stands: 2, best: 2, level: { from: 2, to: 3 } }),
      whenOf({ stands: 24, best: 24, level: { from: 18, to: 24 } }),
      whenOf({ stands: null, best: 3, level: { from: 2, to: 24 } }),
    ]) {
      const { upper, lower } = whenLayout(answer, { ...options, width });
      for (const { plot, ends, words, curves } of [upper, lower]) {
        expect(plot.right - plot.left).toBeGreaterThan(120);
        for (const { x, name, value } of ends) expect(x + Math.max(roughMeasure(name, 17, true), roughMeasure(value ?? '', 16.5))).toBeLessThanOrEqual(width);
        for (const { x, text, anchor, kind } of words) {
          const wide = roughMeasure(text, 17, kind !== 'aside');
          expect(anchor === 'start' ? x : x - wide, text).toBeGreaterThanOrEqual(-1);
          expect(anchor === 'start' ? x + wide : x, text).toBeLessThanOrEqual(width + 1);
        }
        for (const { x, y } of curves.flatMap(({ points }) => points)) {
          expect(x >= plot.left && x <= plot.right).toBe(true);
          expect(y >= plot.top - 1e-9 && y <= plot.bottom + 1e-9).toBe(true);
        }
      }
    }
  });
});

describe('a panel', () => {
  it('marks round shares that take in all there is', () => {
    expect(shareSteps(0.41, 0.6)).toEqual([0.4, 0.45, 0.5, 0.55, 0.6]);
    expect(shareSteps(0, 1)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    for (const [least, most] of [
      [0, 0],
      [0.335, 0.335],
      [0.02, 0.97],
      [0.999, 1],
    ] as const) {
      const steps = shareSteps(least, most);
      expect(steps[0]).toBeLessThanOrEqual(least);
      expect(steps.at(-1)).toBeGreaterThanOrEqual(most);
      expect(steps.length).toBeGreaterThan(1);
      expect(steps.at(-1)).toBeLessThanOrEqual(1);
    }
  });

  it('moves words at the ends of lines apart, in the order of the lines', () => {
    const plot = { left: 50, right: 400, top: 20, bottom: 300 };
    const ends = endWords(
      [298, 300, 296, 120].map((y, i) => ({ id: String(i), of: 'ink' as const, name: String(i), value: i === 0 ? '12 %' : null, y })),
      { plot, gap: 10 },
    );
    const byHeight = ends.toSorted((a, b) => a.y - b.y);
    expect(byHeight.map(({ lineY }) => lineY)).toEqual([120, 296, 298, 300]);
    byHeight.slice(1).forEach(({ y }, i) => expect(y - byHeight[i]!.y).toBeGreaterThanOrEqual(22 - 1e-9));
  });
});
