/** A key as pressed on a picture that is read with the arrow keys. */
export interface Press {
  readonly key: string;
  readonly shiftKey: boolean;
}

/** Steps of one key along an axis: arrows go one, Shift and Page keys more, Home and End to the ends. */
const STRIDE = 5;

/**
 * The year after a key: an arrow goes a year, with Shift five, Home and End to the ends, Escape to none.
 * @returns undefined for keys that mean nothing here
 */
export function yearAfter({ key, shiftKey }: Press, year: number | null, first: number, last: number): number | null | undefined {
  const step = shiftKey ? STRIDE : 1;
  const from = year ?? first;
  const to = (wanted: number) => Math.min(last, Math.max(first, wanted));
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return year === null ? first : to(from + step);
    case 'ArrowLeft':
    case 'ArrowDown':
      return year === null ? last : to(from - step);
    case 'PageUp':
      return to(from + STRIDE);
    case 'PageDown':
      return to(from - STRIDE);
    case 'Home':
      return first;
    case 'End':
      return last;
    case 'Escape':
      return null;
    default:
      return undefined;
  }
}

/**
 * The place after a key, for pictures read from place to place: left and right go on in reading order, up and down to the same place of
 * the group before or after, Home and End to the ends, Escape to none.
 * @param groups of each place, in reading order, the group it belongs to; places of a group stand together
 * @param at index of the place that is read; null for none
 * @returns undefined for keys that mean nothing here, or where there is no place
 */
export function placeAfter({ key, shiftKey }: Press, at: number | null, groups: readonly string[]): number | null | undefined {
  const last = groups.length - 1;
  if (last < 0) return undefined;
  switch (key) {
    case 'ArrowRight':
      return at === null ? 0 : shiftKey ? groupBy(1, at, groups) : Math.min(last, at + 1);
    case 'ArrowLeft':
      return at === null ? last : shiftKey ? groupBy(-1, at, groups) : Math.max(0, at - 1);
    case 'ArrowDown':
    case 'PageDown':
      return at === null ? 0 : groupBy(1, at, groups);
    case 'ArrowUp':
    case 'PageUp':
      return at === null ? last : groupBy(-1, at, groups);
    case 'Home':
      return 0;
    case 'End':
      return last;
    case 'Escape':
      return null;
    default:
      return undefined;
  }
}

/** The place of the next or last group that stands as far from its group's begin; a shorter group gives its last one. Without such a group it stays. */
function groupBy(by: 1 | -1, at: number, groups: readonly string[]): number {
  const own = groups[at];
  const start = groups.findIndex((group) => group === own);
  const wanted = by === 1 ? groups.findIndex((group, index) => index > at && group !== own) : start - 1;
  const other = groups[wanted];
  if (other === undefined) return at;
  const first = groups.indexOf(other);
  return Math.min(first + at - start, groups.lastIndexOf(other));
}
