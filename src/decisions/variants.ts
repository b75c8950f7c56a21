import type { Cross, Generation, Plan, Programme, Stock, Tree } from '../model/programme.ts';

/*
 * Variants of a programme, for questions. Each is a pure edit that shares everything it does not change, and returns the programme
 * itself where there is nothing to change.
 *
 * Variants share their luck with the original as long as they keep what luck is keyed by (docs/decisions/0002 and 0005): the shuffle
 * word; the ids of trees, kinds, crosses, stocks, gardens, pools, traits and facts; and the place of each generation in its plan. A
 * plan's id and letter are in no key, nor is its place among the plans, so a variant may stand alone in its programme.
 */

type Rescue = NonNullable<Generation['rescue']>;

/** Changes the entry of a list that has an id. */
function changed<T extends { readonly id: string }>(list: T[], id: string, change: (entry: T) => T): T[] {
  const at = list.findIndex((entry) => entry.id === id);
  const before = list[at];
  const after = before && change(before);
  return after === undefined || after === before ? list : list.with(at, after);
}

export function withCross(programme: Programme, id: string, change: (cross: Cross) => Cross): Programme {
  return { ...programme, crosses: changed(programme.crosses, id, change) };
}

export function withStock(programme: Programme, id: string, change: (stock: Stock) => Stock): Programme {
  return { ...programme, stocks: changed(programme.stocks, id, change) };
}

export function withTree(programme: Programme, id: string, change: (tree: Tree) => Tree): Programme {
  return { ...programme, trees: changed(programme.trees, id, change) };
}

export function withPlanChanged(programme: Programme, id: string, change: (plan: Plan) => Plan): Programme {
  return { ...programme, plans: changed(programme.plans, id, change) };
}

export function withGeneration(programme: Programme, plan: string, generation: string, change: (generation: Generation) => Generation): Programme {
  return withPlanChanged(programme, plan, (entry) => ({ ...entry, generations: changed(entry.generations, generation, change) }));
}

/** The programme with this plan alone: less to send to another thread, and the same futures. */
export function onlyPlan(programme: Programme, id: string): Programme {
  return { ...programme, plans: programme.plans.filter((plan) => plan.id === id) };
}

/** Puts the same rescue on each of these generations of a plan, or takes theirs away (null). */
export function withRescue(programme: Programme, plan: string, generations: readonly string[], rescue: Rescue | null): Programme {
  return generations.reduce(
    (edited, id) => withGeneration(edited, plan, id, ({ rescue: _old, ...generation }) => (rescue === null ? generation : { ...generation, rescue })),
    programme,
  );
}

/** Grafts these generations at another age, months; those without a rescue stay without. */
export function withRescueMonth(programme: Programme, plan: string, generations: readonly string[], month: number): Programme {
  return generations.reduce(
    (edited, id) =>
      withGeneration(edited, plan, id, (generation) => (generation.rescue ? { ...generation, rescue: { ...generation.rescue, month } } : generation)),
    programme,
  );
}

/**
 * Fixes a yes/no fact. The draw that decides it is left in its place, so a future in which it came out this way anyhow stays as it was.
 * @param fact id of a shared fact
 */
export function withFact(programme: Programme, fact: string, holds: boolean): Programme {
  return withFactChance(programme, fact, holds ? 1 : 0);
}

/** @param chance 0 … 1 */
export function withFactChance(programme: Programme, fact: string, chance: number): Programme {
  return { ...programme, facts: changed(programme.facts, fact, (entry) => ({ ...entry, chance })) };
}

/** Makes half of the weak seedlings of a cross die within so many months, whatever was stated before. Crosses without weakness stay. */
export function withHalfDeadBy(programme: Programme, cross: string, months: number): Programme {
  return withCross(programme, cross, (entry) => (entry.weakness ? { ...entry, weakness: { ...entry.weakness, course: { halfLife: months } } } : entry));
}

/**
 * Makes weakness sit in the roots of a cross's seedlings with this chance. A shared fact is changed for all that share it: they stay
 * one draw.
 */
export function withRootChance(programme: Programme, cross: string, chance: number): Programme {
  const weakness = programme.crosses.find(({ id }) => id === cross)?.weakness;
  if (!weakness) return programme;
  if ('fact' in weakness.rootBorne) return withFactChance(programme, weakness.rootBorne.fact, chance);
  return withCross(programme, cross, (entry) => (entry.weakness ? { ...entry, weakness: { ...entry.weakness, rootBorne: { chance } } } : entry));
}
