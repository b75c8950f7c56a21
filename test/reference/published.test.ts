import { describe, expect, it } from 'vitest';
import { countChecks } from './counts.ts';
import { estimateChecks } from './estimates.ts';
import { inheritanceChecks } from './inheritance.ts';
import { Inputs, published, type Checks } from './published.ts';
import { tableChecks } from './tables.ts';

const checks: Checks = { ...inheritanceChecks, ...countChecks, ...estimateChecks, ...tableChecks };

/** For entries that are exact: what double arithmetic may lose on the way. */
const ROUNDING = 1e-12;

describe('published figures', () => {
  for (const entry of published) {
    it(`${entry.id}: ${entry.title}. ${entry.source} (${entry.mark})`, () => {
      const check = checks[entry.id];
      if (!check) throw new Error(`Nothing computes ${entry.id}.`);
      const computed = check(new Inputs(entry));
      const got = typeof computed === 'number' ? [computed] : computed;
      expect(got).toHaveLength(entry.expected.length);
      entry.expected.forEach((wanted, i) => {
        const allowed = entry.tolerance ?? ROUNDING * Math.max(1, Math.abs(wanted));
        expect(Math.abs(got[i]! - wanted), `${String(got[i])} against ${String(wanted)}`).toBeLessThanOrEqual(allowed);
      });
    });
  }

  it('has no check without a published figure', () => {
    expect(Object.keys(checks).sort()).toEqual(published.map(({ id }) => id).sort());
  });
});
