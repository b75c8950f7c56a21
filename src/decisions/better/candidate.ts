import { checkProgramme } from '../../model/check.ts';
import type { Plan, Programme } from '../../model/programme.ts';
import { rescueSites } from '../rescue-sites.ts';
import { onlyPlan, withGeneration } from '../variants.ts';
import { CHOICES, choicesOf, type Choice, type ChoiceKind } from './choices.ts';
import type { Changed } from './words.ts';

/** The plan stands as it is in this choice. */
export const AS_IT_STANDS = -1;

/** One of the user's plans with everything that can be chosen in it. */
export interface Start {
  readonly plan: Plan;
  readonly choices: readonly Choice[];
}

/** A plan of the user's with some choices made anew. */
export interface Candidate {
  /** Position among the starts. */
  readonly start: number;
  /** For each choice of the start the alternative taken, or AS_IT_STANDS. */
  readonly taken: readonly number[];
  /** The edited plan alone in the programme, under the id and letter of the one it came from. */
  readonly programme: Programme;
  readonly plan: Plan;
  readonly changes: number;
}

export function startsOf(programme: Programme, kinds: readonly ChoiceKind[] = CHOICES): readonly Start[] {
  return programme.plans.map((plan) => ({ plan, choices: choicesOf(programme, plan, kinds) }));
}

/**
 * Makes a candidate, or null where the document check stops the plan that would come of it. Places and days in bloom are kept by the engine.
 * @param taken for each choice of the start
 */
export function candidate(programme: Programme, starts: readonly Start[], start: number, taken: readonly number[]): Candidate | null {
  const from = starts[start];
  if (!from) return null;
  const changes = taken.filter((alternative) => alternative !== AS_IT_STANDS).length;
  const made = from.choices.reduce(
    (edited, choice, c) => {
      const change = choice.alternatives[taken[c] ?? AS_IT_STANDS]?.change;
      return change ? withGeneration(edited, from.plan.id, choice.generation, change) : edited;
    },
    onlyPlan(programme, from.plan.id),
  );
  const edited = withoutIdleRescues(made, from.plan);
  const [plan] = edited.plans;
  if (!plan || (changes > 0 && checkProgramme(edited).some(({ stops }) => stops))) return null;
  return { start, taken, programme: edited, plan, changes };
}

/** A graft of weak ones where nothing weak is raised is nothing chosen: such plans are one and the same. */
function withoutIdleRescues(programme: Programme, original: Plan): Programme {
  const [plan] = programme.plans;
  if (!plan || plan === original) return programme;
  const sites = new Set(rescueSites(programme, plan).map(({ generation }) => generation.id));
  return plan.generations.reduce((edited, generation, g) => {
    const idle = generation.rescue?.who === 'weak' && generation.rescue !== original.generations[g]?.rescue && !sites.has(generation.id);
    return idle ? withGeneration(edited, plan.id, generation.id, ({ rescue: _idle, ...entry }) => entry) : edited;
  }, programme);
}

/** Equal for plans that do the same from the same start, however they were come by. */
export function keyOf({ start, plan }: Candidate): string {
  return `${String(start)} ${JSON.stringify(plan.generations)}`;
}

/** What was chosen anew, in words, generation by generation; choices that change nothing beside the others are left out. */
export function changesOf({ start, taken, plan }: Candidate, starts: readonly Start[]): readonly Changed[] {
  const from = starts[start];
  return plan.generations.map(({ id }, position) => ({
    position,
    words: (from?.choices ?? []).flatMap((choice, c) => (choice.generation === id ? (choice.alternatives[taken[c] ?? AS_IT_STANDS]?.words ?? []) : [])),
  }));
}
