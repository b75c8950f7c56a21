import type { MeasuredTrait } from '../model/programme.ts';
import type { Estimate } from '../model/estimate.ts';
import { MEASURES, type Answers } from './answers.ts';
import { range } from './guesses.ts';

const HERITABILITY = { low: 0.2, likely: 0.4, high: 0.6 } as const;
const REPEATABILITY = { low: 0.4, likely: 0.6, high: 0.8 } as const;
const NAMES = { taste: 'taste', size: 'fruit size', keeping: 'keeping' } as const;

/** What must be good besides, as a measured trait; nothing if nothing must. Spread and inheritance are guesses, marked as such. */
export function measuredOf({ goal }: Answers): MeasuredTrait | undefined {
  const { measure, ordinary, least } = goal;
  const usual = MEASURES[measure];
  if (!usual || measure === 'none') return undefined;
  const middle = Math.max(ordinary, least, 1);
  const sd = usual.spread * middle;
  return {
    type: 'measured',
    id: measure,
    name: NAMES[measure],
    unit: usual.unit,
    mean: ordinary,
    sd: range(0.6 * sd, sd, 1.6 * sd, 'How far ordinary trees lie apart in one season: not measured.'),
    heritability: range(
      HERITABILITY.low,
      HERITABILITY.likely,
      HERITABILITY.high,
      'About two fifths of what is seen in one season is inherited: a middling trait.',
    ),
    repeatability: range(REPEATABILITY.low, REPEATABILITY.likely, REPEATABILITY.high, 'Seasons of one tree agree middling well.'),
    travels: range(0.25, 0.5, 0.75, 'Half of a lasting difference goes with the graft.'),
    yearShare: range(0.2, 0.5, 0.8, 'Half of the season’s luck is common to all trees.'),
    inbreeding: 0,
    genes: [],
    note: 'Spread and inheritance of this measure are guesses: a few tasted seedlings say more.',
  };
}

/**
 * True value of the breeder's tree from what was seen in n seasons: nearer to the ordinary tree, by n·h²/(1 + (n − 1)·t), since a tree is
 * remembered for its good seasons and the ordinary one is the safer bet.
 *
 * **Source:** regression of breeding value on a mean of n records, Falconer & Mackay 1996, ch. 8 and 10 (from memory).
 */
export function shrunk(seen: number, ordinary: number, seasons: number): Estimate {
  const weight = (seasons * HERITABILITY.likely) / (1 + (seasons - 1) * REPEATABILITY.likely);
  const value = Number((ordinary + weight * (seen - ordinary)).toPrecision(4));
  return {
    value,
    source: {
      kind: 'counted',
      note: `You saw ${String(seen)} over ${String(seasons)} ${seasons === 1 ? 'season' : 'seasons'}; the true value is likely nearer to the ordinary ${String(ordinary)}.`,
    },
  };
}
