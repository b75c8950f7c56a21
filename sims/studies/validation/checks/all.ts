import type { Checks } from '../entries.ts';
import { countChecks } from './counts.ts';
import { estimateChecks } from './estimates.ts';
import { inheritanceChecks } from './inheritance.ts';
import { linkageChecks } from './linkage.ts';
import { selectionChecks } from './selection.ts';
import { tableChecks } from './tables.ts';

/** What is worked out for published figures, by their id. */
export const checks: Checks = { ...inheritanceChecks, ...linkageChecks, ...selectionChecks, ...countChecks, ...estimateChecks, ...tableChecks };
