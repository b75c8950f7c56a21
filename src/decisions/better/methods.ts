import { checkProgramme } from '../../model/check.ts';
import type { Generation, Plan, Programme } from '../../model/programme.ts';
import { onlyPlan, withGeneration } from '../variants.ts';
import { firstFlowers, type Alternative } from './alternative.ts';
import * as words from './words.ts';

type Parent = Generation['seedParents'][number];
interface Parents {
  readonly words: string;
  readonly seedParents: readonly Parent[];
  readonly pollen: 'open' | 'self' | readonly Parent[];
}

/** Ways of pollination other than the plan's own for which the cross entries are there: open, own pollen, each named tree, picks × picks. */
export function methods(programme: Programme, plan: Plan, generation: Generation): readonly Alternative[] {
  const picks = picksUsed(generation);
  const ways = picks ? withPicks(programme, picks) : withTrees(programme, generation);
  const same = (way: Parents) => JSON.stringify([way.seedParents, way.pollen]) === JSON.stringify([generation.seedParents, generation.pollen]);
  const alone = onlyPlan(programme, plan.id);
  // A tree as seed parent comes before the same tree as pollen parent: where both can be, or the plan has one of them, one is enough.
  const seen = new Set(ways.filter(same).map(({ words: name }) => name));
  return ways
    .filter((way) => !same(way))
    .map((way): Alternative => ({ words: way.words, change: (entry) => crossed(programme, entry, way) }))
    .filter(({ words: name, change }) => {
      if (seen.has(name) || checkProgramme(withGeneration(alone, plan.id, generation.id, change)).some(({ stops }) => stops)) return false;
      seen.add(name);
      return true;
    });
}

function crossed({ plans }: Programme, { cross: _named, ...generation }: Generation, { seedParents, pollen }: Parents): Generation {
  const byHand = typeof pollen !== 'string';
  return {
    ...generation,
    seedParents: [...seedParents],
    pollen: byHand ? [...pollen] : pollen,
    flowers: pollen === 'open' ? 0 : generation.flowers || firstFlowers(plans),
  };
}

function picksUsed({ seedParents, pollen }: Generation): Parent | undefined {
  return [...seedParents, ...(Array.isArray(pollen) ? pollen : [])].find((parent) => 'picksOf' in parent);
}

/** Trees that are tried as partners: those that plans use first, and no more than can be tried. */
const MOST_PARTNERS = 8;

function partners({ trees, plans }: Programme): Programme['trees'] {
  const used = new Set(
    plans.flatMap(({ generations }) =>
      generations.flatMap(({ seedParents, pollen }) =>
        [...seedParents, ...(Array.isArray(pollen) ? pollen : [])].flatMap((parent) => ('tree' in parent ? parent.tree : [])),
      ),
    ),
  );
  return [...trees.filter(({ id }) => used.has(id)), ...trees.filter(({ id }) => !used.has(id))].slice(0, MOST_PARTNERS);
}

function withPicks(programme: Programme, picks: Parent): readonly Parents[] {
  return [
    { words: words.open, seedParents: [picks], pollen: 'open' },
    { words: words.selfed, seedParents: [picks], pollen: 'self' },
    { words: words.picksTogether, seedParents: [picks], pollen: [picks] },
    ...partners(programme).flatMap(({ id, name }): Parents[] => [
      { words: words.picksWith(name), seedParents: [{ tree: id }], pollen: [picks] },
      { words: words.picksWith(name), seedParents: [picks], pollen: [{ tree: id }] },
    ]),
  ];
}

function withTrees(programme: Programme, { seedParents }: Generation): readonly Parents[] {
  const stands = (id: string) => seedParents.some((parent) => 'tree' in parent && parent.tree === id);
  return [
    { words: words.open, seedParents, pollen: 'open' },
    { words: words.selfed, seedParents, pollen: 'self' },
    ...partners(programme)
      .filter(({ id }) => !stands(id))
      .map(({ id, name }): Parents => ({ words: words.pollenOf(name), seedParents, pollen: [{ tree: id }] })),
  ];
}
