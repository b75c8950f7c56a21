import type { LeverId } from '../decisions/how-many-levers.ts';
import type { LeftOut } from '../decisions/how-many-setting.ts';
import type { Failure, Stage } from '../results/outlook.ts';

/** Names of the numbers that can be asked about, and of what stands in their way. */

interface LeverWords {
  /** In the list of choices. */
  readonly choice: string;
  readonly question: string;
  readonly axis: string;
  readonly axisShort: string;
  readonly one: string;
  readonly many: string;
  /** After a number in a sentence: "40 flowers each spring". */
  readonly each: string;
}

export const leverWords: Readonly<Record<LeverId, LeverWords>> = {
  flowers: {
    choice: 'flowers pollinated each spring',
    question: 'How many flowers?',
    axis: 'flowers pollinated each spring ›',
    axisShort: 'flowers each spring ›',
    one: 'flower',
    many: 'flowers',
    each: ' each spring',
  },
  seedlings: {
    choice: 'seedlings wanted',
    question: 'How many seedlings?',
    axis: 'seedlings wanted, at most ›',
    axisShort: 'seedlings wanted ›',
    one: 'seedling',
    many: 'seedlings',
    each: '',
  },
  crosses: {
    choice: 'trees crossed, flowers shared among them',
    question: 'How many crosses?',
    axis: 'trees crossed, with as many flowers in all ›',
    axisShort: 'trees crossed ›',
    one: 'tree crossed',
    many: 'trees crossed',
    each: '',
  },
  picks: {
    choice: 'picks kept',
    question: 'How many picks?',
    axis: 'picks kept ›',
    axisShort: 'picks kept ›',
    one: 'pick',
    many: 'picks',
    each: '',
  },
  seasons: {
    choice: 'crops judged before a tree is kept',
    question: 'How many seasons of judging?',
    axis: 'crops judged before a tree is kept ›',
    axisShort: 'crops judged ›',
    one: 'crop judged',
    many: 'crops judged',
    each: '',
  },
  fruitsCut: {
    choice: 'fruits cut a tree and season',
    question: 'How many fruits to cut?',
    axis: 'fruits cut a tree and season ›',
    axisShort: 'fruits cut ›',
    one: 'fruit cut',
    many: 'fruits cut',
    each: ' a tree and season',
  },
  backups: {
    choice: 'grafted backups of each pick',
    question: 'How many backups?',
    axis: 'grafted backups of each pick ›',
    axisShort: 'backups of each pick ›',
    one: 'backup',
    many: 'backups',
    each: ' of each pick',
  },
};

export const heldWords: Readonly<Record<Failure, string>> = {
  onlyTreeLost: 'that the only tree is lost first',
  stillWaiting: 'time: the trees are still too young in your last judging year',
  noFruit: 'that no fruit sets',
  noSeedling: 'that no seed comes up',
  noRoom: 'room for the trees',
  seedlingsDied: 'seedlings that die before they fruit',
  noneGoodEnough: 'taste, not seed: trees fruit, but none is good enough',
};

export const stageWords: Readonly<Record<Stage, readonly [one: string, many: string]>> = {
  flowers: ['flower', 'flowers'],
  fruits: ['fruit', 'fruits'],
  seeds: ['seed', 'seeds'],
  seedlings: ['seedling', 'seedlings'],
  aliveAtGraft: ['alive to graft', 'alive to graft'],
  fruiting: ['in fruit', 'in fruit'],
  showing: ['showing it', 'showing it'],
  kept: ['kept', 'kept'],
};
/** What is narrow, as a step. */
export const stepWords: Readonly<Record<Stage, string>> = {
  flowers: 'pollination',
  fruits: 'fruit set',
  seeds: 'seeds a fruit',
  seedlings: 'germination',
  aliveAtGraft: 'the months before grafting',
  fruiting: 'the years to first fruit',
  showing: 'showing the trait',
  kept: 'being good enough to keep',
};
export const passWords: Readonly<Record<Stage, string>> = {
  flowers: '',
  fruits: 'flowers set',
  seeds: 'seeds a fruit',
  seedlings: 'seeds come up',
  aliveAtGraft: 'are alive to graft',
  fruiting: 'come to fruit',
  showing: 'are seen to show it',
  kept: 'are kept',
};

export const leftWords: Readonly<Record<LeftOut, string>> = {
  springLuck: 'good and bad springs',
  frost: 'frost',
  treeLoss: 'the loss of a parent tree',
  stray: 'stray pollen',
  room: 'room',
  hands: 'what hands and trees can do in one spring',
  wanted: 'the number of seedlings you want at most',
  moreSprings: 'that later springs leave less time',
  measured: 'whether what is measured is good enough',
  test: 'tests and looks at the seedlings',
  otherTraits: 'all traits but the first',
  sharedSeason: 'seasons that are bad for all trees at once',
  grade: 'how much of the fruit shows it',
  regularity: 'years without a crop',
  families: 'early and late families',
  emptyIfShown: 'fruit that is empty on a tree that shows the trait',
  breedsTrue: 'breeding true',
  keptFirst: 'that a tree has to be kept before it is proven',
};
