import type { Generation, Plan } from '../../model/programme.ts';

/** One other way of doing it. */
export interface Alternative {
  readonly words: string;
  /** Pure; returns the generation itself where it changes nothing. */
  readonly change: (generation: Generation) => Generation;
}

/** What the breeder's other crosses take, where a generation crosses nothing as it stands. */
export function firstFlowers(plans: readonly Plan[]): number {
  return plans.flatMap(({ generations }) => generations.flatMap(({ pollen, flowers }) => (Array.isArray(pollen) && flowers > 0 ? flowers : [])))[0] ?? 40;
}
