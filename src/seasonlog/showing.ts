import type { Estimate } from '../model/estimate.ts';
import type { ShownTrait } from '../model/programme.ts';
import { learnShare } from '../statistics/between-springs.ts';
import { normalCdf, normalQuantile } from '../statistics/normal.ts';
import { shareDensity } from './priors.ts';

/** One way in which a trait may show, and how far it is believed before families are looked at. */
export interface Showing {
  readonly weight: number;
  readonly canShow: number;
  readonly seasons: number;
  readonly falseShow: number;
  /** What the programme's share of stray seedlings is multiplied with. */
  readonly strayTimes: number;
}

/** Belief that the share of trees able to show it is not what the programme states, but anything. Own choice. */
const UNKNOWN_ABLE = 0.2;
/** A record may be a slip of the pen: no season is certain to show, or not to. Own choice. */
const SLIP = 0.001;
/** Equal parts of a spread. */
const THIRDS = [1 / 6, 1 / 2, 5 / 6];
/** Twentieths: finer than a family of a hundred trees can tell. */
const ANY_SHARE = Array.from({ length: 20 }, (_, i) => (i + 0.5) / 20);
/** Nodes and weights of a standard normal. **Source:** Gauss–Hermite, five points, Abramowitz & Stegun (1964) 25.4.46 with table 25.10 (from memory). */
const NORMAL_NODES: readonly (readonly [number, number])[] = [
  [-2.8569700138728, 0.011257411327721],
  [-1.3556261799743, 0.22207592200561],
  [0, 0.53333333333333],
  [1.3556261799743, 0.22207592200561],
  [2.8569700138728, 0.011257411327721],
];

interface Node {
  readonly value: number;
  readonly weight: number;
}

/** A share of 0 or 1 given as one number is taken as known; anything else by its spread. */
function nodesOf(estimate: Estimate): Node[] {
  const number = typeof estimate === 'number' ? estimate : 'value' in estimate ? estimate.value : undefined;
  if (number === 0 || number === 1) return [{ value: number, weight: 1 }];
  const { quantile } = learnShare([], shareDensity(estimate), null);
  return THIRDS.map((u) => ({ value: quantile(u), weight: 1 / THIRDS.length }));
}

/**
 * Rates a season as good or bad years for all trees leave them: over the years that were looked at, the luck common to all trees averages
 * out as 1 in the root of their number.
 */
function withYears(nodes: readonly Node[], shared: number, years: number): Node[] {
  const part = years > 0 ? shared / years : 0;
  if (part === 0) return [...nodes];
  return nodes.flatMap(({ value, weight }) =>
    value <= 0 || value >= 1
      ? [{ value, weight }]
      : NORMAL_NODES.map(([z, w]) => ({ value: normalCdf((normalQuantile(value) + Math.sqrt(part) * z) / Math.sqrt(1 - part)), weight: weight * w })),
  );
}

/**
 * Lists the ways in which a trait may show: trees that can show it, seasons it shows, false shows and stray seedlings, each by its spread.
 * @param years distinct seasons in which trees were looked at
 * @param strays whether any family may hold stray seedlings
 */
export function showings(trait: ShownTrait, years: number, strays: boolean): Showing[] {
  const able = [
    ...nodesOf(trait.canShow).map(({ value, weight }) => ({ value, weight: weight * (1 - UNKNOWN_ABLE) })),
    ...ANY_SHARE.map((value) => ({ value, weight: UNKNOWN_ABLE / ANY_SHARE.length })),
  ];
  const within = (value: number): number => Math.min(1 - SLIP, Math.max(SLIP, value));
  const seasons = withYears(nodesOf(trait.seasonsShown), trait.sharedSeason, years);
  const wrong = nodesOf(trait.falseShow);
  const stray = strays ? [0.5, 1, 2] : [1];
  return able.flatMap((a) =>
    seasons.flatMap((s) =>
      wrong.flatMap((f) =>
        stray.map((strayTimes) => ({
          weight: (a.weight * s.weight * f.weight) / stray.length,
          canShow: a.value,
          seasons: within(s.value),
          falseShow: within(f.value),
          strayTimes,
        })),
      ),
    ),
  );
}
