import { describe, expect, it } from 'vitest';
import { gap, boxAt, inset } from '../../src/charts/boxes.ts';
import { betterLayout, RING } from '../../src/charts/better/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import type { BetterAnswer } from '../../src/decisions/better.ts';
import type { BetterPlan } from '../../src/decisions/better/final.ts';
import type { Interval } from '../../src/results/outlook.ts';
import {
  againstLines,
  betterFinding,
  countsInWords,
  meanYearLines,
  planWordsRead,
  standingInWords,
  sureInWords,
  treesLines,
} from '../../src/text/pay-better.ts';
import { redPear } from '../decisions/samples.ts';

const at = (value: number, half: number): Interval => ({ value, low: value - half, high: value + half });
const spreadOf = (mean: number) => ({ mean, p10: mean, p50: mean, p90: mean });
const [planA, , , planD] = redPear.plans;

/** A plan of so many years and seedlings; all else stands for itself. */
function plan(id: string, own: boolean, years: number, trees: number, changes: Partial<BetterPlan> = {}): BetterPlan {
  return {
    id,
    own,
    mark: 'D',
    from: 'wide-rescue',
    name: own ? 'plan D' : 'plan D, with first generation 2 springs',
    changes: [],
    document: planD!,
    standing: 'front',
    beatenBy: null,
    years: at(years, 0.3),
    trees: at(trees, 1.5),
    outcome: {
      futures: 4000,
      chance: at(0.7, 0.01),
      trulyGood: at(0.8, 0.01),
      yearProven: { p10: 2040, p50: 2047, p90: null },
      seedlings: spreadOf(trees),
      fruiting: spreadOf(0),
      grafts: spreadOf(0),
      treeYears: spreadOf(0),
      totalHours: spreadOf(0),
      busiestHours: spreadOf(30),
    },
    over: at(0.1, 0.01),
    behindSoonest: { low: 0, high: 2 },
    mayBeSoonest: false,
    lowerChance: false,
    minusFrom: null,
    ...changes,
  };
}

const OWN = [
  plan('a', true, 2052.3, 47, { mark: 'A', from: planA!.id, standing: 'beaten', beatenBy: 'f2' }),
  plan('d', true, 2048, 65, { standing: 'beaten', beatenBy: 'f2' }),
];
const FOUND = [
  plan('f1', false, 2043.6, 109, { standing: 'noClearDifference' }),
  plan('f2', false, 2044.1, 60, { mayBeSoonest: true }),
  plan('f3', false, 2052, 20),
];
const answer = (changes: Partial<BetterAnswer> = {}): BetterAnswer => ({
  question: 'better',
  plan: 'a',
  done: true,
  futures: 4000,
  clear: true,
  cannotSay: null,
  stage: 'comparing',
  looked: 200,
  looks: 200,
  futuresRun: 120_000,
  freshFrom: 4000,
  lastYear: 2057,
  confidence: 0.95,
  same: { years: 0.25, trees: 1 },
  overAtMost: 0.5,
  seen: [
    { mark: 'A', own: true, years: 2052.3, trees: 47 },
    { mark: 'D', own: false, years: 2046, trees: 80 },
    { mark: 'D', own: false, years: 2046, trees: 900 },
  ],
  plans: [...OWN, ...FOUND],
  fellBack: 0,
  soonest: { id: 'f2', within: 0.2 },
  ...changes,
});
const laid = (changes: Partial<BetterAnswer> = {}, width = 760) => betterLayout(answer(changes), { width, measure: roughMeasure });

describe('the picture of better plans', () => {
  it('goes right with the years and up with the seedlings, the last judging year and all plans inside', () => {
    const { rings, letters, crosses, plot, lastYear } = laid();
    expect(rings.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(letters.map(({ mark }) => mark)).toEqual(['A', 'D']);
    const place = (id: string) => crosses.find((cross) => cross.id === id)!;
    expect(place('f1').x).toBeLessThan(place('f2').x);
    expect(place('f1').y).toBeLessThan(place('f2').y);
    for (const { x, y, left, right, top, bottom } of crosses) {
      expect(inset(boxAt(x, y, 0, 0), plot)).toBeGreaterThanOrEqual(0);
      expect(x - left).toBeCloseTo(right - x, 6);
      expect(y - top).toBeCloseTo(bottom - y, 6);
    }
    expect(lastYear!.x).toBeLessThan(plot.right);
    expect(lastYear!.x).toBeGreaterThan(place('a').x);
    // A year is as wide for a cross as on the axis: ± 0.3 year.
    const [one, two] = laid().years;
    const year = (two!.x - one!.x) / (Number(two!.text) - Number(one!.text));
    expect(place('f2').right - place('f2').x).toBeCloseTo(0.3 * year, 6);
  });

  it('steps from plan to plan of the front, and leaves out those that are only not clearly beaten', () => {
    const { front, crosses, plot } = laid();
    const place = (id: string) => crosses.find((cross) => cross.id === id)!;
    const [f2, f3] = [place('f2'), place('f3')];
    expect(front).toEqual([
      { x: f2.x, y: plot.top },
      { x: f2.x, y: f2.y },
      { x: f3.x, y: f2.y },
      { x: f3.x, y: f3.y },
      { x: plot.right, y: f3.y },
    ]);
    expect(laid().rings.map(({ unclear }) => unclear)).toEqual([true, false, false]);
    expect(laid({ plans: [], stage: 'looking' }).front).toEqual([]);
  });

  it('shows the user’s plans and what was looked at while the search goes on', () => {
    const { letters, seen, rings, order } = laid({ plans: [], stage: 'looking' });
    expect(letters.map(({ mark }) => mark)).toEqual(['A']);
    expect(seen.length).toBe(2);
    expect(rings).toEqual([]);
    expect(order).toEqual([]);
    // What lies far above the plans shown is left out, not squeezed in.
    expect(laid().seen.length).toBe(1);
  });

  it('is read from the soonest on', () => {
    expect(laid().order).toEqual(['f1', 'f2', 'd', 'f3', 'a']);
  });

  it.each([320, 390, 760, 1200])('covers no number with another, %d px wide', (width) => {
    const many = Array.from({ length: 12 }, (_, i) => plan(`f${String(i)}`, false, 2044 + 0.9 * i, 100 - 8 * i));
    const { rings, letters, plot } = laid({ plans: [...OWN, ...many] }, width);
    const boxes = rings.flatMap(({ label, number }) => {
      const wide = roughMeasure(String(number), 16, true);
      return label ? [boxAt(label.x - wide / 2, label.y - 13.5, wide, 16)] : [];
    });
    expect(boxes.length).toBeGreaterThan(8);
    boxes.forEach((box, i) => {
      expect(inset(box, plot)).toBeGreaterThanOrEqual(0);
      for (const other of boxes.slice(i + 1)) expect(gap(box, other)).toBeGreaterThan(0);
      for (const ring of rings) expect(gap(box, boxAt(ring.x - RING, ring.y - RING, 2 * RING, 2 * RING))).toBeGreaterThan(0);
      for (const { x, y, r } of letters) expect(gap(box, boxAt(x - r, y - r, 2 * r, 2 * r))).toBeGreaterThan(0);
    });
  });
});

const said = (pieces: readonly { readonly text: string }[]) =>
  pieces
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');

describe('what it says', () => {
  it('opens with the found plan that clearly beats the user’s soonest', () => {
    expect(said(betterFinding(answer()))).toBe(
      '4 years sooner than plan D, your soonest, and 5 seedlings fewer: number 2 of the plans found within your limits, which varies plan D.',
    );
  });

  it('says what more seedlings buy, where nothing beats it on both', () => {
    const plans = [plan('d', true, 2048, 40), plan('f', false, 2046.5, 65, { mayBeSoonest: true })];
    expect(said(betterFinding(answer({ plans, soonest: { id: 'f', within: 0 } })))).toBe(
      '1½ years sooner than plan D, your soonest, for 25 seedlings more: number 1 of the plans found within your limits, which varies plan D.',
    );
  });

  it('says “no clear difference” where that is the truth', () => {
    const plans = [plan('d', true, 2048, 40, { mayBeSoonest: true }), plan('f', false, 2047.9, 65, { mayBeSoonest: true })];
    const none = answer({ plans, clear: false, soonest: { id: 'f', within: 0.4 } });
    expect(said(betterFinding(none))).toMatch(/^No clear difference: of 200 plans looked at/);
    expect(sureInWords(none).join(' ').replaceAll('\u00a0', ' ')).toContain('the soonest of these is plan D or number 1');
  });

  it('tells how far the search is, and does not call its figures findings', () => {
    expect(said(betterFinding(answer({ plans: [], stage: 'looking', looked: 83 })))).toBe('Looking for better plans: 83 of 200 plans looked at.');
    expect(sureInWords(answer({ plans: [], stage: 'looking' }))).toHaveLength(1);
  });

  it('says so where the user’s own plans go over the limits', () => {
    const over = plan('d', true, 2048, 40, { standing: 'overLimits', behindSoonest: null });
    expect(said(betterFinding(answer({ plans: [over, plan('f', false, 2050, 30)], soonest: { id: 'f', within: 0 } })))).toBe(
      'Your own plans go over your limits. Number 1 of the plans found keeps them.',
    );
    expect(standingInWords(over, [over], null)).toBe('over your hours or money in 10 % of its futures'.replace('10 %', '10\u00a0%'));
  });

  it('states the confidence and what a future without a tree counts as', () => {
    expect(sureInWords(answer()).join(' ').replaceAll('\u00a0', ' ')).toContain(
      '95 in 100 sure, all of this at once: number 2 is the soonest of these, or no more than 0.2 years behind it',
    );
    expect(countsInWords(answer()).join(' ')).toContain('one without a proven tree by 2057 counts as 2058');
  });

  it('gives every figure its interval, and truly good beside the chance', () => {
    expect(meanYearLines(at(2044.07, 0.31))).toEqual(['2044.1', '2043.8–2044.4']);
    expect(treesLines(at(60.4, 1.5))).toEqual(['60', '59–62']);
    expect(planWordsRead(FOUND[1]!, [...OWN, ...FOUND], 2057).replaceAll('\u00a0', ' ')).toBe(
      '2: plan D, with first generation 2 springs. Mean year 2044.1, 60 seedlings, 70 % by 2057; of ten trees you would call proven, about eight truly are.',
    );
    const minusFrom = {
      years: at(-3.9, 0.3),
      seedlings: at(0.5, 1),
      chance: at(0.1, 0.01),
      clear: true,
      sooner: at(0, 0),
      later: at(0, 0),
      grafts: at(0, 0),
      treeYears: at(0, 0),
      totalHours: at(0, 0),
    };
    expect(againstLines(plan('f', false, 2044, 66, { minusFrom }))).toEqual([
      ['3.9\u00a0years sooner', '3.6–4.2'],
      ['seedlings: no clear difference', '−0.5 to 1.5'],
    ]);
    expect(againstLines(OWN[0]!)).toEqual([]);
    expect(standingInWords(OWN[0]!, [...OWN, ...FOUND], 'f2').replaceAll('\u00a0', ' ')).toBe('beaten on both by number 2');
    expect(standingInWords(FOUND[1]!, [...OWN, ...FOUND], 'f2')).toBe('the soonest; nothing beats it on both');
  });
});
