import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import { differenceOf, outcomeOf, type Difference, type Outcome } from './outcome.ts';
import { mainSite, toldFrom, withChoice, type RescueSite, type Who } from './rescue-sites.ts';
import type { Variant } from './steps.ts';

const WHO = ['none', 'weak', 'every'] as const;

/** One choice at one generation, all else as the plan stands. */
export interface GraftWay {
  readonly who: Who;
  readonly outcome: Outcome;
  /** This choice minus leaving them on their own roots; null for that itself. */
  readonly minusOwnRoots: Difference | null;
  /** This choice minus the plan as it stands; null for that itself. */
  readonly minusStands: Difference | null;
}

/** What grafting does to the plan, for one generation. */
export interface GraftSite {
  /** Id, name and position of the generation. */
  readonly generation: string;
  readonly name: string;
  readonly position: number;
  /** What the plan does as it stands. */
  readonly stands: Who;
  /** How it is, or would be, grafted: age in months, id of the stock, scions a seedling. */
  readonly month: number;
  readonly stock: string;
  readonly scions: number;
  /** None, weak ones, every seedling; weak ones only where they can be told at that age. */
  readonly ways: readonly GraftWay[];
  /** The way with the highest chance, and whether it clearly differs from the best of the other kind (graft or not). */
  readonly best: Who;
  readonly clear: boolean;
  /** Every seedling minus the weak ones; null where weak ones cannot be told. */
  readonly everyMinusWeak: Difference | null;
}

/** Whose variants stand where in the list that is run; the plan as it stands is run once for all. */
export interface WaysAsked {
  readonly variants: readonly Variant[];
  readonly sites: readonly { readonly site: RescueSite; readonly ways: readonly { readonly who: Who; readonly at: number }[] }[];
}

/** @param programme with the plan alone in it */
export function waysOf(programme: Programme, sites: readonly RescueSite[]): WaysAsked {
  const variants: Variant[] = [{ programme, plan: 0 }];
  const asked = sites.map((site) => ({
    site,
    ways: WHO.filter((who) => who !== 'weak' || site.rescue.month >= toldFrom(site.entries)).map((who) => {
      if (who === site.stands) return { who, at: 0 };
      variants.push({ programme: withChoice(programme, site, who), plan: 0 });
      return { who, at: variants.length - 1 };
    }),
  }));
  return { variants, sites: asked };
}

/** @param columns of the variants, in their order */
export function sitesOf({ sites }: WaysAsked, columns: readonly Columns[], startYear: number): readonly GraftSite[] {
  return sites.map(({ site, ways }) =>
    siteOf(
      site,
      ways.flatMap(({ who, at }) => (columns[at] ? [{ who, columns: columns[at] }] : [])),
      startYear,
    ),
  );
}

function siteOf(
  { generation, position, stands, rescue }: RescueSite,
  run: readonly { readonly who: Who; readonly columns: Columns }[],
  startYear: number,
): GraftSite {
  const of = (which: Who) => run.find(({ who }) => who === which)?.columns;
  const minus = (columns: Columns | undefined, other: Columns | undefined) => (!columns || !other || columns === other ? null : differenceOf(columns, other));
  const ways = run.map(({ who, columns }): GraftWay => ({
    who,
    outcome: outcomeOf(columns, startYear),
    minusOwnRoots: minus(columns, of('none')),
    minusStands: minus(columns, of(stands)),
  }));
  // Of equals the one that grafts less.
  const best = ways.reduce((a, b) => (b.outcome.chance.value > a.outcome.chance.value ? b : a));
  const grafted = ways.filter(({ who }) => who !== 'none');
  const clear = best.who === 'none' ? grafted.every(({ minusOwnRoots }) => minusOwnRoots?.clear === true) : best.minusOwnRoots?.clear === true;
  return {
    generation: generation.id,
    name: generation.name,
    position,
    stands,
    month: rescue.month,
    stock: rescue.stock,
    scions: rescue.scions,
    ways,
    best: best.who,
    clear,
    everyMinusWeak: minus(of('every'), of('weak')),
  };
}

/** Whether grafting or not makes a clear difference where the plan does it, or first could. */
export const clearAt = (sites: readonly GraftSite[]): boolean => mainSite(sites)?.clear ?? false;
