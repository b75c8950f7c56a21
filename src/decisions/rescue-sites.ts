import { meanOf } from '../model/mean.ts';
import type { Cross, Generation, Plan, Programme } from '../model/programme.ts';
import { pairsReached } from '../model/reach.ts';
import { bestGraftMonth, GRAFT_FROM, GRAFT_UNTIL } from '../statistics/graft.ts';
import type { CannotSay } from './question.ts';
import { withRescue } from './variants.ts';

export type Rescue = NonNullable<Generation['rescue']>;
export type Who = Rescue['who'];

/** A generation whose seedlings can be weak, and the rescue that is asked about. */
export interface RescueSite {
  readonly plan: string;
  /** Position in the plan. */
  readonly position: number;
  /** Its first round among the columns of a result, where every round of a repeated generation has its own. */
  readonly column: number;
  readonly generation: Generation;
  /** Cross entries with weakness that it is meant to raise, the commonest way first; strays apart. */
  readonly entries: readonly [Cross, ...Cross[]];
  /** The generation's own, or where it has none one that could be: the first stock, the month that saves most, one scion. */
  readonly rescue: Rescue;
  /** What the plan does as it stands. */
  readonly stands: Who;
}

/** Every generation of a plan that a rescue could serve, in order; empty when nothing weak is raised or there is no stock. */
export function rescueSites(programme: Programme, plan: Plan): readonly RescueSite[] {
  const pairs = pairsReached(programme, plan);
  return plan.generations.flatMap((generation, position): RescueSite[] => {
    const [first, ...more] = new Set(pairs.flatMap(({ generation: g, stray, entry }) => (g === position && !stray && entry?.weakness ? [entry] : [])));
    if (!first) return [];
    const rescue = generation.rescue ?? suggested(programme, plan, [first, ...more]);
    const column = plan.generations.slice(0, position).reduce((rounds, { repeat }) => rounds + repeat, 0);
    return rescue ? [{ plan: plan.id, position, column, generation, entries: [first, ...more], rescue, stands: generation.rescue?.who ?? 'none' }] : [];
  });
}

/** Why a plan has no site. */
export function whyNoSite(programme: Programme, plan: Plan): CannotSay {
  return pairsReached(programme, plan).some(({ stray, entry }) => !stray && entry?.weakness) ? 'noStock' : 'nothingWeak';
}

/** Earliest age, months, at which every weak seedling of these crosses can be told, at the middle of the guesses. */
export function toldFrom(entries: readonly Cross[]): number {
  return Math.max(0, ...entries.map(({ weakness }) => (weakness ? meanOf(weakness.onset) : 0)));
}

function suggested({ stocks }: Programme, { generations }: Plan, entries: readonly [Cross, ...Cross[]]): Rescue | null {
  const used = generations.find(({ rescue }) => rescue)?.rescue?.stock;
  const stock = stocks.find(({ id }) => id === used) ?? stocks[0];
  if (!stock) return null;
  const told = toldFrom(entries);
  const course = entries[0].weakness?.course;
  const halfLife = course && 'halfLife' in course ? meanOf(course.halfLife) : GRAFT_UNTIL;
  const wood = { takeTender: meanOf(stock.takeTender), takeRipe: meanOf(stock.takeRipe), ripeMonths: stock.ripeMonths };
  const best = bestGraftMonth({ onset: told, halfLife, ...wood }).month;
  // Half months are as fine as anyone grafts.
  const month = Math.min(GRAFT_UNTIL, Math.max(GRAFT_FROM, Math.ceil(2 * told) / 2, Math.round(2 * best) / 2));
  return { who: 'weak', month, stock: stock.id, scions: 1, keepOwnRoots: false };
}

/** The site that a map is drawn of: the first that the plan rescues, else the first that it could. */
export function mainSite<T extends Pick<RescueSite, 'stands'>>(sites: readonly T[]): T | undefined {
  return sites.find(({ stands }) => stands !== 'none') ?? sites[0];
}

/** The programme with another choice at one site, all else as it stands. */
export function withChoice(programme: Programme, { plan, generation, rescue }: RescueSite, who: Who): Programme {
  return withRescue(programme, plan, [generation.id], who === 'none' ? null : { ...rescue, who });
}
