import type { Estimate } from '../model/estimate.ts';
import { sourceOf } from '../model/estimate-forms.ts';
import { meanOf } from '../model/mean.ts';
import type { Cross, Kind, Programme, Stock } from '../model/programme.ts';
import type { CountsNote } from './learned-types.ts';

/** Tells whether an estimate was put there from the counts of this log. */
export function isFromCounts(programme: Programme, note: CountsNote): (estimate: Estimate) => boolean {
  const years = programme.log.batches.map(({ year }) => year);
  if (years.length === 0) return () => false;
  const [first, last] = [Math.min(...years), Math.max(...years) + LATER];
  const notes = new Set<string>();
  for (let from = first; from <= last; from += 1) for (let to = from; to <= last; to += 1) notes.add(note(from, to));
  return (estimate) => {
    const source = sourceOf(estimate);
    return source?.kind === 'counted' && notes.has(source.note);
  };
}

/** Years after its bloom in which a batch may still be counted. */
const LATER = 60;

/**
 * Returns the programme with every estimate that came from these counts as one plain number, which weighs as little as a guess does: the
 * same counts must not be learned from twice.
 */
export function beforeCounts(programme: Programme, note: CountsNote): Programme {
  const mine = isFromCounts(programme, note);
  const plain = (estimate: Estimate): Estimate => (mine(estimate) ? meanOf(estimate) : estimate);
  return {
    ...programme,
    crosses: programme.crosses.map((cross): Cross => ({
      ...cross,
      set: plain(cross.set),
      germination: plain(cross.germination),
      routes: cross.routes.map((route) => ({ ...route, germination: plain(route.germination) })),
      ...(cross.weakness ? { weakness: { ...cross.weakness, share: plain(cross.weakness.share), course: plainCourse(cross.weakness.course, plain) } } : {}),
    })),
    kinds: programme.kinds.map((kind): Kind => ({
      ...kind,
      firstYearLoss: plain(kind.firstYearLoss),
      yearlyLoss: plain(kind.yearlyLoss),
      neverFruits: plain(kind.neverFruits),
      firstFruit:
        'half' in kind.firstFruit ? { ...kind.firstFruit, half: plain(kind.firstFruit.half), ninety: plain(kind.firstFruit.ninety) } : kind.firstFruit,
    })),
    stocks: programme.stocks.map((stock): Stock => ({ ...stock, takeTender: plain(stock.takeTender), takeRipe: plain(stock.takeRipe) })),
  };
}

type Course = NonNullable<Cross['weakness']>['course'];
const plainCourse = (course: Course, plain: (estimate: Estimate) => Estimate): Course => ('halfLife' in course ? { halfLife: plain(course.halfLife) } : course);
