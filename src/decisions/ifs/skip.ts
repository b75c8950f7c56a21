import { certain, firstSpring, yearsFrom, type If } from './way.ts';

/**
 * Nothing is pollinated before that spring, and the last judging year stays. Trees age and are lost meanwhile; frosts, seasons, losses, and
 * the luck of set of each pair in each spring are those of the calendar year, so they are shared. Seeds and seedlings are drawn for the year
 * in which they come, and are new ones.
 */
export const skip: If = {
  id: 'skip',
  ways(programme, plan) {
    const first = firstSpring(programme, plan);
    if (first >= programme.lastYear) return 'tooShort';
    return [
      {
        if: 'skip',
        form: 'begins',
        garden: null,
        year: first + 1,
        years: yearsFrom(first, programme.lastYear),
        variant: (begins) => certain(programme, { begins }),
      },
    ];
  },
};
