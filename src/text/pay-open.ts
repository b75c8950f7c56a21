import type { Verdict } from '../decisions/open-rate.ts';
import type { How, MissingWay, ParentName } from '../decisions/open-ways.ts';
import type { OpenAnswer, OpenSite, OpenWay } from '../decisions/open.ts';
import type { Interval } from '../results/outlook.ts';
import { inTenWords, listed, percent, percentRange, whole } from './charts.ts';
import type { Piece } from './headline.ts';
import { differenceInWords, differenceRange, ofTen, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';
import { handCount } from './sentences.ts';

const MINUS = '−';
const one = (n: number): string => String(Math.abs(n) < 9.95 ? Math.round(10 * n) / 10 : Math.round(n)).replace('-', MINUS);
const hours = (n: number): string => (Math.abs(n) < 12 ? one(n) : whole(handCount(n)));

export const openText = {
  asking: 'Open or crossed? And which tree is the mother?',
  about: 'Every way lives through the same futures; all else is as the plan says.',
  choice: 'Flowers of',
  how: {
    hand: 'crossed by hand',
    swapped: 'the other way round',
    bothWays: 'crossed both ways round',
    open: 'open-pollinated',
    self: 'own pollen',
  } satisfies Readonly<Record<How, string>>,
  asItStands: 'as the plan stands',
  heads: [
    'Pollen',
    'Proven tree',
    'Truly good, of those',
    'Half by',
    'Seedlings',
    'Hours, all years',
    'Against the plan as it stands',
    'Years sooner',
    'Hours for a year gained',
  ],
  slider: 'Ways to pollinate',
  none: 'nothing chosen',
  keys: '↑ ↓ goes from way to way.',
  caption: 'years in which 1, 5 and 9 of 10 futures have a proven tree',
  captionShort: 'proven in 1, 5 and 9 of 10 futures',
  notHalf: (last: number) => `half: not by ${String(last)}`,
  hardly: 'fewer than 1 in 10 ever',
  chanceHead: 'by then',
  truly: (trulyGood: Interval | null) => (trulyGood === null ? '' : `${ofTen(trulyGood.value)} truly good`),
  hoursOf: (mean: number) => `about ${whole(handCount(mean))} hours`,
  differTitle: 'What the others bring',
  missingTitle: 'Not known',
  sameFigures: 'One cross entry serves both ways round: nothing you entered says that set or seeds differ, so only the trees do.',
  reckoned: (flowers: number) => `${whole(flowers)} flowers a spring are assumed by hand: as many as bring the seedlings wanted at the middle of your guesses.`,
  noDifference: pay.noDifference,
  method:
    'Each way is the plan with that one thing changed, on the same futures. Years count from the first spring to the proven tree, and to the end of your last judging year where there is none (restricted mean: Royston & Parmar 2013). Hours are all hours until then. Hours for a year gained divides the mean difference in hours by the mean difference in years, future by future, with Fieller’s interval for a ratio (1954); it is given only where the years clearly differ and the way that gains them takes more hours. Open pollination takes fathers from the pollen in the air as entered; seed is gathered until enough is expected to come up.',
} as const;

const named = ({ name, picks }: ParentName): string => (picks ? `picks of “${name}”` : name);
const parents = (list: readonly ParentName[]): string => listed(list.map(named));

/** "Old Hedgerow × Saffron Bell", "Old Hedgerow, pollen of the lane". */
export function parentsWords({ mothers, fathers, air, how }: Pick<OpenWay, 'mothers' | 'fathers' | 'air' | 'how'>): string {
  if (how === 'open') return `${parents(mothers)}${air === null ? '' : `, pollen of “${air}”`}`;
  if (how === 'self') return `${parents(mothers)}, selfed`;
  return `${parents(mothers)} × ${parents(fathers)}`;
}

/** "58 % (57–60)". */
export const chanceWords = ({ value, low, high }: Interval): string => `${percent(value)} (${percentRange(low, high)})`;

/** Years sooner and their interval: "+1.4", "1.2 to 1.7"; or that there is no clear difference. */
export const yearsLines = ({ value, low, high }: Interval, verdict: Verdict): readonly [string, string] => [
  verdict === 'unclear' ? pay.noDifference : `${value > 0 ? '+' : ''}${one(value)}`,
  `${one(low)} to ${one(high)}`,
];

/** Hours for a year that one of the two gains; or what there is to say instead. */
export function rateWords({ verdict, hoursPerYear }: NonNullable<OpenWay['yearsForHours']>): string {
  if (verdict === 'unclear') return pay.noDifference;
  if (verdict === 'better') return 'sooner, for no more hours';
  if (verdict === 'worse') return 'later, and saves no hours';
  if (!hoursPerYear) return pay.noDifference;
  const rate = `${hours(hoursPerYear.value)} (${hours(hoursPerYear.low)} to ${hours(hoursPerYear.high)})`;
  return verdict === 'costs' ? `costs ${rate}` : `saves ${rate} for each year lost`;
}

export const mainSiteOf = ({ sites }: OpenAnswer, generation: string): OpenSite | undefined => sites.find((site) => site.generation === generation) ?? sites[0];

/** The finding about one generation: open or by hand, then which way round. */
export function openFinding(site: OpenSite | undefined): readonly Piece[] {
  const standing = site?.ways[0];
  if (!site || !standing) return [{ text: openText.asking }];
  const first = openOrCrossed(site, standing);
  const pieces: readonly Piece[] = first.length > 0 ? [...first, ...motherOrFather(site, standing)] : atTheBeginning(motherOrFather(site, standing));
  return pieces.length === 0 ? [{ text: openText.asking }] : pieces;
}

/** A second half of a sentence that stands alone: without its semicolon, with a capital. */
function atTheBeginning(half: readonly Piece[]): readonly Piece[] {
  const [opening, ...rest] = half.map((piece, i) => (i === 0 ? { ...piece, text: piece.text.replace(/^; /, '') } : piece)).filter(({ text }) => text !== '');
  return opening ? [{ ...opening, text: `${opening.text.charAt(0).toUpperCase()}${opening.text.slice(1)}` }, ...rest] : [];
}

function openOrCrossed(site: OpenSite, standing: OpenWay): readonly Piece[] {
  const other = site.ways.find(({ how }) => (standing.how === 'open' ? how === 'hand' : how === 'open'));
  const difference = other?.minusAsItStands;
  if (!other || !difference) return [];
  if (!difference.clear) return [{ text: `Open or crossed: ${pay.noDifference}`, strong: true }, { text: ' in the chance' }];
  const otherWins = difference.chance.value > 0;
  const winner = otherWins ? other.how : standing.how;
  const gain = differenceInWords({ ...difference.chance, value: Math.abs(difference.chance.value) }, true);
  const less = lessTrusted(...(otherWins ? ([other, standing] as const) : ([standing, other] as const)));
  const text = (less === '' ? ADVICE : OFTENER)[winner === 'open' || winner === 'self' ? winner : 'hand'];
  const { yearsForHours } = other;
  // A way can end well oftener and yet later.
  const years = !yearsForHours || yearsForHours.verdict === 'unclear' ? 0 : (otherWins ? 1 : -1) * yearsForHours.yearsGained.value;
  const late = years < 0 ? `, though ${one(-years)} years later on average` : '';
  const against = winner === 'open' ? openText.how[otherWins ? standing.how : other.how] : 'open pollen';
  return [{ text, strong: true }, { text: `: ${gain} against ${against}${late}${less === '' ? '' : `${late === '' ? ', though' : ', and'} ${less}`}` }];
}

const ADVICE = { open: 'Leave it to the open pollen', self: 'Keep to its own pollen', hand: 'Cross by hand' } as const;
/** More proven trees of which fewer are what they seem: the choice is left to the reader. */
const OFTENER = {
  open: 'Open pollen has a proven tree oftener',
  self: 'Its own pollen has a proven tree oftener',
  hand: 'Crossing by hand has a proven tree oftener',
} as const;

/** Where clearly fewer of the likelier way's proven trees truly are good: "of ten called proven about six truly are, not seven". */
function lessTrusted({ outcome: { trulyGood: likelier } }: OpenWay, { outcome: { trulyGood: other } }: OpenWay): string {
  if (!likelier || !other || likelier.high >= other.low) return '';
  const [few, more] = [trulyOfTen(likelier), trulyOfTen(other)];
  return few === more
    ? `of 100 called proven about ${whole(Math.round(100 * likelier.value))} truly are, not ${whole(Math.round(100 * other.value))}`
    : `of ten called proven about ${few ?? ''} truly are, not ${more ?? ''}`;
}

function motherOrFather(site: OpenSite, standing: OpenWay): readonly Piece[] {
  const swapped = site.ways.find(({ how }) => how === 'swapped');
  const difference = swapped?.minusAsItStands;
  if (swapped && difference) {
    if (!difference.clear) return [{ text: '; ' }, { text: 'mother or father', strong: true }, { text: `: ${pay.noDifference}` }];
    const better = difference.chance.value > 0 ? swapped : standing;
    const gain = differenceInWords({ ...difference.chance, value: Math.abs(difference.chance.value) }, true);
    if (better.how === 'bothWays') return [{ text: '; ' }, { text: 'both ways round', strong: true }, { text: ` beats that way alone, ${gain}` }];
    return [{ text: '; ' }, { text: `make ${parents(better.mothers)} the mother`, strong: true }, { text: `: ${gain}` }];
  }
  const missing = site.missing.find(({ how }) => how === 'swapped');
  return missing?.entry ? [{ text: '; the other way round is not known' }] : [];
}

/** What each other way brings against the plan as it stands, in a sentence. */
export function wayNotes({ ways }: OpenSite): readonly string[] {
  const standing = ways[0];
  const trust = standing && trulyOfTen(standing.outcome.trulyGood);
  return [
    ...(standing
      ? [
          `As the plan stands (${openText.how[standing.how]}): a proven tree ${inTenWords(standing.outcome.chance.value)}${trust ? `; ${pay.trulyGood(trust)}` : ''}.`,
        ]
      : []),
    ...ways.flatMap((way) => (way.minusAsItStands && way.yearsForHours ? [wayNote(way, way.minusAsItStands, way.yearsForHours)] : [])),
    ...(ways.some(({ sameFigures }) => sameFigures) ? [openText.sameFigures] : []),
    ...ways.flatMap(({ flowersReckoned, flowers }) => (flowersReckoned && flowers !== null ? [openText.reckoned(flowers)] : [])),
  ];
}

function wayNote(
  way: OpenWay,
  { chance, clear }: NonNullable<OpenWay['minusAsItStands']>,
  { yearsGained, moreHours, verdict, hoursPerYear }: NonNullable<OpenWay['yearsForHours']>,
): string {
  const start = openText.how[way.how].replace(/^./, (letter) => letter.toUpperCase());
  const likelier = `${clear ? differenceInWords(chance, true) : `${pay.noDifference} in the chance`} (${differenceRange(chance)})`;
  const size = Math.abs(yearsGained.value);
  const years =
    verdict === 'unclear'
      ? `${pay.noDifference} in the years`
      : `${one(size)} ${size === 1 ? 'year' : 'years'} ${yearsGained.value > 0 ? 'sooner' : 'later'} on average`;
  const work =
    moreHours.low > 0 || moreHours.high < 0
      ? `${hours(Math.abs(moreHours.value))} hours ${moreHours.value > 0 ? 'more' : 'less'}`
      : `${pay.noDifference} in hours`;
  const rate =
    !hoursPerYear || verdict === 'unclear'
      ? ''
      : verdict === 'costs'
        ? `: each year gained costs ${hours(hoursPerYear.value)} hours (${hours(hoursPerYear.low)} to ${hours(hoursPerYear.high)})`
        : `: each year lost saves ${hours(hoursPerYear.value)} hours (${hours(hoursPerYear.low)} to ${hours(hoursPerYear.high)})`;
  const trust = trulyOfTen(way.outcome.trulyGood);
  return `${start}: ${likelier}; ${years}, ${work}${rate}.${trust ? ` Of ten called proven, about ${trust} truly are.` : ''}`;
}

/** What would have to be entered for a way that cannot be run. */
export function missingWords({ how, mothers, fathers, entry, noPool, problem }: MissingWay): string {
  const way = how === 'open' ? openText.how.open : `${parents(mothers)} × ${parents(fathers)}`;
  if (noPool) return `${way}: no pollen in the air is described. Add a pool of neighbours under “What have I got?”.`;
  if (entry) return `${way}: there is no cross entry ${entry.seed} × ${entry.pollen}, seed parent first. Add it under “What have I got?” to compare.`;
  return `${way}: ${problem ?? 'cannot be run'}.`;
}

/** A way, read aloud. */
export function readWay(way: OpenWay, lastYear: number): string {
  const { outcome, how } = way;
  const { p10, p50, p90 } = outcome.yearProven;
  const when =
    p10 === null
      ? openText.hardly
      : `half by ${p50 === null ? `after ${String(lastYear)}` : String(p50)}, 1 in 10 by ${String(p10)}${p90 === null ? '' : `, 9 in 10 by ${String(p90)}`}`;
  return `${openText.how[how]}, ${parentsWords(way)}: ${chanceWords(outcome.chance)}${outcome.trulyGood ? `, ${openText.truly(outcome.trulyGood)}` : ''}, ${when}, ${openText.hoursOf(outcome.totalHours.mean)}.`;
}
