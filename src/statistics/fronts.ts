/** Two things of which less is better, by means. */
export interface Point {
  readonly years: number;
  readonly trees: number;
}

/** Whether a is nowhere worse than b and somewhere better. */
export function dominates(a: Point, b: Point): boolean {
  return a.years <= b.years && a.trees <= b.trees && (a.years < b.years || a.trees < b.trees);
}

/**
 * Sorts points into fronts: those that nothing dominates, then those that only the first front dominates, and so on.
 * @returns positions, front by front, each front in the order given
 *
 * **Source:** Deb, K., Pratap, A., Agarwal, S. & Meyarivan, T. (2002) IEEE Trans. Evol. Comput. 6:182–197, non-dominated sorting.
 */
export function fronts(points: readonly Point[]): readonly (readonly number[])[] {
  const out: number[][] = [];
  let left = points.map((_, i) => i);
  while (left.length > 0) {
    const now = left.filter((i) => !left.some((j) => isAhead(points, j, i)));
    out.push(now);
    left = left.filter((i) => !now.includes(i));
  }
  return out;
}

function isAhead(points: readonly Point[], j: number, i: number): boolean {
  const [a, b] = [points[j], points[i]];
  return a !== undefined && b !== undefined && dominates(a, b);
}

/**
 * Returns how much room each point of one front has: the sum over both things of the gap between its neighbours, as a share of the whole
 * range; the ends have endless room.
 *
 * **Source:** Deb et al. (2002), crowding distance.
 */
export function roomOf(points: readonly Point[]): readonly number[] {
  const room = points.map(() => 0);
  for (const of of ['years', 'trees'] as const) {
    const order = points.map((_, i) => i).sort((a, b) => (points[a]?.[of] ?? 0) - (points[b]?.[of] ?? 0) || a - b);
    const at = (place: number) => points[order[place] ?? -1]?.[of] ?? 0;
    const range = at(order.length - 1) - at(0);
    order.forEach((i, place) => {
      const end = place === 0 || place === order.length - 1;
      room[i] = (room[i] ?? 0) + (end ? Infinity : range > 0 ? (at(place + 1) - at(place - 1)) / range : 0);
    });
  }
  return room;
}

/**
 * Ranks points: front by front, and in each front those last that are most crowded, taken out one at a time.
 * @returns positions, best first; of equals the earlier comes first
 */
export function ranking(points: readonly Point[]): readonly number[] {
  return fronts(points).flatMap((front) => {
    const crowdedFirst: number[] = [];
    let left = [...front];
    while (left.length > 0) {
      const room = roomOf(left.flatMap((i) => points[i] ?? []));
      const tightest = room.reduce((least, value, i) => (value <= (room[least] ?? Infinity) ? i : least), 0);
      crowdedFirst.push(left[tightest] ?? 0);
      left = left.toSpliced(tightest, 1);
    }
    return crowdedFirst.reverse();
  });
}
