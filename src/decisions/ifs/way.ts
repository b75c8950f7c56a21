import type { WhatIf } from '../../engine/what-if.ts';
import type { Father, Plan, Programme } from '../../model/programme.ts';
import type { Variant } from '../steps.ts';

/** What can happen. Words for each stand in the text of the page. */
export type IfId = 'land' | 'takeover' | 'hands' | 'frost' | 'leafTest' | 'skip';

/** How it is meant, where there is more than one honest reading. */
export type IfForm =
  /** land: everything in the ground; the founding trees stand elsewhere; every pick and founding tree has a copy elsewhere; one garden of several. */
  | 'all'
  | 'seedlings'
  | 'copied'
  | 'garden'
  /** takeover: nobody goes on from that year; somebody goes on after the last judging year, until that year. */
  | 'nobody'
  | 'longer'
  /** hands: twice from that year on. */
  | 'twice'
  /** frost: falls in that spring for sure; does not. */
  | 'sure'
  | 'never'
  /** leafTest: to be had from that year, for every generation without one, or for the last alone. */
  | 'every'
  | 'last'
  /** skip: the plan begins that spring. */
  | 'begins';

/** Why something cannot be asked of a plan. */
export type WhyNot =
  /** The plan is over before it could happen. */
  | 'tooShort'
  /** A frost takes nothing. */
  | 'noFrost'
  /** The plan crosses nothing by hand. */
  | 'noHands'
  /** No gene of the goal is named, or none that every tree of the goal needs. */
  | 'noGene'
  /** Every generation has its leaf test. */
  | 'testedAlready';

/** What a leaf would be tested for. */
export interface LeafTest {
  readonly gene: string;
  readonly name: string;
  /** Share of the belief in rules under which every tree of the goal carries it. */
  readonly needed: number;
  /** Whether its errors are stated in some plan; else it is taken to read without error. */
  readonly stated: boolean;
  /** Hours a test takes, as stated. */
  readonly hours: number;
}

/** What hands in bloom manage and what the plan wants of them. */
export interface Hands {
  /** Flowers a spring that the hands manage. */
  readonly manage: number;
  /** Flowers of the generation that wants most. */
  readonly wanted: number;
}

/** One thing that can happen, in one reading: a line of the answer. */
export interface Way {
  readonly if: IfId;
  readonly form: IfForm;
  /** Id of the garden that it is about. */
  readonly garden: string | null;
  /** Year of the line unless another is asked for; calendar year, like all years here. */
  readonly year: number;
  /** Years that the chance is drawn over, rising; empty: it has no curve. */
  readonly years: readonly number[];
  /** @param year one of `years`, or any other for which it makes sense */
  readonly variant: (year: number) => Variant;
  /** Where one run holds the whole curve: a tree counts that is proven in or before the year that `until` gives. */
  readonly whole?: { readonly variant: Variant; readonly until: (year: number) => number };
  readonly leafTest?: LeafTest;
  readonly hands?: Hands;
}

/** Something that can happen: a file of its own, and a line in `registry.ts`. */
export interface If {
  readonly id: IfId;
  /**
   * Its ways for a plan that is alone in its programme; or why there is none.
   * @param all every plan of the breeder
   */
  ways(programme: Programme, plan: Plan, all: readonly Plan[]): readonly Way[] | WhyNot;
}

export const yearsFrom = (from: number, to: number): readonly number[] => Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);

/** Half way through the plan: soon enough to hurt, late enough for something to stand. */
export const halfWay = ({ startYear, lastYear }: Programme): number => Math.ceil((startYear + lastYear) / 2);

/** Some years on: what is not there yet, but may come. */
export const soon = ({ startYear, lastYear }: Programme): number => Math.min(startYear + 5, lastYear);

export const certain = (programme: Programme, whatIf: WhatIf): Variant => ({ programme, plan: 0, whatIf });

/** First spring in which the plan's first generation can cross: when a tree on each side bears. */
export function firstSpring({ startYear, trees }: Programme, { generations: [first] }: Plan): number {
  const bears = (parents: readonly Father[]) =>
    Math.min(...parents.map((parent) => ('tree' in parent ? (trees.find(({ id }) => id === parent.tree)?.bearsFrom ?? startYear) : startYear)));
  if (!first) return startYear;
  return Math.max(startYear, bears(first.seedParents), Array.isArray(first.pollen) ? bears(first.pollen) : startYear);
}
