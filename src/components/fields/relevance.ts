import { isRecord, valueAt, type Path } from '../../model/walk.ts';

const is = (key: string, value: unknown) => (parent: Readonly<Record<string, unknown>>) => parent[key] === value;

/** By “group.key”: when a field says nothing, because another field of its group rules it out. */
const IRRELEVANT: Readonly<Record<string, (parent: Readonly<Record<string, unknown>>) => boolean>> = {
  'rescue.month': is('who', 'none'),
  'rescue.stock': is('who', 'none'),
  'rescue.scions': is('who', 'none'),
  'rescue.keepOwnRoots': is('who', 'none'),
  'goOn.count': (parent) => parent['when'] !== 'enough',
  'keep.weights': (parent) => parent['rank'] !== 'index' && parent['bestLeft'] !== true,
  // With no copy or with both there is nothing to tell apart.
  homologue: (parent) => parent['copies'] !== 1,
};

/** Of a programme with these kinds: when a field says nothing. */
const IRRELEVANT_HERE: Readonly<Record<string, (programme: unknown, value: unknown) => boolean>> = {
  'keep.males': (programme, value) => (value ?? 0) === 0 && !hasSexes(programme),
};

/** Whether some kind has seedlings of two sexes. */
export function hasSexes(programme: unknown): boolean {
  const kinds = valueAt(programme, ['kinds']);
  return Array.isArray(kinds) && kinds.some((kind: unknown) => isRecord(kind) && (kind['maleShare'] ?? 0) !== 0);
}

/** True for a field that would change nothing as its group stands; its value is kept in the document all the same. */
export function isIrrelevant(path: Path, parent: unknown, programme: unknown): boolean {
  const keys = path.filter((key) => typeof key === 'string');
  const [last = ''] = keys.slice(-1);
  const named = keys.slice(-2).join('.');
  const rule = IRRELEVANT[named] ?? IRRELEVANT[last];
  const here = IRRELEVANT_HERE[named];
  return isRecord(parent) && (rule?.(parent) === true || here?.(programme, parent[last]) === true);
}
