/** Words of the trees that may hide a trait. Shares and chances are 0–1. */
import { counted, inTenWords, listed, whole } from './charts.ts';

const NB = '\u00a0';
const seedlings = (n: number): string => `${whole(n)}${NB}${n === 1 ? 'seedling' : 'seedlings'}`;
const years = (n: number): string => `${counted(n)}${NB}${n === 1 ? 'year' : 'years'}`;
/** From here on a tree counts as known to hide it, below as hardly worth a test. */
const KNOWN = 0.995;
const HARDLY = 0.01;

/** What was seen of a tree itself; source: it is the source of the trait. */
export type SeenOfIt = { readonly source: true } | { readonly showed: number; readonly seasons: number } | undefined;

export interface NextStep {
  readonly carries: number;
  /** Seedlings that settle it; Infinity where none do. */
  readonly seedlings: number;
  /** Chance that is left if none of them shows it. */
  readonly ifNone: number;
  readonly testers: readonly { readonly name: string; readonly years: number }[];
  /** Whether one copy is enough to show the trait: a test cross then tells nothing. */
  readonly oneIsEnough: 'surely' | 'perhaps' | 'no';
}

function next({ carries, seedlings: needed, ifNone, testers, oneIsEnough }: NextStep): string {
  if (carries >= KNOWN) return 'Nothing to settle: it can pass it on.';
  if (oneIsEnough === 'surely') return 'No test cross: one copy is enough to show it, so watch the tree itself for more seasons.';
  if (carries < HARDLY) return 'Hardly worth a test.';
  if (!Number.isFinite(needed))
    return oneIsEnough === 'perhaps'
      ? 'Find out first how it is inherited: if one copy is enough, a test cross tells nothing.'
      : 'A test cross would not settle it, not with a thousand seedlings.';
  const left = `If none shows it, the chance left is ${inTenWords(ifNone)}.`;
  const [first] = testers;
  if (!first) return `${seedlings(needed)} of a test cross would settle it 9 times in${NB}10, but no tree here has the wanted copy on every set. ${left}`;
  const names = listed(testers.slice(0, 3).map(({ name }) => name)).replace(' and ', ' or ');
  return `Cross it with ${names}: ${seedlings(needed)} settle it 9 times in${NB}10, half of them in fruit after about ${years(first.years)}. ${left}`;
}

export const carriersText = {
  title: 'Which may hide it',
  intro:
    'A tree that was not seen to show a trait can still pass it on. A test cross tells: cross it with a tree that has the wanted copy on every set, and look how many seedlings show it. The tree on top tells most for each seedling raised.',
  trait: (name: string) => `Trees that may hide ${name}`,
  heads: { tree: 'Tree', chance: 'Can pass it on', seen: 'What was seen', next: 'Next step' },
  chance: (carries: number) => inTenWords(carries),
  /** Where some of the chance is that the tree has all it needs and was only not seen to show it. */
  right: (right: number) => `${inTenWords(right)} that it has it itself`,
  seen: (seen: SeenOfIt): string =>
    !seen
      ? 'Never watched'
      : 'source' in seen
        ? 'Shows it'
        : seen.showed === 0
          ? `Not shown in ${whole(seen.seasons)}${NB}${seen.seasons === 1 ? 'season' : 'seasons'}`
          : `Shown in ${whole(seen.showed)} of ${whole(seen.seasons)} seasons`,
  testCross: (test: { readonly showed: number; readonly of: number } | undefined): string =>
    test ? `Test cross: ${whole(test.showed)} of ${seedlings(test.of)} showed it` : '',
  next,
  silent: {
    oddSets: (name: string) => `${name}: nothing can be said, its kind has an odd number of sets.`,
    tooMany: (name: string) => `${name}: there are too many genes that are not known to go through them all.`,
    misfit: (name: string) => `${name}: what was seen of it fits no genes that it could have. Look at its entries again.`,
    onePass: (name: string) => `${name}: a gene of this trait is passed on by one parent alone, so a test cross says little.`,
  },
  falseShow: 'A seedling can seem to show it by mistake: see it twice before you believe one.',
  exact:
    'Worked out exactly from what you stated, each seedling judged on one crop; linked genes are taken as free of each other. Write what a test cross showed under the tree.',
  none: 'No tree here may hide a trait: all copies are stated.',
} as const;
