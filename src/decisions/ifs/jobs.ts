import type { Cross, Father, Generation, Plan, Programme, Tree } from '../../model/programme.ts';
import { treesOf } from '../copies.ts';
import type { Variant } from '../steps.ts';
import { withTree } from '../variants.ts';
import { middleOf } from '../../model/estimate-forms.ts';
import { certain, firstSpring } from './way.ts';

/** A job of the plan's first spring, or one that could be added to it. */
export type JobKind =
  /** Two trees are crossed by hand, or one is selfed. */
  | 'cross'
  /** Fruit is gathered under an open-pollinated tree. */
  | 'gather'
  /** As many flowers again are pollinated. */
  | 'moreFlowers'
  /** One more copy of a founding tree is grafted. */
  | 'copy'
  /** The weak seedlings of that spring's cross, or all, are grafted. */
  | 'graft';

/** One job, and the futures with and without it. */
export interface JobWay {
  readonly kind: JobKind;
  readonly generation: string | null;
  readonly seed: string | null;
  readonly pollen: string | null;
  /** Calendar year in which it is done. */
  readonly year: number;
  /** The plan does it; else it comes on top, and `changed` holds the futures with it. */
  readonly inPlan: boolean;
  readonly changed: Variant;
  /** Hours where the engine does not book them; null: read from the futures. */
  readonly hours: number | null;
}

/** Pairs beyond these are not asked about one by one. */
const MOST_PAIRS = 8;
const AGAIN = 2;

/**
 * The jobs of the first spring: every pair crossed (or tree gathered under), as many flowers again, one more copy of each founding tree that
 * can be lost, and the rescue grafts of what that spring's seed brings. In the beginning nothing else stands that could be worked at.
 * @param plan alone in its programme
 */
export function jobsOf(programme: Programme, plan: Plan): readonly JobWay[] {
  const [first] = plan.generations;
  const year = firstSpring(programme, plan);
  if (!first || year > programme.lastYear) return [];
  return [...crosses(programme, first, year), ...moreFlowers(programme, first, year), ...copiesOf(programme, plan, year), ...grafts(programme, first, year)];
}

type Parents = readonly Father[];

const bearing = ({ startYear, trees }: Programme, parents: Parents, year: number): readonly string[] =>
  parents.flatMap((parent) => {
    const tree = 'tree' in parent ? trees.find(({ id }) => id === parent.tree) : undefined;
    return tree && (tree.bearsFrom ?? startYear) <= year ? tree.id : [];
  });

function pairsOf(programme: Programme, { seedParents, pollen, reciprocal, selfs }: Generation, year: number): readonly (readonly [string, string | null])[] {
  const mothers = bearing(programme, seedParents, year);
  if (!Array.isArray(pollen)) return mothers.map((mother) => [mother, null]);
  const fathers = bearing(programme, pollen, year);
  const both = mothers.flatMap((mother) =>
    fathers.flatMap((father): [string, string][] => [[mother, father], ...(reciprocal ? [[father, mother] satisfies [string, string]] : [])]),
  );
  return [...new Map(both.filter(([mother, father]) => mother !== father || selfs).map((pair) => [pair.join(' × '), pair])).values()];
}

const crosses = (programme: Programme, generation: Generation, year: number): readonly JobWay[] =>
  pairsOf(programme, generation, year)
    .slice(0, MOST_PAIRS)
    .map(([seed, pollen]) => ({
      kind: generation.pollen === 'open' ? 'gather' : 'cross',
      generation: generation.id,
      seed,
      pollen: generation.pollen === 'self' ? seed : pollen,
      year,
      inPlan: true,
      changed: certain(programme, { leaves: { year, generation: generation.id, seed, pollen } }),
      hours: null,
    }));

const moreFlowers = (programme: Programme, { id, pollen }: Generation, year: number): readonly JobWay[] =>
  pollen === 'open'
    ? []
    : [
        {
          kind: 'moreFlowers',
          generation: id,
          seed: null,
          pollen: null,
          year,
          inPlan: false,
          changed: certain(programme, { hands: { from: year, until: year, times: AGAIN } }),
          hours: null,
        },
      ];

/** Where it stands, so it is lost with that garden; it is taken to grow, and to be there from the first spring. */
const copiesOf = (programme: Programme, plan: Plan, year: number): readonly JobWay[] =>
  treesOf(programme, plan)
    .filter((tree) => canBeLost(programme, tree))
    .map(({ id }) => ({
      kind: 'copy',
      generation: null,
      seed: id,
      pollen: null,
      year,
      inPlan: false,
      changed: { programme: withTree(programme, id, (entry) => ({ ...entry, copies: entry.copies + 1 })), plan: 0 },
      hours: programme.hours.perGraft,
    }));

const canBeLost = ({ gardens }: Programme, { yearlyLoss, gardens: places }: Tree): boolean =>
  middleOf(yearlyLoss) > 0 || gardens.some(({ id, yearlyLoss: loss }, g) => (places.length > 0 ? places.includes(id) : g === 0) && middleOf(loss) > 0);

/** The seed of that spring comes up in the next, after the years it lies over; its seedlings are grafted at the age that the plan says. */
function grafts(programme: Programme, generation: Generation, spring: number): readonly JobWay[] {
  const { rescue, id } = generation;
  if (!rescue || rescue.who === 'none') return [];
  const dormancy = crossOf(programme, generation, spring)?.dormancy ?? 0;
  const year = spring + 1 + dormancy + Math.floor(rescue.month / 12);
  if (year > programme.lastYear) return [];
  return [
    {
      kind: 'graft',
      generation: id,
      seed: null,
      pollen: null,
      year,
      inPlan: true,
      changed: certain(programme, { graftless: { year, generation: id } }),
      hours: null,
    },
  ];
}

function crossOf(programme: Programme, generation: Generation, year: number): Cross | undefined {
  const { crosses: entries, trees } = programme;
  if (generation.cross !== undefined) return entries.find(({ id }) => id === generation.cross);
  const [[seed, pollen] = ['', null]] = pairsOf(programme, generation, year);
  const kindOf = (tree: string | null) => trees.find(({ id }) => id === tree)?.kind;
  return entries.find((entry) => entry.seed === kindOf(seed) && entry.pollen === kindOf(pollen ?? seed));
}
