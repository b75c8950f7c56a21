import { describe, expect, it } from 'vitest';
import { checks } from '../../sims/studies/validation/checks/all.ts';
import { Inputs, published } from '../../sims/studies/validation/entries.ts';
import { samplers } from '../../sims/studies/validation/sampling/all.ts';
import { agrees, allowed, DIFFERENCES } from '../../sims/studies/validation/verdict.ts';

describe('published figures', () => {
  for (const entry of published) {
    const check = checks[entry.id];
    if (!check) continue;
    it(`${entry.id}: ${entry.title}. ${entry.source} (${entry.mark})`, () => {
      const computed = check(new Inputs(entry));
      const got = typeof computed === 'number' ? [computed] : computed;
      expect(got).toHaveLength(entry.expected.length);
      if (entry.id in DIFFERENCES) {
        // A reason for a difference that is none any more must go.
        expect(entry.expected.every((wanted, i) => agrees(entry, wanted, got[i]!))).toBe(false);
        return;
      }
      entry.expected.forEach((wanted, i) => {
        expect(Math.abs(got[i]! - wanted), `${String(got[i])} against ${String(wanted)}`).toBeLessThanOrEqual(allowed(entry, wanted));
      });
    });
  }

  it('each have a check or are sampled, and nothing is computed that no figure is known for', () => {
    const computed = new Set([...Object.keys(checks), ...Object.keys(samplers)]);
    expect([...computed].sort()).toEqual(published.map(({ id }) => id).sort());
  });
});
