import type { RankedFact, UnknownsAnswer } from '../../../src/decisions/unknowns.ts';

const interval = (value: number, low: number, high: number) => ({ value, low, high });

const fact = (changes: Partial<RankedFact> & Pick<RankedFact, 'id' | 'kind' | 'name'>): RankedFact => ({
  of: '',
  trait: '',
  places: [],
  numbers: [],
  restsOn: 'guess',
  first: interval(0, 0, 0.01),
  total: interval(0.01, 0, 0.03),
  more: null,
  changed: { changed: 20, of: 800 },
  clear: false,
  alternatives: [],
  learn: { count: 10, hours: 3.5, trees: 10, seasons: 2, afterFruit: false },
  ...changes,
});

const roots = fact({
  id: 'facts/roots',
  kind: 'roots',
  name: 'weakness sits in the roots',
  first: interval(0.65, 0.58, 0.74),
  total: interval(0.68, 0.5, 0.9),
  clear: true,
  alternatives: [
    { name: 'yes', belief: 0.65, chance: interval(0.73, 0.7, 0.75), trulyGood: interval(0.83, 0.8, 0.86) },
    { name: 'no', belief: 0.35, chance: interval(0.34, 0.31, 0.37), trulyGood: interval(0.71, 0.66, 0.75) },
  ],
});
const set = fact({
  id: 'crosses/wide/set',
  kind: 'set',
  name: 'pear × quince',
  restsOn: 'counted',
  first: interval(0.12, 0.09, 0.16),
  total: interval(0.14, 0.07, 0.2),
  clear: true,
  more: { way: 'up', difference: interval(0.12, 0.1, 0.13) },
  learn: { count: 40, hours: 1.2, trees: 0, seasons: 1, afterFruit: false },
});

/** Two facts that matter, one too small, and one that changed no future; two plans that change places. */
export const SAMPLE: UnknownsAnswer = {
  question: 'unknowns',
  plan: 'wide-rescue',
  done: true,
  futures: 1000,
  clear: true,
  cannotSay: null,
  chance: interval(0.57, 0.56, 0.59),
  trulyGood: interval(0.8, 0.78, 0.82),
  luck: interval(0.8, 0.78, 0.81),
  measurable: true,
  facts: [
    roots,
    set,
    fact({ id: 'families', kind: 'families', name: '', restsOn: 'unsaid', learn: { count: 0, hours: null, trees: 0, seasons: 0, afterFruit: true } }),
    fact({ id: 'crosses/pear/set', kind: 'set', name: 'pear × pear', restsOn: 'practice', changed: { changed: 0, of: 960 } }),
  ],
  worth: 'facts/roots',
  flips: [
    {
      fact: 'facts/roots',
      plans: ['open-seed', 'wide-rescue'],
      under: [
        { alternative: 'no', belief: 0.35, chances: [interval(0.53, 0.5, 0.56), interval(0.34, 0.31, 0.37)], difference: interval(0.19, 0.13, 0.25) },
        { alternative: 'yes', belief: 0.65, chances: [interval(0.53, 0.5, 0.56), interval(0.73, 0.7, 0.75)], difference: interval(-0.2, -0.25, -0.13) },
      ],
    },
  ],
};
