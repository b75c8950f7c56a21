import { mix2, textKey } from '../random/mix.ts';
import type { Stream } from '../random/stream.ts';

/**
 * Which stream a draw comes from. Facts and luck of the headline pass and of the second pass are separate domains, and futures of mixed
 * facts have a luck of their own; within a future every stage has a key of its own, so that a change in one stage leaves the others as they were.
 */
export const DOMAIN = { facts: 1, luck: 2, factSets: 3, factSetLuck: 4, mixedLuck: 5, questions: 6, today: 7 } as const;

/** Where a purpose gets its random numbers: one future's stream, or a mix of several futures'. */
export interface Keyed {
  key(k: number): Stream;
}

const purpose = (name: string) => textKey(`purpose/${name}`);

/** Shared by all plans of a future. */
export const FACT = {
  rule: purpose('rule'),
  founder: purpose('founder'),
  neighbour: purpose('neighbour'),
  family: purpose('family'),
  copy: purpose('copy'),
} as const;
export const LUCK = {
  frost: purpose('frost'),
  season: purpose('season'),
  yearEffect: purpose('year effect'),
  treeLoss: purpose('tree loss'),
  gardenLoss: purpose('garden loss'),
  set: purpose('set'),
  germination: purpose('germination'),
  /** Genomes of logged trees, and what is not known of seedlings that stand. */
  today: purpose('today'),
} as const;

/** Stages of one generation in one year; keyed by the generation's position, so that plans alike so far share their luck. */
export const STAGE = {
  fruits: 1,
  stray: 2,
  seeds: 3,
  germination: 4,
  classes: 5,
  weakDeaths: 6,
  grafts: 7,
  winter: 8,
  planting: 9,
  genomes: 10,
  bearing: 11,
  trees: 12,
  judging: 13,
  backups: 14,
  gathering: 15,
  nursery: 16,
  fates: 17,
} as const;

export function stageKey(generation: number, stage: number, year: number): number {
  return (generation << 20) | (stage << 12) | year;
}

export const pairKey = (seedParent: number, pollenParent: number) => mix2(seedParent, pollenParent);
