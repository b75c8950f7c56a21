import type { Batch, LoggedTree } from '../../../model/log.ts';
import { kept, saysNothing, taken, trimmed, unguarded, type Cell } from './cell.ts';

type Status = LoggedTree['status'];
type What = Batch['events'][number]['what'];

const STATUSES: readonly (readonly [RegExp, Status])[] = [
  [/^(alive|living|a|ok|yes|standing|healthy|good|growing|present|1)$/i, 'alive'],
  [/^(dead|died|d|killed|†|0)$/i, 'dead'],
  [/^(culled|cull|removed|rogued|grubbed( up| out)?|cut( down| out)?|discarded|c)$/i, 'culled'],
  [/^(label ?lost|lost label|no (label|tag)|tag ?lost|lost tag|unlabelled)$/i, 'labelLost'],
];

/** What may mean dead, or not found that day. */
const ABSENT = /^(lost|gone|missing|absent|not found)$/i;

/** “dead”, “culled 2015”: the status, and the year since when it has it. */
export function statusCell(raw: string): Cell<{ readonly status: Status; readonly since?: number }> {
  const text = trimmed(unguarded(raw));
  if (text === '' || saysNothing(text)) return {};
  const [, words = text, year] = /^(.*?)[\s,(]*\b(1[89]\d\d|2[01]\d\d)\)?$/.exec(text) ?? [];
  const bare = words.replace(/\s+(in|since)$/i, '');
  const since = year === undefined ? {} : { since: Number(year) };
  if (ABSENT.test(bare)) return taken({ status: 'dead', ...since }, 'notKnown', raw, 'dead');
  const status = STATUSES.find(([pattern]) => pattern.test(bare))?.[1];
  return status ? { value: { status, ...since } } : kept('notKnown', raw);
}

const YES = /^(yes|y|x|true|1|✓|✔|\+|ja|si|oui)$/i;
const NO = /^(no|n|false|0|-|–)$/i;
export function yesCell(raw: string): Cell<boolean> {
  const text = trimmed(unguarded(raw));
  if (text === '') return {};
  return YES.test(text) ? { value: true } : NO.test(text) ? { value: false } : kept('notKnown', raw);
}

const EVENTS: readonly (readonly [RegExp, What])[] = [
  [/frost|freeze|cold/i, 'frost'],
  [/drought|dry/i, 'drought'],
  [/waterlog|flood|wet/i, 'waterlogging'],
  [/rodent|vole|mouse|mice|deer|rabbit|hare/i, 'rodents'],
  [/disease|scab|mildew|blight|canker|rust/i, 'disease'],
  [/moved|transplant/i, 'moved'],
];
/** What befell a batch; words that are not known are “something else”, and stand in its note. */
export function eventCell(raw: string): Cell<What> {
  const text = trimmed(unguarded(raw));
  if (text === '' || saysNothing(text)) return {};
  if (/^other$|^something else$/i.test(text)) return { value: 'other' };
  const plain = /^(frost|drought|waterlogging|rodents|disease|moved)$/i.exec(text)?.[0].toLowerCase();
  const found = EVENTS.find(([pattern]) => pattern.test(text))?.[1] ?? 'other';
  return plain === found ? { value: found } : taken(found, 'notKnown', raw, found);
}

export interface Seen {
  readonly showed: number;
  readonly cut: number;
}
/** “3 of 6” fruits showed it. “yes” and “no” say it of one fruit at least, and are taken for one. */
export function seenCell(raw: string): Cell<Seen> {
  const text = trimmed(unguarded(raw));
  if (text === '' || saysNothing(text)) return {};
  const [, showed, cut] = /^(\d{1,4})\s*(?:\/|of|out of)\s*(\d{1,4})$/i.exec(text) ?? [];
  if (showed !== undefined && cut !== undefined)
    return Number(cut) >= 1 && Number(cut) <= 1000 && Number(showed) <= 1000
      ? { value: { showed: Number(showed), cut: Number(cut) } }
      : kept('outside', raw, '1', '1000');
  if (YES.test(text)) return taken({ showed: 1, cut: 1 }, 'yesNo', raw, '1', '1');
  if (NO.test(text)) return taken({ showed: 0, cut: 1 }, 'yesNo', raw, '0', '1');
  return kept('notKnown', raw);
}

/** “B2-4-7”, “B2, row 4, tree 7”: three parts, or two without a block. Anything else stands whole as the block, if it is short. */
export function positionCell(raw: string): Cell<NonNullable<LoggedTree['place']>> {
  const text = trimmed(unguarded(raw));
  if (text === '' || saysNothing(text)) return {};
  const parts = text
    .replace(/\b(block|row|tree|place)\b/gi, ' ')
    .split(/[-–/,;:\s]+/)
    .filter((part) => part !== '');
  // “by the gate” is no block, row and tree: rows and trees are counted.
  const numbered = parts.slice(parts.length === 3 ? 1 : 0).every((part) => /\d/.test(part) || part.length <= 2);
  if (numbered && parts.every((part) => part.length <= 20)) {
    const [a = '', b = '', c = ''] = parts;
    if (parts.length === 3) return { value: { block: a, row: b, tree: c } };
    if (parts.length === 2) return { value: { block: '', row: a, tree: b } };
  }
  return text.length <= 20 ? taken({ block: text, row: '', tree: '' }, 'notKnown', raw, text) : kept('notKnown', raw);
}
