import type { Estimate } from '../model/estimate.ts';
import { meanOf } from '../model/mean.ts';
import type { Kind, Programme } from '../model/programme.ts';
import { lognormalFrom } from '../random/draws.ts';
import { chanceBetween, type Between } from '../statistics/censored.ts';
import { amountAxis, learnGrid, shareAxis } from '../statistics/learn-grid.ts';
import { firstFruitShape } from '../statistics/weibull.ts';
import { logSum, type Belief } from '../statistics/weighed.ts';
import type { FamilyAges } from './fruiting-facts.ts';
import { shareDensity, timeDensity } from './priors.ts';

/** Seasons of first fruit as a grower states them. */
export interface StatedFruit {
  readonly earliest: number;
  readonly half: Estimate;
  readonly ninety: Estimate;
}

export interface LearnedFruit {
  /** As stated, or the youngest age seen if that is younger. */
  readonly earliest: number;
  readonly half: Belief;
  readonly ninety: Belief;
  readonly never: Belief;
}

/** A kind that gives one number of years says nothing of their spread: nine in ten by then and a third more. Own choice. */
const SLOWEST = 4 / 3;
/** Hybrids follow the seed parent two to one, as the engine takes it (docs/model.md §8). */
const SEED_WEIGHT = 2 / 3;
const DEEPEST = 4;

/** What the programme says of a kind's first fruit now, as three seasons. */
export function statedFruit(programme: Programme, { firstFruit }: Kind, depth = 0): StatedFruit | undefined {
  if ('years' in firstFruit) {
    const years = meanOf(firstFruit.years);
    return { earliest: Math.max(1, Math.floor(years * 0.75)), half: firstFruit.years, ninety: years * SLOWEST };
  }
  if ('earliest' in firstFruit) return { earliest: meanOf(firstFruit.earliest), half: firstFruit.half, ninety: firstFruit.ninety };
  const [seed, pollen] = [firstFruit.between.seed, firstFruit.between.pollen].map((id) => {
    const kind = programme.kinds.find((one) => one.id === id);
    return kind && depth < DEEPEST ? statedFruit(programme, kind, depth + 1) : undefined;
  });
  if (!seed || !pollen) return undefined;
  const mix = (a: number, b: number): number => SEED_WEIGHT * a + (1 - SEED_WEIGHT) * b;
  return {
    earliest: mix(seed.earliest, pollen.earliest),
    half: mix(meanOf(seed.half), meanOf(pollen.half)),
    ninety: mix(meanOf(seed.ninety), meanOf(pollen.ninety)),
  };
}

/** Equal parts that a family's own pace is cut into. */
const FAMILY_NODES = 7;
const LATEST = 60;
/** Of half the trees and nine in ten: nearer together than this no season can tell them. */
const NEAREST = 0.05;

/** Trees of one family, times after (earliest − 1). */
interface Family {
  readonly borne: readonly Between[];
  readonly waiting: readonly Between[];
  readonly fruited: number;
}

function familiesOf(facts: readonly FamilyAges[], earliest: number): Family[] {
  const pairs = new Map<string, Between[]>();
  for (const { pair, seen } of facts) pairs.set(pair, [...(pairs.get(pair) ?? []), ...seen]);
  return [...pairs.values()].map((seen) => {
    const alike = new Map<string, Between & { times: number }>();
    for (const { from, to, times = 1 } of seen) {
      const key = `${String(from)} ${String(to)}`;
      const shifted = { from: Math.max(0, from - earliest + 1), to: to - earliest + 1 };
      alike.set(key, { ...shifted, times: (alike.get(key)?.times ?? 0) + times });
    }
    const all = [...alike.values()];
    const borne = all.filter(({ to }) => to !== Infinity);
    return { borne, waiting: all.filter(({ to }) => to === Infinity), fruited: borne.reduce((sum, { times }) => sum + times, 0) };
  });
}

/** What one family says at one curve and pace, whatever the share that never fruits. */
interface AtPace {
  /** ln of the chance of the trees that bore, if none were of those that never do. */
  readonly borne: number;
  readonly fruited: number;
  readonly waiting: readonly { readonly left: number; readonly times: number }[];
}

/**
 * Returns belief about the seasons by which half and nine in ten have borne and about the share that never does, from trees that have borne
 * (in a season, or between two looks) and trees that have not yet. Trees of one pair share its own pace, a lognormal of the kind's spread
 * between families, so many trees of one family narrow no further than that.
 * @param facts of one kind
 *
 * **Source:** curve of docs/model.md §8; likelihood as in `chanceBetween`.
 */
export function learnFirstFruit(kind: Pick<Kind, 'familySpread' | 'neverFruits'>, stated: StatedFruit, facts: readonly FamilyAges[]): LearnedFruit | undefined {
  const ages = facts.flatMap(({ seen }) => seen);
  if (ages.length === 0) return undefined;
  const youngest = Math.min(...ages.map(({ to }) => to));
  const earliest = Math.max(1, Math.min(stated.earliest, Number.isFinite(youngest) ? Math.ceil(youngest) : stated.earliest));
  const families = familiesOf(facts, earliest);
  const spread = meanOf(kind.familySpread);
  const paces = spread > 0 ? Array.from({ length: FAMILY_NODES }, (_, k) => lognormalFrom((k + 0.5) / FAMILY_NODES, spread)) : [1];
  const ninetyBefore = timeDensity(stated.ninety);

  let curve = { half: NaN, ninety: NaN, paced: [] as AtPace[][] };
  const at = (half: number, ninety: number): AtPace[][] => {
    if (curve.half === half && curve.ninety === ninety) return curve.paced;
    const { shape, scale } = firstFruitShape(earliest, half, ninety);
    const paced = families.map((family) => paces.map((pace) => atPace(family, { shape, scale: scale * pace })));
    curve = { half, ninety, paced };
    return paced;
  };
  const size = { coarse: 18, fine: 26 };
  const [half, ninety, never] = learnGrid(
    [
      amountAxis(timeDensity(stated.half), earliest, LATEST, size),
      amountAxis(() => 1, earliest, LATEST * 1.5, size),
      shareAxis(shareDensity(kind.neverFruits), { coarse: 12, fine: 24 }),
    ],
    ([a = 0, b = 0, v = 0]) => (b <= a + NEAREST ? -Infinity : at(a, b).reduce((sum, family) => sum + logFamily(family, v), Math.log(ninetyBefore(b)))),
  );
  return half && ninety && never && { earliest, half, ninety, never };
}

function atPace({ borne, waiting, fruited }: Family, curve: { shape: number; scale: number }): AtPace {
  return {
    borne: borne.reduce((sum, one) => sum + (one.times ?? 1) * Math.log(Math.max(1e-300, chanceBetween(one, curve))), 0),
    fruited,
    waiting: waiting.map((one) => ({ left: chanceBetween(one, curve), times: one.times ?? 1 })),
  };
}

const logFamily = (paced: readonly AtPace[], never: number): number =>
  logSum(
    paced.map(({ borne, fruited, waiting }) =>
      waiting.reduce((sum, { left, times }) => sum + times * Math.log(never + (1 - never) * left), borne + fruited * Math.log1p(-never)),
    ),
  ) - Math.log(paced.length);
