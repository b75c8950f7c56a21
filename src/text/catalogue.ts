import type { SourceTally } from '../model/sources.ts';

/** Words of adding from the catalogue to a programme that is there. */

const listed = (parts: readonly string[]): string => [parts.slice(0, -1).join(', '), ...parts.slice(-1)].filter(Boolean).join(' and ');
const things = (n: number, one: string, many = `${one}s`): string => (n === 1 ? `one ${one}` : `${String(n)} ${many}`);
const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

/** What comes with an addition, in the words of the breeder. */
export interface Coming {
  readonly kinds: readonly string[];
  readonly crosses: number;
  readonly stocks: number;
  readonly figures: SourceTally;
}

const SECTIONS: Readonly<Record<string, string>> = { kinds: 'kinds', crosses: 'crosses', stocks: 'rootstocks', genes: 'genes', traits: 'traits' };

const parts = ({ kinds, crosses, stocks }: Coming): string[] => [
  ...(kinds.length > 0 ? [`${kinds.length === 1 ? 'the kind' : 'the kinds'} ${listed(kinds)}`] : []),
  ...(crosses > 0 ? [things(crosses, 'cross', 'crosses')] : []),
  ...(stocks > 0 ? [things(stocks, 'rootstock')] : []),
];

const tally = ({ published, counted, practice, remembered, guess }: SourceTally, inSentence = true): string =>
  listed(
    (
      [
        [published + counted, 'published'],
        [practice, 'common practice'],
        [remembered, 'only remembered'],
        [guess, guess === 1 ? 'a guess' : 'guesses'],
      ] as const
    )
      .filter(([n]) => n > 0)
      .map(([n, words], place) => `${String(n)} ${inSentence && place === 0 ? (n === 1 ? 'is ' : 'are ') : ''}${words}`),
  );

/** A known trait in plain words: “Known in peach: white flesh. One gene, …” */
export const knownInWords = (kind: string, trait: string): string => `Known in ${kind}: ${trait}.`;
export const ruleInWords = {
  one: 'One gene; one parent that carries it is enough.',
  two: 'One gene; it must come from both parents, who may carry it unseen.',
  'less simple': 'More than one gene, or more than one explanation: each is weighed.',
} as const;

export const catalogueText = {
  title: 'From the catalogue',
  intro:
    'Fourteen kinds of fruit tree with their crosses and rootstocks, and traits whose inheritance is known. Beside each figure stands whether it was published, is only remembered, or is a guess. What you have stays as it is.',
  noRoom: (section: string, most: number, wanted: number) =>
    `A programme holds at most ${String(most)} ${SECTIONS[section] ?? section}, and this would make ${String(wanted)}. Leave some of it out.`,
  contradicts: 'This cannot be added, because it contradicts what you have:',
  took: (words: string) => `${words} Undo takes all of it out again.`,
  kind: {
    open: 'Add a kind',
    choose: 'Kind',
    none: 'choose …',
    partly: (name: string) => `${name}: here already, something is missing`,
    complete: (name: string) => `${name}: all of it is here`,
    seed: (name: string) => `Before it comes up, ${name} seed wants moist cold for`,
    days: 'days',
    what: 'What to add',
    itself: (name: string) => `${name} itself, and its cross within the kind`,
    within: (name: string) => `the cross of ${name} with ${name}`,
    always: 'comes along with anything else',
    crosses: (name: string, crosses: number, ways: 0 | 1 | 2, hybrid: string | undefined) =>
      `${things(crosses, 'cross', 'crosses')} with ${name}${ways === 2 ? ', both ways round, and of their hybrids' : ways === 1 ? ', the way round that is missing, and of their hybrids' : ', of their hybrids'}${hybrid === undefined ? '' : `; the ${hybrid} comes along`}`,
    pair: {
      published: 'There are printed counts of this pair.',
      guess: 'No printed count of this pair was found: wide guesses.',
      'unheard-of': 'No fruit of this pair is known: leave it out unless you mean to try.',
    },
    stocks: (stocks: number, name: string) => `${things(stocks, 'rootstock')} for ${name}`,
    nothing: 'Nothing is chosen.',
    comes: (coming: Coming) => {
      const all = Object.values(coming.figures).reduce((sum, n) => sum + n, 0);
      return `${sentence(`this adds ${listed(parts(coming))}`)} Of the ${String(all)} figures, ${tally(coming.figures)}.`;
    },
    figures: (n: number) => `See the ${String(n)} figures and what they rest on`,
    tally: (figures: SourceTally) => tally(figures, false),
    add: (name: string) => `Add ${name}`,
    addMissing: (name: string) => `Add what is missing of ${name}`,
    label: (name: string) => `${name} added from the catalogue`,
    labelMissing: (name: string) => `${name}, what was missing, added from the catalogue`,
    added: (coming: Coming) => sentence(`${listed(parts(coming))} ${coming.kinds.length + coming.crosses + coming.stocks === 1 ? 'was' : 'were'} added`),
  },
  trait: {
    open: 'Add a known trait',
    choose: 'Trait',
    none: 'choose …',
    noKinds: 'The catalogue knows no trait of your kinds that is not here already. Add a kind first, or a trait of your own under “Traits”.',
    trees: 'Which of your trees show it?',
    treesHelp: 'Their genes are then drawn in each future, and weighed by what you saw.',
    noTrees: (kind: string) => `No tree of yours is ${kind}, or a hybrid of it: the trait waits until there is one.`,
    shows: { unknown: 'not known', yes: 'shows it', no: 'never showed it' },
    comes: (name: string, genes: readonly string[], trees: readonly string[]) =>
      `This adds the trait “${name}”${genes.length === 0 ? '' : ` with ${genes.length === 1 ? 'its gene' : 'its genes'} ${listed(genes)}`} and the rule by which it shows${trees.length === 0 ? '' : `, and gives ${listed(trees)} hidden genes for it`}.`,
    add: (name: string) => `Add ${name}`,
    label: (name: string) => `${name} added from the catalogue`,
    added: (name: string) => `“${name}” was added to your traits. It can now be asked for in the goal, and kept by in a plan.`,
  },
} as const;
