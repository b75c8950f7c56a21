import { z } from 'zod';
import { bare, entriesFor, entrySchema, fieldsOf, isRecord, membersOf, type Path } from '../../model/walk.ts';
import { formWords } from '../../text/fields.ts';
import { hasSexes } from './relevance.ts';

/** One thing that can be chosen, and what it puts into the document. */
export interface Option {
  readonly key: string;
  readonly name: string;
  readonly value: unknown;
}

/** What a list of references can hold, and words that stand instead of the whole list. */
export interface ChoiceOptions {
  readonly list: z.ZodType;
  readonly options: readonly Option[];
  readonly instead: readonly Option[];
}

/** The reference of an object of one field, as in `{ tree }`; fathers chosen by their seedlings also say how many: `{ sires, best }`. */
function referenceOf(schema: z.ZodType): { key: string; inner: z.ZodType; more: Readonly<Record<string, unknown>> } | undefined {
  const [first, second, third] = fieldsOf(schema);
  if (!first || third || !bare(first[1]).meta?.refersTo) return undefined;
  if (second && second[0] !== 'best') return undefined;
  return { key: first[0], inner: first[1], more: second ? { best: 1 } : {} };
}

/** Entries that one place of the list can name; of several kinds, those after the first say which: “picks of Wide cross”. */
function optionsFor(entry: z.ZodType, programme: unknown, path: Path): readonly Option[] | undefined {
  const { meta } = bare(entry);
  if (meta?.refersTo) return entriesFor(programme, meta.refersTo, path).map(({ id, name }) => ({ key: id, name, value: id }));
  const members = membersOf(entry);
  const references = members.flatMap((member) => referenceOf(member) ?? []);
  if (members.length === 0 || references.length < members.length) return undefined;
  return references.flatMap(({ key, inner, more }, place) => {
    // Only males are chosen by their daughters; elsewhere it would be one more choice that nobody needs.
    if (key === 'sires' && !hasSexes(programme)) return [];
    const words = bare(inner).meta;
    const entries = words?.refersTo ? entriesFor(programme, words.refersTo, path) : [];
    const prefix = place === 0 ? '' : `${(words?.label ?? key).toLowerCase()} `;
    return entries.map(({ id, name }) => ({ key: `${key} ${id}`, name: `${prefix}${name}`, value: { [key]: id, ...more } }));
  });
}

/** Finds out whether a schema is a list of references, or one that fixed words can replace; undefined if it is neither. */
export function choiceOptions(schema: z.ZodType, programme: unknown, path: Path): ChoiceOptions | undefined {
  const members = membersOf(schema);
  const lists = members.length > 0 ? members.filter((member) => bare(member).schema instanceof z.ZodArray) : [schema];
  const literals = members.flatMap((member) => {
    const node = bare(member).schema;
    return node instanceof z.ZodLiteral ? [String(node.def.values[0])] : [];
  });
  const [list] = lists;
  if (!list || lists.length + literals.length < members.length || !(bare(list).schema instanceof z.ZodArray)) return undefined;
  const entry = entrySchema(list);
  const options = entry && optionsFor(entry, programme, path);
  const name = path.findLast((step) => typeof step === 'string') ?? '';
  return options && { list, options, instead: literals.map((word) => ({ key: `= ${word}`, name: formWords(name, word), value: word })) };
}

/** The key of the option that a value was chosen by. */
export function keyOf(value: unknown): string {
  if (typeof value === 'string') return value;
  if (!isRecord(value)) return '';
  const [[key, inner] = ['', '']] = Object.entries(value);
  return `${key} ${String(inner)}`;
}

/** True if a list may be as long as this one is: looks at the length only, not at what is in it. */
export function lengthAllowed(list: z.ZodType, length: number, entry: unknown): boolean {
  const read = list.safeParse(Array.from({ length }, () => entry));
  return read.success || !read.error.issues.some(({ code, path }) => path.length === 0 && (code === 'too_small' || code === 'too_big'));
}
