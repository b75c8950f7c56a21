import { describe, expect, it } from 'vitest';
import { roughMeasure as measure } from '../../src/charts/measure.ts';
import { gainSteps, keyLines, trialLayout } from '../../src/charts/trial/layout.ts';
import { changesNotes, costNotes, resultWords, trialFinding, trialWords, whenNotes } from '../../src/text/pay-trial.ts';
import { sampleTrial } from './trial-samples.ts';

const plain = (pieces: readonly { readonly text: string }[]) =>
  pieces
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');
const said = (lines: readonly string[]) => lines.join(' ').replaceAll('\u00a0', ' ');

describe('what a trial is worth, laid out', () => {
  const { watched } = sampleTrial(0.04, 0.01);

  it.each([320, 390, 700, 1100])('keeps lines, words and rules inside %i px', (width) => {
    const { panel, height, zone } = trialLayout(watched, { width, measure });
    for (const { points } of panel.curves)
      for (const { x, y } of points) {
        expect(x).toBeGreaterThanOrEqual(panel.plot.left);
        expect(x).toBeLessThanOrEqual(panel.plot.right);
        expect(y).toBeGreaterThanOrEqual(panel.plot.top - 1e-9);
        expect(y).toBeLessThanOrEqual(panel.plot.bottom + 1e-9);
      }
    for (const { x, name, y } of panel.ends) {
      expect(x + measure(name, 17, true)).toBeLessThanOrEqual(width);
      expect(y).toBeLessThan(height);
    }
    for (const { x, text, anchor } of panel.words) {
      const wide = measure(text, 17, true);
      expect(anchor === 'end' ? x - wide : anchor === 'middle' ? x - wide / 2 : x).toBeGreaterThanOrEqual(0);
      expect(anchor === 'end' ? x : anchor === 'middle' ? x + wide / 2 : x + wide).toBeLessThanOrEqual(width);
    }
    expect(zone).toHaveLength(19);
  });

  it('a line that is above the zone where it can be measured, and under it where it cannot', () => {
    const { panel, zone } = trialLayout(watched, { width: 900, measure });
    const line = panel.curves.find(({ id }) => id === '2')!;
    watched[1]!.points.forEach(({ measurable }, i) => expect(line.points[i]!.y < zone[i]!.high).toBe(measurable));
    // Both happen, so that either can be wrong.
    expect(new Set(watched[1]!.points.map(({ measurable }) => measurable)).size).toBe(2);
  });

  it('knowing for sure is the upper rule, right across', () => {
    const { panel } = trialLayout(watched, { width: 900, measure });
    const rule = panel.curves.find(({ id }) => id === 'perfect')!;
    expect(rule.points.map(({ x }) => x)).toEqual([panel.plot.left, panel.plot.right]);
    for (const { points } of panel.curves) for (const { y } of points) expect(y).toBeGreaterThanOrEqual(rule.points[0]!.y);
  });

  it('reads back the size under the pointer', () => {
    const { x, nAt } = trialLayout(watched, { width: 390, measure });
    for (let n = 2; n <= 20; n += 1) expect(nAt(x(n) + 2)).toBe(n);
    expect([nAt(-50), nAt(5000)]).toEqual([2, 20]);
  });

  it('has a key under the picture on a phone only, a piece of each line before its name', () => {
    expect(keyLines(trialLayout(watched, { width: 390, measure }))).toHaveLength(3);
    expect(keyLines(trialLayout(watched, { width: 1100, measure }))).toHaveLength(0);
  });

  it('never draws nothing as much: an axis of at least one in 100, in at most six steps', () => {
    expect(gainSteps(0)).toEqual([0, 0.0025, 0.005, 0.0075, 0.01]);
    expect(gainSteps(0.048)).toEqual([0, 0.01, 0.02, 0.03, 0.04, 0.05]);
    for (const most of [0.001, 0.013, 0.07, 0.3, 0.9]) {
      const steps = gainSteps(most);
      expect(steps.at(-1)).toBeGreaterThanOrEqual(most);
      expect(steps.length).toBeLessThanOrEqual(6);
    }
  });
});

describe('what a trial is worth, in words', () => {
  it('with its interval, the result that counts, and what waiting takes', () => {
    const answer = sampleTrial(0.04, 0.01);
    expect(plain(trialFinding(answer))).toBe('10 grafted and 10 left are worth 2 in 100 (1 to 3) after two summers: too little to wait for');
    const changes = said(changesNotes(answer));
    expect(changes).toContain(
      'Now the best is to graft the weak ones, with a proven tree 6 in 10 (of ten trees you would call proven, about seven truly are).',
    );
    expect(changes).toContain('If 5 or more of the 10 left alone are alive after two summers, leave all on their own roots instead.');
    expect(changes).toContain('4.8 in 100 (3.8 to 5.8): no trial of these can be worth more');
    expect(said(costNotes(answer))).toContain('about 30 raised on top of the plan’s from 40 flowers, and 10 grafts; some 20 hours');
    const when = said(whenNotes(answer));
    expect(when).toContain('waits two seasons for the result loses 10 in 100 (9 to 11), more than ten and ten can bring back');
    expect(when).toContain('“Back to the pear”');
  });

  it('worth less than can be measured, when so', () => {
    const answer = sampleTrial(0.004, 0.01);
    expect(plain(trialFinding(answer))).toBe('A trial is worth less than we can measure: graft the weak ones without one');
    expect(said(changesNotes(answer))).toContain('Even knowing for sure how many live would be worth less than we can measure (−0.5 to 1.5 in 100)');
    expect(trialWords(answer.watched, 20).replaceAll('\u00a0', ' ')).toBe(
      '20 grafted and 20 left: after one summer worth less than we can measure (−0.8 to 1.2), after two summers worth less than we can measure (−0.6 to 1.4); about 40 hours.',
    );
    expect(said(whenNotes({ ...answer, later: null }))).toContain('come too late');
  });

  it('results as they are said', () => {
    const result = { of: 'left', atLeast: true, count: 6, then: 'none', happens: 0.1 } as const;
    expect(resultWords(result, 10)).toBe('6 or more of the 10 left alone');
    expect(resultWords({ ...result, atLeast: false }, 10)).toBe('at most 6 of the 10 left alone');
    expect(resultWords({ ...result, of: 'grafted', count: 10 }, 10)).toBe('all 10 grafted');
    expect(resultWords({ ...result, atLeast: false, count: 0 }, 10)).toBe('none of the 10 left alone');
  });
});
