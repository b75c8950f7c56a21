import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstProven, tellingYear } from '../../src/charts/chance-by-year/crossing.ts';
import { chanceLayout } from '../../src/charts/chance-by-year/layout.ts';
import { readingAt } from '../../src/charts/chance-by-year/reading.ts';
import { dashOf } from '../../src/charts/marks.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { shareAxis } from '../../src/charts/shares.ts';
import { yearAfter } from '../../src/charts/reading.ts';
import type { PlanOutlook } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { leadChange } from '../../src/statistics/lead.ts';
import { FIXTURE } from './fixture.ts';
import { EXTREME } from './fixture-extreme.ts';

const RUNS = 1000;
const options = { width: 1144, measure: roughMeasure, words: {} };

/** A plan whose chance by year is given in whole percents from 2030 on. */
function plan(id: string, percents: readonly number[]): PlanOutlook {
  const points = percents.map((percent, index) => ({ year: 2030 + index, ...wilson(percent * 10, RUNS) }));
  return { ...FIXTURE.plans[0]!, id, runs: RUNS, chanceByYear: points, chance: wilson(percents.at(-1)! * 10, RUNS) };
}

describe('where the lead changes', () => {
  it('is where the straight lines between year ends meet', () => {
    // From 2031 to 2032 the quick one goes 40 → 44 and the sure one 30 → 50: level after 10/16 of the year, at 42.5 %.
    const crossing = leadChange([plan('quick', [10, 40, 44, 45]), plan('sure', [0, 30, 50, 70])])!;
    expect(crossing).toMatchObject({ year: 2032, early: 'quick', late: 'sure' });
    expect(crossing.at).toBeCloseTo(2031.5 + 10 / 16, 9);
    expect(crossing.share).toBeCloseTo(0.425, 9);
  });

  it('is nowhere when the futures cannot tell, at the end or before', () => {
    expect(leadChange([plan('a', [10, 40, 44, 45]), plan('b', [0, 30, 44, 46])])).toBeNull();
    expect(leadChange([plan('a', [10, 40, 41, 45]), plan('b', [10, 40, 50, 70])])).toBeNull();
  });

  it('is nowhere when one plan leads all the time, or near nothing', () => {
    expect(leadChange([plan('a', [10, 20, 30, 40]), plan('b', [0, 10, 20, 30])])).toBeNull();
    expect(leadChange([plan('a', [3, 3, 3, 3]), plan('b', [0, 1, 20, 30])])).toBeNull();
    expect(leadChange([])).toBeNull();
  });

  it('tells which year to look at first, and from when on there are trees', () => {
    const plans = [plan('quick', [10, 40, 44, 45]), plan('sure', [0, 25, 50, 70])];
    expect(tellingYear(plans)).toBe(2031);
    expect(tellingYear([plan('only', [0, 20, 39, 60])])).toBe(2032);
    expect(tellingYear([plan('never', [0, 0])])).toBeNull();
    expect(firstProven([plan('a', [0, 0, 4]), plan('b', [0, 2, 4])])).toBe(2031);
    expect(firstProven([plan('never', [0, 0])])).toBeNull();
  });
});

describe('the picture', () => {
  it('has lines that end on the horizon at the chance, and begin in the last year of nothing', () => {
    const layout = chanceLayout(FIXTURE, options);
    for (const [index, line] of layout.lines.entries()) {
      const source = FIXTURE.plans[index]!;
      expect(line.points.at(-1)).toEqual({ x: layout.plot.right, y: layout.y(source.chanceByYear.at(-1)!.value) });
      expect(line.points[0]!.y).toBe(layout.plot.bottom);
      expect(line.points[1]!.y).toBeLessThan(layout.plot.bottom);
      expect(line.dash).toBe(dashOf(source.mark));
    }
  });

  it('spreads its labels at least 40 px apart, in the order of the chances', () => {
    const { labels } = chanceLayout(FIXTURE, options);
    const sorted = [...labels].sort((a, b) => a.y - b.y);
    expect(sorted.map(({ mark }) => mark)).toEqual(['B', 'D', 'A', 'C']);
    for (let index = 1; index < sorted.length; index++) expect(sorted[index]!.y - sorted[index - 1]!.y).toBeGreaterThanOrEqual(40);
    expect(sorted[0]!.value).toBe('73\u00a0%, 72–74');
  });

  it('keeps eight labels apart too, each as tall as its name is long', () => {
    const { labels } = chanceLayout(EXTREME, options);
    const boxes = labels.map(({ name, textY }) => ({ top: textY - 15, bottom: textY + 20 * name.length + 4 })).sort((a, b) => a.top - b.top);
    for (let index = 1; index < boxes.length; index++) expect(boxes[index]!.top).toBeGreaterThanOrEqual(boxes[index - 1]!.bottom);
  });

  it('drops the empty years on a phone only, and says so', () => {
    expect(chanceLayout(FIXTURE, options).dropped).toBe(false);
    const phone = chanceLayout(FIXTURE, { ...options, width: 358 });
    expect(phone.dropped).toBe(true);
    expect(phone.firstYear).toBe(firstProven(FIXTURE.plans)! - 1);
    expect(phone.note).toBeNull();
    expect(phone.box).toBeNull();
  });

  it('puts the reading box where no line or band is, or under the picture', () => {
    const { box, lines } = chanceLayout(FIXTURE, options);
    const inside = lines.flatMap(({ points, band }) => [...points.map(({ x, y }) => ({ x, y })), ...band.map(({ x, high }) => ({ x, y: high }))]);
    const bottom = box!.y + 74 + 4 * 31;
    expect(inside.filter(({ x, y }) => x < box!.x + box!.width && y < bottom)).toEqual([]);
    const early = {
      ...FIXTURE,
      plans: FIXTURE.plans.map((one) => ({ ...one, chanceByYear: one.chanceByYear.map((point) => ({ ...point, ...wilson(3600, 4000) })) })),
    };
    expect(chanceLayout(early, options).box).toBeNull();
  });

  it('stretches the axis for small chances, and says tenths or hundredths', () => {
    const rare = { ...FIXTURE, plans: [plan('rare', [0, 1, 2, 4])].map((one) => ({ ...one, guessesByYear: null })) };
    expect(chanceLayout(rare, options).shares.at(-1)!.text).toBe('10 in 100 futures');
    expect(chanceLayout(FIXTURE, options).shares.at(-1)!.text).toBe('10 in 10 futures');
  });

  it('never mixes tenths and hundredths on one axis, and counts nought in tenths as the lanes do', () => {
    const axis = (most: number) => shareAxis(most, { left: 0, top: 0, bottom: 100 }, false).ticks.map(({ text }) => text);
    for (const most of [0, 0.02, 0.08, 0.15, 0.4, 0.9])
      expect(new Set(axis(most).flatMap((text) => / in (\d+)/u.exec(text)?.[1] ?? [])).size, String(most)).toBe(1);
    expect(axis(0).at(-1)).toBe('10 in 10 futures');
  });

  it('does not break when no plan ever works', () => {
    const never = { ...FIXTURE, plans: [{ ...plan('never', [0, 0, 0]), guessesByYear: null }] };
    const layout = chanceLayout(never, options);
    expect(layout.lines[0]!.points).toEqual([]);
    expect(layout.noteText).toBe('No plan has a proven tree in any future.');
  });
});

describe('reading a year', () => {
  it('ranks the plans, equal ones in their own order', () => {
    expect(readingAt([plan('a', [10, 20]), plan('b', [10, 30]), plan('c', [50, 30])], 2031).map((line) => line.plan.id)).toEqual(['b', 'c', 'a']);
    expect(readingAt([plan('a', [10])], 1990)[0]!.value).toBe(0);
  });

  it('goes by keys: a year, with Shift five, to the ends, to none', () => {
    const press = (key: string, shiftKey = false) => yearAfter({ key, shiftKey }, 2050, 2027, 2057);
    expect([press('ArrowRight'), press('ArrowLeft'), press('ArrowRight', true), press('ArrowLeft', true)]).toEqual([2051, 2049, 2055, 2045]);
    expect([press('Home'), press('End'), press('Escape'), press('a')]).toEqual([2027, 2057, null, undefined]);
  });

  it('never leaves the axis', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End'),
        fc.boolean(),
        fc.option(fc.integer({ min: 2027, max: 2057 })),
        (key, shiftKey, year) => {
          const next = yearAfter({ key, shiftKey }, year, 2027, 2057);
          expect(next).toBeGreaterThanOrEqual(2027);
          expect(next).toBeLessThanOrEqual(2057);
        },
      ),
    );
  });
});
