import type { QuestionId } from './questions.ts';

/**
 * Ids of the questions about all plans of the programme at once: the plan named only says where to begin. Each is asked once, not plan by plan.
 * Apart from the questions themselves, so that a page that asks nothing yet need not fetch their sums to know it.
 */
const OF_ALL_PLANS: ReadonlySet<string> = new Set<QuestionId>(['better']);

/** Whether a question is about all plans at once. */
export const isOfAllPlans = (id: string): boolean => OF_ALL_PLANS.has(id);
