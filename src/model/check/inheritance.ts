import { mostWeighedGenes } from '../limits.ts';
import type { Path, Problem } from '../problem.ts';
import type { Kind, Programme, Rule } from '../programme.ts';
import { pairsReached } from '../reach.ts';
import { setsOf, sidesOf } from '../sets.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
const note = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });

/** Copies that no tree can carry, crosses whose sets do not add up, double reduction beyond its limit, test crosses, markers of origin. */
export function checkInheritance(programme: Programme): Problem[] {
  return [...dosages(programme), ...ruled(programme), ...reduction(programme), ...crosses(programme), ...tested(programme), ...origin(programme)];
}

/** Copies stated of trees, and those that leaf tests ask for. */
function dosages(programme: Programme): Problem[] {
  const most = Math.max(...programme.kinds.map(setsOf));
  const trees = programme.trees.flatMap((tree, t) => {
    const kind = programme.kinds.find(({ id }) => id === tree.kind);
    if (!kind) return [];
    return Object.entries(tree.genes).flatMap(([gene, state]) =>
      'copies' in state && state.copies > setsOf(kind)
        ? [stop(['trees', t, 'genes', gene, 'copies'], `${tree.name} cannot carry ${String(state.copies)} copies: ${holds(kind)}`, setsFix(kind))]
        : [],
    );
  });
  const tests = programme.plans.flatMap((plan, p) =>
    plan.generations.flatMap(({ test }, g) =>
      test && test.copies > most
        ? [
            stop(
              ['plans', p, 'generations', g, 'test', 'copies'],
              `reads at least ${String(test.copies)} copies, and no kind has more than ${String(most)}`,
              `Read at most ${String(most)}.`,
            ),
          ]
        : [],
    ),
  );
  return [...trees, ...tests];
}

const holds = (kind: Kind) =>
  kind.ploidy > 2 && kind.inheritance === 'disomic'
    ? `in ${kind.name} the sets pair two by two, so a gene has at most 2`
    : `${kind.name} has ${String(kind.ploidy)} sets of chromosomes`;
const setsFix = (kind: Kind) =>
  kind.inheritance === 'disomic' && kind.ploidy > 2
    ? `State at most 2, or say of ${kind.name} that any set pairs with any.`
    : `State at most ${String(setsOf(kind))}, or give ${kind.name} more sets of chromosomes.`;

/** Needs that no genotype of any kind can meet. */
function ruled(programme: Programme): Problem[] {
  const most = Math.max(...programme.kinds.map(setsOf));
  return programme.traits.flatMap((trait, t) =>
    trait.type === 'measured'
      ? []
      : trait.rules.flatMap(({ needs }: Rule, r) =>
          needs.needs === 'total'
            ? []
            : needs.of.flatMap(({ copies }, i) =>
                copies > most
                  ? [
                      stop(
                        ['traits', t, 'rules', r, 'needs', 'of', i, 'copies'],
                        `${String(copies)} copies of a gene cannot be had: no kind has more than ${String(most)}`,
                        `Ask for at most ${String(most)}, or say of a kind how many sets it has and that any set pairs with any.`,
                      ),
                    ]
                  : [],
              ),
        ),
  );
}

/** Complete equational segregation. **Source:** Mather 1936, J. Genet. 32:287–314: 1/6 with four sets; 3/10 with six (from memory). */
const MOST_ALPHA: Readonly<Record<number, number>> = { 4: 1 / 6, 5: 1 / 6, 6: 3 / 10 };
const ALPHA_WORDS: Readonly<Record<number, string>> = { 4: '1/6', 5: '1/6', 6: '3/10' };

function reduction(programme: Programme): Problem[] {
  const polysomic = programme.kinds.filter((kind) => setsOf(kind) > 3);
  const fewest = polysomic.reduce<Kind | undefined>((least, kind) => (least && setsOf(least) <= setsOf(kind) ? least : kind), undefined);
  return programme.genes.flatMap((gene, g) => {
    const path: Path = ['genes', g, 'doubleReduction'];
    const other = programme.genes.find(
      ({ group, position, doubleReduction }) =>
        group !== undefined && group === gene.group && position !== undefined && gene.position !== undefined && doubleReduction !== gene.doubleReduction,
    );
    if (other && programme.genes.indexOf(other) < g)
      return [stop(path, `${gene.name} and ${other.name} lie in one linkage group and have different double reduction`, 'Give both the same.')];
    if (gene.doubleReduction === 0) return [];
    if (!fewest)
      return [
        note(path, 'has double reduction, but in no kind can any set pair with any', 'It changes nothing until a kind with four or six such sets is there.'),
      ];
    const sets = setsOf(fewest);
    if (gene.doubleReduction <= (MOST_ALPHA[sets] ?? 0) + 1e-9) return [];
    return [
      stop(
        path,
        `double reduction is at most ${ALPHA_WORDS[sets] ?? '0'} with ${String(sets)} sets, as ${fewest.name} has`,
        'Lower it; published values are mostly below 0.1.',
      ),
    ];
  });
}

/** Sets of the parents and of the seedlings, in cross entries that plans come to. */
function crosses(programme: Programme): Problem[] {
  const kindOf = (id: string) => programme.kinds.find((kind) => kind.id === id);
  const used = new Set(programme.plans.flatMap((plan) => pairsReached(programme, plan).flatMap(({ entry }) => (entry ? [entry.id] : []))));
  return programme.crosses.flatMap((cross, c): Problem[] => {
    const [seed, pollen, gives] = [kindOf(cross.seed), kindOf(cross.pollen), kindOf(cross.gives)];
    if (!used.has(cross.id) || !seed || !pollen || !gives) return [];
    const path: Path = ['crosses', c, 'gives'];
    const sum = `${seed.name} with ${String(setsOf(seed))} × ${pollen.name} with ${String(setsOf(pollen))} cannot give ${gives.name} with ${String(setsOf(gives))} sets`;
    if (!sidesOf(setsOf(seed), setsOf(pollen), setsOf(gives)))
      return [stop(path, sum, 'Each parent gives half of its sets: choose or add a kind for the seedlings that has the sum of both halves.')];
    if (!sidesOf(seed.ploidy, pollen.ploidy, gives.ploidy))
      return [
        note(
          path,
          `${String(seed.ploidy)} × ${String(pollen.ploidy)} sets do not give ${String(gives.ploidy)}`,
          'Right only if a parent makes pollen or eggs with all its sets.',
        ),
      ];
    return [];
  });
}

function tested(programme: Programme): Problem[] {
  return programme.trees.flatMap((tree, t) =>
    Object.entries(tree.testCrosses).flatMap(([traitId, { showed, of }]): Problem[] => {
      const path: Path = ['trees', t, 'testCrosses', traitId];
      const trait = programme.traits.find(({ id }) => id === traitId);
      const kind = programme.kinds.find(({ id }) => id === tree.kind);
      if (trait?.type !== 'shown' || !kind) return [];
      if (showed > of) return [stop([...path, 'showed'], 'More cannot have shown it than were looked at', 'Put the two in order.')];
      if (setsOf(kind) % 2 === 1) return [note(path, `test crosses of ${kind.name} are not weighed`, 'With an odd number of sets few seedlings are whole.')];
      const genes = new Set([...Object.keys(tree.seen), ...Object.keys(tree.testCrosses)].flatMap((id) => genesOf(programme, id)));
      const unknown = [...genes].filter((gene) => 'frequency' in (tree.genes[gene] ?? {}));
      const most = mostWeighedGenes(setsOf(kind));
      if (unknown.length > most)
        return [stop(path, `rests on ${String(unknown.length)} unknown genes`, `At most ${String(most)} can be weighed; state some of them.`)];
      return [];
    }),
  );
}

function genesOf(programme: Programme, traitId: string): string[] {
  const trait = programme.traits.find(({ id }) => id === traitId);
  return trait?.type === 'shown' ? trait.rules.flatMap(({ needs }) => (needs.needs === 'total' ? needs.genes : needs.of.map(({ gene }) => gene))) : [];
}

function origin(programme: Programme): Problem[] {
  if (!programme.origin) return [];
  const { chromosomes, length } = programme.origin;
  const groups = new Set(programme.genes.map(({ id, group, position }) => (group === undefined || position === undefined ? `gene ${id}` : group)));
  const far = programme.genes.find(({ position }) => (position ?? 0) > length);
  return [
    ...(groups.size > chromosomes
      ? [
          stop(
            ['origin', 'chromosomes'],
            `the genes lie on ${String(groups.size)} chromosomes, and one set has ${String(chromosomes)}`,
            'Put genes into one linkage group, or raise the number.',
          ),
        ]
      : []),
    ...(far ? [note(['origin', 'length'], `${far.name} lies at ${String(far.position)} cM, beyond the end`, 'Its chromosome is taken as longer.')] : []),
  ];
}
