import { binomialInverse } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { classOf, CLASSES } from './cohorts.ts';
import { openCohort, type Lineage } from './germination.ts';
import { LUCK } from './keys.ts';
import type { Orchard } from './orchard.ts';
import { weakAlive } from './rescue.ts';
import { ROOTS } from './stand.ts';
import type { CompiledFamily, CompiledSeedlings } from './today.ts';
import { splitOver, weighed, type Line } from './today-lines.ts';

/** Lineage of seedlings of one line of a family. */
export const lineage = ({ generation, pollinated }: CompiledFamily, { cross, mother, father, pool, poolKind }: Line): Lineage => ({
  generation,
  cross,
  mother,
  father,
  pool,
  poolKind,
  pollinated: Math.max(0, pollinated),
});

/** Share of a cohort not yet in bearing at an age, on own roots or grafted as its generation grafts. */
export function notYetAt(orchard: Orchard, c: number, age: number, grafted: boolean): number {
  const { cohorts, compiled, facts } = orchard;
  const { rescue } = orchard.generation(cohorts.generation[c]!);
  if (!grafted || !rescue) return cohorts.notYet(c, age);
  const at = rescue.month / 12;
  return cohorts.notYet(c, age <= at ? age : at + (age - at) / facts.values[compiled.stocks[rescue.stock]!.precocityAt]!);
}

/**
 * Puts seedlings that have not borne into cohorts. What nobody knows of them is drawn, given that they stand and have not borne: whether a
 * seedling is weak, whether it will ever fruit (Bayes' rule on docs/model.md §7 and §8); winters since they were counted take their losses.
 * Returns the cohorts.
 */
export function putSeedlings(orchard: Orchard, group: CompiledSeedlings, family: CompiledFamily, lines: readonly Line[], today: number): number[] {
  const { luck } = orchard;
  const ways = weighed(orchard, lines, group.weak);
  if (ways.length === 0) return [];
  luck.key(mix2(LUCK.today, group.key));
  const uniform = () => luck.uniform();
  return splitOver(ways, group.n, uniform).flatMap((n, l) => (n === 0 ? [] : putLine(orchard, group, family, ways[l]!, n, today)));
}

function putLine(orchard: Orchard, group: CompiledSeedlings, family: CompiledFamily, line: Line, n: number, today: number): number {
  const { compiled, facts, luck, cohorts } = orchard;
  const { values } = facts;
  const c = openCohort(orchard, lineage(family, line), family.born);
  const cross = compiled.crosses[line.cross]!;
  const kind = compiled.kinds[cross.gives]!;
  const { rescue } = orchard.generation(family.generation);
  const grafted = group.grafted && rescue !== null;
  const onset = cross.onsetAt >= 0 ? values[cross.onsetAt]! : Infinity;
  const halfLife = facts.halfLife[line.cross]!;
  const [then, now] = [12 * (group.counted - family.born), 12 * (today - family.born)];
  // Survival since the count: ordinary winters, and for the weak their own.
  let ordinary = 1;
  for (let year = group.counted + 1; year < today; year += 1)
    ordinary *= 1 - values[grafted ? compiled.stocks[rescue.stock]!.lossAt : year - family.born === 1 ? kind.firstYearLossAt : kind.yearlyLossAt]!;
  const weakLeft = group.counted < today - 1 || group.weak === 2 ? weakAlive(then, now, onset, halfLife) : 1;
  // On a stock they came through, whatever their plan would have done.
  const weak = group.grafted && !grafted ? 0 : weakAmong(orchard, group, line.cross, n, then);
  const alive = [n - weak, weak].map((count, k) => binomialInverse(luck.uniform(), count, ordinary * (k === 1 && group.counted < today - 1 ? weakLeft : 1)));
  const cured = cross.rootFact >= 0 && facts.holds[cross.rootFact] === 1;
  const before = notYetAt(orchard, c, Math.max(0, group.looked - family.born), grafted);
  const never = values[kind.neverFruitsAt]!;
  const barrenShare = never > 0 ? never / (never + (1 - never) * before) : 0;
  const planted = +(today - 1 - family.born >= kind.plantOutAge);
  const at = c * CLASSES;
  alive.forEach((count, isWeak) => {
    const roots = !grafted ? (isWeak === 1 ? ROOTS.weak : ROOTS.sound) : isWeak === 1 && !cured ? ROOTS.graftedWeak : ROOTS.grafted;
    const barren = binomialInverse(luck.uniform(), count, barrenShare);
    cohorts.counts[at + classOf(roots, 1, planted)]! += barren;
    cohorts.counts[at + classOf(roots, 0, planted)]! += count - barren;
  });
  cohorts.left[c] = alive[0]! + alive[1]!;
  // Older than its kind ever waits, and none of it barren: it bears at the next chance.
  cohorts.notYetOwn[c] = before > 0 ? before : 1;
  cohorts.notYetGrafted[c] = cohorts.notYetOwn[c]!;
  return c;
}

/** How many of n are weak: told, or drawn given that they were alive at an age in months. */
function weakAmong(orchard: Orchard, { weak, grafted }: CompiledSeedlings, crossAt: number, n: number, month: number): number {
  const { compiled, facts, luck } = orchard;
  const { weakShareAt, onsetAt } = compiled.crosses[crossAt]!;
  if (weakShareAt < 0 || weak === 0) return 0;
  if (weak === 1) return n;
  const share = facts.values[weakShareAt]!;
  const left = grafted ? 1 : weakAlive(0, month, facts.values[onsetAt]!, facts.halfLife[crossAt]!);
  return binomialInverse(luck.uniform(), n, (share * left) / (1 - share + share * left));
}
