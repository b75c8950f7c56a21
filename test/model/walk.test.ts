import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { estimateBounds } from '../../src/model/estimate.ts';
import { programmeSchema } from '../../src/model/programme.ts';
import { bare, entriesFor, memberIndex, membersOf, metaAt, schemaAt, valueAt, type Path } from '../../src/model/walk.ts';
import { samplePear } from '../components/fields/sample.ts';

const programme = samplePear();
const GENERATION: Path = ['plans', 0, 'generations', 0];

describe('walking the document’s schema', () => {
  it.each<[Path, string | undefined]>([
    [[...GENERATION, 'flowers'], 'Flowers each spring'],
    [[...GENERATION, 'rescue', 'month'], 'At age'],
    [[...GENERATION, 'rescue'], undefined],
    [[...GENERATION, 'keep', 'conditions', 0, 'atLeast'], 'In at least'],
    [[...GENERATION, 'seedParents', 0, 'tree'], 'Tree'],
    [['plans', 0, 'generations', 1, 'seedParents', 0, 'picksOf'], 'Picks of'],
    [[...GENERATION, 'pollen', 0, 'tree'], 'Tree'],
    [['crosses', 0, 'set'], 'Fruit set'],
    [['crosses', 0, 'set', 'hits'], 'Fruit set'],
    [['crosses', 0, 'weakness', 'course', 'halfLife', 'low'], 'Half are dead by'],
    [['crosses', 0, 'weakness', 'rootBorne', 'chance'], 'Weakness sits in the roots'],
    [['kinds', 0, 'firstFruit', 'half'], 'Half by'],
    [['kinds', 2, 'firstFruit', 'between', 'seed'], 'Kind of the seed parent'],
    [['traits', 0, 'rules', 0, 'needs', 'of', 0, 'copies'], 'At least'],
    [['traits', 1, 'sd'], 'Spread between trees in one season (SD)'],
    [['trees', 0, 'genes', 'redness', 'copies'], 'Copies'],
    [['trees', 1, 'values', 'sweet'], 'True value'],
    [['hours', 'perFlower'], 'A flower pollinated'],
  ])('%j is “%s”', (path, label) => {
    expect(metaAt(programmeSchema, path, programme)?.label).toBe(label);
    expect(schemaAt(programmeSchema, path, programme)).toBeDefined();
  });

  it('finds a schema that takes the value at every path of a whole document', () => {
    const visit = (value: unknown, path: Path): number => {
      const schema = schemaAt(programmeSchema, path, programme);
      expect(schema?.safeParse(value).success, path.join('/')).toBe(true);
      if (typeof value !== 'object' || value === null) return 1;
      return (
        Array.isArray(value)
          ? value.map((each: unknown, i) => visit(each, [...path, i]))
          : Object.entries(value).map(([key, each]) => visit(each, [...path, key]))
      ).reduce((a, b) => a + b, 1);
    };
    expect(visit(programme, [])).toBeGreaterThan(200);
  });

  it.each<Path>([['sheds'], ['trees', 0, 'colour'], [...GENERATION, 'flowers', 'x'], ['kinds', 0, 'firstFruit', 'years']])('finds nothing at %s', (...path) => {
    expect(schemaAt(programmeSchema, path, programme)).toBeUndefined();
  });

  it('reads optional, default and prefault off a node', () => {
    const at = (path: Path) => bare(schemaAt(programmeSchema, path, programme)!);
    expect(at([...GENERATION, 'rescue'])).toMatchObject({ optional: true, fallback: undefined });
    expect(at([...GENERATION, 'cover'])).toMatchObject({ optional: false, fallback: 1, meta: { scale: 'share' } });
    expect(at(['hours'])).toMatchObject({ optional: false, fallback: {} });
    expect(at([...GENERATION, 'flowers'])).toMatchObject({ optional: false, fallback: undefined, meta: { unit: 'flowers', max: 1_000_000 } });
    expect(estimateBounds.get(at(['crosses', 0, 'straySet']).schema)).toMatchObject({ min: 0, max: 1 });
  });

  it('tells which member of a union a value is written in, also while it is being put right', () => {
    const course = schemaAt(programmeSchema, ['crosses', 0, 'weakness', 'course'], programme)!;
    expect(membersOf(course)).toHaveLength(2);
    expect(memberIndex(course, { halfLife: 5 })).toBe(0);
    expect(memberIndex(course, { alive: 0.1, atYears: 2 })).toBe(1);
    expect(memberIndex(course, { alive: 7, atYears: -2 })).toBe(1);
    expect(memberIndex(course, { halfLife: { low: 9, likely: 1, high: 2 } })).toBe(0);
    expect(memberIndex(course, { colour: 'red' })).toBe(-1);
    const condition = schemaAt(programmeSchema, ['goal', 'conditions', 0], programme)!;
    expect(memberIndex(condition, { type: 'measured', trait: '' })).toBe(1);
    const pollen = schemaAt(programmeSchema, [...GENERATION, 'pollen'], programme)!;
    expect([memberIndex(pollen, 'open'), memberIndex(pollen, 'self'), memberIndex(pollen, []), memberIndex(pollen, 'bees')]).toEqual([0, 1, 2, -1]);
  });

  it('does not follow keys that a value only inherits', () => expect(valueAt({}, ['constructor'])).toBeUndefined());

  it('follows the wrappers of a schema made on the spot', () => {
    const schema = z.object({ a: z.record(z.string(), z.array(z.number()).default([]).optional()) });
    expect(schemaAt(schema, ['a', 'x', 2], { a: { x: [1] } })).toBeInstanceOf(z.ZodNumber);
  });
});

describe('what a reference can name', () => {
  it('lists trees by name, and picks of earlier generations of the same plan only', () => {
    expect(entriesFor(programme, 'trees', []).map((entry) => entry.name)).toEqual(['Old Hedgerow', 'Saffron Bell', 'Mill Quince']);
    expect(entriesFor(programme, 'generations', ['plans', 0, 'generations', 1, 'seedParents', 0]).map((entry) => entry.id)).toEqual(['g1']);
    expect(entriesFor(programme, 'generations', ['plans', 0, 'generations', 0, 'after'])).toEqual([]);
    expect(entriesFor(programme, 'generations', ['plans', 7, 'generations', 0])).toEqual([]);
    expect(entriesFor(programme, 'routes', [])).toEqual([]);
  });
});
