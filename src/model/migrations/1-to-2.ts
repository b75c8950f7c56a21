import version1 from './version-1.json';
import { frozen, type Step } from './step.ts';

/**
 * Version 2 knows one more kind of source, “remembered”, how sure its writer is of it, and a line of units. Nothing that version 1
 * could say changes its meaning.
 */
export const from1to2: Step<1> = {
  from: 1,
  to: 2,
  was: () => frozen(version1),
  up: (document) => ({ ...document, version: 2 }),
};
