import type { z } from 'zod';
import type { VERSION } from '../programme.ts';
import { from1to2 } from './1-to-2.ts';
import { from2to3 } from './2-to-3.ts';
import { from3to4 } from './3-to-4.ts';
import type { AnyStep, Before, Plain, Step } from './step.ts';

/** One step for each version before ours: whoever raises VERSION is stopped here by the compiler until the step is written. */
const steps: { readonly [From in Before<typeof VERSION>]: Step<From> } = { 1: from1to2, 2: from2to3, 3: from3to4 };

/** The same as a list, from the oldest up. */
export const STEPS: readonly AnyStep[] = Object.values(steps).sort((a, b) => a.from - b.from);

/** A document one version further up than it was, or what the schema of its own version complains of. */
export type Climb = { readonly ok: true; readonly document: Plain } | { readonly ok: false; readonly error: z.ZodError };

/**
 * Brings a document of an old version up to ours, one step at a time; each step first checks it with the schema of its version.
 * A document that has no old version comes back as it is, the same object.
 */
export function climb(document: Plain): Climb {
  let here = document;
  for (const step of STEPS) {
    if (here['version'] !== step.from) continue;
    const was = step.was().safeParse(here);
    if (!was.success) return { ok: false, error: was.error };
    here = step.up(here);
  }
  return { ok: true, document: here };
}
