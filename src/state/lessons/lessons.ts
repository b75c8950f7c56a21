import type { Programme } from '../../model/programme.ts';
import { learnInheritance, type LearnedInheritance } from '../../seasonlog/inheritance.ts';
import type { LearnedRates } from '../../seasonlog/learned-types.ts';
import { learnRates } from '../../seasonlog/learned.ts';
import { myCounts } from '../../text/log-learned.ts';

/** What the season log of a programme teaches. */
export interface Lessons extends LearnedRates {
  readonly inheritance: readonly LearnedInheritance[];
}

/** Learns all there is to learn: up to some seconds of work for a long log, so never on the page's own thread. */
export const learnAll = (programme: Programme): Lessons => ({ ...learnRates(programme, myCounts), inheritance: learnInheritance(programme) });
