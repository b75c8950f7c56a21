import { freshId } from '../model/plans.ts';
import { isRecord } from '../model/problem.ts';
import { programmeSchema, type Programme } from '../model/programme.ts';
import { leftOut } from '../text/handout.ts';
import type { LeaveOut } from './choices.ts';

/** Rewrites a text so that what is left out is no longer in it. */
export type Reword = (text: string) => string;

const escapeName = (name: string): string => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const whole = (words: string, flags: string): RegExp => new RegExp(`(?<![\\p{L}\\p{N}])${words}(?![\\p{L}\\p{N}])`, flags);

/** A name shorter than this is an ordinary word somewhere: it is only taken out as it is written. */
const SHORT = 4;
/** Parts of a name that still tell it: capitalised words of at least so many letters that are no kind of tree. */
const TELLING = 3;

interface Replacement {
  readonly pattern: RegExp;
  readonly by: string;
}

function replacements({ trees, gardens, kinds }: Programme, leave: LeaveOut): Replacement[] {
  const named = [
    ...(leave.trees ? trees.map(({ name }, i) => ({ name, by: leftOut.tree(i + 1) })) : []),
    ...(leave.gardens ? gardens.map(({ name }, i) => ({ name, by: leftOut.garden(i + 1) })) : []),
  ].sort((a, b) => b.name.length - a.name.length);
  const common = new Set(kinds.flatMap(({ name }) => name.toLowerCase().split(/\P{L}+/u)));
  const parts = named.flatMap(({ name, by }) => {
    const words = name.split(/[\s/–—-]+/).filter((word) => word.length >= TELLING && /^\p{Lu}/u.test(word) && !common.has(word.toLowerCase()));
    return words.map((word) => ({ pattern: whole(escapeName(word), 'gu'), by }));
  });
  return [...named.map(({ name, by }) => ({ pattern: whole(escapeName(name), name.length < SHORT ? 'gu' : 'giu'), by })), ...parts];
}

/** What takes names out of any text of this programme. */
export function rewordFor(programme: Programme, leave: LeaveOut): Reword {
  const all = replacements(programme, leave);
  return (text) => all.reduce((said, { pattern, by }) => said.replace(pattern, by), text);
}

/** Sections whose ids may have to change, and the keys that refer to them. */
const SECTION_OF: Readonly<Record<string, string>> = {
  tree: 'trees',
  garden: 'gardens',
  gardens: 'gardens',
  kind: 'kinds',
  seed: 'kinds',
  gives: 'kinds',
  pollen: 'kinds',
  pool: 'pools',
  defaultPool: 'pools',
  cross: 'crosses',
  route: 'routes',
  stock: 'stocks',
  gene: 'genes',
  genes: 'genes',
  trait: 'traits',
  fact: 'facts',
  picksOf: 'generations',
  after: 'generations',
};
/** Records whose keys are ids. */
const KEYED: Readonly<Record<string, string>> = { genes: 'genes', values: 'traits', seen: 'traits', weights: 'traits', spread: 'traits' };
/** Texts that people wrote, and how long each may be: a number in the place of a short name makes it longer. */
const LONGEST: Readonly<Record<string, number>> = { title: 120, name: 80, note: 2000, group: 40, source: 500 };

type Renamed = ReadonlyMap<string, ReadonlyMap<string, string>>;

const plainLetters = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');

/** Every id that would tell a name: those of the entries themselves, and others that were made from it. */
function renamedIds(programme: Programme, leave: LeaveOut, reword: Reword): Renamed {
  const ids = new Map<string, string[]>();
  collect(programme, '', (section, id) => ids.set(section, [...(ids.get(section) ?? []), id]));
  const telling = [...(leave.trees ? programme.trees : []), ...(leave.gardens ? programme.gardens : [])]
    .flatMap(({ id, name }) => [
      id,
      plainLetters(name),
      ...name
        .split(/\s+/)
        .filter((word) => reword(word) !== word)
        .map(plainLetters),
    ])
    .filter((word) => word.length >= TELLING);
  const tells = (id: string): boolean => telling.some((word) => `-${id}-`.includes(`-${word}-`));
  return new Map(
    [...ids].map(([section, all]) => {
      const every = (section === 'trees' && leave.trees) || (section === 'gardens' && leave.gardens);
      const taken = new Set(all);
      const changed = new Map<string, string>();
      for (const id of all) {
        if (changed.has(id) || (!every && !tells(id))) continue;
        const next = freshId(`${section.replace(/(?<=sse)s$|s$/, '')}-1`, taken);
        taken.add(next);
        changed.set(id, next);
      }
      return [section, changed];
    }),
  );
}

/** Calls back with the section and id of every entry. */
function collect(value: unknown, section: string, found: (section: string, id: string) => void): void {
  if (Array.isArray(value)) for (const entry of value) collect(entry, section, found);
  else if (isRecord(value)) {
    if (typeof value['id'] === 'string') found(section, value['id']);
    for (const [key, part] of Object.entries(value)) collect(part, key, found);
  }
}

interface Walk {
  readonly ids: Renamed;
  readonly reword: Reword;
  readonly dropNotes: boolean;
}

const KEPT_SOURCES: ReadonlySet<unknown> = new Set(['published', 'practice']);

/** The same data without what is left out. `list` is the key of the list that an entry stands in. */
function without(value: unknown, key: string, list: string, walk: Walk): unknown {
  if (typeof value === 'string') return word(value, key, list, walk);
  if (Array.isArray(value)) return value.map((entry) => without(entry, key, key, walk));
  if (!isRecord(value)) return value;
  if (key === 'source') return sourceWithout(value, walk);
  const keys = KEYED[key] === undefined ? undefined : walk.ids.get(KEYED[key]);
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name]) => !(walk.dropNotes && name === 'note'))
      .map(([name, part]) => [keys?.get(name) ?? name, without(part, name, list, walk)]),
  );
}

function sourceWithout(source: Readonly<Record<string, unknown>>, { dropNotes, reword }: Walk): unknown {
  const { kind, note } = source;
  if (typeof note !== 'string') return source;
  return { ...source, note: dropNotes && !KEPT_SOURCES.has(kind) ? '' : reword(note).slice(0, LONGEST['source']) };
}

function word(text: string, key: string, list: string, { ids, reword }: Walk): string {
  if (LONGEST[key] !== undefined) return reword(text).slice(0, LONGEST[key]);
  if (key === 'id') return ids.get(list)?.get(text) ?? text;
  // In a generation “pollen” is a word of ours; in a cross it is a kind.
  if (key === 'pollen' && list === 'generations') return text;
  const section = SECTION_OF[key];
  return section === undefined ? text : (ids.get(section)?.get(text) ?? text);
}

/** Whether the season log stays behind: tags, places and whose a copy is are names, written in as many ways as there are people. */
export const leavesLog = (leave: LeaveOut): boolean => leave.log || leave.trees || leave.gardens || leave.notes;

/**
 * Returns the programme without what its breeder keeps from others: names become numbers, wherever they stand, in ids too; notes go.
 * Ids are part of what the futures are drawn by, so a programme with other ids has other futures of the same odds.
 */
export function leaveOut(programme: Programme, leave: LeaveOut): Programme {
  const plans = programme.plans.filter(({ id }) => !leave.plans.includes(id));
  const log = leavesLog(leave) ? { batches: [] } : programme.log;
  const kept: Programme = { ...programme, log, plans: plans.length > 0 ? plans : programme.plans };
  if (!leave.trees && !leave.gardens && !leave.notes && !leave.title) return kept;
  const reword = rewordFor(programme, leave);
  const walk: Walk = { ids: renamedIds(programme, leave, reword), reword, dropNotes: leave.notes };
  const rewritten = without({ ...kept, ...(leave.title ? { title: leftOut.title } : {}) }, '', '', walk);
  return programmeSchema.parse(rewritten);
}

/** Whether others get other futures of the same odds from what is left. */
export const drawsAnew = ({ trees, gardens }: LeaveOut): boolean => trees || gardens;
