import { describe, expect, it } from 'vitest';
import { roughMeasure as measure } from '../../src/charts/measure.ts';
import { openLayout, rowUnder } from '../../src/charts/open-or-crossed/layout.ts';
import type { OpenSite, OpenWay } from '../../src/decisions/open.ts';
import type { Verdict } from '../../src/decisions/open-rate.ts';
import { missingWords, openFinding, rateWords, readWay, wayNotes } from '../../src/text/pay-open.ts';

const YEARS = { startYear: 2027, lastYear: 2057 };
const spread = { mean: 200, p10: 5, p50: 180, p90: 400 };

/** An invented way: chance, years of 1, 5 and 9 in 10, and what it brings against the plan as it stands. */
function way(
  how: OpenWay['how'],
  chance: number,
  years: readonly (number | null)[],
  against: { chance: number; years: number; hours: number } | null,
): OpenWay {
  const about = (value: number, half: number) => ({ value, low: value - half, high: value + half });
  const verdict = (): Verdict => {
    if (!against || Math.abs(against.years) < 0.2) return 'unclear';
    if (against.years > 0) return against.hours > 0 ? 'costs' : 'better';
    return against.hours < 0 ? 'saves' : 'worse';
  };
  const [p10, p50, p90] = years.map((year) => year ?? null);
  return {
    how,
    mothers: [{ name: 'Old Hedgerow', picks: false }],
    fathers: how === 'open' ? [] : [{ name: 'Wide cross', picks: true }],
    air: how === 'open' ? 'pears around the mill' : null,
    flowers: how === 'open' ? null : 40,
    flowersReckoned: false,
    sameFigures: how === 'swapped',
    asItStands: against === null,
    outcome: {
      futures: 1000,
      chance: about(chance, 0.03),
      trulyGood: about(0.7, 0.02),
      yearProven: { p10: p10 ?? null, p50: p50 ?? null, p90: p90 ?? null },
      seedlings: spread,
      fruiting: spread,
      grafts: spread,
      treeYears: spread,
      totalHours: spread,
      busiestHours: spread,
    },
    minusAsItStands:
      against === null
        ? null
        : {
            chance: about(against.chance, 0.02),
            clear: Math.abs(against.chance) > 0.02,
            sooner: about(0.2, 0.02),
            later: about(0.2, 0.02),
            seedlings: about(0, 1),
            grafts: about(0, 1),
            treeYears: about(0, 1),
            totalHours: about(against.hours, 5),
          },
    yearsForHours:
      against === null
        ? null
        : {
            yearsGained: about(against.years, 0.2),
            moreHours: about(against.hours, 5),
            verdict: verdict(),
            hoursPerYear: verdict() === 'costs' || verdict() === 'saves' ? about(against.hours / against.years, 4) : null,
          },
  };
}

const ways = [
  way('hand', 0.6, [2034, 2045, null], null),
  way('swapped', 0.4, [2036, null, null], { chance: -0.2, years: -2, hours: -60 }),
  way('open', 0.05, [null, null, null], { chance: -0.55, years: -6, hours: 40 }),
];
const site = (list: readonly OpenWay[], missing: OpenSite['missing'] = []): OpenSite => ({
  generation: 'g',
  name: 'Cross',
  position: 0,
  ways: list,
  missing,
  clear: true,
});
const plain = (pieces: readonly { readonly text: string }[]) =>
  pieces
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');
const said = (text: string | readonly string[]) => [text].flat().join(' ').replaceAll('\u00a0', ' ');

describe('ways to pollinate, laid out', () => {
  it.each([320, 390, 760, 1000])('one row each, nothing outside %i px, no row on another', (width) => {
    const { rows, height, calendar } = openLayout(ways, { ...YEARS, width, measure });
    expect(rows).toHaveLength(3);
    rows.forEach((row, i) => {
      if (i > 0) expect(row.top).toBeGreaterThanOrEqual(rows[i - 1]!.bottom);
      for (const { text, x, y, kind } of row.lines) {
        expect(x + measure(text, kind === 'parents' || kind === 'truly' ? 16 : 17, kind !== 'parents')).toBeLessThanOrEqual(width + 0.5);
        expect(y).toBeLessThanOrEqual(row.bottom);
        expect(y).toBeGreaterThan(row.top);
      }
      expect(row.chance.end).toBeLessThanOrEqual(width);
      expect(row.year.y).toBeLessThanOrEqual(row.bottom);
      if (row.bar) expect(row.bar.to).toBeLessThanOrEqual(calendar.horizon);
    });
    expect(rows.at(-1)!.bottom).toBeLessThanOrEqual(height);
    rows.forEach(({ top }, i) => expect(rowUnder(rows, top + 1)).toBe(i));
    expect(rowUnder(rows, -5)).toBeNull();
  });

  it('years on the calendar: from 1 in 10 to 9 in 10, on beyond the last judging year where that is not reached, with the half on it', () => {
    const { rows, calendar } = openLayout([...ways, way('self', 0.95, [2030, 2033, 2040], { chance: 0.3, years: 5, hours: -1 })], {
      ...YEARS,
      width: 1000,
      measure,
    });
    expect(rows[0]!.bar).toEqual({ from: calendar.x(2034), to: calendar.horizon, open: true });
    expect(rows[0]!.half).toBe(calendar.x(2045));
    expect([rows[1]!.half, rows[1]!.year.text]).toEqual([null, 'half: not by 2057']);
    expect([rows[2]!.bar, rows[2]!.year.text]).toEqual([null, 'fewer than 1 in 10 ever']);
    expect(rows[3]!.bar).toEqual({ from: calendar.x(2030), to: calendar.x(2040), open: false });
    expect(rows[0]!.chance.to - rows[0]!.chance.x).toBeCloseTo(0.6 * (rows[0]!.chance.end - rows[0]!.chance.x), 10);
  });
});

describe('open or crossed, mother or father, in words', () => {
  it('says which wins, by how much, and what a year costs', () => {
    expect(plain(openFinding(site(ways)))).toBe('Cross by hand: +55 in 100 against open pollen; make Old Hedgerow the mother: +20 in 100');
    const notes = said(wayNotes(site(ways)));
    expect(notes).toContain('As the plan stands (crossed by hand): a proven tree 6 in 10; of ten trees you would call proven, about seven truly are.');
    expect(notes).toContain('The other way round: −20 in 100 (−22 to −18); 2 years later on average, 60 hours less: each year lost saves 30 hours (25 to 35).');
    expect(notes).toContain('Open-pollinated: −55 in 100 (−57 to −53); 6 years later on average, 40 hours more.');
    expect(said(ways.flatMap(({ yearsForHours }) => (yearsForHours ? [rateWords(yearsForHours)] : [])))).toBe(
      'saves 30 (25 to 35) for each year lost later, and saves no hours',
    );
  });

  it('no clear difference, when so; and likelier but later is said as both', () => {
    const same = [
      ways[0]!,
      way('swapped', 0.6, [2034, 2045, null], { chance: 0, years: 0, hours: 0 }),
      way('open', 0.6, [2034, 2046, null], { chance: 0.01, years: 0.1, hours: 1 }),
    ];
    expect(plain(openFinding(site(same)))).toBe('Open or crossed: no clear difference in the chance; mother or father: no clear difference');
    expect(said(wayNotes(site(same)))).toContain('no clear difference in the years, no clear difference in hours');
    const later = [ways[0]!, way('open', 0.72, [2038, 2048, null], { chance: 0.12, years: -0.9, hours: 500 })];
    expect(plain(openFinding(site(later)))).toBe('Leave it to the open pollen: +12 in 100 against crossed by hand, though 0.9 years later on average');
    const doubtful = (value: number, share: number) => {
      const one = way('open', 0.72, [2038, 2048, null], { chance: 0.12, years: value, hours: 500 });
      return { ...one, outcome: { ...one.outcome, trulyGood: { value: share, low: share - 0.01, high: share + 0.01 } } };
    };
    expect(plain(openFinding(site([ways[0]!, doubtful(-0.9, 0.57)])))).toBe(
      'Open pollen has a proven tree oftener: +12 in 100 against crossed by hand, though 0.9 years later on average, and of ten called proven about six truly are, not seven',
    );
    expect(plain(openFinding(site([ways[0]!, doubtful(2, 0.66)])))).toMatch(
      / against crossed by hand, though of 100 called proven about 66 truly are, not \d+$/,
    );
    const costs = way('open', 0.72, [2033, 2040, null], { chance: 0.12, years: 2, hours: 100 });
    expect(said(wayNotes(site([ways[0]!, costs])))).toContain('each year gained costs 50 hours');
  });

  it('names what is missing where a way is not known', () => {
    const swapped = {
      how: 'swapped',
      mothers: [{ name: 'Mill Quince', picks: false }],
      fathers: [{ name: 'Old Hedgerow', picks: false }],
      entry: { seed: 'quince', pollen: 'pear' },
      noPool: false,
      problem: null,
    } as const;
    expect(missingWords(swapped)).toContain('Mill Quince × Old Hedgerow: there is no cross entry quince × pear, seed parent first.');
    expect(missingWords({ ...swapped, how: 'open', entry: null, noPool: true })).toContain('no pollen in the air is described');
    expect(plain(openFinding(site([ways[0]!, ways[2]!], [swapped])))).toContain('; the other way round is not known');
  });

  it('reads a row aloud', () => {
    expect(said(readWay(ways[0]!, 2057))).toBe(
      'crossed by hand, Old Hedgerow × picks of “Wide cross”: 60 % (57–63), 7 of 10 truly good, half by 2045, 1 in 10 by 2034, about 200 hours.',
    );
    expect(said(readWay(ways[2]!, 2057))).toContain('fewer than 1 in 10 ever');
  });
});
