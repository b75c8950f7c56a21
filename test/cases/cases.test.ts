import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { readProgramme } from '../../src/model/read.ts';
import { cases, IDS } from './cases.ts';

describe('real crosses and records (public reports, figures as printed)', () => {
  it('each case is entered as a programme or marked out of scope, with the reason', () => {
    expect(cases.map(({ id }) => id).sort()).toEqual(IDS);
    expect(cases.filter(({ verdict }) => verdict === 'entered').length).toBeGreaterThanOrEqual(15);
    for (const entry of cases) if (entry.verdict === 'outOfScope') expect(entry.reason.length, entry.id).toBeGreaterThan(20);
  });

  for (const entry of cases) {
    if (entry.verdict !== 'entered') continue;
    describe(`${entry.id}: ${entry.what}`, () => {
      it('is read from a file without a problem, says the same when it is written again, and runs', () => {
        const reading = readProgramme(JSON.stringify(entry.programme()));
        expect(reading.ok ? reading.notes : reading.problems).toEqual([]);
        if (!reading.ok) return;
        expect(readProgramme(JSON.stringify(reading.programme))).toEqual(reading);
        expect(new Simulator(reading.programme).runs([0], 0, 1)[0]!.run('flowers')[0]).toBeGreaterThan(0);
      });
      it(entry.beyond === undefined ? 'gives what was printed' : `gives what was printed (beyond it: ${entry.beyond})`, entry.holds);
    });
  }
});
