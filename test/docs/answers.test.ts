import { describe, expect, it } from 'vitest';
import { copies } from '../../src/decisions/copies.ts';
import { howMany } from '../../src/decisions/how-many.ts';
import { ifs } from '../../src/decisions/ifs.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { open } from '../../src/decisions/open.ts';
import type { Answer, AskOptions, Question } from '../../src/decisions/question.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import type { Interval } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { percent, percentRange } from '../../src/text/charts.ts';
import { differenceInWords, differenceRange } from '../../src/text/pay-figures.ts';
import { read } from '../repo/files.ts';
import { example, goalFrom, until } from './variants.ts';

// The same programme, word and number of futures give the same figures: what the page prints must stand there to the digit.

const page = read('docs/answers.md').replace(/\s+/g, ' ');
const sections = page.split(/ (?=## )/);
const section = (number: number): string => sections.find((text) => text.startsWith(`## ${String(number)}. `)) ?? '';

const plain = (text: string): string => text.replace(/\s+/g, ' ');
const share = ({ value, low, high }: Interval): string => plain(`${percent(value)} (${percentRange(low, high)})`);
const difference = (change: { readonly chance: Interval; readonly clear: boolean } | null): string =>
  change === null ? '' : plain(`${differenceInWords(change.chance, change.clear)} (${differenceRange(change.chance)})`);

async function asked<A extends Answer, O extends AskOptions>(question: Question<A, O>, programme: Programme, options: O): Promise<A> {
  const answer = await question.ask(programme, options, inlineFutures(), () => undefined);
  if (answer.cannotSay !== null) throw new Error(`There is no answer: ${answer.cannotSay}.`);
  return answer;
}

/** Chance of a proven tree of one plan, over the programme's own futures. */
function chance(programme: Programme, plan: string): string {
  const at = programme.plans.findIndex(({ id }) => id === plan);
  const [columns] = new Simulator(programme).runs([at], 0, programme.runs);
  const proven = columns?.run('yearProven').reduce((sum, year) => sum + (year >= 0 ? 1 : 0), 0) ?? 0;
  return share(wilson(proven, programme.runs));
}

describe('docs/answers.md', () => {
  it('works through twenty questions, each with what to do, what comes out and what it means', () => {
    for (let number = 1; number <= 20; number += 1) {
      expect(section(number), String(number)).toMatch(/\*\*Do:\*\*/);
      expect(section(number), String(number)).toMatch(/\*\*So:\*\*/);
    }
    expect(sections.filter((text) => /^## \d/.test(text))).toHaveLength(20);
  });

  it('2: the harder the goal', () => {
    expect(section(2)).toContain(`| keeps 14 weeks | ${chance(goalFrom(example('red-pear'), 14), 'brother-sister')} |`);
  });

  it('3: peach, by hand in place of open', async () => {
    const answer = await asked(open, example('peach-quick'), { plan: 'gathered' });
    const [stands, byHand] = answer.sites[0]!.ways;
    expect(section(3)).toContain(`| ${share(stands!.outcome.chance)} | ${share(byHand!.outcome.chance)}, with Amber Lark | ${difference(byHand!.minusAsItStands)} |`);
  });

  it('4: what rates alone say, before any future is run', async () => {
    const { exact } = await asked(howMany, example('red-pear'), { plan: 'wide-rescue', lever: 'flowers', generation: 'd1', runs: 2 });
    const { flowers, seedlings } = exact!;
    const range = (from: typeof flowers) => `${String(from.at)} (${String(from.low)}–${String(from.high)})`;
    expect(section(4)).toContain(`${range(flowers)} flowers in all, or ${range(seedlings)} seedlings`);
  });

  it('10: the last judging year brought forward', () => {
    const early = until(example('red-pear'), 2045);
    expect(section(10)).toContain(`D has ${chance(early, 'wide-rescue')} and B ${chance(early, 'brother-sister')}`);
  });

  it('14: twice the hands', async () => {
    const { lines } = await asked(ifs, example('red-pear'), { plan: 'wide-rescue', if: 'hands' });
    const [twice] = lines;
    expect(section(14)).toContain(`from ${String(twice!.year)} on: ${share(twice!.outcome.chance)}, ${difference(twice!.minusAsItStands)}`);
  });

  it('16: the picks as mothers', async () => {
    const answer = await asked(open, example('half-result'), { plan: 'nan-mother', generation: 'a2' });
    const [, swapped, wind] = answer.sites.find(({ generation }) => generation === 'a2')!.ways;
    expect(section(16)).toContain(`the picks as mothers ${share(swapped!.outcome.chance)}, ${difference(swapped!.minusAsItStands)}`);
    expect(section(16)).toContain(`open pollen ${share(wind!.outcome.chance)}`);
  });

  it('19: copies of the only tree', async () => {
    const { ways } = await asked(copies, example('red-pear'), { plan: 'wide-rescue' });
    for (const way of ways.filter(({ gardens, asItStands }) => gardens === 1 && !asItStands))
      expect(section(19)).toContain(
        `| ${String(way.copies)} | ${plain(percent(way.lostBy.at(-1)!))} | ${share(way.outcome.chance)} | ${difference(way.minusAsItStands)} |`,
      );
  });
});
