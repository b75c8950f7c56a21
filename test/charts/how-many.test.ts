import { describe, expect, it } from 'vitest';
import { howManyLayout, type HowManyLayout } from '../../src/charts/how-many/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { howMany, type HowManyAnswer } from '../../src/decisions/how-many.ts';
import type { LeverId } from '../../src/decisions/how-many-levers.ts';
import {
  backwardsWords,
  chainWords,
  exactWords,
  howManyFinding,
  howManyNotes,
  howManySummary,
  howManyText,
  pointWords,
  readOffLines,
} from '../../src/text/pay-how-many.ts';
import { leverWords } from '../../src/text/pay-how-many-names.ts';
import { redPear, told } from '../decisions/samples.ts';

const asked = async (plan: string, lever: LeverId = 'flowers', programme = redPear, runs = 200): Promise<HowManyAnswer> =>
  (await told(howMany, programme, { plan, lever, runs })).answer;

const wide = await asked('wide-rescue');
const level = await asked('brother-sister');
const backups = await asked('wide-rescue', 'backups');
const busy = await asked('wide-rescue', 'flowers', { ...redPear, limits: { ...redPear.limits, hoursPerYear: 35 } });
const answers = [wide, level, backups, busy];

const WIDTHS = [288, 358, 519, 542, 760, 1144];
const layouts = (answer: HowManyAnswer): readonly HowManyLayout[] => WIDTHS.map((width) => howManyLayout(answer, { width, measure: roughMeasure, mark: 'D' }));
const plain = (words: string) => words.replaceAll('\u00a0', ' ');
const said = (words: readonly { readonly text: string }[]) => plain(words.map(({ text }) => text).join(''));

describe('the picture of chances against a number', () => {
  it('keeps every word inside, at every width', () => {
    for (const answer of answers)
      for (const { width, height, panel, hours, limit } of layouts(answer)) {
        const words = [
          ...panel.words,
          ...panel.across.map((tick) => ({ ...tick, y: 0 })),
          ...hours.map((tick) => ({ ...tick, y: 0 })),
          ...(limit ? [limit.words] : []),
          ...panel.ends.flatMap(({ name, value, x, y }) => [name, value ?? ''].map((text) => ({ text, x, y, anchor: 'start' as const }))),
        ];
        for (const { text, x, y, anchor } of words) {
          const wideness = roughMeasure(text, 17);
          const left = anchor === 'start' ? x : anchor === 'end' ? x - wideness : x - wideness / 2;
          expect(left, `${text} at ${String(width)}`).toBeGreaterThanOrEqual(-2);
          // The rough measure is good to a tenth.
          expect(left + 0.9 * wideness, `${text} at ${String(width)}`).toBeLessThanOrEqual(width + 2);
          expect(y).toBeLessThanOrEqual(height);
        }
      }
  });

  it('leaves out numbers of an axis that would touch, never the present one', () => {
    for (const answer of answers)
      for (const { panel, hours } of layouts(answer)) {
        for (const ticks of [panel.across, hours]) {
          const shown = ticks.filter(({ text }) => text !== '');
          expect(shown.length).toBeGreaterThanOrEqual(2);
          shown.slice(1).forEach(({ x, text }, i) => {
            const before = shown[i]!;
            expect(x - before.x).toBeGreaterThanOrEqual((roughMeasure(text, 17) + roughMeasure(before.text, 17)) / 2);
          });
        }
        expect(panel.across[answer.points.findIndex(({ asItStands }) => asItStands)]!.text).toBe(String(answer.present));
      }
  });

  it('has a line and a band a year, told apart by dashes, the last year solid', () => {
    const [layout] = layouts(wide);
    expect(layout!.panel.curves.map(({ dash }) => dash)).toEqual(['2 5', '9 5', null]);
    expect(layout!.panel.ends.map(({ name }) => name)).toEqual(wide.years.map(String));
    layout!.panel.bands.forEach(({ points }, i) =>
      points.forEach(({ low, high, x }, p) => {
        const line = layout!.panel.curves[i]!.points[p]!;
        expect(line.x).toBe(x);
        expect(low).toBeGreaterThanOrEqual(line.y);
        expect(high).toBeLessThanOrEqual(line.y);
      }),
    );
    // Words at the ends of the lines stand clear of each other.
    const tops = layout!.panel.ends.map(({ y }) => y).sort((a, b) => a - b);
    tops.slice(1).forEach((y, i) => expect(y - tops[i]!).toBeGreaterThanOrEqual(38));
  });

  it('rings what is read off on its rule and on its line, and nothing else', () => {
    for (const answer of answers)
      for (const { panel, levels } of layouts(answer)) {
        const found = answer.readOffs.filter(({ at, already }) => at !== null && !already);
        expect(panel.rings).toHaveLength(found.length);
        panel.rings.forEach(({ x, y }, i) => {
          const { chance, year, at } = found[i]!;
          expect(y).toBeCloseTo(levels[[0.5, 0.8, 0.95].indexOf(chance)]!.y, 9);
          const values = answer.points.map(({ value }) => value);
          const after = values.findIndex((value) => value >= at!);
          const line = panel.curves[answer.years.indexOf(year)]!.points;
          expect(x).toBeGreaterThanOrEqual(line[after - 1]!.x);
          expect(x).toBeLessThanOrEqual(line[after]!.x);
          expect(y).toBeGreaterThanOrEqual(line[after]!.y - 1e-9);
          expect(y).toBeLessThanOrEqual(line[after - 1]!.y + 1e-9);
        });
      }
  });

  it('draws the limit where half of the futures use it up, and only there', () => {
    const { limit, places } = layouts(busy)[3]!;
    const hours = busy.points.map(({ outcome }) => outcome.busiestHours.p50);
    const after = hours.findIndex((n) => n >= 35);
    expect(after).toBeGreaterThan(0);
    expect(limit!.x).toBeGreaterThan(places[after - 1]!.x);
    expect(limit!.x).toBeLessThanOrEqual(places[after]!.x);
    expect(limit!.words.text).toBe('your 35 hours');
    expect(layouts(wide)[3]!.limit).toBeNull();
  });

  it('shades the numbers past which more buys little, and puts the plan’s letter on the last year’s line', () => {
    const layout = layouts(level)[3]!;
    expect(level.enough).toBeLessThan(level.present);
    expect(layout.level!.from).toBe(layout.places[level.points.findIndex(({ value }) => value === level.enough)]!.x);
    const present = level.points.findIndex(({ asItStands }) => asItStands);
    expect(layout.present).toMatchObject({ mark: 'D', plan: 'brother-sister' });
    expect(layout.present!.x).toBeCloseTo(layout.places[present]!.x, 9);
    expect(layout.present!.y).toBeCloseTo(layout.places[present]!.ys.at(-1)!, 9);
  });

  it('begins at none where none is a choice', () => {
    expect(backups.points[0]!.value).toBe(0);
    const xs = layouts(backups)[4]!.places.map(({ x }) => x);
    expect(xs[1]! - xs[0]!).toBeCloseTo(xs[2]! - xs[1]!, 9);
  });
});

describe('words about a number', () => {
  it('say more, fewer, or as good', () => {
    expect(said(howManyFinding(wide))).toMatch(
      /^\d+ flowers each spring, not 40, would raise the chance of a proven tree by 2057 from (\d in 10|\d+ %) to (\d in 10|\d+ %)/,
    );
    expect(said(howManyFinding(level))).toMatch(
      /^\d+ flowers each spring would do as well as 40: no clear difference in the chance of a proven tree by 2057, \d in 10\.$/,
    );
    expect(said(howManyFinding({ ...level, present: level.enough }))).toMatch(/^\d+ flowers each spring are as good as any number tried/);
    expect(said(howManyFinding({ ...wide, points: [] }))).toBe('How many flowers?');
  });

  it('say what is read off, and what is not', () => {
    const read = { year: 2057, chance: 0.8, already: false, at: 183, low: 152, high: 231 };
    expect(readOffLines(read)).toEqual(['about 180', '150–230']);
    expect(readOffLines({ ...read, high: null })).toEqual(['about 180', '150–more than tried']);
    expect(readOffLines({ ...read, at: 22.7, low: 20.6, high: 25.1 })).toEqual(['about 23', '21–25']);
    expect(readOffLines({ ...read, at: 5, already: true })).toEqual(['5 or fewer', '']);
    expect(readOffLines({ ...read, at: null, low: null, high: null })).toEqual(['no', '']);
  });

  it('plan backwards to the narrowest step', () => {
    const pass = { value: 0.12, low: 0.11, high: 0.13 };
    const needed = { year: 2057, chance: 0.8, already: false, at: 420, low: 380, high: 480 };
    const chain = [{ stage: 'seedlings' as const, count: 31, pass, full: false }];
    const backwards = { wanted: 0.8, trees: 1, needed, at: 420, chain, narrowest: { stage: 'seedlings' as const, pass, gain: 1.7 } };
    expect(said(backwardsWords({ ...wide, backwards }))).toBe(
      'For one proven tree 8 times in 10 by 2057: about 420 flowers each spring (380–480). The narrowest step is germination: 12 of 100 (11–13) seeds come up.',
    );
    expect(said(backwardsWords({ ...wide, backwards: { ...backwards, needed: { ...needed, at: null, low: null, high: null }, at: 300 } }))).toMatch(
      /^For one proven tree 8 times in 10 by 2057: just short of it; at best \d+ % \(\d+–\d+\)\. With about 300 flowers each spring the narrowest step is germination/,
    );
    expect(chainWords(chain[0]!)).toEqual({ count: '30\u00a0seedlings', pass: '12 of\u00a0100' });
    expect(chainWords({ ...chain[0]!, full: true }).pass).toBe('all that you want');
  });

  it('leave nothing unsaid for any lever', async () => {
    for (const lever of Object.keys(leverWords) as LeverId[]) {
      if (lever === 'crosses' || lever === 'fruitsCut') continue;
      const answer = await asked('wide-rescue', lever, redPear, 40);
      const all = [
        said(howManyFinding(answer)),
        ...howManyNotes(answer),
        said(backwardsWords(answer)),
        ...exactWords(answer.exact!),
        ...answer.points.map((point) => pointWords(answer, point)),
        howManySummary(answer),
        ...howManyText.tableHeads(lever, answer.years),
      ];
      for (const words of all) {
        expect(words.length).toBeGreaterThan(0);
        expect(words).not.toMatch(/undefined|NaN|null|Infinity|\bruns?\b|significant|simulation/);
      }
    }
  });
});
