import { describe, expect, it } from 'vitest';
import { halfOfSuccesses, medianYear } from '../../src/charts/side-by-side/median-year.ts';
import { tableRows } from '../../src/charts/side-by-side/rows.ts';
import {
  amountVerdict,
  chanceVerdict,
  front,
  medianError,
  overVerdict,
  placesVerdict,
  shareDifference,
  shareVerdict,
  yearVerdict,
} from '../../src/charts/side-by-side/verdicts.ts';
import type { Comparison, PlanOutlook, Spread } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { FIXTURE } from './fixture.ts';
import { EXTREME } from './fixture-extreme.ts';

const plan = (mark: string, hits: number, of = 4000): PlanOutlook => ({ ...FIXTURE.plans[0]!, id: mark, mark, runs: of, chance: wilson(hits, of) });
const paired = (a: string, b: string, low: number, high: number): Comparison => ({
  a,
  b,
  aSooner: wilson(0, 1),
  bSooner: wilson(0, 1),
  tied: wilson(0, 1),
  chanceDifference: { value: (low + high) / 2, low, high },
});
const spreadOf = (p10: number, p50: number, p90: number): Spread => ({ mean: p50, p10, p50, p90 });

describe('the difference of two shares', () => {
  it('has the published interval: 56/70 − 48/80 gives 0.0524 … 0.3339', () => {
    // Newcombe (1998) Stat. Med. 17:873–890, Table II, row a, method 10 (quoted from memory).
    const { value, low, high } = shareDifference(wilson(56, 70), wilson(48, 80));
    expect(value).toBeCloseTo(0.2, 10);
    expect(low).toBeCloseTo(0.0524, 4);
    expect(high).toBeCloseTo(0.3339, 4);
  });

  it('is the same the other way round, with its sign turned', () => {
    const [a, b] = [wilson(300, 1000), wilson(280, 900)];
    const [ab, ba] = [shareDifference(a, b), shareDifference(b, a)];
    expect(ba.value).toBeCloseTo(-ab.value, 12);
    expect(ba.low).toBeCloseTo(-ab.high, 12);
    expect(ba.high).toBeCloseTo(-ab.low, 12);
  });
});

describe('who is best', () => {
  it('is one plan only when it is clearly ahead of every other', () => {
    expect(front([5, 4, 1], (a, b) => a - b > 2)).toEqual([5, 4]);
    expect(front([5, 1, 1], (a, b) => a - b > 2)).toEqual([5]);
    expect(front([], () => true)).toEqual([]);
  });

  it('follows the paired comparison, whichever way round it is held', () => {
    const plans = [plan('A', 2000), plan('B', 2060)];
    // As if independent, 50.0 and 51.5 % of 4,000 cannot be told apart.
    expect(chanceVerdict(plans, [])).toEqual({ kind: 'even', text: 'no clear difference' });
    expect(chanceVerdict(plans, [paired('B', 'A', 0.004, 0.026)])).toEqual({ kind: 'clear', text: 'B clearly best' });
    expect(chanceVerdict(plans, [paired('A', 'B', -0.026, -0.004)])).toEqual({ kind: 'clear', text: 'B clearly best' });
    expect(chanceVerdict(plans, [paired('A', 'B', -0.036, 0.004)])).toEqual({ kind: 'even', text: 'no clear difference' });
  });

  it('names those that cannot be told apart, in the order of their letters', () => {
    expect(
      shareVerdict([
        { mark: 'D', share: wilson(2210, 4000) },
        { mark: 'A', share: wilson(700, 4000) },
        { mark: 'B', share: wilson(2190, 4000) },
      ]),
    ).toEqual({ kind: 'even', text: 'B and D stand out, with no clear difference between them' });
    expect(
      shareVerdict([
        { mark: 'A', share: null },
        { mark: 'B', share: wilson(1, 10) },
      ]),
    ).toEqual({ kind: 'plain', text: '' });
  });

  it('says "close behind" for a difference that is sure but too small to care about', () => {
    const amount = (mark: string, p50: number) => ({ mark, amount: spreadOf(p50 - 5, p50, p50 + 5), runs: 4000 });
    const least = (mark: string) => `${mark} least`;
    expect(amountVerdict([amount('A', 70), amount('C', 73), amount('D', 91)], 'least', least).text).toBe('A least, C close behind');
    expect(amountVerdict([amount('A', 70), amount('D', 91)], 'least', least)).toEqual({ kind: 'clear', text: 'A least' });
    expect(amountVerdict([amount('A', 70), amount('D', 70)], 'least', least).kind).toBe('even');
    expect(
      amountVerdict(
        [
          { ...amount('A', 70), runs: 30 },
          { ...amount('D', 72), runs: 30 },
        ],
        'least',
        least,
      ).kind,
    ).toBe('even');
  });

  it('takes a median’s error as twice that of a normal sample: √(π/2)·σ/√n', () => {
    // A normal with σ = 10 has 10 and 90 % at ±12.8155; n = 100: √(π/2)·10/10 = 1.25331.
    expect(medianError(spreadOf(-12.8155, 0, 12.8155), 100)).toBeCloseTo(2 * 1.25331, 3);
  });

  it('counts help and places', () => {
    const over = (mark: string, share: number) => ({ mark, overHours: wilson(Math.round(share * 4000), 4000) });
    expect(overVerdict([over('A', 0.01), over('B', 0.17), over('C', 0.2)]).text).toBe('B and C need help some springs');
    expect(overVerdict([over('A', 0.01)]).text).toBe('all stay within it');
    const places = (mark: string, p50: number, p90: number) => ({ mark, mostPlaces: spreadOf(0, p50, p90) });
    expect(placesVerdict([places('A', 51, 64), places('B', 80, 120)], 120).text).toBe('B fills them in 1 future of 10');
    expect(placesVerdict([places('A', 51, 64), places('B', 120, 120)], 120).text).toBe('B fills them in half of the futures');
    expect(placesVerdict([places('A', 51, 64)], 120).text).toBe('there is room for all');
  });
});

describe('the middle year', () => {
  const curve = (hits: readonly number[], of: number) => hits.map((n, index) => ({ year: 2040 + index, ...wilson(n, of) }));

  it('is the first year with half, between the years the share’s own interval leaves open', () => {
    // 49 of 100 has the Wilson interval 0.394 … 0.587, 61 has 0.512 … 0.700 (Wilson 1927, computed by hand): half is in reach from 2041 on.
    expect(medianYear(curve([30, 49, 55, 61, 70], 100))).toEqual({ year: 2042, from: 2041, to: 2043 });
    expect(medianYear(curve([10, 20, 30], 100))).toEqual({ year: null, from: null, to: null });
    expect(medianYear(curve([10, 20, 45], 100))).toEqual({ year: null, from: 2042, to: null });
  });

  it('among successes is that of the curve of successes alone', () => {
    const some: PlanOutlook = { ...FIXTURE.plans[0]!, runs: 1000, chance: wilson(200, 1000), chanceByYear: curve([0, 40, 120, 200], 1000) };
    expect(halfOfSuccesses(some).year).toBe(2042);
    expect(halfOfSuccesses({ ...some, chance: wilson(0, 1000), chanceByYear: curve([0, 0], 1000) }).year).toBeNull();
  });

  it('puts plans in words: first by years, only one, none, or no clear difference', () => {
    const at = (mark: string, year: number | null, from = year, to = year) => ({ mark, median: { year, from, to } });
    expect(yearVerdict([at('A', null), at('B', 2052), at('D', 2050)], true).text).toBe('D first, by two years');
    expect(yearVerdict([at('A', null), at('D', 2050)], true).text).toBe('only D');
    expect(yearVerdict([at('A', null), at('D', null)], true).text).toBe('no plan gets there');
    expect(yearVerdict([at('B', 2051, 2050, 2052), at('D', 2050, 2050, 2051)], true)).toEqual({ kind: 'even', text: 'no clear difference' });
    // Not there by the last year, but within its error it may be: not ranked below.
    expect(yearVerdict([at('A', null, 2057, null), at('D', 2057, 2056, 2057)], true).kind).toBe('even');
    expect(yearVerdict([at('B', 2051), at('D', 2047)], false).text).toBe('D clearly first');
  });
});

describe('the table', () => {
  const rows = tableRows(FIXTURE, { hours: 160, places: 120 });

  it('has a row per measure and per rule, and a cell per plan in each', () => {
    expect(rows.map(({ id }) => id.replace(/\n.*/su, ''))).toEqual([
      'chance',
      'chance-by',
      'half',
      'works',
      'seedlings',
      'fruiting',
      'tree-years',
      'grafts',
      'hours',
      'over',
      'places',
      'truly-good',
      'rule-Red flesh',
      'rule-Red flesh',
    ]);
    for (const { cells } of rows) expect(cells.map((cell) => cell.plan)).toEqual(FIXTURE.plans.map(({ id }) => id));
  });

  it('says in its last column what the figures carry', () => {
    const words = Object.fromEntries(rows.map(({ id, verdict }) => [id, verdict.text]));
    expect(words).toMatchObject({
      chance: 'B clearly best',
      works: 'D clearly first',
      seedlings: 'C fewest: because they die',
      fruiting: 'B most',
      hours: 'A least, C close behind',
      over: 'B needs help some springs',
      places: 'B fills them in 1 future of 10',
      grafts: 'A without any',
    });
  });

  it('writes chances as percent with their interval, and years not reached in words', () => {
    expect(rows[0]!.cells[1]).toEqual({ plan: 'sister', main: '73\u00a0%', small: '72–74' });
    expect(rows.find(({ id }) => id === 'half')!.cells[0]).toEqual({ plan: 'open', main: 'not by\u00a02057', small: '' });
  });

  it('leaves out what nobody asked: limits that are not stated', () => {
    const free = tableRows(
      { ...FIXTURE, plans: FIXTURE.plans.map((one) => ({ ...one, overHours: null, trulyGood: null, byRule: [] })) },
      { hours: null, places: null },
    );
    expect(free.map(({ id }) => id)).toEqual(['chance', 'chance-by', 'half', 'works', 'seedlings', 'fruiting', 'tree-years', 'grafts', 'hours', 'places']);
    expect(free.find(({ id }) => id === 'hours')!.note).toBe('');
  });

  it('copes with a plan that never works, and with one plan alone', () => {
    const extreme = tableRows(EXTREME, { hours: null, places: null });
    expect(extreme.find(({ id }) => id === 'works')!.cells[4]!.main).toBe('–');
    expect(extreme[0]!.verdict).toEqual({ kind: 'even', text: 'B and F stand out, with no clear difference between them' });
    const alone = tableRows({ ...FIXTURE, plans: FIXTURE.plans.slice(0, 1), comparisons: [] }, { hours: null, places: null });
    expect(alone.filter(({ verdict }) => verdict.kind !== 'plain')).toEqual([]);
  });
});

describe('how much is left of a kind', () => {
  const origin = (quince: number, length: number) => ({
    kinds: [
      { kind: 'quince', share: spreadOf(quince - 0.05, quince, quince + 0.05) },
      { kind: 'pear', share: spreadOf(0.95 - quince, 1 - quince, 1.05 - quince) },
    ],
    around: { gene: 'red', length: spreadOf(length, length, length) },
  });
  // 12.5 % and 25 % of the donor after two back-crosses and one: 1 − (1 − ½^(t+1)), Allard (1960), from memory.
  const rows = tableRows(
    {
      ...FIXTURE,
      plans: FIXTURE.plans.slice(0, 3).map((one, p) => ({
        ...one,
        generations:
          p === 2
            ? []
            : one.generations.slice(0, 1).map((generation) => ({ ...generation, picked: 0.5, origin: p === 0 ? origin(0.125, 31) : origin(0.25, 40) })),
      })),
    },
    { hours: null, places: null },
  );

  it('stands beside each plan, of the last generation that kept a pick; the kind that most of it is has no row', () => {
    const left = rows.find(({ id }) => id === 'origin-quince')!;
    expect(left.title).toBe('Left of quince in the last picks');
    expect(left.cells.map(({ main }) => main.replace('\u00a0', ' '))).toEqual(['13 %', '25 %', '–']);
    expect(left.cells[1]!.small.replaceAll('\u00a0', ' ')).toBe('20 % to 30 %');
    expect(left.verdict).toEqual({ kind: 'clear', text: `${FIXTURE.plans[0]!.mark} least` });
    expect(rows.some(({ id }) => id === 'origin-pear')).toBe(false);
    expect(rows.find(({ id }) => id === 'around')!.cells[0]!.main.replace('\u00a0', ' ')).toBe('31 cM');
  });

  it('is no row where origin is not followed', () =>
    expect(tableRows(FIXTURE, { hours: null, places: null }).some(({ id }) => id.startsWith('origin'))).toBe(false));
});
