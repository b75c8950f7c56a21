import { meanOf } from '../../model/mean.ts';
import type { MeasuredTrait, Programme, Tree } from '../../model/programme.ts';
import { gameteShares, placeGenes, type Homologues, type PlacedGene } from './linkage.ts';
import { parentOf } from './parent.ts';
import { combinations } from './rulings.ts';

/** What a family would be in one measured trait: genetic values, in the trait's unit. */
export interface FamilyValue {
  readonly trait: MeasuredTrait;
  readonly mean: number;
  /** SD between the seedlings of one family. */
  readonly within: number;
  /** SD of the family's mean for want of knowing its parents; 0 if both are stated. */
  readonly between: number;
  /** Stated values; null: not known, so a random tree of the reference population. */
  readonly mother: number | null;
  readonly father: number | null;
  /** Taken off the mean for selfing. */
  readonly lost: number;
}

/** 32 loci of two alleles (docs/model.md §3). */
const LOCI = 32;
const PLACES = 2 * LOCI;

/** Effects of single genes on the trait, over the bits of two gametes. */
function geneEffect({ genes: effects }: MeasuredTrait, genes: readonly PlacedGene[], g: number, h: number): number {
  return effects.reduce((sum, { gene, half, dominance }) => {
    const at = genes.findIndex(({ id }) => id === gene);
    const copies = ((g >> at) & 1) + ((h >> at) & 1);
    return sum + (copies === 1 ? dominance : copies === 2 ? half : -half);
  }, 0);
}

interface Moments {
  readonly mean: number;
  readonly variance: number;
}

function momentsOf(values: readonly { readonly chance: number; readonly value: number }[]): Moments {
  const mean = values.reduce((sum, { chance, value }) => sum + chance * value, 0);
  return { mean, variance: values.reduce((sum, { chance, value }) => sum + chance * (value - mean) ** 2, 0) };
}

/** One way the parents may be: their own gene effects, and those of their seedlings. */
interface GeneCase {
  readonly weight: number;
  readonly mother: number;
  readonly father: number;
  readonly seedlings: Moments;
}

const NO_GENES: readonly GeneCase[] = [{ weight: 1, mother: 0, father: 0, seedlings: { mean: 0, variance: 0 } }];
/** Pairs of parental states: more would stall the page. */
const MOST_PAIRS = 20_000;

function geneCases(programme: Programme, trait: MeasuredTrait, mother: Tree, father: Tree): readonly GeneCase[] {
  const ids = [...new Set(trait.genes.map(({ gene }) => gene))];
  if (ids.length === 0) return NO_GENES;
  const genes = placeGenes(programme, ids);
  const selfed = mother.id === father.id;
  const own = ({ a, b }: Homologues) => geneEffect(trait, genes, a, b);
  const seedlings = (one: Homologues, other: Homologues): Moments => {
    const [gs, hs] = [gameteShares(one, genes), gameteShares(other, genes)];
    return momentsOf(Array.from(gs).flatMap((p, g) => Array.from(hs, (q, h) => ({ chance: p * q, value: p * q > 0 ? geneEffect(trait, genes, g, h) : 0 }))));
  };
  return combinations(programme, selfed ? [mother] : [mother, father], ids).flatMap(({ rulings, belief }) => {
    const mothers = parentOf(mother, genes, rulings).states;
    const fathers = selfed ? null : parentOf(father, genes, rulings).states;
    if (mothers.length * (fathers?.length ?? 1) > MOST_PAIRS) throw new RangeError(`More than ${String(MOST_PAIRS)} pairs of genotypes.`);
    return mothers.flatMap((m) =>
      (fathers ?? [{ ...m, chance: 1 }]).map((f) => ({ weight: belief * m.chance * f.chance, mother: own(m), father: own(f), seedlings: seedlings(m, f) })),
    );
  });
}

/** Half of the loci of a random tree of the reference population carry two alleles. */
const HALF = 0.5;

/**
 * Returns the expected share of loci with two different alleles in a tree whose copies are placed at random: 2n(64 − n)/(64·63).
 *
 * **Source:** own derivation: two places drawn from 64 without putting back.
 */
const mixedLoci = (copies: number): number => (2 * copies * (PLACES - copies)) / (PLACES * (PLACES - 1));

/**
 * Works out a family's mean and spread in a measured trait: the mean of the parents, and within the family
 * V = V_G/2 · (H_mother + H_father) with H the share of a parent's loci that carry two alleles, ½ in a random tree of the reference
 * population: so V_G/2 for ordinary parents, less for one far from the reference mean, which has used part of it up. Single genes of the trait are
 * enumerated. A parent without a stated value adds V_G/4 to the variance of the family's mean (selfed: V_G). Estimates stand at their means.
 * Selfing takes half of what full inbreeding costs; crosses are taken as not inbred.
 * @param mother, father the same tree twice: its own pollen
 * @throws RangeError where single genes make more genotypes than can be listed
 *
 * **Source:** docs/model.md §3; within-family variance: Bulmer (1980), The Mathematical Theory of Quantitative Genetics; Falconer & Mackay
 * (1996) ch. 9 (both from memory).
 */
export function familyValue(programme: Programme, trait: MeasuredTrait, mother: Tree, father: Tree): FamilyValue {
  const genetic = meanOf(trait.heritability) * meanOf(trait.sd) ** 2;
  const copy = Math.sqrt(genetic / 16);
  const stated = (tree: Tree) => (tree.values[trait.id] === undefined ? null : meanOf(tree.values[trait.id] ?? 0));
  const selfed = mother.id === father.id;
  const values = { mother: stated(mother), father: stated(father) };
  const lost = selfed ? meanOf(trait.inbreeding) / 2 : 0;
  /** Many small genes of a parent: their worth from the reference mean, within reach of the scale, and the share of mixed loci. */
  const small = (value: number | null, effect: number) => {
    if (value === null) return { worth: 0, mixed: HALF };
    const worth = Math.max(-LOCI * copy, Math.min(LOCI * copy, value - trait.mean - effect));
    return { worth, mixed: copy > 0 ? mixedLoci(LOCI + worth / copy) : 0 };
  };
  const families = geneCases(programme, trait, mother, father).map((one) => {
    const [m, f] = [small(values.mother, one.mother), small(values.father, one.father)];
    return {
      chance: one.weight,
      value: trait.mean + (m.worth + f.worth) / 2 + one.seedlings.mean - lost,
      variance: (genetic / 2) * (m.mixed + f.mixed) + one.seedlings.variance,
    };
  });
  const { mean, variance } = momentsOf(families);
  const unknown = [...new Set([mother, father])].filter((tree) => stated(tree) === null).length;
  return {
    trait,
    mean,
    within: Math.sqrt(families.reduce((sum, one) => sum + one.chance * one.variance, 0)),
    between: Math.sqrt(Math.max(0, variance) + (selfed ? unknown * genetic : (unknown * genetic) / 4)),
    ...values,
    lost,
  };
}
