import type { Batch, LoggedTree } from '../model/log.ts';
import type { Cross } from '../model/programme.ts';
import { yearOf } from './as-of.ts';
import { inSingles, latestCount, stands } from './standing.ts';
import type { BearingTree, Family, InGround, SeasonSeen, Seedlings } from './today-types.ts';

type Weak = Seedlings['weak'];

/** Whether weakness of a seedling is known: marked, or the rest of a batch in which weak ones were told. */
function weakness(batch: Batch, { weakness: possible }: Cross, marked: boolean, grafted: boolean): Weak {
  if (possible === undefined) return 'no';
  if (marked || (grafted && batch.grafting?.who === 'weak')) return 'yes';
  return batch.trees.some(({ weak }) => weak) || latestCount(batch, 'weak') ? 'no' : 'unknown';
}

/** Seedlings of the trees listed that stand and have not borne, alike ones together. */
export function listedSeedlings(batch: Batch, family: Family, cross: Cross, year: number, bearing: ReadonlySet<LoggedTree>): Seedlings[] {
  const groups: Seedlings[] = [];
  for (const tree of batch.trees) {
    if (bearing.has(tree) || !stands(tree)) continue;
    const grafted = tree.stock !== undefined;
    const one = { weak: weakness(batch, cross, tree.weak, grafted), grafted, looked: tree.lookedUntil ?? year - 1 };
    const at = groups.findIndex(({ weak, grafted: on, looked }) => weak === one.weak && on === one.grafted && looked === one.looked);
    const alike = groups[at];
    if (alike) groups[at] = { ...alike, n: alike.n + 1 };
    else groups.push({ ...family, ...one, n: 1, counted: year - 1 });
  }
  return groups;
}

/**
 * Seedlings of a batch without a list, from its counts: those alive, planted, else come up, at the time they were counted, less those that
 * have borne. Grafts that took are grafted; of those that came up, weak ones that were grafted in vain are gone.
 */
export function countedSeedlings(batch: Batch, family: Family, cross: Cross): Seedlings[] {
  const count = (stage: 'alive' | 'planted' | 'cameUp' | 'fruiting' | 'weak' | 'grafted' | 'took') => latestCount(batch, stage)?.count;
  const base = count('alive') ?? count('planted') ?? count('cameUp');
  if (!base) return [];
  const counted = Math.max(family.born, base.when === undefined ? family.born : yearOf(base.when));
  const fruiting = count('fruiting');
  const looked = Math.max(counted, fruiting?.when === undefined ? counted : yearOf(fruiting.when));
  const all = Math.max(0, base.count - (fruiting?.count ?? 0));
  const took = Math.min(all, (count('took') ?? count('grafted'))?.count ?? 0);
  const tried = base.stage === 'cameUp' ? Math.max(took, count('grafted')?.count ?? took) : took;
  const own = Math.max(0, all - tried);
  const told = base.stage === 'cameUp' ? count('weak') : undefined;
  const weakOwn = told === undefined ? 0 : Math.min(own, Math.max(0, told.count - (batch.grafting?.who === 'weak' ? tried : 0)));
  const group = (n: number, weak: Weak, grafted: boolean): Seedlings[] => (n === 0 ? [] : [{ ...family, n, weak, grafted, counted, looked }]);
  return [
    ...group(took, weakness(batch, cross, false, true), true),
    ...(told === undefined
      ? group(own, cross.weakness === undefined ? 'no' : 'unknown', false)
      : [...group(weakOwn, 'yes', false), ...group(own - weakOwn, 'no', false)]),
  ];
}

/** Seed that is not due yet, by the furthest count; null where none was made. */
export function seedInGround(batch: Batch, family: Family): InGround | null {
  const seed = latestCount(batch, 'sown') ?? latestCount(batch, 'seeds');
  if (seed) return { ...family, stage: 'seeds', n: seed.count.count };
  const fruits = latestCount(batch, 'fruits');
  if (fruits) return { ...family, stage: 'fruits', n: fruits.count.count };
  const flowers = latestCount(batch, 'flowers');
  return flowers ? { ...family, stage: 'flowers', n: inSingles(flowers.count) } : null;
}

/**
 * A tree that has borne, with its seasons. A measured trait that was not noted in one season takes the mean of the others; a season of a
 * tree with no value at all of a trait in `measured` does not count as judged.
 */
export function bearingTree(batch: Batch, tree: LoggedTree, family: Family, cross: Cross, bore: number, measured: readonly string[]): BearingTree {
  const grafted = tree.stock !== undefined;
  const noted = [...tree.seasons].sort((a, b) => a.year - b.year);
  const means = new Map(measured.map((trait) => [trait, mean(noted.flatMap(({ values }) => values[trait] ?? []))]));
  const complete = measured.every((trait) => means.get(trait) !== null);
  const seasons = noted.map(({ year, seen, values }): SeasonSeen => ({
    year,
    shown: Object.fromEntries(Object.entries(seen).map(([trait, { showed, cut }]) => [trait, showed === 0 ? 0 : showed >= cut ? 2 : 1])),
    values: { ...Object.fromEntries(measured.map((trait) => [trait, means.get(trait) ?? 0])), ...values },
  }));
  return {
    ...family,
    tag: tree.tag,
    bore,
    gone: stands(tree) ? null : (tree.statusSince ?? Math.max(bore, ...noted.map(({ year }) => year)) + 1),
    weak: weakness(batch, cross, tree.weak, grafted),
    grafted,
    picked: tree.picked,
    copies: tree.copies.reduce((sum, { number }) => sum + number, 0),
    seasons: complete ? seasons : [],
  };
}

const mean = (list: readonly number[]): number | null => (list.length === 0 ? null : list.reduce((sum, x) => sum + x, 0) / list.length);

/** Trees counted as bearing in a batch without a list: nothing is known of what they showed. */
export function countedBearing(batch: Batch, family: Family, cross: Cross): BearingTree[] {
  const found = latestCount(batch, 'fruiting')?.count;
  if (!found || batch.trees.length > 0) return [];
  const bore = found.when === undefined ? family.born + 1 : yearOf(found.when);
  const grafted = latestCount(batch, 'took') !== null && batch.grafting?.who === 'every';
  return Array.from({ length: found.count }, () => ({
    ...family,
    tag: '',
    bore,
    gone: null,
    weak: weakness(batch, cross, false, grafted),
    grafted,
    picked: false,
    copies: 0,
    seasons: [],
  }));
}
