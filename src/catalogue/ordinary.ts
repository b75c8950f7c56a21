/** Figures that hold for any ordinary tree, and those used where a kind has none of its own. */
import { guess, practice, published, remembered } from './sources.ts';

export const NORMAL = practice(1, 'high', 'By definition: 1 is the ordinary tree of its kind.');
export const NEVER = guess([0, 0.01, 0.05], 'Nobody counts the seedlings that never fruit; a healthy one nearly always does in the end.');
export const FAMILIES = guess(
  [0.05, 0.15, 0.25],
  'No spread between families was found printed; among the seedlings of one family a fifth to a third is usual.',
);

export const NURSERY_LOSS = remembered(
  [0.05, 0.1, 0.15],
  'low',
  'Ordinary losses of potted seedlings in the first year, 5–15 %: general nursery experience, no count.',
);
export const PEACH_LOSS = published(
  [0.014, 0.03, 0.1],
  'middling',
  'Minas and others, peach trial begun 2017: over 96 % alive after 3 years on six good sites, under 75 % on three bad ones; so 1.4 and 9 % a year, 10 % on the worst stock.',
);
export const TREE_LOSS = guess(
  [0.01, 0.02, 0.06],
  'Not counted for seedlings of this kind. Peach orchards lost 1.4 % a year on good sites and 9 % on bad ones.',
);

export const STRAY = guess(
  [0.001, 0.006, 0.015],
  'Not counted for this kind, without bags. On emasculated myrobalan plum 1.2 % of unbagged flowers set by stray pollen (Arbeloa and others 2006).',
);
export const STRAY_PLUM = published(
  [0.004, 0.012, 0.02],
  'high',
  'Arbeloa and others 2006: 1.2 % of emasculated, unbagged flowers set with no pollen given (myrobalan).',
);
export const EMPTY = guess([0, 0.05, 0.2], 'Fruits whose seed is hollow or missing; not counted for this kind.');
export const ONE_SEED = published(
  1,
  'high',
  'South African plum pollination note (year not noted): a stone holds two ovules and one normally aborts, so one seed a fruit.',
);
export const SOME_FLOWERS = guess([100, 300, 1000], 'Flowers in reach and fit to cross on one full-grown tree; a big tree has far more.');
export const ROUGH_REGULARITY = guess([0.6, 0.85, 1], 'Frost apart, most healthy trees have something to judge in most seasons; not counted.');
export const FROST_FULL = practice([0.7, 1, 1], 'middling', 'Flowers early: a spring frost finds it open.');
export const FROST_MIDDLE = practice([0.4, 0.8, 1], 'middling', 'Flowers in mid season: some frosts come before it.');
export const FROST_LATE = practice([0.1, 0.3, 0.6], 'middling', 'Flowers late: most frosts are over.');
