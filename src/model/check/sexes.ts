import { meanOf } from '../mean.ts';
import type { Path, Problem } from '../problem.ts';
import type { Father, Generation, Kind, Programme, Tree } from '../programme.ts';
import { pairsReached, type ReachedPair } from '../reach.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
const note = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });

/** Parents of the wrong sex, males that nobody keeps, and parents with an odd number of sets of chromosomes, which are as good as sterile. */
export function checkSexes(programme: Programme): Problem[] {
  return [
    ...undecided(programme),
    ...programme.plans.flatMap((plan, p) => {
      const reached = pairsReached(programme, plan);
      return plan.generations.flatMap((generation, g) => {
        const path: Path = ['plans', p, 'generations', g];
        const pairs = reached.filter((pair) => pair.generation === g);
        const before = (id: string) => {
          const at = plan.generations.findIndex((other) => other.id === id);
          return { generation: plan.generations[at], pairs: reached.filter((pair) => pair.generation === at) };
        };
        return [
          ...mothers(programme, generation, path),
          ...fathers(programme, generation, before, path),
          ...males(programme, generation, pairs, path),
          ...sterile(programme, pairs, path),
        ];
      });
    }),
  ];
}

const apart = (kind: Kind | undefined): boolean => kind !== undefined && meanOf(kind.maleShare) > 0;
const kindOf = (programme: Programme, id: string) => programme.kinds.find((kind) => kind.id === id);
const treeOf = (programme: Programme, parent: Father): Tree | undefined =>
  'tree' in parent ? programme.trees.find(({ id }) => id === parent.tree) : undefined;

function undecided(programme: Programme): Problem[] {
  return programme.trees.flatMap(({ name, kind, sex }, t) =>
    sex === 'both' && apart(kindOf(programme, kind))
      ? [note(['trees', t, 'sex'], `${name} is of a kind with separate sexes, and taken as both`, 'Say whether it is male or female.')]
      : [],
  );
}

/** What is wrong with some parents of one side, or with all of them. */
function judged(wrong: readonly string[], of: number, path: Path, says: (names: string) => string, fix: string): Problem[] {
  if (wrong.length === 0) return [];
  const message = says(wrong.join(', '));
  return [wrong.length === of ? stop(path, message, fix) : note(path, message, `${fix} Until then it is left out.`)];
}

function mothers(programme: Programme, { seedParents }: Generation, path: Path): Problem[] {
  const male = seedParents.flatMap((parent) => {
    const tree = treeOf(programme, parent);
    return tree?.sex === 'male' ? [tree.name] : [];
  });
  return judged(male, seedParents.length, [...path, 'seedParents'], (names) => `has ${names} as seed parent, which is male`, 'Choose a female seed parent.');
}

type Before = (id: string) => { readonly generation: Generation | undefined; readonly pairs: readonly ReachedPair[] };

function fathers(programme: Programme, { pollen, seedParents }: Generation, before: Before, path: Path): Problem[] {
  const at: Path = [...path, 'pollen'];
  if (pollen === 'self') {
    const single = seedParents.flatMap((parent) => {
      const tree = treeOf(programme, parent);
      return tree && tree.sex !== 'both' ? [tree.name] : [];
    });
    return judged(single, seedParents.length, at, (names) => `selfs ${names}, which has one sex alone`, 'Choose another pollen parent.');
  }
  if (!Array.isArray(pollen)) return [];
  const female = pollen.flatMap((parent) => {
    const tree = treeOf(programme, parent);
    if (tree) return tree.sex === 'female' ? [`${tree.name} (female)`] : [];
    if (!('picksOf' in parent)) return [];
    const { generation, pairs } = before(parent.picksOf);
    const gives = pairs.flatMap(({ entry }) => kindOf(programme, entry?.gives ?? '') ?? []);
    return generation && generation.keep.males === 0 && gives.length > 0 && gives.every(apart) ? [`the picks of ${generation.name} (no male is kept)`] : [];
  });
  return [
    ...judged(female, pollen.length, at, (names) => `counts on pollen of ${names}`, 'Choose a male, or keep males as fathers in that generation.'),
    ...pollen.flatMap((parent, i): Problem[] => {
      if (!('sires' in parent)) return [];
      const { generation } = before(parent.sires);
      if (!generation) return [];
      if (!Array.isArray(generation.pollen))
        return [
          stop(
            [...at, i, 'sires'],
            `asks for the fathers of ${generation.name}, which nobody knows: it is not crossed by hand`,
            'Choose a generation that is crossed by hand.',
          ),
        ];
      return generation.judge === 0
        ? [stop([...at, i, 'sires'], `judges fathers by the seedlings of ${generation.name}, of which no crop is judged`, 'Judge at least one crop there.')]
        : [];
    }),
  ];
}

function males(programme: Programme, { keep }: Generation, pairs: readonly ReachedPair[], path: Path): Problem[] {
  const gives = pairs.flatMap(({ entry }) => kindOf(programme, entry?.gives ?? '') ?? []);
  if (gives.length === 0) return [];
  if (gives.every(({ maleShare }) => meanOf(maleShare) >= 1))
    return [stop(path, 'raises males alone, which never fruit', 'Lower the share of males of their kind.')];
  return keep.males > 0 && !gives.some(apart)
    ? [
        note(
          [...path, 'keep', 'males'],
          'keeps males as fathers, but no kind that it raises has separate sexes',
          'Say what share of that kind’s seedlings is male.',
        ),
      ]
    : [];
}

/** An odd number of sets does not part evenly: without a word on what share of the seedlings is any use there are none. */
function sterile(programme: Programme, pairs: readonly ReachedPair[], path: Path): Problem[] {
  const meant = pairs.filter(({ stray, entry }) => !stray && entry !== undefined);
  const odd = meant.filter(
    ({ seed, pollen, entry }) => entry?.usableSeedlings === undefined && [seed, pollen].some((id) => (kindOf(programme, id)?.ploidy ?? 2) % 2 === 1),
  );
  const [first] = odd;
  if (!first?.entry) return [];
  const kind = [first.seed, first.pollen].map((id) => kindOf(programme, id)).find((one) => (one?.ploidy ?? 2) % 2 === 1);
  return [
    (odd.length === meant.length ? stop : note)(
      path,
      `counts on ${kind?.name ?? ''}, which has ${String(kind?.ploidy ?? 3)} sets of chromosomes and is as good as sterile`,
      `Say in the cross entry “${first.entry.name}” what share of the seedlings is any use, or choose another parent.`,
    ),
  ];
}
