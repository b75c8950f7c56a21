import type { Batch, LoggedTree } from '../model/log.ts';
import type { Plan, Programme } from '../model/programme.ts';
import { asOf } from './as-of.ts';
import { standingIn } from './standing.ts';
import { bearingTree, countedBearing, countedSeedlings, listedSeedlings, seedInGround } from './today-batch.ts';
import { generationsToday, judgedTraits } from './today-generations.ts';
import { Places, type KnownTree } from './today-place.ts';
import type { BearingTree, InGround, NotPlaced, NotPlacedReason, PlanToday, Seedlings, Today } from './today-types.ts';

/**
 * What stands before the spring of a year, plan by plan: seedlings that have not borne, trees that have with what was seen of them, seed in
 * the ground, springs used. Draws nothing; what cannot be placed is named. Own derivation, docs/model.md “From today”.
 * @param year calendar year; what the log says of that year and later is left out
 */
export function standsToday(programme: Programme, year: number): Today {
  const batches = programme.log.batches.flatMap((batch) => asOf(batch, year) ?? []).sort((a, b) => a.year - b.year);
  return { year, plans: programme.plans.map((plan) => planToday(programme, plan, batches, year)) };
}

function planToday(programme: Programme, plan: Plan, batches: readonly Batch[], year: number): PlanToday {
  const known = new Map<string, KnownTree>();
  const places = new Places(programme, plan, known);
  const used = parentYears(batches);
  const seedlings: Seedlings[] = [];
  const trees: BearingTree[] = [];
  const inGround: InGround[] = [];
  const notPlaced: NotPlaced[] = [];
  const members: { readonly generation: number; readonly batch: Batch }[] = [];
  for (const batch of batches) {
    const out = (why: NotPlacedReason, about: string, n: number): void => void notPlaced.push({ batch: batch.id, name: batch.name, why, about, n });
    const placed = places.place(batch);
    if (!placed.ok) {
      const seed = seedInGround(batch, NO_FAMILY);
      const n = standingIn(batch) ?? seed?.n ?? 0;
      if (n > 0) out(placed.why, placed.about, n);
      continue;
    }
    const { family, cross } = placed;
    const { generation } = places.round(family.generation);
    members.push({ generation: family.generation, batch });
    const measured = judgedTraits(programme, generation);
    const bearing = new Set<LoggedTree>();
    for (const tree of batch.trees) {
      const flowered = [tree.firstFruit, used.get(tree.tag)].flatMap((at) => at ?? []);
      if (flowered.length === 0) continue;
      bearing.add(tree);
      const one = bearingTree(batch, tree, family, cross, Math.min(...flowered), measured);
      if (known.has(tree.tag) && used.has(tree.tag)) out('tagTwice', tree.tag, 1);
      else known.set(tree.tag, { at: trees.length, generation: family.generation, kind: cross.gives });
      if (tree.seasons.length > 0 && one.seasons.length === 0) out('noValues', tree.tag, 1);
      if (one.copies > 0 && !generation.backup) out('copiesNotMade', tree.tag, one.copies);
      trees.push({ ...one, picked: one.picked || used.has(tree.tag) });
    }
    trees.push(...countedBearing(batch, family, cross));
    const young = batch.trees.length > 0 ? listedSeedlings(batch, family, cross, year, bearing) : countedSeedlings(batch, family, cross);
    seedlings.push(...young);
    const grafts =
      young.reduce((sum, { grafted, n }) => sum + (grafted ? n : 0), 0) + batch.trees.filter((tree) => bearing.has(tree) && tree.stock !== undefined).length;
    if (grafts > 0 && (!generation.rescue || generation.rescue.who === 'none')) out('graftsNotMade', '', grafts);
    if (batch.trees.length > 0 || standingIn(batch) !== null) continue;
    const seed = seedInGround(batch, family);
    if (!seed) out('nothingCounted', '', 0);
    else if (family.born >= year) inGround.push(seed);
    else out('neverCameUp', '', seed.n);
  }
  return { plan: plan.id, generations: generationsToday(places.rounds, members, trees), seedlings, trees, inGround, notPlaced };
}

const NO_FAMILY = { batch: '', name: '', generation: -1, seed: { tree: '' }, pollen: 'air', cross: '', pollinated: 0, born: 0 } as const;

/** Tags that batches name as parents, with the first bloom that used them. */
function parentYears(batches: readonly Batch[]): Map<string, number> {
  const years = new Map<string, number>();
  for (const { seed, pollen, year } of batches)
    for (const parent of [seed, pollen])
      if (typeof parent === 'object' && 'tag' in parent) years.set(parent.tag, Math.min(year, years.get(parent.tag) ?? year));
  return years;
}
