import { z } from 'zod';

/** How a number is shown and typed. The document always holds plain shares (0–1), months or years. */
export type Scale = 'number' | 'count' | 'share' | 'years' | 'months' | 'year' | 'hours' | 'money';

/** What a screen needs to draw a field: everything a breeder reads beside it. */
export interface FieldMeta {
  readonly label: string;
  /** Word behind the number; for a share the screen shows percent. */
  readonly unit?: string;
  readonly help?: string;
  readonly scale?: Scale;
  readonly min?: number;
  readonly max?: number;
  /** The document section whose entries this text names: drawn as a choice of them. */
  readonly refersTo?: Section;
  /** Words for the values of a closed list, in the same order of keys. */
  readonly words?: Readonly<Record<string, string>>;
}

/** Sections of the document whose entries carry ids. */
export type Section = 'facts' | 'genes' | 'traits' | 'kinds' | 'gardens' | 'trees' | 'pools' | 'crosses' | 'stocks' | 'generations' | 'routes';

/** One entry per schema node that is a field on the screen. The form generator reads it; nothing else holds labels or ranges. */
export const fieldMeta = z.registry<FieldMeta>();

/** Registers the words of a field and returns the schema itself. */
export function field<T extends z.ZodType>(schema: T, meta: FieldMeta): T {
  fieldMeta.add(schema, meta);
  return schema;
}

const range = (min: number, max: number) => ({ min, max });

/** A plain number with bounds that both the check and the screen use. */
export function number(min: number, max: number, meta: FieldMeta): z.ZodNumber {
  return field(z.number().min(min).max(max), { ...range(min, max), ...meta });
}

/** A whole number with bounds. */
export function whole(min: number, max: number, meta: FieldMeta): z.ZodNumber {
  return field(z.int().min(min).max(max), { ...range(min, max), scale: 'count', ...meta });
}

/** Ids are short, stable and never shown as names: results depend on ids, not on names or order. */
export const id = z.string().regex(/^[a-z0-9][a-z0-9-]{0,63}$/, 'must be lower-case letters, digits and hyphens, at most 64');

/** A reference to the id of an entry of a section. */
export function reference(section: Section, meta: FieldMeta): z.ZodString {
  return field(z.string().min(1).max(64), { ...meta, refersTo: section });
}

export const name = field(z.string().trim().min(1).max(80), { label: 'Name' });
export const note = field(z.string().max(2000), { label: 'Note' }).optional();
