import type { BreakEven } from './break-even.ts';
import type { GraftMap } from './graft-map.ts';

/** Where the answer turns, with the 95 % interval of the line; null beyond the end of the map. */
export interface Turn {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * Returns the months by which half of the weak must still be dead for grafting to win at this take: where the break-even line first
 * comes up to it, linear in the logarithm of the months between the map's columns.
 * @param take share of grafts that take
 */
export function monthsAtTake({ halfLives, line }: GraftMap, take: number): Turn {
  const first = (edge: (at: BreakEven) => number): number | null => {
    const at = line.findIndex((point) => edge(point) > take);
    const [before, after, from, to] = [line[at - 1], line[at], halfLives[at - 1], halfLives[at]];
    if (after === undefined || to === undefined) return null;
    if (before === undefined || from === undefined) return to;
    return from * (to / from) ** ((take - edge(before)) / (edge(after) - edge(before)));
  };
  // The line's upper edge is reached earliest.
  return { value: first((point) => point.take), low: first(({ high }) => high), high: first(({ low }) => low) };
}

/**
 * Returns the take above which grafting wins where half of the weak are dead by so many months: the line read at them.
 * @param months within the map; beyond its columns the outermost one is read
 */
export function takeAtMonths({ halfLives, line }: GraftMap, months: number): BreakEven {
  const above = halfLives.findIndex((at) => at >= months);
  const after = line[above] ?? line.at(-1) ?? { take: 0, low: 0, high: 1 };
  const [before, from, to] = [line[above - 1], halfLives[above - 1], halfLives[above]];
  if (before === undefined || from === undefined || to === undefined) return after;
  const share = Math.log(months / from) / Math.log(to / from);
  const between = (edge: keyof BreakEven) => before[edge] + share * (after[edge] - before[edge]);
  return { take: between('take'), low: between('low'), high: between('high') };
}
