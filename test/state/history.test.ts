import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import example from '../../sims/examples/red-pear.json';
import { setAt } from '../../src/model/edits.ts';
import { applyDelta, deltaBetween } from '../../src/state/delta.ts';
import { packHistory, unpackHistory, type Step } from '../../src/state/history.ts';

const step = (document: unknown, label: string): Step => ({ document, label, named: label, field: '' });

describe('what parts two documents', () => {
  it('makes the one of the other, to the letter, for any two', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (from, to) => {
        expect(JSON.stringify(applyDelta(from, deltaBetween(from, to)))).toBe(JSON.stringify(to));
      }),
      {
        examples: [
          [{ '': {} }, {}],
          [{ 'a\nb': 1 }, { a: 1, b: 1 }],
        ],
        numRuns: 1000,
      },
    );
  });

  it('is one line for one number', () => {
    const after = setAt(example, ['plans', 1, 'generations', 0, 'flowers'], 77);
    expect(deltaBetween(example, after)).toEqual([{ path: ['plans', 1, 'generations', 0, 'flowers'], value: 77 }]);
  });

  it('keeps the order of keys', () => {
    expect(JSON.stringify(applyDelta({ a: 1, b: 2 }, deltaBetween({ a: 1, b: 2 }, { b: 2, a: 1 })))).toBe('{"b":2,"a":1}');
  });

  it('does not apply to a document that it was not made for', () => {
    expect(() => applyDelta({ a: [1] }, [{ path: ['a', 3, 'b'], value: 1 }])).toThrow(RangeError);
  });
});

describe('a kept history', () => {
  const years = [2027, 2028, 2029, 2030, 2031].map((year) => setAt(example, ['startYear'], year));
  const [first, second, now, fourth, fifth] = years;

  it('comes back with every document and label', () => {
    const history = { undo: [step(first, 'one'), step(second, 'two')], redo: [step(fourth, 'three'), step(fifth, 'four')] };
    const text = packHistory(now, history);
    expect(unpackHistory(now, text)).toEqual(history);
    expect(text.length).toBeLessThan(JSON.stringify(example).length / 10);
  });

  it('that is damaged, or of another form, is none', () => {
    expect(unpackHistory(now, '{"undo":[{')).toBeNull();
    expect(unpackHistory(now, '{"undo":[{"label":1}],"redo":[]}')).toBeNull();
    expect(unpackHistory({}, packHistory(now, { undo: [step(setAt(now, ['limits', 'places'], 3), 'x')], redo: [] }))).toBeNull();
  });
});
