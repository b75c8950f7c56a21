import type { SourceTally } from '../model/sources.ts';
import type { PlanOutlook } from '../results/outlook.ts';
import { inTen } from './charts.ts';
import type { Piece } from './headline.ts';

const tenth = (n: number): string => String(Math.round(n * 10) / 10);
const months = (n: number): string => `${tenth(n)} ${n === 1 ? 'month' : 'months'}`;

/** Words of the page around the pictures. */
export const app = {
  product: 'Orchard Odds',
  example: 'an invented example',
  questions: 'Questions',
  skip: 'Skip to the answer',
  undo: 'Undo',
  redo: 'Redo',
  undoThat: (label: string) => `Undo: ${label}`,
  redoThat: (label: string) => `Redo: ${label}`,
  open: 'Open',
  save: 'Save a copy',
  print: 'Print',
  /** On a narrow page: files and questions. */
  menu: 'Menu',
  saved: 'saved on this device',
  savedAt: (time: string) => `saved on this device ${time}`,
  notSaved: (reason: string) => `not saved: ${reason}. Save a copy as a file.`,
  notSavedHead: (reason: string) => `not saved: ${reason}`,
  saving: 'saving…',
  inPlan: (label: string, mark: string) => `${label} (plan ${mark})`,
  cannotOpen: (name: string) => `“${name}” was not opened. Nothing was changed.`,
  close: 'Close',
  dropHere: 'Drop the file to open it',
  /** Questions whose other words come with their pages. */
  rail: { happened: 'What has happened?', tell: 'What do I tell others?' },
  fineprint: (engine: string, word: string, runs: number) =>
    `Engine ${engine}, shuffle word “${word}”, ${runs.toLocaleString('en')} futures a plan. The same programme, word and number of futures give the same figures again.`,
} as const;

export const likely = {
  question: 'What is likely?',
  waiting: 'Working out the first futures…',
  progress: (done: number, wanted: number) =>
    `${done.toLocaleString('en')} of ${wanted.toLocaleString('en')} futures · every plan lives through the same weather`,
  guessing: 'now trying what your guesses allow…',
  failed: (message: string) => `The futures stopped: ${message}. Undo the last change, or save a copy and reload the page.`,
  problems: 'To mend before it can run again. The pictures still show the last state that could:',
  notes: 'Worth knowing:',
  addPlan: 'Add a plan from a starting pattern',
  copy: 'Copy',
  remove: 'Remove',
  up: 'Move up',
  down: 'Move down',
  done: 'Close',
  copyOf: (name: string) => `Copy ${name}`,
  removeOf: (name: string) => `Remove ${name}`,
  upOf: (name: string) => `Move up ${name}`,
  downOf: (name: string) => `Move down ${name}`,
  copyPlan: 'Copy plan',
  addGeneration: 'Add a generation after this',
  removeGeneration: 'Remove this generation',
  pollinate: 'Pollinate',
  raise: 'Raise',
  rescue: 'Rescue',
  judge: 'Judge and keep',
  further: 'Further',
  jumps: 'Parts of these settings',
  /** What a graft saves at the age chosen; where the weak cannot be told yet, from when they can. */
  graftAdvice: (at: { readonly saved: number; readonly month: number } | { readonly from: number }, best: number, scions: number) =>
    `${
      'from' in at
        ? `Weak ones cannot be told before ${months(at.from)}.`
        : `Of ten weak seedlings a graft at ${months(at.month)} saves about ${tenth(at.saved)}, if the weakness sits in the roots.`
    } With ${scions === 1 ? 'one scion' : 'one scion each'} ${tenth(best)} months saves most. No published count of grafted against ungrafted weak hybrids was found: this rests on your own guesses until you try. Keep the knife away from the holding hand; wear a glove on it.`,
  change: (label: string) => `${label}:`,
  effect: (before: string, after: string) => `${before} → ${after} in 100.`,
  noDifference: 'No clear difference.',
  better: 'Clearly better.',
  worse: 'Clearly worse.',
  counting: 'counting…',
  cannotRun: (why: string) => `cannot run: ${why}.`,
  more: 'More pictures',
  rests: 'What these answers rest on',
  restsIntro:
    'Every number can be changed here; the pictures follow. A badge beside it says whether it is your own count, published, common practice, remembered, a guess, or invented for the example.',
  addEntry: (what: string) => `Add ${what}`,
  removeEntry: (name: string) => `Remove ${name}`,
  whole: 'Goal, years, limits and weather',
  toMend: 'to mend',
  added: (name: string) => `${name} added`,
  removed: (name: string) => `${name} removed`,
  used: (name: string) => `${name} is still used; the list above says where.`,
} as const;

export const SECTION_WORDS = {
  trees: { title: 'Trees', one: 'a tree' },
  kinds: { title: 'Kinds', one: 'a kind' },
  traits: { title: 'Traits', one: 'a trait' },
  crosses: { title: 'Crosses between kinds', one: 'a cross entry' },
  pools: { title: 'Pollen in the air', one: 'a pool of neighbours' },
  stocks: { title: 'Rootstocks', one: 'a rootstock' },
  genes: { title: 'Genes', one: 'a gene' },
  facts: { title: 'Facts not known yet', one: 'a fact' },
  gardens: { title: 'Gardens', one: 'a garden' },
} as const;

export const cautions = {
  title: 'Take care',
  always: 'This forecast is a planning aid, not a promise.',
  kernels: 'Kernels and leaves of many stone and pome fruits release cyanide: do not eat them, and keep prunings and kernels away from livestock.',
  moving: 'Moving wood, pollen or seed across a border or quarantine line needs the plant-health authority’s permit: ask your local authority first.',
  protected: 'A patented or protected variety needs its owner’s licence before you graft or cross it for sale.',
  knives:
    'Grafting knives cut: a glove on the holding hand. Stand ladders firm. Sprays, rooting and sealing compounds and colchicine by their labels only: colchicine is a strong poison.',
  local: 'Where this page and your local authority differ, the authority is right.',
} as const;

const count = (n: number, one: string, many: string) => `${String(n)} ${n === 1 ? one : many}`;

export const have = {
  fromCatalogue: { kind: 'Add a kind from the catalogue, with crosses and rootstocks', trait: 'Add a known trait from the catalogue' },
  question: 'What have I got?',
  headline: (trees: number, kinds: number, sources: SourceTally): Piece[] => {
    const all = Object.values(sources).reduce((sum, n) => sum + n, 0);
    const firm = sources.counted + sources.published;
    return [
      { text: `${count(trees, 'tree', 'trees')}, ${count(kinds, 'kind', 'kinds')} and ${count(all, 'estimate', 'estimates')} behind them: ` },
      { text: `${String(firm)} counted or published`, strong: true },
      {
        text: `, ${String(sources.practice)} common practice, ${sources.remembered > 0 ? `${String(sources.remembered)} remembered, ` : ''}${String(sources.guess + sources.unsaid)} guessed${sources.invented > 0 ? `, ${String(sources.invented)} invented for the example` : ''}.`,
      },
    ];
  },
  lede: 'Open a line to see and change it; the futures run again as you type. Each number can be one number, a range, a count, or alternatives, and says what it rests on.',
} as const;

export const could = {
  question: 'What could I do?',
  headline: (plans: readonly PlanOutlook[]): Piece[] => {
    const ranked = [...plans].sort((a, b) => b.chance.value - a.chance.value);
    return ranked.flatMap(({ mark, name, chance }, i): Piece[] => [
      { text: i === 0 ? 'Plan ' : i === ranked.length - 1 ? ' and ' : ', ' },
      { text: i === 0 ? `${mark} (${name})` : mark },
      { text: i === 0 ? ' ends well in ' : ' in ' },
      { text: `${inTen(chance.value).numeral} ${inTen(chance.value).words}`, strong: true },
      { text: `${i === 0 ? ' futures' : ''}${i === ranked.length - 1 ? '.' : ''}` },
    ]);
  },
  lede: 'Open any row to change it; the picture follows as you type. A plan’s name opens what can be done with the whole plan.',
} as const;

export const examples: {
  readonly title: string;
  readonly intro: string;
  readonly list: Readonly<Record<string, { readonly name: string; readonly teaches: string }>>;
} = {
  title: 'Invented examples',
  intro: 'Opening one makes a programme of its own; the one you work on stays in “My programmes”.',
  list: {
    'red-pear': { name: 'Red pear at the mill', teaches: 'A rare trait in one old tree: open seed, a cross, or a wide cross whose weak hybrids need a graft.' },
    'red-pear-ten-seasons': {
      name: 'Red pear, ten seasons on',
      teaches: 'The same orchard with a log of what happened: a frost, a batch that drowned, a tray without labels, a surprise.',
    },
    'peach-quick': { name: 'A quick peach', teaches: 'A dominant trait in a kind that fruits in its third season: more seedlings, or a leaf test?' },
    'slow-walnut': { name: 'A slow walnut', teaches: 'Ten to twelve years to the first nut: what gardens and backups are worth.' },
    'backcross-apple': { name: 'Back to the apple', teaches: 'Resistance from a small crab, back four times: by leaf test, by sight, or in the field.' },
    'half-result': { name: 'A half result', teaches: 'A trait that shows in part of the fruit and not every season, where half is worse than none.' },
    'kaki-sweet': { name: 'A sweet kaki', teaches: 'Six sets of chromosomes, and all six copies needed: which of the large trees hide some?' },
    'cherry-selfing': {
      name: 'A cherry that needs no partner',
      teaches: 'S alleles decide which crosses set, and which of their seedlings set by themselves.',
    },
    'peach-apart': {
      name: 'A smooth, mild peach',
      teaches: 'Two genes on one chromosome, each brought by another tree: a crossover has to put them together.',
    },
  },
};
