import { binomialInverse } from '../random/draws.ts';
import { power, wholePower } from '../random/elementary.ts';
import { mix2 } from '../random/mix.ts';
import type { Stream } from '../random/stream.ts';
import { takeAt } from '../statistics/graft.ts';
import { classOf, CLASSES, FATE } from './cohorts.ts';
import type { CompiledStock } from './compiled.ts';
import { STAGE, stageKey } from './keys.ts';
import { COUNT, type Orchard } from './orchard.ts';
import { ROOTS, STATUS } from './stand.ts';

/** Share of grafts onto a stock that take with wood of so many months, in this future. */
export function takeOn(stock: CompiledStock, values: Float64Array, month: number): number {
  return takeAt(month, values[stock.takeTenderAt]!, values[stock.takeRipeAt]!, stock.ripeMonths);
}

/** Share of weak seedlings that live from month `from` to month `to`. */
export function weakAlive(from: number, to: number, onset: number, halfLife: number): number {
  const months = Math.max(to, onset) - Math.max(from, onset);
  if (months <= 0 || halfLife === Infinity) return 1;
  return halfLife <= 0 ? 0 : power(0.5, months / halfLife);
}

/**
 * From this season to the next spring: weak seedlings die at their own moment, and seedlings that reach the graft age are
 * grafted. A graft at exactly 12 or 24 months follows that winter, so it opens the year.
 */
export function grow(orchard: Orchard): void {
  const { cohorts, year } = orchard;
  for (let c = 0; c < cohorts.count; c += 1) if (cohorts.left[c]! > 0 && cohorts.classes[c] === CLASSES) growCohort(orchard, c, 12 * (year - cohorts.born[c]!));
  if (orchard.growsIndividuals()) growIndividuals(orchard);
}

/** Where in the year (months from `from`) the graft falls; −1: not in this year. */
function graftMonth(orchard: Orchard, g: number, from: number): number {
  const rescue = orchard.generation(g).rescue;
  if (!rescue || rescue.month < from || rescue.month >= from + 12) return -1;
  const { graftless } = orchard.compiled.whatIf;
  return graftless?.year === orchard.year && graftless.generations.get(orchard.plan.id) === g ? -1 : rescue.month;
}

/** Month in this year (months from `from`) in which seedlings of a cohort die whatever they stand on; −1: not in this year. */
function deathMonth(orchard: Orchard, c: number, from: number): number {
  const { cohorts, compiled, facts } = orchard;
  if (cohorts.fate[c] !== FATE.doomed) return -1;
  const month = facts.values[compiled.crosses[cohorts.cross[c]!]!.necrosisMonthsAt]!;
  return month >= from && month < from + 12 ? month : -1;
}

function growCohort(orchard: Orchard, c: number, from: number): void {
  const { cohorts, facts, compiled, luck, year } = orchard;
  const g = cohorts.generation[c]!;
  const crossAt = cohorts.cross[c]!;
  const death = deathMonth(orchard, c, from);
  const planned = graftMonth(orchard, g, from);
  // A graft before they die is made, in vain; nobody can tell.
  const month = death >= 0 && planned >= death ? -1 : planned;
  const { onsetAt } = compiled.crosses[crossAt]!;
  const onset = onsetAt >= 0 ? facts.values[onsetAt]! : 0;
  const halfLife = facts.halfLife[crossAt]!;
  const at = c * CLASSES;
  const to = from + 12;
  const until = month >= 0 ? month : to;
  const ordinal = cohorts.ordinal[c]!;
  if (onsetAt >= 0) {
    luck.key(mix2(stageKey(g, STAGE.weakDeaths, year), ordinal));
    loseWeak(cohorts.counts, at, weakAlive(from, until, onset, halfLife), luck);
  }
  if (month >= 0) {
    graftCohort(orchard, c, g);
    if (onsetAt >= 0) {
      luck.key(mix2(stageKey(g, STAGE.weakDeaths, year), ordinal + 1000003));
      loseWeak(cohorts.counts, at, weakAlive(until, to, onset, halfLife), luck);
    }
  }
  if (death >= 0) cohorts.counts.fill(0, at, at + CLASSES);
  let left = 0;
  for (let k = 0; k < CLASSES; k += 1) left += cohorts.counts[at + k]!;
  cohorts.left[c] = left;
}

/** Weak seedlings on their own roots and grafted ones weak in the top die alike. */
function loseWeak(counts: Int32Array, at: number, alive: number, luck: Stream): void {
  if (alive >= 1) return;
  for (let k = 0; k < CLASSES; k += 1) {
    if ((k & 4) === 0) continue;
    const n = counts[at + k]!;
    if (n > 0) counts[at + k] = binomialInverse(luck.uniform(), n, alive);
  }
}

function graftCohort(orchard: Orchard, c: number, g: number): void {
  const { cohorts, facts, compiled, luck, tally, year } = orchard;
  const rescue = orchard.generation(g).rescue;
  if (!rescue) return;
  const { counts } = cohorts;
  const at = c * CLASSES;
  const cross = compiled.crosses[cohorts.cross[c]!]!;
  const take = 1 - wholePower(1 - takeOn(compiled.stocks[rescue.stock]!, facts.values, rescue.month), rescue.scions);
  const cured = cross.rootFact >= 0 && facts.holds[cross.rootFact] === 1;
  luck.key(mix2(stageKey(g, STAGE.grafts, year), cohorts.ordinal[c]!));
  let grafted = 0;
  for (let k = 0; k < 8; k += 1) {
    const weak = k >= 4;
    if (!weak && !rescue.every) continue;
    const n = counts[at + k]!;
    if (n === 0) continue;
    const took = binomialInverse(luck.uniform(), n, take);
    grafted += n;
    if (weak && cohorts.fate[c] !== FATE.doomed) tally.weakSaved += took;
    counts[at + k] = rescue.keepOwnRoots ? n - took : 0;
    counts[at + classOf(weak && !cured ? ROOTS.graftedWeak : ROOTS.grafted, (k >> 1) & 1, k & 1)]! += took;
  }
  cohorts.notYetGrafted[c] = cohorts.notYetOwn[c]!;
  tally.grafts += grafted * rescue.scions;
  orchard.count(g, COUNT.aliveAtGraft, grafted);
  orchard.work('perGraft', grafted * rescue.scions);
}

/** Weak individuals (seedlings tested before they fruited, and trees in bearing) die or are grafted one by one. */
function growIndividuals(orchard: Orchard): void {
  const { stand, cohorts, compiled, facts, luck, year } = orchard;
  for (let n = 0; n < stand.livingCount; n += 1) {
    const i = stand.living[n]!;
    const from = 12 * (year - stand.born[i]!);
    const death = deathMonth(orchard, stand.cohort[i]!, from);
    if (death >= 0) stand.backups[i] = 0;
    if (stand.alive[i] === 0) continue;
    const crossAt = cohorts.cross[stand.cohort[i]!]!;
    const { onsetAt } = compiled.crosses[crossAt]!;
    const g = stand.generation[i]!;
    const planned = stand.status[i] === STATUS.young ? graftMonth(orchard, g, from) : -1;
    const month = death >= 0 && planned >= death ? -1 : planned;
    if (onsetAt < 0 && month < 0 && death < 0) continue;
    const onset = onsetAt >= 0 ? facts.values[onsetAt]! : Infinity;
    luck.key(mix2(stageKey(g, STAGE.trees, year), i));
    const dies = (start: number, end: number) => (stand.roots[i]! & 1) === 1 && luck.uniform() >= weakAlive(start, end, onset, facts.halfLife[crossAt]!);
    if (dies(from, month >= 0 ? month : from + 12)) lose(orchard, i);
    else if (month >= 0) {
      graftIndividual(orchard, i, g);
      if (stand.alive[i] === 1 && dies(month, from + 12)) lose(orchard, i);
    }
    if (death >= 0) lose(orchard, i);
  }
}

function graftIndividual(orchard: Orchard, i: number, g: number): void {
  const { stand, cohorts, compiled, facts, luck, tally } = orchard;
  const rescue = orchard.generation(g).rescue;
  const weak = stand.roots[i] === ROOTS.weak;
  if (!rescue || (!weak && !rescue.every)) return;
  const c = stand.cohort[i]!;
  const { rootFact } = compiled.crosses[cohorts.cross[c]!]!;
  const cured = rootFact >= 0 && facts.holds[rootFact] === 1;
  const stock = compiled.stocks[rescue.stock]!;
  tally.grafts += rescue.scions;
  orchard.count(g, COUNT.aliveAtGraft, 1);
  orchard.work('perGraft', rescue.scions);
  cohorts.notYetGrafted[c] = cohorts.notYetOwn[c]!;
  if (luck.uniform() < 1 - wholePower(1 - takeOn(stock, facts.values, rescue.month), rescue.scions)) {
    stand.roots[i] = weak && !cured ? ROOTS.graftedWeak : ROOTS.grafted;
    if (stand.planted[i] === 1) stand.units[i] = Math.min(stand.units[i]!, stock.placeUnits);
    if (weak && cohorts.fate[c] !== FATE.doomed) tally.weakSaved += 1;
  } else if (!rescue.keepOwnRoots) lose(orchard, i);
}

/** The tree is gone; backups of a pick may still live. */
export function lose(orchard: Orchard, i: number): void {
  if (orchard.stand.planted[i] === 0 && orchard.stand.alive[i] === 1) orchard.stand.unplanted -= 1;
  orchard.stand.alive[i] = 0;
  orchard.stand.units[i] = 0;
}
