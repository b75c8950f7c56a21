import { binomialInverse } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { beginAgain } from './begin-again.ts';
import { CLASSES } from './cohorts.ts';
import { UNITS_PER_PLACE } from './compiled.ts';
import { STAGE, stageKey } from './keys.ts';
import type { Newcomers } from './newcomers.ts';
import type { Orchard } from './orchard.ts';
import { lose, takeOn, weakAlive } from './rescue.ts';
import { ROOTS, STATUS } from './stand.ts';

/** Winter before the current year: losses, discarded trees leave, backups are grafted, seedlings are planted out (with leaf test). */
export function winter(orchard: Orchard, newcomers: Newcomers): void {
  loseSeedlings(orchard);
  loseTrees(orchard);
  orchard.stand.tidy();
  if (orchard.compiled.whatIf.landLostIn === orchard.year) beginAgain(orchard);
  graftBackups(orchard);
  plantOut(orchard, newcomers);
}

const gardenLost = (orchard: Orchard, garden: number) => garden >= 0 && orchard.weather.gardenLost[garden * orchard.compiled.years + orchard.year] === 1;

function loseSeedlings(orchard: Orchard): void {
  const { cohorts, compiled, facts, luck, year } = orchard;
  for (let c = 0; c < cohorts.count; c += 1) {
    if (cohorts.left[c] === 0) continue;
    const g = cohorts.generation[c]!;
    const at = c * CLASSES;
    if (gardenLost(orchard, orchard.generation(g).garden)) {
      cohorts.counts.fill(0, at, at + CLASSES);
      cohorts.left[c] = 0;
      continue;
    }
    const kind = compiled.kinds[cohorts.kind[c]!]!;
    const own = 1 - facts.values[year - cohorts.born[c]! === 1 ? kind.firstYearLossAt : kind.yearlyLossAt]!;
    const rescue = orchard.generation(g).rescue;
    const grafted = rescue ? 1 - facts.values[compiled.stocks[rescue.stock]!.lossAt]! : 1;
    luck.key(mix2(stageKey(g, STAGE.winter, year), cohorts.ordinal[c]!));
    let left = 0;
    const classes = cohorts.classes[c]!;
    for (let k = 0; k < classes; k += 1) {
      const n = cohorts.counts[at + k]!;
      if (n === 0) continue;
      const survivors = binomialInverse(luck.uniform(), n, k < 8 ? own : grafted);
      cohorts.counts[at + k] = survivors;
      left += survivors;
    }
    cohorts.left[c] = left;
  }
}

function loseTrees(orchard: Orchard): void {
  const { stand, compiled, facts, luck, plan, year } = orchard;
  let keyed = -1;
  for (let n = 0; n < stand.livingCount; n += 1) {
    const i = stand.living[n]!;
    const g = stand.generation[i]!;
    const generation = plan.generations[g]!;
    if (stand.alive[i] === 0 && stand.backups[i] === 0) continue;
    if (keyed !== g) {
      // Individuals of different generations interleave; each run of one generation has its own key.
      luck.key(mix2(stageKey(g, STAGE.trees, year), 0x7000000 + i));
      keyed = g;
    }
    if (stand.alive[i] === 1) {
      const kind = compiled.kinds[stand.kind[i]!]!;
      const { rescue } = generation;
      const loss =
        stand.roots[i]! >= ROOTS.grafted && rescue
          ? compiled.stocks[rescue.stock]!.lossAt
          : year - stand.born[i]! === 1
            ? kind.firstYearLossAt
            : kind.yearlyLossAt;
      if (luck.uniform() < facts.values[loss]! || gardenLost(orchard, generation.garden)) lose(orchard, i);
      else if (stand.status[i] === STATUS.discarded && plan.clearDiscards && !heldBack(orchard, g)) lose(orchard, i);
    }
    const { backup } = generation;
    if (backup && stand.backups[i]! > 0)
      stand.backups[i] = gardenLost(orchard, backup.garden) ? 0 : binomialInverse(luck.uniform(), stand.backups[i]!, backupAlive(orchard, i, backup.stock));
  }
}

/** Discards of a generation that may have to go on with the best of them stand until it has gone on, or something better has come. */
function heldBack(orchard: Orchard, g: number): boolean {
  const { goneOn, passed } = orchard.state(g);
  return orchard.generation(g).keep.bestLeft && !goneOn && !passed;
}

/** Share of a pick's backups that come through a winter: the stock's loss, and the weakness of a weak top, which stays on any stock. */
function backupAlive(orchard: Orchard, i: number, stock: number): number {
  const { stand, cohorts, compiled, facts } = orchard;
  const alive = 1 - facts.values[compiled.stocks[stock]!.lossAt]!;
  const crossAt = cohorts.cross[stand.cohort[i]!]!;
  const { rootFact } = compiled.crosses[crossAt]!;
  const weakTop = stand.roots[i] === ROOTS.graftedWeak || (stand.roots[i] === ROOTS.weak && !(rootFact >= 0 && facts.holds[rootFact] === 1));
  return weakTop ? alive * weakAlive(0, 12, 0, facts.halfLife[crossAt]!) : alive;
}

/** Picks get their backups before seedlings get their places; a failed graft is tried again the next winter. */
function graftBackups(orchard: Orchard): void {
  const { compiled, facts, luck, stand, tally, year } = orchard;
  let used = -1;
  for (let g = 0; g < orchard.plan.generations.length; g += 1) {
    const { backup } = orchard.generation(g);
    if (!backup || orchard.state(g).picks.length === 0) continue;
    const stock = compiled.stocks[backup.stock]!;
    luck.key(stageKey(g, STAGE.backups, year));
    for (const pick of orchard.state(g).picks) {
      if (!orchard.lives(pick) || stand.backups[pick]! >= backup.copies) continue;
      if (used < 0) used = orchard.unitsInUse();
      const room = stock.placeUnits > 0 ? Math.floor((compiled.placeUnits - used) / stock.placeUnits) : backup.copies;
      const tries = Math.max(0, Math.min(backup.copies - stand.backups[pick]!, room));
      if (tries === 0) continue;
      const took = binomialInverse(luck.uniform(), tries, takeOn(stock, facts.values, stock.ripeMonths));
      stand.backups[pick]! += took;
      used += took * stock.placeUnits;
      tally.grafts += tries;
      orchard.work('perGraft', tries);
    }
  }
}

/** One class of a cohort, or one individual, that waits for a place. */
interface Waiting {
  readonly cohort: number;
  readonly class: number;
  readonly individual: number;
  n: number;
  readonly nursery: number;
  readonly place: number;
}

function plantOut(orchard: Orchard, newcomers: Newcomers): void {
  const { cohorts, compiled, stand, year } = orchard;
  const waiting: Waiting[] = [];
  for (let c = 0; c < cohorts.count; c += 1) {
    if (cohorts.left[c] === 0) continue;
    const g = cohorts.generation[c]!;
    const kind = compiled.kinds[cohorts.kind[c]!]!;
    const age = year - cohorts.born[c]!;
    if (age < kind.plantOutAge) continue;
    const generation = orchard.generation(g);
    if (age === kind.plantOutAge && ((generation.test && year >= generation.testFrom) || generation.look)) {
      // Culled seedlings leave the nursery, the others wait as individuals below.
      newcomers.testSeedlings(c);
      continue;
    }
    for (let k = 0; k < cohorts.classes[c]!; k += 2) {
      const n = cohorts.counts[c * CLASSES + k]!;
      if (n > 0)
        waiting.push({
          cohort: c,
          class: k,
          individual: -1,
          n,
          nursery: kind.nurseryUnits,
          place: k < 8 ? UNITS_PER_PLACE : orchard.graftUnits(g, cohorts.kind[c]!),
        });
    }
  }
  for (let n = 0; n < stand.livingCount && stand.unplanted > 0; n += 1) {
    const i = stand.living[n]!;
    if (stand.alive[i] === 0 || stand.planted[i] === 1) continue;
    const kind = compiled.kinds[stand.kind[i]!]!;
    if (year - stand.born[i]! >= kind.plantOutAge)
      waiting.push({
        cohort: stand.cohort[i]!,
        class: -1,
        individual: i,
        n: 1,
        nursery: kind.nurseryUnits,
        place: stand.roots[i]! < ROOTS.grafted ? UNITS_PER_PLACE : orchard.graftUnits(stand.generation[i]!, stand.kind[i]!),
      });
  }
  if (waiting.length === 0) return;
  const used = orchard.unitsInUse();
  const demand = waiting.reduce((sum, { n, place, nursery }) => sum + n * (place - nursery), 0);
  if (used + demand <= compiled.placeUnits) for (const entry of waiting) plant(orchard, entry, entry.n);
  else plantInRandomOrder(orchard, waiting, used);
}

function plant(orchard: Orchard, { cohort, class: k, individual, place }: Waiting, n: number): void {
  const { cohorts, stand } = orchard;
  orchard.tally.planted += n;
  if (individual >= 0) {
    stand.planted[individual] = 1;
    stand.unplanted -= 1;
    stand.units[individual] = place;
  } else {
    cohorts.counts[cohort * CLASSES + k]! -= n;
    cohorts.counts[cohort * CLASSES + k + 1]! += n;
  }
}

/** Room is short: seedlings come in random order; those without a place wait, at most `waitYears`, and are then counted as no room. */
function plantInRandomOrder(orchard: Orchard, waiting: Waiting[], usedBefore: number): void {
  const { compiled, luck, year } = orchard;
  let used = usedBefore;
  luck.key(stageKey(0, STAGE.planting, year));
  const open = waiting.map((entry) => ({ entry, left: entry.n }));
  let left = open.reduce((sum, { left: n }) => sum + n, 0);
  while (left > 0) {
    let pick = luck.uniform() * left;
    const chosen = open.find((candidate) => (pick -= candidate.left) < 0) ?? open.find((candidate) => candidate.left > 0)!;
    const extra = chosen.entry.place - chosen.entry.nursery;
    chosen.left -= 1;
    left -= 1;
    if (used + extra <= compiled.placeUnits) {
      used += extra;
      plant(orchard, chosen.entry, 1);
    } else if (refuse(orchard, chosen.entry)) used -= chosen.entry.nursery;
  }
}

/** One seedling finds no place: it waits in the nursery, or has waited long enough, leaves and makes room there. Returns whether it left. */
function refuse(orchard: Orchard, { cohort, class: k, individual }: Waiting): boolean {
  const { cohorts, compiled, stand, tally, year } = orchard;
  const kind = compiled.kinds[cohorts.kind[cohort]!]!;
  if (year - cohorts.born[cohort]! - kind.plantOutAge < kind.waitYears) return false;
  if (individual >= 0) {
    // A pick is not thrown out: it stays in the nursery until there is room.
    if (stand.status[individual] === STATUS.pick) return false;
    lose(orchard, individual);
  } else {
    cohorts.counts[cohort * CLASSES + k]! -= 1;
    cohorts.left[cohort]! -= 1;
  }
  tally.noRoom += 1;
  orchard.state(cohorts.generation[cohort]!).refused += 1;
  return true;
}
