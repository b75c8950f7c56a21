import type { Batch, Count, CountedStage, LoggedTree } from '../model/log.ts';
import type { Estimate } from '../model/estimate.ts';
import type { Programme } from '../model/programme.ts';

/** The count of a stage that stands: the latest by date; of the same day, or undated, the one noted last. Each count is a total. */
export function latestCount({ counts, year }: Pick<Batch, 'counts' | 'year'>, stage: CountedStage): { readonly count: Count; readonly place: number } | null {
  const all = counts.map((count, place) => ({ count, place })).filter(({ count }) => count.stage === stage);
  const day = ({ when }: Count): string => when ?? String(year);
  return all.reduce<(typeof all)[number] | null>((best, entry) => (best === null || day(entry.count) >= day(best.count) ? entry : best), null);
}

/** A count in single flowers, seeds or trees: clusters, bags and burs times what is in one. */
export const inSingles = ({ count, unit }: Count): number => count * (unit?.flowers ?? 1);

/** A tree whose label is lost still stands, and so does one that is weak; a culled one does not. */
export const stands = ({ status }: LoggedTree): boolean => status === 'alive' || status === 'labelLost';

/** Seedlings of a batch that stand: its trees where they are listed, else the last count of those alive, planted, or come up. Null: never counted. */
export function standingIn(batch: Batch): number | null {
  if (batch.trees.length > 0) return batch.trees.filter(stands).length;
  for (const stage of ['alive', 'planted', 'cameUp'] as const) {
    const found = latestCount(batch, stage);
    if (found) return found.count.count;
  }
  return null;
}

/** Trees of a batch that have borne: listed ones, else the last count. Null: nothing is said of it. */
export function fruitedIn(batch: Batch): number | null {
  if (batch.trees.length > 0) return batch.trees.filter(({ firstFruit }) => firstFruit !== undefined).length;
  return latestCount(batch, 'fruiting')?.count.count ?? null;
}

/** Seasons in which a trait that shows or not was looked for on a tree. */
const looks = ({ seasons }: LoggedTree, trait: string) => seasons.flatMap(({ seen }) => seen[trait] ?? []);

/** Of the trees whose fruit was looked at for a trait, how many showed it in at least one season. Null: nobody looked. */
export function showedIn({ trees }: Batch, trait: string): { readonly showed: number; readonly judged: number } | null {
  const judged = trees.filter((tree) => looks(tree, trait).length > 0);
  return judged.length === 0 ? null : { judged: judged.length, showed: judged.filter((tree) => looks(tree, trait).some(({ showed }) => showed > 0)).length };
}

/** The lowest that an estimate allows, years: a range’s low end; a count or alternatives at their least. */
function lowEnd(estimate: Estimate): number {
  if (typeof estimate === 'number') return estimate;
  if ('value' in estimate) return estimate.value;
  if ('low' in estimate) return estimate.low;
  if ('oneOf' in estimate) return Math.min(...estimate.oneOf.map(({ value }) => value));
  return estimate.hits / estimate.of;
}

/**
 * The fewest years from coming up to first fruit that the programme allows for a kind; null where it leads nowhere.
 * Between two kinds: two parts of the seed parent’s and one of the pollen parent’s, as in docs/model.md §8.
 */
export function earliestYears({ kinds }: Pick<Programme, 'kinds'>, kind: string, depth = 0): number | null {
  const fruit = kinds.find(({ id }) => id === kind)?.firstFruit;
  if (!fruit || depth > 4) return null;
  if ('years' in fruit) return lowEnd(fruit.years);
  if ('earliest' in fruit) return lowEnd(fruit.earliest);
  const seed = earliestYears({ kinds }, fruit.between.seed, depth + 1);
  const pollen = earliestYears({ kinds }, fruit.between.pollen, depth + 1);
  return seed === null || pollen === null ? null : (2 * seed + pollen) / 3;
}

/** Kinds of the two parents, as far as they are known; open, own and mixed pollen is taken to be of the seed parent’s kind. */
export function parentKinds(
  { trees }: Pick<Programme, 'trees'>,
  { seed, pollen, seedKind, pollenKind }: Batch,
): { readonly seed: string | null; readonly pollen: string | null } {
  const of = (parent: Batch['seed'] | Batch['pollen'], said: string | undefined): string | null =>
    typeof parent === 'object' && 'tree' in parent ? (trees.find(({ id }) => id === parent.tree)?.kind ?? null) : (said ?? null);
  const mother = of(seed, seedKind);
  const near = pollen === 'open' || pollen === 'self' || pollen === 'mixed';
  return { seed: mother, pollen: of(pollen, pollenKind) ?? (near ? mother : null) };
}

/** Kind of the seedlings of a batch: what the cross of its parents gives, or their own kind; null where it is not known. */
export function kindOfBatch(programme: Pick<Programme, 'trees' | 'crosses'>, batch: Batch): string | null {
  const { seed, pollen } = parentKinds(programme, batch);
  if (seed === null || pollen === null) return seed ?? pollen;
  return programme.crosses.find((cross) => cross.seed === seed && cross.pollen === pollen)?.gives ?? (seed === pollen ? seed : null);
}

/** What the log says of today, in numbers. */
export interface Standing {
  readonly batches: number;
  /** Flowers pollinated in all batches, clusters and bags turned into flowers; null where none were counted. */
  readonly flowers: number | null;
  readonly standing: number;
  readonly fruited: number;
  /** First year in which the oldest seedling that stands and has not borne may bear; null where there is none, or its kind is not known. */
  readonly mayBearFrom: number | null;
  /** Trees looked at for the first trait of the goal that shows or not. */
  readonly shown: { readonly trait: string; readonly name: string; readonly showed: number; readonly judged: number } | null;
}

/** Sums up the log: what was pollinated, what stands, what has borne and shown. Own derivation; nothing is estimated but the year of first fruit. */
export function standingToday(programme: Programme): Standing {
  const { batches } = programme.log;
  const flowers = batches.flatMap((batch) => latestCount(batch, 'flowers')?.count ?? []).map(inSingles);
  const sum = (list: readonly (number | null)[]): number => list.reduce<number>((all, n) => all + (n ?? 0), 0);
  return {
    batches: batches.length,
    flowers: flowers.length === 0 ? null : sum(flowers),
    standing: sum(batches.map(standingIn)),
    fruited: sum(batches.map(fruitedIn)),
    mayBearFrom: mayBearFrom(programme),
    shown: shownOfGoal(programme),
  };
}

/** Up in the spring after the bloom, then the years that the kind needs at least: docs/model.md §5. */
function mayBearFrom(programme: Programme): number | null {
  const years = programme.log.batches.flatMap((batch) => {
    const waiting =
      batch.trees.length > 0 ? batch.trees.some((tree) => stands(tree) && tree.firstFruit === undefined) : (standingIn(batch) ?? 0) > (fruitedIn(batch) ?? 0);
    const kind = kindOfBatch(programme, batch);
    const least = kind === null ? null : earliestYears(programme, kind);
    return waiting && least !== null ? [batch.year + 1 + Math.ceil(least)] : [];
  });
  return years.length === 0 ? null : Math.min(...years);
}

function shownOfGoal({ goal, traits, log }: Programme): Standing['shown'] {
  const wanted = goal.conditions.flatMap((condition) => (condition.type === 'shown' ? [condition.trait] : []));
  const trait = traits.find(({ id, type }) => type === 'shown' && (wanted.length === 0 || wanted.includes(id)));
  if (!trait) return null;
  const seen = log.batches.flatMap((batch) => showedIn(batch, trait.id) ?? []);
  const all = seen.reduce((sum, { showed, judged }) => ({ showed: sum.showed + showed, judged: sum.judged + judged }), { showed: 0, judged: 0 });
  return all.judged === 0 ? null : { trait: trait.id, name: trait.name, ...all };
}
