import type { Learned, Put } from '../../seasonlog/learned-types.ts';
import { learnable, myCounts } from '../../text/log-learned.ts';
import { countedWords, rateNumber, rateRange, rateUnits, rowName, whereWords } from '../../text/log-lessons.ts';
import type { ShownRate } from './rates-picture.ts';

/**
 * A learned number as the picture shows it. One that the programme uses stands as it was taken: weighing the same counts against it once more
 * would say too much.
 * @param back edits that bring back what stood there before; null where nobody knows
 */
export function shownRate(learned: Learned, back: readonly Put[] | null): ShownRate {
  const { id, what, of, scale, used, newer, before, after, nextSpring, counts, curves } = learned;
  const row = {
    id,
    name: learnable[what],
    of: [of.name, of.route ?? ''].filter((part) => part !== '').join(', '),
    unit: rateUnits[what],
    scale,
    counted: countedWords(what, counts),
    where: whereWords({ ...counts, batches: counts.batches.length }),
    source: myCounts(counts.from, counts.to),
  };
  // Taken from fewer seasons than were counted since: to be taken again.
  if (!used || newer || !before) return { ...row, used: false, before, after, nine: after.nine, nextSpring: nextSpring ?? null, curves, act: 'use' };
  return {
    ...row,
    used: true,
    before: null,
    after: { mean: before.mean, low: before.low ?? before.mean, high: before.high ?? before.mean },
    nine: null,
    nextSpring: null,
    curves: { to: curves.to, before: null, after: curves.before ?? [] },
    act: back ? 'back' : 'none',
  };
}

/** Numbers of the programme outside 8 in 10 of what the counts say, the farthest off first. */
export function farOff(rows: readonly ShownRate[]): { readonly name: string; readonly now: string; readonly was: string }[] {
  return rows
    .flatMap((row) => {
      const { before, after, used, scale } = row;
      if (used || !before || (before.mean >= after.low && before.mean <= after.high)) return [];
      const off = Math.abs(before.mean - after.mean) / Math.max(1e-9, after.high - after.low);
      const unit = scale === 'share' ? ' in\u00a0100' : ` ${scale}`;
      return [{ off, name: rowName(row), now: `${rateRange(after, scale)}${unit}`, was: rateNumber(before.mean, scale) }];
    })
    .sort((a, b) => b.off - a.off);
}
