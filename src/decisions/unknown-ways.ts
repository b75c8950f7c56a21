import type { Plan, Programme } from '../model/programme.ts';
import { pairsReached } from '../model/reach.ts';
import type { UnknownFact, UnknownKind } from './unknown-facts.ts';

/** The cheapest way to learn a fact. Common practice, no source. */
export interface WayToLearn {
  /** How many flowers, seeds, grafts, trees or crops are looked at; 0 where nothing is counted beforehand. */
  readonly count: number;
  /** Extra work, hours; 0 where the plan’s own work shows it; null where it cannot be learned beforehand. */
  readonly hours: number | null;
  /** Trees that must stand for it beyond those of the plan. */
  readonly trees: number;
  /** Seasons it takes, once there is something to see. */
  readonly seasons: number;
  /** Nothing to see before the first trees of the plan fruit. */
  readonly afterFruit: boolean;
}

interface Effort {
  readonly count?: number;
  readonly hours?: number | null;
  readonly trees?: number;
  readonly seasons?: number;
  readonly afterFruit?: boolean;
}

/** Nobody counts fewer than this for a share, nor has to count more. */
const FLOWERS = { least: 20, most: 400, else: 100 } as const;
const SMALL_TRIAL = 10;

/** Hours of work go by the programme’s own speeds where it has them; a walk with a notebook is put at one hour. */
const NOTEBOOK = 1;

type Ask = (programme: Programme, plan: Plan, fact: UnknownFact) => Effort;

const judging =
  (trees: number, crops: number): Ask =>
  ({ hours }) => ({ count: trees, hours: trees * crops * hours.perJudging, seasons: crops, afterFruit: true });
const noting =
  (seasons: number, afterFruit = false): Ask =>
  () => ({ hours: NOTEBOOK, seasons, afterFruit });
const writing: Ask = () => ({ hours: 0, seasons: 1, afterFruit: true });
const pollinating =
  (flowers: number): Ask =>
  ({ hours }) => ({ count: flowers, hours: flowers * (hours.perFlower + hours.perFruit / 4), seasons: 1 });
const cutting =
  (fruits: number): Ask =>
  ({ hours }) => ({ count: fruits, hours: fruits * hours.perFruit, seasons: 1 });

/**
 * What to do, for each kind of fact: ten or fifteen trees tell a yes from a no, twenty trials a share to about 1 in 10, and what the plan
 * does anyhow costs nothing but a note. Common practice, no source; hours by the programme’s own speeds.
 */
const WAYS: Readonly<Record<UnknownKind, Ask>> = {
  roots: ({ hours, kinds }) => {
    // Trial grafts stand in the nursery row for two summers.
    const room = Math.max(0, ...kinds.map(({ nurseryShare }) => nurseryShare));
    return { count: SMALL_TRIAL, hours: SMALL_TRIAL * (hours.perGraft + 2 * room * hours.perPlaceYear), trees: SMALL_TRIAL, seasons: 2 };
  },
  rule: judging(15, 1),
  set: (programme, plan, fact) => {
    const { limits, hours } = programme;
    const byHand = Math.floor(limits.bloomDays * limits.hoursADay * limits.flowersAnHour);
    const pair = pairsReached(programme, plan).find(({ stray, entry }) => !stray && entry?.id === fact.of);
    const own = pair ? (plan.generations[pair.generation]?.flowers ?? 0) : 0;
    const count = Math.min(FLOWERS.most, byHand, Math.max(FLOWERS.least, own === 0 ? FLOWERS.else : own));
    return { count, hours: count * hours.perFlower, seasons: 1 };
  },
  stray: pollinating(50),
  emptyFruit: cutting(20),
  seeds: cutting(20),
  germination: () => ({ count: 60, hours: 0, seasons: 1 }),
  weakShare: () => ({ count: 30, hours: 0, seasons: 1 }),
  dying: () => ({ hours: 2 * NOTEBOOK, seasons: 1 }),
  take: ({ hours }) => ({ count: 20, hours: 20 * hours.perGraft, trees: 20, seasons: 1 }),
  stockLoss: noting(3),
  precocity: ({ hours }) => ({ count: 5, hours: 5 * hours.perGraft, trees: 5, seasons: 1, afterFruit: true }),
  stockFertility: noting(1, true),
  firstFruit: writing,
  neverFruits: writing,
  regularity: noting(3, true),
  losses: noting(2),
  frost: () => ({ hours: 2 * NOTEBOOK }),
  frostShare: () => ({ count: 100, hours: 2 * NOTEBOOK, seasons: 1 }),
  flowers: () => ({ count: 3, hours: NOTEBOOK, seasons: 1, afterFruit: true }),
  fertility: pollinating(50),
  canShow: judging(15, 1),
  seasons: ({ hours }) => ({ count: 3, hours: 3 * hours.perJudging, seasons: 3 }),
  falseShow: ({ hours }) => ({ count: 10, hours: 10 * hours.perJudging, seasons: 1 }),
  emptyIfShown: cutting(20),
  inherited: judging(15, 2),
  travels: ({ hours }) => ({ count: 5, hours: 5 * (hours.perGraft + 2 * hours.perJudging), trees: 5, seasons: 2, afterFruit: true }),
  inbreeding: judging(15, 1),
  treeFlowers: () => ({ hours: NOTEBOOK, seasons: 1 }),
  treeLoss: () => ({ hours: 0, seasons: 3 }),
  treeValue: ({ hours }) => ({ count: 2, hours: 2 * hours.perJudging, seasons: 2 }),
  treeGenes: ({ hours }) => ({ count: 8, hours: 8 * (hours.perSeedling + hours.perJudging), trees: 8, seasons: 1, afterFruit: true }),
  neighbours: () => ({ hours: 3 * NOTEBOOK, seasons: 1 }),
  gardenLoss: () => ({ hours: NOTEBOOK }),
  families: () => ({ hours: null, afterFruit: true }),
};

/** The cheapest way to learn a fact of a programme, for a plan of it. */
export function wayToLearn(programme: Programme, plan: Plan, fact: UnknownFact): WayToLearn {
  const { count = 0, hours = 0, trees = 0, seasons = 0, afterFruit = false } = WAYS[fact.kind](programme, plan, fact);
  return { count, hours: hours === null ? null : Math.round(100 * hours) / 100, trees, seasons, afterFruit };
}
