export interface Box {
  /** Where the middle of the box would like to be, px. */
  readonly at: number;
  /** px along the same axis. */
  readonly height: number;
}

/**
 * Moves boxes along one axis so that none overlaps, each as near to its wish as the others allow (least squares; the order of the wishes is kept).
 * @returns the middle of each box, in the order given
 *
 * Boxes that touch are pooled and the pool sits at the mean of its members' wishes: isotonic regression by pooling adjacent violators.
 * **Source:** Barlow, R. E. et al. (1972) Statistical Inference under Order Restrictions, ch. 1 (from memory).
 */
export function spread(boxes: readonly Box[], from: number, to: number): number[] {
  const order = boxes.map((box, index) => ({ box, index })).sort((a, b) => a.box.at - b.box.at || a.index - b.index);
  // In these coordinates every box is a point: what lies before it is taken off.
  const pools: { sum: number; count: number; mean: number }[] = [];
  const offsets: number[] = [];
  let before = 0;
  for (const { box } of order) {
    offsets.push(before + box.height / 2);
    const wish = box.at - before - box.height / 2;
    before += box.height;
    pools.push({ sum: wish, count: 1, mean: wish });
    for (let last = pools.at(-1), earlier = pools.at(-2); last && earlier && earlier.mean > last.mean; last = pools.at(-1), earlier = pools.at(-2)) {
      pools.splice(-2, 2, { sum: earlier.sum + last.sum, count: earlier.count + last.count, mean: (earlier.sum + last.sum) / (earlier.count + last.count) });
    }
  }
  const room = Math.max(from, to - before);
  const starts = pools.flatMap(({ mean, count }) => Array.from({ length: count }, () => Math.min(room, Math.max(from, mean))));
  const middles = boxes.map(() => 0);
  order.forEach(({ index }, place) => (middles[index] = (starts[place] ?? 0) + (offsets[place] ?? 0)));
  return middles;
}
