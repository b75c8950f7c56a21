import { tableRows } from '../../src/charts/side-by-side/rows.ts';
import type { Programme } from '../../src/model/programme.ts';
import { FAILURES, type Interval, type Outlook, type PlanOutlook } from '../../src/results/outlook.ts';
import { alignedTable } from '../../src/results/writers/table.ts';
import { cautions } from '../../src/text/app.ts';
import { failText } from '../../src/text/charts-more.ts';
import { percent, percentRange, whole } from '../../src/text/charts.ts';
import { planParagraph } from '../../src/text/sentences.ts';
import { headless } from '../../src/text/today.ts';

/** What the runner says in words: a paragraph for each plan, then the figures side by side, then the small print. */
export function textReport(outlook: Outlook, { title, example, limits, guessesAsTheyStand, log }: Programme): string {
  const parts = [
    `${title}${example ? ' (an invented example)' : ''}`,
    ...(log.forecastFrom === undefined ? [] : [headless.from(log.forecastFrom)]),
    ...outlook.plans.map((plan) => `${plan.mark}  ${planParagraph(plan, outlook.lastYear)}`),
    measures(outlook, { hours: limits.hoursPerYear ?? null, places: limits.places }),
    failures(outlook.plans),
    pairs(outlook),
    smallPrint(outlook, guessesAsTheyStand),
  ];
  // No-break spaces are for the page; here they would hide figures from a search.
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`.replaceAll('\u00a0', ' ');
}

const marksOf = (plans: readonly PlanOutlook[]) => plans.map(({ mark }) => mark);
const share = (part: Interval | null) => (part === null ? '–' : `${percent(part.value)} (${percentRange(part.low, part.high)})`);

function measures(outlook: Outlook, limits: { readonly hours: number | null; readonly places: number | null }): string {
  const { plans } = outlook;
  const rows = tableRows(outlook, limits).map(({ title, cells, verdict }) => [
    title,
    ...cells.map(({ main, small }) => (small === '' ? main : `${main} (${small})`)),
    verdict.text,
  ]);
  const guesses = ['If your guesses are off', ...plans.map((plan) => (plan.guesses ? `${percentRange(plan.guesses.low, plan.guesses.high)} %` : '–'))];
  const facts = (plans[0]?.byFact ?? []).map(({ fact, holds }, f) => [
    `${fact}: ${holds ? 'yes' : 'no'}`,
    ...plans.map(({ byFact }) => share(byFact[f]?.chance ?? null)),
  ]);
  return alignedTable([['', ...marksOf(plans), ''], ...rows.slice(0, 1), guesses, ...rows.slice(1), ...facts], [0, plans.length + 1]);
}

function failures(plans: readonly PlanOutlook[]): string {
  const rows = FAILURES.filter((reason) => plans.some((plan) => plan.failures[reason] > 0)).map((reason) => [
    failText.failure(reason).long,
    ...plans.map((plan) => percent(plan.failures[reason])),
  ]);
  return rows.length === 0 ? '' : alignedTable([[failText.title, ...marksOf(plans)], ...rows]);
}

function pairs({ plans, comparisons }: Outlook): string {
  const mark = (id: string) => plans.find((plan) => plan.id === id)?.mark ?? id;
  const rows = comparisons.map(({ a, b, aSooner, bSooner, tied }) => [`${mark(a)} and ${mark(b)}`, share(aSooner), share(bSooner), share(tied)]);
  return rows.length === 0 ? '' : alignedTable([['On the same futures', 'first is sooner', 'second is sooner', 'level'], ...rows]);
}

function smallPrint({ runs, word, engine, programme }: Outlook, means: boolean): string {
  return [
    `${whole(runs)} futures of each plan. In brackets: of shares what the number of futures leaves open (95 %), of counts and years the middle 8 of 10 futures.`,
    ...(means ? ['Guesses taken as they stand; rules of inheritance, yes/no facts and hidden genes are still drawn.'] : []),
    `Shuffle word “${word}”, engine ${engine}, programme ${programme}.`,
    cautions.always,
  ].join('\n');
}
