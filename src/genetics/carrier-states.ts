import { meanOf } from '../model/mean.ts';
import type { Programme, ShownTrait, Tree } from '../model/programme.ts';
import { chanceOfSeasons, seedlingShows, type Hidden } from './carriers.ts';
import { genesOf, qualifies, type Copies, type Needs } from './family.ts';
import { dosagesInPopulation, polysomicShareQualifying } from './polysomic.ts';
import type { Ruling } from './tray/parent.ts';
import { combinations } from './tray/rulings.ts';

/** Genotypes of the genes in question: more would stall the page. */
const MOST_GENOTYPES = 2500;

/** Share of a test cross with the right genes, by what the tree carries: the same for all trees of so many sets. */
export type FromTest = (copies: Copies, needs: Needs) => number;

export function fromTestOf(programme: Programme, sets: number): FromTest {
  const alpha = Object.fromEntries(programme.genes.map((gene) => [gene.id, gene.doubleReduction]));
  const found = new Map<string, number>();
  return (copies, needs) => {
    const genes = genesOf(needs);
    const key = JSON.stringify([needs, genes.map((gene) => copies[gene])]);
    const known = found.get(key);
    if (known !== undefined) return known;
    const tester = Object.fromEntries(genes.map((gene) => [gene, sets]));
    const share = polysomicShareQualifying({ sets, copies }, { sets, copies: tester }, needs, alpha);
    found.set(key, share);
    return share;
  };
}

/** Chances of 0, 1, 2 … copies of a gene before anything was seen. */
function priorOf(tree: Tree, gene: string, sets: number): readonly { readonly copies: number; readonly chance: number }[] {
  const state = tree.genes[gene];
  if (!state || 'copies' in state) return [{ copies: Math.min(sets, state?.copies ?? 0), chance: 1 }];
  return dosagesInPopulation(sets, meanOf(state.frequency)).flatMap((chance, copies) => (chance > 0 ? [{ copies, chance }] : []));
}

/** Chance of all that was seen of a tree with these copies. */
function chanceSeen(tree: Tree, copies: Copies, rulings: readonly Ruling[], fromTest: FromTest): number {
  return rulings.reduce((product, how) => {
    const seen = tree.seen[how.trait];
    const test = tree.testCrosses[how.trait];
    const right = qualifies(copies, how.needs);
    const seasons = !seen ? 1 : 'source' in seen ? +right : chanceOfSeasons(right, seen.showed, seen.seasons, how);
    if (!test) return product * seasons;
    const p = seedlingShows(fromTest(copies, how.needs), how);
    return product * seasons * p ** test.showed * (1 - p) ** (test.of - test.showed);
  }, 1);
}

/** One thing that a tree of the programme may be. */
export interface TreeState extends Hidden {
  /** Every copy of every gene of the rule is the wanted one. */
  readonly full: boolean;
}

/** Every genotype of some genes with its chance before anything was seen. */
function genotypes(tree: Tree, genes: readonly string[], sets: number): { readonly copies: Copies; readonly chance: number }[] {
  let all: { copies: Copies; chance: number }[] = [{ copies: {}, chance: 1 }];
  for (const gene of genes) {
    const ways = priorOf(tree, gene, sets);
    if (all.length * ways.length > MOST_GENOTYPES) throw new RangeError(`More than ${String(MOST_GENOTYPES)} genotypes.`);
    all = all.flatMap((one) => ways.map((way) => ({ copies: { ...one.copies, [gene]: way.copies }, chance: one.chance * way.chance })));
  }
  return all;
}

/**
 * Lists what a tree may be under one rule of a trait, weighed by what was seen of it and of its test crosses.
 * @param sets copies of a gene that the tree can carry; even
 * @returns chances sum to 1; null where no genotype fits what was seen
 * @throws RangeError where there are more genotypes or rules than can be listed
 *
 * **Source:** Bayes' rule; docs/model.md §4.
 */
export function statesOf(programme: Programme, tree: Tree, trait: ShownTrait, rule: number, sets: number, fromTest: FromTest): TreeState[] | null {
  const { needs } = trait.rules[rule]!;
  const own = genesOf(needs);
  // What the tester gives by itself.
  const alone = fromTest({}, needs);
  const found = new Map<string, TreeState>();
  for (const { rulings, belief } of combinations(programme, [tree], own, { trait, rule })) {
    const genes = [...new Set([...own, ...rulings.flatMap((one) => genesOf(one.needs))])];
    const weights = genotypes(tree, genes, sets).map(({ copies, chance }) => ({ copies, weight: chance * chanceSeen(tree, copies, rulings, fromTest) }));
    const total = weights.reduce((sum, { weight }) => sum + weight, 0);
    if (total === 0) return null;
    for (const { copies, weight } of weights) {
      if (weight === 0) continue;
      const share = fromTest(copies, needs);
      const state = {
        carries: alone === 1 ? own.some((id) => (copies[id] ?? 0) > 0) : share > alone,
        right: qualifies(copies, needs),
        fromTest: share,
        owed: alone === 1 ? 0 : (share - alone) / (1 - alone),
        full: own.every((id) => copies[id] === sets),
      };
      const key = JSON.stringify(state);
      found.set(key, { ...state, chance: (found.get(key)?.chance ?? 0) + (belief * weight) / total });
    }
  }
  return [...found.values()];
}
