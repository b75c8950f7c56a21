import { describe, expect, it } from 'vitest';
import { logSchema } from '../../src/model/log.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { batchesCsv, treesCsv } from '../../src/seasonlog/export.ts';
import { IDS } from './cases.ts';
import { filled, looked } from './record.ts';
import { records } from './records.ts';

describe('real records in the season log (public reports, figures as printed)', () => {
  it('each case is computed, entered and flagged, or out of scope with the reason', () => {
    expect(records.map(({ id }) => id).sort()).toEqual(IDS);
    const count = (verdict: string): number => records.filter((entry) => entry.verdict === verdict).length;
    expect(count('computed')).toBeGreaterThanOrEqual(12);
    expect(count('computed') + count('entered')).toBeGreaterThanOrEqual(20);
    for (const entry of records) if (entry.verdict === 'outOfScope') expect(entry.reason.length, entry.id).toBeGreaterThan(20);
  });

  for (const entry of records) {
    if (entry.verdict === 'outOfScope') continue;
    describe(`${entry.id}, ${entry.verdict}: ${entry.what}`, () => {
      const { programme, imports } = filled(entry);
      const { log } = programme;

      it('stands in the log as it was written, with its doubts flagged', () => {
        expect(log.batches.length).toBeGreaterThan(0);
        expect(() => logSchema.parse(log)).not.toThrow();
        const flags = imports.flatMap(({ read }) => [...read.flags.values()].map(({ code }) => code));
        expect([...new Set(flags)].sort()).toEqual([...(entry.flags ?? [])].sort());
        const text = JSON.stringify(log).normalize('NFC');
        for (const words of entry.stands ?? []) expect(text).toContain(JSON.stringify(words).slice(1, -1));
        const reading = parseProgramme(programme);
        expect(reading.ok ? [...new Set(reading.notes.map(({ message }) => message))] : reading.problems).toEqual(entry.noted ?? []);
      });

      it('goes out as tables and comes back the same, and adds nothing the second time', () => {
        const empty = { ...programme, log: { batches: [] } };
        const batches = looked(empty, { table: batchesCsv(log, programme) }).additions.log;
        const back = looked({ ...empty, log: batches }, { table: treesCsv(log, programme) }).additions.log;
        expect(back).toEqual(log);
        if (typeof entry.kept !== 'function') for (const kept of entry.kept) expect(looked(programme, kept).additions.log).toBe(log);
      });

      it(entry.beyond === undefined ? 'gives what was printed' : `gives what was printed (beyond it: ${entry.beyond})`, () => {
        entry.holds(programme, imports);
      });
    });
  }
});
