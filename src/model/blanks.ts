import { z } from 'zod';
import { estimateBounds } from './estimate.ts';
import { id as idSchema, type FieldMeta, type Scale, type Section } from './fields.ts';
import { bare, entriesFor, entrySchema, fieldsOf, isRecord, membersOf, valueAt, type Path } from './walk.ts';

/** A first value for something added, or the section that must have an entry before it can be added. */
export type Blank = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly needs: Section };

/** Where a breeder would start, by “group.key”: a first value that does nothing, or is the lowest allowed, helps nobody. */
const STARTS: Readonly<Record<string, unknown>> = {
  'rescue.who': 'weak',
  'rescue.month': 6,
  'background.trees': 10,
  'background.weight': 1,
  'trees.weight': 1,
  'grade.mean': 0.5,
  'grade.sd': 0.2,
  'grade.fruitsCut': 5,
  'conditions.atLeast': 1,
  'seen.showed': 1,
  'seen.seasons': 2,
  'gardens.yearlyLoss': { low: 0.002, likely: 0.01, high: 0.03, source: { kind: 'guess', note: '' } },
};

/** By scale, before it is brought within the bounds. */
const BY_SCALE: Readonly<Record<Scale, number>> = { number: 1, count: 1, share: 0.5, years: 5, months: 6, year: 2030, hours: 0, money: 0 };
const CANDIDATE_IDS = 10_000;

const within = (value: number, { min = -Infinity, max = Infinity }: Partial<FieldMeta>): number => Math.min(max, Math.max(min, value));

/** Returns the first “new-1”, “new-2” … that no entry of the list it will stand in has. */
function newId(programme: unknown, path: Path): string {
  const list = valueAt(
    programme,
    path.slice(
      0,
      path.findLastIndex((key) => typeof key === 'number'),
    ),
  );
  const taken = new Set(Array.isArray(list) ? list.map((entry: unknown) => (isRecord(entry) ? entry['id'] : undefined)) : []);
  for (let n = 1; n < CANDIDATE_IDS; n++) if (!taken.has(`new-${String(n)}`)) return `new-${String(n)}`;
  throw new RangeError('A list of ten thousand new entries has no room for one more.');
}

/** A rate nobody has given yet is a guess, wide and marked as one. */
function blankEstimate(meta: FieldMeta | undefined, start: unknown): unknown {
  if (start !== undefined) return start;
  if (meta?.scale === 'share') return { low: 0.25, likely: 0.5, high: 0.75, source: { kind: 'guess', note: '' } };
  return within(BY_SCALE[meta?.scale ?? 'number'], meta ?? {});
}

function blankFields(schema: z.ZodType, programme: unknown, path: Path): Blank {
  const entries: [string, unknown][] = [];
  for (const [key, inner] of fieldsOf(schema)) {
    const { optional, fallback } = bare(inner);
    const start = STARTS[startKey([...path, key])];
    if (fallback !== undefined || (optional && start === undefined)) continue;
    const blank = blankOf(inner, programme, [...path, key]);
    if (!blank.ok) return blank;
    entries.push([key, blank.value]);
  }
  return { ok: true, value: Object.fromEntries(entries) };
}

const startKey = (path: Path): string =>
  path
    .filter((key) => typeof key === 'string')
    .slice(-2)
    .join('.');

/** A leaf: words, a choice, a number. */
function blankLeaf(node: z.ZodType, meta: FieldMeta | undefined, start: unknown, programme: unknown, path: Path): Blank {
  if (meta?.refersTo) {
    const [first] = entriesFor(programme, meta.refersTo, path);
    return first ? { ok: true, value: first.id } : { ok: false, needs: meta.refersTo };
  }
  if (node === idSchema) return { ok: true, value: newId(programme, path) };
  if (start !== undefined) return { ok: true, value: start };
  if (node instanceof z.ZodLiteral) return { ok: true, value: node.def.values[0] };
  if (node instanceof z.ZodEnum) return { ok: true, value: node.options[0] };
  if (node instanceof z.ZodBoolean) return { ok: true, value: false };
  if (node instanceof z.ZodNumber) return { ok: true, value: within(BY_SCALE[meta?.scale ?? 'number'], meta ?? {}) };
  return { ok: true, value: meta?.label === 'Name' ? 'New' : '–' };
}

/**
 * Makes a first value for an entry, a group or a form that is being added: defaults are left to the schema, what may be absent
 * stays absent, references name the first entry there is, rates are wide guesses.
 * @param schema of what is added
 * @param programme gives entries to references, and the ids that are taken
 * @param path where it will stand
 */
export function blankOf(schema: z.ZodType, programme: unknown, path: Path): Blank {
  const { schema: node, meta } = bare(schema);
  const start = STARTS[startKey(path)];
  if (estimateBounds.has(node)) return { ok: true, value: blankEstimate(meta, start) };
  if (node instanceof z.ZodUnion) {
    const tries = membersOf(node).map((member) => blankOf(member, programme, path));
    return tries.find((blank) => blank.ok) ?? tries[0] ?? { ok: true, value: undefined };
  }
  if (node instanceof z.ZodObject) return blankFields(node, programme, path);
  if (node instanceof z.ZodRecord) return { ok: true, value: {} };
  if (node instanceof z.ZodArray) {
    const entry = entrySchema(node);
    if (!entry || node.safeParse([]).success) return { ok: true, value: [] };
    const blank = blankOf(entry, programme, [...path, 0]);
    return blank.ok ? { ok: true, value: [blank.value] } : blank;
  }
  return blankLeaf(node, meta, start, programme, path);
}

/** The same, with the defaults of the schema filled in: what an edit puts into the document. */
export function filledBlank(schema: z.ZodType, programme: unknown, path: Path): Blank {
  const blank = blankOf(schema, programme, path);
  if (!blank.ok) return blank;
  const full = schema.safeParse(blank.value);
  return full.success ? { ok: true, value: full.data } : blank;
}
