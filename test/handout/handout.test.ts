import { beforeAll, describe, expect, it } from 'vitest';
import { FIRST_CHOICES, type Choices, type LeaveOut } from '../../src/handout/choices.ts';
import { apportioned } from '../../src/handout/futures.ts';
import { handoutOf, ledeOf, type Handout } from '../../src/handout/handout.ts';
import { leaveOut } from '../../src/handout/leave-out.ts';
import type { Programme } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { FAILURES, type Outlook } from '../../src/results/outlook.ts';
import { planKeys } from '../../src/state/plan-keys.ts';
import { EXAMPLES } from '../damage/damages.ts';
import { exampleOf, outlookFor } from './sample.ts';

const RUNS = 150;
const IMPRINT = { date: '2026-11-25', link: 'https://orchard.example/#/story/abc' };
const leaving = (part: Partial<LeaveOut>): Choices => ({ ...FIRST_CHOICES, leaveOut: { ...FIRST_CHOICES.leaveOut, ...part } });

function made(programme: Programme, outlook: Outlook, choices: Choices = FIRST_CHOICES): Handout {
  const handout = handoutOf(programme, outlook, choices, IMPRINT, 'file.json');
  if (!handout) throw new Error('no handout');
  return handout;
}

const outlooks = new Map<string, Outlook>();
beforeAll(async () => {
  for (const name of EXAMPLES) outlooks.set(name, await outlookFor(exampleOf(name), RUNS));
}, 120_000);
const of = (name: string, choices?: Choices): Handout => made(exampleOf(name), outlooks.get(name)!, choices);

describe.each(EXAMPLES)('the sheet of %s', (name) => {
  it('leads with the surest plan, and says its chance, its last year and how often there is nothing', () => {
    const handout = of(name);
    const most = Math.max(...outlooks.get(name)!.plans.map(({ chance }) => chance.value));
    expect(handout.lead.chance.value).toBe(most);
    expect(handout.headline.answer.map(({ text }) => text).join('')).toContain(`by ${String(exampleOf(name).lastYear)}.`);
    const nothing = 100 - handout.futures[0]!.count;
    expect(handout.nothing).toContain(nothing === 0 ? 'fewer than 1 of 100' : `In ${String(nothing)} of 100 futures`);
    expect(Math.abs(nothing - 100 * (1 - most))).toBeLessThan(1);
  });

  it('counts a hundred futures, none further than one from its share', () => {
    const { futures, lead } = of(name);
    expect(futures.reduce((sum, { count }) => sum + count, 0)).toBe(100);
    expect(new Set(futures.map(({ mark }) => mark)).size).toBe(futures.length);
    const named = Math.max(...FAILURES.map((reason) => lead.failures[reason]));
    expect(futures.some(({ count }) => Math.abs(count - 100 * named) < 1)).toBe(true);
  });

  it('asks for wood of each single tree the plan uses, for first fruit to be looked for, and for what the goal goes by to be noted', () => {
    const programme = exampleOf(name);
    const { asks, lead } = of(name);
    const plan = programme.plans.find(({ id }) => id === lead.id)!;
    const used = JSON.stringify(plan.generations.map(({ seedParents, pollen }) => [seedParents, pollen]));
    const single = programme.trees.filter(({ id, copies }) => copies === 1 && used.includes(`"tree":"${id}"`));
    const second = asks.find(({ what }) => what.includes('second copy'));
    for (const tree of single) expect(second?.who).toContain(tree.name);
    if (single.length > 0) expect(second?.when).toBe(`before spring ${String(programme.startYear)}`);
    expect(asks.some(({ what }) => what.startsWith('look for first fruit'))).toBe(true);
    const judged = asks.find(({ what }) => what.startsWith('note for each tree'));
    for (const condition of programme.goal.conditions)
      if ('trait' in condition) expect(judged?.what).toContain(programme.traits.find(({ id }) => id === condition.trait)!.name);
    for (const { when } of asks)
      for (const [year] of when.matchAll(/\d{4}/g)) {
        expect(Number(year)).toBeGreaterThanOrEqual(programme.startYear);
        expect(Number(year)).toBeLessThanOrEqual(programme.lastYear);
      }
  });

  it('rests on estimates of the programme with their sources, and says how many of all are guesses', () => {
    const { rests, tally } = of(name);
    expect(rests.length).toBeGreaterThan(4);
    expect(new Set(rests.map(({ label }) => label)).size).toBe(rests.length);
    expect(tally).toMatch(/^Of \d+ estimates in the programme .*guess/);
    const text = JSON.stringify(exampleOf(name));
    for (const { note } of rests) expect(text).toContain(JSON.stringify(note).slice(1, -1));
  });
});

describe('leaving out', () => {
  const names = (programme: Programme) => [...programme.trees, ...programme.gardens].map((entry) => entry.name);

  it.each(EXAMPLES)('names: no name of a tree or garden of %s is left on the sheet or in the link, not even in an id', (name) => {
    const programme = exampleOf(name);
    const choices = leaving({ trees: true, gardens: true });
    const told = leaveOut(programme, choices.leaveOut);
    const sheet = JSON.stringify(of(name, choices));
    for (const text of [JSON.stringify(told), sheet])
      for (const each of names(programme)) {
        expect(text.toLowerCase()).not.toContain(each.toLowerCase());
        expect(text).not.toContain(
          each
            .toLowerCase()
            .replace(/[^a-z]+/g, '-')
            .replace(/^-|-$/g, ''),
        );
      }
    expect(JSON.stringify(told)).toContain('Tree 1');
    expect(parseProgramme(told).ok).toBe(true);
    expect(of(name, choices).imprint.anew).toBe(true);
  });

  it('notes and title: gone, published sources kept, and every future as it was', () => {
    const programme = exampleOf('red-pear');
    const told = leaveOut(programme, leaving({ notes: true, title: true }).leaveOut);
    const text = JSON.stringify(told);
    expect(text).not.toContain('Red pear');
    expect(text).not.toContain(programme.plans[0]!.note!);
    expect(text).toContain('Acta Hortic.');
    expect(text).not.toContain('A third of the published figure, for bags.');
    // What the futures are drawn by is the same, sources apart.
    const bare = (document: Programme) =>
      [...planKeys({ ...document, plans: document.plans.map(({ note: _, ...plan }) => plan) }).entries()].map(([id, key]) => [
        id,
        key.replace(/"note":"(?:[^"\\]|\\.)*",?/g, ''),
      ]);
    expect(bare(told)).toEqual(bare(programme));
  });

  it('a plan: it is on neither sheet nor link, and another leads', () => {
    const lead = of('red-pear').lead.id;
    const choices = leaving({ plans: [lead] });
    expect(of('red-pear', choices).plans.map(({ id }) => id)).not.toContain(lead);
    expect(leaveOut(exampleOf('red-pear'), choices.leaveOut).plans.map(({ id }) => id)).not.toContain(lead);
    expect(of('red-pear', choices).lead.id).not.toBe(lead);
  });

  it('any name drops the season log with its tags, places and owners', () => {
    const programme = exampleOf('red-pear');
    const log = {
      batches: [{ id: 'b', name: 'Batch', year: 2027, seed: 'unknown', pollen: 'open', trees: [{ tag: '7', copies: [{ where: 'Vale', whose: 'Somebody' }] }] }],
    };
    const reading = parseProgramme({ ...programme, log });
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    expect(JSON.stringify(leaveOut(reading.programme, FIRST_CHOICES.leaveOut))).toContain('Somebody');
    for (const part of ['trees', 'gardens', 'notes', 'log'] as const)
      expect(JSON.stringify(leaveOut(reading.programme, leaving({ [part]: true }).leaveOut))).not.toContain('Somebody');
  });
});

it('what is wanted can be said in own words', () => {
  expect(of('red-pear', { ...FIRST_CHOICES, wanted: ' A red pear. ' }).headline.wanted).toBe('A red pear.');
  expect(of('red-pear').headline.wanted).toBe('Wanted: red flesh and keeping 10\u00a0weeks or more.');
  expect(of('half-result').headline.wanted).toContain('stoneless in part in one crop at most');
  expect(of('peach-quick').headline.wanted).toContain('never ');
  expect(of('backcross-apple').headline.wanted).toMatch(/fruit weight 175\sg or more/);
  expect(ledeOf(of('red-pear').said)).not.toMatch(/\byour?\b/);
});

it('whole numbers add up and stay within one of their shares', () => {
  expect(apportioned([0.333, 0.333, 0.334], 100)).toEqual([33, 33, 34]);
  expect(apportioned([0.005, 0.995], 100)).toEqual([1, 99]);
  expect(apportioned([1, 0], 100)).toEqual([100, 0]);
});
