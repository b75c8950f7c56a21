/** Words around the plans: why one cannot be added. */
import { listed } from './charts.ts';

export const planText = {
  full: 'All eight letters are given: remove a plan before you copy or add one.',
  /** Patterns that cannot start, and why; all of them need no names. */
  blocked: (names: readonly string[], why: string, all: boolean) => (all ? why : `${listed(names)}: ${why}`),
};
