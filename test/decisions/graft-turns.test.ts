import { describe, expect, it } from 'vitest';
import { monthsAtTake, takeAtMonths } from '../../src/decisions/graft-turns.ts';
import { mapOf, RISING } from '../charts/pay-answers.ts';

// The line take = ln(months ÷ 12) ÷ ln 8 is straight in the logarithm of the months, so reading it between columns is exact.
const map = mapOf(15, RISING, 0.1);

describe('where the answer turns', () => {
  it('is the months at which the line comes up to a take: 12 · 8^take, its upper edge sooner, its lower later', () => {
    const { value, low, high } = monthsAtTake(map, 0.5);
    expect(value).toBeCloseTo(12 * 8 ** 0.5, 9);
    expect(low).toBeCloseTo(12 * 8 ** 0.4, 9);
    expect(high).toBeCloseTo(12 * 8 ** 0.6, 9);
  });

  it('lies beyond the map where the line never comes so high', () => {
    const narrow = monthsAtTake(mapOf(15, RISING, 0.05), 0.95);
    expect(narrow).toMatchObject({ value: null, high: null });
    expect(narrow.low).toBeCloseTo(12 * 8 ** 0.9, 9);
    expect(
      monthsAtTake(
        mapOf(15, () => 0),
        0.3,
      ),
    ).toEqual({ value: null, low: null, high: null });
  });

  it('is the take on the line at the months; the outermost columns hold beyond them', () => {
    expect(takeAtMonths(map, 30).take).toBeCloseTo(RISING(30), 9);
    expect(takeAtMonths(map, 30).high).toBeCloseTo(RISING(30) + 0.1, 9);
    expect(takeAtMonths(map, 2)).toEqual({ take: 0, low: 0, high: 0 });
    expect(takeAtMonths(map, 500)).toEqual(map.line.at(-1));
  });
});
