import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/model/problem.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { kind, type Document } from '../engine/programmes.ts';
import { cases } from './check-cases.ts';
import { flawless } from './check-flawless.ts';
import { gapCases, soundCases } from './check-gap-cases.ts';
import { inheritanceCases, soundInheritance } from './check-inheritance-cases.ts';
import { planCases } from './check-plan-cases.ts';

const found = (input: Document): readonly Problem[] => {
  const reading = parseProgramme(input);
  return reading.ok ? reading.notes : reading.problems;
};
describe('what a document says against itself', () => {
  it('nothing, if it is flawless', () => {
    expect(found(flawless())).toEqual([]);
  });

  it.each([...cases, ...planCases, ...gapCases, ...inheritanceCases])('$name', ({ change, path, says, note }) => {
    const input = flawless();
    change(input);
    const problems = found(input);
    const here = problems.filter((problem) => problem.path.join('/') === path && says.test(problem.message));
    expect(here, JSON.stringify(problems)).not.toEqual([]);
    expect(here.every(({ stops }) => stops === !note)).toBe(true);
    expect(here.every(({ fix }) => fix !== undefined && fix.length > 5)).toBe(true);
    expect(parseProgramme(input).ok).toBe(note === true);
  });

  it.each([...soundCases, ...soundInheritance])('nothing of $name', ({ change }) => {
    const input = flawless();
    change(input);
    expect(found(input)).toEqual([]);
  });

  it('of kinds that follow each other thirty deep within a second: each is looked at once', () => {
    const input = flawless();
    for (let i = 0; i < 27; i += 1) {
      const before = i === 0 ? 'pear' : `c${String(i - 1)}`;
      input.kinds.push(kind({ id: `c${String(i)}`, name: `c${String(i)}`, firstFruit: { between: { seed: before, pollen: before } } }));
    }
    expect(found(input).filter(({ message }) => message.includes('more than 4 deep'))).toHaveLength(23);
  }, 1000);
});
