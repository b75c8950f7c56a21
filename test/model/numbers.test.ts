import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printNumber, readNumber, stepOf, stepped } from '../../src/model/numbers.ts';
import type { Scale } from '../../src/model/fields.ts';

const value = (text: string, scale?: Scale): unknown => {
  const reading = readNumber(text, scale);
  return reading.ok ? reading.value : reading.reason === 'ambiguous' ? reading.readings : reading.reason;
};

describe('numbers as people type them', () => {
  it.each([
    ['8', 8],
    [' 8 ', 8],
    ['8.5', 8.5],
    ['8,5', 8.5],
    [',5', 0.5],
    ['.5', 0.5],
    ['8,', 8],
    ['-3,25', -3.25],
    ['−3.25', -3.25],
    ['+4', 4],
    ['8½', 8.5],
    ['8 ½', 8.5],
    ['¼', 0.25],
    ['-2¾', -2.75],
    ['1 200', 1200],
    ['1\u2009200', 1200],
    ['1\u202f200\u202f000', 1_200_000],
    ['1’200', 1200],
    ['1 234,567', 1234.567],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1.234.567,8', 1_234_567.8],
    ['0,125', 0.125],
    ['0.125', 0.125],
    ['1234,567', 1234.567],
    ['12,3456', 12.3456],
    ['2057', 2057],
  ])('reads %j as %d', (text, expected) => expect(value(text)).toBe(expected));

  it.each([
    ['1,500', [1.5, 1500]],
    ['10.000', [10, 10_000]],
    ['-1.500', [-1.5, -1500]],
    ['999,999', [999.999, 999_999]],
  ])('says that %j has two readings', (text, expected) => expect(value(text)).toEqual(expected));

  it.each(['', '   '])('calls %j empty', (text) => expect(value(text)).toBe('empty'));

  it.each([
    '.',
    ',',
    '-',
    'eight',
    '8 months',
    '1 2',
    '12 34',
    '1,23.4',
    '1,2,3',
    '1.2.3',
    '1,2345,678',
    '8%',
    '1e3',
    '0x10',
    'Infinity',
    'NaN',
    '½½',
    '5–10',
    '1..5',
    '--5',
    '1,234,5.6',
  ])('refuses %j', (text) => expect(value(text)).toBe('not a number'));

  it('reads a share in percent, with or without the sign, and never as thousands', () => {
    expect(value('1.2', 'share')).toBe(0.012);
    expect(value('1,2 %', 'share')).toBe(0.012);
    expect(value('100%', 'share')).toBe(1);
    expect(value('12½ %', 'share')).toBe(0.125);
    expect(value('95.500', 'share')).toBe(0.955);
    expect(value('%', 'share')).toBe('not a number');
  });

  it('asks whether a bare half is half a percent or a half', () => {
    expect(value('½', 'share')).toEqual([0.005, 0.5]);
    expect(value('½ %', 'share')).toBe(0.005);
  });
});

describe('numbers as they are printed', () => {
  it.each<[number, Scale, string]>([
    [0.012, 'share', '1.2'],
    [0.07, 'share', '7'],
    [0.29, 'share', '29'],
    [1, 'share', '100'],
    [0, 'share', '0'],
    [0.955, 'share', '95.5'],
    [1e-7, 'share', '0.00001'],
    [520, 'count', '520'],
    [2057, 'year', '2057'],
    [0.05, 'number', '0.05'],
    [1e21, 'number', '1000000000000000000000'],
    [1e-9, 'number', '0.000000001'],
    [-3.5, 'number', '-3.5'],
    [-0, 'number', '0'],
    [1.234, 'number', '1.2340'],
    [0.01234, 'share', '1.234'],
  ])('prints %d as a %s as %j', (number, scale, text) => expect(printNumber(number, scale)).toBe(text));

  it('reads back every finite double exactly, in every scale', () => {
    const scales: Scale[] = ['number', 'count', 'share', 'years', 'months', 'year', 'hours', 'money'];
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom(...scales), (number, scale) => {
        const reading = readNumber(printNumber(number, scale), scale);
        expect(reading).toEqual({ ok: true, value: number + 0 });
      }),
      { numRuns: 3000 },
    );
  });

  it('reads back what a person would have typed: up to six digits with up to four decimals', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999_999, max: 999_999 }),
        fc.integer({ min: 0, max: 4 }),
        fc.constantFrom<Scale>('number', 'share'),
        (digits, places, scale) => {
          const number = digits / 10 ** places;
          expect(readNumber(printNumber(number, scale), scale)).toEqual({ ok: true, value: number + 0 });
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('never prints an exponent, a thousands mark or a trailing zero behind a point', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        expect(printNumber(number, 'share')).toMatch(/^-?\d+(\.\d*[1-9])?$/);
      }),
      { numRuns: 1000 },
    );
  });

  it('refuses what is no number', () => expect(() => printNumber(Number.NaN)).toThrow(RangeError));

  it('takes a comma where it prints a point', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 1, max: 2 }), (digits, places) => {
        const text = printNumber(digits / 10 ** places);
        expect(readNumber(text.replace('.', ','))).toEqual(readNumber(text));
      }),
    );
  });
});

describe('steps of the arrow keys', () => {
  it('goes by a percent, half a month, a whole tree, or the second digit', () => {
    expect(stepOf('share', false, 0.4)).toBe(0.01);
    expect(stepOf('months', false, 8)).toBe(0.5);
    expect(stepOf('count', true, 400)).toBe(1);
    expect(stepOf('number', false, 8)).toBeCloseTo(0.1, 12);
    expect(stepOf('hours', false, 0.02)).toBeCloseTo(0.001, 12);
  });

  it('stays within the bounds and adds without crumbs', () => {
    const share = { min: 0, max: 1 };
    expect(stepped(0.1, 20, 0.01, share)).toBe(0.3);
    expect(stepped(0.995, 1, 0.01, share)).toBe(1);
    expect(stepped(0.005, -1, 0.01, share)).toBe(0);
    expect(stepped(0.57, 1, 0.01, share)).toBe(0.58);
  });
});
