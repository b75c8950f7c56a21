import type { Path, Problem } from '../model/problem.ts';
import { programmeSchema, type Programme } from '../model/programme.ts';
import { parseProgramme } from '../model/read.ts';

/** A programme with something added, or why that cannot be. */
export type Merged =
  | { readonly ok: true; readonly programme: Programme }
  | { readonly ok: false; readonly why: 'room'; readonly section: string; readonly most: number; readonly wanted: number }
  | { readonly ok: false; readonly why: 'problems'; readonly problems: readonly Problem[] };

const key = (path: Path): string => path.join('/');

/** Checks a programme that grew: every list has room, and nothing stops it that did not stop it before. */
export function merged(before: Programme, after: Programme): Merged {
  for (const issue of programmeSchema.safeParse(after).error?.issues ?? []) {
    const [section] = issue.path;
    if (issue.code === 'too_big' && issue.path.length === 1 && typeof section === 'string') {
      const list: unknown = Object.entries(after).find(([name]) => name === section)?.[1];
      return { ok: false, why: 'room', section, most: Number(issue.maximum), wanted: Array.isArray(list) ? list.length : 0 };
    }
  }
  const reading = parseProgramme(after);
  if (reading.ok) return { ok: true, programme: after };
  const old = parseProgramme(before);
  const known = new Set(old.ok ? [] : old.problems.map(({ path, message }) => `${key(path)} ${message}`));
  const problems = reading.problems.filter(({ path, message, stops }) => stops && !known.has(`${key(path)} ${message}`));
  return problems.length === 0 ? { ok: true, programme: after } : { ok: false, why: 'problems', problems };
}
