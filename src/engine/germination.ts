import { binomialInverse, hypergeometricInverse, springRate } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { classOf, CLASSES, FATE, firstFruitCurve, type Fate } from './cohorts.ts';
import { fatesOf, type Seedlings } from './fates.ts';
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
  const families = due.flatMap((batch, i) => fatesOf(orchard, batch, i, counts[i]!));
  const nursery = families.reduce((most, { kind }) => Math.max(most, compiled.kinds[kind]!.nurseryUnits), 0);
  const left = families.map(({ n }) => n);
  luck.key(stageKey(g, STAGE.nursery, year));
  const refused = thin(left, nursery > 0 ? Math.max(0, Math.floor((compiled.placeUnits - used) / nursery)) : raised, uniform);
  state.refused += refused;
  tally.noRoom += refused;
  families.forEach((family, i) => {
    const n = left[i]!;
    if (n === 0) return;
    used += n * compiled.kinds[family.kind]!.nurseryUnits;
    addCohort(orchard, family, n);
  });
  return used;
}

/** Where seedlings come from, and how their father is known. */
export type Lineage = Pick<Batch, 'generation' | 'cross' | 'mother' | 'father' | 'pool' | 'poolKind' | 'pollinated'>;

/** An empty cohort of one family that came up in a year, with its curve of first fruit. Its seedlings are for the caller to count. */
export function openCohort(
  orchard: Orchard,
  batch: Lineage,
  born: number,
  kindAt: number = orchard.compiled.crosses[batch.cross]!.gives,
  fate: Fate = FATE.ordinary,
): number {
  const { compiled, facts, cohorts } = orchard;
  const { generation: g, mother, father } = batch;
  const cross = compiled.crosses[batch.cross]!;
  const kind = compiled.kinds[kindAt]!;
  const c = cohorts.add();
  cohorts.generation[c] = g;
  cohorts.ordinal[c] = orchard.state(g).cohorts++;
  cohorts.cross[c] = batch.cross;
  cohorts.kind[c] = kindAt;
  cohorts.fate[c] = fate;
  cohorts.mother[c] = mother;
  cohorts.father[c] = father;
  cohorts.pool[c] = batch.pool;
  cohorts.poolKind[c] = batch.poolKind;
  cohorts.pollinated[c] = batch.pollinated;
  cohorts.born[c] = born;
  // Copies of the seed parent are one family, whoever gave the pollen.
  const giver = fate === FATE.clone ? mother : father;
  const family = pairKey(orchard.parentKey(mother), giver < 0 ? OPEN_FAMILY : orchard.parentKey(giver));
  const curve = firstFruitCurve(compiled, kind, facts.values, (spread) => facts.family(family, spread));
  cohorts.start[c] = curve.start;
  cohorts.shape[c] = curve.shape;
  cohorts.scale[c] = curve.scale;
  cohorts.fixed[c] = curve.fixed;
  cohorts.classes[c] = cross.weakShareAt < 0 && fate !== FATE.doomed && orchard.generation(g).rescue === null ? 4 : CLASSES;
  return c;
}

function addCohort(orchard: Orchard, { batch, kind: kindAt, fate }: Seedlings, n: number): void {
  const { compiled, facts, luck, cohorts, year } = orchard;
  const { generation: g } = batch;
  const cross = compiled.crosses[batch.cross]!;
  const kind = compiled.kinds[kindAt]!;
  const c = openCohort(orchard, batch, year, kindAt, fate);
  luck.key(mix2(stageKey(g, STAGE.classes, year), cohorts.ordinal[c]!));
  // A copy of the seed parent is no hybrid.
  const weak = cross.weakShareAt >= 0 && fate !== FATE.clone ? binomialInverse(luck.uniform(), n, facts.values[cross.weakShareAt]!) : 0;
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
}
