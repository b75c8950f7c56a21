import type { Programme } from '../model/programme.ts';
import { textKey } from '../random/mix.ts';
import { standsToday } from '../seasonlog/today.ts';
import type { BearingTree, Family, PlanToday, Seedlings, StandingParent } from '../seasonlog/today-types.ts';
import { at, type Ids } from './positions.ts';

/*
 * What stands today, with ids resolved to positions; years are indices from the first spring and may be negative for what stood before
 * it. Nothing here is drawn.
 */

export interface CompiledToday {
  /** First spring that is simulated. */
  readonly year: number;
  /** In the order of the compiled plans. */
  readonly plans: readonly CompiledPlanToday[];
}

export interface CompiledPlanToday {
  readonly families: readonly CompiledFamily[];
  readonly seedlings: readonly CompiledSeedlings[];
  readonly trees: readonly CompiledBearing[];
  readonly inGround: readonly { readonly family: number; readonly key: number; readonly stage: 0 | 1 | 2; readonly n: number }[];
  readonly generations: readonly CompiledGenerationToday[];
}

/** Handle of a founding tree, or place of a logged tree; −1 where it is the other. */
export interface CompiledStanding {
  readonly tree: number;
  readonly logged: number;
}

export interface CompiledFamily {
  readonly generation: number;
  readonly mother: CompiledStanding;
  /** Null: in the air, or (mixed) the generation's pollen parents in equal parts. */
  readonly father: CompiledStanding | null;
  readonly mixed: boolean;
  readonly cross: number;
  readonly pollinated: number;
  readonly born: number;
}

/** 0: sound, 1: weak, 2: nobody knows yet. */
export type Weak = 0 | 1 | 2;

export interface CompiledSeedlings {
  readonly family: number;
  readonly key: number;
  readonly n: number;
  readonly weak: Weak;
  readonly grafted: boolean;
  readonly counted: number;
  readonly looked: number;
}

export interface CompiledBearing {
  readonly family: number;
  readonly key: number;
  readonly bore: number;
  /** Spring before which it was lost; Infinity while it stands. */
  readonly gone: number;
  /** Whether it has to be drawn: it stands, is a parent, or has had the crops that the goal asks for. */
  readonly needed: boolean;
  readonly weak: Weak;
  readonly grafted: boolean;
  readonly picked: boolean;
  readonly copies: number;
  readonly seasons: readonly CompiledSeason[];
  /** By shown trait: seasons in which it was looked for, and in which it showed. */
  readonly looks: Int32Array;
  readonly shows: Int32Array;
  /** By measured trait: mean of what was measured. */
  readonly means: Float64Array;
}

export interface CompiledSeason {
  readonly year: number;
  /** By shown trait: 0 not, 1 in part, 2 in full; −1: nobody looked. */
  readonly shown: Int8Array;
  readonly values: Float64Array;
}

export interface CompiledGenerationToday {
  readonly springs: number;
  readonly firstPollination: number;
  readonly raised: number;
  readonly firstSeedling: number;
  readonly flowers: number;
  readonly fruits: number;
  readonly seeds: number;
  readonly seedlings: number;
  readonly grafted: number;
  readonly goneOn: boolean;
  /** Some tree is marked as kept: then the marks say what was kept in the years before the last. */
  readonly marked: boolean;
}

/** What stands before the spring that the log is forecast from; null where the programme is forecast from its first spring. */
export function compileToday(programme: Programme, ids: Ids): CompiledToday | null {
  const { forecastFrom } = programme.log;
  if (forecastFrom === undefined) return null;
  const { startYear } = programme;
  return {
    year: forecastFrom - startYear,
    plans: standsToday(programme, forecastFrom).plans.map((plan) => compilePlan(plan, programme, ids)),
  };
}

function compilePlan(plan: PlanToday, { startYear, goal }: Programme, ids: Ids): CompiledPlanToday {
  const families: CompiledFamily[] = [];
  const known = new Map<string, number>();
  const index = (year: number) => year - startYear;
  const standing = (parent: StandingParent): CompiledStanding =>
    'tree' in parent ? { tree: at(ids.trees, parent.tree), logged: -1 } : { tree: -1, logged: parent.logged };
  const familyOf = (family: Family): number => {
    const found = known.get(family.batch);
    if (found !== undefined) return found;
    known.set(family.batch, families.length);
    families.push({
      generation: family.generation,
      mother: standing(family.seed),
      father: typeof family.pollen === 'string' ? null : standing(family.pollen),
      mixed: family.pollen === 'mixed',
      cross: at(ids.crosses, family.cross),
      pollinated: index(family.pollinated),
      born: index(family.born),
    });
    return families.length - 1;
  };
  const parents = new Set(
    [...plan.trees, ...plan.seedlings, ...plan.inGround].flatMap(({ seed, pollen }) =>
      [seed, pollen].flatMap((parent) => (typeof parent === 'object' && 'logged' in parent ? [parent.logged] : [])),
    ),
  );
  const tree = (source: BearingTree, t: number): CompiledBearing => {
    const seasons = source.seasons.map((season) => ({
      year: index(season.year),
      shown: Int8Array.from(ids.shown.keys(), (id) => season.shown[id] ?? -1),
      values: Float64Array.from(ids.measured.keys(), (id) => season.values[id] ?? 0),
    }));
    const count = (test: (seen: number) => boolean) =>
      Int32Array.from(ids.shown.keys(), (_, trait) => seasons.filter(({ shown }) => test(shown[trait] ?? -1)).length);
    return {
      family: familyOf(source),
      key: textKey(`${source.batch}/${source.tag === '' ? String(t) : source.tag}`),
      bore: index(source.bore),
      gone: source.gone === null ? Infinity : index(source.gone),
      needed: source.gone === null || source.copies > 0 || parents.has(t) || seasons.length >= goal.crops,
      weak: weakOf(source.weak),
      grafted: source.grafted,
      picked: source.picked,
      copies: source.copies,
      seasons,
      looks: count((seen) => seen >= 0),
      shows: count((seen) => seen > 0),
      means: Float64Array.from(ids.measured.keys(), (_, trait) =>
        seasons.length === 0 ? NaN : seasons.reduce((sum, { values }) => sum + (values[trait] ?? 0), 0) / seasons.length,
      ),
    };
  };
  const trees = plan.trees.map(tree);
  return {
    trees,
    seedlings: plan.seedlings.map((group, i): CompiledSeedlings => ({
      family: familyOf(group),
      key: textKey(`${group.batch}/seedlings/${String(i)}`),
      n: group.n,
      weak: weakOf(group.weak),
      grafted: group.grafted,
      counted: index(group.counted),
      looked: index(group.looked),
    })),
    inGround: plan.inGround.map((seed) => ({
      family: familyOf(seed),
      key: textKey(`${seed.batch}/ground`),
      stage: seed.stage === 'seeds' ? 0 : seed.stage === 'fruits' ? 1 : 2,
      n: seed.n,
    })),
    families,
    generations: plan.generations.map((generation, g): CompiledGenerationToday => ({
      springs: generation.springs,
      // A wait counts from the first spring of the programme where it began before it.
      firstPollination: generation.firstPollination === null ? -1 : Math.max(0, index(generation.firstPollination)),
      raised: generation.raised,
      firstSeedling: generation.firstSeedling === null ? -1 : Math.max(0, index(generation.firstSeedling)),
      ...generation.counted,
      goneOn: generation.goneOn,
      marked: trees.some(({ picked, family }) => picked && families[family]!.generation === g),
    })),
  };
}

const weakOf = (weak: Seedlings['weak']): Weak => (weak === 'yes' ? 1 : weak === 'no' ? 0 : 2);
