import { checkBiology } from './check/biology.ts';
import { checkBloom } from './check/bloom.ts';
import { checkCrosses } from './check/crosses.ts';
import { checkEntries } from './check/entries.ts';
import { checkIncompatibility } from './check/incompatibility.ts';
import { checkInheritance } from './check/inheritance.ts';
import { checkKnown } from './check/known.ts';
import { checkLog } from './check/log.ts';
import { checkParents } from './check/parents.ts';
import { checkPlans } from './check/plans.ts';
import { checkReferences } from './check/references.ts';
import { checkSexes } from './check/sexes.ts';
import type { Problem } from './problem.ts';
import type { Programme } from './programme.ts';

/**
 * Everything that the schema alone cannot see, in words. References first: the other checks rely on them and are left out while
 * any is broken.
 */
export function checkProgramme(programme: Programme): Problem[] {
  const references = checkReferences(programme);
  if (references.length > 0) return references;
  return [
    ...checkBiology(programme),
    ...checkInheritance(programme),
    ...checkCrosses(programme),
    ...checkEntries(programme),
    ...checkParents(programme),
    ...checkPlans(programme),
    ...checkIncompatibility(programme),
    ...checkBloom(programme),
    ...checkSexes(programme),
    ...checkKnown(programme),
    ...checkLog(programme),
  ];
}
