import type { Path, Problem } from '../problem.ts';
import type { Cross, Generation, Programme } from '../programme.ts';
import { pairsReached, type ReachedPair } from '../reach.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
const note = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });

/** Whether each generation uses the cross entry that is meant: the one it names is for its kinds, no other is for the same two, and it knows how seed is raised. */
export function checkEntries(programme: Programme): Problem[] {
  const told = new Set<string>();
  const chosen = new Set(programme.plans.flatMap(({ generations }) => generations.map(({ cross }) => cross)));
  return programme.plans.flatMap((plan, p) => {
    // Stray pollen takes the first entry of its two kinds, whatever is named: nobody chooses it.
    const pairs = pairsReached(programme, plan).filter(({ stray }) => !stray);
    return plan.generations.flatMap((generation, g) => {
      const own = pairs.filter((pair) => pair.generation === g);
      const path: Path = ['plans', p, 'generations', g];
      return [
        ...named(programme, generation, own, path),
        ...(generation.cross === undefined ? doubled(programme, own, chosen, told, path) : []),
        ...raised(generation, own, path),
      ];
    });
  });
}

const kindName = (programme: Programme, id: string) => programme.kinds.find((kind) => kind.id === id)?.name ?? id;
const pairName = (programme: Programme, { seed, pollen }: Pick<Cross, 'seed' | 'pollen'>) => `${kindName(programme, seed)} × ${kindName(programme, pollen)}`;

/** A named entry is used for every pair of the generation, whatever their kinds. */
function named(programme: Programme, generation: Generation, pairs: readonly ReachedPair[], path: Path): Problem[] {
  const entry = programme.crosses.find(({ id }) => id === generation.cross);
  const other = entry && pairs.find(({ seed, pollen }) => seed !== entry.seed || pollen !== entry.pollen);
  if (!entry || !other) return [];
  const pair = pairName(programme, other);
  return [
    stop(
      [...path, 'cross'],
      `names the cross entry “${entry.name}”, which is for ${pairName(programme, entry)}, but crosses ${pair}`,
      `Leave the cross entry empty, so that it is found by the two kinds, or choose one for ${pair}.`,
    ),
  ];
}

/**
 * Told once for two kinds, where a plan first comes to them. An entry that some generation names is meant for that one, and the
 * first for all others; one that nobody names is never used.
 */
function doubled(programme: Programme, pairs: readonly ReachedPair[], chosen: ReadonlySet<string | undefined>, told: Set<string>, path: Path): Problem[] {
  return pairs.flatMap((pair) => {
    const [first, ...others] = programme.crosses.filter(({ seed, pollen }) => seed === pair.seed && pollen === pair.pollen);
    const unused = others.find(({ id }) => !chosen.has(id));
    const key = `${pair.seed} ${pair.pollen}`;
    if (!first || !unused || told.has(key)) return [];
    told.add(key);
    return [
      note(
        [...path, 'cross'],
        `“${first.name}” and “${unused.name}” are both for ${pairName(programme, pair)}: “${first.name}” is used, because it comes first`,
        'Choose the one that is meant, or delete the other.',
      ),
    ];
  });
}

/** Without the chosen way, seed would silently come up as if it were sown without care. */
function raised(generation: Generation, pairs: readonly ReachedPair[], path: Path): Problem[] {
  const { route } = generation;
  if (route === undefined) return [];
  const entry = pairs.find((pair) => pair.entry && !pair.entry.routes.some(({ id }) => id === route))?.entry;
  if (!entry) return [];
  const others = entry.routes.map(({ name }) => `“${name}”`).join(', ');
  return [
    stop(
      [...path, 'route'],
      `raises seed by “${route}”, which the cross entry “${entry.name}” does not know`,
      others === ''
        ? `Add that way to “${entry.name}”, or leave “Seed raised by” empty.`
        : `Choose ${others}, add that way to “${entry.name}”, or leave it empty.`,
    ),
  ];
}
