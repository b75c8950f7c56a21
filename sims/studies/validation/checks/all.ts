import type { Checks } from '../entries.ts';
import { backcrossChecks } from './backcross.ts';
import { countChecks } from './counts.ts';
import { estimateChecks } from './estimates.ts';
import { incompatibilityChecks } from './incompatibility.ts';
import { inheritanceChecks } from './inheritance.ts';
import { linkageChecks } from './linkage.ts';
import { polyploidChecks } from './polyploids.ts';
import { selectionChecks } from './selection.ts';
import { tableChecks } from './tables.ts';

/** What is worked out for published figures, by their id. */
export const checks: Checks = {
  ...inheritanceChecks,
  ...linkageChecks,
  ...backcrossChecks,
  ...polyploidChecks,
  ...incompatibilityChecks,
  ...selectionChecks,
  ...countChecks,
  ...estimateChecks,
  ...tableChecks,
};
