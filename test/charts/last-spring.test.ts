import { describe, expect, it } from 'vitest';
import { readSpring, springFinding, springLayout, type LaterPlan } from '../../src/charts/last-spring/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import type { Outlook } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { laterBegin } from '../../src/statistics/last-spring.ts';
import { springText } from '../../src/text/charts-years.ts';
import { FIXTURE } from './fixture.ts';
import { EXTREME } from './fixture-extreme.ts';

const plansOf = ({ plans }: Outlook): LaterPlan[] => plans.map((plan) => ({ plan: plan.id, mark: plan.mark, name: plan.name, later: laterBegin(plan) }));
const options = { startYear: FIXTURE.startYear, lastYear: FIXTURE.lastYear, width: 1144, measure: roughMeasure };
/** Successes by year from 2027 on, of 100 futures. */
const plan = (mark: string, ...hits: readonly number[]): LaterPlan => ({
  plan: mark,
  mark,
  name: mark,
  later: laterBegin({ runs: 100, chanceByYear: hits.map((n, index) => ({ year: 2027 + index, ...wilson(n, 100) })) }),
});

describe('the picture of later springs', () => {
  const layout = springLayout(plansOf(FIXTURE), options);

  it('begins this spring at the chance, falls, and ends in the first spring of nothing', () => {
    for (const [index, { points }] of layout.lines.entries()) {
      const source = FIXTURE.plans[index]!;
      expect(points[0]).toEqual({ x: layout.calendar.x(FIXTURE.startYear), y: layout.y(source.chance.value) });
      for (let at = 1; at < points.length; at++) expect(points[at]!.y).toBeGreaterThanOrEqual(points[at - 1]!.y);
      expect(points.at(-1)!.y).toBe(layout.plot.bottom);
      expect(points.at(-2)!.y).toBeLessThan(layout.plot.bottom);
      expect(points.at(-2)!.x).toBe(layout.ends[index]!.x);
    }
  });

  it('puts the letters where half is left, apart from each other, with the place they belong to', () => {
    for (const [index, letter] of layout.letters.entries()) {
      const { later } = plansOf(FIXTURE)[index]!;
      expect(letter.toX).toBe(layout.calendar.x(later.half!));
    }
    const { letters } = springLayout(plansOf(EXTREME), options);
    for (const [index, one] of letters.entries())
      for (const other of letters.slice(index + 1)) expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(one.r + other.r);
    // The plan that never ends well has neither letter nor ring.
    expect(letters).toHaveLength(EXTREME.plans.length - 1);
  });

  it('has room for the reading box beside the lines, or none', () => {
    expect(layout.box!.x).toBeGreaterThan(layout.plot.right);
    expect(layout.box!.x + layout.box!.width).toBeLessThanOrEqual(1144);
    expect(springLayout(plansOf(EXTREME), options).box).toBeNull();
    expect(springLayout(plansOf(FIXTURE), { ...options, width: 358 }).box).toBeNull();
  });

  it('keeps a phone’s words on the hairlines off the lines’ beginning', () => {
    const phone = springLayout(plansOf(FIXTURE), { ...options, width: 358 });
    for (const { textX, text, anchor } of phone.shares) {
      expect(anchor).toBe('end');
      expect(textX - roughMeasure(text, 17)).toBeGreaterThan(phone.calendar.x(FIXTURE.startYear + 10));
    }
  });
});

describe('the words on later springs', () => {
  it('say how long the likeliest plan can wait, and which waits longer', () => {
    const plans = [plan('A', 0, 0, 0, 30, 60), plan('D', 0, 10, 30, 30, 30)];
    expect(springFinding(plans, 2027)).toBe(
      'Begin A by 2028 and it still ends well in 3\u00a0in\u00a010; after 2028 not at all. D can wait longest: begun by 2029 it keeps half of its chance.',
    );
    expect(springFinding(plans.slice(0, 1), 2027)).toBe('Begin A by 2028 and it still ends well in 3\u00a0in\u00a010; after 2028 not at all.');
    expect(springFinding([plan('A', 0, 0, 20)], 2027)).toBe('Begin A this spring or not at all: it ends well in 2\u00a0in\u00a010.');
    expect(springFinding([plan('A', 0, 0, 0)], 2027)).toBe(springText.never);
    expect(springFinding([], 2027)).toBe(springText.never);
  });

  it('list the plans at a spring by what is left', () => {
    const plans = [plan('A', 0, 0, 0, 30, 60), plan('D', 0, 10, 30, 30, 30)];
    expect(readSpring(plans, 2027).map(({ plan: { mark }, value }) => [mark, value])).toEqual([
      ['A', 0.6],
      ['D', 0.3],
    ]);
    expect(readSpring(plans, 2029).map(({ plan: { mark } }) => mark)).toEqual(['D', 'A']);
  });

  it('tell a cost of under one future in a hundred from none', () => {
    expect([springText.skip(0), springText.skip(0.001), springText.skip(0.03)]).toEqual([
      'skipping this spring costs nothing',
      'skipping this spring costs under 1 in\u00a0100',
      'skipping this spring costs 3 in\u00a0100',
    ]);
  });
});
