import { z } from 'zod';
import known from './plan-checks.json';

const numbers = z.record(z.string(), z.number());
const entrySchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  setup: numbers,
  expected: numbers,
  /** How far the stated figure itself may be off. */
  goodTo: z.number().positive().optional(),
  /** How the figure follows from docs/model.md with everything else switched off: own derivation. */
  derivation: z.string(),
});

/** Exact answers of whole plans of one gene without weather. */
const planChecks = z.array(entrySchema).parse(known);

export const planCheckIds: readonly string[] = planChecks.map(({ id }) => id);

/** One check, read with its kind. */
export class PlanCheck {
  private readonly entry: z.infer<typeof entrySchema>;

  constructor(readonly id: string) {
    const entry = planChecks.find((one) => one.id === id);
    if (!entry) throw new Error(`There is no plan check ${id}.`);
    this.entry = entry;
  }

  get name(): string {
    return `${this.id}: ${this.entry.title}. ${this.entry.derivation} (own derivation)`;
  }

  get title(): string {
    return this.entry.title;
  }

  get derivation(): string {
    return this.entry.derivation;
  }

  get goodTo(): number {
    return this.entry.goodTo ?? 0;
  }

  setup(key: string): number {
    return z.number().parse(this.entry.setup[key], { error: () => `${this.id} has no “${key}”` });
  }

  expected(key: string): number {
    return z.number().parse(this.entry.expected[key], { error: () => `${this.id} expects no “${key}”` });
  }
}
