import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { counted, inTen, inTenWords, laneText, listed, percent, percentRange, plusMinus, tied, yearRange } from '../../src/text/charts.ts';

describe('chances in words', () => {
  it('are counted on the fingers between 1 and 9 in 10, and of a hundred outside', () => {
    expect([0.42, 0.73, 0.18, 0.57].map((share) => inTen(share).numeral)).toEqual(['4', '7', '2', '6']);
    expect(inTenWords(0.03)).toBe('3\u00a0in\u00a0100');
    expect(inTenWords(0.97)).toBe('97\u00a0in\u00a0100');
    expect([inTenWords(0), inTenWords(1), inTenWords(0.001), inTenWords(0.9999)]).toEqual([
      '0\u00a0in\u00a010',
      '10\u00a0in\u00a010',
      'under 1\u00a0in\u00a0100',
      'over 99\u00a0in\u00a0100',
    ]);
  });

  it('never call a chance nothing or certain that is neither', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (share) => {
        expect(percent(share)).not.toMatch(/^(0|100)\u00a0%$/u);
        expect(inTenWords(share)).not.toMatch(/^(0|10)\u00a0in\u00a010$|^(0|100)\u00a0in\u00a0100$/u);
      }),
    );
  });

  it('are off by less than their rounding', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 0.9, noNaN: true }), (share) => {
        expect(Math.abs(Number(inTen(share).numeral) / 10 - share)).toBeLessThanOrEqual(0.05 + 1e-9);
      }),
    );
  });
});

describe('ranges in words', () => {
  it('give half the width of an interval to the nearest half', () => {
    // 73 % of 4,000: ± 1.96·√(0.73·0.27/4000) = ± 1.38 points, to the nearest half 1½.
    expect(plusMinus(0.73 - 0.0138, 0.73 + 0.0138)).toBe('±\u00a01½');
    expect(plusMinus(0.4, 0.42)).toBe('±\u00a01');
    expect(plusMinus(0.4, 0.41)).toBe('±\u00a0½');
    expect(plusMinus(0.4, 0.4004)).toBe('±\u00a0under\u00a0½');
  });

  it('show tenths where whole percents would be one number', () => {
    expect(percentRange(0.72, 0.744)).toBe('72–74');
    expect(percentRange(0.007, 0.014)).toBe('0.7–1.4');
    expect(percentRange(0, 0)).toBe('0–0');
  });

  it('say after the last year, once', () => {
    expect([yearRange(2044, 2050, 2057), yearRange(2050, 2050, 2057), yearRange(2050, null, 2057), yearRange(null, null, 2057)]).toEqual([
      '2044–2050',
      '2050',
      '2050–after 2057',
      'after 2057',
    ]);
  });
});

describe('small words', () => {
  it('list, count and tie', () => {
    expect([listed([]), listed(['A']), listed(['A', 'B']), listed(['A', 'B', 'C'])]).toEqual(['', 'A', 'A and B', 'A, B and C']);
    expect([counted(2), counted(1200)]).toEqual(['two', '1,200']);
    expect(tied('brother × sister')).toBe('brother\u00a0× sister');
    expect([laneText.title(1), laneText.title(4)]).toEqual(['One way to a proven tree', 'Four ways to a proven tree']);
  });

  it('say what was kept, also when it is none in most futures', () => {
    expect([laneText.kept(2, 2, 2), laneText.kept(0, 0, 1), laneText.kept(0, 0, 3), laneText.kept(0, 0, 0)]).toEqual([
      '2 kept',
      '0 or 1 kept',
      '0 to 3 kept',
      '0 kept',
    ]);
    expect([laneText.reached(0.22), laneText.reached(0.001)]).toEqual(['reached in 22 of 100 futures', 'reached in under 1 of 100 futures']);
  });
});
