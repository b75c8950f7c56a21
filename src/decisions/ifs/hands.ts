import { certain, soon, yearsFrom, type If } from './way.ts';

const TIMES = 2;

/** A helper in bloom: twice the hands from that spring on, and twice the flowers pollinated, since a plan is made for the hands there are. */
export const hands: If = {
  id: 'hands',
  ways(programme, { generations }) {
    const { startYear, lastYear, limits } = programme;
    const byHand = generations.filter(({ pollen }) => pollen !== 'open');
    if (byHand.length === 0) return 'noHands';
    return [
      {
        if: 'hands',
        form: 'twice',
        garden: null,
        year: soon(programme),
        years: yearsFrom(startYear, lastYear),
        variant: (from) => certain(programme, { hands: { from, until: lastYear, times: TIMES } }),
        hands: {
          manage: Math.floor(limits.bloomDays * limits.hoursADay * limits.flowersAnHour),
          wanted: Math.max(...byHand.map(({ flowers }) => flowers)),
        },
      },
    ];
  },
};
