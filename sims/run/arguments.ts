import { parseArgs } from 'node:util';
import { QUESTION_IDS, questionOf } from '../../src/decisions/questions.ts';

export const FORMATS = ['text', 'json', 'csv'] as const;
export type Format = (typeof FORMATS)[number];

export interface Options {
  /** As typed. */
  readonly file: string;
  /** Ids in the order typed; empty for all. */
  readonly plans: readonly string[];
  readonly runs: number | null;
  readonly word: string | null;
  readonly means: boolean;
  /** Id of a question to ask instead of running the plans. */
  readonly ask: string | undefined;
  readonly format: Format;
  readonly out: string | null;
  /** Null: one for each core. Not in the help: it changes how long it takes, never what comes out. */
  readonly threads: number | null;
}

export type Asked = { readonly kind: 'run'; readonly options: Options } | { readonly kind: 'help' } | { readonly kind: 'refused'; readonly message: string };

const MOST_RUNS = 1_000_000;
const MOST_THREADS = 256;
const LONGEST_WORD = 100;

export const HELP = `Runs the plans of a programme without a browser, on all cores.

  npm run --silent sim -- FILE [options]

  FILE              a programme, as saved by the page
  --plan ID         only this plan; may be repeated
  --ask QUESTION    answer a question about the plans instead: ${QUESTION_IDS.join(', ')}
  --runs N          futures of each plan, 1 to ${String(MOST_RUNS)}, instead of the programme's own number
  --word TEXT       shuffle word, instead of the programme's own
  --means           take the guesses as they stand: the middle of every range and count
  --format FORMAT   text (as if nothing is said), json, or csv: one line for each future of each plan
  --out FILE        write to this file, which is replaced only when all is done

The same programme, shuffle word and number of futures give the same results on any machine.
Ends with 0 when done, 2 when the file or an option cannot be used, 130 when interrupted, 1 when the program itself failed.
`;

/** Reads the command line. Never throws. */
export function readArguments(argv: readonly string[]): Asked {
  const refuse = (message: string): Asked => ({ kind: 'refused', message });
  const parsed = parse(argv);
  if (typeof parsed === 'string') return refuse(parsed);
  const { values, positionals } = parsed;
  if (values.help === true) return { kind: 'help' };
  const [file, ...more] = positionals;
  if (file === undefined || file === '') return refuse('Name the programme file to run.');
  if (more.length > 0) return refuse(`Name one programme file; “${more.join('”, “')}” is too much.`);
  const runs = wholeNumber(values.runs, MOST_RUNS);
  if (runs === undefined) return refuse(`--runs must be a whole number from 1 to ${String(MOST_RUNS)}, not “${values.runs ?? ''}”.`);
  const threads = wholeNumber(values.threads, MOST_THREADS);
  if (threads === undefined) return refuse(`--threads must be a whole number from 1 to ${String(MOST_THREADS)}, not “${values.threads ?? ''}”.`);
  const word = values.word ?? null;
  if (word !== null && (word.length === 0 || word.length > LONGEST_WORD)) return refuse(`--word must have 1 to ${String(LONGEST_WORD)} letters.`);
  const format = FORMATS.find((known) => known === (values.format ?? 'text'));
  const { ask } = values;
  if (ask !== undefined && !questionOf(ask)) return refuse(`There is no question “${ask}”; the questions are ${QUESTION_IDS.join(', ')}.`);
  if (ask !== undefined && format === 'csv') return refuse('An answer has no lines for single futures: say --format text or json.');
  if (format === undefined) return refuse(`--format must be one of ${FORMATS.join(', ')}, not “${values.format ?? ''}”.`);
  if (values.out === '') return refuse('--out must name a file.');
  return { kind: 'run', options: { file, plans: values.plan ?? [], runs, word, means: values.means ?? false, ask, format, out: values.out ?? null, threads } };
}

function parse(argv: readonly string[]) {
  try {
    return parseArgs({
      args: [...argv],
      allowPositionals: true,
      strict: true,
      options: {
        plan: { type: 'string', multiple: true },
        runs: { type: 'string' },
        word: { type: 'string' },
        means: { type: 'boolean' },
        ask: { type: 'string' },
        format: { type: 'string' },
        out: { type: 'string' },
        threads: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    });
  } catch (error) {
    // Node's own words, without its advice on how to pass a name that begins with a dash.
    const [first = 'The options cannot be read'] = (error instanceof Error ? error.message : String(error)).split(/\. |\n/);
    return `${first.replace(/[.]$/, '')}.`;
  }
}

/** Null when not given, undefined when it is not a whole number from 1 to the most. */
function wholeNumber(text: string | undefined, most: number): number | null | undefined {
  if (text === undefined) return null;
  const number = /^\d{1,9}$/.test(text) ? Number(text) : 0;
  return number >= 1 && number <= most ? number : undefined;
}
