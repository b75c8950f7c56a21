/** How a shown-or-not trait is seen, as shares in [0, 1]: trees with the right genes able to show it, seasons in which such a tree does, seasons in which any other seems to. */
export interface Showing {
  readonly canShow: number;
  readonly seasons: number;
  readonly falseShow: number;
}

/** One thing that a tree may be, for one trait. */
export interface Hidden {
  /** Chances of all states of a tree sum to 1. */
  readonly chance: number;
  /** Carries enough to pass it on: some seedlings of a test cross owe it to this tree. */
  readonly carries: boolean;
  /** Has what the rule needs. */
  readonly right: boolean;
  /** Share of the seedlings of a test cross with the right genes. A test cross is with a tree that has the counted allele on every set. */
  readonly fromTest: number;
  /** Of these, the share that would not be so if the tree carried nothing; 0 where one copy is enough: the tester alone gives it then. */
  readonly owed: number;
}

/** A seedling or tree cannot be told apart by which of them showed: the number of ways is the same for every state, and left out. */
const likelihood = (showed: number, of: number, p: number): number => p ** showed * (1 - p) ** (of - showed);

/** Weighs states by the chance of what was seen. All 0 where no state fits: the states are then left as they were. */
function weighed(states: readonly Hidden[], chanceOf: (state: Hidden) => number): Hidden[] {
  const weights = states.map((state) => state.chance * chanceOf(state));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return total > 0 ? states.map((state, i) => ({ ...state, chance: weights[i]! / total })) : [...states];
}

/** Chance of what was seen of a tree in its seasons: able once for its life, then each season anew. */
export function chanceOfSeasons(right: boolean, showed: number, seasons: number, how: Showing): number {
  const wrong = likelihood(showed, seasons, how.falseShow);
  return right ? how.canShow * likelihood(showed, seasons, how.seasons) + (1 - how.canShow) * wrong : wrong;
}

/**
 * Returns the chance that one seedling shows the trait in the crop it is judged on.
 * @param share of the seedlings that have the right genes
 */
export const seedlingShows = (share: number, { canShow, seasons, falseShow }: Showing): number => share * canShow * (seasons - falseShow) + falseShow;

/**
 * What a tree may be once it was seen to show the trait in so many seasons of so many (not showing: 0).
 *
 * **Source:** Bayes' rule; docs/model.md §4.
 */
export const afterSeasons = (states: readonly Hidden[], showed: number, seasons: number, how: Showing): Hidden[] =>
  weighed(states, ({ right }) => chanceOfSeasons(right, showed, seasons, how));

/**
 * What a tree may be once so many of its test-cross seedlings showed the trait, of so many judged on one crop each. With one copy of a
 * recessive and two sets, the odds halve with each seedling that does not show.
 *
 * **Source:** Bayes' rule, as in genetic counselling; docs/model.md §4.
 */
export const afterTestCross = (states: readonly Hidden[], showed: number, of: number, how: Showing): Hidden[] =>
  weighed(states, ({ fromTest }) => likelihood(showed, of, seedlingShows(fromTest, how)));

const sumOver = (states: readonly Hidden[], value: (state: Hidden) => number): number => states.reduce((sum, state) => sum + state.chance * value(state), 0);

/** Chance that the tree can pass it on. */
export const carryingChance = (states: readonly Hidden[]): number => sumOver(states, ({ carries }) => +carries);
/** Chance that it has what the rule needs. */
export const rightChance = (states: readonly Hidden[]): number => sumOver(states, ({ right }) => +right);

/** No breeder raises more of one test cross. */
export const MOST_TEST_SEEDLINGS = 1000;

/**
 * Returns the chance that, of so many test-cross seedlings, at least one shows the trait because it has it, if the tree carries it.
 * @returns 0 where the tree cannot carry it
 */
export function shownIfCarried(states: readonly Hidden[], seedlings: number, { canShow, seasons }: Showing): number {
  const carrying = carryingChance(states);
  return carrying > 0 ? sumOver(states, ({ carries, owed }) => (carries ? 1 - (1 - owed * canShow * seasons) ** seedlings : 0)) / carrying : 0;
}

/** What a tree may be under one rule of the trait, and how far that rule is believed. What was seen of a tree never changes the belief. */
export interface RuleStates {
  readonly belief: number;
  readonly states: readonly Hidden[];
}

/**
 * Returns the least number of test-cross seedlings of which at least one shows the trait with chance P, if the tree carries it.
 * @param P in (0, 1)
 * @returns Infinity where no number up to 1000 is enough: some carriers never show it in a test cross
 *
 * **Source:** definition as in Sedcole (1977) Crop Sci. 17:667–668, over what a carrier may be.
 */
export function seedlingsToSettle(states: readonly Hidden[], how: Showing, P = 0.9): number {
  const enough = (n: number): boolean => shownIfCarried(states, n, how) >= P - 1e-12;
  if (!enough(MOST_TEST_SEEDLINGS)) return Infinity;
  let [few, plenty] = [0, MOST_TEST_SEEDLINGS];
  while (plenty - few > 1) {
    const middle = Math.floor((few + plenty) / 2);
    if (enough(middle)) plenty = middle;
    else few = middle;
  }
  return plenty;
}

/** What a test cross of one tree is worth. */
export interface TestWorth {
  /** Seedlings that settle it 9 times in 10; Infinity where none do. */
  readonly seedlings: number;
  /** Chance that one of them shows it: the tree is then known to carry it. */
  readonly found: number;
  /** The same for each seedling: what trees are put in order by. */
  readonly perSeedling: number;
  /** Chance that the tree carries it after all, if none of them shows it. */
  readonly ifNone: number;
}

export function testWorth(rules: readonly RuleStates[], how: Showing): TestWorth {
  const states = rules.flatMap(({ belief, states: some }) => some.map((state) => ({ ...state, chance: belief * state.chance })));
  const over = (value: (some: readonly Hidden[]) => number): number => rules.reduce((sum, { belief, states: some }) => sum + belief * value(some), 0);
  const seedlings = seedlingsToSettle(states, how);
  if (seedlings === Infinity) return { seedlings, found: 0, perSeedling: 0, ifNone: carryingChance(states) };
  const found = carryingChance(states) * shownIfCarried(states, seedlings, how);
  return { seedlings, found, perSeedling: found / seedlings, ifNone: over((some) => carryingChance(afterTestCross(some, 0, seedlings, how))) };
}
