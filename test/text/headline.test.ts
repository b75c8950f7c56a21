import { describe, expect, it } from 'vitest';
import type { PlanOutlook } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { headline, lede, outOfReach } from '../../src/text/headline.ts';
import { FIXTURE as outlook } from '../charts/fixture.ts';

const said = (pieces: readonly { readonly text: string }[]) =>
  pieces
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');

describe('the opening sentences', () => {
  it('name the surest plan, and the one that is ahead before it', () => {
    const words = said(headline(outlook.plans, outlook.comparisons, outlook.lastYear));
    const best = [...outlook.plans].sort((a, b) => b.chance.value - a.chance.value)[0]!;
    expect(words).toContain(`plan ${best.mark} (${best.name}) has a proven tree by ${String(outlook.lastYear)}`);
    expect(words).toMatch(/is ahead until \d{4}, but ends at \d in 10\./);
  });

  it('say what the surest plan asks for', () => {
    expect(said(lede(outlook.plans))).toMatch(/^For [A-H] expect to raise about [\d,]+ seedlings and to need about [\d,]+ hours/);
  });

  it('do not rank plans that the futures cannot tell apart', () => {
    const [a, b] = outlook.plans;
    const same = [a, { ...b!, chance: a!.chance }].map((plan) => plan!);
    const level = { value: 0, low: -0.02, high: 0.02 };
    const words = said(headline(same, [{ ...outlook.comparisons[0]!, a: a!.id, b: b!.id, chanceDifference: level }], outlook.lastYear));
    expect(words).toContain('which these futures cannot tell apart');
  });

  it('name an explanation under which no plan gets there', () => {
    const never = outlook.plans.map((plan): PlanOutlook => ({ ...plan, byRule: [{ trait: 'red', rule: 'two copies', runs: 400, chance: wilson(0, 400) }] }));
    expect(outOfReach(never)).toHaveLength(1);
    const once = never.map((plan, i): PlanOutlook =>
      i === 0 ? { ...plan, byRule: [{ trait: 'red', rule: 'two copies', runs: 400, chance: wilson(1, 400) }] } : plan,
    );
    expect(outOfReach(once)).toEqual([]);
  });
});
