import { describe, expect, it } from 'vitest';
import type { Failure } from '../../src/results/outlook.ts';
import { DEADLINES, difference, ourFigures, programmeOf, REASONS, secondOpinion, type Figures } from './figures.ts';

const RUNS = 8000;
/** Combined standard errors that two honest programs may differ by. */
const ERRORS = 4;

/**
 * Reasons that the two programs tell apart at different moments where a pick died before it was used: only their sum is compared.
 * Whether there was fruit, a seedling, or room, is one matter for both.
 */
const TOGETHER: readonly Failure[] = ['onlyTreeLost', 'stillWaiting', 'noneGoodEnough', 'seedlingsDied'];

function summed(figures: Figures): { hits: number; of: number } {
  const parts = TOGETHER.flatMap((reason) => figures[`why: ${REASONS[reason]}`] ?? []).map((part) => ('hits' in part ? part : { hits: 0, of: 0 }));
  return { hits: parts.reduce((sum, { hits }) => sum + hits, 0), of: Math.max(...parts.map(({ of }) => of)) };
}

const programmes = {
  'red-pear': '../../sims/examples/red-pear.json',
  'quick-peach': './quick-peach.programme.json',
  'graded-nectarine': './graded-nectarine.programme.json',
  'slow-walnut': './slow-walnut.programme.json',
};

describe('second opinion: an independent program of docs/model.md on the same programmes', () => {
  for (const [name, path] of Object.entries(programmes)) {
    const opinion = secondOpinion(name);
    const programme = programmeOf(path);
    let ours: Figures[] | null = null;
    opinion.plans.forEach(({ plan, columns: theirs }, p) => {
      it(`${name}, ${plan}: every figure within four combined standard errors`, () => {
        ours ??= ourFigures(programme, RUNS);
        const figures = ours[p]!;
        const apart = Object.keys(theirs).filter((key) => !TOGETHER.some((reason) => key === `why: ${REASONS[reason]}`));
        const years = programme.lastYear - programme.startYear;
        expect(apart.length).toBeGreaterThan(24 + DEADLINES.filter((deadline) => deadline <= years).length);
        const off = apart.flatMap((key) => {
          const [mine, other] = [figures[key], theirs[key]!];
          if (!mine) return [`${key}: we say nothing`];
          const z = difference(mine, other);
          return Math.abs(z) <= ERRORS ? [] : [`${key}: ${JSON.stringify(mine)} against ${JSON.stringify(other)}, z = ${z.toFixed(2)}`];
        });
        expect(off).toEqual([]);
        expect(Math.abs(difference(summed(figures), summed(theirs))), 'other reasons together').toBeLessThanOrEqual(ERRORS);
      });
    });
  }
});
