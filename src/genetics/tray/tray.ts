import { meanOf } from '../../model/mean.ts';
import type { Programme, ShownTrait, Tree } from '../../model/programme.ts';
import { genesOf } from '../family.ts';
import { casesOf, type Case } from './cases.ts';
import { fateOf, grownOf, type Fate } from './fate.ts';
import { gather, type Mixture } from './needed.ts';
import { isUnknown } from './parent.ts';
import { passageOf } from './passage.ts';
import { beliefs, combinations } from './rulings.ts';

/** What a seedling that bears fruit is, for one trait: able to show it; with the right genes, but not able; with some of the copies; without any. */
export const BY_GENES = ['able', 'unable', 'carrier', 'without'] as const;
/** What else can come up, whatever its genes for the trait: males, copies of the seed parent, what dies of both parents’ genes, what is no use. */
export const BY_FATE = ['male', 'copy', 'dies', 'useless'] as const;
export const SEEDLINGS = [...BY_GENES, ...BY_FATE] as const;
export type Seedling = (typeof SEEDLINGS)[number];
export type SeedlingShares = Readonly<Record<Seedling, number>>;

/** Kinds of seedling that can be asked for, of those that bear fruit of their own: able; with at least one copy that counts; not able. */
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
  readonly fate: Fate;
  readonly rules: readonly RuleTray[];
  /** Over all rules, by belief. */
  readonly shares: SeedlingShares;
  /** Parents whose copies are not all stated. */
  readonly unknown: readonly Tree[];
}

function sharesOf(cases: readonly Case[], canShow: number, fate: Fate): SeedlingShares {
  const mean = (pick: (one: Case) => number) => cases.reduce((sum, one) => sum + one.weight * pick(one), 0);
  const right = mean((one) => one.right);
  const none = mean((one) => one.none);
  const grown = grownOf(fate);
  return {
    able: grown * right * canShow,
    unable: grown * right * (1 - canShow),
    carrier: grown * Math.max(0, 1 - right - none),
    without: grown * none,
    ...fate,
  };
}

type Pair = Pick<Tray, 'mother' | 'father' | 'fate'>;

function ruleTray(programme: Programme, trait: ShownTrait, rule: number, { mother, father, fate }: Pair): Omit<RuleTray, 'belief'> {
  const { name, needs } = trait.rules[rule]!;
  const genes = genesOf(needs);
  const passage = passageOf(programme, mother, father, genes);
  const selfed = mother.id === father.id;
  const misfits = new Set<Tree>();
  const cases = combinations(programme, selfed ? [mother] : [mother, father], genes, { trait, rule }).flatMap(({ rulings, belief }) => {
    const seed = passage.motherUnder(rulings);
    const pollen = selfed ? null : passage.fatherUnder(rulings);
    if (!seed.fits) misfits.add(mother);
    if (pollen && !pollen.fits) misfits.add(father);
    return casesOf(passage, seed, pollen, needs).map((one) => ({ ...one, weight: one.weight * belief }));
  });
  return { name, shares: sharesOf(cases, meanOf(trait.canShow), fate), cases, misfits: [...misfits] };
}

/**
 * Works out what the seedlings of a pair would be for a shown-or-not trait, exactly: every genotype the parents may have, every pair of
 * their gametes, under each rule of the trait and over all of them; of the seedlings that come up, those that bear fruit by their genes, the
 * others by what becomes of them. Estimates stand at their means. The same tree twice: its own pollen.
 * @throws RangeError where there are more genotypes or rules than can be listed (see `casesOf`, `combinations`), or for a pair that sets nothing
 *
 * **Source:** docs/model.md §§ 2–7, 9.
 */
export function trayOf(programme: Programme, trait: ShownTrait, mother: Tree, father: Tree): Tray {
  const shares = beliefs(trait);
  const fate = fateOf(programme, mother, father);
  const rules = trait.rules.map((_, rule) => ({ ...ruleTray(programme, trait, rule, { mother, father, fate }), belief: shares[rule]! }));
  const over = (kind: Seedling) => rules.reduce((sum, one) => sum + one.belief * one.shares[kind], 0);
  const genes = new Set(trait.rules.flatMap(({ needs }) => genesOf(needs)));
  return {
    trait,
    mother,
    father,
    canShow: meanOf(trait.canShow),
    fate,
    rules,
    shares: { able: over('able'), unable: over('unable'), carrier: over('carrier'), without: over('without'), ...fate },
    unknown: [...new Set([mother, father])].filter((tree) => [...genes].some((gene) => isUnknown(tree, gene))),
  };
}

const SHARE_OF: Readonly<Record<Wanted, (one: Case, canShow: number) => number>> = {
  able: ({ right }, canShow) => right * canShow,
  carries: ({ none }) => 1 - none,
  notAble: ({ right }, canShow) => 1 - right * canShow,
};

/** Returns the share of the wanted kind for every way the rule and the parents may be. */
export function mixtureOf({ rules, canShow, fate }: Tray, wanted: Wanted): Mixture {
  const grown = grownOf(fate);
  return gather(rules.flatMap(({ belief, cases }) => cases.map((one) => ({ weight: belief * one.weight, share: grown * SHARE_OF[wanted](one, canShow) }))));
}

/** Returns the share of the wanted kind. */
export function shareWanted(shares: SeedlingShares, wanted: Wanted): number {
  if (wanted === 'able') return shares.able;
  return Math.max(0, grownOf(shares) - (wanted === 'notAble' ? shares.able : shares.without));
}

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
