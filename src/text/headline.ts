import type { Comparison, Failure, Interval, PlanOutlook } from '../results/outlook.ts';
import { counted, inTen, listed, percent, whole } from './charts.ts';
import { handCount, howOften } from './sentences.ts';

/** A piece of a sentence; strong pieces are the findings. */
export interface Piece {
  readonly text: string;
  readonly strong?: true;
}

const NB = '\u00a0';

/** "8 times in 10", "In nearly every future", "Hardly ever": no more than the interval of the chance allows. */
function times(chance: Interval): string {
  const often = howOften(chance);
  switch (often.kind) {
    case 'nearly':
      return 'In nearly every future';
    case 'hardly':
      return 'Hardly ever';
    case 'unknown':
      return 'Too few futures to say how often';
    case 'tenths':
      return often.one ? `Once in${NB}10` : `${often.words.replace(/^./, (letter) => letter.toUpperCase())} times in${NB}10`;
  }
}

const named = ({ mark, name }: PlanOutlook) => `${mark} (${name})`;
const byChance = (plans: readonly PlanOutlook[]) => [...plans].sort((a, b) => b.chance.value - a.chance.value);

/** Plans whose chance the futures cannot tell from the best one's; the best one first. */
function leaders(plans: readonly PlanOutlook[], comparisons: readonly Comparison[]): readonly PlanOutlook[] {
  const [best, ...others] = byChance(plans);
  if (!best) return [];
  const tied = others.filter(({ id }) => {
    const pair = comparisons.find(({ a, b }) => (a === id && b === best.id) || (a === best.id && b === id));
    return !pair || (pair.chanceDifference.low <= 0 && pair.chanceDifference.high >= 0);
  });
  return [best, ...tied];
}

/** What a page opens with: the surest plan, and the one that is ahead before it. */
export function headline(plans: readonly PlanOutlook[], comparisons: readonly Comparison[], lastYear: number): Piece[] {
  const first = leaders(plans, comparisons);
  const [best] = first;
  if (!best) return [];
  const share = best.chance.value;
  const many = first.length > 1;
  const who = many ? `${listed(first.map(({ mark }) => mark))}, which these futures cannot tell apart, have` : `${named(best)} has`;
  const half = best.yearProven.p50;
  const when = half === null ? (share < 0.025 ? '' : '; fewer than half of all futures get there') : `; half of all futures get there by ${String(half)}`;
  const opening: Piece[] =
    share < 0.025
      ? [{ text: 'Hardly ever', strong: true }, { text: ` does any plan have a proven tree by ${String(lastYear)}.` }]
      : [{ text: times(best.chance), strong: true }, { text: ` ${many ? '' : 'plan '}${who} a proven tree by ${String(lastYear)}${when}.` }];
  return [...opening, ...rival(plans, best)];
}

/** The plan that is clearly ahead of the surest in some earlier year. */
function rival(plans: readonly PlanOutlook[], best: PlanOutlook): Piece[] {
  const ahead = plans
    .filter(({ id }) => id !== best.id)
    .map((plan) => {
      const years = plan.chanceByYear.filter(({ low }, y) => low > (best.chanceByYear[y]?.high ?? 1));
      return {
        plan,
        until: years.at(-1)?.year ?? null,
        lead: Math.max(0, ...years.map(({ year, value }) => value - (best.chanceByYear.find((point) => point.year === year)?.value ?? 0))),
      };
    })
    .filter(({ until, lead }) => until !== null && lead >= 0.1)
    .sort((a, b) => b.lead - a.lead)[0];
  if (!ahead || ahead.until === null) return [];
  // In tenths the two would read the same.
  const alike = inTen(ahead.plan.chance.value).numeral === inTen(best.chance.value).numeral;
  return [
    { text: ` ${named(ahead.plan)} is ` },
    { text: `ahead until ${String(ahead.until)}`, strong: true },
    { text: `, but ends at ${alike ? `${percent(ahead.plan.chance.value)} against ${percent(best.chance.value)}` : endsAt(ahead.plan.chance.value)}.` },
  ];
}

const endsAt = (share: number) => {
  const { numeral, words } = inTen(share);
  return `${numeral}${NB}${words.replace(' ', NB)}`;
};

const WHY: Partial<Record<Failure, string>> = {
  seedlingsDied: 'every seedling dies before it fruits',
  noneGoodEnough: 'trees fruit, but none is good enough',
  stillWaiting: 'the trees are still too young in your last year',
  onlyTreeLost: 'the only tree is lost first',
  noFruit: 'no fruit sets',
  noSeedling: 'no seed comes up',
  noRoom: 'there is no room',
};

/** Explanations under which no plan gets there in any future: the goal may be out of reach, or take another plan. */
export function outOfReach(plans: readonly PlanOutlook[]): string[] {
  const [first] = plans;
  if (!first) return [];
  return first.byRule.flatMap(({ trait, rule }, r) => {
    const all = plans.map((plan) => plan.byRule[r]);
    const never = all.every((entry) => entry !== undefined && entry.runs >= 100 && entry.chance.value === 0);
    return never
      ? [
          `${trait}: if “${rule}”, no plan has a proven tree in any of these futures. Raise more, judge longer, add a generation, or drop that explanation if you know better.`,
        ]
      : [];
  });
}

/** What the surest plan asks for, how far to trust it, and why the least sure one fails. */
export function lede(plans: readonly PlanOutlook[]): Piece[] {
  const ranked = byChance(plans);
  const best = ranked[0];
  if (!best || best.runs === 0) return [];
  const pieces: Piece[] = [
    { text: `For ${best.mark} expect to raise about ` },
    { text: `${whole(handCount(best.seedlings.mean))} seedlings`, strong: true },
    { text: ' and to need about ' },
    { text: `${whole(handCount(best.busiestHours.p50))} hours`, strong: true },
    { text: ' in the busiest year.' },
  ];
  if (best.trulyGood) pieces.push({ text: ` Of ten trees you would call proven, about ${counted(Math.round(best.trulyGood.value * 10))} truly are.` });
  if (best.guesses && best.guesses.high - best.guesses.low > 0.05)
    pieces.push({ text: ` If your guesses are off: ${tenths(best.guesses.low)} to ${tenths(best.guesses.high)} in 10.` });
  const worst = ranked.at(-1);
  const failures = Object.entries(worst?.failures ?? {}).sort(([, a], [, b]) => b - a);
  const top = failures[0];
  if (worst && worst !== best && top && top[1] >= 0.2) {
    const reason = Object.entries(WHY).find(([key]) => key === top[0])?.[1];
    if (reason !== undefined) pieces.push({ text: ` ${worst.mark} fails most often because ${reason}: ${endsAt(top[1])} futures.` });
  }
  return pieces;
}

const tenths = (share: number) => String(Math.round(share * 10));
