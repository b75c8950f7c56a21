import type { Programme } from '../../model/programme.ts';
import { halfWay, yearsFrom, type If, type Way } from './way.ts';

const MORE_YEARS = 10;
/** A programme knows no later year. */
const END_OF_YEARS = 3000;

/**
 * The breeder must stop: with nobody to go on, what is proven by the year before is all; with somebody, the years after the last judging
 * year count as well. One run to the end holds both curves, since a longer programme lives through the same years first.
 */
export const takeover: If = {
  id: 'takeover',
  ways(programme) {
    const { startYear, lastYear } = programme;
    const until = (year: number): Programme => (year === lastYear ? programme : { ...programme, lastYear: year });
    const longest = Math.min(END_OF_YEARS, lastYear + MORE_YEARS);
    const stopping: Way = {
      if: 'takeover',
      form: 'nobody',
      garden: null,
      year: halfWay(programme),
      years: yearsFrom(startYear + 1, lastYear + 1),
      variant: (year) => ({ programme: until(year - 1), plan: 0 }),
      whole: { variant: { programme, plan: 0 }, until: (year) => year - 1 },
    };
    const whole = { programme: until(longest), plan: 0 };
    const going: Way = {
      if: 'takeover',
      form: 'longer',
      garden: null,
      year: longest,
      years: yearsFrom(lastYear, longest),
      variant: (year) => (year === longest ? whole : { programme: until(year), plan: 0 }),
      whole: { variant: whole, until: (year) => year },
    };
    return [...(lastYear > startYear ? [stopping] : []), ...(longest > lastYear ? [going] : [])];
  },
};
