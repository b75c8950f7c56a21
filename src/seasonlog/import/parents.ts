import type { Batch } from '../../model/log.ts';
import type { Programme } from '../../model/programme.ts';
import { trimmed, unguarded } from './cells/cell.ts';

export type Seed = Batch['seed'];
export type Pollen = Batch['pollen'];
interface Entry {
  readonly id: string;
  readonly name: string;
}

/** A name without case, double spaces and the difference between × and x between words. */
export const plainName = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s\u00a0_]+/g, ' ')
    .replace(/ ?[×✕✖] ?| x /g, ' × ')
    .replace(/[’‘`´]/g, "'")
    .replace(/^'(.*)'$/, '$1')
    .trim();

/** The entry of a list that a text names: “Name [id]” without doubt, else by name or id if only one fits. */
export function entryNamed<T extends Entry>(list: readonly T[], text: string): T | undefined {
  const [, marked] = /\[([a-z0-9-]+)\]$/.exec(text) ?? [];
  const exact = marked === undefined ? undefined : list.find(({ id }) => id === marked);
  if (exact) return exact;
  const plain = plainName(text);
  const named = list.filter(({ name }) => plainName(name) === plain);
  return named.length === 1 ? named[0] : list.find(({ id }) => id === text);
}

/** How an entry is written so that `entryNamed` finds it again. */
export function entryText(list: readonly Entry[], id: string): string {
  const entry = list.find((each) => each.id === id);
  if (!entry) return id;
  const name = entry.name.trim();
  return entryNamed(list, name)?.id === id && parentWord(name) === undefined && !/\[tag\]$/.test(name) ? name : `${name} [${id}]`;
}

const UNKNOWN = /^(\?+|unknown|not known|unk\.?|-+|–|n\/?a|none|nobody knows)$/i;
const OPEN = /^(op|o\.p\.?|open|open[- ]?poll(\.|inated|ination)?|\(op\)|open pollen|free pollination)$/i;
const SELF = /^(self|selfed|selfing|self[- ]?poll(\.|inated|ination)?|its own|own|⊗|\(x\))$/i;
const MIXED = /^(mixed|mix|mixed pollen|pollen mix|pollen mixture|bulk|bulked pollen)$/i;

function parentWord(text: string): 'unknown' | 'open' | 'self' | 'mixed' | undefined {
  return UNKNOWN.test(text) ? 'unknown' : OPEN.test(text) ? 'open' : SELF.test(text) ? 'self' : MIXED.test(text) ? 'mixed' : undefined;
}

/** Longer cells are told stories, not crosses. */
const LONGEST_CROSS = 500;
/** The longest tag of a parent; more stands in the note. */
const LONGEST = 60;

/** A pollen parent from its cell: a word, a tree of the programme, else a tree by its tag. An empty cell says that it is not known. */
export function pollenOf(raw: string, { trees }: Pick<Programme, 'trees'>): Pollen {
  const text = trimmed(unguarded(raw));
  if (text === '') return 'unknown';
  const word = parentWord(text);
  if (word) return word;
  const tree = entryNamed(trees, text) ?? entryNamed(trees, text.replace(/^\(([^()]*)\)$/, '$1'));
  if (tree) return { tree: tree.id };
  return { tag: trimmed(text.replace(/ \[tag\]$/, '').slice(0, LONGEST)) };
}

/** The same for a seed parent, which no word but “unknown” can be. */
export function seedOf(raw: string, programme: Pick<Programme, 'trees'>): Seed {
  const parent = pollenOf(raw, programme);
  return typeof parent === 'object' ? parent : 'unknown';
}

/** How a parent is written so that it is read as the same again: by name, by tag, marked where it could be mistaken. */
export function parentText(parent: Pollen, programme: Pick<Programme, 'trees'>): string {
  if (typeof parent === 'string') return parent;
  if ('tree' in parent) return entryText(programme.trees, parent.tree);
  const back = pollenOf(parent.tag, programme);
  return typeof back === 'object' && 'tag' in back && back.tag === parent.tag ? parent.tag : `${parent.tag} [tag]`;
}

/**
 * Cuts “A × B”, “A x B”, “(A x B) x C”, “A x OP”, “A OP”, “A selfed” into seed parent and pollen at the outermost sign; undefined where
 * there is none.
 */
export function cutCross(raw: string): readonly [string, string] | undefined {
  if (raw.length > LONGEST_CROSS) return undefined;
  const text = trimmed(unguarded(raw)).replace(/[\s\u00a0]+/g, ' ');
  let depth = 0;
  const at: (readonly [number, number])[] = [];
  for (let i = 0; i < text.length; i += 1) {
    if (text[i] === '(' || text[i] === '[') depth += 1;
    if (text[i] === ')' || text[i] === ']') depth -= 1;
    if (depth === 0 && (/[×✕✖]/.test(text[i] ?? '') || (/[xX*]/.test(text[i] ?? '') && /[\s)\]]/.test(text[i - 1] ?? '') && /[\s([]/.test(text[i + 1] ?? ''))))
      at.push([i, i + 1]);
  }
  // “A × B × C” is (A × B) × C.
  const [from, to] = at.at(-1) ?? [];
  // The parentheses of a cross within a cross stay: without them nobody could tell who was crossed with whom.
  const bare = (part: string): string => trimmed(part).replace(/^\((.*)\)$/, (all, inner: string) => (/[()×✕✖]| [xX*] /.test(inner) ? all : inner));
  if (from !== undefined && to !== undefined) return [bare(text.slice(0, from)), bare(text.slice(to))];
  const [, mother, word] = /^(.+?)[\s,(-]+(op|o\.p\.?|open[- ]?pollinated|open|selfed|self)\)?$/i.exec(text) ?? [];
  return mother !== undefined && word !== undefined ? [bare(mother), word] : undefined;
}
