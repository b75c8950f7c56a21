import { beforeAll, describe, expect, it } from 'vitest';
import { faredLayout } from '../../src/charts/fared/layout.ts';
import { fromTodayLayout } from '../../src/charts/from-today/layout.ts';
import { roughMeasure as measure } from '../../src/charts/measure.ts';
import { keyLines, todayLayout } from '../../src/charts/today-by-year/layout.ts';
import type { FaredYear } from '../../src/results/fared.ts';
import type { Outlook } from '../../src/results/outlook.ts';
import { faredSentence, leftOutLines, planSentence } from '../../src/text/today.ts';
import { exampleOf, outlookFor } from '../handout/sample.ts';

let outlook: Outlook;
beforeAll(async () => {
  outlook = await outlookFor(exampleOf('peach-quick'), 120);
}, 60_000);

const said = (pieces: readonly { readonly text: string }[]) =>
  pieces
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');

describe('the forecast from today, laid out', () => {
  it.each([300, 390, 560, 900])('keeps lines and words inside %i px, with a key under them where it is narrow', (width) => {
    const [now, first] = [outlook.plans[0]!, outlook.plans[1]!];
    const year = outlook.startYear + 3;
    const layout = todayLayout({ now, first, year }, { width, measure });
    const { plot, curves, ends, bands } = layout.panel;
    for (const { x, y } of curves.flatMap(({ points }) => points)) {
      expect(x).toBeGreaterThanOrEqual(plot.left - 1e-9);
      expect(x).toBeLessThanOrEqual(plot.right + 1e-9);
      expect(y).toBeGreaterThanOrEqual(plot.top - 1e-9);
      expect(y).toBeLessThanOrEqual(plot.bottom + 1e-9);
    }
    for (const { x, y, name } of ends) {
      expect(x + measure(name, 17, true)).toBeLessThanOrEqual(width);
      expect(y).toBeLessThan(layout.height);
    }
    expect(keyLines(layout)).toHaveLength(width < 440 ? 2 : 0);
    // From today on there is a band; the first forecast reaches back to the first spring.
    expect(bands[0]!.points[0]!.x).toBe(layout.x(year - 1));
    expect(curves.find(({ id }) => id === 'first')!.points).toHaveLength(first.chanceByYear.length);
    expect(layout.yearAt(layout.x(year) + 1)).toBe(year);
  });

  it.each([320, 700, 1200])('puts both chances of every plan on one axis at %i px', (width) => {
    const plans = outlook.plans.map((now) => ({ now, first: { value: 0.25, low: 0.2, high: 0.3 } }));
    const { rows, plot, height, valueX } = fromTodayLayout(plans, { width, measure });
    rows.forEach(({ now, first, y, value }, p) => {
      const share = (x: number) => (x - plot.left) / (plot.right - plot.left);
      expect(share(now.x)).toBeCloseTo(plans[p]!.now.chance.value, 9);
      expect(share(first!.x)).toBeCloseTo(0.25, 9);
      expect(now.low).toBeLessThanOrEqual(now.x);
      expect(y).toBeLessThan(height);
      expect(valueX + measure(value, 18, true)).toBeLessThanOrEqual(width);
    });
  });
});

const row = (changes: Partial<FaredYear>): FaredYear => ({
  generation: 0,
  name: 'Cross',
  round: 1,
  what: 'firstFruit',
  p10: 2034,
  p50: 2035,
  p90: 2038,
  came: 2033,
  verdict: 'before',
  ...changes,
});

describe('how a forecast fared, laid out', () => {
  const years = [
    row({}),
    row({ what: 'firstPick', came: null, p90: null, verdict: 'open' }),
    row({ generation: 1, name: 'Again', came: 2036, verdict: 'inside' }),
  ];

  it.each([340, 1100])('bars from the first to the last year of 8 in 10 futures, dots at the year that came, at %i px', (width) => {
    const { rows, plot, heads, height } = faredLayout(years, { startYear: 2027, lastYear: 2057, today: 2037, width, measure });
    expect(heads.map(({ text }) => text)).toEqual(['Cross', 'Again']);
    expect(rows.map(({ missed, came, bar }) => [missed, came !== null, bar?.open])).toEqual([
      [true, true, false],
      [false, false, true],
      [false, true, false],
    ]);
    expect(rows[0]!.came!).toBeLessThan(rows[0]!.bar!.from);
    expect(rows[2]!.came!).toBeGreaterThan(rows[2]!.bar!.from);
    expect(rows[2]!.came!).toBeLessThan(rows[2]!.bar!.to);
    for (const { bar, y, textY } of rows) {
      expect(bar!.to).toBeLessThanOrEqual(plot.right + 1e-9);
      expect(Math.max(y, textY)).toBeLessThan(height);
    }
  });

  it('says plainly what came outside, and nothing of what is still to come', () => {
    expect(faredSentence(years, [], 2057)).toEqual([
      'Of 2 things that can be told, 1 came inside the range of 8 in 10 futures.',
      'Cross: first fruit in 2033, forecast 2034–2038: earlier.',
    ]);
    expect(faredSentence(years.slice(1, 2), [], 2057)).toHaveLength(1);
  });
});

describe('the forecast from today in words', () => {
  it('says both chances, and that they differ only where the futures can tell', () => {
    const base = outlook.plans[0]!;
    const plan = (value: number, half: number) => ({ ...base, chance: { value, low: value - half, high: value + half } });
    const year = outlook.startYear;
    expect(said(planSentence(plan(0.6, 0.02), plan(0.5, 0.02), 2043, year))).toMatch(
      /6 times in 10 a proven tree by 2043 from what stands today\. When you began, it was 5 in 10\.$/,
    );
    expect(said(planSentence(plan(0.6, 0.06), plan(0.5, 0.06), 2043, year))).toMatch(/no clear difference between the two\.$/);
  });

  it('says of a tree that met the goal before today that it did', () => {
    const base = outlook.plans[0]!;
    const proven = { ...base, chanceByYear: base.chanceByYear.map((point) => ({ ...point, value: 1 })), yearProven: { p10: 2036, p50: 2036, p90: 2036 } };
    expect(said(planSentence(proven, undefined, 2043, outlook.startYear + 1))).toContain('a tree met your goal in 2036 already');
  });

  it('names what no plan takes once, and what one plan leaves to others together', () => {
    const one = (batch: string, why: 'noGeneration' | 'noCross') => ({ batch, name: batch, why, about: 'pear × quince', n: 3 });
    const plans = [
      { mark: 'A', notPlaced: [one('x', 'noGeneration'), one('y', 'noGeneration')] },
      { mark: 'B', notPlaced: [one('x', 'noGeneration'), one('z', 'noCross')] },
    ];
    expect(leftOutLines(plans, 1, 2037)).toEqual([
      expect.stringMatching(/^x: 3 in no plan/),
      'Plan A leaves out 1 batch that another plan takes.',
      'Plan B, z: 3 of pear × quince, for which the programme has no figures.',
      '1 entry speaks of 2037 or later and is not used yet.',
    ]);
  });
});
