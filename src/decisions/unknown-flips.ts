import { meanOf } from '../model/mean.ts';
import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent } from '../statistics/compare.ts';
import { normalQuantile } from '../statistics/normal.ts';
import { Z95 } from '../statistics/interval.ts';
import { differenceOf, outcomeOf } from './outcome.ts';
import type { UnknownFact } from './unknown-facts.ts';
import { withFact, withRootChance } from './variants.ts';

/** What a rule or a yes/no fact could turn out to be. */
export interface Alternative {
  /** Name of the rule; 'yes' or 'no' of a fact. */
  readonly name: string;
  /** How far it is believed in, 0–1. */
  readonly belief: number;
  readonly programme: Programme;
}

/** The chance of the plan that is asked about, were it so. */
export interface ChanceIf {
  readonly name: string;
  readonly belief: number;
  readonly chance: Interval;
  readonly trulyGood: Interval | null;
}

/** Two plans whose order turns round with what a fact turns out to be. */
export interface Flip {
  /** Id of the fact. */
  readonly fact: string;
  /** Ids of the plans: the first is clearly ahead under the first alternative, the second under the second. */
  readonly plans: readonly [string, string];
  readonly under: readonly [FlipSide, FlipSide];
}

export interface FlipSide {
  readonly alternative: string;
  readonly belief: number;
  readonly chances: readonly [Interval, Interval];
  /** First plan minus the second, its interval wide enough for all that were looked at. */
  readonly difference: Interval;
}

/** Less believed alternatives count as far-fetched: they turn no order round. */
export const PLAUSIBLE = 0.05;

/** The alternatives of a rule or a yes/no fact, each as a programme in which it is settled; none for other facts. */
export function alternativesOf(programme: Programme, fact: UnknownFact): readonly Alternative[] {
  if (fact.kind === 'rule') {
    const trait = programme.traits.find(({ id }) => id === fact.of);
    if (trait?.type !== 'shown') return [];
    const total = trait.rules.reduce((sum, { weight }) => sum + weight, 0);
    // A single rule takes no draw, and no other purpose has its key: everything else of the future stays as it was.
    return trait.rules.map((rule) => ({
      name: rule.name,
      belief: rule.weight / total,
      programme: { ...programme, traits: programme.traits.map((entry) => (entry === trait ? { ...trait, rules: [rule] } : entry)) },
    }));
  }
  if (fact.kind !== 'roots') return [];
  const shared = programme.facts.find(({ id }) => `facts/${id}` === fact.id);
  const own = programme.crosses.find(({ id }) => id === fact.of)?.weakness?.rootBorne;
  const chance = shared ? shared.chance : own && 'chance' in own ? own.chance : undefined;
  if (chance === undefined) return [];
  const belief = meanOf(chance);
  const settled = (holds: boolean) => (shared ? withFact(programme, shared.id, holds) : withRootChance(programme, fact.of, Number(holds)));
  return [
    { name: 'yes', belief, programme: settled(true) },
    { name: 'no', belief: 1 - belief, programme: settled(false) },
  ];
}

/** Chance of one plan (position) under each alternative. */
export function chancesIf(alternatives: readonly Alternative[], columns: readonly (readonly Columns[])[], plan: number): readonly ChanceIf[] {
  return alternatives.flatMap(({ name, belief }, a) => {
    const mine = columns[a]?.[plan];
    if (!mine) return [];
    const { chance, trulyGood } = outcomeOf(mine, 0);
    return [{ name, belief, chance, trulyGood }];
  });
}

/**
 * Finds the pairs of plans whose order is clearly one way under one plausible alternative and clearly the other way under another, on the
 * same futures. Of several alternatives on a side the clearest is named. As many pairs and alternatives are looked at, each difference is
 * held to 95 % for all of them together.
 * @param columns of every plan under each alternative
 *
 * **Source:** differences as in `differenceOf`; widened by C. E. Bonferroni’s inequality (O. J. Dunn 1961, J. Am. Stat. Assoc. 56:52–64, from
 * memory).
 */
export function flipsOf(
  fact: string,
  plans: readonly string[],
  alternatives: readonly Alternative[],
  columns: readonly (readonly Columns[])[],
): readonly Flip[] {
  const plausible = alternatives.flatMap((alternative, a) => (alternative.belief >= PLAUSIBLE ? [{ alternative, columns: columns[a] ?? [] }] : []));
  const looked = ((plans.length * (plans.length - 1)) / 2) * plausible.length;
  const wider = normalQuantile(1 - 0.025 / Math.max(1, looked)) / Z95;
  const flips: Flip[] = [];
  plans.forEach((first, i) =>
    plans.slice(i + 1).forEach((second, more) => {
      const sides = plausible.flatMap(({ alternative, columns: under }) => sideOf(alternative, under[i], under[i + 1 + more], wider));
      const ahead = clearest(sides, (side) => side.lead);
      const behind = clearest(sides, (side) => -side.lead);
      if (!ahead || !behind) return;
      flips.push({ fact, plans: [first, second], under: [ahead.side, behind.side] });
    }),
  );
  return flips;
}

interface Side {
  readonly side: FlipSide;
  /** Half-widths ahead or behind, as long as it is clear; 0 else. */
  readonly lead: number;
}

function sideOf({ name, belief }: Alternative, a: Columns | undefined, b: Columns | undefined, wider: number): Side[] {
  if (!a || !b) return [];
  const { value, low, high } = differenceOf(a, b).chance;
  const middle = (low + high) / 2;
  const half = ((high - low) / 2) * wider;
  const difference = { value, low: middle - half, high: middle + half };
  const chances = [outcomeOf(a, 0).chance, outcomeOf(b, 0).chance] as const;
  return [{ side: { alternative: name, belief, chances, difference }, lead: clearlyDifferent(difference) ? middle / half : 0 }];
}

function clearest(sides: readonly Side[], lead: (side: Side) => number): Side | undefined {
  return sides.filter((side) => lead(side) > 0).sort((a, b) => lead(b) - lead(a))[0];
}
