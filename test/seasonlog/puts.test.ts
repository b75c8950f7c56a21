import { describe, expect, it } from 'vitest';
import type { Programme } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { learnRates } from '../../src/seasonlog/learned.ts';
import type { Learned } from '../../src/seasonlog/learned-types.ts';
import { putsBack, withPuts } from '../../src/seasonlog/puts.ts';
import { myCounts } from '../../src/text/log-learned.ts';
import { tenSeasons } from './orchard.ts';

const programme = tenSeasons();
const { rates } = learnRates(programme, myCounts);

function read(document: unknown): Programme {
  const reading = parseProgramme(document);
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join(' '));
  return reading.programme;
}
const of = (id: string): Learned => {
  const found = rates.find((one) => one.id === id);
  if (!found) throw new Error(`Nothing was learned of ${id}.`);
  return found;
};

describe('learned numbers put into the programme', () => {
  it('all at once make a document that reads, and leave nothing to take', () => {
    const taken = read(
      withPuts(
        programme,
        rates.flatMap(({ puts }) => puts),
      ),
    );
    expect(learnRates(taken, myCounts).rates.filter(({ used, newer }) => !used || newer)).toEqual([]);
    expect(taken.log).toEqual(programme.log);
  });

  it.each(['crosses/1/set', 'kinds/0/firstFruit/half', 'weather/springLuckSet'])('%s goes back to what stood before, past other edits', (id) => {
    const { puts } = of(id);
    const taken = read(withPuts(programme, puts));
    const renamed = { ...taken, title: 'Renamed' };
    const back = putsBack(renamed, puts, [taken, programme], myCounts);
    expect(back).not.toBeNull();
    expect(withPuts(renamed, back ?? [])).toEqual({ ...programme, title: 'Renamed' });
  });

  it('do not go back to a number that came from counts too, nor to another entry, nor where nothing is known of before', () => {
    const { puts } = of('crosses/1/set');
    const taken = read(withPuts(programme, puts));
    const earlierCounts = read(
      withPuts(programme, [{ ...puts[0]!, value: { low: 0.01, likely: 0.02, high: 0.5, source: { kind: 'counted', note: myCounts(2027, 2027) } } }]),
    );
    const turned = { ...programme, crosses: programme.crosses.toReversed() };
    expect(putsBack(taken, puts, [earlierCounts], myCounts)).toBeNull();
    expect(putsBack(taken, puts, [turned], myCounts)).toBeNull();
    expect(putsBack(taken, puts, [], myCounts)).toBeNull();
    expect(putsBack(taken, puts, [earlierCounts, programme], myCounts)).toEqual([{ path: puts[0]!.path, value: programme.crosses[1]!.set }]);
  });
});

describe('a number taken from counts', () => {
  it('can be taken again when more seasons were counted since', () => {
    const older = parseProgramme(tenSeasons());
    if (!older.ok) throw new Error('It does not read.');
    const first = { ...older.programme, log: { batches: older.programme.log.batches.filter(({ year }) => year < 2029) } };
    const taken = read(
      withPuts(
        first,
        learnRates(first, myCounts).rates.flatMap(({ puts }) => puts),
      ),
    );
    const since = learnRates({ ...taken, log: older.programme.log }, myCounts).rates;
    const set = since.find(({ what }) => what === 'set')!;
    expect(set).toMatchObject({ used: true, newer: true });
    expect(since.find(({ what }) => what === 'luckOfSet')).toMatchObject({ used: true, newer: true });
  });
});

describe('curves of belief', () => {
  /** Area and mean by the trapezoid rule. */
  const moments = (curve: Learned['curves']['after']) =>
    curve.slice(1).reduce(
      (sum, [x, y], i) => {
        const [x0, y0] = curve[i] ?? [0, 0];
        const area = ((x - x0) * (y + y0)) / 2;
        return { area: sum.area + area, mean: sum.mean + (area * (x + x0)) / 2 };
      },
      { area: 0, mean: 0 },
    );

  it.each(['crosses/0/set', 'crosses/1/germination', 'kinds/0/firstFruit/ninety'])(
    'of %s hold all belief around its mean, on an axis that holds nine in ten',
    (id) => {
      const { after, curves } = of(id);
      const { area, mean } = moments(curves.after);
      // A thousandth of the height and one two-hundredth of the belief are left off; the rest is the rule of the trapezoid on some thirty points.
      expect(area).toBeGreaterThan(0.96);
      expect(area).toBeLessThan(1.04);
      expect(Math.abs(mean / area - after.mean)).toBeLessThan(0.1 * after.sd);
      expect(curves.to).toBeGreaterThan(after.nine.high);
      expect(moments(curves.before ?? []).area).toBeLessThan(1.04);
    },
  );

  it('show what the programme states where it has its number from the counts', () => {
    const set = of('crosses/1/set');
    const used = learnRates(read(withPuts(programme, set.puts)), myCounts).rates.find(({ id }) => id === set.id)!;
    const { area, mean } = moments(used.curves.before ?? []);
    expect(used.used).toBe(true);
    expect(area).toBeCloseTo(1, 1);
    expect(Math.abs(mean / area - used.before!.mean)).toBeLessThan(0.1 * set.after.sd);
  });
});
