import { meanOf } from '../../model/mean.ts';
import type { Programme, ShownTrait, Tree } from '../../model/programme.ts';
import { genesOf } from '../family.ts';
import { casesOf, type Case } from './cases.ts';
import { placeGenes } from './linkage.ts';
import { gather, type Mixture } from './needed.ts';
import { isUnknown, parentOf } from './parent.ts';
import { beliefs, combinations } from './rulings.ts';

/** What a seedling is, for one trait: able to show it; with the right genes, but not able; with some of the copies; without any. */
export const SEEDLINGS = ['able', 'unable', 'carrier', 'without'] as const;
export type Seedling = (typeof SEEDLINGS)[number];
export type SeedlingShares = Readonly<Record<Seedling, number>>;

/** Kinds of seedling that can be asked for: able; with at least one copy that counts; not able. */
export const WANTED = ['able', 'carries', 'notAble'] as const;
export type Wanted = (typeof WANTED)[number];

/** A family under one rule of the trait. */
export interface RuleTray {
  readonly name: string;
  /** Chance that this rule holds, from its weight. */
  readonly belief: number;
  readonly shares: SeedlingShares;
  readonly cases: readonly Case[];
  /** Parents of which something was seen that no genotype fits under this rule. */
  readonly misfits: readonly Tree[];
}

/** What the seedlings of one pair would be, for one trait. */
export interface Tray {
  readonly trait: ShownTrait;
  readonly mother: Tree;
  readonly father: Tree;
  /** Of trees with the right genes, the share that is able. */
  readonly canShow: number;
  readonly rules: readonly RuleTray[];
  /** Over all rules, by belief. */
  readonly shares: SeedlingShares;
  /** Parents whose copies are not all stated. */
  readonly unknown: readonly Tree[];
}

function sharesOf(cases: readonly Case[], canShow: number): SeedlingShares {
  const mean = (pick: (one: Case) => number) => cases.reduce((sum, one) => sum + one.weight * pick(one), 0);
  const right = mean((one) => one.right);
  const none = mean((one) => one.none);
  return { able: right * canShow, unable: right * (1 - canShow), carrier: Math.max(0, 1 - right - none), without: none };
}

function ruleTray(programme: Programme, trait: ShownTrait, rule: number, mother: Tree, father: Tree): Omit<RuleTray, 'belief'> {
  const { name, needs } = trait.rules[rule]!;
  const genes = placeGenes(programme, genesOf(needs));
  const selfed = mother.id === father.id;
  const misfits = new Set<Tree>();
  const cases = combinations(programme, selfed ? [mother] : [mother, father], genesOf(needs), { trait, rule }).flatMap(({ rulings, belief }) => {
    const parents = (selfed ? [mother] : [mother, father]).map((tree) => ({ tree, parent: parentOf(tree, genes, rulings) }));
    for (const { tree, parent } of parents) if (!parent.fits) misfits.add(tree);
    return casesOf(parents[0]!.parent, parents[1]?.parent ?? null, genes, needs).map((one) => ({ ...one, weight: one.weight * belief }));
  });
  return { name, shares: sharesOf(cases, meanOf(trait.canShow)), cases, misfits: [...misfits] };
}

/**
 * Works out what the seedlings of a pair would be for a shown-or-not trait, exactly: every genotype the parents may have, every pair of
 * their gametes, under each rule of the trait and over all of them. Estimates stand at their means. The same tree twice: its own pollen.
 * @throws RangeError where there are more genotypes or rules than can be listed (see `casesOf`, `combinations`)
 *
 * **Source:** docs/model.md §§ 2, 4, 9.
 */
export function trayOf(programme: Programme, trait: ShownTrait, mother: Tree, father: Tree): Tray {
  const shares = beliefs(trait);
  const rules = trait.rules.map((_, rule) => ({ ...ruleTray(programme, trait, rule, mother, father), belief: shares[rule]! }));
  const over = (kind: Seedling) => rules.reduce((sum, one) => sum + one.belief * one.shares[kind], 0);
  const genes = new Set(trait.rules.flatMap(({ needs }) => genesOf(needs)));
  return {
    trait,
    mother,
    father,
    canShow: meanOf(trait.canShow),
    rules,
    shares: { able: over('able'), unable: over('unable'), carrier: over('carrier'), without: over('without') },
    unknown: [...new Set([mother, father])].filter((tree) => [...genes].some((gene) => isUnknown(tree, gene))),
  };
}

const SHARE_OF: Readonly<Record<Wanted, (one: Case, canShow: number) => number>> = {
  able: ({ right }, canShow) => right * canShow,
  carries: ({ none }) => 1 - none,
  notAble: ({ right }, canShow) => 1 - right * canShow,
};

/** Returns the share of the wanted kind for every way the rule and the parents may be. */
export function mixtureOf({ rules, canShow }: Tray, wanted: Wanted): Mixture {
  return gather(rules.flatMap(({ belief, cases }) => cases.map((one) => ({ weight: belief * one.weight, share: SHARE_OF[wanted](one, canShow) }))));
}

/** Returns the share of the wanted kind. */
export const shareWanted = (shares: SeedlingShares, wanted: Wanted): number =>
  wanted === 'able' ? shares.able : wanted === 'notAble' ? 1 - shares.able : 1 - shares.without;

/**
 * Divides a number of cells among shares by largest remainder, so that counts add up. Equal remainders: the first in the list.
 * @param shares not negative, sum about 1
 *
 * **Source:** Hamilton's method of apportionment (Balinski & Young 1982, Fair Representation; from memory).
 */
export function largestRemainder(shares: readonly number[], cells: number): number[] {
  const total = shares.reduce((sum, share) => sum + share, 0);
  // Exact thirds of twenty and the like must not fall a rounding short of a whole cell.
  const quotas = shares.map((share) => Number(((cells * share) / total).toPrecision(12)));
  const counts = quotas.map(Math.floor);
  const left = cells - counts.reduce((sum, count) => sum + count, 0);
  const order = quotas.map((quota, i) => ({ i, rest: quota - counts[i]! })).sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of order.slice(0, left)) counts[i]! += 1;
  return counts;
}
