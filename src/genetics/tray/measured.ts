import { meanOf } from '../../model/mean.ts';
import type { MeasuredTrait, Programme, Tree } from '../../model/programme.ts';
import { passageOf, sizesOf, setsOfTree, type Passage, type Way } from './passage.ts';
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

/** Loci of two alleles (docs/model.md §3). */
const LOCI = 32;

/** Effects of single genes on the trait, with k of n copies: even steps from −half to half, dominance by the share of pairs that differ. */
function geneEffect({ genes: effects }: MeasuredTrait, copiesOf: (gene: string) => number, sets: number): number {
  return effects.reduce((sum, { gene, half, dominance }) => {
    const copies = copiesOf(gene);
    return sum + half * ((2 * copies) / sets - 1) + (dominance * 4 * copies * (sets - copies)) / (sets * sets);
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
/** Pairs of parental states times pairs of gametes: more would stall the page. */
const MOST_WORK = 5_000_000;

function geneCases(programme: Programme, trait: MeasuredTrait, mother: Tree, father: Tree): readonly GeneCase[] {
  const ids = [...new Set(trait.genes.map(({ gene }) => gene))];
  if (ids.length === 0) return NO_GENES;
  const passage = passageOf(programme, mother, father, ids);
  const selfed = mother.id === father.id;
  const bits = new Map(passage.genes.map(({ id }, g) => [id, g]));
  const own = (homologues: readonly number[]) =>
    geneEffect(trait, (gene) => homologues.reduce((n, alleles) => n + ((alleles >> bits.get(gene)!) & 1), 0), homologues.length);
  const effects = passage.ways.map((way) => effectsOf(trait, passage, way));
  const seedlings = (one: readonly number[], other: readonly number[]): Moments =>
    momentsOf(
      passage.ways.flatMap(({ share, eggs, pollen }, way) => {
        const grains = pollen.of(other);
        return Array.from(eggs.of(one)).flatMap((p, g) =>
          Array.from(grains, (q, h) => ({ chance: share * p * q, value: p * q > 0 ? effects[way]![g * grains.length + h]! : 0 })),
        );
      }),
    );
  return combinations(programme, selfed ? [mother] : [mother, father], ids).flatMap(({ rulings, belief }) => {
    const mothers = passage.motherUnder(rulings).states;
    const fathers = selfed ? null : passage.fatherUnder(rulings).states;
    const work = mothers.length * (fathers?.length ?? 1) * effects.reduce((sum, { length }) => sum + length, 0);
    if (work > MOST_WORK) throw new RangeError(`More than ${String(MOST_WORK)} pairs of gametes.`);
    return mothers.flatMap((m) =>
      (fathers ?? [{ ...m, chance: 1 }]).map((f) => ({
        weight: belief * m.chance * f.chance,
        mother: own(m.homologues),
        father: own(f.homologues),
        seedlings: seedlings(m.homologues, f.homologues),
      })),
    );
  });
}

/** Effect of the genes in the seedling of each pair of gametes. */
function effectsOf(trait: MeasuredTrait, { ids, sets }: Passage, { eggs, pollen }: Way): number[] {
  const at = new Map(ids.map((id, i) => [id, i]));
  return eggs.copies.flatMap((egg) => pollen.copies.map((grain) => geneEffect(trait, (gene) => egg[at.get(gene)!]! + grain[at.get(gene)!]!, sets)));
}

/** Chance that two copies of a locus differ in a random tree of the reference population, where both alleles are as common. */
const HALF = 0.5;

/**
 * Returns the chance that two copies of a locus differ, on average over the loci of a tree whose n of 32·sets favourable copies are placed at
 * random; with two sets 2n(64 − n)/(64·63).
 *
 * **Source:** own derivation: two places drawn without putting back.
 */
const differing = (copies: number, sets: number): number => {
  const places = LOCI * sets;
  return (2 * copies * (places - copies)) / (places * (places - 1));
};

/**
 * Works out a family's mean and spread in a measured trait: of each parent's worth the seedlings get the share of its homologues that a gamete
 * takes (with two sets the family's mean is that of the parents), and within the family
 * V = Σ over parents of 32·a²·k(n − k)/(2n)·H, with k of n homologues in a gamete and H the chance that two copies of a locus differ, ½ in a
 * random tree of the reference population: with two sets V_G/2 for ordinary parents, less for one far from the reference mean, which has used
 * part of it up. Single genes of the trait are enumerated. A parent without a stated value adds to the variance of the family's mean (with two
 * sets V_G/4; selfed: V_G). Estimates stand at their means. Selfing costs the share of full inbreeding by which H falls (½ with two sets, 1/6
 * with four); crosses are taken as not inbred.
 * @param mother, father the same tree twice: its own pollen
 * @throws RangeError where single genes make more genotypes than can be listed, or the sets of the pair do not add up
 *
 * **Source:** docs/model.md §3; within-family variance: Bulmer (1980), The Mathematical Theory of Quantitative Genetics; Falconer & Mackay
 * (1996) ch. 9 (both from memory); more sets: variance of k copies drawn from n without putting back.
 */
export function familyValue(programme: Programme, trait: MeasuredTrait, mother: Tree, father: Tree): FamilyValue {
  const genetic = meanOf(trait.heritability) * meanOf(trait.sd) ** 2;
  const stated = (tree: Tree) => (tree.values[trait.id] === undefined ? null : meanOf(tree.values[trait.id] ?? 0));
  const selfed = mother.id === father.id;
  const values = { mother: stated(mother), father: stated(father) };
  const [size] = sizesOf(programme, mother, father);
  if (!size) throw new RangeError('The sets of the parents do not add up to those of the seedlings.');
  const sides = [side(mother, size.seed), side(father, size.pollen)] as const;
  const [m, f] = sides;
  /** Of what both parents carry, the chance that two copies of a seedling are of different copies of the parent, when it is selfed. */
  const same = (2 * size.seed * size.pollen) / ((size.seed + size.pollen) * (size.seed + size.pollen - 1) * m.sets);
  const lost = selfed ? meanOf(trait.inbreeding) * same : 0;
  const families = geneCases(programme, trait, mother, father).map((one) => {
    const [seed, pollen] = [m.small(values.mother, one.mother), f.small(values.father, one.father)];
    return {
      chance: one.weight,
      value: trait.mean + m.passed * seed.worth + f.passed * pollen.worth + one.seedlings.mean - lost,
      variance: m.varied * seed.mixed + f.varied * pollen.mixed + one.seedlings.variance,
    };
  });
  const { mean, variance } = momentsOf(families);
  const unknown = [...new Set([mother, father])].map((tree) =>
    stated(tree) === null ? (selfed ? m.passed + f.passed : tree === mother ? m.passed : f.passed) : 0,
  );
  return {
    trait,
    mean,
    within: Math.sqrt(families.reduce((sum, one) => sum + one.chance * one.variance, 0)),
    between: Math.sqrt(Math.max(0, variance) + unknown.reduce((sum, passed) => sum + passed * passed * genetic, 0)),
    ...values,
    lost,
  };

  /** One parent: sets, the share of its worth that seedlings get, the variance within the family if all its loci differ, its many small genes. */
  function side(tree: Tree, take: number) {
    const sets = setsOfTree(programme, tree);
    const seedlingSets = size!.seed + size!.pollen;
    const copy = Math.sqrt(genetic / (8 * sets));
    return {
      sets,
      passed: (take / sets) * Math.sqrt(sets / seedlingSets),
      varied: (LOCI * (genetic / (8 * seedlingSets)) * take * (sets - take)) / (2 * sets),
      /** Worth from the reference mean, within reach of the scale, and the chance that two copies of a locus differ. */
      small: (value: number | null, effect: number) => {
        if (value === null) return { worth: 0, mixed: HALF };
        const middle = (LOCI * sets) / 2;
        const worth = Math.max(-middle * copy, Math.min(middle * copy, value - trait.mean - effect));
        return { worth, mixed: copy > 0 ? differing(middle + worth / copy, sets) : 0 };
      },
    };
  }
}
