import { z } from 'zod';
import { fieldMeta, type FieldMeta, type Section } from './fields.ts';

/** Where a value stands in a document: keys and places in lists, from the top. */
export type Path = readonly (string | number)[];

/** A schema node without its optional, default and prefault wrappers, and what the wrappers said. */
export interface Bare {
  readonly schema: z.ZodType;
  readonly meta: FieldMeta | undefined;
  /** May be left out altogether (and no default steps in). */
  readonly optional: boolean;
  /** What stands for it when it is left out; undefined if nothing does. */
  readonly fallback: unknown;
}

/** Zod types the inside of a wrapper by its core class; every schema of this project is of the classic one. */
function classic(inner: unknown): z.ZodType {
  if (inner instanceof z.ZodType) return inner;
  throw new TypeError('A schema of the document is not a classic Zod schema.');
}

/** True for anything with string keys that is not a list. */
export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Takes the wrappers off a schema node; the words may be registered at any layer, the outermost wins. */
export function bare(schema: z.ZodType): Bare {
  let node = schema;
  let meta = fieldMeta.get(node);
  let optional = false;
  let fallback: unknown;
  for (;;) {
    if (node instanceof z.ZodOptional) optional = true;
    else if (node instanceof z.ZodDefault || node instanceof z.ZodPrefault) fallback = fallback ?? node.def.defaultValue;
    else break;
    node = classic(node.unwrap());
    meta = meta ?? fieldMeta.get(node);
  }
  return { schema: node, meta, optional: optional && fallback === undefined, fallback };
}

/** Returns the fields of an object schema in the order in which they are written. */
export function fieldsOf(schema: z.ZodType): readonly (readonly [string, z.ZodType])[] {
  const node = bare(schema).schema;
  if (!(node instanceof z.ZodObject)) return [];
  const shape: Readonly<Record<string, unknown>> = node.shape;
  return Object.entries(shape).map(([key, inner]) => [key, classic(inner)]);
}

/** Returns the members of a union, or nothing if the schema is none. */
export function membersOf(schema: z.ZodType): readonly z.ZodType[] {
  const node = bare(schema).schema;
  return node instanceof z.ZodUnion ? node.options.map(classic) : [];
}

/** Returns the schema of the entries of a list or of a table keyed by ids. */
export function entrySchema(schema: z.ZodType): z.ZodType | undefined {
  const node = bare(schema).schema;
  if (node instanceof z.ZodArray) return classic(node.element);
  return node instanceof z.ZodRecord ? classic(node.valueType) : undefined;
}

/** Counts how far an object fits a member by its keys: a key the member does not know rules it out. */
function likeness(member: z.ZodType, value: unknown): number {
  const keys = new Map(fieldsOf(member));
  if (!isRecord(value) || keys.size === 0) return bare(member).schema instanceof z.ZodArray && Array.isArray(value) ? 1 : -1;
  let fit = 0;
  for (const [key, inner] of Object.entries(value)) {
    const field = keys.get(key);
    if (!field) return -1;
    const node = bare(field).schema;
    if (node instanceof z.ZodLiteral && !node.safeParse(inner).success) return -1;
    fit++;
  }
  return fit;
}

/**
 * Finds which member of a union a value is written in: the one it passes, else (while it is being put right) the one whose keys it has.
 * @returns the place among the members, or −1 if it is like none of them
 */
export function memberIndex(union: z.ZodType, value: unknown): number {
  const members = membersOf(union);
  const passing = members.findIndex((member) => member.safeParse(value).success);
  if (passing >= 0) return passing;
  const fits = members.map((member) => likeness(member, value));
  const best = Math.max(-1, ...fits);
  return best < 0 ? -1 : fits.indexOf(best);
}

/** One step down the schema, by a key or a place in a list. */
function child(schema: z.ZodType, key: string | number, value: unknown): z.ZodType | undefined {
  const { schema: node } = bare(schema);
  if (node instanceof z.ZodUnion) {
    const member = membersOf(node)[memberIndex(node, value)];
    return member ? child(member, key, value) : undefined;
  }
  if (node instanceof z.ZodObject) return fieldsOf(node).find(([name]) => name === key)?.[1];
  return entrySchema(node);
}

/** Reads what stands at a path; undefined if the path leads nowhere. */
export function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const key of path) {
    if (Array.isArray(value)) {
      const list: readonly unknown[] = value;
      value = typeof key === 'number' ? list[key] : undefined;
    } else value = isRecord(value) && Object.hasOwn(value, key) ? value[key] : undefined;
  }
  return value;
}

/** Returns the schema nodes along a path, the top first, as far as the path can be followed. */
export function schemasAlong(schema: z.ZodType, path: Path, value: unknown): readonly z.ZodType[] {
  const nodes = [schema];
  let node: z.ZodType | undefined = schema;
  let here = value;
  for (const key of path) {
    node = child(node, key, here);
    if (!node) break;
    nodes.push(node);
    here = valueAt(here, [key]);
  }
  return nodes;
}

/**
 * Walks a schema by a path through wrappers, unions (the member that the value is written in), tables and lists.
 * @param schema the schema of `value`
 * @param path from there
 * @param value the whole value, needed to choose among the members of unions
 * @returns the node with its wrappers on, or undefined if the path leads nowhere
 */
export function schemaAt(schema: z.ZodType, path: Path, value: unknown): z.ZodType | undefined {
  const nodes = schemasAlong(schema, path, value);
  return nodes.length === path.length + 1 ? nodes[path.length] : undefined;
}

/** Returns the words of the nearest field at or above a path: inside an estimate those of the estimate. */
export function metaAt(schema: z.ZodType, path: Path, value: unknown): FieldMeta | undefined {
  const metas = schemasAlong(schema, path, value).map((node) => bare(node).meta);
  return metas.findLast((meta) => meta !== undefined);
}

/** An entry that a reference can name. */
export interface Entry {
  readonly id: string;
  readonly name: string;
}

const isEntry = (value: unknown): value is Entry => isRecord(value) && typeof value['id'] === 'string' && typeof value['name'] === 'string';
const entriesIn = (list: unknown): readonly Entry[] => (Array.isArray(list) ? list.filter(isEntry) : []);

/** “D: Wide cross, grafted”. */
function generationsOfAll(programme: unknown): readonly Entry[] {
  const plans = valueAt(programme, ['plans']);
  return (Array.isArray(plans) ? plans : []).flatMap((plan: unknown) =>
    entriesIn(valueAt(plan, ['generations'])).map(({ id, name }) => ({ id, name: `${String(valueAt(plan, ['mark']))}: ${name}` })),
  );
}

/**
 * Lists what a reference at a path can name. Generations are those of the same plan, before the one the path lies in, and from outside of the
 * plans those of all plans, each with its plan's mark; routes are those of every cross, because a generation may leave its cross to be found.
 */
export function entriesFor(programme: unknown, section: Section, path: Path): readonly Entry[] {
  if (section === 'generations') {
    const [top, plan = -1, , generation] = path;
    if (top !== 'plans') return generationsOfAll(programme);
    const all = entriesIn(valueAt(programme, ['plans', plan, 'generations']));
    return typeof generation === 'number' ? all.slice(0, generation) : all;
  }
  if (section === 'routes') {
    const crosses = valueAt(programme, ['crosses']);
    return Array.isArray(crosses) ? crosses.flatMap((cross: unknown) => entriesIn(valueAt(cross, ['routes']))) : [];
  }
  return entriesIn(valueAt(programme, [section]));
}
