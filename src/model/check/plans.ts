import { sBook } from '../incompatibility/trees.ts';
import { meanOf } from '../mean.ts';
import type { Path, Problem } from '../problem.ts';
import type { Generation, Kind, Plan, Programme } from '../programme.ts';
import { pairsReached, type ReachedPair } from '../reach.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
const note = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });

/** Plans that cannot work, and plans that can but surely not as meant. */
export function checkPlans(programme: Programme): Problem[] {
  const problems: Problem[] = [];
  if (programme.lastYear < programme.startYear)
    problems.push(stop(['lastYear'], 'Your last judging year lies before the first spring', 'Choose a later year.'));
  if (programme.lastYear - programme.startYear > 150)
    problems.push(stop(['lastYear'], 'The programme would run for more than 150 years', 'Choose an earlier last year.'));
  const marks = new Set<string>();
  programme.plans.forEach((plan, p) => {
    if (marks.has(plan.mark)) problems.push(stop(['plans', p, 'mark'], `Two plans carry the letter ${plan.mark}`, 'Give one of them a free letter.'));
    marks.add(plan.mark);
    const rounds = plan.generations.reduce((sum, { repeat }) => sum + repeat, 0);
    if (rounds > 60)
      problems.push(stop(['plans', p, 'generations'], `${String(rounds)} rounds are more than can be followed`, 'Repeat at most 60 rounds in all.'));
    const pairs = pairsReached(programme, plan).filter(({ stray }) => !stray);
    plan.generations.forEach((generation, g) => {
      const own = pairs.filter((pair) => pair.generation === g);
      problems.push(...checkGeneration(programme, generation, own, ['plans', p, 'generations', g]));
    });
    problems.push(...checkReach(programme, plan, p));
  });
  return problems;
}

function checkGeneration(programme: Programme, generation: Generation, pairs: readonly ReachedPair[], path: Path): Problem[] {
  const problems: Problem[] = [];
  const add = (...found: Problem[]) => problems.push(...found);
  const { rescue, pollen, keep } = generation;
  if (pollen === 'open' && (generation.pool ?? programme.defaultPool) === undefined)
    add(stop([...path, 'pool'], 'is openly pollinated, but no pollen is in the air', 'Add a pool of neighbours and choose it.'));
  if (Array.isArray(pollen) && generation.flowers === 0) add(stop([...path, 'flowers'], 'crosses no flowers', 'Say how many flowers a spring are pollinated.'));
  if (pollen === 'self') {
    // Where S alleles are known they say which tree takes its own pollen (check/incompatibility.ts).
    const { rejects } = sBook(programme);
    const barren = programme.kinds.find((kind) => !kind.selfCompatible && !rejects(kind.id) && pairs.some(({ seed }) => seed === kind.id));
    if (barren)
      add(
        stop(
          [...path, 'pollen'],
          `selfs ${barren.name}, which sets no fruit with its own pollen`,
          'Choose another pollen parent, or mark the kind as setting fruit with its own pollen.',
        ),
      );
  }
  if (generation.selfs && !programme.kinds.some((kind) => kind.selfCompatible || sBook(programme).rejects(kind.id)))
    add(
      note(
        [...path, 'selfs'],
        'selfs the picks too, but no kind sets fruit with its own pollen',
        'Those selfs are left out; mark a kind as setting fruit with its own pollen if it does.',
      ),
    );
  if (rescue?.who === 'weak') {
    const onset = Math.max(0, ...pairs.map(({ entry }) => (entry?.weakness ? meanOf(entry.weakness.onset) : 0)));
    if (rescue.month < onset)
      add(
        stop(
          [...path, 'rescue', 'month'],
          `weak ones cannot be told before ${String(Math.round(onset * 10) / 10)} months`,
          'Graft later, or graft every seedling.',
        ),
      );
  }
  if ((keep.rank === 'index' || keep.bestLeft) && generation.judge > 0 && !Object.values(keep.weights).some((weight) => weight !== 0))
    add(note([...path, 'keep', 'weights'], 'ranks by an index in which nothing has a weight', 'Give a measured trait a weight.'));
  if (generation.judge === 0 && keep.conditions.some(({ type }) => type !== 'test'))
    add(stop([...path, 'judge'], 'keeps by what is seen, but judges no crop', 'Judge at least one crop, or drop the conditions.'));
  keep.conditions.forEach((condition, i) => {
    if (condition.type === 'shown' && (condition.atLeast ?? 0) > generation.judge)
      add(
        stop(
          [...path, 'keep', 'conditions', i, 'atLeast'],
          `asks for ${String(condition.atLeast)} of ${String(generation.judge)} crops`,
          'Ask for fewer, or judge more.',
        ),
      );
    if (condition.type === 'test' && generation.test?.gene !== condition.gene)
      add(stop([...path, 'keep', 'conditions', i, 'gene'], 'asks for a leaf test that this generation does not make', 'Add the test, or drop the condition.'));
  });
  const ownPicks = Array.isArray(pollen)
    ? pollen.find((parent) => 'picksOf' in parent && generation.seedParents.some((seed) => 'picksOf' in seed && seed.picksOf === parent.picksOf))
    : undefined;
  if (ownPicks && 'picksOf' in ownPicks && !generation.selfs && generation.seedParents.length === 1) {
    const plan = programme.plans.find(({ generations }) => generations.includes(generation));
    const source = plan?.generations.find(({ id }) => id === ownPicks.picksOf);
    if (source?.keep.howMany === 1) add(note([...path, 'pollen'], 'crosses picks with each other, but only one is kept', 'Keep at least two, or self it.'));
  }
  return problems;
}

/** Whether the goal can be reached at all within the years. */
function checkReach(programme: Programme, plan: Plan, p: number): Problem[] {
  const { crops, conditions } = programme.goal;
  const problems: Problem[] = [];
  if (plan.generations.every(({ judge }) => judge === 0))
    problems.push(note(['plans', p], `never judges a crop, and the goal wants ${String(crops)}`, 'Judge the last generation.'));
  conditions.forEach((condition, i) => {
    if (p === 0 && condition.type === 'shown' && (condition.atLeast ?? 0) > crops)
      problems.push(
        stop(['goal', 'conditions', i, 'atLeast'], `asks for ${String(condition.atLeast)} of ${String(crops)} crops`, 'Ask for fewer, or judge more.'),
      );
  });
  const first = plan.generations[0];
  const soonest = first && Math.min(...crossesOf(programme, first).map((cross) => earliestFruit(programme, cross.gives) + cross.dormancy));
  if (first && soonest !== undefined && Number.isFinite(soonest) && programme.startYear + 1 + Math.ceil(soonest) > programme.lastYear)
    problems.push(
      note(
        ['lastYear'],
        `${plan.name}: no seedling can fruit by ${String(programme.lastYear)}`,
        `The first fruit comes in ${String(programme.startYear + 1 + Math.ceil(soonest))}.`,
      ),
    );
  return problems;
}

function earliestFruit(programme: Programme, kindId: string, depth = 0): number {
  const fruit = programme.kinds.find(({ id }) => id === kindId)?.firstFruit;
  if (!fruit || depth > 4) return NaN;
  if ('years' in fruit) return meanOf(fruit.years);
  if ('earliest' in fruit) return meanOf(fruit.earliest);
  return (2 * earliestFruit(programme, fruit.between.seed, depth + 1) + earliestFruit(programme, fruit.between.pollen, depth + 1)) / 3;
}

function seedKinds(programme: Programme, generation: Generation): Kind[] {
  return programme.kinds.filter(({ id }) =>
    generation.seedParents.some((parent) => 'tree' in parent && programme.trees.find((tree) => tree.id === parent.tree)?.kind === id),
  );
}

/** Cross entries that the generation's named parents use. */
function crossesOf(programme: Programme, generation: Generation) {
  if (generation.cross !== undefined) return programme.crosses.filter(({ id }) => id === generation.cross);
  const seeds = seedKinds(programme, generation).map(({ id }) => id);
  const pollens = Array.isArray(generation.pollen)
    ? generation.pollen.flatMap((parent) => ('tree' in parent ? (programme.trees.find((tree) => tree.id === parent.tree)?.kind ?? []) : []))
    : null;
  return programme.crosses.filter((cross) => seeds.includes(cross.seed) && (pollens === null || pollens.includes(cross.pollen)));
}
