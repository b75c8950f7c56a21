import { alleleBook, saysMutant } from '../incompatibility/alleles.ts';
import { pairChances } from '../incompatibility/generations.ts';
import { isRejected } from '../incompatibility/pollen.ts';
import { readSAlleles } from '../incompatibility/reading.ts';
import { sBook, type SBook } from '../incompatibility/trees.ts';
import type { Path, Problem } from '../problem.ts';
import type { Generation, Programme, Tree } from '../programme.ts';
import { pairsReached } from '../reach.ts';
import { setsOf } from '../sets.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
const note = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });
const WRITE = 'Write S and the name of each, as in S3S4, S101S102 or ScSd; S? for one that is not known.';

/** S alleles that cannot be read or are not used, and pairs of which none or half of the pollen works. */
export function checkIncompatibility(programme: Programme): Problem[] {
  return [...listed(programme), ...written(programme), ...pairs(programme), ...openly(programme), ...selfed(programme), ...kept(programme)];
}

function listed({ incompatibility }: Programme): Problem[] {
  const alleles = incompatibility?.alleles ?? [];
  const name = alleleBook([]);
  return alleles.flatMap((allele, i) => {
    const path: Path = ['incompatibility', 'alleles', i];
    const problems: Problem[] = [];
    for (const key of ['name', 'like'] as const) {
      const text = allele[key];
      const reading = text === undefined ? undefined : readSAlleles(text);
      if (reading && !(reading.ok && reading.alleles.length === 1 && reading.alleles[0] !== null))
        problems.push(stop([...path, key], `“${text ?? ''}” is not the name of one S allele`, "Write S and its name, as in S4'."));
    }
    if (alleles.slice(0, i).some((other) => name(other.name)?.name === name(allele.name)?.name))
      problems.push(stop([...path, 'name'], `${allele.name} is described twice`, 'Delete one of the two.'));
    return problems;
  });
}

function written(programme: Programme): Problem[] {
  const described = new Set((programme.incompatibility?.alleles ?? []).map(({ name }) => alleleBook([])(name)?.name));
  const told = new Set<string>();
  return programme.trees.flatMap((tree, t) => {
    const path: Path = ['trees', t, 's'];
    const reading = readSAlleles(tree.s ?? '');
    if (!reading.ok) return [stop(path, reading.message, WRITE)];
    if (reading.alleles.length === 0) return [];
    const kind = programme.kinds.find(({ id }) => id === tree.kind);
    if (!kind) return [];
    const sets = setsOf(kind);
    const problems: Problem[] = [];
    if (reading.alleles.length > sets)
      problems.push(
        stop(
          path,
          `names ${String(reading.alleles.length)} S alleles, and ${kind.name} has ${String(sets)}`,
          'Leave out what it does not carry, or say of its kind how many sets of chromosomes it has and that any pairs with any.',
        ),
      );
    if (kind.pollenRejection === 'none')
      problems.push(note(path, `S alleles are stated, but ${kind.name} rejects no pollen`, 'Say of the kind that it rejects pollen that is like itself.'));
    const unsaid = reading.alleles.find((name) => name !== null && saysMutant(name) && !described.has(name) && !told.has(name));
    if (unsaid != null) {
      told.add(unsaid);
      problems.push(
        note(
          path,
          `${unsaid} reads like an allele that lost a function, but is taken as one that works on both sides`,
          `Describe ${unsaid} among the S alleles.`,
        ),
      );
    }
    return problems;
  });
}

const treesOf = (programme: Programme, parents: Generation['pollen'] | Generation['seedParents']): Tree[] =>
  Array.isArray(parents) ? parents.flatMap((parent) => ('tree' in parent ? programme.trees.filter(({ id }) => id === parent.tree) : [])) : [];

/** Named trees that a generation pollinates with each other. */
function namedPairs(programme: Programme, { seedParents, pollen, reciprocal }: Generation): readonly (readonly [Tree, Tree])[] {
  const [mothers, fathers] = [treesOf(programme, seedParents), treesOf(programme, pollen)];
  const pairs = mothers.flatMap((mother) => fathers.map((father) => [mother, father] as const));
  return [...pairs, ...(reciprocal ? pairs.map(([mother, father]) => [father, mother] as const) : [])].filter(([mother, father]) => mother.id !== father.id);
}

const told = (tree: Tree) => `${tree.name} (${tree.s ?? ''})`;
const listOf = (words: readonly string[]) => (words.length > 3 ? `${words.slice(0, 3).join('; ')} and ${String(words.length - 3)} more` : words.join('; '));

function pairs(programme: Programme): Problem[] {
  const book = sBook(programme);
  return programme.plans.flatMap((plan, p) => {
    const reached = pairsReached(programme, plan);
    return plan.generations.flatMap((generation, g) => {
      const path: Path = ['plans', p, 'generations', g, 'pollen'];
      const named = namedPairs(programme, generation);
      const barren = named.filter(([mother, father]) => book.works(mother, father) === 0);
      const half = named.filter(([mother, father]) => book.works(mother, father) > 0 && book.works(mother, father) < 1);
      const names = listOf(barren.map(([mother, father]) => `${told(mother)} × ${told(father)}`));
      const others = [...generation.seedParents, ...(Array.isArray(generation.pollen) ? generation.pollen : [])].some((parent) => !('tree' in parent));
      const strays = reached.some(({ generation: at, stray }) => at === g && stray);
      const problems: Problem[] = [];
      if (barren.length > 0 && barren.length === named.length && !others && !strays)
        problems.push(stop(path, `crosses ${names}: the seed parent rejects all of that pollen`, 'Choose a pollen parent with another S allele.'));
      else if (barren.length > 0)
        problems.push(
          note(path, `cannot cross ${names}: the seed parent rejects all of that pollen`, 'Such pairs are left out; choose others if you count on them.'),
        );
      if (half.length > 0) problems.push(halfNote(programme, book, half, path));
      return problems;
    });
  });
}

/** Only part of the pollen works: what the seedlings get, and what goes with it. */
function halfNote(programme: Programme, book: SBook, half: readonly (readonly [Tree, Tree])[], path: Path): Problem {
  const names = listOf(
    half.map(([mother, father]) => {
      const works = book
        .allelesOf(father)
        .filter((allele) => !isRejected([allele], book.allelesOf(mother)))
        .map((allele) => allele?.name ?? 'S?');
      return `${told(mother)} × ${told(father)}, of which the seedlings get ${[...new Set(works)].join(' or ')}`;
    }),
  );
  const { group, halfSet = 1 } = programme.incompatibility ?? {};
  const linked = programme.genes.filter((gene) => group !== undefined && gene.group === group).map(({ name }) => name);
  return note(
    path,
    `only part of the pollen works in ${names}`,
    [
      halfSet < 1 ? `Set is taken as ${String(Math.round(100 * halfSet))} % of full set.` : 'Part of the pollen is ample by hand: set is taken as full.',
      ...(linked.length > 0 ? [`What is linked to the S gene goes with that allele: ${linked.join(', ')}.`] : []),
    ].join(' '),
  );
}

/** All the pollen in the air is of named trees, and their seed parents reject it. That of the seed parent alone is told elsewhere. */
function openly(programme: Programme): Problem[] {
  const book = sBook(programme);
  return programme.plans.flatMap((plan, p) =>
    plan.generations.flatMap(({ pollen, seedParents, pool: chosen }, g) => {
      const pool = programme.pools.find(({ id }) => id === (chosen ?? programme.defaultPool));
      const mothers = treesOf(programme, seedParents);
      if (pollen !== 'open' || !pool || (pool.background?.weight ?? 0) > 0 || mothers.length < seedParents.length) return [];
      const air = pool.trees.filter(({ weight }) => weight > 0).flatMap(({ tree }) => programme.trees.filter(({ id }) => id === tree));
      if (!mothers.every((mother) => air.some(({ id }) => id !== mother.id) && air.every((father) => book.works(mother, father) === 0))) return [];
      return [
        stop(
          ['plans', p, 'generations', g, 'pool'],
          `is openly pollinated, but ${listOf(mothers.map(told))} rejects all the pollen in “${pool.name}”`,
          'Add a tree with another S allele, or neighbours, to the pollen in the air.',
        ),
      ];
    }),
  );
}

/** Trees that are to be selfed and reject their own pollen. */
function selfed(programme: Programme): Problem[] {
  const book = sBook(programme);
  return programme.plans.flatMap((plan, p) =>
    plan.generations.flatMap((generation, g) => {
      if (generation.pollen !== 'self') return [];
      const trees = treesOf(programme, generation.seedParents).filter(({ kind }) => book.rejects(kind));
      const barren = trees.filter((tree) => !book.takesOwn(tree));
      if (barren.length === 0) return [];
      const path: Path = ['plans', p, 'generations', g, 'pollen'];
      const message = `selfs ${listOf(barren.map(told))}, which ${barren.length === 1 ? 'rejects its' : 'reject their'} own pollen`;
      const all = barren.length === generation.seedParents.length;
      return [all ? stop(path, message, 'Choose another pollen parent.') : note(path, message, 'It is left out.')];
    }),
  );
}

/** Brother × sister, or picks × a parent: some pairs will set nothing, and nobody knows beforehand which. */
function kept(programme: Programme): Problem[] {
  return programme.plans.flatMap((plan, p) =>
    pairChances(programme, plan).flatMap((chances, g) => {
      if (!chances || chances.none < 0.005) return [];
      const path: Path = ['plans', p, 'generations', g, 'pollen'];
      const half = chances.part >= 0.005 ? `, and in ${percent(chances.part)} only part of the pollen works` : '';
      return [
        chances.none > 0.995
          ? stop(path, 'crosses seedlings that reject all of that pollen', 'Choose a pollen parent with another S allele.')
          : note(
              path,
              `of the pairs it crosses about ${percent(chances.none)} set nothing, because both have the same S alleles${half}`,
              'Keep several picks, test their S alleles, or choose a pollen parent with other ones.',
            ),
      ];
    }),
  );
}

const percent = (share: number) => `${String(Math.round(100 * share))} %`;
