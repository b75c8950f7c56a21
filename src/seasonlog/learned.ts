import type { Estimate } from '../model/estimate.ts';
import { readEstimate, sourceOf } from '../model/estimate-forms.ts';
import type { Path } from '../model/problem.ts';
import type { Programme } from '../model/programme.ts';
import { placeBatches } from './batches.ts';
import { fruitRows, lossRows, takeRows } from './kind-rows.ts';
import { groupBy } from './learned-row.ts';
import { statedCurve } from './learned-curves.ts';
import type { CountsNote, Learned, LearnedRates } from './learned-types.ts';
import { beforeCounts, isFromCounts } from './own-counts.ts';
import { statedOf } from './priors.ts';
import { shareRows, weakRows } from './share-rows.ts';
import { shareFacts } from './shares.ts';
import { stretchesOf } from './survival-facts.ts';
import { takeFacts } from './takes.ts';

/**
 * Learns every estimate of a programme that its season log speaks to, and says what was left out. The log is not changed.
 * @param note words for the source of a learned number
 */
export function learnRates(source: Programme, note: CountsNote): LearnedRates {
  const programme = beforeCounts(source, note);
  const mine = isFromCounts(source, note);
  const { placed, leftOut } = placeBatches(programme);
  const shares = shareFacts(programme, placed);
  const takes = takeFacts(placed);
  const stretches = stretchesOf(programme, placed);
  const losses = lossRows(programme, placed, stretches.facts, note);
  const fruiting = fruitRows(programme, placed, note);
  const weak = weakRows(programme, placed, stretches.facts, shares.facts, note);
  return {
    rates: [
      ...shareRows(programme, shares.facts, note),
      ...weak,
      ...groupBy(takes.facts, ({ stock }) => stock).flatMap((facts) => takeRows(programme, facts, note)),
      ...losses.rates,
      ...fruiting.rates,
    ].map((one): Learned => {
      const estimate = readEstimate(valueAt(source, one.path));
      if (estimate === undefined || !(one.used || mine(estimate))) return one;
      const newer = takenNote(source, one.path, estimate) !== note(one.counts.from, one.counts.to);
      return { ...one, used: true, newer, before: statedOf(estimate), curves: { ...one.curves, before: statedCurve(estimate, one.curves.to) } };
    }),
    leftOut: [...leftOut, ...shares.leftOut, ...takes.leftOut, ...stretches.leftOut, ...losses.leftOut, ...fruiting.leftOut],
  };
}

/** The note of where a number came from: its own, or the one beside it for a plain number. */
function takenNote(source: Programme, path: Path, estimate: Estimate): string | undefined {
  const beside = valueAt(source, [...path.slice(0, -1), `${String(path.at(-1))}Source`]);
  return sourceOf(estimate)?.note ?? (typeof beside === 'string' ? beside : undefined);
}

/** What stands at a place of the document. */
function valueAt(document: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (here, key) => (typeof here === 'object' && here !== null ? Object.entries(here).find(([name]) => name === String(key))?.[1] : undefined),
    document,
  );
}
