import { atLeast } from '../../../../src/statistics/binomial.ts';
import { at } from '../entries.ts';
import { normalCdf, normalQuantile } from '../../../../src/statistics/normal.ts';

export interface Judging {
  /** Share of seedlings with the right genes. */
  readonly share: number;
  readonly canShow: number;
  readonly seasonsShown: number;
  readonly falseShow: number;
  readonly sharedSeason: number;
  readonly judged: number;
  readonly needed: number;
}

const STEP = 0.2;
const SEASONS = Array.from({ length: 81 }, (_, i) => (i - 40) * STEP);
const WEIGHTS = SEASONS.map((z) => (STEP * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI));

/** P(at least `needed` of the seasons show), each with its own chance. */
function atLeastOf(chances: readonly number[], needed: number): number {
  let showing = [1];
  for (const p of chances) showing = [...showing, 0].map((stay, k) => stay * (1 - p) + (showing[k - 1] ?? 0) * p);
  return showing.slice(needed).reduce((sum, p) => sum + p, 0);
}

/**
 * Chance that at least one of n seedlings is kept when good and bad seasons are partly common to all trees.
 * Trapezoid over each common season (docs/model.md §9), exact to about 1e-9 for a smooth integrand on ±8 standard deviations.
 * **Source:** own derivation.
 */
export function chanceOneKept({ share, canShow, seasonsShown, falseShow, sharedSeason, judged, needed }: Judging, n: number): number {
  const able = share * canShow;
  const wrong = (1 - able) * atLeast(needed, judged, falseShow);
  const chances = SEASONS.map((z) => normalCdf((normalQuantile(seasonsShown) + Math.sqrt(sharedSeason) * z) / Math.sqrt(1 - sharedSeason)));
  const over = (seasons: readonly number[], weight: number): number =>
    seasons.length === judged
      ? weight * (1 - (1 - able * atLeastOf(seasons, needed) - wrong) ** n)
      : chances.reduce((sum, chance, i) => sum + (at(WEIGHTS, i) < 1e-12 ? 0 : over([...seasons, chance], weight * at(WEIGHTS, i))), 0);
  return over([], 1);
}
