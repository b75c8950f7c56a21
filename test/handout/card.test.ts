import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { calendarFile } from '../../src/handout/card/calendar.ts';
import { cardPage } from '../../src/handout/card/card.ts';
import { fittedCard } from '../../src/handout/card/fit.ts';
import { jobsOf } from '../../src/handout/card/jobs.ts';
import { workIn } from '../../src/handout/card/season.ts';
import type { Programme } from '../../src/model/programme.ts';
import { seasonName } from '../../src/text/card.ts';
import { redPear } from '../decisions/samples.ts';
import { document, generation, picksOf, plans, read } from '../engine/programmes.ts';

const NORTH = { bloomMonth: 4, ripeAfter: 5 };
const SOUTH = { bloomMonth: 10, ripeAfter: 5 };

function season(programme: Programme, plan: string, year: number, climate = NORTH, runs = 100) {
  const at = programme.plans.findIndex(({ id }) => id === plan);
  const entry = programme.plans[at];
  const [columns] = new Simulator(programme).runs([at], 0, runs);
  if (!entry || !columns) throw new Error('There is no such plan.');
  return jobsOf(programme, workIn(entry, columns, year), climate);
}

/** One cross in the first spring, nothing lost, everything sets: the years are exact. */
const certain = read(
  document({
    plans: plans([generation('f1', 5, { keep: { howMany: 1 } }), generation('f2', 5, { seedParents: picksOf('f1'), pollen: picksOf('f1'), after: 'f1' })]),
  }),
);

describe('the work of a season', () => {
  const plan = certain.plans[0];
  const [columns] = new Simulator(certain).runs([0], 0, 50);
  if (!plan || !columns) throw new Error('There is no plan.');

  it('begins with the pollination in the first spring, in every future', () => {
    const [first, second] = workIn(plan, columns, 0);
    expect(first).toMatchObject({ pollinate: 1, sow: 0, graft: 0, judge: 0, backup: 0 });
    expect(second).toMatchObject({ pollinate: 0 });
  });

  it('goes on with what the columns say, future by future', () => {
    for (let year = 0; year < 12; year += 1) {
      const [first] = workIn(plan, columns, year);
      const fruit = columns.generation(0, 'firstFruit');
      const last = columns.generation(0, 'lastWork');
      const proven = columns.run('yearProven');
      let judging = 0;
      for (let run = 0; run < columns.runs; run += 1) {
        const [from = -1, to = -1, end = -1] = [fruit[run], last[run], proven[run]];
        if (from !== -1 && from <= year && to >= year && (end === -1 || end >= year)) judging += 1;
      }
      expect(first?.judge).toBe(judging / columns.runs);
    }
  });

  it('is nothing in the years after the last', () => {
    expect(workIn(plan, columns, 500).every(({ pollinate, sow, judge }) => pollinate + sow + judge === 0)).toBe(true);
  });
});

describe('the jobs of a season', () => {
  it('of the first spring of a wide cross are bags, pollinating, counting the set, gathering, laying down the seed', () => {
    const jobs = season(redPear, 'wide-rescue', 0);
    expect(jobs.map(({ kind, month, yearsOn }) => [kind, month, yearsOn])).toEqual([
      ['bags', 3, 0],
      ['pollinate', 4, 0],
      ['countSet', 5, 0],
      ['gather', 9, 0],
      ['layDown', 10, 0],
    ]);
    expect(jobs[1]?.crosses).toEqual(['Old Hedgerow × Mill Quince']);
  });

  it('fall into the same order half a year later in the south, over the turn of the year', () => {
    const north = season(redPear, 'wide-rescue', 0);
    const south = season(redPear, 'wide-rescue', 0, SOUTH);
    expect(south.map(({ kind }) => kind)).toEqual(north.map(({ kind }) => kind));
    expect(south.map(({ month, yearsOn }) => [month, yearsOn])).toEqual([
      [9, 0],
      [10, 0],
      [11, 0],
      [3, 1],
      [4, 1],
    ]);
    expect([seasonName(2031, 4), seasonName(2031, 10), seasonName(2099, 10)]).toEqual(['Season 2031', 'Season 2031/32', 'Season 2099/00']);
  });

  it('of the second year have the seed sown a month before bloom, and the rescue at its month', () => {
    const rescue = redPear.plans.find(({ id }) => id === 'wide-rescue')?.generations[0]?.rescue;
    const jobs = season(redPear, 'wide-rescue', 1);
    expect(jobs.find(({ kind }) => kind === 'sow')).toMatchObject({ month: 3, yearsOn: 0 });
    expect(jobs.find(({ kind }) => kind === 'rescue')).toMatchObject({ month: 4 + Math.round(rescue?.month ?? 0), amount: rescue?.scions });
  });

  it('say how many flowers each cross gets, and all flowers are given', () => {
    const [first] = certain.plans[0]?.generations ?? [];
    const pollinate = season(certain, certain.plans[0]?.id ?? '', 0).find(({ kind }) => kind === 'pollinate');
    expect((pollinate?.amount ?? 0) * (pollinate?.crosses.length ?? 0)).toBeGreaterThanOrEqual(first?.flowers ?? Infinity);
  });
});

describe('the card', () => {
  const jobs = season(redPear, 'wide-rescue', 0);
  const options = { ...NORTH, paper: 'A6', year: redPear.startYear, mark: 'D', planName: 'Wide cross', date: '1 March 2031' } as const;

  it('is one page without scripts or anything from elsewhere, and escapes names', () => {
    const page = cardPage({ ...redPear, title: '<script>alert(1)</script>' }, jobs, options);
    expect(page).not.toMatch(/<script|https?:|url\(|@import|<link|<img/);
    expect(page).toContain('&lt;script&gt;');
  });

  it('has a line for every job, tally boxes for every cross, tags with the year, and the cautions', () => {
    const page = cardPage(redPear, jobs, options);
    expect(page.match(/class="job"/g)).toHaveLength(jobs.length);
    expect(page.match(/class="tally"/g)).toHaveLength(1);
    expect(page).toContain(`${String(redPear.startYear)}-1-…`);
    expect(page).toMatch(/cyanide.*livestock.*knives.*permit/is);
  });

  it('has a box for each ten flowers, and each month named once', () => {
    const page = cardPage(redPear, jobs, options);
    const flowers = redPear.plans.find(({ id }) => id === 'wide-rescue')?.generations[0]?.flowers ?? 0;
    expect(page.match(/<span class="box">/g)).toHaveLength(jobs.length + Math.ceil(flowers / 10));
    for (const month of ['March', 'April', 'May', 'September', 'October']) expect(page.split(`>${month}<`)).toHaveLength(2);
  });

  it('takes smaller letters for more jobs, and in the end leaves out what is least likely to be needed, and says so', () => {
    const [first] = jobs;
    if (!first) throw new Error('There is no job.');
    const many = (n: number) =>
      Array.from({ length: n }, (_, at) => ({ ...first, kind: 'sow' as const, generation: `Generation ${String(at)}`, share: 1 - at / 100 }));
    const sizes = [2, 8, 14].map((n) => fittedCard(many(n), 2031, 'A6').points);
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    expect(new Set(sizes).size).toBeGreaterThan(1);
    const crowded = fittedCard(many(60), 2031, 'A6');
    expect(crowded.jobs.length + crowded.left).toBe(60);
    expect(crowded.left).toBeGreaterThan(0);
    expect(crowded.jobs.at(-1)?.generation).toBe(`Generation ${String(crowded.jobs.length - 1)}`);
    expect(cardPage(redPear, many(60), options)).toContain(`and ${String(crowded.left)} jobs more`);
    expect(fittedCard(many(60), 2031, 'A5').jobs.length).toBeGreaterThan(crowded.jobs.length);
  });

  it('says so where a season has no job', () => {
    expect(cardPage(redPear, [], options)).toContain('nothing to do in this season');
  });
});

describe('the calendar file', () => {
  const jobs = season(redPear, 'wide-rescue', 0, SOUTH);
  const text = calendarFile(jobs, { year: 2031, key: 'abc-wide-rescue', title: 'Red pear, at the mill; “north wall”', stamp: '2031-03-01T10:00:00Z' });

  it('reads back as RFC 5545 wants it: whole months, one event a job, names of their own', () => {
    const events = new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent').map((part) => new ICAL.Event(part));
    expect(events.map(({ startDate, endDate }) => [startDate.toString(), endDate.toString()])).toEqual([
      ['2031-09-01', '2031-10-01'],
      ['2031-10-01', '2031-11-01'],
      ['2031-11-01', '2031-12-01'],
      ['2032-03-01', '2032-04-01'],
      ['2032-04-01', '2032-05-01'],
    ]);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(jobs.length);
    expect(events[1]?.summary).toContain('Old Hedgerow × Mill Quince');
  });

  it('has lines of at most 75 octets, ended as the standard says', () => {
    const lines = text.split('\r\n');
    expect(lines.every((line) => Buffer.byteLength(line) <= 75)).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(lines[0]).toBe('BEGIN:VCALENDAR');
  });
});
