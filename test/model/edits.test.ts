import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeEdit, insertAt, moveItem, removeAt, setAt } from '../../src/model/edits.ts';
import { programmeSchema } from '../../src/model/programme.ts';
import { valueAt, type Path } from '../../src/model/walk.ts';
import { samplePear } from '../components/fields/sample.ts';

const GENERATION: Path = ['plans', 0, 'generations', 0];

/** Freezes all the way down, so that an edit in place throws. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.values(value).forEach(frozen);
    Object.freeze(value);
  }
  return value;
}

/** Every path in a document that leads to something. */
function pathsIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Array.isArray(value) ? value.map((each: unknown, i) => [i, each] as const) : Object.entries(value);
  return [path, ...inner.flatMap(([key, each]) => pathsIn(each, [...path, key]))];
}

describe('edits at a path', () => {
  const programme = frozen(samplePear());
  const paths = pathsIn(programme).filter((path) => path.length > 0);

  it('sets what is at any path, and nothing else, without touching the old document', () => {
    const before = JSON.stringify(programme);
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, value) => {
        const after = setAt(programme, path, value);
        expect(valueAt(after, path)).toEqual(value);
        expect(setAt(after, path, valueAt(programme, path))).toEqual(programme);
      }),
    );
    expect(JSON.stringify(programme)).toBe(before);
  });

  it('shares every branch that the path does not pass through', () => {
    const after = setAt(programme, [...GENERATION, 'flowers'], 600);
    expect(valueAt(after, ['trees'])).toBe(programme.trees);
    expect(valueAt(after, ['plans', 0, 'generations', 1])).toBe(programme.plans[0]?.generations[1]);
    expect(valueAt(after, [...GENERATION, 'keep'])).toBe(programme.plans[0]?.generations[0]?.keep);
    expect(after).not.toBe(programme);
  });

  it('gives the document itself back when nothing changes', () => {
    fc.assert(
      fc.property(fc.constantFrom(...paths), (path) => {
        expect(setAt(programme, path, valueAt(programme, path))).toBe(programme);
      }),
    );
  });

  it('leaves a document that the schema still takes', () => {
    const after = programmeSchema.safeParse(setAt(programme, [...GENERATION, 'rescue', 'month'], 5));
    expect(after.data?.plans[0]?.generations[0]?.rescue?.month).toBe(5);
  });

  it('takes an optional field out when it is set to nothing', () => {
    const after = setAt(programme, [...GENERATION, 'rescue'], undefined);
    expect(Object.hasOwn(valueAt(after, GENERATION) as object, 'rescue')).toBe(false);
    expect(programmeSchema.safeParse(after).success).toBe(true);
    expect(setAt(programme, [...GENERATION, 'test'], undefined)).toBe(programme);
  });

  it('takes out, puts in and moves entries of a list', () => {
    const names = (document: unknown): unknown[] => (valueAt(document, ['trees']) as { name: string }[]).map((tree) => tree.name);
    expect(names(removeAt(programme, ['trees', 1]))).toEqual(['Old Hedgerow', 'Mill Quince']);
    expect(names(insertAt(programme, ['trees', 1], { name: 'New' }))).toEqual(['Old Hedgerow', 'New', 'Saffron Bell', 'Mill Quince']);
    expect(names(insertAt(programme, ['trees', 3], { name: 'New' }))[3]).toBe('New');
    expect(names(moveItem(programme, ['trees'], 0, 2))).toEqual(['Saffron Bell', 'Mill Quince', 'Old Hedgerow']);
    expect(names(moveItem(programme, ['trees'], 2, 0))).toEqual(['Mill Quince', 'Old Hedgerow', 'Saffron Bell']);
    expect(moveItem(programme, ['trees'], 1, 1)).toBe(programme);
  });

  it('removing what was put in gives the same list again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3 }), (at) => {
        expect(removeAt(insertAt(programme, ['trees', at], { name: 'x' }), ['trees', at])).toEqual(programme);
      }),
    );
  });

  it.each<[string, () => unknown]>([
    ['a list that ends before', () => setAt(programme, ['trees', 9, 'name'], 'x')],
    ['a place past the end', () => setAt(programme, ['trees', 4], {})],
    ['a step below a number', () => setAt(programme, ['runs', 'x'], 1)],
    ['a section that is not there', () => setAt(programme, ['sheds', 0], {})],
    ['a place to take out', () => removeAt(programme, ['trees', 3])],
    ['a place to put in', () => insertAt(programme, ['trees', 5], {})],
    ['a list to put in', () => insertAt(programme, ['title', 0], {})],
    ['a place to move to', () => moveItem(programme, ['trees'], 0, 3)],
    ['no path at all to remove', () => removeAt(programme, [])],
  ])('refuses %s', (_, edit) => expect(edit).toThrow(RangeError));
});

describe('names of edits', () => {
  const programme = samplePear();
  const named = (path: Path, before: unknown, after: unknown): string => describeEdit(path, before, after, programme).replaceAll('\u00a0', ' ');

  it.each<[Path, unknown, unknown, string]>([
    [[...GENERATION, 'flowers'], 40, 60, 'flowers each spring 40 → 60'],
    [[...GENERATION, 'cover'], 1, 0.2, 'stray pollen let through 100 → 20 %'],
    [[...GENERATION, 'rescue', 'month'], 5, 8, 'at age 5 → 8 months'],
    [[...GENERATION, 'rescue', 'who'], 'weak', 'every', 'graft weak ones → every seedling'],
    [[...GENERATION, 'rescue', 'stock'], 'field-pear', 'quince-c', 'onto field pear, seedling → quince stock'],
    [[...GENERATION, 'rescue', 'keepOwnRoots'], false, true, 'stays on its own roots if no scion takes no → yes'],
    [[...GENERATION, 'rescue'], undefined, { who: 'weak' }, 'rescue added'],
    [[...GENERATION, 'rescue'], { who: 'weak' }, undefined, 'rescue removed'],
    [[...GENERATION, 'keep', 'conditions', 1], undefined, { type: 'test' }, 'conditions: one added'],
    [[...GENERATION, 'keep', 'conditions', 0, 'atLeast'], 1, undefined, 'in at least 1 → none'],
    [[...GENERATION, 'goOn', 'atLatest'], 12, 10, 'at the latest after 12 → 10 years'],
    [[...GENERATION, 'pollen', 0, 'tree'], 'mill-quince', 'saffron', 'tree Mill Quince → Saffron Bell'],
    [[...GENERATION, 'pollen'], 'open', [{ tree: 'saffron' }], 'pollen changed'],
    [[...GENERATION, 'seedParents'], [{ tree: 'saffron' }], [{ tree: 'saffron' }, { tree: 'hedgerow' }], 'seed parents: one added'],
    [['plans', 0, 'generations', 1, 'seedParents', 0, 'picksOf'], 'g1', 'g1', 'picks of Wide cross, grafted → Wide cross, grafted'],
    [['crosses', 0, 'set'], { hits: 18, of: 240, lots: 2 }, { hits: 18, of: 250, lots: 2 }, 'Pear by quince, fruit set 18 of 240 → 18 of 250'],
    [['crosses', 0, 'set'], 0.08, { hits: 18, of: 250, lots: 2 }, 'Pear by quince, fruit set 8 % → 18 of 250'],
    [['crosses', 0, 'set'], { hits: 18, of: 250, lots: 2 }, 0.08, 'Pear by quince, fruit set 18 of 250 → 8 %'],
    [['crosses', 0, 'germination', 'low'], 0.4, 0.45, 'Pear by quince, seeds that come up 40 → 45 %'],
    [['crosses', 0, 'weakness', 'course', 'halfLife'], { low: 2, likely: 5, high: 15 }, 6, 'Pear by quince, half are dead by 2–5–15 → 6 months after that'],
    [['trees', 2], undefined, { name: 'Mill Quince' }, 'Mill Quince added'],
    [['trees', 0, 'name'], 'Old Hedgerow', 'Older Hedgerow', 'Old Hedgerow, name “Old Hedgerow” → “Older Hedgerow”'],
    [['trees', 0, 'genes', 'redness', 'copies'], 1, 2, 'Old Hedgerow, copies 1 → 2'],
    [['kinds', 0, 'firstFruit', 'half'], 6, 7, 'Pear, half by 6 → 7 years'],
    [['kinds', 0, 'firstFruit'], { years: 4 }, { earliest: 4, half: 5, ninety: 6 }, 'Pear, first fruit changed'],
    [['note'], undefined, 'a'.repeat(200), 'note added'],
    [['title'], 'a', 'b'.repeat(90), 'title changed'],
    [['weather', 'frostChance'], 0, 0.1, 'springs with a frost in bloom 0 → 10 %'],
    [['trees'], [1, 2], [2, 1], 'trees put in another order'],
  ])('%j', (path, before, after, words) => expect(named(path, before, after)).toBe(words));
});
