import { expect } from 'vitest';
import { sentence, type Problem } from '../../src/model/problem.ts';

/** A place, and a way out: what to do, or what it must be. */
const WAY_OUT = /\b(open|remove|save|write|put|undo|choose|fetch|check|give|copy|ask)\b|must (be|lie|not)|should|cannot/i;
const PLACE = /^(\S+( › “?[^:]+)*: |It |A letter|This |“|There |Entries|More than|does not know)/;

/** Holds a problem to be one whole sentence for a breeder, or a few, without the words of a parser. */
export function expectSentence(problem: Problem): void {
  const said = sentence(null, problem);
  expect(said).toMatch(/^\S.*[.!?]$/su);
  expect(said).toMatch(WAY_OUT);
  expect(said).toMatch(PLACE);
  expect(said.length).toBeLessThan(600);
  expect(said).not.toMatch(/undefined|\[object|JSON\.|position \d|Unexpected|token|Invalid input|expected|Zod|SyntaxError|RangeError/);
}
