import { binomialInverse, hypergeometricInverse, springRate } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { classOf, CLASSES, firstFruitCurve } from './cohorts.ts';
import { LUCK, pairKey, STAGE, stageKey } from './keys.ts';
import { COUNT, type Batch, type Orchard } from './orchard.ts';
import { germinationSlot } from './pollination.ts';
import { ROOTS } from './stand.ts';

const OPEN_FAMILY = 0x0fe2;

/**
 * Spring: seed that is due comes up, at most as many as are still wanted (the rest is thrown away), and as many as the nursery has
 * room for. `used` is the room in use; returns it with the new seedlings added.
 */
export function germinate(orchard: Orchard, used: number): number {
  const { batches, year } = orchard;
  if (batches.length === 0) return used;
  for (let g = 0; g < orchard.plan.generations.length; g += 1) {
    if (orchard.state(g).inGround === 0) continue;
    const due = batches.filter((batch) => batch.generation === g && batch.due === year);
    if (due.length > 0) used = comeUp(orchard, g, due, used);
  }
  let kept = 0;
  for (const batch of batches) if (batch.due > year) batches[kept++] = batch;
  batches.length = kept;
  return used;
}

/** Takes `limit` of the counts at random, without putting back. Changes the counts; returns how many were left out. */
function thin(counts: number[], limit: number, uniform: () => number): number {
  let total = counts.reduce((sum, n) => sum + n, 0);
  const out = total - limit;
  if (out <= 0) return 0;
  let draws = limit;
  counts.forEach((n, i) => {
    counts[i] = hypergeometricInverse(uniform(), n, total - n, draws);
    draws -= counts[i] ?? 0;
    total -= n;
  });
  return out;
}

function comeUp(orchard: Orchard, g: number, due: readonly Batch[], used: number): number {
  const { compiled, facts, luck, year, tally } = orchard;
  const state = orchard.state(g);
  const rates = due.map(({ cross }) =>
    springRate(
      luck.key(mix2(mix2(LUCK.germination, compiled.crosses[cross]!.key), year)),
      facts.values[germinationSlot(orchard, g, cross)]!,
      compiled.luckGermination,
    ),
  );
  luck.key(stageKey(g, STAGE.germination, year));
  const counts = due.map(({ seeds }, i) => binomialInverse(luck.uniform(), seeds, rates[i]!));
  for (const { seeds } of due) state.inGround -= seeds;
  const uniform = () => luck.uniform();
  thin(counts, Math.max(0, orchard.generation(g).seedlings - state.raised), uniform);
  const raised = counts.reduce((sum, n) => sum + n, 0);
  if (raised === 0) return used;
  state.raised += raised;
  tally.seedlings += raised;
  if (state.firstSeedling < 0) state.firstSeedling = year;
  state.lastWork = year;
  orchard.count(g, COUNT.seedlings, raised);
  orchard.work('perSeedling', raised);
  // Room in the nursery, at the room of the largest kind among them.
  const nursery = due.reduce((most, { cross }) => Math.max(most, compiled.kinds[compiled.crosses[cross]!.gives]!.nurseryUnits), 0);
  luck.key(stageKey(g, STAGE.nursery, year));
  const refused = thin(counts, nursery > 0 ? Math.max(0, Math.floor((compiled.placeUnits - used) / nursery)) : raised, uniform);
  state.refused += refused;
  tally.noRoom += refused;
  due.forEach((batch, i) => {
    const n = counts[i]!;
    if (n === 0) return;
    used += n * compiled.kinds[compiled.crosses[batch.cross]!.gives]!.nurseryUnits;
    addCohort(orchard, batch, n);
  });
  return used;
}

function addCohort(orchard: Orchard, batch: Batch, n: number): void {
  const { compiled, facts, luck, cohorts, year } = orchard;
  const { generation: g, mother, father } = batch;
  const cross = compiled.crosses[batch.cross]!;
  const kind = compiled.kinds[cross.gives]!;
  const c = cohorts.add();
  const state = orchard.state(g);
  cohorts.generation[c] = g;
  cohorts.ordinal[c] = state.cohorts++;
  cohorts.cross[c] = batch.cross;
  cohorts.kind[c] = cross.gives;
  cohorts.mother[c] = mother;
  cohorts.father[c] = father;
  cohorts.pool[c] = batch.pool;
  cohorts.poolKind[c] = batch.poolKind;
  cohorts.pollinated[c] = batch.pollinated;
  cohorts.born[c] = year;
  const family = pairKey(orchard.parentKey(mother), father < 0 ? OPEN_FAMILY : orchard.parentKey(father));
  const curve = firstFruitCurve(compiled, kind, facts.values, (spread) => facts.family(family, spread));
  cohorts.start[c] = curve.start;
  cohorts.shape[c] = curve.shape;
  cohorts.scale[c] = curve.scale;
  cohorts.fixed[c] = curve.fixed;
  luck.key(mix2(stageKey(g, STAGE.classes, year), cohorts.ordinal[c]));
  const weak = cross.weakShareAt >= 0 ? binomialInverse(luck.uniform(), n, facts.values[cross.weakShareAt]!) : 0;
  const never = facts.values[kind.neverFruitsAt]!;
  const at = c * CLASSES;
  const split = (roots: number, count: number) => {
    const barren = binomialInverse(luck.uniform(), count, never);
    cohorts.counts[at + classOf(roots, 1, 0)] = barren;
    cohorts.counts[at + classOf(roots, 0, 0)] = count - barren;
  };
  split(ROOTS.sound, n - weak);
  split(ROOTS.weak, weak);
  cohorts.left[c] = n;
  cohorts.classes[c] = cross.weakShareAt < 0 && orchard.generation(g).rescue === null ? 4 : CLASSES;
}
