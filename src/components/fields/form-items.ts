import { z } from 'zod';
import { filledBlank, type Blank } from '../../model/blanks.ts';
import { estimateBounds } from '../../model/estimate.ts';
import { id as idSchema } from '../../model/fields.ts';
import { bare, entrySchema, fieldsOf, isRecord, memberIndex, membersOf, valueAt, type Path } from '../../model/walk.ts';
import { fieldText, formWords, groupWords, type GroupWords } from '../../text/fields.ts';
import { choiceOptions, lengthAllowed } from './choice-options.ts';
import { fieldKind } from './field-kind.ts';
import { tableRows } from './form-tables.ts';
import { narrowed } from './narrowed.ts';
import { isIrrelevant } from './relevance.ts';

interface Placed {
  readonly path: Path;
  readonly label: string;
  readonly help: string;
}
interface Drawn extends Placed {
  readonly schema: z.ZodType;
  readonly value: unknown;
}

/** One form of several that a thing can be given in. */
interface FormOption {
  readonly words: string;
  readonly blank: Blank;
}

/** What a form draws, one below the other; computed from schema and value alone. */
export type FormItem =
  | (Drawn & { readonly kind: 'field' })
  | (Drawn & { readonly kind: 'estimate'; readonly removable: boolean })
  | (Drawn & { readonly kind: 'choices'; readonly add: string })
  /** Small fields side by side under their names. */
  | (Placed & { readonly kind: 'line'; readonly items: readonly FormItem[]; readonly canSpread: boolean })
  | (Placed & { readonly kind: 'group'; readonly items: readonly FormItem[]; readonly removable: boolean })
  | (Placed & { readonly kind: 'absent'; readonly blank: Blank })
  | (Placed & {
      readonly kind: 'forms';
      readonly options: readonly FormOption[];
      readonly chosen: number;
      readonly items: readonly FormItem[];
      readonly removable: boolean;
    })
  | (Placed & { readonly kind: 'list'; readonly entries: readonly ListEntry[]; readonly add: string; readonly blank: Blank | undefined })
  | (Placed & { readonly kind: 'table'; readonly items: readonly FormItem[] });

export interface ListEntry extends Placed {
  readonly items: readonly FormItem[];
  readonly removable: boolean;
}

/** What the items depend on besides schema and value. */
export interface FormContext {
  readonly programme: unknown;
  /** Paths of lines whose numbers are to be given as ranges, one below the other. */
  readonly spread: ReadonlySet<string>;
}

/** Words given from outside for one item. */
export interface ItemWords {
  readonly label?: string | undefined;
  readonly help?: string | undefined;
  /** Key of the words for its forms, where the last key of the path is an id. */
  readonly formsKey?: string | undefined;
}

export const pathKey = (path: Path): string => path.join('/');
const keysOf = (path: Path): string[] => path.filter((key) => typeof key === 'string');
const spoken = (key: string): string => key.charAt(0).toUpperCase() + key.slice(1).replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

function wordsAt(path: Path): GroupWords {
  return groupWords(keysOf(path)) ?? { label: spoken(String(path.at(-1))) };
}

/** Draws the fields of an object in the order of its schema; ids, marks and the words that tell its form are not fields. Of several forms, those of the one it is in. */
export function itemsOf(schema: z.ZodType, value: unknown, path: Path, context: FormContext): readonly FormItem[] {
  const form = membersOf(schema)[memberIndex(schema, value)] ?? schema;
  return fieldsOf(form).flatMap(([key, inner]) => itemAt(inner, valueAt(value, [key]), [...path, key], context, {}, value) ?? []);
}

/**
 * Draws what stands at a path as one item.
 * @param parent the object it stands in, which can make it irrelevant
 * @returns nothing for what is no field on the screen
 */
export function itemAt(whole: z.ZodType, value: unknown, path: Path, context: FormContext, words: ItemWords, parent?: unknown): FormItem | undefined {
  const schema = narrowed(whole, path, context.programme);
  const { schema: node, meta, optional, fallback } = bare(schema);
  if (node === idSchema || node instanceof z.ZodLiteral || isIrrelevant(path, parent, context.programme)) return undefined;
  const group = wordsAt(path);
  const label = words.label ?? meta?.label ?? group.label;
  const help = words.help ?? meta?.help ?? group.help ?? '';
  const placed = { path, label, help };
  const drawn = { ...placed, schema, value };
  const there = value ?? fallback;
  if (estimateBounds.has(node))
    return there === undefined ? absent(schema, path, fieldText.state(label), context, optional) : { ...drawn, kind: 'estimate', removable: optional };
  if (choiceOptions(schema, context.programme, path)) return { ...drawn, value: there, kind: 'choices', add: group.add ?? '' };
  if (fieldKind(schema)) return isHiddenText(node, meta === undefined) ? undefined : { ...drawn, kind: 'field' };
  if (there === undefined) return absent(schema, path, group.add ?? label, context, optional);
  if (node instanceof z.ZodUnion) return formsItem(node, there, placed, optional, context, words.formsKey);
  if (node instanceof z.ZodObject) return { ...placed, kind: 'group', items: itemsOf(node, there, path, context), removable: optional };
  if (node instanceof z.ZodArray) return listItem(node, there, placed, group, context);
  if (!(node instanceof z.ZodRecord)) return undefined;
  const items = tableItems(node, there, path, context);
  return items.length === 0 ? undefined : { ...placed, kind: 'table', items };
}

/** A text without words of its own is not for the screen: format, mark, version. */
const isHiddenText = (node: z.ZodType, wordless: boolean): boolean =>
  wordless && (node instanceof z.ZodEnum || node instanceof z.ZodBoolean || node instanceof z.ZodString);

/** Room for a group, or a row, that may be put in. */
function absent(schema: z.ZodType, path: Path, label: string, context: FormContext, optional: boolean): FormItem | undefined {
  return optional ? { kind: 'absent', path, label, help: '', blank: filledBlank(schema, context.programme, path) } : undefined;
}

/** The name of a form: its type, or its first key. */
export function formKey(member: z.ZodType): string {
  const [[key, inner] = ['', undefined]] = fieldsOf(member);
  const node = inner && bare(inner).schema;
  const value = node instanceof z.ZodLiteral ? node.def.values[0] : undefined;
  return typeof value === 'string' ? value : key;
}

/** One of several forms: a choice of them, then the fields of the one it is in. */
function formsItem(union: z.ZodType, value: unknown, placed: Placed, removable: boolean, context: FormContext, wordsKey?: string): FormItem {
  const members = membersOf(union);
  const chosen = memberIndex(union, value);
  const key = wordsKey ?? keysOf(placed.path).at(-1) ?? '';
  const options = members.map((member) => ({ words: formWords(key, formKey(member)), blank: filledBlank(member, context.programme, placed.path) }));
  const member = members[chosen];
  const items = member ? itemsOf(member, value, placed.path, context) : [];
  return { ...placed, kind: 'forms', options, chosen, items: inLine(items, placed.path, context), removable };
}

const PLAIN = new Set(['number', 'whole', 'reference', 'list', 'strip']);
const LINE_FIELDS = 5;

/** Small fields fit side by side; so do estimates while each of them is one bare number. */
function inLine(items: readonly FormItem[], path: Path, context: FormContext): readonly FormItem[] {
  const small = (item: FormItem): boolean =>
    (item.kind === 'field' && PLAIN.has(fieldKind(item.schema) ?? '')) || (item.kind === 'estimate' && typeof item.value === 'number');
  const canSpread = items.every((item) => item.kind === 'estimate');
  if (items.length < 2 || items.length > LINE_FIELDS || !items.every(small) || context.spread.has(pathKey(path))) return items;
  return [{ kind: 'line', path, label: '', help: '', items: items.map((item) => (item.kind === 'estimate' ? { ...item, kind: 'field' } : item)), canSpread }];
}

function listItem(node: z.ZodType, value: unknown, placed: Placed, group: GroupWords, context: FormContext): FormItem | undefined {
  const entry = entrySchema(node);
  if (!entry) return undefined;
  const list: readonly unknown[] = Array.isArray(value) ? value : [];
  const removable = lengthAllowed(node, list.length - 1, undefined);
  const entries = list.map((each, place): ListEntry => {
    const path = [...placed.path, place];
    const label = fieldText.place(group.entry ?? placed.label, place + 1);
    const name = isRecord(each) && typeof each['name'] === 'string' ? each['name'] : label;
    return { path, label: name, help: '', items: entryItems(entry, each, path, context), removable };
  });
  const blank = lengthAllowed(node, list.length + 1, undefined) ? filledBlank(entry, context.programme, [...placed.path, list.length]) : undefined;
  return { ...placed, kind: 'list', entries, add: group.add ?? fieldText.addOne, blank };
}

function entryItems(entry: z.ZodType, value: unknown, path: Path, context: FormContext): readonly FormItem[] {
  const { schema: node } = bare(entry);
  if (node instanceof z.ZodUnion) return [formsItem(node, value, { path, label: '', help: '' }, false, context)];
  if (node instanceof z.ZodObject) return inLine(itemsOf(node, value, path, context), path, context);
  const item = itemAt(entry, value, path, context, {});
  return item ? [item] : [];
}

/** A row of a table may always be taken out; the wrapper is made once per schema, so that fields see the same schema again. */
const asOptional = new WeakMap<z.ZodType, z.ZodType>();
function optionalOf(schema: z.ZodType): z.ZodType {
  const made = asOptional.get(schema) ?? schema.optional();
  asOptional.set(schema, made);
  return made;
}

/** One item per gene or trait: what is stated of it, or a button to state it. */
function tableItems(record: z.ZodType, table: unknown, path: Path, context: FormContext): readonly FormItem[] {
  const inner = entrySchema(record);
  const formsKey = keysOf(path).at(-1) ?? '';
  if (!inner) return [];
  return tableRows(formsKey, table, context.programme).flatMap(({ id, name }): FormItem[] => {
    const value = valueAt(table, [id]);
    const at = [...path, id];
    const item =
      value === undefined ? absent(inner, at, fieldText.state(name), context, true) : itemAt(optionalOf(inner), value, at, context, { label: name, formsKey });
    return item ? [item] : [];
  });
}
