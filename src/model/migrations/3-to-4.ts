import version3 from './version-3.json';
import { frozen, type Step } from './step.ts';

/** Version 4 knows ploidy, incompatibility, sexes and origin, and plans that begin from what stands. Nothing that version 3 could say changes its meaning. */
export const from3to4: Step<3> = {
  from: 3,
  to: 4,
  was: () => frozen(version3),
  up: (document) => ({ ...document, version: 4 }),
};
