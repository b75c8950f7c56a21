import type { Batch, CountedStage, LoggedTree } from '../log.ts';
import type { Path, Problem } from '../problem.ts';
import type { Programme } from '../programme.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
/** Kept as it was entered; whoever wrote it decides. */
const flag = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });

const ASK = 'It is kept as it was entered: look at the notebook again, or leave it.';

/** References of the season log that lead nowhere (these stop), and numbers that do not add up (these are only flagged). */
export function checkLog(programme: Programme): Problem[] {
  const { batches } = programme.log;
  return [
    ...forecastFrom(programme),
    ...doubleIds(batches),
    ...batches.flatMap((batch, b) => [...references(programme, batch, b), ...sums(batch, b), ...trees(batch, b)]),
  ];
}

function forecastFrom({ startYear, lastYear, log }: Programme): Problem[] {
  const { forecastFrom: from } = log;
  if (from === undefined || (from >= startYear && from <= lastYear)) return [];
  return [
    stop(
      ['log', 'forecastFrom'],
      `${String(from)} is outside the years of the programme, ${String(startYear)} to ${String(lastYear)}`,
      'Choose a spring between the two, or forecast from the first spring.',
    ),
  ];
}

function doubleIds(batches: readonly Batch[]): Problem[] {
  return batches.flatMap(({ id }, b) =>
    batches.findIndex((other) => other.id === id) < b ? [stop(['log', 'batches', b, 'id'], `“${id}” is used twice`, 'Give one of the two another id.')] : [],
  );
}

function references(programme: Programme, batch: Batch, b: number): Problem[] {
  const path: Path = ['log', 'batches', b];
  const among = (section: 'trees' | 'kinds' | 'stocks' | 'traits', id: string | undefined, at: Path): Problem[] =>
    id === undefined || programme[section].some((entry) => entry.id === id)
      ? []
      : [stop(at, `there is no “${id}” among the ${section}`, 'Choose one that exists, or add it.')];
  const parent = (key: 'seed' | 'pollen'): Problem[] => {
    const entry = batch[key];
    if (typeof entry === 'object' && 'tree' in entry) return among('trees', entry.tree, [...path, key, 'tree']);
    // Seed of a tree that is not in the programme still needs a kind, or nothing can be learned from its counts.
    const kind = key === 'seed' ? batch.seedKind : batch.pollenKind;
    const own = key === 'pollen' && (entry === 'open' || entry === 'self' || entry === 'mixed');
    return kind === undefined && !own ? [flag([...path, `${key}Kind`], 'is not said, so its counts teach no rate', 'Choose the kind, if you know it.')] : [];
  };
  const generations = programme.plans.flatMap((plan) => plan.generations.map(({ id }) => id));
  const routes = programme.crosses.flatMap((cross) => cross.routes.map(({ id }) => id));
  const found = (list: readonly string[], id: string | undefined, key: string, words: string): Problem[] =>
    id === undefined || list.includes(id) ? [] : [stop([...path, key], `there is no ${words} “${id}”`, 'Choose one that exists, or leave it empty.')];
  return [
    ...parent('seed'),
    ...parent('pollen'),
    ...among('kinds', batch.seedKind, [...path, 'seedKind']),
    ...among('kinds', batch.pollenKind, [...path, 'pollenKind']),
    ...among('stocks', batch.grafting?.stock, [...path, 'grafting', 'stock']),
    ...found(generations, batch.generation, 'generation', 'generation'),
    ...found(routes, batch.route, 'route', 'way of raising seed'),
    ...batch.trees.flatMap((tree, t) => [
      ...among('stocks', tree.stock, [...path, 'trees', t, 'stock']),
      ...tree.seasons.flatMap(({ seen, values }, s) =>
        [...Object.keys(seen), ...Object.keys(values)].flatMap((trait) => among('traits', trait, [...path, 'trees', t, 'seasons', s])),
      ),
    ]),
  ];
}

/** Stages of which none can hold more than one before it; weak ones are counted among those that came up, not after them. */
const CHAIN: readonly (readonly [CountedStage, CountedStage])[] = [
  ['fruits', 'flowers'],
  ['sown', 'seeds'],
  ['cameUp', 'sown'],
  ['weak', 'cameUp'],
  ['took', 'grafted'],
  ['planted', 'cameUp'],
  ['alive', 'cameUp'],
  ['fruiting', 'cameUp'],
];

/** The most that was counted at a stage, in flowers where it was counted by cluster, bag or bur; null where it was not. */
export function mostCounted({ counts }: Batch, stage: CountedStage): number | null {
  const all = counts.filter((count) => count.stage === stage).map(({ count, unit }) => count * (unit?.flowers ?? 1));
  return all.length === 0 ? null : Math.max(...all);
}

function sums(batch: Batch, b: number): Problem[] {
  const words = (stage: CountedStage) => STAGE_WORDS[stage];
  const tooMany = CHAIN.flatMap(([later, earlier]): Problem[] => {
    const [more, of] = [mostCounted(batch, later), mostCounted(batch, earlier)];
    if (more === null || of === null || more <= of) return [];
    const at = batch.counts.findIndex(({ stage }) => stage === later);
    return [flag(['log', 'batches', b, 'counts', at], `${String(more)} ${words(later)} of ${String(of)} ${words(earlier)} does not add up`, ASK)];
  });
  const early = batch.counts.flatMap(({ when }, c): Problem[] =>
    when !== undefined && Number(when.slice(0, 4)) < batch.year
      ? [flag(['log', 'batches', b, 'counts', c, 'when'], `is before the bloom of ${String(batch.year)}`, ASK)]
      : [],
  );
  const seedsBeforeUnits = batch.counts.flatMap(({ stage, unit }, c): Problem[] =>
    unit && stage !== 'flowers' ? [flag(['log', 'batches', b, 'counts', c, 'unit'], `is only used for flowers, not for ${words(stage)}`, ASK)] : [],
  );
  return [...tooMany, ...early, ...seedsBeforeUnits];
}

const STAGE_WORDS: Readonly<Record<CountedStage, string>> = {
  flowers: 'flowers',
  fruits: 'fruits',
  seeds: 'seeds',
  sown: 'seeds sown',
  cameUp: 'seedlings',
  weak: 'weak seedlings',
  grafted: 'grafts',
  took: 'grafts that took',
  planted: 'trees planted',
  alive: 'trees alive',
  fruiting: 'trees in fruit',
};

function trees({ trees: list, year }: Batch, b: number): Problem[] {
  const path: Path = ['log', 'batches', b, 'trees'];
  const firstWith = new Map<string, number>();
  list.forEach(({ tag }, t) => firstWith.set(tag, firstWith.get(tag) ?? t));
  return list.flatMap((tree: LoggedTree, t): Problem[] => [
    ...(firstWith.get(tree.tag) !== t
      ? [flag([...path, t, 'tag'], `“${tree.tag}” is written on two trees of this batch`, 'Tell them apart by their place, or leave it.')]
      : []),
    // Seed of one bloom comes up the spring after at the earliest; seed gathered and sown, or standing trees, may carry no count.
    ...(tree.firstFruit !== undefined && tree.firstFruit <= year ? [flag([...path, t, 'firstFruit'], `is not after the bloom of ${String(year)}`, ASK)] : []),
    ...tree.seasons.flatMap(({ year: season, seen }, s): Problem[] => [
      ...(season <= year ? [flag([...path, t, 'seasons', s, 'year'], `is not after the bloom of ${String(year)}`, ASK)] : []),
      ...Object.entries(seen).flatMap(([trait, { showed, cut }]) =>
        showed > cut
          ? [flag([...path, t, 'seasons', s, 'seen', trait], `${String(showed)} fruits that showed it of ${String(cut)} cut does not add up`, ASK)]
          : [],
      ),
    ]),
  ]);
}
