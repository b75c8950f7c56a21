/** Words of the seed tray. Shares and chances are 0–1; counts are of twenty seedlings unless said. */
import { counted, inTen, inTenWords, listed, percent, tied, whole } from './charts.ts';
import type { Piece } from './headline.ts';

const NB = '\u00a0';
const TRAY = 20;

/** Kinds of seedling: able to show the trait; right genes but not able; some of the copies; none of them; and what bears no fruit of its own. */
type Seedling = 'able' | 'unable' | 'carrier' | 'without' | Other;
type Other = 'male' | 'copy' | 'dies' | 'useless';
type Wanted = 'able' | 'carries' | 'notAble';

const times = (chance: number): string => `${String(Math.round(chance * 100))} times in${NB}100`;
const hundred = (share: number): string => (share > 0 && share < 0.005 ? 'under 1' : share > 0.995 && share < 1 ? 'over 99' : String(Math.round(share * 100)));
/** "8 times in 10", "once in 10", "always", "never". */
function often(chance: number): string {
  if (chance <= 0) return 'never';
  if (chance >= 1) return 'always';
  const { numeral, words } = inTen(chance);
  const count = numeral === '1' ? 'once' : `${numeral} ${numeral === 'under 1' ? 'time' : 'times'}`;
  return `${count} ${words.replace(' ', NB)}`;
}
const seedlings = (n: number): string => `${whole(n)} ${n === 1 ? 'seedling' : 'seedlings'}`;
const capital = (text: string): string => text.replace(/^./u, (letter) => letter.toUpperCase());

/** "Old Hedgerow × Saffron Bell"; selfed: "Old Hedgerow, selfed". */
const pair = (mother: string, father: string | null): string => (father === null ? `${mother}, selfed,` : tied(`${mother} × ${father}`));

/** "would be able to show red flesh": what is said of the wanted seedlings. */
const WOULD: Readonly<Record<Wanted, (trait: string) => string>> = {
  able: (trait) => `would be able to show ${trait}`,
  carries: (trait) => `would carry at least one copy that counts for ${trait}`,
  notAble: (trait) => `would not be able to show ${trait}`,
};

/** How many of twenty, as drawn, and the share behind it. */
export interface OfTwenty {
  readonly count: number;
  readonly share: number;
}

/** "about seven", "hardly any", "none", "all": as many as are drawn, so that words and picture agree. A share of whole twentieths: the bare number. */
function ofTwenty({ count, share }: OfTwenty): string {
  if (share <= 0) return 'none';
  if (share >= 1) return 'all';
  if (count === 0) return 'hardly any';
  if (count === TRAY) return 'nearly all';
  return Math.abs(share * TRAY - count) < 1e-9 ? counted(count) : `about ${counted(count)}`;
}

/** The same where nothing is drawn for it. */
const roughly = (share: number): string => ofTwenty({ count: Math.round(share * TRAY), share });

export interface Target {
  readonly chance: number;
  /** Infinity: no number is enough. */
  readonly seedlings: number;
}

/** “Besides, there would be five males and two that die.”: of what bears no fruit of its own, as many as are drawn. */
function besides(others: Readonly<Partial<Record<Other, OfTwenty>>>, mother: string): string {
  const said = (many: OfTwenty | undefined, one: string, more: string): string[] => {
    if (!many || many.share <= 0) return [];
    return [`${many.count === 0 ? 'hardly any' : ofTwenty(many)} ${many.count === 1 ? one : more}`];
  };
  const parts = [
    ...said(others.male, 'male', 'males'),
    ...said(others.copy, `copy of ${mother}`, `copies of ${mother}`),
    ...said(others.dies, 'that dies whatever it is grafted on', 'that die whatever they are grafted on'),
    ...said(others.useless, 'that is no use', 'that are no use'),
  ];
  return parts.length === 0 ? '' : `Besides, there would be ${listed(parts)}.`;
}

export interface Answer {
  readonly mother: string;
  /** Null: the mother’s own pollen. */
  readonly father: string | null;
  readonly trait: string;
  readonly wanted: Wanted;
  readonly ofTwenty: OfTwenty;
  /** Of what bears no fruit of its own, what there is. */
  readonly others: Readonly<Partial<Record<Other, OfTwenty>>>;
  readonly least: number;
  /** Surest last. */
  readonly targets: readonly Target[];
  /** Chance that the pair can give the kind at all. */
  readonly atAll: number;
}

/** Why a target is out of reach: some ways the parents may be give none. */
function outOfReach({ chance }: Target, atAll: number): string {
  if (atAll > chance + 1e-9) return `${capital(times(chance))} would take more than a million.`;
  return `${capital(times(chance))} is out of reach: in ${hundred(1 - atAll)} of${NB}100 cases this pair can give none, however many you raise.`;
}

/** The tray in two or three sentences, numbers in bold. */
export function answer({ mother, father, trait, wanted, ofTwenty: many, others, least, targets, atAll }: Answer): Piece[] {
  const first: Piece[] = [
    { text: `Of twenty seedlings of ${pair(mother, father)} ` },
    { text: ofTwenty(many), strong: true },
    { text: ` ${WOULD[wanted](trait)}. ` },
  ];
  const last: Piece[] = [{ text: besides(others, mother) }].filter(({ text }) => text !== '');
  if (atAll <= 0) return [...first, { text: 'Nor would any of a thousand, under any rule you gave.' }, ...last];
  const reached = targets.filter((target) => Number.isFinite(target.seedlings));
  const missed = targets.filter((target) => !Number.isFinite(target.seedlings));
  const sure = reached.at(-1);
  const next = missed[0];
  const raise: Piece[] = sure
    ? [{ text: `For at least ${counted(least)} of them ${times(sure.chance)} raise ` }, { text: whole(sure.seedlings), strong: true }, { text: '. ' }]
    : [];
  const why = next ? outOfReach(next, atAll) : '';
  const missedWhy = why === '' || sure ? why : `At least ${counted(least)} of them: ${why.charAt(0).toLowerCase()}${why.slice(1)}`;
  return [...first, ...raise, { text: missedWhy === '' || last.length === 0 ? missedWhy : `${missedWhy} ` }, ...last];
}

const KIND: Readonly<Record<Seedling, (trait: string) => string>> = {
  able: () => 'able to show it',
  unable: () => 'has the right genes, but is not able to show it',
  carrier: () => 'has some of the copies that count, but not enough',
  without: () => 'has none of the copies that count',
  male: () => 'male: gives pollen and never fruits',
  copy: () => 'a copy of the seed parent',
  dies: () => 'dies of what both parents gave it, whatever it is grafted on',
  useless: () => 'no use: not whole, as of parents with an odd number of sets',
};

/** Heads of the columns of the table, by kind. */
const HEADS: Readonly<Record<Seedling, string>> = {
  able: 'Able to show it',
  unable: 'Right genes, not able',
  carrier: 'Some copies',
  without: 'None',
  male: 'Male',
  copy: 'Copy of the seed parent',
  dies: 'Dies',
  useless: 'No use',
};

export const trayText = {
  title: 'A tray of twenty',
  nothing: 'There is no tree to choose from yet.',
  noShown: 'No trait of this programme is shown or not shown, so there is no tray to draw.',
  noEntry: (mother: string, father: string) =>
    `There is no cross entry for ${mother} pollinated by ${father}. Add one under “Crosses between kinds”, and the tray is drawn.`,
  tooMany: 'More genes of these trees are unknown than can be counted through here. State some of their copies, and the tray is drawn.',
  rejects: (mother: string, father: string) =>
    `No fruit: by their S alleles ${mother} rejects all the pollen of ${father}. Choose a pollen parent with another S allele.`,
  rejectsOwn: (name: string) => `No fruit: by its S alleles ${name} rejects its own pollen.`,
  sex: {
    male: (name: string) => `${name} is male: it gives pollen and bears no fruit.`,
    female: (name: string) => `${name} is female: it gives no pollen.`,
  },
  odd: (kind: string, sets: number, entry: string) =>
    `${capital(kind)} has ${counted(sets)} sets of chromosomes and is as good as sterile. If you know better, say in “${entry}” what share of the seedlings is any use, and the tray is drawn.`,
  sets: (entry: string) =>
    `The sets of chromosomes of the parents do not add up to those of the seedlings of “${entry}”. Mend the kinds, and the tray is drawn.`,
  seedParent: 'Seed parent',
  pollenParent: 'Pollen parent',
  ownPollen: (name: string) => `${name} (its own pollen)`,
  trait: 'Trait',
  wanted: 'Wanted',
  wantedKind: { able: 'able to show it', carries: 'with at least one copy', notAble: 'not able to show it' } satisfies Record<Wanted, string>,
  least: 'At least',
  kind: (seedling: Seedling, trait: string) => KIND[seedling](trait),
  count: (n: number, share: number) => ({ of: `${String(n)} of 20`, share: percent(share) }),
  summary: (mother: string, father: string | null, trait: string, kinds: readonly { kind: Seedling; count: number }[]) =>
    `A tray of twenty seedlings of ${pair(mother, father)} ${trait}: ${listed(kinds.filter(({ count }) => count > 0).map(({ kind, count }) => `${String(count)} ${KIND[kind](trait)}`))}.`,
  pots: 'Filled pots hold the wanted ones.',
  luck: (low: number, high: number, trait: string, wanted: Wanted) =>
    low === high
      ? `In 8 of${NB}10 real trays ${low === 0 ? 'none' : counted(low)} ${WOULD[wanted](trait)}.`
      : `No real tray is the average one: in 8 of${NB}10, between ${String(low)} and ${String(high)} ${WOULD[wanted](trait)}.`,
  need: {
    title: 'How many to raise',
    intro: (least: number) => `Chance of at least ${counted(least)} of the wanted kind, by seedlings raised.`,
    level: (chance: number) => `${String(Math.round(chance * 100))} in 100`,
    raise: (n: number) => (Number.isFinite(n) ? seedlings(n) : 'not reached'),
    axis: 'seedlings',
    ceiling: (atAll: number) => `The dashed line: ${hundred(atAll)} in 100. In the other cases this pair cannot give any.`,
    twenty: (least: number, chance: number) => `A tray of twenty holds at least ${counted(least)} ${often(chance)}.`,
    summary: (least: number, targets: readonly Target[]) =>
      `For at least ${counted(least)}: ${listed(targets.map(({ chance, seedlings: n }) => `${times(chance)}, ${Number.isFinite(n) ? `raise ${seedlings(n)}` : 'no number is enough'}`))}.`,
  },
  rules: {
    title: 'It hangs on the rule',
    intro: 'The same twenty under each rule of inheritance you hold possible. Above they are averaged by how strongly you believe in each.',
    rule: (name: string) => `If “${name}”`,
    line: (many: OfTwenty, wanted: Wanted) => `${ofTwenty(many)} ${trayText.wantedKind[wanted]}`,
    belief: (share: number) => `believed ${percent(share)}`,
    misfit: (trees: readonly string[]) =>
      `What was seen of ${listed(trees)} fits none of the genes ${trees.length === 1 ? 'it' : 'they'} may have under this rule.`,
  },
  unknown: (trees: readonly string[]) =>
    `The genes of ${listed(trees)} are not all known: every genotype ${trees.length === 1 ? 'it' : 'they'} may have is counted, weighed by what was seen of ${trees.length === 1 ? 'it' : 'them'}.`,
  exact: 'Counted through every genotype, not drawn by lot; your guesses stand at their means.',
  tableHeads: (kinds: readonly Seedling[]) => ['If', 'Believed', ...kinds.map((kind) => HEADS[kind])],
  allRules: 'all rules, by belief',
  needHeads: ['Chance wanted', 'Seedlings to raise'],
  valueHeads: ['Measured', 'Family mean', 'Spread within the family (SD)', 'Not known of the mean (SD)'],
  hundred,
};

/** What becomes of the seed, as terms and sentences. */
export const courseText = {
  title: 'From seed to fruit',
  entry: (name: string) => `By the cross entry “${name}”.`,
  fruit: 'First fruit',
  seasons: (pollinated: number, years: readonly [number, number, number], seasons: readonly [number, number, number]) =>
    years[0] === years[2]
      ? `Pollinated in ${String(pollinated)}: first fruit in ${String(years[0])}, ${String(seasons[0])} seasons after the seed comes up.`
      : `Pollinated in ${String(pollinated)}: the earliest in ${String(years[0])}, half by ${String(years[1])}, nine in ten by ${String(years[2])} (${seasons.map(String).join(', ')} seasons after the seed comes up).`,
  never: (share: number) => `${hundred(share)} in 100 never fruit.`,
  weak: 'Weak ones',
  weakness: (share: number, onset: number, course: { readonly halfLife: number } | { readonly alive: number; readonly atYears: number }, inRoots: number) =>
    [
      `${capital(roughly(share))} of any twenty, whatever genes they carry.`,
      'halfLife' in course
        ? `They look sound until ${months(onset)}; half are dead ${months(course.halfLife)} after that.`
        : `They look sound until ${months(onset)}; of all seedlings ${hundred(course.alive)} in 100 live at ${String(course.atYears)} ${course.atYears === 1 ? 'year' : 'years'}.`,
      inRoots > 0 && inRoots < 1
        ? `A graft onto other roots can save them if the weakness sits in the roots (${inTenWords(inRoots)}).`
        : inRoots >= 1
          ? 'A graft onto other roots can save them.'
          : 'It sits in the top: no graft saves them.',
    ].join(' '),
  empty: 'Empty fruit',
  emptyFruit: (share: number) => `${hundred(share)} in 100 fruits hold no sound seed.`,
  emptyIfShown: (share: number, trait: string) => `On a seed parent that shows ${trait}, ${hundred(share)} in 100 besides: then the way round matters.`,
  stray: 'Strays',
  strays: (share: number) => `${hundred(share)} in 100 fruits are set by stray pollen unless you keep it out; the tray leaves them aside.`,
  pollen: 'Pollen',
  pollenWorks: (share: number, grains: readonly string[], set: number) =>
    share <= 0
      ? 'None of it works: the seed parent rejects every S allele in it.'
      : share >= 1
        ? 'All of it works.'
        : `${share === 0.5 ? 'Half' : `${hundred(share)} in${NB}100`} of it works, that with ${either(grains)}${set < 1 ? `; set is taken as ${percent(set)} of full set` : ''}.`,
  selfed: 'Its own pollen',
  selfSterile: (kind: string) => `By its entry, ${kind} sets no fruit with its own pollen: check before you count on it.`,
  sSeedlings: (classes: readonly { readonly alleles: string; readonly share: number }[], more: number) =>
    `Seedlings: ${[...classes.map(({ alleles, share }) => `${alleles} ${percent(share)}`), ...(more > 0 ? [`and ${whole(more)} more sorts`] : [])].join(', ')}.`,
  sOwn: (share: number) =>
    share <= 0
      ? 'None sets fruit with its own pollen.'
      : share >= 1
        ? 'All set fruit with their own pollen.'
        : `${hundred(share)} in${NB}100 set fruit with their own pollen.`,
  sLinked: (genes: readonly string[]) => `What lies near the S gene goes with the allele that works: ${listed(genes)}.`,
  males: 'Males',
  male: (share: number) => `${hundred(share)} in${NB}100 seedlings are male: they give pollen and never fruit, and are not counted among the wanted.`,
  copies: 'Copies',
  copy: (share: number, mother: string) =>
    `${hundred(share)} in${NB}100 seedlings are ${mother} again, whoever the father: seed made without one. They are not counted among the wanted.`,
  dying: 'Lost for certain',
  dies: (share: number, age: number) =>
    `${hundred(share)} in${NB}100 seedlings die at about ${months(age)} of what both parents gave them. No rootstock saves them.`,
  odd: 'No use',
  useless: (share: number) => `${hundred(share)} in${NB}100 seedlings are no use: not whole, as of parents with an odd number of sets of chromosomes.`,
};

/** “S3 or S4'”. */
const either = (names: readonly string[]): string => [names.slice(0, -1).join(', '), ...names.slice(-1)].filter(Boolean).join(' or ');

const months = (n: number): string => `${String(Math.round(n * 2) / 2)} ${n === 1 ? 'month' : 'months'}`;

/** Prints a measured value to so many decimals that its spread has two digits. */
export function measuredNumber(value: number, spread: number): string {
  const decimals = spread > 0 ? Math.min(4, Math.max(0, 1 - Math.floor(Math.log10(spread)))) : 1;
  return (Math.round(value * 10 ** decimals) / 10 ** decimals + 0).toFixed(decimals).replace('-', '−');
}

export const valueText = {
  title: 'What the family would measure',
  intro: 'The hill is the family: true values, without the luck of seasons. Rings are its parents.',
  name: (trait: string, unit: string) => `${capital(trait)}, ${unit}`,
  mean: (mean: string, unit: string, low: string, high: string) =>
    `The family would average ${mean} ${unit}, 8 in 10 of its seedlings between ${low} and ${high}.`,
  unknown: (trees: readonly string[], low: string, high: string) =>
    `No true value is given for ${listed(trees)}: taken as ${trees.length === 1 ? 'a tree' : 'trees'} like any other, so that the average itself may lie anywhere from ${low} to ${high}.`,
  genesUnknown: (low: string, high: string) => `Genes that are not known move the average itself: 8 in 10 between ${low} and ${high}.`,
  lost: (lost: string, unit: string) => `Selfing has taken ${lost} ${unit} off.`,
  goal: (share: number, atLeast: string | null, atMost: string | null, unit: string) =>
    `${capital(roughly(share))} of twenty would truly have ${[atLeast === null ? '' : `${atLeast} ${unit} or more`, atMost === null ? '' : `${atMost} ${unit} or less`].filter(Boolean).join(' and ')}, as your goal asks.`,
  goalMark: (value: string) => `goal ${value}`,
  parentMark: (name: string, value: string) => `${name} ${value}`,
};
