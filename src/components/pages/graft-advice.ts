import { meanOf } from '../../model/mean.ts';
import type { Cross, Generation, Programme } from '../../model/programme.ts';
import { bestGraftMonth, aliveAt, takeAt } from '../../statistics/graft.ts';
import { likely } from '../../text/app.ts';

/**
 * What a rescue graft saves of ten weak seedlings at the age chosen, and the month that saves most, at the middle of every estimate;
 * with the caution that the answer rests on a guess. Null where nothing weak is crossed or nothing is grafted.
 */
export function graftAdvice(programme: Programme, { rescue }: Generation, entries: readonly Cross[]): string | null {
  const weakness = entries.find((entry) => entry.weakness && 'halfLife' in entry.weakness.course)?.weakness;
  const stock = programme.stocks.find(({ id }) => id === rescue?.stock);
  if (!rescue || rescue.who === 'none' || !stock || !weakness || !('halfLife' in weakness.course)) return null;
  const onset = meanOf(weakness.onset);
  const halfLife = meanOf(weakness.course.halfLife);
  const wood = { takeTender: meanOf(stock.takeTender), takeRipe: meanOf(stock.takeRipe), ripeMonths: stock.ripeMonths };
  const take = takeAt(rescue.month, wood.takeTender, wood.takeRipe, wood.ripeMonths);
  const saved = 10 * aliveAt(rescue.month, onset, halfLife) * (1 - (1 - take) ** rescue.scions);
  const best = bestGraftMonth({ onset, halfLife, ...wood });
  // Before they look weak nobody knows which to graft.
  return likely.graftAdvice(rescue.who === 'weak' && rescue.month < onset ? { from: onset } : { saved, month: rescue.month }, best.month, rescue.scions);
}
