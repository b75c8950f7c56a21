import type { BreakEven } from '../decisions/break-even.ts';
import { monthsAtTake, takeAtMonths, type Turn } from '../decisions/graft-turns.ts';
import type { GraftAnswer } from '../decisions/graft.ts';
import type { GraftMap } from '../decisions/graft-map.ts';
import type { GraftSite, GraftWay } from '../decisions/graft-ways.ts';
import type { Who } from '../decisions/rescue-sites.ts';
import type { RootsLine, RootsPoint } from '../decisions/roots-line.ts';
import type { Batch, StockUse } from '../decisions/stock-order.ts';
import type { Interval } from '../results/outlook.ts';
import { listed, percent, percentRange } from './charts.ts';
import type { Piece } from './headline.ts';
import { besideEachOther, decimals, differenceInWords, differenceRange, halvesOfTen, monthsBetween, monthsInWords, ofTen, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';

/** Where a plan raises weak seedlings in more than one generation. */
export const siteText = { choice: 'Weak seedlings of' } as const;

export const rootsText = {
  title: 'What if the weakness sits in the top?',
  about: 'New roots cure weak roots, never a weak top.',
  lines: { grafted: 'grafted', own: 'own roots' },
  here: (chance: number) => `you say ${halvesOfTen(chance)}`,
  across: 'times in 10 that weakness sits in the roots ›',
  acrossShort: 'weakness in the roots, of 10 ›',
  slider: 'Chance that weakness sits in the roots',
  none: 'nothing chosen',
  keys: '← → moves along the chance that weakness sits in the roots.',
  heads: ['In the roots', 'Grafted', 'of these truly good', 'Own roots', 'of these truly good', 'Grafting gains'],
  coming: 'The line is being worked out…',
} as const;

export const graftText = {
  asking: 'Graft, or leave them on their own roots?',
  about: 'Every choice lives through the same futures; all else is as the plan says.',
  ways: { none: 'none: all on their own roots', weak: 'weak ones', every: 'every seedling' } satisfies Readonly<Record<Who, string>>,
  who: { none: 'leave all on their own roots', weak: 'graft the weak ones', every: 'graft every seedling' } satisfies Readonly<Record<Who, string>>,
  asItStands: 'as the plan stands',
  heads: ['Grafted', 'Proven tree', 'Truly good, of those', 'Half by', 'Seedlings', 'Grafts', 'Hours, all years', 'Against the plan as it stands'],
  batches: { weak: 'the weak ones', sound: 'the sound ones', any: 'any, before it shows' } satisfies Readonly<Record<Batch, string>>,
  stands: 'Where you stand',
  turns: 'What would change the answer',
  method:
    'The plan lives through the same futures with none, the weak ones and every seedling of this generation grafted. The map does so at 15 × 15 places; its line is where the gain turns positive, made never to fall as the take rises (pool adjacent violators, Ayer et al. 1955), and its dashes are 95 % intervals from 200 resamples of the futures (Efron & Tibshirani 1993). Intervals of differences: Bonett & Price 2012. They hold the error of the futures made, not that of the guesses.',
  range: (low: string, high: string) => `${low} to ${high}`,
  namedAt: (name: string, month: string) => `${name}, at ${month}`,
  mapTitle: 'By how fast the weak ones die, and how many grafts take',
  mapAbout: 'Above the line grafting wins.',
  mapGraft: 'graft',
  mapOwn: 'own roots',
  mapTakes: 'grafts that take, of 10',
  mapMonths: 'half of the weak are dead this long after it shows ›',
  mapMonthsShort: 'half of the weak are dead after ›',
  mapHere: 'your plan',
  mapPoint: (months: number, take: number) => `about ${monthsInWords(months)}, ${ofTen(take)}`,
  mapLine: 'neither wins',
  mapBetween: ['between the dashes:', 'no clear difference'],
  mapKey: {
    graft: 'tinted: grafting wins',
    own: 'hatched: own roots win',
    line: 'thick line: neither wins',
    between: 'between the dashes: no clear difference',
  },
  mapSlider: 'Place on the map to read',
  mapNone: 'no place chosen',
  mapKeys: 'Arrow keys move over the map.',
  tableHeads: ['Half dead after', 'Grafting wins above a take of', 'At about your take, grafting gains'],
  stocksTitle: 'Only so many rootstocks: whom first?',
  stocksHeads: ['Seedlings', 'Of 10 bear, grafted', 'Of 10 bear, own roots', 'Trees gained by 10 stocks', 'Picks gained by 10 stocks'],
  stocksNote: 'Reckoned over what your guesses allow, not run as futures: the small figures hold 8 in 10 of it.',
  mapComing: 'The map is being worked out…',
  tick: (months: number, first: boolean) => {
    if (months < 12) return first ? monthsInWords(months) : String(months);
    return monthsInWords(months);
  },
} as const;

/** The generation that map and line are about. */
export const siteAsked = ({ sites, generation }: GraftAnswer): GraftSite | undefined => sites.find((site) => site.generation === generation);

const ownOf = ({ ways }: GraftSite): GraftWay | undefined => ways.find(({ who }) => who === 'none');
/** The better of the two ways of grafting. */
function graftedOf({ ways }: GraftSite): GraftWay | undefined {
  const grafted = ways.filter(({ who }) => who !== 'none');
  return grafted.reduce<GraftWay | undefined>((best, way) => (best && best.outcome.chance.value >= way.outcome.chance.value ? best : way), undefined);
}

/**
 * What the page opens with: graft or not, in numbers.
 * @param mark letter of the plan
 * @param lastYear last judging year
 * @param settled false while futures are on the way: how long the weak would have to live still moves then, and is not said
 */
export function graftHeadline(answer: GraftAnswer, mark: string, lastYear: number, settled = true): readonly Piece[] {
  const site = siteAsked(answer);
  const own = site && ownOf(site);
  const grafted = site && graftedOf(site);
  if (!site || !own || !grafted) return [{ text: pay.question }];
  const [withGraft, without] = besideEachOther(grafted.outcome.chance.value, own.outcome.chance.value);
  const tree = `futures of plan ${mark} have a proven tree by ${String(lastYear)}`;
  // A plan that grafts nothing has no such futures of its own.
  const grafts = grafted.who === 'every' ? 'if every seedling were grafted' : 'if its weak ones were grafted';
  const would = site.stands === 'none' ? ` futures of plan ${mark} would have a proven tree by ${String(lastYear)} ${grafts}` : ` ${tree}`;
  const openings = {
    unclear: [
      { text: 'No clear difference.', strong: true },
      { text: ' With your numbers ' },
      { text: withGraft, strong: true },
      { text: ` ${tree} with a graft and ${without} on their own roots: too close for these futures to tell.` },
    ],
    own: [
      { text: 'No, leave them on their own roots.', strong: true },
      { text: ' With your numbers ' },
      { text: without, strong: true },
      { text: ` ${tree}, against ${withGraft} with a graft.` },
    ],
    graft: [
      { text: 'Yes, graft.', strong: true },
      { text: ' With your numbers ' },
      { text: withGraft, strong: true },
      { text: `${would}, against ${without} on their own roots${settled ? stopsPaying(answer) : ''}.` },
    ],
  } as const;
  return openings[!site.clear ? 'unclear' : site.best === 'none' ? 'own' : 'graft'];
}

function stopsPaying({ map, standing }: GraftAnswer): string {
  if (!map) return '';
  const { value, low } = monthsAtTake(map, standing.middle.take);
  if (value !== null) return `; half of the weak would have to live past ${monthsInWords(value)} before grafting stopped paying`;
  if (low !== null) return `; half of the weak would have to live past ${monthsInWords(low)} before grafting made no clear difference`;
  return `, and still so if half of the weak lived past ${monthsInWords(map.to)}`;
}

/** Beside the chances of the opening: how far to trust what is called proven. */
export function graftTrust(answer: GraftAnswer): string {
  const site = siteAsked(answer);
  const said = trulyOfTen((site && graftedOf(site)?.outcome.trulyGood) ?? null);
  return said === null ? '' : `${pay.trulyGood(said).replace(/^o/, 'O')}.`;
}

/** The section's finding: whom to graft. */
export function graftFinding(answer: GraftAnswer): readonly Piece[] {
  const site = siteAsked(answer);
  if (!site) return [{ text: graftText.asking }];
  if (!site.clear) return [{ text: 'Graft or not: no clear difference' }];
  if (site.best === 'none') return [{ text: 'Leave them on their own roots' }];
  const { everyMinusWeak } = site;
  if (!everyMinusWeak) return [{ text: 'Graft every seedling: at that age the weak ones do not show yet' }];
  if (!everyMinusWeak.clear) return [{ text: 'Graft the weak ones or every seedling: no clear difference' }];
  const gain = differenceInWords({ ...everyMinusWeak.chance, value: Math.abs(everyMinusWeak.chance.value) }, true).replace('+', '');
  return [
    {
      text:
        everyMinusWeak.chance.value < 0
          ? `Graft the weak ones; every seedling would lose ${gain}`
          : `Graft every seedling; only the weak ones would lose ${gain}`,
    },
  ];
}

/** A cell of the map, read aloud. */
export function cellWords({ halfLives, takes, cells }: GraftMap, at: number): string {
  const cell = cells[at];
  if (!cell) return graftText.mapNone;
  const months = halfLives[at % halfLives.length] ?? 0;
  const take = takes[Math.floor(at / halfLives.length)] ?? 0;
  const place = `Half of the weak dead by ${monthsInWords(months)}, ${ofTen(take)} grafts take: `;
  if (cell.wins === null) return `${place}${pay.noDifference} (${differenceRange(cell.difference)} in 100).`;
  return `${place}${cell.wins === 'graft' ? 'grafting wins' : 'own roots win'}, ${differenceInWords(cell.difference, true)} (${differenceRange(cell.difference)}).`;
}

/** A take above which grafting wins: "3 of 10 (2 to 5)". */
export function breakEvenWords({ take, low, high }: BreakEven): string {
  if (high <= 0) return 'any take';
  if (low >= 1) return 'no take';
  return `${ofTen(take)} (${ofTen(low)} to ${ofTen(high)})`;
}

/** Where the programme stands on the map, in sentences. */
export function standsInWords({ standing, guesses }: GraftAnswer): readonly string[] {
  const { middle, draws } = standing;
  const sorted = (of: (draw: (typeof draws)[number]) => number) => draws.map(of).sort((a, b) => a - b);
  const at = (values: readonly number[], share: number) => values[Math.round(share * (values.length - 1))] ?? 0;
  const [months, takes] = [sorted(({ halfLife }) => halfLife), sorted(({ take }) => take)];
  const fixed = (values: readonly number[]) => at(values, 0.1) === at(values, 0.9);
  const half = fixed(months)
    ? `You say that half of the weak ones are dead by ${monthsInWords(middle.halfLife)}`
    : `You guess that half of the weak ones are dead by about ${monthsInWords(middle.halfLife)} (8 in 10: ${monthsBetween(at(months, 0.1), at(months, 0.9))})`;
  const take = fixed(takes)
    ? `and that ${ofTen(middle.take)} grafts take at that age.`
    : `and that about ${ofTen(middle.take)} grafts take at that age (8 in 10: ${ofTen(at(takes, 0.1))} to ${ofTen(at(takes, 0.9))}).`;
  const lines = [`${half}, ${take}`, 'The rings hold 5 and 9 in 10 of what those allow.'];
  if (!guesses) return lines;
  if (guesses.graft === 1) return [...lines, 'All of it is well inside “graft”.'];
  if (guesses.own === 1) return [...lines, 'All of it is well inside “own roots”.'];
  const parts = [
    [guesses.graft, 'grafting wins'],
    [guesses.own, 'own roots win'],
    [guesses.neither, 'there is no clear difference'],
  ] as const;
  return [...lines, `Of that, ${parts.flatMap(([share, words]) => (share > 0 ? [`in ${ofTen(share)} ${words}`] : [])).join(', ')}.`];
}

/** What would have to be otherwise for the answer to turn: a condition, and what it means. */
export function turnsInWords(answer: GraftAnswer): readonly { readonly when: string; readonly then: string }[] {
  const { map, standing, roots } = answer;
  const turns: { when: string; then: string }[] = [];
  if (map) {
    turns.push(monthsTurn(monthsAtTake(map, standing.middle.take), map.to));
    const { take, low, high } = takeAtMonths(map, standing.middle.halfLife);
    turns.push(
      take <= 0 && high <= 0
        ? { when: 'No take is too low', then: 'for weak ones that die so soon, each graft that takes is a gain' }
        : { when: `Take under ${ofTen(take)}`, then: `own roots win below it (${ofTen(low)} to ${ofTen(high)})` },
    );
  }
  if (roots) {
    const { breakEven, points } = roots;
    const clearFrom = points.find(({ clear, difference }) => clear && difference.value > 0);
    if (breakEven)
      turns.push({
        when: `Weak roots under ${ofTen(breakEven.value)}`,
        then: `if the weakness sits in the roots that seldom (${ofTen(breakEven.low)} to ${ofTen(breakEven.high)}), own roots win`,
      });
    else if (clearFrom && clearFrom.rootChance > 0)
      turns.push({
        when: 'Weak tops, not roots',
        then: `if it never sits in the roots, grafting changes nothing; it pays ${clearFrom.rootChance <= 0.1 ? 'as soon as it sometimes does' : `from ${ofTen(clearFrom.rootChance)} on`}`,
      });
    else if (!clearFrom) turns.push({ when: 'Weak tops or roots', then: `${pay.noDifference}, wherever the weakness sits` });
  }
  return turns;
}

function monthsTurn({ value, low, high }: Turn, to: number): { when: string; then: string } {
  if (value !== null)
    return {
      when: `Half alive past ${monthsInWords(value)}`,
      then: `then they are almost as good as sound ones (${monthsInWords(low ?? value)} to ${high === null ? `over ${monthsInWords(to)}` : monthsInWords(high)})`,
    };
  if (low !== null)
    return { when: `Half alive past ${monthsInWords(low)}`, then: `${pay.noDifference} from there on; own roots win nowhere on the map at your take` };
  return { when: `Half alive past ${monthsInWords(to)}`, then: 'grafting still wins there; the map ends' };
}

/** The ranks of who should get a stock, in a sentence. */
export function stocksInWords(stocks: readonly StockUse[]): string {
  const [first, second] = stocks.filter(({ gain }) => gain.mean > 0);
  if (!first) return 'A stock gains nothing on any of these seedlings.';
  const name = ({ batch, name: of }: StockUse) => `${graftText.batches[batch]} of “${of}”`;
  const gains = (use: StockUse) =>
    use.picksByTen === null
      ? `ten stocks bring ${decimals(10 * use.gain.mean)} more trees into bearing`
      : `ten stocks gain ${decimals(use.picksByTen.mean)} picks`;
  const never = stocks.filter(({ gain }) => gain.p90 < 0);
  return [
    `First ${name(first)}: ${gains(first)}, and in ${ofTen(first.first)} of what your guesses allow nothing else gains more.`,
    ...(second ? [`Then ${name(second)}: ${gains(second)}.`] : []),
    ...(never.length > 0 ? [`Not ${listed(never.map(name))}: a graft that fails costs more there than it saves.`] : []),
  ].join(' ');
}

/** A point of the line over the roots, read aloud. */
export function rootsWords({ rootChance, grafted, own, difference, clear }: RootsPoint): string {
  const say = ({ value, low, high }: Interval) => `${percent(value)} (${percentRange(low, high)})`;
  return `In the roots ${halvesOfTen(rootChance)}: grafted ${say(grafted)}, on own roots ${say(own)}; ${clear ? `grafting gains ${differenceInWords(difference, true)}` : pay.noDifference} (${differenceRange(difference)}).`;
}

/** What the line over the roots says. */
export function rootsNotes({ points, breakEven }: RootsLine, rootChance: number): readonly string[] {
  const [never, always] = [points[0], points.at(-1)];
  if (!never || !always) return [];
  const here = points.reduce((near, point) => (Math.abs(point.rootChance - rootChance) < Math.abs(near.rootChance - rootChance) ? point : near), never);
  const gain = (point: RootsPoint) =>
    point.clear
      ? `grafting ${point.difference.value > 0 ? 'gains' : 'loses'} ${differenceInWords(absolute(point.difference), true).replace('+', '')} (${differenceRange(point.difference)})`
      : `${pay.noDifference} (${differenceRange(point.difference)})`;
  return [
    `You say that the weakness sits in the roots ${halvesOfTen(rootChance)}: there, ${gain(here)}.`,
    `If it always did, ${gain(always)}; if it never did, ${gain(never)}.`,
    ...(breakEven ? [`Break-even is at ${ofTen(breakEven.value)} (${ofTen(breakEven.low)} to ${ofTen(breakEven.high)}).`] : []),
  ];
}

const absolute = (interval: Interval): Interval => ({ ...interval, value: Math.abs(interval.value) });
