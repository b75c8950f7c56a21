import type { Path } from '../../model/walk.ts';
import type { FormItem } from './form-items.ts';

/** What is wrong at a place of the document, in words. */
export interface Problem {
  readonly path: Path;
  readonly message: string;
  /** What to do about it. */
  readonly fix?: string;
  /** False: the programme runs all the same; said beside the field, but not as something wrong. */
  readonly stops?: boolean;
}

const inWords = ({ message, fix }: Problem): string => (fix === undefined ? message : `${message}${/[.!?]$/.test(message) ? '' : '.'} ${fix}`);

/** Steps are compared as text: a check may name a place in a list as “0”. */
const startsWith = (path: Path, start: Path): boolean => start.length <= path.length && start.every((step, i) => String(step) === String(path[i]));

/** What is said at a place: what is wrong there, and what is only worth knowing. */
export interface Said {
  readonly problem: string;
  readonly remark: string;
}

/** Returns what is said of a path, or of it and anything below it. */
export function saidAt(problems: readonly Problem[], path: Path, deep: boolean): Said {
  const here = problems.filter((problem) => startsWith(problem.path, path) && (deep || problem.path.length === path.length));
  const words = (some: readonly Problem[]): string => some.map(inWords).join(' ');
  return { problem: words(here.filter(({ stops }) => stops !== false)), remark: words(here.filter(({ stops }) => stops === false)) };
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
  return problems.filter((problem) => startsWith(problem.path, path) && !items.some((item) => shows(item, problem))).map(inWords);
}
