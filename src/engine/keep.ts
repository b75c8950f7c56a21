import { CLASSES } from './cohorts.ts';
import type { CompiledGeneration } from './compiled.ts';
import { indexOf, meets } from './judge.ts';
import { COUNT, type Orchard } from './orchard.ts';
import { STATUS } from './stand.ts';
import { pairsOf } from './pairs.ts';
import { wantsMore } from './pollination.ts';

/** Whether the choice among finishers waits until all are judged. */
const choosesAtGoOn = ({ keep, goOn }: CompiledGeneration) => keep.rank === 2 && goOn.when === 2;

/**
 * Keeps and discards this year's finishers of generation g: trees that have had their judged crops (none asked: trees that
 * flower for the first time). Free slots are filled in rank order; with rank index and “all are judged” they wait.
 */
export function keepFinishers(orchard: Orchard, g: number): void {
  const { stand, compiled, year } = orchard;
  const generation = orchard.generation(g);
  const state = orchard.state(g);
  if (state.bore === 0) return;
  const finishers: number[] = [];
  for (let n = 0; n < stand.livingCount; n += 1) {
    const i = stand.living[n]!;
    if (stand.generation[i] !== g || stand.status[i] !== STATUS.judging || stand.alive[i] === 0 || stand.judged[i]! < generation.judge) continue;
    state.lastWork = year;
    if (generation.judge > 0 && showedAll(orchard, i)) orchard.count(g, COUNT.showing, 1);
    if (meets(orchard, i, generation.keep.conditions)) finishers.push(i);
    else stand.status[i] = STATUS.discarded;
  }
  if (finishers.length === 0) return;
  state.passed = true;
  if (choosesAtGoOn(generation) && !state.goneOn) for (const i of finishers) stand.status[i] = STATUS.waiting;
  else fillSlots(orchard, g, rank(orchard, finishers, generation, compiled.measured.length));
}

/** Seen at least once to show every trait that the goal wants shown. */
export function showedAll(orchard: Orchard, i: number): boolean {
  const { stand, compiled } = orchard;
  let any = false;
  for (const { type, of, atLeast } of compiled.goal.conditions) {
    if (type !== 0 || !(atLeast > 0)) continue;
    any = true;
    if (stand.shownAny[i * compiled.shown.length + of] === 0) return false;
  }
  return any;
}

function rank(orchard: Orchard, finishers: number[], { keep }: CompiledGeneration, measured: number): number[] {
  const { stand } = orchard;
  const germination = (a: number, b: number) => stand.born[a]! - stand.born[b]! || a - b;
  if (keep.rank === 1) return finishers.sort((a, b) => stand.bears[a]! - stand.bears[b]! || germination(a, b));
  if (keep.rank === 2 && measured > 0) {
    const index = new Map(finishers.map((i) => [i, indexOf(orchard, i, keep.weights)]));
    return finishers.sort((a, b) => index.get(b)! - index.get(a)! || germination(a, b));
  }
  return finishers.sort(germination);
}

/** Fills free slots in the order given; a dead pick has freed its own. The rest are discarded. */
function fillSlots(orchard: Orchard, g: number, ranked: readonly number[]): void {
  const { stand, year } = orchard;
  const state = orchard.state(g);
  let free = orchard.generation(g).keep.howMany - orchard.livingPicks(g);
  for (const i of ranked) {
    if (free <= 0) {
      stand.status[i] = STATUS.discarded;
      continue;
    }
    free -= 1;
    stand.status[i] = STATUS.pick;
    stand.ordinal[i] = state.picks.length;
    state.picks.push(i);
    if (state.firstPick < 0) state.firstPick = year;
    state.lastWork = Math.max(state.lastWork, year);
    orchard.count(g, COUNT.kept, 1);
  }
}

/** Whether every standing seedling that can fruit is judged, and no spring or seed is left. */
function allJudged(orchard: Orchard, g: number): boolean {
  const { stand, cohorts, weather, year } = orchard;
  const state = orchard.state(g);
  const generation = orchard.generation(g);
  if (state.inGround > 0) return false;
  // A spring that can never be used, because its founding parents are dead, is no spring left.
  const dead = (parent: CompiledGeneration['seedParents'][number]) => parent.tree >= 0 && weather.treeLost[parent.tree]! <= year;
  const hopeless = generation.seedParents.every(dead) || (generation.pollination === 0 && generation.pollenParents.every(dead));
  if (wantsMore(orchard, g) && !(hopeless && pairsOf(orchard, g).length === 0)) return false;
  for (let c = 0; c < cohorts.count; c += 1) {
    if (cohorts.generation[c] !== g || cohorts.left[c] === 0) continue;
    for (let k = 0; k < CLASSES; k += 1) if ((k & 2) === 0 && cohorts.counts[c * CLASSES + k]! > 0) return false;
  }
  for (let n = 0; n < stand.livingCount; n += 1) {
    const i = stand.living[n]!;
    if (stand.generation[i] !== g || stand.alive[i] === 0) continue;
    if (stand.status[i] === STATUS.young && stand.neverFruits[i] === 0) return false;
    if (stand.status[i] === STATUS.judging && stand.judged[i]! < generation.judge) return false;
  }
  return true;
}

/** Spring, before pollination: lets generations go on, by their rule, or at the latest so many years after their first pollination. */
export function goOn(orchard: Orchard): void {
  for (let g = 0; g < orchard.plan.generations.length; g += 1) {
    const generation = orchard.generation(g);
    const state = orchard.state(g);
    const started = generation.after < 0 || orchard.state(generation.after).goneOn;
    if (!started || state.goneOn) continue;
    const { when, count, atLatest } = generation.goOn;
    const late = state.firstPollination >= 0 && orchard.year - state.firstPollination >= atLatest;
    const ready = when === 0 ? state.picks.length > 0 : when === 1 ? state.picks.length >= count : state.firstPollination >= 0 && allJudged(orchard, g);
    if (!late && !ready) continue;
    state.goneOn = true;
    choose(orchard, g);
  }
}

/** The choice at the go-on: the best that waited; if nothing was kept and the rule allows it, the best of the fully judged that still stand. */
function choose(orchard: Orchard, g: number): void {
  const { stand, compiled } = orchard;
  const generation = orchard.generation(g);
  const having = (test: (i: number) => boolean) => {
    const list: number[] = [];
    for (let i = 0; i < stand.count; i += 1) if (stand.generation[i] === g && stand.alive[i] === 1 && test(i)) list.push(i);
    return list;
  };
  if (choosesAtGoOn(generation))
    fillSlots(
      orchard,
      g,
      rank(
        orchard,
        having((i) => stand.status[i] === STATUS.waiting),
        generation,
        compiled.measured.length,
      ),
    );
  if (orchard.state(g).picks.length > 0 || !generation.keep.bestLeft) return;
  // A male that was not kept as a father was never judged, and is none of them.
  const left = having((i) => stand.status[i] === STATUS.discarded && stand.sex[i] !== 1 && stand.judged[i]! >= generation.judge);
  const { weights } = generation.keep;
  const best = left.sort((a, b) => indexOf(orchard, b, weights) - indexOf(orchard, a, weights) || a - b).slice(0, generation.keep.howMany);
  fillSlots(orchard, g, best);
}
