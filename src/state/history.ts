import { z } from 'zod';
import { applyDelta, deltaBetween, deltaSchema, type Delta } from './delta.ts';

/** One state of the document, and the edit that led from it, or to it, in words. */
export interface Step {
  /** A programme. From this page it is checked already; out of storage it is checked when it is gone back to. */
  readonly document: unknown;
  readonly label: string;
  /** The same as undo says it, from where this step began, and with its place: “flowers each spring 130 → 140 (plan B)”. */
  readonly named: string;
  /** Edits of one field in one go carry the same key and are one step. */
  readonly field: string;
}

/** Earlier states, the latest last, and states that were undone, the next one first. */
export interface History {
  readonly undo: readonly Step[];
  readonly redo: readonly Step[];
}

export const NO_HISTORY: History = { undo: [], redo: [] };

const packedSteps = z.array(z.object({ label: z.string(), delta: deltaSchema }));
const packedSchema = z.object({ undo: packedSteps, redo: packedSteps });

/** Documents never change, so what parts two of them is worked out once. */
const known = new WeakMap<object, { readonly to: unknown; readonly delta: Delta }>();

function deltaOf(from: unknown, to: unknown): Delta {
  if (typeof from !== 'object' || from === null) return deltaBetween(from, to);
  const found = known.get(from);
  if (found && found.to === to) return found.delta;
  const delta = deltaBetween(from, to);
  known.set(from, { to, delta });
  return delta;
}

/** Each step as what parts it from the one nearer to now. */
function packed(now: unknown, steps: readonly Step[]): z.infer<typeof packedSteps> {
  let nearer = now;
  return steps.map(({ document, named }) => {
    const delta = deltaOf(nearer, document);
    nearer = document;
    return { label: named, delta: delta.map(({ path, value }) => ({ path: [...path], value })) };
  });
}

/** History as text to be kept beside the document `now`. Empty when there is none. */
export function packHistory(now: unknown, { undo, redo }: History): string {
  if (undo.length + redo.length === 0) return '';
  return JSON.stringify({ undo: packed(now, undo.toReversed()), redo: packed(now, redo) });
}

function unpacked(now: unknown, steps: z.infer<typeof packedSteps>): readonly Step[] {
  let nearer = now;
  return steps.map(({ label, delta }) => {
    nearer = applyDelta(nearer, delta);
    return { document: nearer, label, named: label, field: '' };
  });
}

/** Reads a kept history; null when it cannot be read or does not belong to the document. */
export function unpackHistory(now: unknown, text: string): History | null {
  if (text === '') return NO_HISTORY;
  try {
    const read = packedSchema.safeParse(JSON.parse(text));
    if (!read.success) return null;
    return { undo: unpacked(now, read.data.undo).toReversed(), redo: unpacked(now, read.data.redo) };
  } catch {
    return null;
  }
}
