import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';

const figures = z
  .object({ rows: z.array(z.object({ id: z.string(), figures: z.array(z.object({ ours: z.number() })) })) })
  .parse(JSON.parse(readFileSync(new URL('../../docs/validation.json', import.meta.url), 'utf8')))
  .rows.find(({ id }) => id === 'learned-rates-cover')?.figures;

/** The study makes 400 orchards; a quick look at 20 of them runs with the other sampled figures (test/reference). */
describe('ranges of learned rates over simulated orchards', () => {
  it('hold the truth in 86 to 94 of a hundred, where nine in ten are meant', () => {
    expect(figures).toHaveLength(10);
    for (const { ours } of figures ?? []) {
      expect(ours).toBeGreaterThanOrEqual(0.86);
      expect(ours).toBeLessThanOrEqual(0.94);
    }
  });
});
