import { sourceOf, printEstimate, middleOf } from '../model/estimate-forms.ts';
import type { Estimate, Source } from '../model/estimate.ts';
import type { Scale } from '../model/fields.ts';
import { printNumber } from '../model/numbers.ts';
import type { Cross, Kind, Plan, Programme } from '../model/programme.ts';
import { pairsReached } from '../model/reach.ts';
import { tallySources } from '../model/sources.ts';
import { countWords } from '../text/fields.ts';
import { restsText } from '../text/handout.ts';
import { apportioned } from './futures.ts';

/** One estimate that the answer leans on. */
export interface Rest {
  readonly label: string;
  readonly value: string;
  readonly source: Source['kind'] | 'unsaid';
  /** What its source says; empty for nothing. */
  readonly note: string;
}

interface Told {
  readonly label: string;
  readonly estimate: Estimate;
  readonly scale: Scale;
  readonly unit: string;
  /** Key of the field: says what a count counted. */
  readonly key: string;
}

/** “18 of 240 flowers”, “10–40 in 100”, “3–9 months”: from the lowest to the highest, the likely one between them. */
function valueWords({ estimate, scale, unit, key }: Told): string {
  if (typeof estimate === 'object' && 'hits' in estimate) return `${printEstimate(estimate, scale)} ${countWords(key)[1]}`.trim();
  const print = (value: number) => printNumber(Number(value.toPrecision(3)), scale);
  const text = typeof estimate === 'object' && 'low' in estimate ? `${print(estimate.low)}–${print(estimate.high)}` : printEstimate(estimate, scale);
  return scale === 'share' ? restsText.in100(text) : restsText.inUnit(text, unit);
}

function rest(told: Told): Rest {
  const source = sourceOf(told.estimate);
  return { label: told.label, value: valueWords(told), source: source?.kind ?? 'unsaid', note: source?.note ?? '' };
}

const share = (label: string, estimate: Estimate, key: string): Rest => rest({ label, estimate, scale: 'share', unit: '', key });

function fruitRests({ name, firstFruit }: Kind): Rest[] {
  const label = restsText.firstFruit(name);
  if ('years' in firstFruit) return [rest({ label, estimate: firstFruit.years, scale: 'years', unit: 'years', key: 'years' })];
  if (!('half' in firstFruit)) return [];
  const print = (estimate: Estimate) => printNumber(Math.round(middleOf(estimate) * 2) / 2, 'years');
  const source = sourceOf(firstFruit.half);
  const value = restsText.halfBy(print(firstFruit.earliest), print(firstFruit.ninety), print(firstFruit.half));
  return [{ label, value, source: source?.kind ?? 'unsaid', note: source?.note ?? '' }];
}

function crossRests({ name, set, germination, weakness }: Cross, { facts }: Programme): Rest[] {
  const rests = [share(restsText.set(name), set, 'set'), share(restsText.germination(name), germination, 'germination')];
  if (!weakness) return rests;
  const { course, rootBorne } = weakness;
  const fact = 'fact' in rootBorne ? facts.find(({ id }) => id === rootBorne.fact)?.chance : rootBorne.chance;
  return [
    share(restsText.weak(name), weakness.share, 'share'),
    ...('halfLife' in course ? [rest({ label: restsText.dead(name), estimate: course.halfLife, scale: 'months', unit: 'months', key: 'halfLife' })] : []),
    ...(fact === undefined ? [] : [share(restsText.roots, fact, 'rootBorne')]),
    ...rests,
  ];
}

/** Traits that the goal goes by. */
function traitRests({ goal, traits }: Programme): Rest[] {
  const named = new Set(goal.conditions.flatMap((condition) => ('trait' in condition ? [condition.trait] : [])));
  return traits
    .filter(({ id }) => named.has(id))
    .flatMap((trait) => {
      if (trait.type === 'measured') return [share(restsText.heritability(trait.name), trait.heritability, 'heritability')];
      const odds =
        trait.rules.length > 1 ? [{ label: restsText.explanations(trait.name), value: oddsOf(trait.rules), source: 'guess' as const, note: '' }] : [];
      return [...odds, share(restsText.seasons(trait.name), trait.seasonsShown, 'seasonsShown'), share(restsText.able(trait.name), trait.canShow, 'canShow')];
    });
}

/** “3 explanations, 50 : 30 : 20”. */
function oddsOf(rules: readonly { readonly weight: number }[]): string {
  const all = rules.reduce((sum, { weight }) => sum + weight, 0);
  return restsText.odds(
    apportioned(
      rules.map(({ weight }) => weight / all),
      100,
    ),
  );
}

/**
 * The estimates a plan leans on, those that tell most first: how it is inherited, time to fruit, weak seedlings, set and germination.
 * Which of them matters most is another question; this lists what a reader can check.
 */
export function restsOf(programme: Programme, plan: Plan): Rest[] {
  const pairs = pairsReached(programme, plan).filter(({ stray, entry }) => !stray && entry !== undefined);
  const crosses = [...new Map(pairs.flatMap(({ entry }) => (entry ? [[entry.id, entry] as const] : []))).values()];
  const kinds = programme.kinds.filter(({ id }) => crosses.some(({ gives }) => gives === id));
  const stocks = programme.stocks.filter(({ id }) =>
    plan.generations.some(({ rescue, backup }) => (rescue !== undefined && rescue.who !== 'none' && rescue.stock === id) || backup?.stock === id),
  );
  const all = [
    ...kinds.flatMap(fruitRests),
    ...traitRests(programme),
    ...crosses.flatMap((cross) => crossRests(cross, programme)),
    ...stocks.map(({ name, takeRipe }) => share(restsText.take(name), takeRipe, 'takeRipe')),
    ...kinds.map(({ name, yearlyLoss }) => share(restsText.loss(name), yearlyLoss, 'yearlyLoss')),
  ];
  return [...new Map(all.map((entry) => [entry.label, entry])).values()];
}

const KINDS = ['counted', 'published', 'practice', 'remembered', 'guess', 'invented'] as const;

/** How many estimates of the whole programme rest on what; those of unsaid source count as guesses. */
export function tallySentence(programme: Programme): string {
  const tally = tallySources(programme);
  const of = { ...tally, guess: tally.guess + tally.unsaid };
  const parts = KINDS.filter((kind) => of[kind] > 0).map((kind) => restsText.kinds[kind](of[kind]));
  return parts.length === 0
    ? ''
    : restsText.tally(
        parts,
        KINDS.reduce((sum, kind) => sum + of[kind], 0),
      );
}
