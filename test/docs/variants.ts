import { readFileSync } from 'node:fs';
import type { Condition, Programme } from '../../src/model/programme.ts';
import { read } from '../engine/programmes.ts';

/** The programmes that `docs/answers.md` speaks of: shipped examples, and small changes to them as the page says. */

export const example = (name: string): Programme => read(JSON.parse(readFileSync(new URL(`../../sims/examples/${name}.json`, import.meta.url), 'utf8')));

/** The condition on something measured: from so much on, or left out of the goal. */
export function goalFrom(programme: Programme, atLeast: number | null): Programme {
  const conditions = programme.goal.conditions.flatMap((condition): Condition[] =>
    condition.type !== 'measured' ? [condition] : atLeast === null ? [] : [{ ...condition, atLeast }],
  );
  return { ...programme, goal: { ...programme.goal, conditions } };
}

/** Another last judging year. */
export const until = (programme: Programme, lastYear: number): Programme => ({ ...programme, lastYear });
