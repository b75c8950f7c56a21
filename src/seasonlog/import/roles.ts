import { COUNTED, type CountedStage } from '../../model/log.ts';

/** What stands in a column. `keep`: into the note, with its heading; `leave`: left out, by choice only. */
export const PLAIN_ROLES = [
  'keep',
  'leave',
  'id',
  'batch',
  'year',
  'when',
  'cross',
  'seed',
  'pollen',
  'seedKind',
  'pollenKind',
  'route',
  'generation',
  'graftedWho',
  'graftedMonth',
  'graftedOnto',
  'apart',
  'event',
  'eventWhen',
  'eventLost',
  'eventNote',
  'batchNote',
  'number',
  'tag',
  'position',
  'block',
  'row',
  'tree',
  'status',
  'statusSince',
  'weak',
  'stock',
  'firstFruit',
  'lookedUntil',
  'picked',
  'season',
  'seasonNote',
  'copyWhere',
  'copyWhose',
  'copyNumber',
  'note',
] as const;
export type PlainRole = (typeof PLAIN_ROLES)[number];
/** A stage, a trait: what a column says of which. */
export type Role = PlainRole | `count:${CountedStage}` | `countWhen:${CountedStage}` | `countNote:${CountedStage}` | `seen:${string}` | `value:${string}`;

/** A role cut at its colon: the family says how a cell is read, `of` of what it speaks. */
export function familyOf(role: string): { readonly family: string; readonly of: string } {
  const at = role.indexOf(':');
  return at < 0 ? { family: role, of: '' } : { family: role.slice(0, at), of: role.slice(at + 1) };
}

export const stageOf = (text: string): CountedStage | undefined => COUNTED.find((stage) => stage === text);

/** Roles of which a table has one column at most: a second one that looks so is kept in the note. */
export const once = (role: Role): boolean =>
  role !== 'keep' && role !== 'leave' && role !== 'note' && !role.startsWith('value:') && !role.startsWith('seen:') && !role.startsWith('count:');

/** A role from the text of a choice; undefined for anything else. */
export function roleNamed(text: string): Role | undefined {
  const plain = PLAIN_ROLES.find((role) => role === text);
  if (plain) return plain;
  const { family, of } = familyOf(text);
  if (of === '') return undefined;
  if (family === 'seen' || family === 'value') return `${family}:${of}`;
  const stage = stageOf(of);
  return stage && (family === 'count' || family === 'countWhen' || family === 'countNote') ? `${family}:${stage}` : undefined;
}
