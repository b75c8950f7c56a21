import type { z } from 'zod';
import { estimateBounds } from './estimate.ts';
import { printEstimate, readEstimate } from './estimate-forms.ts';
import type { FieldMeta } from './fields.ts';
import { printNumber } from './numbers.ts';
import { programmeSchema, type Programme } from './programme.ts';
import { bare, entriesFor, isRecord, schemasAlong, valueAt, type Path } from './walk.ts';

const nowhere = (path: Path): RangeError => new RangeError(`Nothing stands at “${path.join(' / ')}”.`);

/** Copies what lies along the path, applies `change` to its end, and shares everything else. */
function along(document: unknown, path: Path, depth: number, change: (parent: unknown, key: string | number) => unknown): unknown {
  const key = path[depth];
  if (key === undefined) throw nowhere(path);
  if (depth === path.length - 1) return change(document, key);
  const before = valueAt(document, [key]);
  if (before === undefined) throw nowhere(path.slice(0, depth + 1));
  const after = along(before, path, depth + 1, change);
  return Object.is(after, before) ? document : put(document, key, after, path);
}

function put(parent: unknown, key: string | number, value: unknown, path: Path): unknown {
  if (Array.isArray(parent)) {
    const list: readonly unknown[] = parent;
    if (typeof key !== 'number' || key < 0 || key > list.length) throw nowhere(path);
    if (key === list.length) return [...list, value];
    return Object.is(list[key], value) ? parent : list.with(key, value);
  }
  if (!isRecord(parent) || typeof key !== 'string') throw nowhere(path);
  return Object.hasOwn(parent, key) && Object.is(parent[key], value) ? parent : { ...parent, [key]: value };
}

function drop(parent: unknown, key: string | number, path: Path): unknown {
  if (Array.isArray(parent)) {
    const list: readonly unknown[] = parent;
    if (typeof key !== 'number' || !(key in list)) throw nowhere(path);
    return list.toSpliced(key, 1);
  }
  if (!isRecord(parent)) throw nowhere(path);
  return Object.hasOwn(parent, key) ? Object.fromEntries(Object.entries(parent).filter(([name]) => name !== key)) : parent;
}

/**
 * Returns the document with `value` at a path. Nothing is changed in place; parts off the path are shared with the old document,
 * and an edit that changes nothing returns the old document itself. `undefined` takes the key out, as when an optional field is cleared.
 * @returns unchecked: parse it with the document's schema before it is used
 * @throws RangeError if a step before the last leads nowhere, or a place in a list lies past its end
 */
export function setAt(document: unknown, path: Path, value: unknown): unknown {
  if (path.length === 0) return value;
  if (value === undefined) return removeAt(document, path);
  return along(document, path, 0, (parent, key) => put(parent, key, value, path));
}

/**
 * Returns the document without the entry at a path; later entries of a list move up.
 * @throws RangeError if a list has no such place or a step before the last leads nowhere; an absent key is no error
 */
export function removeAt(document: unknown, path: Path): unknown {
  return along(document, path, 0, (parent, key) => drop(parent, key, path));
}

/**
 * Returns the document with `value` put into a list at the place that ends the path; later entries move down.
 * @throws RangeError if it is no list or the place lies past its end
 */
export function insertAt(document: unknown, path: Path, value: unknown): unknown {
  return along(document, path, 0, (parent, key) => {
    const list: readonly unknown[] | undefined = Array.isArray(parent) ? parent : undefined;
    if (!list || typeof key !== 'number' || key < 0 || key > list.length) throw nowhere(path);
    return list.toSpliced(key, 0, value);
  });
}

/**
 * Returns the document with one entry of the list at `path` moved from one place to another.
 * @throws RangeError if it is no list or has no such places
 */
export function moveItem(document: unknown, path: Path, from: number, to: number): unknown {
  const value = valueAt(document, path);
  const list: readonly unknown[] | undefined = Array.isArray(value) ? value : undefined;
  if (!list || !(from in list) || !(to in list)) throw nowhere([...path, from]);
  return from === to ? document : setAt(document, path, list.toSpliced(from, 1).toSpliced(to, 0, list[from]));
}

/** “keepOwnRoots” → “keep own roots”. */
const spoken = (key: string): string => key.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
const lowered = (label: string): string => (/^\p{Lu}[\p{Lu} ]/u.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1));

/** The nearest named step at or above the end of a path. */
function labelAt(path: Path, nodes: readonly z.ZodType[], words: Readonly<Record<string, string>>): { label: string; depth: number } {
  for (let depth = path.length; depth > 0; depth--) {
    const key = path[depth - 1];
    const node = nodes[depth];
    const meta = node ? bare(node).meta : undefined;
    if (meta) return { label: lowered(meta.label), depth };
    // Keys inside an estimate are nobody's words: the estimate's own label stands above them.
    const inEstimate = nodes.slice(0, depth).some((above) => estimateBounds.has(bare(above).schema));
    if (typeof key === 'string' && !inEstimate) return { label: lowered(words[key] ?? spoken(key)), depth };
  }
  return { label: 'programme', depth: 0 };
}

/** “Mill Quince, ” for a field of a named entry of a section, or of a batch of the log; generations and plans speak for themselves. */
function owner(path: Path, programme: Programme): string {
  if (path.length < 3 || path[0] === 'plans') return '';
  const entry = valueAt(programme, path.slice(0, path[0] === 'log' ? 3 : 2));
  return isRecord(entry) && typeof entry['name'] === 'string' ? `${entry['name']}, ` : '';
}

/** The value in words, without its unit; nothing if it has no short form. */
function worded(value: unknown, node: z.ZodType, meta: FieldMeta | undefined, programme: Programme, path: Path): string | undefined {
  if (value === undefined) return 'none';
  const { schema } = bare(node);
  if (estimateBounds.has(schema)) {
    const estimate = readEstimate(value);
    return estimate === undefined ? undefined : printEstimate(estimate, meta?.scale);
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return printNumber(value, meta?.scale);
  if (typeof value !== 'string' || value.length > 40) return undefined;
  if (meta?.refersTo) return entriesFor(programme, meta.refersTo, path).find((entry) => entry.id === value)?.name ?? value;
  return meta?.words?.[value] ?? `“${value}”`;
}

const nameOf = (value: unknown): string | undefined => (isRecord(value) && typeof value['name'] === 'string' ? value['name'] : undefined);

/** “3 months”, but “1 month”. */
const single = (unit: string): string => unit.replace(/ies$/, 'y').replace(/s$/, '');

/** An entry that came or went: “rescue added”, “Mill Quince removed”, “conditions: one added”. */
function comingOrGoing(label: string, path: Path, value: unknown, verb: string): string {
  const name = nameOf(value);
  if (name) return `${name} ${verb}`;
  return typeof path.at(-1) === 'number' ? `${label}: one ${verb}` : `${label} ${verb}`;
}

function listChange(label: string, before: readonly unknown[], after: readonly unknown[]): string {
  if (before.length < after.length) return `${label}: one added`;
  if (before.length > after.length) return `${label}: one removed`;
  const same = after.every((entry) => before.includes(entry));
  return `${label} ${same ? 'put in another order' : 'changed'}`;
}

/**
 * Names an edit for undo and for the action bar: “flowers each spring 40 → 60”, “fruit set 8 → 10 %”, “rescue added”.
 * @param path where the edit was made, from the top of the programme
 * @param before what stood there; undefined if nothing did
 * @param after what stands there now; undefined if it was taken out
 * @param programme the programme before or after the edit: gives names to references and chooses among forms
 * @param words names for groups that have no label of their own, by key; else the key is spelled out
 */
export function describeEdit(path: Path, before: unknown, after: unknown, programme: Programme, words: Readonly<Record<string, string>> = {}): string {
  const nodes = schemasAlong(programmeSchema, path, programme);
  const { label: name, depth } = labelAt(path, nodes, words);
  const label = owner(path, programme) + name;
  const node = nodes[path.length];
  const meta = nodes[depth] ? bare(nodes[depth]).meta : undefined;
  if (Array.isArray(before) && Array.isArray(after)) return listChange(label, before, after);
  const plain = (value: unknown): string | undefined => (node ? worded(value, node, meta, programme, path) : undefined);
  const [from, to] = [plain(before), plain(after)];
  if (from !== undefined && to !== undefined) {
    const unit = meta?.scale === 'share' ? '%' : meta?.unit;
    const tail = unit && (unit === '%' || !name.includes(unit)) ? `\u00a0${to === '1' ? single(unit) : unit}` : '';
    // “8 → 10 %”, but “8 % → 18 of 240”: a count is no percentage, and “none” has no unit.
    const bears = (value: unknown): boolean => value !== undefined && !(isRecord(value) && 'hits' in value);
    return `${label} ${from}${bears(before) && after !== undefined && !bears(after) ? tail : ''} → ${to}${bears(after) ? tail : ''}`;
  }
  if (before === undefined) return comingOrGoing(label, path, after, 'added');
  if (after === undefined) return comingOrGoing(label, path, before, 'removed');
  return `${label} changed`;
}
