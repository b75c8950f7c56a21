import { describe, expect, it } from 'vitest';
import { Inputs, published } from '../../sims/studies/validation/entries.ts';
import { samplers } from '../../sims/studies/validation/sampling/all.ts';
import { measured } from '../../sims/studies/validation/study.ts';
import { allowed, ERRORS } from '../../sims/studies/validation/verdict.ts';

/** `npm run studies` makes fifty times as many trials of the same kind. */
const few = (full: number): number => Math.max(200, Math.ceil(full / 50));

describe('published figures, sampled with our own meiosis and draws', () => {
  for (const entry of published) {
    const sampler = samplers[entry.id];
    if (!sampler) continue;
    it(`${entry.id}: ${entry.title}. ${entry.source} (${entry.mark})`, () => {
      const figures = sampler(new Inputs(entry), few);
      expect(figures).toHaveLength(entry.expected.length);
      expect(figures.some((figure) => figure !== null)).toBe(true);
      entry.expected.forEach((expected, i) => {
        const figure = figures[i];
        if (!figure) return;
        const { ours, error } = measured(figure, expected);
        expect(Math.abs(ours - expected), `${String(ours)} against ${String(expected)}, standard error ${String(error)}`).toBeLessThanOrEqual(
          allowed(entry, expected) + ERRORS * error,
        );
      });
    });
  }
});
