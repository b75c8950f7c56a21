import { meanOf } from '../../model/mean.ts';
import type { Tree } from '../../model/programme.ts';
import { genesOf, qualifies, type Copies, type Needs } from '../family.ts';
import { dosagesInPopulation, polysomicShareQualifying } from '../polysomic.ts';
import { hardyWeinberg } from '../population.ts';
import type { Homologues, PlacedGene } from './linkage.ts';

/** A shown-or-not trait under one of its rules, its estimates at their means. */
export interface Ruling {
  readonly trait: string;
  readonly needs: Needs;
  /** Share of the trees with the right genes that is able to show it. */
  readonly canShow: number;
  /** Chance a season that an able tree shows it, and that any other seems to. */
  readonly seasons: number;
  readonly falseShow: number;
  /** Chance of double reduction, by gene; none where left out. */
  readonly doubleReduction?: Readonly<Record<string, number>>;
}

/** What a tree may be: alleles on its homologues over a list of genes, bit g the counted allele of gene g, each with its chance. */
export interface Parent {
  readonly states: readonly TreeState[];
  /** False if no genotype that the tree may have fits what was seen of it. */
  readonly fits: boolean;
}

export interface TreeState {
  readonly homologues: readonly number[];
  readonly chance: number;
}

type Seen = Tree['seen'][string];
type TestCross = Tree['testCrosses'][string];

/** Whether a tree's copies of a gene are not stated, so that they rest on a frequency and on what was seen. */
export const isUnknown = (tree: Tree, gene: string): boolean => 'frequency' in (tree.genes[gene] ?? { copies: 0 });

function knownCopies(tree: Tree, gene: string, sets: number): number {
  const state = tree.genes[gene];
  return state && 'copies' in state ? Math.min(sets, state.copies) : 0;
}

function priorOf(tree: Tree, gene: string, sets: number): readonly number[] {
  const state = tree.genes[gene];
  const frequency = state && 'frequency' in state ? meanOf(state.frequency) : 0;
  return sets === 2 ? hardyWeinberg(frequency) : dosagesInPopulation(sets, frequency);
}

/** Chance of what was seen of a tree with these copies; the binomial coefficient, the same for all, is left out. */
function chanceSeen(seen: Seen, copies: Copies, { needs, canShow, seasons, falseShow }: Ruling): number {
  const right = qualifies(copies, needs);
  if ('source' in seen) return right ? 1 : 0;
  const of = (p: number) => p ** seen.showed * (1 - p) ** (seen.seasons - seen.showed);
  return right ? canShow * of(seasons) + (1 - canShow) * of(falseShow) : of(falseShow);
}

/**
 * Chance of what its test crosses showed, but for the binomial coefficient; each seedling was looked at in one season, and the tester carries
 * the counted allele on every set. With an odd number of sets few seedlings are whole: they say nothing.
 */
function chanceCrossed({ showed, of }: TestCross, copies: Copies, sets: number, { needs, canShow, seasons, falseShow, doubleReduction }: Ruling): number {
  if (sets % 2 === 1) return 1;
  const tester = Object.fromEntries(genesOf(needs).map((gene) => [gene, sets]));
  const able = canShow * polysomicShareQualifying({ sets, copies }, { sets, copies: tester }, needs, sets > 2 ? doubleReduction : {});
  const shows = able * seasons + (1 - able) * falseShow;
  return shows ** showed * (1 - shows) ** (of - showed);
}

interface Genotype {
  readonly copies: Copies;
  readonly chance: number;
}

/** Weighs every genotype of the genes that something seen rests on, and sums over those that are not asked for. */
function weighed(tree: Tree, sets: number, wanted: readonly string[], rulings: readonly Ruling[]): { readonly genotypes: Genotype[]; readonly fits: boolean } {
  const watched = rulings.flatMap((ruling) => {
    const seen = tree.seen[ruling.trait];
    const crossed = tree.testCrosses[ruling.trait];
    return seen || crossed ? [{ ruling, seen, crossed }] : [];
  });
  const looked = [...new Set(watched.flatMap(({ ruling }) => genesOf(ruling.needs)))];
  const genes = looked.filter((gene) => isUnknown(tree, gene));
  const priors = genes.map((gene) => priorOf(tree, gene, sets));
  const kept = genes.filter((gene) => wanted.includes(gene));
  const copies: Record<string, number> = Object.fromEntries(looked.map((gene) => [gene, knownCopies(tree, gene, sets)]));
  const found = new Map<string, { copies: Copies; weight: number }>();
  let total = 0;
  const visit = (place: number, prior: number): void => {
    const gene = genes[place];
    if (gene === undefined) {
      const weight = watched.reduce(
        (product, { ruling, seen, crossed }) =>
          product * (seen ? chanceSeen(seen, copies, ruling) : 1) * (crossed ? chanceCrossed(crossed, copies, sets, ruling) : 1),
        prior,
      );
      if (weight === 0) return;
      total += weight;
      const key = kept.map((id) => copies[id]).join('');
      const entry = found.get(key);
      if (entry) entry.weight += weight;
      else found.set(key, { copies: Object.fromEntries(kept.map((id) => [id, copies[id] ?? 0])), weight });
      return;
    }
    for (let n = 0; n <= sets; n += 1) {
      copies[gene] = n;
      visit(place + 1, prior * priors[place]![n]!);
    }
  };
  visit(0, 1);
  if (total > 0) return { genotypes: [...found.values()].map((entry) => ({ copies: entry.copies, chance: entry.weight / total })), fits: true };
  return { genotypes: [{ copies: Object.fromEntries(kept.map((id) => [id, sets])), chance: 1 }], fits: false };
}

/** States that differ in the order of their homologues only are one: any pairs with any. */
function gathered(states: readonly TreeState[]): TreeState[] {
  const found = new Map<string, { homologues: readonly number[]; chance: number }>();
  for (const { homologues, chance } of states) {
    const key = [...homologues].sort((a, b) => a - b).join();
    const entry = found.get(key);
    if (entry) entry.chance += chance;
    else found.set(key, { homologues, chance });
  }
  return [...found.values()];
}

/** Every way to put n copies on so many homologues. */
function placements(sets: number, n: number): number[][] {
  if (n === 0) return [[]];
  if (n > sets) return [];
  return [...placements(sets - 1, n), ...placements(sets - 1, n - 1).map((others) => [...others, sets - 1])];
}

const put = ({ homologues, chance }: TreeState, bit: number, on: readonly number[], ways: number): TreeState => ({
  homologues: homologues.map((alleles, h) => (on.includes(h) ? alleles | bit : alleles)),
  chance: chance / ways,
});

/** Copies whose homologues are known beforehand: those of S that a style rejects. */
interface Marked {
  readonly gene: number;
  readonly on: readonly boolean[];
}

/** Spreads copies of linked genes over the homologues: a single one as stated, else any way with the same chance. */
function phases(tree: Tree, sets: number, genes: readonly PlacedGene[], { copies, chance }: Genotype, marked: Marked | null): TreeState[] {
  const all = Array.from({ length: sets }, (_, h) => h);
  let states: TreeState[] = [{ homologues: all.map(() => 0), chance }];
  // The marks come first: they are the same in every state.
  if (marked)
    states = states.map((one) =>
      put(
        one,
        1 << marked.gene,
        all.filter((h) => marked.on[h]),
        1,
      ),
    );
  genes.forEach(({ id, alone }, g) => {
    const bit = 1 << g;
    const n = copies[id] ?? 0;
    if (n === 0 || g === marked?.gene) return;
    const state = tree.genes[id];
    const stated = n === 1 && state && 'copies' in state ? state.homologue : undefined;
    if (n === sets || alone || stated) {
      const on = stated && !alone ? [stated === 'b' ? 1 : 0] : all.slice(0, n);
      states = states.map((one) => put(one, bit, on, 1));
      return;
    }
    const ways = placements(sets, n);
    states = ways.flatMap((on) => states.map((one) => put(one, bit, on, ways.length)));
  });
  return states;
}

/**
 * Lists what a tree may carry at some genes: copies stated, or the chances of a randomly mated population at the stated frequency, weighed by
 * what was seen of the tree and of its test crosses under the rules given (Bayes). If nothing fits what was seen, the genes it rests on count as
 * carried on every set, as in the engine.
 * @param sets homologues of the tree
 * @param genes at most 6 or so: up to sets + 1 states each, more where linked
 * @param rulings one rule of each trait; of no use unless the tree was seen for the trait
 * @param marked copies that stand on known homologues
 * @returns chances sum to 1
 *
 * **Source:** docs/model.md §4; Hardy (1908) Science 28:49–50; more sets: Haldane (1930) J. Genet. 22:359–372; Bayes’ rule.
 */
export function statesOf(tree: Tree, sets: number, genes: readonly PlacedGene[], rulings: readonly Ruling[], marked: Marked | null = null): Parent {
  const ids = genes.map(({ id }) => id);
  const { genotypes, fits } = weighed(tree, sets, ids, rulings);
  let all = genotypes;
  for (const id of ids) {
    if (all[0] && id in all[0].copies) continue;
    const ways = isUnknown(tree, id) ? priorOf(tree, id, sets).map((chance, n) => ({ n, chance })) : [{ n: knownCopies(tree, id, sets), chance: 1 }];
    all = all.flatMap(({ copies, chance }) => ways.map((way) => ({ copies: { ...copies, [id]: way.n }, chance: chance * way.chance })));
  }
  const states = all.filter(({ chance }) => chance > 0).flatMap((genotype) => phases(tree, sets, genes, genotype, marked));
  return { states: gathered(states), fits };
}

/** The same of a tree with two sets, by its two homologues. */
export function parentOf(
  tree: Tree,
  genes: readonly PlacedGene[],
  rulings: readonly Ruling[],
): { readonly states: readonly (Homologues & { readonly chance: number })[]; readonly fits: boolean } {
  const { states, fits } = statesOf(tree, 2, genes, rulings);
  return { states: states.map(({ homologues: [a = 0, b = 0], chance }) => ({ a, b, chance })), fits };
}
