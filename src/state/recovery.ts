import { readProgramme } from '../model/read.ts';
import type { Device } from '../storage/device.ts';
import type { Journal, JournalEntry } from '../storage/journal.ts';
import type { StoredProgramme } from '../storage/records.ts';
import type { DeviceTrouble } from '../storage/trouble.ts';
import { library } from '../text/library.ts';
import { documentOf, retitled } from './keeping.ts';

/** What came of the edits that closed pages had left in the journal. */
export interface Recovered {
  /** Programmes whose last edit has been saved after all. */
  readonly saved: readonly string[];
  /** Edits that could not go where they came from, because that had moved on: kept as copies. */
  readonly copies: readonly string[];
  /** An edit that cannot be saved now; it belongs on the screen. */
  readonly waiting: { readonly entry: JournalEntry; readonly trouble: DeviceTrouble } | null;
}

export interface RecoveryTools {
  readonly newId: () => string;
  /** Whether the page that left an edit is still open and will save it by itself. */
  readonly alive: (writer: string) => Promise<boolean>;
}

/** Takes in what closed pages could not save any more. An entry leaves the journal only when the device has it. */
export async function recover(device: Device, journal: Journal, { newId, alive }: RecoveryTools): Promise<Recovered> {
  const saved: string[] = [];
  const copies: string[] = [];
  let waiting: Recovered['waiting'] = null;
  for (const entry of journal.left()) {
    if (await alive(entry.writer)) continue;
    const loaded = await device.load(entry.id);
    if (!loaded.ok) {
      waiting = { entry, trouble: loaded.trouble };
      continue;
    }
    const stored = loaded.value;
    if (stored?.text !== entry.text) {
      const goesOn = follows(stored, entry);
      const [id, asked] = goesOn
        ? [entry.id, { ...entry, base: stored?.revision ?? 0 }]
        : [newId(), { ...entry, base: 0, text: asCopy(entry.text), history: '' }];
      const outcome = await device.save(id, asked);
      if (!outcome.ok) {
        waiting = { entry: { ...entry, base: stored?.revision ?? 0 }, trouble: outcome.trouble };
        continue;
      }
      if ('refused' in outcome.value) continue;
      (goesOn ? saved : copies).push(id);
    }
    journal.clear(entry.writer);
  }
  return { saved, copies, waiting };
}

/** Whether the edit grew from what lies there now. */
function follows(stored: StoredProgramme | null, { base, writer }: JournalEntry): boolean {
  return stored === null || (stored.removed === null && (stored.revision === base || stored.writer === writer));
}

function asCopy(text: string): string {
  const programme = documentOf(readProgramme(text));
  return programme ? JSON.stringify(retitled(programme, library.closedSuffix)) : text;
}
