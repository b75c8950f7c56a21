import { describe, expect, it } from 'vitest';
import { copiesLayout } from '../../src/charts/copies/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { advised } from '../../src/text/pay-copies.ts';
import { COPIES, difference } from './pay-answers.ts';

const WIDTHS = [288, 358, 690, 780] as const;

describe('the picture of copies', () => {
  it('has a single tree with 4 % loss a year at 1 − 0.96⁸ after eight winters, with the garden’s 1 % on top', () => {
    const { panel, x, y } = copiesLayout(COPIES, { width: 690, measure: roughMeasure });
    const one = panel.curves.find(({ of }) => of === 'plan')!;
    expect(one.points[8]).toEqual({ x: x(8), y: expect.closeTo(y(1 - 0.96 ** 8 * 0.99 ** 8), 9) as number });
    expect(one.points[0]!.y).toBe(panel.plot.bottom);
  });

  it('tells the tree as it stands by colour and weight, and a second garden by its dash', () => {
    const { panel } = copiesLayout(COPIES, { width: 690, measure: roughMeasure });
    COPIES.ways.forEach(({ gardens, asItStands }, i) => {
      const { of, dash, width } = panel.curves[i]!;
      expect([of === 'plan', width > 3]).toEqual([asItStands, asItStands]);
      expect(dash !== null).toBe(gardens > 1);
    });
  });

  it.each(WIDTHS)('names every line at its end, apart from the others and inside (%i px)', (width) => {
    const { panel, wintersAt, x } = copiesLayout(COPIES, { width, measure: roughMeasure });
    expect(panel.ends).toHaveLength(COPIES.ways.length);
    const ys = panel.ends.map(({ y }) => y).sort((a, b) => a - b);
    ys.slice(1).forEach((y, i) => expect(y - ys[i]!).toBeGreaterThanOrEqual(22 - 1e-9));
    for (const { x: at, name } of panel.ends) expect(at + roughMeasure(name, 17, true)).toBeLessThanOrEqual(width);
    const texts = panel.across.map(({ x: at, text }) => [at - roughMeasure(text, 17) / 2, at + roughMeasure(text, 17) / 2] as const);
    texts.slice(1).forEach(([left], i) => expect(left).toBeGreaterThan(texts[i]![1]));
    expect(panel.plot.right - panel.plot.left).toBeGreaterThan(120);
    for (const winters of [0, 1, 17, 30]) expect(wintersAt(x(winters))).toBe(winters);
  });
});

describe('how many copies are enough', () => {
  it('is the fewest that gain as much as the best, as far as the futures can tell', () => {
    // Gains of 7, 8 and 9 in 100, each ± 0.8: three copies reach up to what four have at least (8.8 and 8.2).
    expect(advised(COPIES)).toMatchObject({ copies: 3, gardens: 1 });
    const wide = COPIES.ways.map((way) =>
      way.minusAsItStands ? { ...way, minusAsItStands: { ...way.minusAsItStands, chance: { ...way.minusAsItStands.chance, low: 0.01, high: 0.12 } } } : way,
    );
    expect(advised({ ...COPIES, ways: wide })).toMatchObject({ copies: 2, gardens: 1 });
  });

  it('is none where none is clearly better', () => {
    const ways = COPIES.ways.map((way) => (way.minusAsItStands ? { ...way, minusAsItStands: difference(0.002, false) } : way));
    expect(advised({ ...COPIES, ways })).toBeNull();
  });
});
