import { z } from 'zod';
import { field, number, reference, whole } from '../model/fields.ts';

const LETTERS = 40;
const short = (label: string, help?: string) => field(z.string().trim().min(1).max(LETTERS), help === undefined ? { label } : { label, help });

/** 1: the tree, and how it behaves. */
const treeFields = {
  name: short('Name of the tree'),
  kind: reference('kinds', { label: 'It is a kind of' }),
  trait: short('What is rare about it', 'In a word or two: red flesh, a thornless shoot.'),
  showed: whole(1, 200, { label: 'Seasons in which it showed', unit: 'seasons' }),
  seasons: whole(1, 200, { label: 'Seasons in which you looked', unit: 'seasons' }),
  fruit: field(z.enum(['all', 'part']), { label: 'Of the fruit, it showed in', words: { all: 'all of it', part: 'part of it' } }),
  standing: whole(1, 50, { label: 'Trees of it that stand', unit: 'trees', help: 'Grafted copies count. If there is one and it dies, it is gone.' }),
};

/** 2: partners, and how pollen comes to the flowers. */
const partnerFields = {
  name: short('Name of the partner'),
  kind: reference('kinds', { label: 'It is a kind of' }),
  shows: field(z.enum(['no', 'yes', 'unknown']), { label: 'Does it show it too?', words: { no: 'no', yes: 'yes', unknown: 'not known' } }),
};
const wayFields = {
  how: field(z.enum(['both', 'hand', 'open']), { label: 'How', words: { both: 'both', hand: 'by hand', open: 'open seed' } }),
  neighbours: whole(1, 2000, { label: 'Trees of its kind flowering near by', unit: 'trees' }),
};

/** 3: ground, hands, bloom and years. */
const meansFields = {
  places: whole(4, 100_000, { label: 'Places for trees', unit: 'places', help: 'Full-grown trees. Seedlings take a twentieth until they are planted out.' }),
  hours: number(5, 100_000, { label: 'Hours a year', scale: 'hours', unit: 'hours' }),
  bloomDays: number(1, 60, { label: 'Days in bloom', scale: 'count', unit: 'days' }),
  hoursADay: number(0.5, 24, { label: 'Hours a day in bloom', scale: 'hours', unit: 'hours' }),
  firstSpring: whole(1500, 2900, { label: 'First spring', scale: 'year' }),
  lastYear: whole(1500, 3000, { label: 'Your last judging year', scale: 'year' }),
};

/** 4: own counts, all of which may be absent; and how it is inherited. */
const countFields = {
  hits: number(0, 1e7, { label: 'Counted', scale: 'count' }),
  of: number(1, 1e7, { label: 'Out of', scale: 'count' }),
  springs: whole(1, 200, { label: 'In', unit: 'springs' }),
};
const knownFields = {
  /** Age by which half of the weak seedlings were dead. */
  weakMonths: number(0.5, 120, { label: 'Half of the weak ones were dead by', scale: 'months', unit: 'months' }),
  rule: reference('traits', { label: 'How it is inherited' }),
};

/** 5: when it is enough. */
const goalFields = {
  crops: whole(1, 20, { label: 'Crops you judge of a tree', unit: 'crops' }),
  shows: whole(1, 20, { label: 'It must show in at least', unit: 'of them' }),
  trees: whole(1, 20, { label: 'Trees you want', unit: 'trees' }),
  measure: reference('traits', { label: 'And must it also be good in …' }),
  ordinary: number(0, 1e6, { label: 'An ordinary tree has' }),
  least: number(0, 1e6, { label: 'You want at least' }),
  own: number(0, 1e6, { label: 'Your tree has' }),
};

/** What the screen draws each answer from: labels, units, bounds. */
export const fields = {
  tree: treeFields,
  partners: partnerFields,
  way: wayFields,
  means: meansFields,
  count: countFields,
  known: knownFields,
  goal: goalFields,
} as const;

/** The counts a breeder may have, by what was counted. */
export const COUNTS = ['set', 'germination', 'weak'] as const;
export type CountName = (typeof COUNTS)[number];

export const MOST_PARTNERS = 3;
const count = z.strictObject(countFields).partial();

/** Answers as far as they are given: what is absent was not said, and a filled-in answer stands for it. */
export const draftSchema = z.strictObject({
  tree: z.strictObject(treeFields).partial(),
  partners: z.array(z.strictObject(partnerFields).partial()).min(1).max(MOST_PARTNERS),
  way: z.strictObject(wayFields).partial(),
  means: z.strictObject(meansFields).partial(),
  counts: z.strictObject({ set: count, germination: count, weak: count }),
  known: z.strictObject(knownFields).partial(),
  goal: z.strictObject(goalFields).partial(),
});
export type Draft = z.infer<typeof draftSchema>;

export const EMPTY: Draft = {
  tree: {},
  partners: [{}],
  way: {},
  means: {},
  counts: { set: {}, germination: {}, weak: {} },
  known: {},
  goal: {},
};

export interface Partner {
  readonly name: string;
  readonly kind: string;
  readonly shows: 'no' | 'yes' | 'unknown';
}
export interface OwnCount {
  readonly hits: number;
  readonly of: number;
  readonly springs: number;
}

/** A group of answers with none left out. */
type Whole<T> = { readonly [K in keyof T]-?: Exclude<T[K], undefined> };

/** All answers, given or filled in. Names and kinds that were not given are empty. */
export interface Answers {
  readonly tree: Whole<Draft['tree']>;
  /** None where only open seed is wanted and no partner was named. */
  readonly partners: readonly Partner[];
  readonly way: Whole<Draft['way']>;
  readonly means: Whole<Draft['means']>;
  readonly counts: Readonly<Partial<Record<CountName, OwnCount>>>;
  readonly weakMonths: number | undefined;
  /** “unknown”, “one”, “two”, or “known:” and the id of a trait of the catalogue. */
  readonly rule: string;
  readonly goal: {
    readonly crops: number;
    readonly shows: number;
    readonly trees: number;
    readonly measure: MeasureName;
    readonly ordinary: number;
    readonly least: number;
    readonly own: number | undefined;
  };
}

/** What may be measured besides. Middle and spread of ordinary trees: guesses that the breeder can change. */
export const MEASURES = {
  none: undefined,
  taste: { unit: 'points', ordinary: 5, least: 6, spread: 0.3 },
  size: { unit: '% of usual', ordinary: 100, least: 100, spread: 0.25 },
  keeping: { unit: 'weeks', ordinary: 8, least: 10, spread: 0.4 },
} as const;
export type MeasureName = keyof typeof MEASURES;
export const isMeasure = (name: string): name is MeasureName => Object.hasOwn(MEASURES, name);

const YEARS = 30;
const SEASONS = 3;
const CROPS = 3;
const countOf = ({ hits, of, springs = 1 }: Draft['counts'][CountName]): OwnCount | undefined =>
  hits === undefined || of === undefined ? undefined : { hits, of, springs };

const filledTree = ({ name = '', kind = '', trait = '', showed, seasons, fruit = 'all', standing = 1 }: Draft['tree']): Answers['tree'] => ({
  name,
  kind,
  trait,
  showed: showed ?? Math.min(SEASONS, seasons ?? SEASONS),
  seasons: seasons ?? Math.max(SEASONS, showed ?? SEASONS),
  fruit,
  standing,
});

function filledMeans(means: Draft['means'], spring: number): Answers['means'] {
  const { places = 60, hours = 150, bloomDays = 6, hoursADay = 3, firstSpring = spring, lastYear = firstSpring + YEARS } = means;
  return { places, hours, bloomDays, hoursADay, firstSpring, lastYear };
}

function filledGoal(goal: Draft['goal']): Answers['goal'] {
  const measure = goal.measure !== undefined && isMeasure(goal.measure) ? goal.measure : 'none';
  const usual = MEASURES[measure];
  const crops = goal.crops ?? Math.max(CROPS, goal.shows ?? 0);
  return {
    crops,
    // Two crops of three: most of them, and a bad season forgiven.
    shows: goal.shows ?? Math.ceil((2 / 3) * crops),
    trees: goal.trees ?? 1,
    measure,
    ordinary: goal.ordinary ?? usual?.ordinary ?? 0,
    least: goal.least ?? goal.ordinary ?? usual?.least ?? 0,
    own: goal.own,
  };
}

/**
 * Fills in what was not said, so that the futures can be run on few answers. Every value filled in is an ordinary one or a guess.
 * @param firstSpring the spring to come: where no first spring was said
 */
export function filledIn(draft: Draft, firstSpring: number): Answers {
  const tree = filledTree(draft.tree);
  const { how = 'both', neighbours = 10 } = draft.way;
  const partners = draft.partners.map(({ name = '', kind = tree.kind, shows = 'no' }): Partner => ({ name, kind, shows }));
  const counts = Object.fromEntries(
    COUNTS.flatMap((name) => {
      const own = countOf(draft.counts[name]);
      return own ? [[name, own]] : [];
    }),
  );
  return {
    tree,
    partners: how === 'open' ? partners.filter(({ name }) => name !== '') : partners,
    way: { how, neighbours },
    means: filledMeans(draft.means, firstSpring),
    counts,
    weakMonths: draft.known.weakMonths,
    rule: draft.known.rule ?? 'unknown',
    goal: filledGoal(draft.goal),
  };
}
