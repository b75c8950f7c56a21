import { polygonArea, polygonContains } from 'd3';
import { describe, expect, it } from 'vitest';
import { funnelLayout, marginsOf, mostOf } from '../../src/charts/flower-to-pick/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { failLayout } from '../../src/charts/why-futures-fail/layout.ts';
import { outlines, type Outline } from '../../src/charts/years-against-trees/density.ts';
import { cloudLayout } from '../../src/charts/years-against-trees/layout.ts';
import { FAILURES } from '../../src/results/outlook.ts';
import { FIXTURE } from './fixture.ts';
import { EXTREME } from './fixture-extreme.ts';
import { FIXTURE_FUTURES } from './fixture-futures.ts';

const options = { width: 1144, measure: roughMeasure, words: {} };

/** A round bell of spots: radii are Rayleigh quantiles, angles turn by the golden angle. No chance in it. */
const bell = (count: number, sigma: number, cx: number, cy: number) =>
  Array.from({ length: count }, (_, index) => {
    const r = sigma * Math.sqrt(-2 * Math.log(1 - (index + 0.5) / count));
    const angle = index * 2.399963229728653;
    const x = cx + r * Math.cos(angle);
    return { x0: x, x1: x, y: cy + r * Math.sin(angle) };
  });
const area = ({ polygons }: Outline) =>
  polygons.reduce(
    (sum, rings) => sum + rings.reduce((part, ring, index) => part + (index === 0 ? 1 : -1) * Math.abs(polygonArea(ring.map(([x, y]) => [x, y]))), 0),
    0,
  );
const inside = ({ polygons }: Outline, x: number, y: number) =>
  polygons.some((rings) =>
    rings.every(
      (ring, index) =>
        polygonContains(
          ring.map(([a, b]) => [a, b]),
          [x, y],
        ) ===
        (index === 0),
    ),
  );

describe('outlines', () => {
  const spots = bell(4000, 60, 300, 250);
  const [outer, inner] = outlines(spots, [0.85, 0.5], { cell: 4, bandwidth: 20 });

  it('hold the shares they promise', () => {
    for (const [outline, share] of [
      [outer!, 0.85],
      [inner!, 0.5],
    ] as const) {
      const found = spots.filter(({ x0, y }) => inside(outline, x0, y)).length / spots.length;
      // Four standard errors of a share among so many spots.
      expect(Math.abs(found - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / spots.length));
    }
  });

  it('are the circles of a round bell: the inner has the Rayleigh median as its radius, σ·√(2 ln 2)', () => {
    // Rayleigh distribution, quantile σ√(−2 ln(1 − q)); any textbook. A cell of 4 px on a radius of 70 px blurs the edge by less than half a cell.
    for (const [outline, share] of [
      [outer!, 0.85],
      [inner!, 0.5],
    ] as const) {
      const radius = Math.sqrt(area(outline) / Math.PI);
      expect(Math.abs(radius - 60 * Math.sqrt(-2 * Math.log(1 - share)))).toBeLessThan(2);
    }
  });

  it('lie evenly around their spots wherever those are, and are not drawn without spots', () => {
    const [cut] = outlines(bell(2000, 40, 0, 250), [0.5], { cell: 4, bandwidth: 20 });
    const xs = cut!.polygons.flatMap((rings) => rings.flatMap((ring) => ring.map(([x]) => x)));
    expect(Math.abs(Math.min(...xs) + Math.max(...xs))).toBeLessThan(4);
    expect(outlines([], [0.5], { cell: 1, bandwidth: 2 })).toEqual([]);
  });
});

describe('years against trees', () => {
  const layout = cloudLayout(FIXTURE, FIXTURE_FUTURES, options);

  it('counts the futures without a tree, and draws a strip for them that no wider plan hides', () => {
    for (const [index, cloud] of layout.clouds.entries()) {
      const { yearProven } = FIXTURE_FUTURES[index]!;
      expect(cloud.noTree).toBeCloseTo(yearProven.filter((year) => year === 0).length / yearProven.length, 12);
    }
    const xs = layout.strips.map(({ x }) => x);
    const halves = layout.strips.map(({ points }) => Math.max(...points.map(({ half }) => half)));
    for (let index = 1; index < xs.length; index++) expect(xs[index]! - xs[index - 1]!).toBeGreaterThanOrEqual(halves[index]! + halves[index - 1]!);
    expect(xs.at(-1)! + halves.at(-1)!).toBeLessThanOrEqual(1144);
  });

  it('puts letters on the middle values, apart from each other', () => {
    const { letters } = cloudLayout(
      EXTREME,
      EXTREME.plans.map(({ id }, index) => ({ ...FIXTURE_FUTURES[index % 4]!, plan: id })),
      options,
    );
    for (const [index, one] of letters.entries())
      for (const other of letters.slice(index + 1)) expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(one.r + other.r);
    const sister = layout.letters.find(({ plan }) => plan === 'sister')!;
    expect(sister.x).toBeCloseTo(layout.calendar.x(layout.clouds[1]!.median!.year), 6);
  });

  it.each([288, 358, 800, 1144])('holds all outlines under the top of the axis, with room, in %i px', (width) => {
    // Like the columns of plans that either lose their first seedlings or raise a second lot: two heaps between 3 and 131 seedlings.
    const twoHeaps = FIXTURE_FUTURES.map(({ plan, yearProven }) => ({
      plan,
      yearProven: yearProven.map((_, index) => (index % 5 < 2 ? 0 : index % 3 === 0 ? 2034 + (index % 4) : 2040 + (index % 7))),
      seedlings: Int32Array.from(yearProven, (_, index) => (index % 3 === 0 ? 3 + (index % 60) : 131 - (index % 23))),
    }));
    for (const futures of [twoHeaps, FIXTURE_FUTURES]) {
      const { clouds, plot, counts } = cloudLayout(FIXTURE, futures, { ...options, width });
      const ys = clouds.flatMap(({ outlines: shapes }) =>
        shapes.flatMap(({ polygons }) => polygons.flatMap((rings) => rings.flatMap((ring) => ring.map(([, y]) => y)))),
      );
      expect(ys.length).toBeGreaterThan(0);
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(plot.top + 8);
      for (const { y } of counts) expect(y).toBeGreaterThanOrEqual(plot.top);
      // Room, not waste: the highest outline reaches well into the upper half.
      expect(Math.min(...ys)).toBeLessThan(plot.top + 0.4 * (plot.bottom - plot.top));
    }
  });

  it('draws no outline around a handful of successes', () => {
    const few = FIXTURE_FUTURES.map((columns) => ({ ...columns, yearProven: columns.yearProven.map((year, index) => (index < 20 ? 2050 : year * 0)) }));
    expect(cloudLayout(FIXTURE, few, options).clouds.every(({ outlines: shapes, median }) => shapes.length === 0 && median?.year === 2050)).toBe(true);
  });
});

describe('why futures fail', () => {
  it.each([288, 358, 640, 1144])('fills each bar, in %i px', (width) => {
    const { segments } = failLayout(FIXTURE, { ...options, width });
    for (const plan of FIXTURE.plans) {
      const bar = segments.filter((segment) => segment.plan === plan.id);
      const left = width < 640 ? 0 : 36;
      expect(bar[0]!.x).toBe(left);
      expect(bar.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(
        plan.chance.value + FAILURES.reduce((sum, reason) => sum + plan.failures[reason], 0),
        9,
      );
      for (const { x, width: wide, lines, share } of bar) {
        expect(wide).toBeLessThanOrEqual(Math.max(1, share * (width - left)));
        for (const line of lines) {
          expect(line.x).toBeGreaterThanOrEqual(x);
          expect(line.x + roughMeasure(line.text, width < 640 ? 16 : 17, line.bold)).toBeLessThanOrEqual(x + wide);
        }
      }
    }
  });

  it('says every reason in words: on the bar, or under it', () => {
    for (const width of [288, 1144]) {
      const { segments, also } = failLayout(FIXTURE, { ...options, width });
      for (const { plan, reason, lines } of segments) {
        if (reason === 'success' || lines.some(({ bold }) => bold)) continue;
        const under = also.filter((line) => line.plan === plan).map(({ text }) => text);
        expect(under.join(' '), `${plan} ${reason}`).toMatch(
          {
            noneGoodEnough: /none good enough/u,
            stillWaiting: /too young/iu,
            noFruit: /no fruit/u,
            seedlingsDied: /seedlings died/u,
            noSeedling: /no seedling/u,
            noRoom: /no room/u,
            onlyTreeLost: /only pick/u,
          }[reason],
        );
      }
    }
  });
});

describe('from flower to pick', () => {
  const margins = marginsOf(FIXTURE, roughMeasure);
  const layout = funnelLayout(FIXTURE.plans[3]!.generations[0]!, { width: 500, most: mostOf(FIXTURE), margins, measure: roughMeasure });

  it('makes each step of ten equally long, with a place before 1 for nothing', () => {
    const at = (text: string) => layout.ticks.find((tick) => tick.text === text)!.x;
    expect(at('100') - at('10')).toBeCloseTo(at('1,000') - at('100'), 9);
    expect(at('10') - at('1')).toBeCloseTo(at('100') - at('10'), 9);
    expect(at('0')).toBeLessThan(at('1'));
  });

  it('leaves out steps that do not happen, keeps the pick, and says each count', () => {
    expect(layout.steps.map(({ stage }) => stage)).toEqual(['flowers', 'seedlings', 'aliveAtGraft', 'fruiting', 'kept']);
    expect(layout.steps.map(({ middle, range }) => [middle, range])).toEqual([
      ['1,200', ''],
      ['59', '15–90'],
      ['20', '6–32'],
      ['5', '0–11'],
      ['1', '0–1'],
    ]);
    for (const { dot, bar } of layout.steps) if (bar) expect(dot >= bar.x && dot <= bar.x + bar.width).toBe(true);
  });
});
