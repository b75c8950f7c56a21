import type { BetterAnswer } from '../decisions/better.ts';
import type { BetterPlan } from '../decisions/better/final.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent } from '../statistics/compare.ts';
import { percent, whole } from './charts.ts';
import type { Piece } from './headline.ts';
import { decimals, halves, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';

const NB = '\u00a0';

const capital = (words: string): string => words.replace(/^./, (letter) => letter.toUpperCase());
const trees = (n: number): string => `${whole(n)}${NB}${Math.round(n) === 1 ? 'seedling' : 'seedlings'}`;
/** “4 years”, “½ year”, “under ½ year”. */
function yearsInWords(years: number): string {
  const said = halves(Math.abs(years));
  return said === '' || said === '0' ? `under ½${NB}year` : `${said}${NB}${said === '1' || said === '½' ? 'year' : 'years'}`;
}

export const betterText = {
  asking: 'Is there a better plan within my limits?',
  about:
    'Other ways of doing your plans are tried within your places, days in bloom, hours and years: method, flowers, seedlings, grafts, seasons judged, picks, backups, when to go on. A better plan has its tree sooner and raises fewer seedlings.',
  button: 'Look for better plans',
  method:
    'New plans are made in waves from the best so far, changed or mixed; in each wave half drop out after 100, 200 and 400 futures (successive halving: Karnin, Koren & Somekh 2013; Jamieson & Talwalkar 2016), ranked by non-dominated sorting on mean year and mean seedlings (Deb et al. 2002), all on common futures. ' +
    'Mean year is a restricted mean (Royston & Parmar 2013). The final comparison is paired, on fresh futures: the soonest by multiple comparisons with the best (Hsu 1984; with common random numbers Yang & Nelson 1991, Nelson & Matejcik 1995), the front by paired one-sided bounds on both things at once (Berger 1982), each shared out by Bonferroni at half of 5 %.',
  coming: (looked: number, looks: number) => `${String(looked)} of ${String(looks)} plans looked at`,
  comparing: 'The best are compared on futures that had no part in choosing them.',
  years: 'mean year of the proven tree ›',
  yearsShort: 'mean year of the tree ›',
  trees: 'seedlings raised, on average',
  corner: ['sooner, with fewer:', 'nothing found'],
  slider: 'Your plans and those found, from the soonest on',
  none: 'no plan chosen',
  keys: '← → goes from plan to plan along the front.',
  legend:
    'Discs are your own plans, numbered rings the plans found, in the colour of the plan each comes from; nothing looked at beats the stepped line. The bars through them: 95 in 100 sure. Small dots: what else was looked at closely.',
  heads: [
    'Plan',
    'In your programme',
    'Mean year of the tree',
    'Seedlings raised',
    'Chance by',
    'Truly good',
    'Hours, busiest year',
    'Against the plan it came from',
  ],
  headsWith: (lastYear: number) => betterText.heads.map((head) => (head === 'Chance by' ? `${head} ${String(lastYear)}` : head)),
  asItStands: 'as it stands',
  lowerChance: (mark: string) => `clearly under ${mark}`,
  add: 'Add as a plan',
  addNamed: (name: string) => `Add as a plan: ${name}`,
  addStep: (mark: string) => `found plan added as ${mark}`,
  added: (mark: string) => `Added as plan ${mark}`,
  see: 'see what it does',
  seeNamed: (mark: string) => `Plan ${mark}: see what it does`,
  howSure: 'How sure is this?',
  whatCounts: 'What counts',
  nothingFound: 'No other plan held on fresh futures.',
  table: 'Plans found and your own',
} as const;

/** “plan B” or, of those found, “number 3”: as they are marked in the picture. */
const shortName = (plan: BetterPlan, plans: readonly BetterPlan[]): string => (plan.own ? `plan ${plan.mark}` : `number${NB}${String(numberOf(plan, plans))}`);
/** The interval without its sign where the words beside it say which way. */
function sayRange({ low, high }: Interval): string {
  if (low > 0) return `${decimals(low)}–${decimals(high)}`;
  return high < 0 ? `${decimals(-high)}–${decimals(-low)}` : `${decimals(low)} to ${decimals(high)}`;
}

/** The finding, as the title. */
export function betterFinding(answer: BetterAnswer): readonly Piece[] {
  const { plans, stage, looked, looks } = answer;
  if (stage === 'looking') return [{ text: `Looking for better plans: ${betterText.coming(looked, looks)}.` }];
  const own = plans.filter((plan) => plan.own && plan.standing !== 'overLimits');
  const soonestOwn = own.reduce<BetterPlan | undefined>((best, plan) => (!best || plan.years.value < best.years.value ? plan : best), undefined);
  const soonest = plans.find(({ id }) => id === answer.soonest?.id);
  if (!soonestOwn)
    return soonest && !soonest.own
      ? [
          { text: 'Your own plans go over your limits. ' },
          { text: capital(shortName(soonest, plans)), strong: true },
          { text: ' of the plans found keeps them.' },
        ]
      : [{ text: 'Your own plans go over your limits, and nothing was found that keeps them.' }];
  const beats = plans.find(({ id, own: mine }) => !mine && id === soonestOwn.beatenBy);
  if (beats) return aheadOf(beats, soonestOwn, answer);
  if (soonest && !soonest.own && !soonestOwn.mayBeSoonest) return aheadOf(soonest, soonestOwn, answer);
  const others = plans.some((plan) => plan.own && plans.some(({ id, own: mine }) => !mine && id === plan.beatenBy));
  if (others && answer.clear)
    return [
      { text: `Nothing found clearly beats plan ${soonestOwn.mark}`, strong: true },
      { text: ', your soonest; for the others there are better plans within your limits.' },
    ];
  return [
    { text: capital(pay.noDifference), strong: true },
    { text: `: of ${whole(looked)} plans looked at within your limits none clearly beats yours on both years and seedlings.` },
  ];
}

function aheadOf(found: BetterPlan, own: BetterPlan, { plans }: BetterAnswer): readonly Piece[] {
  const sooner = own.years.value - found.years.value;
  const fewer = Math.round(own.trees.value) - Math.round(found.trees.value);
  const raised: readonly Piece[] =
    fewer === 0
      ? [{ text: ', for as many seedlings' }]
      : fewer > 0
        ? [{ text: ', and ' }, { text: `${trees(fewer)} fewer`, strong: true }]
        : [{ text: `, for ${trees(-fewer)} more` }];
  return [
    { text: `${capital(yearsInWords(sooner))} sooner`, strong: true },
    { text: ` than plan ${own.mark}, your soonest` },
    ...raised,
    { text: `: ${shortName(found, plans)} of the plans found within your limits, which varies plan ${found.mark}.` },
  ];
}

/** “2044.1” and its interval. */
export const meanYearLines = ({ value, low, high }: Interval): readonly [string, string] => [value.toFixed(1), `${low.toFixed(1)}–${high.toFixed(1)}`];
export const treesLines = ({ value, low, high }: Interval): readonly [string, string] => {
  const say = (n: number) => (value < 10 ? decimals(n) : whole(Math.round(n)));
  return [say(value), `${say(low)}–${say(high)}`];
};

/** Against the plan it came from: years, then seedlings, each with its interval; “no clear difference” where that is the truth. */
export function againstLines({ minusFrom }: BetterPlan): readonly (readonly [string, string])[] {
  if (!minusFrom) return [];
  const { years, seedlings } = minusFrom;
  const soonerOrLater = clearlyDifferent(years)
    ? `${decimals(Math.abs(years.value))}${NB}years ${years.value < 0 ? 'sooner' : 'later'}`
    : `years: ${pay.noDifference}`;
  const amount = `${decimals(Math.abs(seedlings.value))} ${seedlings.value < 0 ? 'fewer' : 'more'}`;
  return [
    [soonerOrLater, sayRange(years)],
    [clearlyDifferent(seedlings) ? `${amount} seedlings` : `seedlings: ${pay.noDifference}`, sayRange(seedlings)],
  ];
}

/** How a plan stands, in words. `numberOf` names a found plan by its ring. */
export function standingInWords(plan: BetterPlan, plans: readonly BetterPlan[], soonest: string | null): string {
  const by = plans.find(({ id }) => id === plan.beatenBy);
  const words = {
    front: 'nothing beats it on both',
    noClearDifference: `${pay.noDifference} to the front`,
    beaten: by ? `beaten on both by ${shortName(by, plans)}` : 'beaten on both',
    overLimits: plan.over ? `over your hours or money in ${percent(plan.over.value)} of its futures` : 'over your limits',
  }[plan.standing];
  if (plan.id === soonest) return `the soonest; ${words}`;
  return plan.mayBeSoonest ? `may be the soonest; ${words}` : words;
}

/** The number in a found plan's ring: 1 … in the order of the list. */
export const numberOf = (plan: BetterPlan, plans: readonly BetterPlan[]): number => plans.filter(({ own }) => !own).indexOf(plan) + 1;

/** A plan that is read in the picture. */
export function planWordsRead(plan: BetterPlan, plans: readonly BetterPlan[], lastYear: number): string {
  const name = plan.own ? `Plan ${plan.mark}, ${betterText.asItStands}` : `${String(numberOf(plan, plans))}: ${plan.name}`;
  const truly = trulyOfTen(plan.outcome.trulyGood);
  const good = truly === null ? '' : `; ${pay.trulyGood(truly)}`;
  return `${name}. Mean year ${plan.years.value.toFixed(1)}, ${trees(plan.trees.value)}, ${percent(plan.outcome.chance.value)} by ${String(lastYear)}${good}.`;
}

const either = (items: readonly string[]): string => `${items.slice(0, -1).join(', ')} or ${items.at(-1) ?? ''}`;

/** How sure, in sentences. */
export function sureInWords({ plans, soonest, confidence, freshFrom, looked, fellBack, stage }: BetterAnswer): readonly string[] {
  if (stage === 'looking') return [betterText.comparing];
  const best = plans.find(({ id }) => id === soonest?.id);
  const maybe = plans.filter(({ mayBeSoonest }) => mayBeSoonest);
  const sure = `${String(Math.round(100 * confidence))} in${NB}100`;
  const last = soonest && soonest.within >= 0.05 ? `, or no more than ${decimals(soonest.within)} years behind it` : '';
  return [
    `The best of ${whole(looked)} plans looked at were run again on futures numbered from ${whole(freshFrom + 1)} on, which had no part in choosing them, so that the winner is not just the luckiest.`,
    ...(best
      ? [
          `${sure} sure, all of this at once: ${maybe.length > 1 ? `the soonest of these is ${either(maybe.map((plan) => shortName(plan, plans)))}` : `${shortName(best, plans)} is the soonest of these${last}`}; and no plan is called beaten that nothing here beats.`,
        ]
      : []),
    ...(fellBack > 0 ? [`${String(fellBack)} that looked good while choosing did not hold and ${fellBack === 1 ? 'is' : 'are'} left out.`] : []),
  ];
}

/** What years, seedlings and limits mean here, in sentences. */
export function countsInWords({ lastYear, overAtMost }: BetterAnswer): readonly string[] {
  return [
    `Mean year: over all futures; one without a proven tree by ${String(lastYear)} counts as ${String(lastYear + 1)}, so a plan that seldom works looks late, and a plan that tries little is cheap. Look at the chance as well.`,
    `Within your limits: places and days in bloom are kept in every future, and no more than ${percent(overAtMost)} of the futures have a year over your hours or money.`,
  ];
}
