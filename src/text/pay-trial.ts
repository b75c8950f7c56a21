import type { Who } from '../decisions/rescue-sites.ts';
import type { TellingResult } from '../decisions/trial-worth.ts';
import type { TrialAnswer, TrialPoint, TrialWatch } from '../decisions/trial.ts';
import type { Interval } from '../results/outlook.ts';
import { counted, inTenWords, whole } from './charts.ts';
import type { Piece } from './headline.ts';
import { differenceRange, monthsInWords, ofTen, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';
import { handCount } from './sentences.ts';

const NB = '\u00a0';
const MINUS = '−';

/** Points of a hundred with tenths where they are few: "2.4", "12". */
const points = (share: number): string => String(Math.abs(share) < 0.0995 ? Math.round(share * 1000) / 10 : Math.round(share * 100)).replace('-', MINUS);
const inHundred = (share: number): string => `${points(share)} in${NB}100`;

export const trialText = {
  asking: 'What is a trial worth?',
  about: 'Graft some of the first seedlings, leave as many, and see how many live: how much better could you then decide?',
  button: 'Work out what a trial is worth',
  tooSmall: 'worth less than we can measure',
  zone: 'less than we can measure',
  perfect: 'knowing for sure',
  summers: (n: number) => (n === 1 ? 'after one summer' : `after ${counted(n)} summers`),
  up: 'gain in the chance of a proven tree, in 100',
  upShort: 'gain in chance, in 100',
  across: 'seedlings grafted, and as many left alone ›',
  acrossShort: 'grafted, and as many left ›',
  slider: 'Size of the trial',
  none: 'nothing chosen',
  keys: '← → changes the size of the trial.',
  tableHeads: [
    'Grafted + left',
    'Worth after one summer',
    'Worth after two',
    'If the plan waits two seasons',
    'Beside the plan',
    'Seedlings to raise',
    'Hours, all years',
    'Result that changes what you do',
  ],
  nowHeads: ['What you could do now', 'Proven tree', 'Truly good, of those', 'Half by', 'Hours, all years', 'Against own roots'],
  nowTitle: 'The decision it serves',
  ways: { none: 'leave all on their own roots', weak: 'graft the weak ones', every: 'graft every seedling' } satisfies Readonly<Record<Who, string>>,
  now: 'best now',
  changesTitle: 'What would change your mind',
  costsTitle: 'What it takes',
  whenTitle: 'Before the plan, or beside it',
  caution: 'Knives: keep the holding hand behind the blade. Ask your plant health authority before seedlings or scions leave the garden.',
  method:
    'Preposterior analysis (Raiffa & Schlaifer 1961): in each future the shares that would live, grafted and left alone, are known, so every result of the trial has a known chance in it; weighing the futures by that chance gives the best choice after each result, and the worth is the mean best chance after the result minus the best chance now. The choice is made on one half of the futures and valued on the other, since the best of several chances read off the same futures looks better than it is; a worth whose interval reaches 0 is called too small to measure. Knowing for sure: the shares themselves are known (Strong, Oakley & Brennan 2014). The count is of living trees; a graft that never took and one that died later count alike, so that looking closer can only be worth more. “If the plan waits” runs the plan with no tree in bearing before the result is in.',
} as const;

/** "2.4 in 100 (1.1 to 3.7)", or that it is too small to measure. */
export const worthWords = (worth: Interval, measurable: boolean): string => (measurable ? inHundred(worth.value) : trialText.tooSmall);
export const worthRange = ({ low, high }: Interval): string => `${points(low)} to ${points(high)}`;

/** A gain that may be a loss: "−5.6 (−8 to −3.2)". */
export const gainWords = (gain: Interval): string => `${points(gain.value)} (${worthRange(gain)})`;

const last = <T>(list: readonly T[]): T | undefined => list.at(-1);
export const pointOf = ({ points: all }: TrialWatch, n: number): TrialPoint | undefined => all.find((point) => point.n === n);

/** The size that is spoken of: ten and ten where that can be measured, else the largest. */
export function spokenOf({ watched }: TrialAnswer): { readonly watch: TrialWatch; readonly point: TrialPoint } | null {
  const watch = last(watched);
  const point = watch && [pointOf(watch, 10), last(watch.points)].find((one) => one?.measurable);
  return watch && point ? { watch, point } : null;
}

/** "6 or more of 10 left alone", "at most 3 of 10 grafted". */
export function resultWords({ of, atLeast, count }: TellingResult, n: number): string {
  const which = of === 'left' ? 'left alone' : 'grafted';
  if (!atLeast && count === 0) return `none of the ${String(n)} ${which}`;
  if (atLeast && count === n) return `all ${String(n)} ${which}`;
  return atLeast ? `${String(count)} or more of the ${String(n)} ${which}` : `at most ${String(count)} of the ${String(n)} ${which}`;
}

/** The finding: what the trial is worth, and whether that is worth a wait. */
export function trialFinding(answer: TrialAnswer): readonly Piece[] {
  const best = trialText.ways[answer.best];
  const spoken = spokenOf(answer);
  if (!spoken || !answer.clear) return [{ text: 'A trial is ' }, { text: trialText.tooSmall, strong: true }, { text: `: ${best} without one` }];
  const { watch, point } = spoken;
  const waits = point.ifWaiting.high < 0 ? ': too little to wait for' : point.ifWaiting.low > 0 ? ', even if the plan waits for it' : '';
  return [
    { text: `${String(point.n)} grafted and ${String(point.n)} left are worth ` },
    { text: inHundred(point.worth.value), strong: true },
    { text: ` (${worthRange(point.worth)}) ${trialText.summers(watch.summers)}${waits}` },
  ];
}

/** The result that would change what is done, in sentences. */
export function changesNotes(answer: TrialAnswer): readonly string[] {
  const spoken = spokenOf(answer);
  const now = nowWords(answer);
  if (!spoken) return [now, 'No result of up to 20 and 20 would change that by more than these futures can tell from luck.', ...perfectNote(answer)];
  const { watch, point } = spoken;
  const { changes } = point;
  return [
    now,
    ...(changes
      ? [
          `If ${resultWords(changes, point.n)} are alive ${trialText.summers(watch.summers)}, ${trialText.ways[changes.then]} instead. About ${inTenWords(changes.happens)} such trials would end so.`,
        ]
      : []),
    ...perfectNote(answer),
  ];
}

/** The best now, with its chance and how far to trust what is called proven. */
function nowWords({ best, decisions }: TrialAnswer): string {
  const outcome = decisions.find(({ who }) => who === best)?.outcome;
  const truly = outcome && trulyOfTen(outcome.trulyGood);
  const chance = outcome ? `, with a proven tree ${inTenWords(outcome.chance.value)}` : '';
  return `Now the best is to ${trialText.ways[best]}${chance}${truly ? ` (${pay.trulyGood(truly)})` : ''}.`;
}

function perfectNote({ watched }: TrialAnswer): readonly string[] {
  const perfect = last(watched)?.perfect;
  if (!perfect) return [];
  return [
    perfect.low > 0
      ? `Knowing for sure how many live would be worth ${inHundred(perfect.value)} (${worthRange(perfect)}): no trial of these can be worth more.`
      : `Even knowing for sure how many live would be ${trialText.tooSmall} (${worthRange(perfect)} in 100).`,
  ];
}

/** Trees, grafts and hours of ten and ten. */
export function costNotes({ watched, batch, month, scions }: TrialAnswer): readonly string[] {
  const watch = last(watched);
  const point = watch && pointOf(watch, 10);
  if (!watch || !point) return [];
  const { raised, grafts, flowers, hours } = point.cost;
  const seedlings = batch === 'weak' ? 'weak seedlings' : 'seedlings';
  return [
    raised === null
      ? `Ten and ten ask for 20 ${seedlings} alive at ${monthsInWords(month)}: with your guesses none is.`
      : `Ten and ten ask for 20 ${seedlings} alive at ${monthsInWords(month)}: about ${whole(handCount(raised))} raised on top of the plan’s${flowers === null || flowers === 0 ? '' : ` from ${whole(handCount(flowers))} flowers`}, and ${whole(grafts)} ${scions > 1 ? 'scions' : 'grafts'}${hours === null ? '' : `; some ${whole(handCount(hours))} hours`}.`,
    `With your guesses ${ofTen(watch.alive.grafted)} grafted and ${ofTen(watch.alive.left)} left alone would be alive ${trialText.summers(watch.summers)}.`,
  ];
}

/** What the season costs: the plan waits, or the trial runs beside it for a later generation. */
export function whenNotes({ watched, later, best }: TrialAnswer): readonly string[] {
  const waits = watched.map(({ seasons, waiting, points: all }) => {
    const long = `${counted(seasons)} ${seasons === 1 ? 'season' : 'seasons'}`;
    const lost =
      waiting.high < 0
        ? `loses ${inHundred(-waiting.value)} (${points(-waiting.high)} to ${points(-waiting.low)})`
        : `makes ${pay.noDifference} to the chance (${differenceRange(waiting)})`;
    const net = all.find(({ n }) => n === 10)?.ifWaiting;
    const after = !net
      ? ''
      : net.low > 0
        ? `; with a trial of ten and ten the plan still gains ${inHundred(net.value)}`
        : net.high < 0
          ? ', more than ten and ten can bring back'
          : '';
    return `A plan that waits ${long} for the result ${lost}${after}.`;
  });
  const beside = last(watched)?.points.find(({ n }) => n === 10)?.beside;
  const served =
    later && beside
      ? beside.low > 0
        ? `Beside the plan it costs no season, and still serves “${later.name}”: there ten and ten are worth ${inHundred(beside.value)} (${worthRange(beside)}).`
        : `Beside the plan it costs no season; for “${later.name}”, the generation it still could serve, it is ${trialText.tooSmall} (${worthRange(beside)} in 100).`
      : `Beside the plan the result would come too late: its seedlings are grafted before it is in, and ${later ? 'the later ones too' : 'no later generation raises weak ones'}.`;
  return [...waits, served, ...(best === 'none' ? [] : ['The trees that are grafted in the trial are not lost: those that live can be raised with the rest.'])];
}

/** A size of the trial, read aloud. */
export function trialWords(watched: readonly TrialWatch[], n: number): string {
  const said = watched.flatMap((watch) => {
    const point = pointOf(watch, n);
    return point ? [`${trialText.summers(watch.summers)} ${worthWords(point.worth, point.measurable)} (${worthRange(point.worth)})`] : [];
  });
  const hours = watched.flatMap((watch) => pointOf(watch, n)?.cost.hours ?? [])[0];
  return `${String(n)} grafted and ${String(n)} left: ${said.join(', ')}${hours === undefined ? '' : `; about ${whole(handCount(hours))} hours`}.`;
}
