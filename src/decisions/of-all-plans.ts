import type { QuestionId } from './questions.ts';

/**
 * What questions ask of the other plans of the programme. Apart from the questions themselves, so that a page that asks nothing yet need not
 * fetch their sums to know it.
 */

/** About all plans at once: the plan named only says where to begin. Each is asked once, not plan by plan. */
const OF_ALL_PLANS: ReadonlySet<string> = new Set<QuestionId>(['better']);

/** About one plan, beside which the others are looked at: which change places with it, whether one of them states how a leaf test errs. */
const BESIDE_ALL_PLANS: ReadonlySet<string> = new Set<QuestionId>(['unknowns', 'ifs']);

/** Whether a question is about all plans at once. */
export const isOfAllPlans = (id: string): boolean => OF_ALL_PLANS.has(id);

/** Whether a change of any plan can change the answer. */
export const looksAtAllPlans = (id: string): boolean => OF_ALL_PLANS.has(id) || BESIDE_ALL_PLANS.has(id);
