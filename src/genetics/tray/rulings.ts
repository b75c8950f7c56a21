import { meanOf } from '../../model/mean.ts';
import type { Programme, ShownTrait, Tree } from '../../model/programme.ts';
import { genesOf } from '../family.ts';
import { isUnknown, type Ruling } from './parent.ts';

/** One combination of rules of traits that say something of the genes looked at, and how far it is believed. */
export interface Combination {
  readonly rulings: readonly Ruling[];
  readonly belief: number;
}

/** Rules times rules: more would stall the page. */
const MOST_COMBINATIONS = 512;

const shownTraits = (programme: Programme): ShownTrait[] => programme.traits.filter((trait) => trait.type === 'shown');
const genesOfTrait = (trait: ShownTrait): string[] => trait.rules.flatMap(({ needs }) => genesOf(needs));

/** A trait under its rule number `at`; genes are those of the programme, for their double reduction. */
export function rulingOf(trait: ShownTrait, at: number, genes: Programme['genes'] = []): Ruling {
  return {
    doubleReduction: Object.fromEntries(genes.map(({ id, doubleReduction }) => [id, doubleReduction])),
    trait: trait.id,
    needs: trait.rules[at]!.needs,
    canShow: meanOf(trait.canShow),
    seasons: meanOf(trait.seasonsShown),
    falseShow: meanOf(trait.falseShow),
  };
}

/** Chance of each rule of a trait, from its weights. */
export function beliefs({ rules }: Pick<ShownTrait, 'rules'>): number[] {
  const total = rules.reduce((sum, { weight }) => sum + weight, 0);
  return rules.map(({ weight }) => weight / total);
}

/** Traits of which something was seen that says, directly or by way of others, what the trees carry at these genes. */
function telling(programme: Programme, trees: readonly Tree[], genes: readonly string[]): ShownTrait[] {
  const reached = new Set(genes);
  const found = new Set<ShownTrait>();
  const tells = (trait: ShownTrait) =>
    trees.some(
      (tree) =>
        (tree.seen[trait.id] !== undefined || tree.testCrosses[trait.id] !== undefined) &&
        genesOfTrait(trait).some((gene) => reached.has(gene) && isUnknown(tree, gene)),
    );
  for (;;) {
    const more = shownTraits(programme).filter((trait) => !found.has(trait) && tells(trait));
    if (more.length === 0) return [...found];
    for (const trait of more) {
      found.add(trait);
      for (const gene of genesOfTrait(trait)) reached.add(gene);
    }
  }
}

/**
 * Lists the combinations of rules that matter for what some trees carry at some genes; beliefs sum to 1. Rules are believed as the
 * breeder weighed them: what was seen conditions genotypes only (docs/model.md §2).
 * @param trees the parents
 * @param fixed a trait that stands under one of its rules already; it is part of every combination
 * @throws RangeError for more than 512 combinations
 */
export function combinations(
  programme: Programme,
  trees: readonly Tree[],
  genes: readonly string[],
  fixed?: { trait: ShownTrait; rule: number },
): Combination[] {
  const own = fixed ? genesOfTrait(fixed.trait) : [];
  const others = telling(programme, trees, [...genes, ...own]).filter((trait) => trait.id !== fixed?.trait.id);
  if (others.reduce((product, { rules }) => product * rules.length, 1) > MOST_COMBINATIONS)
    throw new RangeError(`More than ${String(MOST_COMBINATIONS)} combinations of rules.`);
  let all: Combination[] = [{ rulings: fixed ? [rulingOf(fixed.trait, fixed.rule, programme.genes)] : [], belief: 1 }];
  for (const trait of others) {
    const shares = beliefs(trait);
    all = all.flatMap(({ rulings, belief }) =>
      shares.map((share, at) => ({ rulings: [...rulings, rulingOf(trait, at, programme.genes)], belief: belief * share })),
    );
  }
  return all;
}
