import { freshId } from '../../model/plans.ts';
import type { Generation, Plan, Programme, Tree } from '../../model/programme.ts';
import { treesOf } from '../copies.ts';
import { onlyPlan, withPlanChanged, withTree } from '../variants.ts';
import { certain, halfWay, yearsFrom, type If, type Way } from './way.ts';

/** More gardens than these are not asked about one by one. */
const MOST_GARDENS = 4;

/**
 * The land is lost: everything in it is gone in the winter before that spring, and the plan begins again on other ground with what lives
 * elsewhere. The chance of a tree proven before stands beside it, for when there is no other ground. Where something lives elsewhere, a later
 * loss can be worse than an early one: little is lost early, and much time is left.
 */
export const land: If = {
  id: 'land',
  ways(programme, plan) {
    const years = yearsFrom(programme.startYear + 1, programme.lastYear);
    if (years.length === 0) return 'tooShort';
    const home = withHome(programme);
    const gardens = home.gardens.map(({ id }) => id);
    const way = (form: Way['form'], of: Programme, lost: readonly string[], garden: string | null = null): Omit<Way, 'whole'> => ({
      if: 'land',
      form,
      garden,
      year: halfWay(programme),
      years,
      variant: (year) => certain(of, { land: { year, gardens: lost } }),
    });
    const used = treesOf(programme, plan);
    const places = gardensOf(programme, plan, used);
    const apart = elsewhere(home);
    return [
      // Nothing lives on, so what is proven before is all: no year need be run.
      { ...way('all', home, gardens), whole: { variant: { programme, plan: 0 }, until: (year) => year - 1 } },
      ...(programme.gardens.length === 0 ? [way('seedlings', treesApart(apart.programme, used, apart.id), gardens)] : []),
      ...(programme.stocks.length > 0 ? [way('copied', copiesApart(apart.programme, plan.id, used, apart.id), gardens)] : []),
      ...(places.length > 1 ? places.slice(0, MOST_GARDENS).map((id) => way('garden', programme, [id], id)) : []),
    ];
  },
};

/** Gardens in which anything of a plan stands, in the order of the programme; what states none is at home, in the first. */
function gardensOf({ gardens }: Programme, { generations }: Plan, trees: readonly Tree[]): readonly string[] {
  const home = gardens[0]?.id;
  const ids = new Set([
    ...generations.flatMap(({ garden, backup }) => [garden ?? home, ...(backup ? [backup.garden ?? home] : [])]),
    ...trees.flatMap((tree) => (tree.gardens.length > 0 ? tree.gardens : [home])),
  ]);
  return gardens.flatMap(({ id }) => (ids.has(id) ? id : []));
}

/** Where no garden is stated, all that stands is in one that is never lost by chance: the same futures. */
function withHome(programme: Programme): Programme {
  return programme.gardens.length > 0 ? programme : { ...programme, gardens: [{ id: 'home', name: 'home', yearlyLoss: 0 }] };
}

/** Adds other ground, as safe as the first garden. */
function elsewhere(programme: Programme): { readonly programme: Programme; readonly id: string } {
  const [home] = programme.gardens;
  const ids = programme.gardens.map((garden) => garden.id);
  const id = freshId('elsewhere', ids);
  return { programme: { ...programme, gardens: [...programme.gardens, { name: id, yearlyLoss: home?.yearlyLoss ?? 0, id }] }, id };
}

function treesApart(programme: Programme, trees: readonly Tree[], garden: string): Programme {
  return trees.reduce((edited, { id }) => withTree(edited, id, (tree) => ({ ...tree, gardens: [garden] })), programme);
}

/** One more copy of each founding tree, and one of each pick, in that garden. */
function copiesApart(programme: Programme, plan: string, trees: readonly Tree[], garden: string): Programme {
  const home = programme.gardens[0]?.id ?? garden;
  const stock = programme.stocks[0]?.id ?? '';
  const backed = ({ backup, ...generation }: Generation): Generation => ({ ...generation, backup: { copies: 1, stock: backup?.stock ?? stock, garden } });
  const planted = trees.reduce(
    (edited, { id }) =>
      withTree(edited, id, (tree) => {
        const places = tree.gardens.length > 0 ? tree.gardens : [home];
        // Copies are dealt in turn, so each is named its garden: the ones there stay where they are.
        return { ...tree, copies: tree.copies + 1, gardens: [...Array.from({ length: tree.copies }, (_, i) => places[i % places.length] ?? home), garden] };
      }),
    programme,
  );
  return onlyPlan(
    withPlanChanged(planted, plan, (entry) => ({ ...entry, generations: entry.generations.map(backed) })),
    plan,
  );
}
