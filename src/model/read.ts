import { checkProgramme } from './check.ts';
import { climb } from './migrations/steps.ts';
import { FORMAT, programmeSchema, VERSION, type Programme } from './programme.ts';
import { clipped, isRecord, type Path, type Problem } from './problem.ts';
import { problemOfFault } from './text-fault.ts';
import { faultOf } from './text-scan.ts';
import type { z } from 'zod';

/** A file larger than this is refused before it is read. */
export const MOST_BYTES = 5_000_000;

/** A document that has the right form but contradicts itself comes as a draft: it can be shown and mended, not run. */
export type Reading =
  | { readonly ok: true; readonly programme: Programme; readonly notes: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly draft?: Programme };

const ID_WORDS = 'must be lower-case letters, digits and hyphens, at most 64';
const OURS = 'Open a file that Orchard Odds has saved.';
const refuse = (message: string, fix: string, path: Path = []): Reading => ({ ok: false, problems: [{ path, message, fix, stops: true }] });

/** Reads a programme from the text of a file, a link or the device's storage. Never throws; never repairs. */
export function readProgramme(text: string): Reading {
  if (text.length > MOST_BYTES) return refuse('It is larger than 5 MB', 'A programme of ours is far smaller; choose another file.');
  const plain = text.replace(/^\uFEFF/, '');
  const fault = faultOf(plain);
  return fault ? { ok: false, problems: [problemOfFault(fault)] } : parseProgramme(JSON.parse(plain));
}

/** Reads a programme from plain data. */
export function parseProgramme(document: unknown): Reading {
  if (!isRecord(document)) return refuse('This is not a programme of Orchard Odds: it is a list of something', OURS);
  if (document['format'] !== FORMAT)
    return refuse('This is not a programme of Orchard Odds: its “format” says something else', `It should say “${FORMAT}”. ${OURS}`);
  const version = document['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refuse('It does not say which version it is', `Its “version” should be a whole number from 1 to ${String(VERSION)}. Open another copy.`, [
      'version',
    ]);
  if (version > VERSION)
    return refuse(
      `This programme was saved by a newer Orchard Odds (version ${String(version)}; this one knows up to ${String(VERSION)})`,
      'Open it with the newer one. Nothing was changed.',
    );
  const current = climb(document);
  const parsed = current.ok ? programmeSchema.safeParse(current.document) : { success: false as const, error: current.error };
  if (!parsed.success) return { ok: false, problems: parsed.error.issues.slice(0, 50).map((issue) => problemOf(issue)) };
  const problems = checkProgramme(parsed.data);
  return problems.some(({ stops }) => stops) ? { ok: false, problems, draft: parsed.data } : { ok: true, programme: parsed.data, notes: problems };
}

/** One issue of the schema in words. Of a choice of forms, the form that came closest is complained of. */
function problemOf(issue: z.core.$ZodIssue): Problem {
  const path = issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key));
  const at = (message: string, fix?: string): Problem => ({ path, message, ...(fix === undefined ? {} : { fix }), stops: true });
  switch (issue.code) {
    case 'unrecognized_keys':
      return at(`does not know ${listed(issue.keys)}`, 'Remove it, or check its spelling.');
    case 'invalid_union': {
      const closest = issue.errors.reduce<readonly z.core.$ZodIssue[] | null>(
        (best, errors) => (best === null || depth(errors) > depth(best) ? errors : best),
        null,
      );
      const inner = closest?.[0];
      if (inner && (inner.path.length > 0 || inner.code === 'unrecognized_keys')) {
        const problem = problemOf(inner);
        return { ...problem, path: [...path, ...problem.path] };
      }
      return at('is in none of the forms that fit here', 'Write it as in another entry of the file, or open another copy.');
    }
    case 'too_small':
      return at(issue.origin === 'string' || issue.origin === 'array' ? 'must not be empty' : `must be at least ${String(issue.minimum)}`);
    case 'too_big':
      return at(`must be at most ${String(issue.maximum)}${issue.origin === 'string' ? ' letters' : ''}`);
    case 'invalid_type':
      return issue.message.includes('received undefined') ? at('is missing', 'Put it back, or open another copy.') : at(`must be ${expected(issue.expected)}`);
    case 'invalid_value':
      return at(`must be one of: ${issue.values.map((value) => `“${String(value)}”`).join(', ')}`);
    case 'invalid_format':
      return at(issue.message.startsWith('Invalid') ? ID_WORDS : issue.message);
    default:
      return at(issue.message);
  }
}

const MOST_NAMED = 5;
function listed(keys: readonly string[]): string {
  const named = keys.slice(0, MOST_NAMED).map((key) => `“${clipped(key, 40)}”`);
  return `${named.join(', ')}${keys.length > MOST_NAMED ? ` and ${String(keys.length - MOST_NAMED)} more` : ''}`;
}

const depth = (errors: readonly z.core.$ZodIssue[]) => Math.max(...errors.map((error) => error.path.length * 10 - errors.length));

function expected(type: string): string {
  switch (type) {
    case 'number':
      return 'a number';
    case 'int':
      return 'a whole number';
    case 'string':
      return 'a text';
    case 'boolean':
      return 'true or false';
    case 'array':
      return 'a list';
    default:
      return 'an entry with named parts';
  }
}
