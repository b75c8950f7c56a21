import { poolFutures } from '../../src/decisions/pool.ts';
import type { Answer } from '../../src/decisions/question.ts';
import { QUESTION_IDS, questionOf } from '../../src/decisions/questions.ts';
import type { Programme } from '../../src/model/programme.ts';
import { nodeRunner } from '../../src/workers/node.ts';

/** How long a question takes from being asked, in milliseconds, on all cores. */
export interface QuestionSpeed {
  readonly question: string;
  /** Until the first answer, however rough. */
  readonly first: number;
  /** Until the first map, for the question that draws one; null for others. */
  readonly coarseMap: number | null;
  /** Until the answer is as sharp as it gets. */
  readonly whole: number;
  /** Futures that each figure of the answer rests on. */
  readonly futures: number;
}

/** Times every question about one plan, each asked alone, after the threads have warmed up. */
export async function questionSpeeds(programme: Programme, plan: string, threads: number, program: URL): Promise<readonly QuestionSpeed[]> {
  const runner = nodeRunner(program, threads);
  const speeds: QuestionSpeed[] = [];
  try {
    const futures = poolFutures(runner);
    await questionOf('copies')?.ask(programme, { plan, runs: 400 }, futures, () => undefined);
    for (const id of QUESTION_IDS) {
      const question = questionOf(id);
      if (!question) continue;
      const start = performance.now();
      const at: { first: number | null; coarseMap: number | null } = { first: null, coarseMap: null };
      const answer = await question.ask(programme, { plan }, futures, (partial: Answer) => {
        at.first ??= performance.now() - start;
        if ('map' in partial && partial.map !== null) at.coarseMap ??= performance.now() - start;
      });
      const whole = performance.now() - start;
      speeds.push({ question: id, first: at.first ?? whole, coarseMap: at.coarseMap, whole, futures: answer.cannotSay === null ? answer.futures : 0 });
    }
  } finally {
    runner.end();
  }
  return speeds;
}
