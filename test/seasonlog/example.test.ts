import { describe, expect, it } from 'vitest';
import ten from '../../sims/examples/red-pear-ten-seasons.json';
import pear from '../../sims/examples/red-pear.json';
import { parseProgramme } from '../../src/model/read.ts';
import { planKeys } from '../../src/state/plan-keys.ts';

const reading = parseProgramme(ten);
const before = parseProgramme(pear);

describe('the example of ten seasons', () => {
  it('is the same orchard: its plans give the same futures as those of the year 2027', () => {
    if (!reading.ok || !before.ok) throw new Error('cannot be read');
    expect(planKeys(reading.programme)).toEqual(planKeys(before.programme));
  });

  it('holds ten seasons, a frost, a batch that failed, a tree without label and one number that does not add up', () => {
    if (!reading.ok) throw new Error('cannot be read');
    const { batches } = reading.programme.log;
    const years = batches.flatMap(({ year, counts }) => [year, ...counts.flatMap(({ when }) => (when === undefined ? [] : [Number(when.slice(0, 4))]))]);
    expect(years).toEqual(expect.arrayContaining([2027, 2028, 2029, 2030, 2031, 2032, 2034, 2035, 2036]));
    expect(Math.max(...years) - 2027 + 1).toBe(10);
    expect(batches.some(({ events }) => events.some(({ what }) => what === 'frost'))).toBe(true);
    expect(batches.filter(({ apart }) => apart)).toHaveLength(1);
    expect(batches.flatMap(({ trees }) => trees).some(({ status }) => status === 'labelLost')).toBe(true);
    expect(reading.notes.filter(({ path }) => path[0] === 'log').map(({ message }) => message)).toEqual(['15 seedlings of 12 seeds sown does not add up']);
  });
});
