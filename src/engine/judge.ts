import { betaFrom, binomialInverse, normalFrom } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import type { CompiledCondition, CompiledShown } from './compiled.ts';
import { STAGE, stageKey } from './keys.ts';
import type { Orchard } from './orchard.ts';
import { STATUS } from './stand.ts';

/** True value that counts: mean + G + C of a measured trait. */
export function trueValue(orchard: Orchard, i: number, trait: number): number {
  const { stand, compiled, facts } = orchard;
  const a = stand.offset(stand.handleOf(i));
  const b = a + compiled.words;
  const { genome } = stand;
  const scale = facts.scales[trait]!;
  const genetic =
    compiled.sets === 2
      ? scale.genetic(genome[a + 1 + trait]!, genome[b + 1 + trait]!, genome[a]!, genome[b]!)
      : scale.geneticOf(genome, a, compiled.kinds[stand.kind[i]!]!.sets);
  return genetic + stand.travels[i * compiled.measured.length + trait]!;
}

/**
 * Truly good: qualifies under the future's rule and is able (for “must not show”: is not able), and its true value meets every
 * minimum and maximum of the goal.
 */
export function isTrulyGood(orchard: Orchard, i: number): boolean {
  const { stand, compiled } = orchard;
  for (const { type, of, atLeast, atMost } of compiled.goal.conditions) {
    if (type === 0) {
      const wanted = atLeast > 0;
      if (!wanted && atMost > 0) continue;
      if ((stand.able[stand.ableAt(stand.handleOf(i)) + of] === 1) !== wanted) return false;
    } else if (type === 1) {
      const value = trueValue(orchard, i, of);
      if (value < atLeast || value > atMost) return false;
    }
  }
  return true;
}

/** Whether what was seen of a tree so far meets every condition. */
export function meets(orchard: Orchard, i: number, conditions: readonly CompiledCondition[]): boolean {
  const { stand, compiled } = orchard;
  for (const { type, of, grade, atLeast, atMost } of conditions) {
    let seen: number;
    if (type === 0) seen = (grade === 0 ? stand.shownAny : grade === 1 ? stand.shownFull : stand.shownPart)[i * compiled.shown.length + of]!;
    else if (type === 1) {
      if (stand.judged[i] === 0) return false;
      seen = stand.sum[i * compiled.measured.length + of]! / stand.judged[i]!;
    } else seen = orchard.generation(stand.generation[i]!).test?.gene === of ? stand.tested[i]! : 0;
    if (seen < atLeast || seen > atMost) return false;
  }
  return true;
}

/** Index of a tree: Σ weight × mean, in the traits' own units. */
export function indexOf(orchard: Orchard, i: number, weights: Float64Array): number {
  const { stand } = orchard;
  const judged = stand.judged[i]!;
  if (judged === 0) return 0;
  let sum = 0;
  for (let t = 0; t < weights.length; t += 1) if (weights[t] !== 0) sum += (weights[t]! * stand.sum[i * weights.length + t]!) / judged;
  return sum;
}

/** Season: every tree that is to be judged and has a crop is judged once; the goal is looked at when a tree has its crops. */
export function judgeCrops(orchard: Orchard): void {
  const { stand, compiled, facts, luck, year } = orchard;
  let keyed = -1;
  for (let n = 0; n < stand.livingCount; n += 1) {
    const i = stand.living[n]!;
    const status = stand.status[i]!;
    if ((status !== STATUS.judging && status !== STATUS.pick) || !orchard.lives(i) || !orchard.toJudge(i)) continue;
    const g = stand.generation[i]!;
    if (keyed !== g) {
      luck.key(mix2(stageKey(g, STAGE.judging, year), i));
      keyed = g;
    }
    const kind = stand.kind[i]!;
    orchard.state(g).lastWork = year;
    if (luck.uniform() >= facts.values[compiled.kinds[kind]!.regularityAt]! * (1 - orchard.frostTaken(kind))) continue;
    judgeCrop(orchard, i, g);
    if (stand.judged[i] === compiled.goal.crops) lookAtGoal(orchard, i);
  }
}

function judgeCrop(orchard: Orchard, i: number, g: number): void {
  const { stand, compiled, facts, luck, weather, year, tally } = orchard;
  const { judgedShown, judgedMeasured } = orchard.generation(g);
  const { years } = compiled;
  stand.judged[i]! += 1;
  tally.judgings += 1;
  orchard.work('perJudging', 1);
  for (const t of judgedShown) {
    const able = stand.able[stand.ableAt(stand.handleOf(i)) + t] === 1;
    const trait = compiled.shown[t]!;
    if (luck.uniform() >= (able ? weather.chanceShown[t * years + year]! : facts.values[trait.falseShowAt]!)) continue;
    const cut = able && trait.graded ? fruitsShowing(orchard, trait) : trait.fruitsCut;
    const at = i * compiled.shown.length + t;
    if (cut === 0) continue;
    stand.shownAny[at]! += 1;
    if (cut === trait.fruitsCut) stand.shownFull[at]! += 1;
    else stand.shownPart[at]! += 1;
  }
  const measured = compiled.measured.length;
  for (const t of judgedMeasured) {
    const scale = facts.scales[t]!;
    stand.sum[i * measured + t]! +=
      trueValue(orchard, i, t) -
      stand.travels[i * measured + t]! +
      stand.lasting[i * measured + t]! +
      scale.season * normalFrom(luck.uniform()) +
      weather.yearEffect[t * years + year]!;
  }
}

const square = (x: number) => x * x;

/** Of the fruits cut in a season in which it shows, how many show it: binomial over a Beta share of the stated mean and SD. */
function fruitsShowing(orchard: Orchard, { gradeMean, gradeSd, fruitsCut }: CompiledShown): number {
  const { luck } = orchard;
  const most = Math.sqrt(gradeMean * (1 - gradeMean));
  const size = gradeSd > 0 && gradeMean < 1 ? square(most / Math.min(gradeSd, 0.999 * most)) - 1 : 0;
  const share = size > 0 ? betaFrom(luck, gradeMean * size, (1 - gradeMean) * size) : gradeMean;
  return binomialInverse(luck.uniform(), fruitsCut, share);
}

/** Looked at once, on a tree's first n judged crops, in the year of the n-th. */
export function lookAtGoal(orchard: Orchard, i: number): void {
  const { compiled, stand, tally, year } = orchard;
  const { goal } = compiled;
  if (!meets(orchard, i, goal.conditions) || (goal.breedsTrue && !breedsTrue(orchard, i))) return;
  tally.proven += 1;
  if (isTrulyGood(orchard, i)) tally.trulyGood += 1;
  for (const { type, of } of goal.conditions)
    if (type === 1) orchard.shortfall[of]! += stand.sum[i * compiled.measured.length + of]! / stand.judged[i]! - trueValue(orchard, i, of);
  if (tally.proven >= goal.trees && tally.yearProven < 0) {
    tally.yearProven = year;
    orchard.done = true;
  }
}

/** Every copy of the rules' genes is the wanted one, known by a test of each. */
function breedsTrue(orchard: Orchard, i: number): boolean {
  const { compiled, facts, stand, tally } = orchard;
  const { sets } = compiled.kinds[stand.kind[i]!]!;
  let true_ = true;
  for (const { type, of, atLeast } of compiled.goal.conditions) {
    if (type !== 0 || !(atLeast > 0)) continue;
    for (const gene of compiled.shown[of]!.rules[facts.ruleOf[of]!]!.genes) {
      tally.tests += 1;
      orchard.work('perTest', 1);
      if (stand.copies(stand.handleOf(i), gene) < sets) true_ = false;
    }
  }
  return true_;
}
