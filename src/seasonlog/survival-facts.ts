import type { Programme } from '../model/programme.ts';
import type { LeftOut, PlacedBatch } from './batches.ts';
import { fullest, lossesOf, springOf, timeOf, wintersBy } from './counts.ts';
import type { Stretch } from './stretch.ts';
import { treeStretches } from './survival-of-trees.ts';

/**
 * Finds stretches between counts of the living, from those that came up; where nobody counted the living, from the trees of the batch and the
 * years in which they died. What an event took is taken from those at risk of the stretch it fell in. A count that is higher than the one
 * before does not add up and is passed over.
 */
export function stretchesOf(programme: Programme, placed: readonly PlacedBatch[]): { readonly facts: Stretch[]; readonly leftOut: LeftOut[] } {
  const facts: Stretch[] = [];
  const leftOut: LeftOut[] = [];
  for (const one of placed) {
    const { batch, germinates } = one;
    const start = springOf(programme, germinates);
    const up = fullest(batch, 'cameUp');
    const dated = batch.counts
      .flatMap((count) => (count.stage === 'alive' && count.when !== undefined ? [{ time: timeOf(programme, count.when), count: count.count }] : []))
      .sort((a, b) => a.time - b.time);
    const { seedlings } = lossesOf(programme, one);
    const taken = (from: number, to: number): number => seedlings.reduce((sum, { time, lost }) => (time > from && time <= to ? sum + lost : sum), 0);
    if (dated.length === 0) {
      const found = treeStretches(programme, one, taken);
      facts.push(...found.facts);
      leftOut.push(...found.leftOut);
    }
    let before = up ? { time: start, count: up.count } : undefined;
    for (const next of dated) {
      if (before && next.time > before.time) {
        const lost = taken(before.time, next.time);
        const atRisk = before.count - lost;
        if (lost > 0) leftOut.push({ batch: batch.id, name: batch.name, why: 'eventLoss', about: `${String(lost)} seedlings` });
        if (next.count > atRisk) {
          leftOut.push({ batch: batch.id, name: batch.name, why: 'doesNotAddUp', about: `alive: ${String(next.count)} of ${String(atRisk)}` });
          continue;
        }
        facts.push({
          batch: batch.id,
          kind: one.kind.id,
          year: Math.floor(next.time),
          age: before.time - start,
          until: next.time - start,
          atRisk,
          alive: next.count,
        });
      }
      before = next;
    }
  }
  return { facts, leftOut };
}

/** Winters of a stretch: whether the first is among them, and which later ones. */
export function wintersOf({ age, until }: Pick<Stretch, 'age' | 'until'>): { readonly first: boolean; readonly later: readonly number[] } {
  const [from, to] = [wintersBy(age), wintersBy(until)];
  const winters = Array.from({ length: Math.max(0, to - from) }, (_, i) => from + 1 + i);
  return { first: winters.includes(1), later: winters.filter((winter) => winter > 1) };
}
