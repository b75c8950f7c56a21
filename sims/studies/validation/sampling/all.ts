import { crossSamplers } from './crosses.ts';
import { driftSamplers } from './drift.ts';
import { learnedSamplers } from './learned.ts';
import { lineSamplers } from './lines.ts';
import { linkageSamplers } from './linkage.ts';
import { polyploidSamplers } from './polyploids.ts';
import type { Samplers } from './samplers.ts';
import { valueSamplers } from './values.ts';

/** What is sampled for published figures with our own meiosis and draws, by their id. */
export const samplers: Samplers = {
  ...crossSamplers,
  ...linkageSamplers,
  ...lineSamplers,
  ...driftSamplers,
  ...learnedSamplers,
  ...polyploidSamplers,
  ...valueSamplers,
};
