import { poolFutures } from '../../src/decisions/pool.ts';
import { isOfAllPlans } from '../../src/decisions/of-all-plans.ts';
import type { Answer, NoAnswer } from '../../src/decisions/question.ts';
import { questionOf } from '../../src/decisions/questions.ts';
import { ENGINE } from '../../src/engine/version.ts';
import type { Programme } from '../../src/model/programme.ts';
import { hashOf } from '../../src/results/hash.ts';
import type { Runner } from '../../src/workers/runner.ts';

export const ANSWER_FORMAT = 'orchard-odds answer';
export const ANSWER_VERSION = 1;

/** Answers to one question, as other programs read them, with what they rest on. */
export interface AnswerDocument {
  readonly format: typeof ANSWER_FORMAT;
  readonly version: typeof ANSWER_VERSION;
  readonly engine: string;
  readonly word: string;
  readonly runs: number;
  /** True when the middle of every range and count was used. */
  readonly guessesAsTheyStand: boolean;
  /** SHA-256 of the programme as its file says. */
  readonly programme: string;
  readonly title: string;
  readonly startYear: number;
  readonly lastYear: number;
  readonly question: string;
  /** One for each plan asked about. */
  readonly answers: readonly (Answer | NoAnswer)[];
}

/**
 * Asks a question of plans, one after another.
 * @param programme as run
 * @param source as its file says: what its hash is taken of
 * @param plans positions
 * @throws RangeError when there is no such question
 */
export async function askAll(runner: Runner, id: string, programme: Programme, source: Programme, plans: readonly number[]): Promise<AnswerDocument> {
  const question = questionOf(id);
  if (!question) throw new RangeError(`There is no question “${id}”.`);
  const answers: (Answer | NoAnswer)[] = [];
  // A question about the whole programme has one answer, whichever plans were named.
  for (const plan of isOfAllPlans(id) ? plans.slice(0, 1) : plans) {
    const entry = programme.plans[plan];
    if (entry) answers.push(await question.ask(programme, { plan: entry.id }, poolFutures(runner), () => undefined));
  }
  const { shuffleWord: word, runs, guessesAsTheyStand, title, startYear, lastYear } = programme;
  return {
    format: ANSWER_FORMAT,
    version: ANSWER_VERSION,
    engine: ENGINE,
    word,
    runs,
    guessesAsTheyStand,
    programme: await hashOf(source),
    title,
    startYear,
    lastYear,
    question: id,
    answers,
  };
}

/** Readable JSON with a line end; the same bytes for the same answers. */
export function answerJson(document: AnswerDocument): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** The same as an outline: one line for each figure, intervals and spreads on one line, long lists by their length. */
export function answerText({ format: _format, version: _version, answers, ...rest }: AnswerDocument): string {
  return `${[...outline(rest, 0), ...answers.flatMap((answer) => ['', ...outline(answer, 0)])].join('\n')}\n`;
}

/** Lists longer than this are for programs: the JSON has them. */
const LONGEST_LIST = 20;

function outline(value: object, depth: number): string[] {
  return Object.entries(value).flatMap(([key, part]: [string, unknown]) => lines(key, part, depth));
}

function lines(key: string, part: unknown, depth: number): string[] {
  const start = `${'  '.repeat(depth)}${spoken(key)}:`;
  const short = onOneLine(part);
  if (short !== null) return [`${start} ${short}`];
  if (typeof part !== 'object' || part === null) return [];
  return [start, ...(Array.isArray(part) ? part.flatMap((entry: unknown, i) => lines(String(i + 1), entry, depth + 1)) : outline(part, depth + 1))];
}

/** A word, a number, or a small group of numbers; null for what needs lines of its own. */
function onOneLine(part: unknown): string | null {
  if (typeof part === 'number') return String(Number(part.toPrecision(4)));
  if (typeof part === 'string') return part;
  if (typeof part === 'boolean') return part ? 'yes' : 'no';
  if (part === null || part === undefined) return '–';
  if (Array.isArray(part) && part.length > LONGEST_LIST) return `${String(part.length)} entries, in the JSON`;
  if (Array.isArray(part)) return part.every((entry) => typeof entry === 'number') ? part.map(onOneLine).join(', ') : null;
  const entries: [string, unknown][] = typeof part === 'object' ? Object.entries(part) : [];
  return entries.length <= 4 && entries.every(([, entry]) => typeof entry === 'number' || entry === null)
    ? entries.map(([key, entry]) => `${spoken(key)} ${onOneLine(entry) ?? ''}`).join(', ')
    : null;
}

const spoken = (key: string) => key.replace(/([a-z])([A-Z0-9])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
