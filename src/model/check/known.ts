import type { Path, Problem } from '../problem.ts';
import type { Condition, Generation, Programme } from '../programme.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });
const note = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: false });

/** Conditions, ranks and looks that ask for what nobody can know at that time. */
export function checkKnown(programme: Programme): Problem[] {
  const plans = programme.plans.flatMap((plan, p) => [
    ...untested(programme, plan.generations, ['plans', p]),
    ...plan.generations.flatMap((generation, g) => inGeneration(programme, generation, ['plans', p, 'generations', g])),
  ]);
  return [...conditions(programme, programme.goal.conditions, ['goal', 'conditions']), ...plans];
}

/** A goal reads the leaf test of the generation that a tree is of. */
function untested(programme: Programme, generations: readonly Generation[], path: Path): Problem[] {
  return programme.goal.conditions.flatMap((condition) => {
    if (condition.type !== 'test' || generations.some(({ judge, test }) => judge > 0 && test?.gene === condition.gene)) return [];
    const name = programme.genes.find(({ id }) => id === condition.gene)?.name ?? condition.gene;
    return [
      note(path, `judges no generation of which leaves are tested for ${name}, and the goal asks for that test`, 'Add the leaf test to the last generation.'),
    ];
  });
}

function inGeneration(programme: Programme, { judge, keep, look }: Generation, path: Path): Problem[] {
  const problems = conditions(programme, keep.conditions, [...path, 'keep', 'conditions']);
  if (judge === 0 && keep.rank === 'index')
    problems.push(
      note([...path, 'keep', 'rank'], 'ranks by an index, but judges no crop: all are equal then', 'Judge at least one crop, or rank in another way.'),
    );
  const seen = programme.traits.find(({ id }) => id === look?.trait);
  if (seen?.type === 'shown' && seen.grade)
    problems.push(
      note(
        [...path, 'look', 'trait'],
        `looks at seedlings for ${seen.name}, which is told by cutting fruit`,
        'Right if leaf or wood betrays it; say how often it is missed or seems to show.',
      ),
    );
  return problems;
}

function conditions(programme: Programme, list: readonly Condition[], path: Path): Problem[] {
  return list.flatMap((condition, i): Problem[] => {
    if (condition.type === 'test') return [];
    const { atLeast, atMost } = condition;
    if (atLeast !== undefined && atMost !== undefined && atLeast > atMost)
      return [stop([...path, i, 'atMost'], `asks for at least ${String(atLeast)} and at most ${String(atMost)}`, 'Put the two in order, or drop one.')];
    const trait = programme.traits.find(({ id }) => id === condition.trait);
    if (condition.type !== 'shown' || condition.grade !== 'part' || trait?.type !== 'shown' || (atLeast ?? 0) === 0) return [];
    const cut = trait.grade?.fruitsCut ?? 0;
    if (cut > 1) return [];
    return [
      stop(
        [...path, i, 'grade'],
        `asks for ${trait.name} in part of the fruit, but ${cut === 1 ? 'only one fruit is cut' : 'it is not said how much of the fruit shows it'}`,
        cut === 1 ? 'Cut at least two fruits a tree, or ask for it at all.' : 'Say it at the trait, or ask for it at all.',
      ),
    ];
  });
}
