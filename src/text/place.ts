import { programmeSchema, type Programme } from '../model/programme.ts';
import type { Path, Problem } from '../model/problem.ts';
import { bare, isRecord, schemasAlong, valueAt } from '../model/walk.ts';
import { groupWords } from './fields.ts';

const lowered = (label: string): string => (/^\p{Lu}\p{Lu}/u.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1));

/** An entry of a list by its name, a plan by its letter; its place in the list where it has neither. */
function entryName(entry: unknown, list: string, at: number): string {
  if (isRecord(entry) && list === 'plans') return `plan ${String(entry['mark'])}`;
  if (isRecord(entry) && typeof entry['name'] === 'string' && entry['name'] !== '') return entry['name'];
  const words = groupWords([list]);
  return `${lowered(words?.entry ?? words?.label ?? 'entry')} ${String(at + 1)}`;
}

/**
 * Where a person finds a place of the programme: “Plan D, Wide cross, grafted, rescue graft, at age”.
 * @param path from the top of the programme; a step that it does not have is left out
 */
export function placeInWords(programme: Programme, path: Path): string {
  const nodes = schemasAlong(programmeSchema, path, programme);
  const words = path.flatMap((key, i): string[] => {
    if (typeof key === 'number') return [entryName(valueAt(programme, path.slice(0, i + 1)), String(path[i - 1]), key)];
    // The list itself says nothing that the name of its entry does not.
    if (typeof path[i + 1] === 'number') return [];
    const node = nodes[i + 1];
    const label = (node ? bare(node).meta?.label : undefined) ?? groupWords(path.slice(0, i + 1).filter((step) => typeof step === 'string'))?.label;
    return label === undefined ? [] : [lowered(label)];
  });
  const place = words.join(', ');
  return place.charAt(0).toUpperCase() + place.slice(1);
}

/** A problem of the programme as a sentence: where, what, and the way out. */
export function problemInWords(programme: Programme, { path, message, fix }: Problem): string {
  const place = placeInWords(programme, path);
  return `${place === '' ? '' : `${place}: `}${message}${/[.!?]$/.test(message) ? '' : '.'}${fix === undefined ? '' : ` ${fix}`}`;
}
