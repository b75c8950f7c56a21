import type { Generation } from '../../model/programme.ts';
import type { Rescue } from '../rescue-sites.ts';

/*
 * Names of found plans. They are kept in the document, as the names that a copied or a built plan gets are, so they stand beside what makes
 * the plan and not among the words of the screen.
 */

const several = (n: number, one: string, more: string) => `${String(n)} ${n === 1 ? one : more}`;

export const open = 'openly pollinated';
export const selfed = 'own pollen';
export const picksTogether = 'picks × picks';
export const pollenOf = (tree: string) => `pollen of ${tree}`;
export const picksWith = (tree: string) => `picks × ${tree}`;
export const noRescue = 'no rescue graft';
export const flowers = (n: number) => several(n, 'flower', 'flowers');
export const seedlings = (n: number) => several(n, 'seedling', 'seedlings');
export const springs = (n: number) => several(n, 'spring', 'springs');
export const judge = (crops: number) => (crops === 0 ? 'not judged' : `${several(crops, 'season', 'seasons')} judged`);
export const picks = (n: number) => several(n, 'pick', 'picks');
export const backup = (copies: number) => (copies === 0 ? 'no backups' : `${several(copies, 'backup', 'backups')} a pick`);

/** @param stock said only if it is another than the plan's own */
export function rescue({ who, month }: Rescue, stock: string | null): string {
  const age = `at ${several(month, 'month', 'months')}`;
  return `${who === 'every' ? 'all grafted' : 'weak ones grafted'} ${age}${stock === null ? '' : ` on ${stock}`}`;
}

export function goOn(when: Generation['goOn']['when'], atLatest: number | undefined): string {
  const rule = { firstPick: 'on at the first pick', enough: 'on with enough picks', allJudged: 'on when all are judged' }[when];
  return atLatest === undefined ? rule : `${rule} or after ${several(atLatest, 'year', 'years')}`;
}

/** What was changed in one generation of a plan. */
export interface Changed {
  /** Position in the plan, from 0. */
  readonly position: number;
  readonly words: readonly string[];
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth', 'eleventh', 'twelfth'];

/** “plan D, with 600 flowers, weak ones grafted at 8 months; second generation 2 seasons judged”. */
export function named(mark: string, changes: readonly Changed[], generations: number): string {
  const parts = changes
    .filter(({ words }) => words.length > 0)
    .map(({ position, words }) => `${generations > 1 ? `${ORDINALS[position] ?? String(position + 1)} generation ` : ''}${words.join(', ')}`);
  return parts.length === 0 ? `plan ${mark}` : `plan ${mark}, with ${parts.join('; ')}`;
}

const LONGEST_NAME = 80;

/** A name for the document: cut after the last change that fits. */
export function shortName(mark: string, changes: readonly Changed[]): string {
  const all = changes.flatMap(({ words }) => words);
  for (let n = all.length; n > 0; n -= 1) {
    const name = `Plan ${mark}, with ${all.slice(0, n).join(', ')}${n < all.length ? ' …' : ''}`;
    if (name.length <= LONGEST_NAME) return name;
  }
  return `Plan ${mark}, varied`;
}

export const noteOf = (mark: string, name: string, words: string) => `Found from plan ${mark}, “${name}”: ${words}.`;
