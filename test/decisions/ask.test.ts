import { describe, expect, it } from 'vitest';
import { readArguments } from '../../sims/run/arguments.ts';
import { answerJson, answerText, askAll } from '../../sims/run/ask.ts';
import { QUESTION_IDS, questionOf, questions } from '../../src/decisions/questions.ts';
import { hashOf } from '../../src/results/hash.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { poolRunner } from '../../src/workers/runner.ts';
import { redPear } from './samples.ts';

describe('the registry of questions', () => {
  it('has each under its own id', () => {
    expect(QUESTION_IDS.length).toBeGreaterThan(2);
    for (const [id, question] of Object.entries(questions)) expect(question.id).toBe(id);
    expect(questionOf('graft')).toBe(questions.graft);
    expect(questionOf('toString')).toBeUndefined();
  });
});

describe('asking without a browser', () => {
  it('needs a question that there is, and no csv', () => {
    expect(readArguments(['a.json', '--ask', 'when'])).toMatchObject({ kind: 'run', options: { ask: 'when' } });
    expect(readArguments(['a.json', '--ask', 'whither'])).toEqual({
      kind: 'refused',
      message: `There is no question “whither”; the questions are ${QUESTION_IDS.join(', ')}.`,
    });
    expect(readArguments(['a.json', '--ask', 'when', '--format', 'csv'])).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('--format') as string,
    });
  });

  it('gives one answer a plan, with what it rests on; the same bytes on one thread and on three', async () => {
    const programme = { ...redPear, runs: 60, shuffleWord: 'blue' };
    const ask = async (threads: number) => {
      const runner = poolRunner(() => inlineThread(true), threads);
      const document = await askAll(runner, 'copies', programme, redPear, [1, 3]);
      runner.end();
      return document;
    };
    const document = await ask(1);
    expect(document).toMatchObject({ format: 'orchard-odds answer', version: 1, word: 'blue', runs: 60, question: 'copies', programme: await hashOf(redPear) });
    expect(document.answers.map(({ plan, done }) => [plan, done])).toEqual([
      ['brother-sister', true],
      ['wide-rescue', true],
    ]);
    expect(JSON.parse(answerJson(document))).toEqual(document);
    expect(answerJson(await ask(3))).toBe(answerJson(document));
    const text = answerText(document);
    expect(text).toContain('plan: wide-rescue');
    expect(text).toMatch(/chance: value [0-9.]+, low [0-9.]+, high [0-9.]+/);
    expect(text).not.toMatch(/undefined|\[object/);
  });
});
