import { z } from 'zod';
import { field, type FieldMeta } from './fields.ts';

/**
 * Where a number comes from. The badge beside the field shows the kind, the note says the rest. “remembered”: from memory, not
 * looked up. How sure its writer is changes no future: a doubtful number is given as a wide range.
 */
export const sourceSchema = z.strictObject({
  kind: z.enum(['counted', 'published', 'practice', 'remembered', 'guess', 'invented']),
  note: z.string().max(500).default(''),
  confidence: z.enum(['high', 'middling', 'low']).optional(),
});
export type Source = z.infer<typeof sourceSchema>;

const finite = z.number();
const source = sourceSchema.optional();

/** Taken as known. */
const known = z.strictObject({ value: finite, source });
/** Low, likely, high: a PERT beta. */
const ranged = z.strictObject({ low: finite, likely: finite, high: finite, source });
/** So many of so many, counted in so many spring × pair lots, in the unit it was made in. */
const counted = z.strictObject({
  hits: z.number().min(0),
  of: z.number().positive(),
  lots: z.int().min(1).default(1),
  unit: z.strictObject({ name: z.string().trim().min(1).max(40), flowers: z.int().min(1).max(1000) }).optional(),
  source,
});
/** Alternatives with weights. */
const alternatives = z.strictObject({
  oneOf: z
    .array(z.strictObject({ value: finite, weight: z.number().positive() }))
    .min(2)
    .max(12),
  source,
});

const estimateShape = z.union([finite, known, ranged, counted, alternatives]);
export type Estimate = z.infer<typeof estimateShape>;
export type Ranged = z.infer<typeof ranged>;
export type Counted = z.infer<typeof counted>;

export type EstimateForm = 'known' | 'ranged' | 'counted' | 'alternatives';

export interface EstimateBounds {
  readonly min: number;
  readonly max: number;
  /** A count ("18 of 240") only makes sense for a share. */
  readonly forms: readonly EstimateForm[];
}

/** Bounds and allowed forms by schema node, for the check and for the estimate editor. */
export const estimateBounds = new WeakMap<z.ZodType, EstimateBounds>();

/** Which of the four forms an estimate is written in. */
export function formOf(estimate: Estimate): EstimateForm {
  if (typeof estimate === 'number' || 'value' in estimate) return 'known';
  if ('low' in estimate) return 'ranged';
  return 'hits' in estimate ? 'counted' : 'alternatives';
}

function complaints(estimate: Estimate, { min, max, forms }: EstimateBounds): { path: string[]; message: string }[] {
  const inside = (key: string[], value: number) =>
    value < min || value > max ? [{ path: key, message: `must lie between ${String(min)} and ${String(max)}` }] : [];
  if (!forms.includes(formOf(estimate))) return [{ path: [], message: 'cannot be a count here: give one number, or low, likely and high' }];
  if (typeof estimate === 'number') return inside([], estimate);
  if ('value' in estimate) return inside(['value'], estimate.value);
  if ('low' in estimate) {
    const bad = [...inside(['low'], estimate.low), ...inside(['high'], estimate.high)];
    if (estimate.low > estimate.likely) bad.push({ path: ['likely'], message: '“likely” must not be below “low”' });
    if (estimate.likely > estimate.high) bad.push({ path: ['high'], message: '“high” must not be below “likely”' });
    return bad;
  }
  if ('hits' in estimate) return estimate.hits > estimate.of ? [{ path: ['hits'], message: 'cannot be more than what it is counted out of' }] : [];
  return estimate.oneOf.flatMap((option, i) => inside(['oneOf', String(i), 'value'], option.value));
}

/**
 * An estimate field: a number, a range, a count (shares only) or weighted alternatives.
 * Bounds hold for every number in it; ranges must be in order.
 */
export function estimate(min: number, max: number, meta: FieldMeta): z.ZodType<Estimate> {
  const forms: EstimateForm[] = meta.scale === 'share' ? ['known', 'ranged', 'counted', 'alternatives'] : ['known', 'ranged', 'alternatives'];
  const bounds = { min, max, forms };
  const schema = estimateShape.superRefine((value, context) => {
    for (const { path, message } of complaints(value, bounds)) context.addIssue({ code: 'custom', path, message });
  });
  estimateBounds.set(schema, bounds);
  return field(schema, { ...meta, min, max });
}

/** A share between 0 and 1, shown as percent. */
export const share = (meta: FieldMeta): z.ZodType<Estimate> => estimate(0, 1, { ...meta, scale: 'share' });
