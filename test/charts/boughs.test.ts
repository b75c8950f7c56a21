import { describe, expect, it } from 'vitest';
import { bough } from '../../src/charts/boughs/bough.ts';
import { chainLines, chainSpans } from '../../src/charts/boughs/chain.ts';
import { chanceMark } from '../../src/charts/boughs/chance-mark.ts';
import { keyLayout } from '../../src/charts/boughs/key.ts';
import { laneLayout, rowNames } from '../../src/charts/boughs/lane.ts';
import { calendar } from '../../src/charts/calendar.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import type { PlanOutlook } from '../../src/results/outlook.ts';
import { FIXTURE, LAST, START } from './fixture.ts';
import { EXTREME } from './fixture-extreme.ts';

const wide = calendar({ startYear: START, lastYear: LAST, width: 1144 });
const phone = calendar({ startYear: START, lastYear: LAST, width: 358 });
const planOf = (id: string, plans: readonly PlanOutlook[] = FIXTURE.plans) => plans.find((plan) => plan.id === id)!;
const options = { startYear: START, calendar: wide, measure: roughMeasure, headHeight: 70 };

describe('a bough', () => {
  it('is as thick at each year as the share of all futures at work in it', () => {
    const generation = planOf('wide').generations[0]!;
    const shape = bough(generation, START, wide, 38)!;
    for (const year of [2027, 2029, 2032, 2036]) {
      const point = shape.points.find(({ x }) => Math.abs(x - wide.x(year)) < 1e-6)!;
      expect(2 * point.half).toBeCloseTo(38 * generation.going[year - START]!, 9);
    }
  });

  it('begins with a straight cut where all futures begin in one year, and as a wisp where they do not', () => {
    const [first, second] = planOf('sister').generations;
    expect(bough(first!, START, wide, 38)!.points[0]!.half).toBeCloseTo(19, 5);
    expect(bough(second!, START, wide, 38)!.points[0]!.half).toBeLessThan(2);
  });

  it('goes through its textures in order: nursery to judging, each half there at the middle year of its boundary', () => {
    const generation = planOf('sister').generations[0]!;
    const shape = bough(generation, START, wide, 38)!;
    const at = (stops: typeof shape.nursery, year: number) => {
      const x = wide.x(year);
      const after = stops.findIndex((stop) => stop.x >= x - 1e-6);
      const [p, q] = [stops[Math.max(0, after - 1)]!, stops[after]!];
      return q.x === p.x ? q.opacity : p.opacity + ((q.opacity - p.opacity) * (x - p.x)) / (q.x - p.x);
    };
    expect(at(shape.nursery, 2027.5)).toBeGreaterThan(0.9);
    expect(at(shape.judging, 2027.5)).toBe(0);
    expect(at(shape.waiting, 2032)).toBeGreaterThan(0.85);
    const fruit = generation.firstFruit.p50!;
    // At the middle year of first fruit the two textures share the bough evenly (opacities are rounded to thousandths).
    expect(at(shape.judging, fruit)).toBeCloseTo(at(shape.waiting, fruit), 2);
    expect(at(shape.judging, 2037)).toBeGreaterThan(at(shape.waiting, 2037));
  });

  it('ends at the horizon at the latest, and is not drawn when no future gets there', () => {
    expect(bough(planOf('open').generations[1]!, START, wide, 38)!.to).toBe(wide.horizon);
    expect(bough(planOf('plan-e', EXTREME.plans).generations[1]!, START, wide, 38)).toBeNull();
  });
});

describe('a chain of counts', () => {
  const spans = chainSpans(planOf('wide').generations[0]!);

  it('says flowers, seedlings, fruiting and what was kept, and how many futures get there when it is not nearly all', () => {
    expect(spans.map(({ text }) => text)).toEqual(['1,200 flowers', '60 seedlings', '1 fruiting', '0 or 1 kept']);
    expect(chainSpans(planOf('wide').generations[1]!).at(-1)).toEqual({ text: 'reached in 22 of 100 futures', kind: 'reached' });
    expect(chainSpans(planOf('rescue').generations[0]!).map(({ text }) => text)).toContain('20 to graft');
    expect(chainSpans(planOf('open').generations[0]!)[0]!.text).toBe('windfall fruit');
  });

  it.each([200, 260, 330, 450, 700])('stays inside a room of %i px, wherever a line of descent crosses it', (limit) => {
    for (const crossing of [null, 60, 150, 300])
      for (const start of [0, 36, 250]) {
        const lines = chainLines(spans, { start, least: 0, limit, crossing, size: 16, measure: roughMeasure });
        for (const { x, width } of lines) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x + width).toBeLessThanOrEqual(limit + 1e-9);
        }
        expect(lines.flatMap((line) => line.spans.map(({ text }) => text.replace(/^[\s›]+/u, '')))).toEqual(spans.map(({ text }) => text));
      }
  });

  it('breaks at the line of descent where both parts fit', () => {
    const lines = chainLines(spans, { start: 0, least: 0, limit: 800, crossing: 400, size: 16, measure: roughMeasure });
    expect(lines).toHaveLength(2);
    expect(lines[0]!.x + lines[0]!.width).toBeLessThan(400);
    expect(lines[1]!.x).toBeGreaterThan(400);
  });
});

describe('a lane', () => {
  it('stacks its rows without gaps below the head, and makes room for the settings of the open row', () => {
    const closed = laneLayout(planOf('rescue'), options);
    expect(closed.rows[0]!.top).toBe(70);
    expect(closed.rows[1]!.top).toBe(70 + closed.rows[0]!.height);
    expect(closed.height).toBe(closed.rows[1]!.top + closed.rows[1]!.height);
    const open = laneLayout(planOf('rescue'), { ...options, open: 0, formHeight: 300 });
    expect(open.rows[1]!.top).toBe(70 + open.rows[0]!.height + 300);
    expect(open.rows.map((row) => row.open)).toEqual([true, false]);
  });

  it('puts the ring at the middle year of the first pick, and the dot at that of the successes with its 80 % bar', () => {
    const plan = planOf('sister');
    const { rows } = laneLayout(plan, options);
    expect(rows[0]!.ring!.x).toBeCloseTo(wide.x(plan.generations[0]!.firstPick.p50!), 9);
    expect(rows[0]!.dot).toBeNull();
    const dot = rows[1]!.dot!;
    expect([dot.x, dot.from, dot.to]).toEqual([plan.whenItWorks.p50!, plan.whenItWorks.p10!, plan.whenItWorks.p90!].map((year) => wide.x(year)));
    expect(dot.year).toBe(2051);
  });

  it('draws a line of descent as wide as the share of futures that take it', () => {
    const width = (id: string) => laneLayout(planOf(id), options).lines[0]!.width;
    expect(width('sister') / width('rescue')).toBeCloseTo(0.95 / 0.76, 9);
    expect(laneLayout(planOf('plan-e', EXTREME.plans), options).lines).toEqual([]);
  });

  it('joins each round to the one it grew from', () => {
    const lines = laneLayout(planOf('plan-f', EXTREME.plans), options).lines;
    expect(lines.map(({ from, to }) => [from, to])).toEqual([
      [0, 1],
      [1, 2],
      [2, 3],
    ]);
    expect(rowNames(planOf('plan-f', EXTREME.plans).generations)).toEqual(['Cross, round 1', 'Cross, round 2', 'Cross, round 3', 'Brother × sister']);
  });

  it('says so where a generation is never reached, and where no future succeeds', () => {
    const rows = laneLayout(planOf('plan-e', EXTREME.plans), options).rows;
    expect(rows[1]!.chain.map(({ spans }) => spans.map(({ text }) => text).join(''))).toEqual(['reached in no future']);
    expect(rows[1]!.dot).toBeNull();
    const barren: PlanOutlook = { ...planOf('sister'), whenItWorks: { p10: null, p50: null, p90: null } };
    expect(laneLayout(barren, options).rows[1]!.chain.flatMap(({ spans }) => spans.map(({ text }) => text.trim()))).toContain('no proven tree in any future');
  });

  it('gives the year a line of its own on a phone where the row’s name would meet it', () => {
    const short = laneLayout(planOf('sister'), { ...options, calendar: phone });
    const plan = planOf('sister');
    const long: PlanOutlook = {
      ...plan,
      generations: plan.generations.map((generation) => ({ ...generation, name: 'A generation with a name as long as this one' })),
    };
    const tall = laneLayout(long, { ...options, calendar: phone });
    expect(tall.rows[1]!.height - short.rows[1]!.height).toBe(21);
    expect(tall.rows[1]!.dot!.yearY).toBeGreaterThan(tall.rows[1]!.top + 30);
  });

  it('is small and without counts when compact, but for the open row', () => {
    const rows = laneLayout(planOf('sister'), { ...options, compact: true, open: 1, formHeight: 10 }).rows;
    expect(rows[0]!.chain).toEqual([]);
    expect(rows[0]!.height).toBeLessThan(40);
    expect(rows[1]!.chain).not.toEqual([]);
  });
});

describe('the scale of a chance', () => {
  it('shows the guesses where they are and the sampling error no narrower than can be seen', () => {
    const mark = chanceMark({ chance: { value: 0.5, low: 0.499, high: 0.501 }, guesses: { low: 0.25, high: 0.75 } }, 202);
    expect(mark.guesses).toEqual({ x: 51, width: 100 });
    expect(mark.chance).toEqual({ x: 98, width: 6 });
    expect(chanceMark({ chance: { value: 0.5, low: 0.4, high: 0.6 }, guesses: null }, 202)).toMatchObject({ guesses: null, chance: { x: 81, width: 40 } });
  });

  it('stays on the scale at its ends', () => {
    for (const value of [0, 1]) {
      const { chance, width } = chanceMark({ chance: { value, low: value, high: value }, guesses: null }, 100);
      expect(chance.x).toBeGreaterThanOrEqual(0);
      expect(chance.x + chance.width).toBeLessThanOrEqual(width);
    }
  });
});

describe('the key', () => {
  it.each([288, 358, 620, 944, 1144])('keeps its words inside %i px', (width) => {
    const years = calendar({ startYear: START, lastYear: LAST, width });
    for (const { x, anchor, text } of keyLayout(years).words) {
      const length = roughMeasure(text, 16);
      const left = anchor === 'start' ? x : anchor === 'end' ? x - length : x - length / 2;
      expect(left).toBeGreaterThanOrEqual(-1);
      expect(left + length).toBeLessThanOrEqual(width + 1);
    }
  });
});

describe('the year of a proven tree', () => {
  const proven = (works: number, pick: number) => {
    const plan = planOf('sister');
    const last = plan.generations.at(-1)!;
    return {
      ...plan,
      whenItWorks: { p10: works - 2, p50: works, p90: works + 2 },
      generations: plan.generations.with(-1, { ...last, firstPick: { p10: pick - 2, p50: pick, p90: pick + 2 } }),
    };
  };

  it('stands on the last row, never before that row has picked', () => {
    for (const works of [2046, 2047, 2048, 2049]) {
      const { rows, proven: own } = laneLayout(proven(works, 2048), options);
      const { dot } = rows.at(-1)!;
      expect(dot === null).toBe(works < 2048);
      expect(own === null).toBe(works >= 2048);
      expect((dot ?? own!.dot).x).toBeCloseTo(options.calendar.x(works), 9);
    }
  });

  it('has a line of its own under all rows where it belongs to no single one, inside the picture', () => {
    for (const width of [320, 358, 700, 1144]) {
      const years = calendar({ startYear: START, lastYear: LAST, width });
      for (const works of [2031, 2045, 2055]) {
        const layout = laneLayout(proven(works, 2056), { ...options, calendar: years });
        const { dot, label } = layout.proven!;
        const { top, height } = layout.rows.at(-1)!;
        expect(dot.y).toBeGreaterThan(top + height);
        expect(Math.max(dot.yearY, label.y)).toBeLessThanOrEqual(layout.height);
        expect(dot.yearX + 20).toBeLessThanOrEqual(years.horizon);
        // The year in figures is 36 px wide at most: it stands beside the bar, not on it.
        expect(Math.min(Math.abs(dot.yearX - dot.from), Math.abs(dot.yearX - dot.to))).toBeGreaterThanOrEqual(18);
      }
    }
  });
});

describe('on a phone', () => {
  it.each([288, 358, 430])('no line of descent runs through a count, in %i px', (width) => {
    const years = calendar({ startYear: START, lastYear: LAST, width });
    for (const plan of FIXTURE.plans)
      for (const { ring, chain } of laneLayout(plan, { ...options, calendar: years }).rows)
        for (const { x, width: wide } of ring ? chain : []) expect(x > ring!.x || x + wide < ring!.x, `${plan.name} ${String(x)}`).toBe(true);
  });

  it('a row’s name keeps off the year of a proven tree, or the year has a line of its own', () => {
    const plan = planOf('sister');
    const last = { ...plan.generations.at(-1)!, firstPick: { p10: 2030, p50: 2030, p90: 2030 } };
    // 15 px for the mark before a name and 5 px after it, as the page's own rules have it.
    const end = 15 + roughMeasure(last.name, 16, true) + 5;
    for (let works = 2034; works < LAST; works += 1) {
      const { dot, top } = laneLayout(
        { ...plan, generations: plan.generations.with(-1, last), whenItWorks: { p10: works, p50: works, p90: works } },
        { ...options, calendar: phone },
      ).rows.at(-1)!;
      expect(end < dot!.yearX - 18 || dot!.yearY - top > 30, String(works)).toBe(true);
    }
  });
});
