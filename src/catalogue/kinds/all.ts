import type { PairFigures } from '../build.ts';
import type { CatalogueKind } from '../types.ts';
import { almond, almondWithin } from './almond.ts';
import { apple, appleWithin } from './apple.ts';
import { apricot, apricotWithin } from './apricot.ts';
import { chestnut, chestnutWithin } from './chestnut.ts';
import { citrus, citrusWithin } from './citrus.ts';
import { europeanPlum, europeanPlumWithin } from './european-plum.ts';
import { japanesePlum, japanesePlumWithin } from './japanese-plum.ts';
import { peach, peachWithin } from './peach.ts';
import { pear, pearWithin } from './pear.ts';
import { persimmon, persimmonWithin } from './persimmon.ts';
import { quince, quinceWithin } from './quince.ts';
import { sourCherry, sourCherryWithin } from './sour-cherry.ts';
import { sweetCherry, sweetCherryWithin } from './sweet-cherry.ts';
import { walnut, walnutWithin } from './walnut.ts';

/** In the order shown. */
export const kinds: readonly CatalogueKind[] = [
  apple,
  pear,
  quince,
  europeanPlum,
  japanesePlum,
  apricot,
  peach,
  sweetCherry,
  sourCherry,
  almond,
  walnut,
  chestnut,
  persimmon,
  citrus,
];

/** Crosses within a kind. */
export const within: readonly PairFigures[] = [
  appleWithin,
  pearWithin,
  quinceWithin,
  europeanPlumWithin,
  japanesePlumWithin,
  apricotWithin,
  peachWithin,
  sweetCherryWithin,
  sourCherryWithin,
  almondWithin,
  walnutWithin,
  chestnutWithin,
  persimmonWithin,
  citrusWithin,
];
