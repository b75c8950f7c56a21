import { beforeAll, describe, expect, it } from 'vitest';
import { ifLayout, yearNear, yearsOf, type IfPicture } from '../../src/charts/ifs/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { ifs, type IfsAnswer } from '../../src/decisions/ifs.ts';
import type { IfLine } from '../../src/decisions/ifs/line.ts';
import { IFS } from '../../src/decisions/ifs/registry.ts';
import type { Job } from '../../src/decisions/ifs/worth.ts';
import { besides, ifSentences, ifsFinding, ifsTrust, jobsInWords, lineName, pointWords, shortName } from '../../src/text/pay-ifs.ts';
import { redPear, told } from '../decisions/samples.ts';

const options = (width: number) => ({ width, measure: roughMeasure });
let answer: IfsAnswer;
const pictureOf = (id: string, of = answer): IfPicture => {
  const lines = of.lines.filter((line) => line.if === id && line.curve !== null);
  return { lines, names: lines.map((line) => shortName(line, redPear)), stands: of.stands.chance };
};
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

beforeAll(async () => {
  answer = (await told(ifs, redPear, { plan: 'wide-rescue', runs: 60 })).answer;
});

describe('the picture of something that happens', () => {
  it.each([1100, 520, 350, 280])('keeps curves, bands and words within %s px, for every if', (width) => {
    for (const { id } of IFS) {
      const { panel, height, width: own } = ifLayout(pictureOf(id), options(width));
      const { plot } = panel;
      expect(own).toBe(width);
      expect(plot.right).toBeGreaterThan(plot.left + 60);
      for (const { points } of panel.curves)
        for (const { x, y } of points) {
          expect(x).toBeGreaterThanOrEqual(plot.left - 0.01);
          expect(x).toBeLessThanOrEqual(plot.right + 0.01);
          expect(y).toBeGreaterThanOrEqual(plot.top - 0.01);
          expect(y).toBeLessThanOrEqual(plot.bottom + 0.01);
        }
      for (const { points } of panel.bands) for (const { low, high } of points) expect(low).toBeGreaterThanOrEqual(high);
      for (const { x, name, y } of panel.ends) {
        expect(x + roughMeasure(name, 17, true), `${id} ${name}`).toBeLessThanOrEqual(width);
        expect(y).toBeLessThan(height);
      }
      for (const { text, x, anchor } of panel.words) {
        const long = roughMeasure(text, 17, true);
        expect(anchor === 'end' ? x - long : anchor === 'middle' ? x - long / 2 : x, `${id} ${text}`).toBeGreaterThanOrEqual(0);
        if (anchor === 'middle') expect(x + long / 2, `${id} ${text}`).toBeLessThanOrEqual(width);
      }
      const years = panel.across.map(({ text }) => Number(text));
      expect(years.length).toBeGreaterThan(0);
      for (const year of years) expect(Number.isInteger(year)).toBe(true);
      const gaps = panel.across.slice(1).map(({ x }, i) => x - panel.across[i]!.x);
      for (const gap of gaps) expect(gap).toBeGreaterThan(roughMeasure('2057', 17) + 4);
    }
  });

  it('has a level line at the plan as it stands, and a ring in the year of each line', () => {
    const picture = pictureOf('land');
    const layout = ifLayout(picture, options(700));
    const stands = layout.panel.curves.find(({ id }) => id === 'stands')!;
    expect(new Set(stands.points.map(({ y }) => y))).toEqual(new Set([layout.y(answer.stands.chance.value)]));
    expect(layout.panel.rings).toHaveLength(picture.lines.length);
    for (const { x } of layout.panel.rings) expect(x).toBeCloseTo(layout.x(2042), 9);
    // Told apart by more than colour.
    const dashes = layout.panel.curves.filter(({ id }) => id !== 'stands').map(({ dash }) => dash);
    expect(new Set(dashes).size).toBe(dashes.length);
  });

  it('is read at the year nearest to a place', () => {
    const layout = ifLayout(pictureOf('frost'), options(700));
    expect(layout.years).toEqual(yearsOf(pictureOf('frost').lines));
    layout.years.forEach((year, i) => expect(yearNear(layout, layout.x(year) + 1)).toBe(i));
    expect(yearNear(layout, -500)).toBe(0);
    expect(yearNear(layout, 5000)).toBe(layout.years.length - 1);
  });

  it('of a single year still has a width', () => {
    const lines = pictureOf('frost').lines.map((line): IfLine => ({ ...line, curve: line.curve!.slice(0, 1) }));
    const { panel } = ifLayout({ ...pictureOf('frost'), lines }, options(400));
    for (const { points } of panel.curves) for (const { x, y } of points) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
  });
});

describe('the words of something that happens', () => {
  it('say for every line what happens, the chance with its interval, and the difference or that there is none', () => {
    for (const { id } of IFS) {
      const lines = answer.lines.filter((line) => line.if === id);
      const said = ifSentences(lines, redPear).map(plain);
      expect(said).toHaveLength(lines.length);
      lines.forEach((line, i) => {
        expect(said[i]).toContain(plain(lineName(line, redPear)));
        expect(said[i]).toContain(String(line.year));
        expect(said[i]).toMatch(/ % \([\d.]+–[\d.]+\), (no clear difference|[+−][\d.]+ in 100) \([+−]?[\d.]+ to [+−]?[\d.]+\)\.$/);
        expect(said[i]!.includes('no clear difference')).toBe(!line.minusAsItStands.clear);
      });
      for (const words of [...said, ...besides(lines, answer)]) expect(words).not.toMatch(/undefined|NaN|null/);
    }
  });

  it('begin with the greatest clear loss, and with the job most worth an hour only where it is clearly so', () => {
    const text = (of: IfsAnswer) =>
      plain(
        ifsFinding(of, redPear)
          .map((piece) => piece.text)
          .join(''),
      );
    const clear = answer.lines.filter((line) => line.minusAsItStands.clear);
    const worst = Math.min(...clear.map((line) => line.minusAsItStands.chance.value));
    expect(text(answer)).toContain(`cost ${String(Math.round(-100 * worst))} in 100`);
    const calm = answer.lines.map((line) => ({ ...line, minusAsItStands: { ...line.minusAsItStands, clear: false } }));
    expect(text({ ...answer, lines: calm })).toMatch(/^Nothing here that could happen makes it clearly worse/);
    const [first, second, ...rest] = answer.jobs!;
    const jobs = (ranks: readonly number[], isClear = true): readonly Job[] => [
      { ...first!, rank: ranks[0]!, clear: isClear, gain: { value: 0.1, low: 0.05, high: 0.15 } },
      { ...second!, rank: ranks[1]!, clear: isClear },
      ...rest,
    ];
    expect(text({ ...answer, jobs: jobs([1, 2]) })).toContain('an hour gains most on');
    expect(text({ ...answer, jobs: jobs([1, 1]) })).not.toContain('an hour gains most on');
    expect(text({ ...answer, jobs: jobs([1, 2], false) })).not.toContain('an hour gains most on');
  });

  it('give jobs of one rank no order', () => {
    const [one, two] = answer.jobs!;
    const same = [one!, two!].map((job): Job => ({ ...job, rank: 1, clear: true }));
    expect(jobsInWords(same, redPear)).toBe('Between the first two there is no clear difference in what an hour gains.');
    expect(jobsInWords([], redPear)).toMatch(/no job to weigh/);
    expect(jobsInWords([one!], redPear)).toMatch(/^There is one job: /);
  });

  it('put the share that truly is what was seen beside the chance, and read a year aloud', () => {
    expect(plain(ifsTrust(answer))).toMatch(/futures have a proven tree by 2057 \(\d+–\d+ %\); of ten trees you would call proven, about \w+ truly are\.$/);
    expect(plain(pointWords(pictureOf('land'), 2042))).toMatch(/^2042: all lost \d+ % \(.*; founders apart \d+ % .*; copies apart \d+ % .*\.$/);
  });
});
