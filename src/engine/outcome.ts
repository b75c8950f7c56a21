import { FAILURES, type Failure } from '../results/outlook.ts';
import { readOrigin } from './origin.ts';
import { AMOUNT_COLUMNS, GENERATION_COLUMNS, MILESTONES, RUN_COLUMNS, type Columns } from '../results/columns.ts';
import { CLASSES } from './cohorts.ts';
import { UNITS_PER_PLACE, type CompiledParent } from './compiled.ts';
import { STAGE_COUNT, type Orchard } from './orchard.ts';
import { STATUS } from './stand.ts';
import { wantsMore } from './pollination.ts';

/** Why no tree was proven: looked at for the last generation that started, the first reason that applies (docs/model.md §11). */
function failureOf(orchard: Orchard): Failure {
  const { plan } = orchard;
  // A generation has started once it has pollinated; the first is looked at even if it never could.
  let g = 0;
  plan.generations.forEach((_, i) => {
    if (orchard.state(i).firstPollination >= 0) g = i;
  });
  const generation = orchard.generation(g);
  const state = orchard.state(g);
  if (state.raised === 0) {
    if (wantsMore(orchard, g)) return parentsDead(orchard, g) ? 'onlyTreeLost' : 'stillWaiting';
    if (state.inGround > 0) return 'stillWaiting';
    if (orchard.stages[g * STAGE_COUNT + 1] === 0) return 'noFruit';
    return state.refused > 0 ? 'noRoom' : 'noSeedling';
  }
  if (unjudged(orchard, g) > state.raised / 10) return 'stillWaiting';
  if (state.bore === 0) return state.refused > 0 ? 'noRoom' : 'seedlingsDied';
  const usedLater = plan.generations.some((later) => [...later.seedParents, ...later.pollenParents].some((parent) => parent.picksOf === g));
  const ahead = (pick: number) => usedLater || (generation.judge > 0 && orchard.stand.judged[pick]! < orchard.compiled.goal.crops);
  if (state.picks.some((pick) => ahead(pick) && orchard.lives(pick))) return 'stillWaiting';
  if (state.picks.some(ahead)) return 'onlyTreeLost';
  return 'noneGoodEnough';
}

/** All its parents on one side are gone for good: no cross can be made any more. */
function parentsDead(orchard: Orchard, g: number): boolean {
  const { seedParents, pollenParents, pollination } = orchard.generation(g);
  const dead = ({ tree, picksOf }: CompiledParent) => {
    if (tree >= 0) return orchard.weather.treeLost[tree]! <= orchard.year;
    return picksOf >= 0 && orchard.state(picksOf).picks.length > 0 && orchard.livingPicks(picksOf) === 0;
  };
  return seedParents.every(dead) || (pollination === 0 && pollenParents.every(dead));
}

/** Seedlings still standing that can fruit and have not had their judged crops. */
function unjudged(orchard: Orchard, g: number): number {
  const { cohorts, stand } = orchard;
  let n = 0;
  for (let c = 0; c < cohorts.count; c += 1) {
    if (cohorts.generation[c] !== g) continue;
    for (let k = 0; k < CLASSES; k += 1) if ((k & 2) === 0) n += cohorts.counts[c * CLASSES + k]!;
  }
  const { judge } = orchard.generation(g);
  for (let i = 0; i < stand.count; i += 1)
    if (
      stand.generation[i] === g &&
      stand.alive[i] === 1 &&
      ((stand.status[i] === STATUS.young && stand.neverFruits[i] === 0) || (stand.status[i] === STATUS.judging && stand.judged[i]! < judge))
    )
      n += 1;
  return n;
}

/** Writes the finished future to row `row` of the columns. */
export function record(orchard: Orchard, columns: Columns, row: number): void {
  const { tally, facts, compiled, plan } = orchard;
  const { ints, amounts, runs } = columns;
  let c = 0;
  const int = (value: number) => {
    ints[c * runs + row] = value;
    c += 1;
  };
  const failure = tally.yearProven >= 0 ? -1 : FAILURES.indexOf(failureOf(orchard));
  for (const name of RUN_COLUMNS) int(name === 'failure' ? failure : tally[name]);
  for (const rule of facts.ruleOf) int(rule);
  for (const holds of facts.holds) int(holds);
  for (let g = 0; g < plan.generations.length; g += 1) {
    const state = orchard.state(g);
    for (const name of MILESTONES) int(state[name]);
    for (let s = 0; s < GENERATION_COLUMNS.length - MILESTONES.length; s += 1) int(orchard.stages[g * STAGE_COUNT + s]!);
  }
  [orchard.hours, orchard.places, orchard.handFlowers].forEach((series, s) => {
    for (let y = 0; y < compiled.years; y += 1) columns.byYear[(s * compiled.years + y) * runs + row] = series[y]!;
  });
  const most = (list: Float64Array) => list.reduce((a, b) => Math.max(a, b), 0);
  const sum = (list: Float64Array) => list.reduce((a, b) => a + b, 0);
  const written = {
    treeYears: tally.placeUnitYears / UNITS_PER_PLACE,
    mostPlaces: tally.mostUnits / UNITS_PER_PLACE,
    busiestHours: most(orchard.hours),
    totalHours: sum(orchard.hours),
    busiestMoney: most(orchard.money),
    totalMoney: sum(orchard.money),
  };
  AMOUNT_COLUMNS.forEach((name, i) => {
    amounts[i * runs + row] = written[name];
  });
  for (let t = 0; t < compiled.measured.length; t += 1) amounts[(AMOUNT_COLUMNS.length + t) * runs + row] = orchard.shortfall[t]!;
  if (compiled.origin) recordOrigin(orchard, columns, row);
}

/** Where the genomes of each generation's picks came from. */
function recordOrigin(orchard: Orchard, columns: Columns, row: number): void {
  const { compiled, plan } = orchard;
  const kinds = compiled.origin?.kinds.length ?? 0;
  const means = new Float64Array(kinds + 1);
  for (let g = 0; g < plan.generations.length; g += 1) {
    readOrigin(orchard, orchard.state(g).picks, means);
    for (let k = 0; k <= kinds; k += 1) columns.originShare(g, k)[row] = means[k]!;
  }
}
