import { z } from 'zod';
import { whole } from '../../model/fields.ts';
import type { Kind, Programme } from '../../model/programme.ts';
import { setsOf } from '../../model/sets.ts';
import { bare, isRecord, valueAt, type Path } from '../../model/walk.ts';

/** Fields by “most copies”, made once each so that a field sees the same schema again. */
const made = new WeakMap<z.ZodType, Map<number, z.ZodType>>();

/**
 * Narrows a number of copies to those that can be: of a tree as many as its kind has sets of chromosomes that pair with each other, in rules and
 * leaf tests as many as any kind has. Other fields stay as they are.
 */
export function narrowed(schema: z.ZodType, path: Path, programme: unknown): z.ZodType {
  if (path.at(-1) !== 'copies' || !(bare(schema).schema instanceof z.ZodNumber)) return schema;
  const most = mostCopies(path, programme);
  const { meta, optional, fallback } = bare(schema);
  if (most === undefined || meta === undefined || optional || fallback !== undefined || most === meta.max) return schema;
  const known = made.get(schema) ?? new Map<number, z.ZodType>();
  made.set(schema, known);
  const one = known.get(most) ?? whole(meta.min ?? 0, most, { ...meta, max: most });
  known.set(most, one);
  return one;
}

function mostCopies(path: Path, programme: unknown): number | undefined {
  const kinds = valueAt(programme, ['kinds']) as Programme['kinds'] | undefined;
  if (!Array.isArray(kinds) || kinds.length === 0) return undefined;
  const sets = (kind: Pick<Kind, 'inheritance' | 'ploidy'>) => setsOf(kind);
  if (path[0] === 'trees' && path[2] === 'genes') {
    const tree = valueAt(programme, path.slice(0, 2));
    const kind = isRecord(tree) ? kinds.find(({ id }) => id === tree['kind']) : undefined;
    return kind && sets(kind);
  }
  const isOne = path[0] === 'plans' ? path.at(-2) === 'test' : path.includes('of');
  return isOne ? Math.max(...kinds.map(sets)) : undefined;
}
