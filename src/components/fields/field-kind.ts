import { z } from 'zod';
import { estimateBounds } from '../../model/estimate.ts';
import { bare } from '../../model/walk.ts';

/** What a schema node is on the screen. */
export type FieldKind = 'number' | 'whole' | 'text' | 'longText' | 'yesNo' | 'strip' | 'list' | 'reference';

/** Past this many letters a text is written in a box of several lines. */
const LONG_TEXT = 200;
/** What fits side by side beside a label; longer words are chosen from a list. */
const STRIP_ENTRIES = 3;
const STRIP_LETTERS = 32;

/** The closed list of an enum, or nothing. */
export function optionsOf(schema: z.ZodType): readonly string[] {
  const node = bare(schema).schema;
  return node instanceof z.ZodEnum ? node.options.map(String) : [];
}

/** Returns what one box, tick or choice can draw; undefined for groups, lists, tables and choices of forms. */
export function fieldKind(schema: z.ZodType, compact = false): FieldKind | undefined {
  const { schema: node, meta, optional } = bare(schema);
  if (estimateBounds.has(node)) return 'number';
  if (node instanceof z.ZodNumber) return node.format?.includes('int') ? 'whole' : 'number';
  if (node instanceof z.ZodBoolean) return 'yesNo';
  if (meta?.refersTo) return 'reference';
  if (node instanceof z.ZodString) return (node.maxLength ?? 0) > LONG_TEXT ? 'longText' : 'text';
  if (!(node instanceof z.ZodEnum)) return undefined;
  const options = optionsOf(node);
  const letters = options.map((option) => meta?.words?.[option] ?? option).join('').length;
  return !compact && !optional && options.length <= STRIP_ENTRIES && letters <= STRIP_LETTERS ? 'strip' : 'list';
}
