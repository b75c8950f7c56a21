import { z } from 'zod';
import further from './further.json';
import known from './entries.json';

/** A number, or a fraction written "9/29" where that is the exact value. */
const value = z.union([
  z.number(),
  z
    .string()
    .regex(/^\d+\/\d+$/)
    .transform((fraction) => {
      const [top = NaN, bottom = NaN] = fraction.split('/').map(Number);
      return top / bottom;
    }),
]);
const values = z.array(value);

const about = {
  id: z.string().min(1),
  title: z.string().min(1),
  source: z.string().min(1),
  /** Whether the source itself was read, its figure is from memory, or it was derived from a definition. */
  mark: z.enum(['seen', 'from memory', 'derived']),
};

const publishedSchema = z.strictObject({
  ...about,
  inputs: z.record(z.string(), z.union([value, values, z.string()])),
  expected: z.union([values, value.transform((one) => [one])]),
  /** Half a unit of the last published digit, or the rounding of the arithmetic. Left out: exact but for double rounding. */
  tolerance: z.number().positive().optional(),
  note: z.string().optional(),
});
const skippedSchema = z.strictObject({ ...about, skip: z.string().min(1) });

/** A published figure that this project computes. */
export type Entry = z.infer<typeof publishedSchema>;
/** A published figure that nothing of this project computes, and why. */
export type Skipped = z.infer<typeof skippedSchema>;

/** Every known check value of the field, computed here or skipped with the reason. */
export const entries: readonly (Entry | Skipped)[] = z.array(z.union([publishedSchema, skippedSchema])).parse(known);
export const isSkipped = (entry: Entry | Skipped): entry is Skipped => 'skip' in entry;

/** The figures that are computed: those of `entries`, then tables of functions and exact answers of parts of the model. */
export const published: readonly Entry[] = [...entries.flatMap((entry) => (isSkipped(entry) ? [] : [entry])), ...z.array(publishedSchema).parse(further)];

/** Inputs of one entry, read with their kind. */
export class Inputs {
  constructor(readonly entry: Entry) {}

  number(key: string): number {
    return z.number().parse(this.entry.inputs[key], { error: () => `${this.entry.id} has no number “${key}”` });
  }

  list(key: string): number[] {
    return z.array(z.number()).parse(this.entry.inputs[key]);
  }

  text(key: string): string {
    return z.string().parse(this.entry.inputs[key]);
  }
}

/** What this project computes for an entry, in the order of its `expected`. */
export type Check = (inputs: Inputs) => number | readonly number[];
export type Checks = Readonly<Record<string, Check>>;

/** Integers of `from` … `to`. */
export const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

export const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

/** The value at a place that must be there. Throws RangeError where it is not. */
export function at<T>(list: ArrayLike<T>, place: number): T {
  const found = list[place];
  if (found === undefined) throw new RangeError(`There is nothing at place ${String(place)}.`);
  return found;
}
