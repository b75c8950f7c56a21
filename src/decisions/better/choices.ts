import type { Generation, Plan, Programme } from '../../model/programme.ts';
import { rescueSites, toldFrom } from '../rescue-sites.ts';
import { onlyPlan, withGeneration } from '../variants.ts';
import { firstFlowers, type Alternative } from './alternative.ts';
import { methods } from './methods.ts';
import * as words from './words.ts';

/** What may be chosen anew in a generation, in the order in which choices are made: the later ones build on the earlier. */
export const CHOICES = ['method', 'rescue', 'flowers', 'seedlings', 'springs', 'judge', 'picks', 'backup', 'goOn'] as const;
export type ChoiceKind = (typeof CHOICES)[number];

/** What can be chosen in one generation of a plan, beside what it does as it stands. */
export interface Choice {
  readonly kind: ChoiceKind;
  readonly generation: string;
  readonly alternatives: readonly Alternative[];
}

/** Ages at grafting that are tried, months. */
const AGES = [1, 2, 3, 5, 8, 12, 18] as const;
const EVERY_AGES = [1, 3, 12] as const;
const PICKS = [1, 2, 3, 5, 8] as const;
const SPRINGS = [1, 2, 3, 5] as const;
const COPIES = [1, 2, 3] as const;
/** Numbers are tried at these multiples of what stands. */
const TIMES = [0.25, 0.5, 0.75, 1.5, 2, 4] as const;
/** Most flowers and seedlings that the document allows. */
const MOST_FLOWERS = 1_000_000;
const MOST_SEEDLINGS = 100_000;

/**
 * Everything that can be chosen in a plan, generation by generation, each with its few sensible alternatives. What a combination comes to
 * is checked by whoever makes it.
 * @param kinds only these
 */
export function choicesOf(programme: Programme, plan: Plan, kinds: readonly ChoiceKind[] = CHOICES): readonly Choice[] {
  return plan.generations.flatMap((generation, position) => {
    const followed = plan.generations.some(({ after }, g) => g > position && (after === generation.id || (after === undefined && g === position + 1)));
    const method = methods(programme, plan, generation);
    const alternatives: Readonly<Record<ChoiceKind, readonly Alternative[]>> = {
      method,
      rescue: rescues(programme, plan, generation, method),
      flowers: flowers(programme, generation),
      seedlings: seedlings(generation),
      springs: numbers('springs', SPRINGS, generation, words.springs),
      judge: judging(programme, generation, followed),
      picks: PICKS.filter((number) => number !== generation.keep.howMany).map((howMany) => ({
        words: words.picks(howMany),
        change: (entry) => ({ ...entry, keep: { ...entry.keep, howMany } }),
      })),
      backup: backups(programme, generation),
      goOn: followed ? goingOn(programme, generation) : [],
    };
    return CHOICES.filter((kind) => kinds.includes(kind) && alternatives[kind].length > 0).map((kind): Choice => ({
      kind,
      generation: generation.id,
      alternatives: alternatives[kind],
    }));
  });
}

function numbers(key: 'seedlings' | 'springs', values: readonly number[], generation: Generation, say: (n: number) => string): readonly Alternative[] {
  return values.filter((value) => value !== generation[key]).map((value) => ({ words: say(value), change: (entry) => ({ ...entry, [key]: value }) }));
}

/** Two figures are as fine as anyone plans. */
function rounded(value: number): number {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, value))) - 1);
  const coarse = value / step >= 20 ? 5 * step : step;
  return Math.max(1, Math.round(value / coarse) * coarse);
}

const multiples = (value: number, most: number) => [...new Set(TIMES.map((times) => Math.min(most, rounded(value * times))))];

function seedlings(generation: Generation): readonly Alternative[] {
  return numbers('seedlings', multiples(generation.seedlings, MOST_SEEDLINGS), generation, words.seedlings);
}

/** Never more than the days in bloom leave hands for, unless the plan does so as it stands. Openly pollinated flowers are not counted. */
function flowers({ limits, plans }: Programme, generation: Generation): readonly Alternative[] {
  const hands = Math.min(MOST_FLOWERS, Math.floor(limits.bloomDays * limits.hoursADay * limits.flowersAnHour));
  if (hands < 1) return [];
  const stands = generation.flowers || firstFlowers(plans);
  return [...new Set([...multiples(stands, hands), hands])]
    .filter((number) => number !== generation.flowers)
    .map((number) => ({ words: words.flowers(number), change: (entry) => (Array.isArray(entry.pollen) ? { ...entry, flowers: number } : entry) }));
}

/** Where seedlings can be weak, as the plan stands or by another method. */
function rescues(programme: Programme, plan: Plan, generation: Generation, ways: readonly Alternative[]): readonly Alternative[] {
  const plans = [plan, ...ways.flatMap(({ change }) => withGeneration(onlyPlan(programme, plan.id), plan.id, generation.id, change).plans)];
  const site = plans.flatMap((one) => rescueSites(programme, one)).find((one) => one.generation.id === generation.id);
  if (!site) return [];
  const told = toldFrom(site.entries);
  const ages = [...new Set([...AGES, site.rescue.month])].sort((a, b) => a - b);
  const stocks = [site.rescue.stock, ...programme.stocks.map(({ id }) => id).filter((id) => id !== site.rescue.stock)];
  const grafts = stocks.flatMap((stock, s) => [
    // On another stock only the age that the plan grafts at, or the one that saves most.
    ...ages
      .filter((month) => month >= told && (s === 0 || month === site.rescue.month))
      .map((month) => ({ ...site.rescue, who: 'weak' as const, stock, month })),
    ...(s === 0 ? EVERY_AGES.map((month) => ({ ...site.rescue, who: 'every' as const, stock, month })) : []),
  ]);
  const own = generation.rescue?.who === 'none' ? undefined : generation.rescue;
  const none: Alternative[] = own ? [{ words: words.noRescue, change: ({ rescue: _old, ...entry }) => entry }] : [];
  return [
    ...none,
    ...grafts
      .filter(({ who, month, stock }) => own?.who !== who || own.month !== month || own.stock !== stock)
      .map((rescue): Alternative => ({
        words: words.rescue(rescue, rescue.stock === site.rescue.stock ? null : (programme.stocks.find(({ id }) => id === rescue.stock)?.name ?? null)),
        change: (entry) => ({ ...entry, rescue }),
      })),
  ];
}

function judging({ goal }: Programme, generation: Generation, followed: boolean): readonly Alternative[] {
  // More crops than the goal asks for prove nothing sooner; a generation that nothing follows must be judged.
  const most = Math.min(20, Math.max(followed ? 3 : 1, goal.crops));
  return [...new Set([0, 1, 2, 3, goal.crops - 1, goal.crops])]
    .filter((crops) => crops >= (followed ? 0 : 1) && crops <= most && crops !== generation.judge)
    .sort((a, b) => a - b)
    .map((crops) => ({ words: words.judge(crops), change: (entry) => judgedFor(goal, entry, crops) }));
}

/** Unjudged, the first to flower are kept; judged at last, those that meet what the goal says of measured traits. */
function judgedFor(goal: Programme['goal'], generation: Generation, crops: number): Generation {
  const { keep, judge } = generation;
  const tests = keep.conditions.filter(({ type }) => type === 'test');
  if (crops === 0) return { ...generation, judge: 0, keep: { ...keep, conditions: tests, rank: 'earliest', bestLeft: false } };
  const wanted = judge === 0 ? [...tests, ...goal.conditions.filter(({ type }) => type === 'measured')] : keep.conditions;
  const conditions = wanted.map((condition) => (condition.type === 'shown' && (condition.atLeast ?? 0) > crops ? { ...condition, atLeast: crops } : condition));
  return { ...generation, judge: crops, keep: { ...keep, conditions, ...(judge === 0 ? { rank: 'first' as const } : {}) } };
}

function backups({ stocks }: Programme, { backup }: Generation): readonly Alternative[] {
  const none: Alternative[] = backup ? [{ words: words.backup(0), change: ({ backup: _old, ...entry }) => entry }] : [];
  const stock = backup?.stock ?? stocks[0]?.id;
  if (stock === undefined) return none;
  return [
    ...none,
    ...COPIES.filter((copies) => copies !== backup?.copies).map((copies): Alternative => ({
      words: words.backup(copies),
      change: (entry) => ({ ...entry, backup: { ...backup, copies, stock } }),
    })),
  ];
}

/** By the three rules, and where it waits, at the latest after a third or half of the years there are. */
function goingOn({ startYear, lastYear }: Programme, { goOn }: Generation): readonly Alternative[] {
  const years = lastYear - startYear + 1;
  const limits = [...new Set([goOn.atLatest, undefined, ...[3, 2].map((part) => Math.min(60, Math.max(1, Math.round(years / part))))])];
  const ways = (['firstPick', 'enough', 'allJudged'] as const).flatMap((when) => {
    const count = when === 'enough' && goOn.when === 'enough' ? goOn.count : undefined;
    return (when === 'firstPick' ? [undefined] : limits).map((atLatest) => ({
      when,
      ...(count === undefined ? {} : { count }),
      ...(atLatest === undefined ? {} : { atLatest }),
    }));
  });
  return ways
    .filter(({ when, atLatest }) => when !== goOn.when || (when !== 'firstPick' && atLatest !== goOn.atLatest))
    .map((rule) => ({ words: words.goOn(rule.when, rule.atLatest), change: (entry) => ({ ...entry, goOn: rule }) }));
}
