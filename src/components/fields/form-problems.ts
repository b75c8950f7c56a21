import type { Path } from '../../model/walk.ts';
import type { FormItem } from './form-items.ts';

/** What is wrong at a place of the document, in words. */
export interface Problem {
  readonly path: Path;
  readonly message: string;
}

/** Steps are compared as text: a check may name a place in a list as “0”. */
const startsWith = (path: Path, start: Path): boolean => start.length <= path.length && start.every((step, i) => String(step) === String(path[i]));

/** Returns what is wrong at a path, or there and anywhere below it. */
export function problemsAt(problems: readonly Problem[], path: Path, deep: boolean): string {
  return problems
    .filter((problem) => startsWith(problem.path, path) && (deep || problem.path.length === path.length))
    .map((problem) => problem.message)
    .join(' ');
}

/** Says whether some item of a form shows a problem, by itself or by one inside it. */
function shows(item: FormItem, problem: Problem): boolean {
  const exact = problem.path.length === item.path.length;
  switch (item.kind) {
    case 'field':
    case 'estimate':
    case 'choices':
      return startsWith(problem.path, item.path);
    case 'absent':
      return false;
    case 'list':
      return (
        startsWith(problem.path, item.path) &&
        (exact ||
          item.entries.some(
            (entry) => (startsWith(problem.path, entry.path) && problem.path.length === entry.path.length) || entry.items.some((each) => shows(each, problem)),
          ))
      );
    case 'line':
      return item.items.some((each) => shows(each, problem));
    case 'group':
    case 'forms':
    case 'table':
      return startsWith(problem.path, item.path) && (exact || item.items.some((each) => shows(each, problem)));
  }
}

/** Returns what is wrong within the form but beside none of its fields: it is said at the top, so that nothing is lost. */
export function unplaced(problems: readonly Problem[], path: Path, items: readonly FormItem[]): readonly string[] {
  return problems.filter((problem) => startsWith(problem.path, path) && !items.some((item) => shows(item, problem))).map((problem) => problem.message);
}
