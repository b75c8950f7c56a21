import type { CopiesAnswer, CopiesWay } from '../decisions/copies.ts';
import { counted, inTenWords, percent, percentRange } from './charts.ts';
import type { Piece } from './headline.ts';
import { besideEachOther, differenceInWords, differenceRange, halves, trulyOfTen } from './pay-figures.ts';
import { pay } from './pay.ts';

const NB = '\u00a0';

/** "1 copy", "2 copies", "2 in two gardens". */
export function wayName({ copies, gardens }: Pick<CopiesWay, 'copies' | 'gardens'>, short = false): string {
  if (gardens > 1) return short ? `${String(copies)}${NB}apart` : `${String(copies)} in ${counted(gardens)} gardens`;
  return `${String(copies)}${NB}${copies === 1 ? 'copy' : 'copies'}`;
}

export const copiesText = {
  asking: 'One copy of the source tree, or more?',
  about: 'A tree is lost when its last copy is; a garden can be lost as a whole.',
  choice: 'The tree',
  method:
    'Chance of losing the tree: reckoned year by year in 400 draws of your guesses, each garden lost as a whole or standing, each copy in it dying on its own; beside it what the same futures counted. The plan is run on the same futures with every number of copies; intervals of differences: Bonett & Price 2012. A second garden that the programme does not have is taken to be like the first.',
  title: 'The chance that the last copy is lost, by year',
  up: 'lost by then',
  slider: 'Year to read',
  none: 'no year chosen',
  keys: '← → moves the year.',
  heads: (lastYear: number) => [
    'Copies',
    `Tree lost by ${String(lastYear)}`,
    'Proven tree',
    'Truly good, of those',
    'Half by',
    'Seedlings',
    'Hours, all years',
    'Against the tree as it stands',
  ],
  asItStands: 'as the tree stands',
  counted: (low: number, high: number) => `counted ${percentRange(low, high)}`,
  end: (name: string, lost: number) => `${name} ${percent(lost)}`,
  loses: 'How soon it is lost',
  noGarden: 'No garden that can be lost as a whole is entered, so copies in a second one are not told apart.',
  plan: 'What it does to the plan',
  year: 'Year',
} as const;

const standing = ({ ways }: CopiesAnswer): CopiesWay | undefined => ways.find(({ asItStands }) => asItStands);
const lastOf = ({ lostBy }: CopiesWay): number => lostBy.at(-1) ?? 0;

/**
 * The way to advise: of those clearly better than the tree as it stands, the one with the fewest copies and gardens that gains as much as
 * the best, as far as the futures can tell; null where none is clearly better.
 */
export function advised({ ways }: CopiesAnswer): CopiesWay | null {
  const better = ways.filter(({ minusAsItStands }) => minusAsItStands !== null && minusAsItStands.clear && minusAsItStands.chance.value > 0);
  const gain = (way: CopiesWay) => way.minusAsItStands?.chance ?? { value: 0, low: 0, high: 0 };
  const most = better.reduce<CopiesWay | null>((best, way) => (best && gain(best).value >= gain(way).value ? best : way), null);
  if (!most) return null;
  const enough = better.filter((way) => gain(way).high >= gain(most).low);
  return enough.reduce((least, way) => (way.copies < least.copies || (way.copies === least.copies && way.gardens < least.gardens) ? way : least), most);
}

/** The section's finding. */
export function copiesFinding(answer: CopiesAnswer): readonly Piece[] {
  const now = standing(answer);
  const better = advised(answer);
  if (!now) return [{ text: copiesText.asking }];
  if (!better?.minusAsItStands) return [{ text: `More copies of ${answer.name}: ${pay.noDifference} to this plan` }];
  const gain = differenceInWords(better.minusAsItStands.chance, true).replace('+', '');
  return [
    {
      text: `${wayName(better).replace(/^\d+/, (n) => counted(Number(n)).replace(/^./, (letter) => letter.toUpperCase()))} of ${answer.name} would gain ${gain}`,
    },
  ];
}

/** The danger to the tree, in sentences. */
export function danger(answer: CopiesAnswer, lastYear: number): readonly string[] {
  const now = standing(answer);
  const better = advised(answer) ?? answer.ways.find((way) => now && way.copies === now.copies + 1 && way.gardens === now.gardens);
  if (!now) return [];
  const [from, to] = better ? besideEachOther(lastOf(now), lastOf(better)) : [inTenWords(lastOf(now)), ''];
  return [
    `With ${wayName(now)}, as it stands, ${from} futures lose ${answer.name} by ${String(lastYear)}${better ? `; with ${wayName(better)}, ${to}` : ''}.`,
    `Counted in 400 futures: ${percent(now.lostCounted.value)} (${percentRange(now.lostCounted.low, now.lostCounted.high)}).`,
  ];
}

/** What one graft takes: “a quarter of an hour”, “20 minutes”, “1½ hours”. */
function graftHours(hours: number): string {
  if (hours === 0.25) return 'a quarter of an hour';
  if (hours === 0.5) return 'half an hour';
  if (hours < 1) return `${String(Math.round(60 * hours))}${NB}minutes`;
  return `${halves(hours)}${NB}${hours === 1 ? 'hour' : 'hours'}`;
}

/**
 * What copies do to the plan, in sentences.
 * @param perGraft hours that a graft takes; undefined where none are stated
 */
export function copiesPlan(answer: CopiesAnswer, mark: string, lastYear: number, perGraft: number | undefined): readonly string[] {
  const now = standing(answer);
  if (!now) return [];
  const better = advised(answer);
  const truly = trulyOfTen(now.outcome.trulyGood);
  const chance = (way: CopiesWay) => `${percent(way.outcome.chance.value)} (${percentRange(way.outcome.chance.low, way.outcome.chance.high)})`;
  return [
    better?.minusAsItStands
      ? `Plan ${mark} has a proven tree by ${String(lastYear)} in ${chance(now)} of futures; with ${wayName(better)} in ${chance(better)}, ${differenceInWords(better.minusAsItStands.chance, true)} (${differenceRange(better.minusAsItStands.chance)}).`
      : `Plan ${mark} has a proven tree by ${String(lastYear)} in ${chance(now)} of futures, and ${pay.noDifference} with any of these numbers: it needs ${answer.name} only while that still stands.`,
    ...(better && perGraft
      ? [`A copy more is one graft: ${graftHours(perGraft)} of yours. Where the hours of all years rise, it is because more futures get further.`]
      : []),
    ...(truly === null ? [] : [`${pay.trulyGood(truly).replace(/^o/, 'O')}.`]),
  ];
}

/** A year, read aloud. */
export function yearWords({ ways, startYear, name }: CopiesAnswer, at: number): string {
  return `By ${String(startYear + at)} ${name} is lost: ${ways.map((way) => `${wayName(way)} ${percent(way.lostBy[at] ?? 0)}`).join(', ')}.`;
}
