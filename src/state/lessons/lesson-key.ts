import type { Programme } from '../../model/programme.ts';

/** What the lessons depend on: plans, titles and money leave them as they are, and so does the spring that forecasts begin from. */
export function lessonKey({ log: { batches }, crosses, kinds, stocks, weather, traits, genes, trees, pools, defaultPool, limits }: Programme): string {
  // Counts are dated by the month of bloom and that of ripe fruit.
  const { bloomMonth, ripeAfter } = limits;
  return JSON.stringify({ batches, crosses, kinds, stocks, weather, traits, genes, trees, pools, defaultPool, bloomMonth, ripeAfter });
}
