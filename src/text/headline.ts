import type { Comparison, Failure, Interval, PlanOutlook } from '../results/outlook.ts';
import { leadChange } from '../statistics/lead.ts';
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

/** Below this share a chance has words instead of tenths. */
const HARDLY = 0.025;

/** What a page opens with where no plan gets there often enough to count it on the fingers. */
function hardlyAny(plans: readonly PlanOutlook[], best: PlanOutlook, lastYear: number): Piece[] {
  const who = plans.length === 1 ? `plan ${named(best)}` : 'any plan';
  const tree = `have a proven tree by ${String(lastYear)}`;
  if (best.chance.value === 0) return [{ text: `In none of ${whole(best.runs)} futures`, strong: true }, { text: ` does ${who} ${tree}.` }];
  return [
    { text: 'Hardly ever', strong: true },
    {
      text: ` does ${who} ${tree}: ${plans.length === 1 ? '' : 'at best '}in ${endsAt(best.chance.value)} futures${plans.length === 1 ? '' : `, with ${named(best)}`}.`,
    },
  ];
}

/** What a page opens with: the surest plan, and the one that is ahead before it. */
export function headline(plans: readonly PlanOutlook[], comparisons: readonly Comparison[], lastYear: number): Piece[] {
  const first = leaders(plans, comparisons);
  const [best] = first;
  if (!best) return [];
  if (best.chance.value < HARDLY) return hardlyAny(plans, best, lastYear);
  const many = first.length > 1;
  const who = many ? `${listed(first.map(({ mark }) => mark))}, which these futures cannot tell apart, have` : `${named(best)} has`;
  const half = best.yearProven.p50;
  const when = half === null ? '; fewer than half of all futures get there' : `; half of all futures get there by ${String(half)}`;
  return [
    { text: times(best.chance), strong: true },
    { text: ` ${many ? '' : 'plan '}${who} a proven tree by ${String(lastYear)}${when}.` },
    ...rival(plans, best),
  ];
}

/** The plan that leads until the surest overtakes it, where the futures can tell: in the year in which the picture lets their lines meet. */
function rival(plans: readonly PlanOutlook[], best: PlanOutlook): Piece[] {
  const change = leadChange(plans);
  const early = plans.find(({ id }) => id === change?.early);
  if (!change || !early) return [];
  // In tenths the two would read the same.
  const alike = inTen(early.chance.value).numeral === inTen(best.chance.value).numeral;
  return [
    { text: ` ${named(early)} is ` },
    { text: `ahead until ${String(change.year)}`, strong: true },
    { text: `, but ends at ${alike ? `${percent(early.chance.value)} against ${percent(best.chance.value)}` : endsAt(early.chance.value)}.` },
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

/** Seedlings to raise and hours in the busiest year; where there are hardly any, it says so instead of counting them. */
function effort({ mark, seedlings, busiestHours }: PlanOutlook): Piece[] {
  // Hours as the table says them.
  const [raised, hours] = [handCount(seedlings.mean), Math.round(busiestHours.p50)];
  const work: Piece[] =
    hours === 0
      ? [{ text: '.' }]
      : [{ text: ' and to need about ' }, { text: `${whole(hours)} ${hours === 1 ? 'hour' : 'hours'}`, strong: true }, { text: ' in the busiest year.' }];
  if (raised > 0)
    return [{ text: `For ${mark} expect to raise about ` }, { text: `${whole(raised)} ${raised === 1 ? 'seedling' : 'seedlings'}`, strong: true }, ...work];
  return [{ text: `For ${mark} expect ` }, { text: `${seedlings.mean === 0 ? 'no' : 'hardly a'} seedling`, strong: true }, { text: ' to raise' }, ...work];
}

/** What the surest plan asks for, and how far to trust it. */
export function lede(plans: readonly PlanOutlook[]): Piece[] {
  const ranked = byChance(plans);
  const best = ranked[0];
  if (!best || best.runs === 0) return [];
  const pieces = effort(best);
  if (best.trulyGood) pieces.push({ text: ` Of ten trees you would call proven, about ${counted(Math.round(best.trulyGood.value * 10))} truly are.` });
  if (best.guesses && best.guesses.high - best.guesses.low > 0.05)
    pieces.push({ text: ` If your guesses are off: ${tenths(best.guesses.low)} to ${tenths(best.guesses.high)} in 10.` });
  return pieces;
}

/** Why the least sure plan fails, a sentence of its own: it is not about the plan that the sentences before it are about. Empty where no reason stands out. */
export function mostFails(plans: readonly PlanOutlook[]): string {
  const ranked = byChance(plans);
  const best = ranked[0];
  if (!best || best.runs === 0) return '';
  // Where hardly anything works, what stops the surest plan tells most.
  const worst = best.chance.value < HARDLY ? best : ranked.at(-1);
  const failures = Object.entries(worst?.failures ?? {}).sort(([, a], [, b]) => b - a);
  const top = failures[0];
  if (worst && (worst !== best || best.chance.value < HARDLY) && top && top[1] >= 0.2) {
    const reason = Object.entries(WHY).find(([key]) => key === top[0])?.[1];
    if (reason !== undefined) return `${worst.mark} fails most often because ${reason}: ${endsAt(top[1])} futures.`;
  }
  return '';
}

const tenths = (share: number) => String(Math.round(share * 10));
