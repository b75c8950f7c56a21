import { readFileSync } from 'node:fs';
import { z } from 'zod';

/** A number, or a fraction written "9/29" where that is the exact value. */
const value = z.union([
  z.number(),
  z
    .string()
    .regex(/^\d+\/\d+$/)
    .transform((fraction) => {
      const [top, bottom] = fraction.split('/').map(Number);
      return top! / bottom!;
    }),
]);
const values = z.array(value);

const entrySchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  inputs: z.record(z.string(), z.union([value, values, z.string()])),
  expected: z.union([values, value.transform((one) => [one])]),
  /** Half a unit of the last published digit, or the rounding of the arithmetic. Left out: exact but for double rounding. */
  tolerance: z.number().positive().optional(),
  source: z.string(),
  /** Whether the source itself was read, its figure is from memory, or it was derived from a definition. */
  mark: z.enum(['seen', 'from memory', 'derived']),
  note: z.string().optional(),
});
export type Entry = z.infer<typeof entrySchema>;

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

export const published: readonly Entry[] = z.array(entrySchema).parse(JSON.parse(readFileSync(new URL('./published.json', import.meta.url), 'utf8')));

/** Integers of `from` … `to`. */
export const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

export const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
