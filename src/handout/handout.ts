import type { Programme } from '../model/programme.ts';
import type { Outlook, PlanOutlook } from '../results/outlook.ts';
import { cautions } from '../text/app.ts';
import { plusMinus } from '../text/charts.ts';
import { answerText, imprintText, longDate, oftenWords } from '../text/handout.ts';
import type { Piece } from '../text/headline.ts';
import { howOften, planSentences } from '../text/sentences.ts';
import { asksOf, type Ask } from './asks.ts';
import type { Choices, Imprint, Paper } from './choices.ts';
import { hundredFutures, type FutureGroup } from './futures.ts';
import { drawsAnew, leaveOut, rewordFor } from './leave-out.ts';
import { restsOf, tallySentence, type Rest } from './rests.ts';
import { hardSentences, provenSentence, wantedSentence } from './wanted.ts';

/** Sentences on the plan that others are asked to help with. */
export interface Said {
  /** By when half of the futures are there. */
  readonly half: string;
  readonly effort: string;
  readonly trust: string;
  readonly guesses: string;
  readonly proven: string;
}

/** Everything that stands on the sheet, as plain data. */
export interface Handout {
  readonly title: string;
  readonly example: boolean;
  readonly date: string;
  readonly paper: Paper;
  readonly headline: { readonly wanted: string; readonly answer: readonly Piece[] };
  /** What follows the answer, each a sentence; empty where there is nothing to say. */
  readonly said: Said;
  readonly hard: string;
  readonly startYear: number;
  readonly lastYear: number;
  /** Names already as they may be told. */
  readonly plans: readonly PlanOutlook[];
  /** The plan that others are asked to help with. */
  readonly lead: PlanOutlook;
  readonly futures: readonly FutureGroup[];
  readonly nothing: string;
  readonly asks: readonly Ask[];
  readonly rests: readonly Rest[];
  readonly tally: string;
  readonly cautions: readonly string[];
  readonly imprint: {
    readonly futures: string;
    readonly rerun: string;
    readonly link: string | null;
    /** Names were left out, so the link has other futures of the same odds. */
    readonly anew: boolean;
    readonly file: string;
  };
}

/** The cautions of the sheet: all of them, whatever the programme touches. */
export const CAUTIONS: readonly string[] = [cautions.kernels, cautions.moving, cautions.protected, cautions.knives, cautions.local, cautions.always];

/** The surest of the plans that are told. */
const surest = (plans: readonly PlanOutlook[]): PlanOutlook | undefined =>
  plans.reduce<PlanOutlook | undefined>((best, plan) => (best === undefined || plan.chance.value > best.chance.value ? plan : best), undefined);

/** Outlooks of the plans that are told, under the names they are told by; null while one of them has none. */
function toldPlans(programme: Programme, told: Programme, outlook: Outlook, choices: Choices): PlanOutlook[] {
  const reword = rewordFor(programme, choices.leaveOut);
  const kept = programme.plans.filter(({ mark }) => told.plans.some((plan) => plan.mark === mark));
  return kept.flatMap((plan) => {
    const found = outlook.plans.find(({ id }) => id === plan.id);
    const now = told.plans.find(({ mark }) => mark === plan.mark);
    if (!found || !now) return [];
    const nameOf = (id: string) => now.generations[plan.generations.findIndex((generation) => generation.id === id)];
    const generations = found.generations.map((generation) => {
      const then = nameOf(generation.id);
      return then ? { ...generation, id: then.id, name: then.name } : generation;
    });
    const byRule = found.byRule.map((part) => ({ ...part, trait: reword(part.trait), rule: reword(part.rule) }));
    const byFact = found.byFact.map((part) => ({ ...part, fact: reword(part.fact) }));
    return [{ ...found, id: now.id, mark: now.mark, name: now.name, generations, byRule, byFact }];
  });
}

function answer(lead: PlanOutlook, lastYear: number, only: boolean): Piece[] {
  const often = howOften(lead.chance);
  return [{ text: `${answerText.way(lead.mark, only)} ` }, { text: oftenWords(often), strong: true }, { text: answerText.by(lastYear) }];
}

/** How long, how much work and how far to trust it; each sentence as the other pages say it. */
function saidOf(lead: PlanOutlook, lastYear: number, proven: string): Said {
  const { chance, effort, trust, guesses } = planSentences({ ...lead, name: '' }, lastYear);
  const half = (chance.split('; ')[1] ?? '').replace(/^./, (letter) => letter.toUpperCase());
  return { half, effort, trust: answerText.ours(trust), guesses: answerText.ours(guesses), proven };
}

/** All of them in a row. */
export const ledeOf = ({ half, effort, trust, guesses, proven }: Said): string => [half, effort, trust, guesses, proven].filter(Boolean).join(' ');

/**
 * Puts together what stands on the sheet.
 * @param programme as it was run
 * @param outlook of all its plans, by their ids
 * @returns null while no plan that is to be told has an outlook
 */
export function handoutOf(programme: Programme, outlook: Outlook, choices: Choices, { date, link }: Imprint, file: string): Handout | null {
  const told = leaveOut(programme, choices.leaveOut);
  const plans = toldPlans(programme, told, outlook, choices);
  const chosen = programme.plans.find(({ id }) => id === choices.lead)?.mark;
  const lead = plans.find(({ mark }) => mark === chosen) ?? surest(plans);
  const plan = told.plans.find(({ id }) => id === lead?.id);
  if (!lead || !plan) return null;
  const { lastYear, startYear } = programme;
  const futures = hundredFutures(lead, lastYear);
  const proven = futures[0]?.count ?? 0;
  const wanted = choices.wanted.trim();
  return {
    title: told.title,
    example: programme.example,
    date: longDate(date),
    paper: choices.paper,
    headline: { wanted: wanted === '' ? wantedSentence(told) : wanted, answer: answer(lead, lastYear, plans.length === 1) },
    said: saidOf(lead, lastYear, provenSentence(told)),
    hard: hardSentences(told, plan, lead).join(' '),
    startYear,
    lastYear,
    plans,
    lead,
    futures,
    nothing: lead.chance.value === 1 ? answerText.nothingNever(lead.runs) : answerText.nothing(proven === 100 ? 'fewer than 1' : String(100 - proven)),
    asks: asksOf(told, plan, lead),
    rests: restsOf(told, plan),
    tally: tallySentence(told),
    cautions: CAUTIONS,
    imprint: {
      futures: imprintText.futures(outlook.runs, plusMinus(lead.chance.low, lead.chance.high)),
      rerun: imprintText.rerun(outlook.engine, outlook.word),
      link,
      anew: drawsAnew(choices.leaveOut),
      file,
    },
  };
}
