import { isRecord, type Path } from '../../model/walk.ts';

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

/** True for a field that would change nothing as its group stands; its value is kept in the document all the same. */
export function isIrrelevant(path: Path, parent: unknown): boolean {
  const keys = path.filter((key) => typeof key === 'string');
  const rule = IRRELEVANT[keys.slice(-2).join('.')] ?? IRRELEVANT[keys.at(-1) ?? ''];
  return rule !== undefined && isRecord(parent) && rule(parent);
}
