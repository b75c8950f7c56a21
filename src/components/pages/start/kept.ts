import { z } from 'zod';
import { draftSchema, EMPTY, type Draft } from '../../../start/answers.ts';
import { QUESTIONS } from '../../../start/problems.ts';

const KEY = 'oo-start';
const keptSchema = z.strictObject({
  step: z
    .int()
    .min(0)
    .max(QUESTIONS.length - 1),
  draft: draftSchema,
});

export interface Kept {
  readonly step: number;
  readonly draft: Draft;
}

/** The answers of this window, or none: what cannot be read any more is left alone and asked again. */
export function loadAnswers(): Kept {
  const nothing = { step: 0, draft: EMPTY };
  try {
    const text = sessionStorage.getItem(KEY);
    const read = text === null ? undefined : keptSchema.safeParse(JSON.parse(text));
    return read?.success === true ? read.data : nothing;
  } catch {
    // A window that stores nothing, or a text that is none of ours.
    return nothing;
  }
}

/** Keeps the answers over a reload. Where the window stores nothing, they live as long as the page does. */
export function keepAnswers(kept: Kept): void {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    /* Nothing can be done, and nothing is lost yet. */
  }
}
