import type { Estimate } from '../model/estimate.ts';
import { sourceOf } from '../model/estimate-forms.ts';
import { meanOf } from '../model/mean.ts';
import type { Cross, Kind, Programme, Stock } from '../model/programme.ts';
import type { CountsNote } from './learned-types.ts';

/** Tells whether the note of a source is one that these counts have put there. */
export function isCountsNote(programme: Programme, note: CountsNote): (written: string | undefined) => boolean {
  const years = programme.log.batches.map(({ year }) => year);
  if (years.length === 0) return () => false;
  const [first, last] = [Math.min(...years), Math.max(...years) + LATER];
  const notes = new Set<string>();
  for (let from = first; from <= last; from += 1) for (let to = from; to <= last; to += 1) notes.add(note(from, to));
  return (written) => written !== undefined && notes.has(written);
}

/** Tells whether an estimate was put there from the counts of this log. */
export function isFromCounts(programme: Programme, note: CountsNote): (estimate: Estimate) => boolean {
  const known = isCountsNote(programme, note);
  return (estimate) => {
    const source = sourceOf(estimate);
    return source?.kind === 'counted' && known(source.note);
  };
}

/** What a document says of the luck of the spring unless it says otherwise (src/model/orchard.ts). */
const USUAL_LUCK = 0.1;
/** Years after its bloom in which a batch may still be counted. */
const LATER = 60;

/**
 * Returns the programme with every estimate that came from these counts as one plain number, which weighs as little as a guess does, and the
 * luck of the spring as it usually is where it came from them: the same counts must not be learned from twice.
 */
export function beforeCounts(programme: Programme, note: CountsNote): Programme {
  const mine = isFromCounts(programme, note);
  const known = isCountsNote(programme, note);
  const { weather } = programme;
  const plain = (estimate: Estimate): Estimate => (mine(estimate) ? meanOf(estimate) : estimate);
  return {
    ...programme,
    weather: {
      ...weather,
      springLuckSet: known(weather.springLuckSetSource) ? USUAL_LUCK : weather.springLuckSet,
      springLuckGermination: known(weather.springLuckGerminationSource) ? USUAL_LUCK : weather.springLuckGermination,
    },
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
