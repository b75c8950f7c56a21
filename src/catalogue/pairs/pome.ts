import type { PairFigures } from '../build.ts';
import { GUESSES } from '../kin.ts';
import { ROOTS_OR_TOP } from '../hybrid.ts';
import { guess, published } from '../sources.ts';

const { germination } = GUESSES.family;
const MANY_PEARS = 'Intergeneric hybridization between Japanese pear and apple, crosses of 1974–77';
const BORROWED = 'Counted on Japanese pear, borrowed for the European one.';

const lethal = {
  share: published(
    [0.95, 0.99, 1],
    'high',
    'Gonai and others 2006, Sci. Hortic. 109:43–47, Japanese pear × apple: lethal without special treatment, practically none lived on.',
  ),
  onset: guess([0.5, 1, 2], 'Over 80 % looked sound at 18 days in great warmth; no count in the open.'),
  course: { halfLife: guess([0.5, 1.5, 3], 'All dead within five months, in great warmth; no count by month.') },
  rootBorne: { chance: guess([0, 0.05, 0.3], 'Dying of cells in the top, which new roots should not cure; no graft was counted.') },
};

/** Pear, apple and quince: three genera, all counts on Japanese pear. */
export const pomePairs: readonly PairFigures[] = [
  {
    seed: 'pear',
    pollen: 'quince',
    set: published({ hits: 23, of: 60 }, 'high', `J. Jpn. Soc. Hort. Sci. 52:243–249 (1983): 23 fruits of 60 flowers. ${BORROWED}`),
    seedsPerFruit: published(4.22, 'high', `The same: 97 sound seeds in 23 fruits. ${BORROWED}`),
    seedsAtMost: 10,
    germination: published({ hits: 47, of: 97 }, 'high', `The same: 47 seedlings of 97 seeds. ${BORROWED}`),
    weakness: {
      share: published(
        [0.73, 0.85, 0.93],
        'middling',
        `The same: 40 of 47 seedlings were dead ten years on, most while young; ordinary losses are among them. The range is 95 % of such a count. ${BORROWED}`,
      ),
      onset: guess([1, 2, 6], 'Most died while young; no count by month.'),
      course: { halfLife: guess([2, 6, 24], 'Most died while young; no count by month.') },
      rootBorne: { chance: ROOTS_OR_TOP },
    },
  },
  {
    seed: 'pear',
    pollen: 'apple',
    set: published({ hits: 221, of: 1306 }, 'high', `${MANY_PEARS}: 221 fruits of 1,306 flowers. ${BORROWED}`),
    emptyFruit: published({ hits: 4, of: 221 }, 'high', 'The same: 4 of 221 fruits without seed.'),
    seedsPerFruit: published(5.4, 'high', 'The same: 1,172 seeds in 217 fruits that had any.'),
    seedsAtMost: 10,
    germination,
    weakness: lethal,
  },
  {
    seed: 'apple',
    pollen: 'pear',
    set: published({ hits: 118, of: 1152 }, 'high', `${MANY_PEARS}, the other way round: 118 fruits of 1,152 flowers. ${BORROWED}`),
    emptyFruit: published({ hits: 4, of: 118 }, 'high', 'The same: 4 of 118 fruits without seed.'),
    seedsPerFruit: published(3.18, 'high', 'The same: 362 seeds in 114 fruits that had any.'),
    seedsAtMost: 10,
    germination,
    weakness: lethal,
    note: 'Pollen of European pear grew poorly but its seedlings lived better; Japanese and Chinese pears the other way about. One line that lived, with fertile seedlings, is known (Fischer and others 2014, Mol. Breed. 34:817–828).',
  },
];
