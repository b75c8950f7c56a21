import { readings, type NeedData } from '../../charts/tray/need.ts';
import { EIGHT_IN_TEN, type ValueData } from '../../charts/tray/value.ts';
import { barrenOf } from '../../genetics/tray/fate.ts';
import { familyValue, type FamilyValue } from '../../genetics/tray/measured.ts';
import { chanceAtAll, chanceOfAtLeast, eightInTen, seedlingsNeeded, type Mixture } from '../../genetics/tray/needed.ts';
import {
  BY_FATE,
  largestRemainder,
  mixtureOf,
  SEEDLINGS,
  shareWanted,
  trayOf,
  type Seedling,
  type SeedlingShares,
  type Tray,
  type Wanted,
} from '../../genetics/tray/tray.ts';
import type { MeasuredTrait, Programme, ShownTrait, Tree } from '../../model/programme.ts';
import { normalCdf } from '../../statistics/normal.ts';
import { measuredNumber, trayText, valueText, type OfTwenty, type Target } from '../../text/tray.ts';

/** What stands in the boxes above the tray: ids, and a count of 1 to 10. */
export interface Choice {
  readonly mother: string;
  readonly father: string;
  readonly trait: string;
  readonly wanted: Wanted;
  readonly least: number;
}

/** A choice with what it names; nothing where the programme has no tree. */
export interface Chosen {
  readonly mother: Tree;
  readonly father: Tree;
  /** Null: no trait of the programme is shown or not shown. */
  readonly trait: ShownTrait | null;
  readonly wanted: Wanted;
  readonly least: number;
}

export const CELLS = 20;
const CHANCES = [0.5, 0.8, 0.95] as const;

export const shownTraits = ({ traits }: Programme): ShownTrait[] => traits.filter((trait) => trait.type === 'shown');

/** The first cross of named trees in the plans, by plan and generation. */
function firstCross({ plans }: Programme): { mother?: string; father?: string } {
  for (const { generations } of plans)
    for (const { seedParents, pollen } of generations) {
      const mother = seedParents.find((parent) => 'tree' in parent);
      const father = pollen === 'self' ? mother : Array.isArray(pollen) ? pollen.find((parent) => 'tree' in parent) : undefined;
      if (mother && father) return { mother: mother.tree, father: father.tree };
    }
  return {};
}

/** Finds what a choice names. What it does not name, or no longer, is taken from the first cross of the plans, else from the lists’ order. */
export function chosenOf(programme: Programme, choice: Choice): Chosen | null {
  const { trees } = programme;
  const first = firstCross(programme);
  const tree = (...ids: readonly (string | undefined)[]) => ids.flatMap((id) => trees.filter((one) => one.id === id))[0];
  const mother = tree(choice.mother, first.mother) ?? trees[0];
  const father = tree(choice.father, first.father) ?? trees.find((one) => one !== mother) ?? mother;
  if (!mother || !father) return null;
  const traits = shownTraits(programme);
  return { mother, father, trait: traits.find(({ id }) => id === choice.trait) ?? traits[0] ?? null, wanted: choice.wanted, least: choice.least };
}

/** Counts of twenty by kind of seedling. */
export interface KindCount {
  readonly kind: Seedling;
  readonly count: number;
  readonly share: number;
}

export function countsOf(shares: SeedlingShares): KindCount[] {
  const counts = largestRemainder(
    SEEDLINGS.map((kind) => shares[kind]),
    CELLS,
  );
  return SEEDLINGS.map((kind, i) => ({ kind, count: counts[i] ?? 0, share: shares[kind] }));
}

/** Whether a kind of seedling is among the wanted. */
export const isWanted = (kind: Seedling, wanted: Wanted): boolean =>
  wanted === 'able' ? kind === 'able' : !BY_FATE.some((other) => other === kind) && kind !== (wanted === 'notAble' ? 'able' : 'without');

/** Everything that is shown of one trait of a pair. */
export interface TraitView {
  readonly tray: Tray;
  readonly counts: readonly KindCount[];
  readonly rules: readonly {
    readonly name: string;
    readonly belief: number;
    readonly many: OfTwenty;
    readonly counts: readonly KindCount[];
    readonly misfits: readonly string[];
  }[];
  readonly many: OfTwenty;
  /** Of what bears no fruit of its own. */
  readonly others: Readonly<Record<(typeof BY_FATE)[number], OfTwenty>>;
  readonly targets: readonly Target[];
  readonly atAll: number;
  readonly luck: readonly [number, number];
  readonly inTwenty: number;
  readonly need: NeedData;
}

const manyOf = (shares: SeedlingShares, wanted: Wanted): OfTwenty => ({
  count: countsOf(shares).reduce((sum, { kind, count }) => sum + (isWanted(kind, wanted) ? count : 0), 0),
  share: shareWanted(shares, wanted),
});

/** How near its end the curve is drawn to, where a target is out of reach. */
const NEARLY = 0.95;
const MARGIN = 1.15;

function needOf(mixture: Mixture, least: number, targets: readonly Target[], atAll: number): NeedData {
  const reached = [...targets.map(({ seedlings }) => seedlings), seedlingsNeeded(mixture, least, NEARLY * atAll)].filter(Number.isFinite);
  const most = Math.ceil(Math.max(5, ...reached) * MARGIN);
  return { targets, atAll, curve: readings(most).map((n) => ({ n, chance: chanceOfAtLeast(least, n, mixture) })) };
}

/** @throws RangeError if there are more genotypes than can be listed */
export function traitView(programme: Programme, trait: ShownTrait, { mother, father, wanted, least }: Chosen): TraitView {
  const tray = trayOf(programme, trait, mother, father);
  const mixture = mixtureOf(tray, wanted);
  const targets = CHANCES.map((chance) => ({ chance, seedlings: seedlingsNeeded(mixture, least, chance) }));
  const atAll = chanceAtAll(mixture);
  const counts = countsOf(tray.shares);
  const one = (kind: Seedling): OfTwenty => ({ count: counts.find((each) => each.kind === kind)?.count ?? 0, share: tray.shares[kind] });
  return {
    tray,
    counts,
    rules: tray.rules.map(({ name, belief, shares, misfits }) => ({
      name,
      belief,
      many: manyOf(shares, wanted),
      counts: countsOf(shares),
      misfits: misfits.map((tree) => tree.name),
    })),
    many: manyOf(tray.shares, wanted),
    others: { male: one('male'), copy: one('copy'), dies: one('dies'), useless: one('useless') },
    targets,
    atAll,
    luck: eightInTen(mixture, CELLS),
    inTwenty: chanceOfAtLeast(least, CELLS, mixture),
    need: needOf(mixture, least, targets, atAll),
  };
}

/** Why nothing comes of a pair, in words; nothing where something may. */
export function barrenWords(programme: Programme, { mother, father }: Chosen): string | undefined {
  const barren = barrenOf(programme, mother, father);
  switch (barren?.why) {
    case 'rejects':
      return barren.own ? trayText.rejectsOwn(withAlleles(mother)) : trayText.rejects(withAlleles(mother), withAlleles(father));
    case 'sex':
      return trayText.sex[barren.tree.sex === 'male' ? 'male' : 'female'](barren.tree.name);
    case 'odd':
      return trayText.odd(barren.kind.name, barren.kind.ploidy, barren.entry.name);
    case 'sets':
      return trayText.sets(barren.entry.name);
    case undefined:
      return undefined;
  }
}

const withAlleles = ({ name, s }: Tree): string => (s === undefined ? name : `${name} (${s})`);

/** A family in one measured trait, in words and as a picture. */
export interface MeasuredView {
  readonly family: FamilyValue;
  readonly name: string;
  readonly sentences: readonly string[];
  readonly picture: ValueData;
}

/** @throws RangeError if single genes make more genotypes than can be listed */
export function measuredViews(programme: Programme, { mother, father }: Chosen): MeasuredView[] {
  return programme.traits.filter((trait) => trait.type === 'measured').map((trait) => measuredView(programme, trait, mother, father));
}

function measuredView(programme: Programme, trait: MeasuredTrait, mother: Tree, father: Tree): MeasuredView {
  const family = familyValue(programme, trait, mother, father);
  const { mean, within, between, lost } = family;
  const print = (value: number) => measuredNumber(value, within);
  const around = (sd: number): [string, string] => [print(mean - EIGHT_IN_TEN * sd), print(mean + EIGHT_IN_TEN * sd)];
  const pair =
    mother.id === father.id
      ? [{ tree: mother, value: family.mother }]
      : [
          { tree: mother, value: family.mother },
          { tree: father, value: family.father },
        ];
  const unknown = pair.filter(({ value }) => value === null).map(({ tree }) => tree.name);
  const goal = programme.goal.conditions.find((condition) => condition.type === 'measured' && condition.trait === trait.id);
  const bounds = goal?.type === 'measured' ? [goal.atLeast, goal.atMost] : [];
  const meets = goal?.type === 'measured' ? shareBetween(family, goal.atLeast, goal.atMost) : null;
  const said = (value: number | undefined) => (value === undefined ? null : String(value));
  return {
    family,
    name: valueText.name(trait.name, trait.unit),
    sentences: [
      valueText.mean(print(mean), trait.unit, ...around(within)),
      unknown.length > 0 ? valueText.unknown(unknown, ...around(between)) : between > 0 ? valueText.genesUnknown(...around(between)) : '',
      lost > 0 ? valueText.lost(print(lost), trait.unit) : '',
      meets === null ? '' : valueText.goal(meets, said(bounds[0]), said(bounds[1]), trait.unit),
    ].filter(Boolean),
    picture: {
      mean,
      within,
      between,
      parents: pair.flatMap(({ tree, value }) => (value === null ? [] : [{ value, text: valueText.parentMark(tree.name, print(value)) }])),
      goals: bounds.flatMap((value) => (value === undefined ? [] : [{ value, text: valueText.goalMark(String(value)) }])),
      print: (value) => value.toLocaleString('en'),
    },
  };
}

/** Share of the seedlings whose true value lies between two bounds; what is not known of the mean counts as spread. */
function shareBetween({ mean, within, between }: FamilyValue, atLeast = -Infinity, atMost = Infinity): number {
  const sd = Math.hypot(within, between);
  const below = (value: number) => (sd > 0 ? normalCdf((value - mean) / sd) : value > mean ? 1 : 0);
  return Math.max(0, (atMost === Infinity ? 1 : below(atMost)) - (atLeast === -Infinity ? 0 : below(atLeast)));
}
