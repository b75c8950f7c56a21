import { meanOf } from '../../model/mean.ts';
import type { Tree } from '../../model/programme.ts';
import { genesOf, qualifies, type Copies, type Needs } from '../family.ts';
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
}

/** What a tree may be: its homologues over a list of genes, each with its chance. */
export interface Parent {
  readonly states: readonly (Homologues & { readonly chance: number })[];
  /** False if no genotype that the tree may have fits what was seen of it. */
  readonly fits: boolean;
}

const COPIES = [0, 1, 2] as const;
type Seen = Tree['seen'][string];

/** Whether a tree's copies of a gene are not stated, so that they rest on a frequency and on what was seen. */
export const isUnknown = (tree: Tree, gene: string): boolean => 'frequency' in (tree.genes[gene] ?? { copies: 0 });

function knownCopies(tree: Tree, gene: string): number {
  const state = tree.genes[gene];
  return state && 'copies' in state ? state.copies : 0;
}

function priorOf(tree: Tree, gene: string): readonly [number, number, number] {
  const state = tree.genes[gene];
  return hardyWeinberg(state && 'frequency' in state ? meanOf(state.frequency) : 0);
}

/** Chance of what was seen of a tree with these copies; the binomial coefficient, the same for all, is left out. */
function chanceSeen(seen: Seen, copies: Copies, { needs, canShow, seasons, falseShow }: Ruling): number {
  const right = qualifies(copies, needs);
  if ('source' in seen) return right ? 1 : 0;
  const of = (p: number) => p ** seen.showed * (1 - p) ** (seen.seasons - seen.showed);
  return right ? canShow * of(seasons) + (1 - canShow) * of(falseShow) : of(falseShow);
}

interface Genotype {
  readonly copies: Copies;
  readonly chance: number;
}

/** Weighs every genotype of the genes that something seen rests on, and sums over those that are not asked for. */
function weighed(tree: Tree, wanted: readonly string[], rulings: readonly Ruling[]): { readonly genotypes: Genotype[]; readonly fits: boolean } {
  const watched = rulings.flatMap((ruling) => {
    const seen = tree.seen[ruling.trait];
    return seen ? [{ ruling, seen }] : [];
  });
  const looked = [...new Set(watched.flatMap(({ ruling }) => genesOf(ruling.needs)))];
  const genes = looked.filter((gene) => isUnknown(tree, gene));
  const priors = genes.map((gene) => priorOf(tree, gene));
  const kept = genes.filter((gene) => wanted.includes(gene));
  const copies: Record<string, number> = Object.fromEntries(looked.map((gene) => [gene, knownCopies(tree, gene)]));
  const found = new Map<string, { copies: Copies; weight: number }>();
  let total = 0;
  const visit = (place: number, prior: number): void => {
    const gene = genes[place];
    if (gene === undefined) {
      const weight = watched.reduce((product, { ruling, seen }) => product * chanceSeen(seen, copies, ruling), prior);
      if (weight === 0) return;
      total += weight;
      const key = kept.map((id) => copies[id]).join('');
      const entry = found.get(key);
      if (entry) entry.weight += weight;
      else found.set(key, { copies: Object.fromEntries(kept.map((id) => [id, copies[id] ?? 0])), weight });
      return;
    }
    for (const n of COPIES) {
      copies[gene] = n;
      visit(place + 1, prior * priors[place]![n]);
    }
  };
  visit(0, 1);
  if (total > 0) return { genotypes: [...found.values()].map((entry) => ({ copies: entry.copies, chance: entry.weight / total })), fits: true };
  return { genotypes: [{ copies: Object.fromEntries(kept.map((id) => [id, 2])), chance: 1 }], fits: false };
}

/** Spreads single copies of linked genes over the two homologues: as stated, else either with chance ½. */
function phases(tree: Tree, genes: readonly PlacedGene[], { copies, chance }: Genotype): Parent['states'] {
  let states = [{ a: 0, b: 0, chance }];
  genes.forEach(({ id, alone }, g) => {
    const bit = 1 << g;
    const n = copies[id] ?? 0;
    if (n === 0) return;
    const state = tree.genes[id];
    const stated = state && 'copies' in state ? state.homologue : undefined;
    const onA = states.map((one) => ({ ...one, a: one.a | bit }));
    if (n === 2) states = onA.map((one) => ({ ...one, b: one.b | bit }));
    else {
      const onB = states.map((one) => ({ ...one, b: one.b | bit }));
      const half = (list: typeof states) => list.map((one) => ({ ...one, chance: one.chance / 2 }));
      states = stated === 'b' ? onB : stated === 'a' || alone ? onA : [...half(onA), ...half(onB)];
    }
  });
  return states;
}

/**
 * Lists what a tree may carry at some genes: copies stated, or Hardy–Weinberg at the stated frequency weighed by what was seen of the
 * tree under the rules given (Bayes). If nothing fits what was seen, the genes it rests on count as carried twice, as in the engine.
 * @param genes at most 6 or so: up to 3 states each, 4 where linked
 * @param rulings one rule of each trait; of no use unless the tree was seen for the trait. Together on at most 9 unknown genes
 * @returns chances sum to 1
 *
 * **Source:** docs/model.md §4; Hardy (1908) Science 28:49–50; Bayes’ rule.
 */
export function parentOf(tree: Tree, genes: readonly PlacedGene[], rulings: readonly Ruling[]): Parent {
  const ids = genes.map(({ id }) => id);
  const { genotypes, fits } = weighed(tree, ids, rulings);
  let all = genotypes;
  for (const id of ids) {
    if (all[0] && id in all[0].copies) continue;
    const ways = isUnknown(tree, id) ? priorOf(tree, id).map((chance, n) => ({ n, chance })) : [{ n: knownCopies(tree, id), chance: 1 }];
    all = all.flatMap(({ copies, chance }) => ways.map((way) => ({ copies: { ...copies, [id]: way.n }, chance: chance * way.chance })));
  }
  return { states: all.filter(({ chance }) => chance > 0).flatMap((genotype) => phases(tree, genes, genotype)), fits };
}
