import type { z } from 'zod';
import type { Estimate, Source } from '../model/estimate.ts';
import { estimateBounds } from '../model/estimate.ts';
import { printEstimate, readEstimate, sourceOf } from '../model/estimate-forms.ts';
import { bare, fieldsOf, isRecord, metaAt, schemaAt, type Path } from '../model/walk.ts';

/** One figure of an entry as it is read: “Fruit set”, “10–20–40 %”, and where it is from. */
export interface Figure {
  readonly label: string;
  readonly text: string;
  readonly source: Source;
}

const NB = '\u00a0';
function printed(estimate: Estimate, schema: z.ZodType, path: Path, entry: unknown): string {
  const meta = metaAt(schema, path, entry);
  const isCount = typeof estimate === 'object' && 'hits' in estimate;
  const unit = meta?.scale === 'share' ? '%' : (meta?.unit ?? '');
  return `${printEstimate(estimate, meta?.scale)}${isCount || unit === '' ? '' : `${NB}${unit}`}`;
}

/**
 * Lists the figures of an entry that say where they are from, in the order of the form. Plain numbers are left out.
 * @param schema of the entry
 */
export function figuresOf(schema: z.ZodType, entry: unknown, path: Path = [], here: unknown = entry): readonly Figure[] {
  const node = schemaAt(schema, path, entry);
  if (node && estimateBounds.has(bare(node).schema)) {
    const estimate = readEstimate(here);
    const source = estimate === undefined ? undefined : sourceOf(estimate);
    if (estimate === undefined || source === undefined) return [];
    return [{ label: metaAt(schema, path, entry)?.label ?? '', text: printed(estimate, schema, path, entry), source }];
  }
  if (Array.isArray(here)) return here.flatMap((each: unknown, place) => figuresOf(schema, entry, [...path, place], each));
  if (!isRecord(here)) return [];
  const order = node ? fieldsOf(node).map(([key]) => key) : [];
  const place = (key: string): number => order.indexOf(key);
  return Object.entries(here)
    .sort(([a], [b]) => place(a) - place(b))
    .flatMap(([key, each]) => figuresOf(schema, entry, [...path, key], each));
}
