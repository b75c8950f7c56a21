/** Words of the five questions from which a first programme is built. */

const listed = (names: readonly string[]): string => [names.slice(0, -1).join(', '), ...names.slice(-1)].filter(Boolean).join(' and ');
const withArticle = (noun: string): string => `${/^[aeiou]/i.test(noun) ? 'an' : 'a'} ${noun}`;
const things = (n: number, one: string, many = `${one}s`): string => `${n.toLocaleString('en')} ${n === 1 ? one : many}`;

export const start = {
  lead: 'Start your own',
  progress: (step: number, of: number) => `${String(step)} of ${String(of)}`,
  steps: 'The five questions',
  short: ['tree', 'cross', 'ground', 'counts', 'goal'],
  goBack: (name: string) => `Back to “${name}”`,
  titles: [
    'What tree has it, and how does it behave?',
    'What will you cross it with, and how?',
    'What ground, hands and years have you?',
    'What do you know, and from what counts?',
    'When are you satisfied?',
  ],
  ledes: [
    'Five questions make a first programme with three plans to compare. What is marked “filled in” is an ordinary value of ours: leave it, or put in yours.',
    'A partner can be of the same kind or of another. Open seed is what falls from the tree, with whatever pollen was in the air.',
    'Rough figures will do; all of them can be changed later, and the pictures follow.',
    'All of this may stay empty. Where you have no count of your own, a printed figure or a marked guess is taken.',
    'A tree is proven when you have seen all this on it. The more you ask, the longer it takes, and the surer it is.',
  ],
  filled: 'filled in',
  on: 'Go on',
  back: 'Back',
  finish: 'Show me what is likely',
  empty: 'Empty all answers',
  kept: 'Your answers stay in this window until you empty them.',
  soFar: 'So far',
  addPartner: 'Add another tree',
  removePartner: (name: string) => (name === '' ? 'Take this tree out' : `Take ${name} out`),
  partner: (place: number) => (place === 1 ? 'The partner' : `Partner ${String(place)}`),
  noPartnerNeeded: 'Leave the name empty if there is only open seed.',
  shows: (trait: string) => `Does it show ${trait} too?`,
  neighbours: (kind: string) => `Other trees flowering near by (${kind})`,
  neighboursHelp: 'Their pollen is in the air, and fathers open seed.',
  pair: {
    published: 'There are printed counts of such a cross. Many of its seedlings may be weak: one of the plans grafts them.',
    guess: 'No printed count of this pair was found: its figures are wide guesses, marked as such. One of the plans grafts weak seedlings.',
  },
  counts: {
    set: {
      title: (cross: string) => `Fruit set, ${cross}`,
      hits: 'ripe fruits',
      of: 'of flowers pollinated',
    },
    germination: {
      title: (cross: string) => `Seeds that came up, ${cross}`,
      hits: 'came up',
      of: 'of seeds sown',
    },
    weak: {
      title: (cross: string) => `Weak seedlings, ${cross}`,
      hits: 'turned out weak',
      of: 'of seedlings',
    },
  },
  springs: 'counted in springs',
  leftEmpty: (words: string, source: string) => `Left empty: ${words} (${source}).`,
  fromCount: (words: string) => `Your count says ${words}.`,
  aboutShare: (share: number) => `about ${String(Math.round(100 * share))} in 100`,
  weakMonths: 'Half of the weak ones were dead by',
  rule: (trait: string) => `How ${trait} is inherited`,
  rules: {
    unknown: 'I don’t know how it is inherited',
    one: 'one parent that carries it is enough',
    two: 'it must come from both parents',
    known: (name: string) => `as known for ${name}`,
  },
  restsOn: (said: string, note: string) => `Rests on (${said}): ${note}`,
  /** Under the trait: what the catalogue knows of it in that kind. */
  knownIn: {
    take: 'It is this one',
    takeOf: (trait: string) => `It is this one: ${trait}`,
    orNot: 'Otherwise leave it: you need not know how it is inherited.',
    taken: 'Your first programme takes it to be inherited so.',
    drop: 'No, I don’t know how it is inherited',
    more: (kind: string, n: number) => (n === 1 ? `One trait is known in ${kind}` : `${String(n)} traits are known in ${kind}`),
    choose: 'If it is one of these, choose it; else say it in your own words.',
    isIt: (trait: string) => `If “${trait}” is one of these, choose it; else leave them.`,
  },
  ruleHelp: {
    unknown: 'Several explanations are then weighed, and every answer says which one it leans on.',
    one: 'About half or more of its seedlings can show it.',
    two: 'Its seedlings carry it unseen, and it comes back when they are crossed with each other.',
  },
  shown: (trait: string) => `It must show ${trait} in at least`,
  measure: 'Must it be good in something else?',
  measures: { none: 'no, that is all', taste: 'taste', size: 'fruit size', keeping: 'keeping' },
  units: { taste: 'points of 10', size: '% of a usual fruit', keeping: 'weeks' },
  ordinary: (unit: string) => `An ordinary tree has (${unit})`,
  least: (unit: string) => `You want at least (${unit})`,
  own: (tree: string, unit: string) => `${tree} has (${unit})`,
  ownHelp: 'Leave empty if you never measured or tasted it.',
  plans: 'Three plans will stand side by side',
  refused: 'These answers do not make a programme yet:',
  so: {
    tree: (name: string, kind: string, trait: string, showed: number, seasons: number, standing: number) =>
      `${name}, ${withArticle(kind)}, showed ${trait} in ${String(showed)} of ${things(seasons, 'season')}${standing === 1 ? '; it is the only one' : ''}.`,
    cross: (how: 'both' | 'hand' | 'open', partners: readonly string[]) =>
      how === 'open' ? 'Its open seed is raised.' : `It is crossed by hand with ${listed(partners)}${how === 'both' ? ', and its open seed is raised' : ''}.`,
    means: (places: number, hours: number, first: number, last: number) =>
      `${things(places, 'place')}, ${things(hours, 'hour')} a year, ${String(first)}–${String(last)}.`,
    known: (counts: number) => (counts === 0 ? 'No counts of your own yet.' : `${things(counts, 'count')} of your own.`),
  },
} as const;

/** Why a question cannot be left yet, beside the answer that it is about. */
export const startTroubles = {
  nameMissing: 'Give it a name: the plans are called by it.',
  kindMissing: 'Choose what kind it is.',
  kindGone: 'This kind is no longer in the list: choose another.',
  traitMissing: 'Say in a word or two what is rare about it.',
  sameName: 'Another tree has this name already.',
  moreThanLooked: 'It cannot have shown in more seasons than you looked.',
  tooSoon: 'At least three years after the first spring: no tree fruits sooner.',
  tooLate: 'At most 150 years after the first spring.',
  halfCounted: 'A count needs both numbers. Empty the other one if you do not know.',
  moreThanAll: 'Cannot be more than what it is counted out of.',
  moreThanJudged: 'Cannot be more than the crops you judge.',
} as const;
