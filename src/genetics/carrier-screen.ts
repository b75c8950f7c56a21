import { meanOf } from '../model/mean.ts';
import type { Programme, ShownTrait, Tree } from '../model/programme.ts';
import { setsOf } from '../model/sets.ts';
import { fromTestOf, statesOf, type FromTest, type TreeState } from './carrier-states.ts';
import { carryingChance, rightChance, testWorth, type Hidden, type TestWorth } from './carriers.ts';
import { genesOf } from './family.ts';
import { courseOf } from './tray/course.ts';
import { beliefs } from './tray/rulings.ts';

/** Why nothing is said of a tree: an odd number of sets; too many genotypes to list; nothing fits what was seen; a gene that one parent alone passes on. */
export type Silent = 'oddSets' | 'tooMany' | 'misfit' | 'onePass';

/** A tree to cross a suspect with. */
export interface Tester {
  readonly tree: Tree;
  /** Years from the cross until half of its seedlings have fruited. */
  readonly years: number;
}

/** One tree that may hide a trait. */
export interface Suspect {
  readonly tree: Tree;
  /** Chance that it carries enough to pass it on. */
  readonly carries: number;
  /** Chance that it has all that the rule needs. */
  readonly right: number;
  /** What a test cross is worth. */
  readonly test: TestWorth;
  /** Trees here that have the wanted copies on every set, and a cross entry with it; the quickest to fruit first. */
  readonly testers: readonly Tester[];
}

/** Trees that may hide one trait: the test cross that tells most for each seedling first. */
export interface CarrierScreen {
  readonly trait: ShownTrait;
  readonly suspects: readonly Suspect[];
  /** Trees of which no chance can be given, and why. */
  readonly silent: readonly { readonly tree: Tree; readonly why: Silent }[];
  /** Whether one copy is enough to show it, by the rules believed in: the tester's own copy then shows in every seedling, and a test cross tells nothing. */
  readonly oneIsEnough: 'surely' | 'perhaps' | 'no';
}

/** A tree counts as having all copies, and as known to have the trait, from this chance on. */
const SURE = 0.995;
const EVEN_SETS = [2, 4, 6] as const;

interface Looked {
  readonly tree: Tree;
  readonly rules: readonly { readonly belief: number; readonly states: readonly TreeState[] }[];
}

const over = ({ rules }: Looked, value: (states: readonly Hidden[]) => number): number =>
  rules.reduce((sum, { belief, states }) => sum + belief * value(states), 0);
const fullChance = ({ rules }: Looked): number =>
  rules.reduce((sum, { belief, states }) => sum + belief * states.reduce((all, { full, chance }) => all + (full ? chance : 0), 0), 0);

/** Whether the tester alone gives every seedling what a rule needs. The same for any number of sets: half of them are enough for one copy. */
function enoughIn({ rules }: ShownTrait, fromTest: FromTest): CarrierScreen['oneIsEnough'] {
  const enough = rules.filter(({ needs }) => fromTest({}, needs) === 1).length;
  return enough === 0 ? 'no' : enough === rules.length ? 'surely' : 'perhaps';
}

/** The cross of two trees, either way round, that fruits sooner. */
function crossOf(programme: Programme, one: Tree, other: Tree): Tester | null {
  const ways = [
    [one, other],
    [other, one],
  ] as const;
  const years = ways.flatMap(([seed, pollen]) => {
    const course = seed.sex === 'male' || pollen.sex === 'female' ? null : courseOf(programme, seed, pollen);
    return course ? [course.toGermination + course.seasons.half] : [];
  });
  return years.length > 0 ? { tree: other, years: Math.min(...years) } : null;
}

/**
 * Lists the trees whose copies are not all stated and that may carry a trait unseen, with the chance that they do: each rule's genotypes
 * weighed by what was seen of the tree and of its test crosses, over all rules as the breeder believes in them. Genes are taken as free of
 * each other; a test cross is with a tree that has the counted allele on every set, its seedlings judged on one crop each.
 *
 * **Source:** Bayes' rule; docs/model.md §§ 2, 4, 9.
 */
export function carrierScreen(programme: Programme, trait: ShownTrait): CarrierScreen {
  const believed = beliefs(trait);
  const tests = new Map(EVEN_SETS.map((sets): [number, FromTest] => [sets, fromTestOf(programme, sets)]));
  const genes = new Set(trait.rules.flatMap(({ needs }) => genesOf(needs)));
  const onePass = programme.genes.some(({ id, passes }) => genes.has(id) && passes !== 'both');
  const isUnknown = ({ genes: states }: Tree): boolean => [...genes].some((gene) => 'frequency' in (states[gene] ?? { copies: 0 }));
  const look = (tree: Tree): Looked | Silent => {
    const kind = programme.kinds.find(({ id }) => id === tree.kind);
    const sets = kind ? setsOf(kind) : 2;
    const fromTest = tests.get(sets);
    if (!fromTest) return 'oddSets';
    if (onePass) return 'onePass';
    try {
      const rules = trait.rules.flatMap((_, rule) => {
        const states = statesOf(programme, tree, trait, rule, sets, fromTest);
        return states ? [{ belief: believed[rule]!, states }] : [];
      });
      return rules.length === trait.rules.length ? { tree, rules } : 'misfit';
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return 'tooMany';
    }
  };
  const all = programme.trees.map((tree) => ({ tree, seen: look(tree) }));
  const looked = all.flatMap(({ seen }) => (typeof seen === 'string' ? [] : [seen]));
  const how = { canShow: meanOf(trait.canShow), seasons: meanOf(trait.seasonsShown), falseShow: meanOf(trait.falseShow) };
  const suspects = looked.flatMap((one): Suspect[] => {
    const right = over(one, rightChance);
    // A tree that surely has it hides nothing.
    if (!isUnknown(one.tree) || right >= SURE) return [];
    const testers = looked.flatMap((other) => (other !== one && fullChance(other) >= SURE ? (crossOf(programme, one.tree, other.tree) ?? []) : []));
    return [{ tree: one.tree, carries: over(one, carryingChance), right, test: testWorth(one.rules, how), testers: testers.sort((a, b) => a.years - b.years) }];
  });
  return {
    trait,
    suspects: suspects.sort((a, b) => b.test.perSeedling - a.test.perSeedling || b.carries - a.carries),
    silent: all.flatMap(({ tree, seen }) => (typeof seen === 'string' && isUnknown(tree) ? [{ tree, why: seen }] : [])),
    oneIsEnough: enoughIn(trait, tests.get(2)!),
  };
}

/** Every shown-or-not trait that some tree may hide. */
export const carrierScreens = (programme: Programme): CarrierScreen[] =>
  programme.traits
    .flatMap((trait) => (trait.type === 'shown' ? [carrierScreen(programme, trait)] : []))
    .filter(({ suspects, silent }) => suspects.length + silent.length > 0);
