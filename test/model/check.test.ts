import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/model/problem.ts';
import { parseProgramme } from '../../src/model/read.ts';
import type { Document } from '../engine/programmes.ts';
import { cases, flawless } from './check-cases.ts';

const found = (input: Document): readonly Problem[] => {
  const reading = parseProgramme(input);
  return reading.ok ? reading.notes : reading.problems;
};
describe('what a document says against itself', () => {
  it('nothing, if it is flawless', () => {
    expect(found(flawless())).toEqual([]);
  });

  it.each(cases)('$name', ({ change, path, says, note }) => {
    const input = flawless();
    change(input);
    const problems = found(input);
    const here = problems.filter((problem) => problem.path.join('/') === path && says.test(problem.message));
    expect(here, JSON.stringify(problems)).not.toEqual([]);
    expect(here.every(({ stops }) => stops === !note)).toBe(true);
    expect(here.every(({ fix }) => fix !== undefined && fix.length > 5)).toBe(true);
    expect(parseProgramme(input).ok).toBe(note === true);
  });
});
