import type { Source } from '../model/estimate.ts';
/**
 * Words of the fields that a breeder fills in. Labels of single fields stand with the schema; here stand the names of groups, of the
 * forms that one thing can be given in, of sources, and what is said about text that cannot be read.
 */

const NB = '\u00a0';

/** Name of a group, and what its buttons and empty choice say. */
export interface GroupWords {
  readonly label: string;
  /** On the button that puts in an entry, or the whole group where it may be absent. */
  readonly add?: string;
  /** Heading of one entry of a list: “Condition 2”. */
  readonly entry?: string;
  readonly help?: string;
}

/** By key, or by “parent.key” where the same key means something else elsewhere; the longer name wins. */
const groups: Readonly<Record<string, GroupWords>> = {
  goal: { label: 'What a tree must prove' },
  limits: { label: 'What you have' },
  hours: { label: 'Hours it takes' },
  money: { label: 'What it costs', add: 'add costs' },
  weather: { label: 'Weather' },
  facts: { label: 'Yes/no facts', add: 'add a fact', entry: 'Fact', help: 'Something that is so or not, for several crosses at once.' },
  genes: { label: 'Genes', add: 'add a gene', entry: 'Gene' },
  'trees.genes': { label: 'Its genes' },
  'traits.genes': { label: 'Genes of large effect', add: 'add a gene', entry: 'Gene' },
  'background.genes': { label: 'Their genes' },
  'needs.genes': { label: 'Genes', add: 'another gene' },
  incompatibility: {
    label: 'S alleles: which pollen is rejected',
    add: 'describe the S gene',
    help: 'Only what is out of the ordinary: linked genes, alleles that lost a function.',
  },
  alleles: { label: 'S alleles that are out of the ordinary', add: 'add an S allele', entry: 'S allele' },
  origin: { label: 'Where the genome comes from', add: 'follow the genome of each kind' },
  traits: { label: 'Traits', add: 'add a trait', entry: 'Trait' },
  rules: {
    label: 'How it is inherited',
    add: 'add an explanation',
    entry: 'Explanation',
    help: 'Where you are not sure, give several with weights: each future follows one.',
  },
  needs: { label: 'What a tree must carry' },
  of: { label: 'Genes', add: 'add a gene', entry: 'Gene' },
  grade: { label: 'Graded fruit by fruit', add: 'grade fruit by fruit' },
  kinds: { label: 'Kinds', add: 'add a kind', entry: 'Kind' },
  firstFruit: { label: 'First fruit, from seed' },
  between: { label: 'Between two kinds' },
  gardens: {
    label: 'Gardens',
    add: 'add a garden',
    entry: 'Garden',
    help: 'The first garden is home: trees stand there unless they or a plan say otherwise.',
  },
  'trees.gardens': { label: 'Stands in', add: 'another garden' },
  trees: { label: 'Trees', add: 'add a tree', entry: 'Tree' },
  testCrosses: { label: 'What its test crosses showed', help: 'Crossed with a tree that has the wanted copy on every set: how many seedlings showed it.' },
  'pools.trees': { label: 'Trees whose pollen is in the air', add: 'add a tree', entry: 'Tree' },
  values: { label: 'True values', help: 'Leave out what you never tasted: it is then drawn in each future.' },
  'background.values': { label: 'Their means' },
  spread: { label: 'Their spreads' },
  seen: { label: 'What was seen on it' },
  pools: { label: 'Pollen in the air', add: 'add a neighbourhood', entry: 'Neighbourhood' },
  background: { label: 'Neighbours nobody knows', add: 'add unknown neighbours' },
  crosses: { label: 'Crosses', add: 'add a cross', entry: 'Cross' },
  routes: { label: 'Other ways to raise the seed', add: 'add a way', entry: 'Way' },
  weakness: { label: 'Weak seedlings', add: 'some seedlings are weak' },
  necrosis: { label: 'Seedlings that no rootstock saves', add: 'some seedlings die whatever they stand on' },
  course: { label: 'How fast the weak ones die' },
  rootBorne: { label: 'Where the weakness sits' },
  stocks: { label: 'Rootstocks', add: 'add a stock', entry: 'Stock' },
  plans: { label: 'Plans', add: 'add a plan', entry: 'Plan' },
  generations: { label: 'Generations', add: 'add a generation', entry: 'Generation' },
  seedParents: { label: 'Seed parent', add: 'another' },
  pollen: { label: 'Pollen', add: 'another' },
  test: { label: 'Leaf test', add: 'add a leaf test' },
  look: { label: 'A look at the seedlings', add: 'judge seedlings by eye' },
  rescue: { label: 'Rescue graft', add: 'add a rescue graft', help: 'Keep the knife away from the holding hand; wear a glove on it.' },
  keep: { label: 'Keep' },
  conditions: { label: 'Keep a tree if', add: 'add a condition', entry: 'Condition' },
  'goal.conditions': { label: 'A tree is proven if', add: 'add a condition', entry: 'Condition' },
  weights: { label: 'Weights in the index' },
  goOn: { label: 'Go on' },
  backup: { label: 'Safety copies', add: 'graft safety copies' },
  log: { label: 'Season log' },
  batches: { label: 'Batches of seed', add: 'add a batch', entry: 'Batch' },
  seed: { label: 'Seed parent' },
  grafting: { label: 'Grafted', add: 'seedlings were grafted' },
  counts: { label: 'Counts', add: 'add a count', entry: 'Count' },
  unit: { label: 'Not counted by the flower', add: 'counted by cluster, bag or bur' },
  events: { label: 'What befell it', add: 'add what happened', entry: 'What happened' },
  'batches.trees': { label: 'Its trees', add: 'add a tree', entry: 'Tree' },
  place: { label: 'Place in the orchard', add: 'say where it stands' },
  seasons: { label: 'Seasons judged', add: 'add a season', entry: 'Season' },
  'seasons.seen': { label: 'Seen in its fruit' },
  'seasons.values': { label: 'Measured' },
  copies: { label: 'Copies elsewhere', add: 'add a copy', entry: 'Copy' },
};

/** Returns the words of a group by the keys that lead to it, the nearest last; places in lists are left out. */
export function groupWords(keys: readonly string[]): GroupWords | undefined {
  return groups[keys.slice(-2).join('.')] ?? groups[keys.at(-1) ?? ''];
}

/** By the key of the choice, then by the first key (or the value, or the type) of each form it can be given in. */
const forms: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  firstFruit: { years: 'one age', earliest: 'three ages', between: 'between two kinds' },
  course: { halfLife: 'half are dead by …', alive: 'counted alive at an age' },
  rootBorne: { chance: 'a chance of its own', fact: 'a fact shared with other crosses' },
  genes: { copies: 'copies known', frequency: 'not known: by frequency' },
  seen: { source: 'it is the source', showed: 'watched for some seasons' },
  conditions: { shown: 'a trait shows', measured: 'a measured trait is high or low', test: 'a leaf test says yes' },
  traits: { shown: 'shows or not', measured: 'measured' },
  needs: { all: 'all of these', any: 'any of these', total: 'so many copies in total' },
  pollen: {
    open: 'whatever is in the air',
    self: 'its own',
    mixed: 'a mixture',
    unknown: 'not known',
    tag: 'a tree by its tag',
    tree: 'a tree of the programme',
  },
  seed: { unknown: 'not known', tag: 'a tree by its tag', tree: 'a tree of the programme' },
};

/** Words for one form of a choice; the key itself where there are none. */
export const formWords = (key: string, form: string): string => forms[key]?.[form] ?? form;
export const hasFormWords = (key: string, form: string): boolean => forms[key]?.[form] !== undefined;

/** What an empty choice of an entry means, by key. */
const emptyChoices: Readonly<Record<string, string>> = {
  after: 'the one before it',
  cross: 'found by the two kinds',
  pool: 'the usual neighbours',
  defaultPool: 'nobody’s',
  route: 'the usual way',
  garden: 'the home garden',
  homologue: 'not known',
};
export const emptyChoice = (key: string): string => emptyChoices[key] ?? 'none';

/** What was counted, of what: “18 fruits of 240 flowers”. */
const counts: Readonly<Record<string, readonly [string, string]>> = {
  set: ['fruits', 'flowers'],
  straySet: ['fruits', 'flowers'],
  emptyFruit: ['empty', 'fruits'],
  emptyIfShown: ['empty', 'fruits'],
  germination: ['came up', 'seeds'],
  share: ['weak', 'seedlings'],
  alive: ['alive', 'weak ones'],
  takeTender: ['took', 'grafts'],
  takeRipe: ['took', 'grafts'],
  canShow: ['can', 'trees'],
  seasonsShown: ['showed it', 'seasons'],
  falseShow: ['seemed to', 'seasons'],
  neverFruits: ['never', 'trees'],
  regularity: ['with a crop', 'seasons'],
  firstYearLoss: ['lost', 'seedlings'],
  yearlyLoss: ['lost', 'tree winters'],
  frostChance: ['with frost', 'springs'],
  frostTakes: ['taken', 'flowers'],
};
/** Words behind the two numbers of a count; without its own, a count says “18 of 240”. */
export const countWords = (key: string): readonly [string, string] => counts[key] ?? ['', ''];

/** A person’s words for where a number comes from; the handbook and the paper are both “published”. */
export const sourceWords = {
  counted: 'your count',
  published: 'published',
  practice: 'common practice',
  remembered: 'only remembered',
  guess: 'guess',
  invented: 'invented',
} as const;

/** How sure the writer of a source is; it changes no future. */
export const confidenceWords = { high: 'high confidence', middling: 'middling confidence', low: 'low confidence' } as const;

/** “only remembered · middling confidence” */
export const saidOf = ({ kind, confidence }: Source): string =>
  confidence === undefined ? sourceWords[kind] : `${sourceWords[kind]} · ${confidenceWords[confidence]}`;

export const estimateForms = {
  known: 'one number',
  ranged: 'a range',
  counted: 'a count',
  alternatives: 'alternatives',
} as const;

/** “1,000,000” for a sentence; nothing typed is ever printed this way. */
const grouped = (text: string): string => {
  const [whole = '', decimals] = text.split('.');
  const parted = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return decimals === undefined ? parted : `${parted}.${decimals}`;
};
const withUnit = (text: string, unit: string): string => (unit === '' ? text : `${text}${NB}${unit}`);

/** “4, 6 and 9”. */
const listed = (parts: readonly string[]): string => [parts.slice(0, -1).join(', '), ...parts.slice(-1)].filter(Boolean).join(' and ');

/** What is said where bad input stands. Numbers come printed; a year keeps its four digits together. */
export const problems = {
  notANumber: (text: string) => `“${text}” is not a number.`,
  needed: 'A number is needed here.',
  needsText: 'A few letters are needed here.',
  tooLong: (most: number) => `At most ${String(most)} letters fit here.`,
  whole: 'Must be a whole number.',
  between: (min: string, max: string, unit: string, isYear = false) =>
    `Must lie between ${isYear ? min : grouped(min)} and ${withUnit(isYear ? max : grouped(max), unit)}.`,
  order: (lower: string, higher: string) => `“${higher}” must not be below “${lower}”.`,
  hits: 'Cannot be more than what it is counted out of.',
  noneCounted: 'Must be more than none.',
  stands: (good: readonly string[]) => `The picture still shows your last good ${good.length === 1 ? 'number' : 'numbers'}, ${listed(good)}.`,
  /** The same, where no picture is drawn from the number yet. */
  standsUnseen: (good: readonly string[]) =>
    `Your last good ${good.length === 1 ? 'number' : 'numbers'}, ${listed(good)}, ${good.length === 1 ? 'stands' : 'stand'}.`,
} as const;

const rounded = (value: number): string => String(Math.abs(value) >= 100 ? Math.round(value) : Number(value.toPrecision(2)));
/** A range that does not break over two lines: word joiners stand around the dash. */
const same = (low: string, high: string): string => (low === high ? low : `${low}\u2060–\u2060${high}`);

/** “about 8 in 100; likely 6–10”, for a share whose middle eight of ten lie between low and high (all 0–1). */
export function shareInWords(middle: number, low: number, high: number): string {
  const of = middle < 0.01 && high < 0.05 ? 1000 : high - low >= 0.2 && low >= 0.1 ? 10 : 100;
  const part = (value: number): string => String(Math.round(value * of));
  return `about ${part(middle)} in ${grouped(String(of))}; likely${NB}${same(part(low), part(high))}`;
}

/** “about 5.8 months; likely 3–9”. */
export function amountInWords(middle: number, low: number, high: number, unit: string): string {
  return `about ${withUnit(grouped(rounded(middle)), unit)}; likely${NB}${same(grouped(rounded(low)), grouped(rounded(high)))}`;
}

export const fieldText = {
  yes: 'yes',
  no: 'no',
  choose: 'choose …',
  remove: 'remove',
  removeThat: (what: string) => `remove ${what}`,
  place: (entry: string, place: number) => `${entry} ${String(place)}`,
  formOf: (label: string) => `${label}: given as`,
  slider: (label: string) => `${label}, slider`,
  low: 'low',
  likely: 'likely',
  high: 'high',
  of: 'of',
  hits: 'counted',
  outOf: 'out of',
  countedIn: 'in',
  lots: 'lots',
  lotsHelp: 'A lot is one spring of one pair; what belongs to one lot shares its luck.',
  per: 'per',
  flower: 'flower',
  cluster: 'cluster',
  clusterOf: 'cluster of',
  flowersInIt: 'flowers in a cluster',
  weight: 'weight',
  value: 'value',
  alternative: (place: number) => `alternative ${String(place)}`,
  addAlternative: 'another alternative',
  removeAlternative: (place: number) => `remove alternative ${String(place)}`,
  noSource: 'source not said',
  sourceOf: (label: string) => `Where “${label}” comes from`,
  sourceKind: 'It is',
  sourceNote: 'Who, when, where',
  confidence: 'How sure',
  confidenceUnsaid: 'not said',
  done: 'Done',
  odds: (weights: string) => `odds ${weights}`,
  notStated: 'not stated',
  state: (name: string) => `add “${name}”`,
  addOne: 'add one',
  rangesEach: 'give each as a range',
  needs: (what: string) => `Add ${what} first: this needs one.`,
  addFirst: {
    facts: 'a fact',
    genes: 'a gene',
    traits: 'a trait',
    kinds: 'a kind',
    gardens: 'a garden',
    trees: 'a tree',
    pools: 'a neighbourhood',
    crosses: 'a cross',
    stocks: 'a rootstock',
    generations: 'an earlier generation',
    routes: 'a way to raise seed',
  },
  gone: (id: string) => `“${id}”, no longer there`,
  noEntries: 'nothing to choose from yet',
} as const;

/** Labels of the groups alone, for naming an edit. */
export const groupLabels: Readonly<Record<string, string>> = Object.fromEntries(Object.entries(groups).map(([key, words]) => [key, words.label]));
