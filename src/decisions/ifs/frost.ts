import { middleOf } from '../../model/estimate-forms.ts';
import { certain, firstSpring, yearsFrom, type If, type Way } from './way.ts';

/** A frost in bloom in the spring of the first cross, for sure or for sure not; the curve moves it through the years. */
export const frost: If = {
  id: 'frost',
  ways(programme, plan) {
    const year = firstSpring(programme, plan);
    if (!(middleOf(programme.weather.frostTakes) > 0)) return 'noFrost';
    if (year > programme.lastYear) return 'tooShort';
    const way = (falls: boolean): Way => ({
      if: 'frost',
      form: falls ? 'sure' : 'never',
      garden: null,
      year,
      years: falls ? yearsFrom(programme.startYear, programme.lastYear) : [],
      variant: (spring) => certain(programme, { frost: { year: spring, falls } }),
    });
    return [way(true), way(false)];
  },
};
