import type { Mixture } from '../genetics/tray/needed.ts';
import { mixtureOf, trayOf } from '../genetics/tray/tray.ts';
import { meanOf } from '../model/mean.ts';
import type { Condition, Generation, Plan, Programme, ShownTrait, Tree } from '../model/programme.ts';
import type { RatesOf } from './how-many-rates.ts';

/** What a future has and the reckoned answer leaves out; only what this programme states is named. */
export type LeftOut =
  | 'springLuck'
  | 'frost'
  | 'treeLoss'
  | 'stray'
  | 'room'
  | 'hands'
  | 'wanted'
  | 'moreSprings'
  | 'measured'
  | 'test'
  | 'otherTraits'
  | 'sharedSeason'
  | 'grade'
  | 'regularity'
  | 'families'
  | 'emptyIfShown'
  | 'breedsTrue'
  | 'keptFirst';

/** All that a reckoned number rests on. */
export interface Setting extends RatesOf {
  /** Trees wanted. */
  readonly trees: number;
  /** Crops in which each must be seen to show the trait. */
  readonly k: number;
  /** Share of the seedlings with the right genes, for what the parents may be. */
  readonly mixture: Mixture;
  readonly leavesOut: readonly LeftOut[];
}

/** Shares beyond which near ones count as one. */
const MOST_SHARES = 60;

/** The setting of a generation; null where it does not rest on one pair of named trees, or on more than rates and one trait. */
export function settingOf(programme: Programme, plan: Plan, generation: Generation): Setting | null {
  const position = plan.generations.indexOf(generation);
  if (position !== 0 || generation.repeat > 1) return null;
  const pair = pairOf(programme, generation);
  const entry =
    pair &&
    programme.crosses.find(({ id, seed, pollen }) =>
      generation.cross === undefined ? seed === pair.mother.kind && pollen === pair.father.kind : id === generation.cross,
    );
  if (!pair || !entry) return null;
  const last = plan.generations.length === 1;
  const { goal } = programme;
  const conditions = last ? goal.conditions : generation.keep.conditions;
  // A condition that asks for nothing is none.
  const shown = conditions.flatMap((condition) =>
    condition.type === 'shown' && ((condition.atLeast ?? 0) > 0 || condition.atMost !== undefined) ? condition : [],
  );
  const [condition] = shown;
  const trait = condition ? programme.traits.find((one): one is ShownTrait => one.type === 'shown' && one.id === condition.trait) : undefined;
  // “In at most” asks for trees that do not show it.
  if (condition && (!trait || shown.some(({ atMost }) => atMost !== undefined))) return null;
  const mixture = trait ? shareOf(programme, trait, pair) : [{ weight: 1, share: 1 }];
  if (!mixture) return null;
  return {
    ...pair,
    entry,
    generation,
    crops: last ? goal.crops : generation.judge,
    trait: trait ?? null,
    k: Math.max(1, condition?.atLeast ?? 1),
    trees: last ? goal.trees : picksWanted(generation),
    mixture,
    leavesOut: leftOut(programme, generation, { ...pair, entry, trait, conditions, last }),
  };
}

function picksWanted({ goOn, keep }: Generation): number {
  return goOn.when === 'enough' ? (goOn.count ?? keep.howMany) : 1;
}

function pairOf({ trees }: Programme, { seedParents, pollen, reciprocal }: Generation): { mother: Tree; father: Tree } | null {
  const [one, ...others] = seedParents;
  if (!one || others.length > 0 || !('tree' in one) || pollen === 'open' || reciprocal) return null;
  const mother = trees.find(({ id }) => id === one.tree);
  if (!mother) return null;
  if (pollen === 'self') return { mother, father: mother };
  const [other, ...more] = pollen;
  const father = other && more.length === 0 && 'tree' in other ? trees.find(({ id }) => id === other.tree) : undefined;
  return father ? { mother, father } : null;
}

/** Share of the seedlings with the right genes, for what the parents may be; null where that is too much to list. */
function shareOf(programme: Programme, trait: ShownTrait, { mother, father }: { mother: Tree; father: Tree }): Mixture | null {
  try {
    const tray = trayOf(programme, trait, mother, father);
    return coarse(mixtureOf({ ...tray, canShow: 1 }, 'able'));
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Neighbouring shares taken together until there are few; their mean is kept. */
function coarse(mixture: Mixture): Mixture {
  const size = Math.ceil(mixture.length / MOST_SHARES);
  if (size <= 1) return mixture;
  return Array.from({ length: Math.ceil(mixture.length / size) }, (_, i) => {
    const part = mixture.slice(i * size, (i + 1) * size);
    const weight = part.reduce((sum, one) => sum + one.weight, 0);
    return { weight, share: part.reduce((sum, one) => sum + one.weight * one.share, 0) / weight };
  });
}

interface Looked {
  readonly mother: Tree;
  readonly father: Tree;
  readonly entry: RatesOf['entry'];
  readonly trait: ShownTrait | undefined;
  readonly conditions: readonly Condition[];
  readonly last: boolean;
}

function leftOut(programme: Programme, generation: Generation, { mother, father, entry, trait, conditions, last }: Looked): readonly LeftOut[] {
  const { weather, limits, goal, gardens } = programme;
  const kinds = programme.kinds.filter(({ id }) => id === mother.kind || id === entry.gives);
  const gives = programme.kinds.find(({ id }) => id === entry.gives);
  const some = (value: Parameters<typeof meanOf>[0]) => meanOf(value) > 0;
  const shown = conditions.filter(({ type }) => type === 'shown');
  const said: readonly (readonly [LeftOut, boolean])[] = [
    ['measured', conditions.some(({ type }) => type === 'measured')],
    ['test', generation.test?.cull === true || generation.look !== undefined || conditions.some(({ type }) => type === 'test')],
    ['otherTraits', shown.length > 1],
    ['grade', conditions.some((condition) => condition.type === 'shown' && condition.grade !== 'any') || trait?.grade !== undefined],
    ['breedsTrue', last && goal.breedsTrue],
    ['keptFirst', last && generation.judge < goal.crops],
    ['springLuck', weather.springLuckSet > 0 || weather.springLuckGermination > 0],
    ['frost', some(weather.frostChance) && kinds.some(({ frostShare }) => some(frostShare))],
    ['treeLoss', [mother, father].some(({ yearlyLoss }) => some(yearlyLoss)) || gardens.some(({ yearlyLoss }) => some(yearlyLoss))],
    ['stray', some(entry.straySet) && generation.cover > 0],
    ['sharedSeason', trait !== undefined && trait.sharedSeason > 0 && meanOf(trait.seasonsShown) < 1],
    ['regularity', gives !== undefined && meanOf(gives.regularity) < 1],
    ['families', gives !== undefined && some(gives.familySpread) && !('years' in gives.firstFruit)],
    ['emptyIfShown', programme.traits.some((one) => one.type === 'shown' && some(one.emptyIfShown))],
    ['moreSprings', generation.springs > 1],
    ['wanted', true],
    ['hands', true],
    ['room', limits.places < generation.seedlings],
  ];
  return said.flatMap(([what, is]) => (is ? [what] : []));
}
