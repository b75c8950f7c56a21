import type { Programme } from '../../model/programme.ts';

/** What the lessons depend on: plans, titles and money leave them as they are. */
export function lessonKey({ log, crosses, kinds, stocks, weather, traits, genes, trees, pools }: Programme): string {
  return JSON.stringify({ log, crosses, kinds, stocks, weather, traits, genes, trees, pools });
}
