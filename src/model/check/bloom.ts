import type { Problem } from '../problem.ts';
import type { Programme, Tree } from '../programme.ts';

/** A cross by hand whose pollen tree opens after its seed parent: there is no fresh pollen when it is wanted. Common practice, no source. */
export function checkBloom({ plans, trees }: Programme): Problem[] {
  const named = (parent: object): Tree[] => ('tree' in parent ? trees.filter(({ id }) => id === parent.tree) : []);
  return plans.flatMap(({ generations }, p) =>
    generations.flatMap(({ seedParents, pollen, reciprocal }, g) => {
      if (!Array.isArray(pollen)) return [];
      const [mothers, fathers] = [seedParents.flatMap(named), pollen.flatMap(named)];
      const pairs = mothers.flatMap((mother) => fathers.map((father) => [mother, father] as const));
      const late = [...pairs, ...(reciprocal ? pairs.map(([mother, father]) => [father, mother] as const) : [])].flatMap(([mother, father]) => {
        const days = (father.bloomDay ?? NaN) - (mother.bloomDay ?? NaN);
        return days > 0 ? [`that of ${father.name} comes ${String(days)} ${days === 1 ? 'day' : 'days'} after ${mother.name} opens`] : [];
      });
      if (late.length === 0) return [];
      return [
        {
          path: ['plans', p, 'generations', g, 'pollen'],
          message: `needs pollen before it is there: ${late.slice(0, 3).join('; ')}`,
          fix: 'Keep dry, cold pollen from the spring before, force a branch indoors, or cross the other way round. Flowers are counted as if there were pollen.',
          stops: false,
        },
      ];
    }),
  );
}
