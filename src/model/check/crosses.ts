import type { Problem } from '../problem.ts';
import type { Programme } from '../programme.ts';
import { pairsReached } from '../reach.ts';

/** Every ordered pair of kinds that a plan can reach, strays and pools included, needs a cross entry. */
export function checkCrosses(programme: Programme): Problem[] {
  const missing = new Set<string>();
  const name = (id: string) => programme.kinds.find((kind) => kind.id === id)?.name ?? id;
  return programme.plans.flatMap((plan, p) =>
    pairsReached(programme, plan).flatMap(({ generation, seed, pollen, stray, entry }): Problem[] => {
      const key = `${seed} ${pollen}`;
      if (entry || missing.has(key)) return [];
      missing.add(key);
      const pair = `${name(seed)} × ${name(pollen)}`;
      return [
        {
          path: ['plans', p, 'generations', generation],
          message: stray
            ? `can get stray pollen of ${name(pollen)} on ${name(seed)}, and there is no cross entry for that pair`
            : `crosses ${pair}, and there is no cross entry for that pair`,
          fix: `Add the cross entry ${pair}, seed parent first.`,
          stops: true,
        },
      ];
    }),
  );
}
