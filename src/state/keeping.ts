import type { Programme } from '../model/programme.ts';
import { readProgramme, type Reading } from '../model/read.ts';
import type { Kept } from '../storage/device.ts';
import type { KeepingTrouble } from '../text/library.ts';

/** How the document on the screen stands to the device. */
export interface Keeping {
  /** Its entry on the device; null while it is only shown (an example, somebody's link) and nothing was changed in it. */
  readonly id: string | null;
  /** `shown`: not kept, nothing to keep. `saving`: an edit is on its way. `kept`: the device has it. `unsaved`: see trouble. */
  readonly status: 'shown' | 'saving' | 'kept' | 'unsaved';
  /** Time of the last save of this page, ms since 1970 UTC. */
  readonly savedAt: number | null;
  readonly trouble: KeepingTrouble | null;
  /** Goes up whenever the list of programmes may have changed. */
  readonly listVersion: number;
}

/** One line of the list of programmes. */
export interface Entry {
  readonly id: string;
  readonly changed: number;
  readonly removed: number | null;
  readonly text: string;
  /** Null for a text that this version cannot read. */
  readonly programme: Programme | null;
  /** It contradicts itself and cannot run yet. */
  readonly toMend: boolean;
}

export const documentOf = (reading: Reading): Programme | null => (reading.ok ? reading.programme : (reading.draft ?? null));

/** The list, last changed first. */
export function entriesOf(kept: readonly Kept[]): readonly Entry[] {
  return kept
    .map(({ id, stored: { changed, removed, text } }): Entry => {
      const reading = readProgramme(text);
      return { id, changed, removed, text, programme: documentOf(reading), toMend: !reading.ok };
    })
    .sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1));
}

const MOST_TITLE = 120;

/** The programme under another title: “Pears, copy”. */
export function retitled(programme: Programme, suffix: string): Programme {
  return { ...programme, title: programme.title.slice(0, MOST_TITLE - suffix.length) + suffix };
}
