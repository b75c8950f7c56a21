import { describe, expect, it } from 'vitest';
import { chanceLayout } from '../../src/charts/chance-by-year/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { tableRows } from '../../src/charts/side-by-side/rows.ts';
import type { PlanOutlook } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { leadChange } from '../../src/statistics/lead.ts';
import { headline, lede, mostFails } from '../../src/text/headline.ts';
import { FIXTURE as outlook } from './fixture.ts';

const said = (pieces: readonly { readonly text: string }[]) =>
  pieces
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');

describe('the opening sentences and the pictures under them', () => {
  it('name the same year in which the lead changes', () => {
    const year = leadChange(outlook.plans)!.year;
    expect(said(headline(outlook.plans, outlook.comparisons, outlook.lastYear))).toContain(`ahead until ${String(year)}`);
    expect(chanceLayout(outlook, { width: 1144, measure: roughMeasure, words: {} }).crossing!.text).toBe(`level in ${String(year)}`);
    expect(tableRows(outlook, { hours: null, places: null }).find(({ id }) => id === 'chance-by')!.title).toContain(String(year));
    const level = outlook.plans.map((plan) => ({ ...plan, chanceByYear: outlook.plans[0]!.chanceByYear }));
    expect(said(headline(level, outlook.comparisons, outlook.lastYear))).not.toContain('ahead');
  });

  it('say plainly that nothing works, and count no seedlings that are not raised', () => {
    const none = { mean: 0, p10: 0, p50: 0, p90: 0 };
    const failing = (chance: number) =>
      outlook.plans.map((plan): PlanOutlook => ({
        ...plan,
        chance: wilson(chance, plan.runs),
        chanceByYear: plan.chanceByYear.map(({ year }) => ({ year, ...wilson(chance, plan.runs) })),
        seedlings: none,
        busiestHours: none,
        guesses: null,
        trulyGood: null,
        failures: { ...plan.failures, noFruit: 0.95, noneGoodEnough: 0.05, seedlingsDied: 0, stillWaiting: 0 },
      }));
    expect(said(headline(failing(0), [], outlook.lastYear))).toBe('In none of 4,000 futures does any plan have a proven tree by 2057.');
    expect(said(headline(failing(40), [], outlook.lastYear))).toMatch(
      /^Hardly ever does any plan have a proven tree by 2057: at best in 1 in 100 futures, with A/u,
    );
    expect(said(lede(failing(0)))).toBe('For A expect no seedling to raise.');
    expect(mostFails(failing(0)).replaceAll('\u00a0', ' ')).toBe('A fails most often because no fruit sets: 95 in 100 futures.');
  });
});
