import { parseArgs } from 'node:util';
import { QUESTION_IDS, questionOf } from '../../src/decisions/questions.ts';
import { LEFT_OUT, PAPERS, type HandoutOptions } from './handout.ts';

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
  /** Say what the season log teaches instead of running the plans. */
  readonly learn: true | undefined;
  /** Say which trees may hide a trait instead of running the plans. */
  readonly carriers: true | undefined;
  /** Forecast from what stands by the season log. */
  readonly today: true | undefined;
  /** Write the one-page sheet instead of results. */
  readonly handout: HandoutOptions | undefined;
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
  --learn           say what the season log teaches instead: rates from the counts, and which inheritance fits
  --carriers        say which trees may hide a trait instead, and which test cross would tell first
  --today           forecast from what stands by the season log, from the first spring of which it says nothing
  --runs N          futures of each plan, 1 to ${String(MOST_RUNS)}, instead of the programme's own number
  --word TEXT       shuffle word, instead of the programme's own
  --means           take the guesses as they stand: the middle of every range and count
  --format FORMAT   text (as if nothing is said), json, or csv: one line for each future of each plan
  --out FILE        write to this file, which is replaced only when all is done
  --handout FILE    write the one-page sheet for others to this file (HTML) instead of results; with it may stand
    --paper SIZE    A4 (as if nothing is said) or Letter
    --date DAY      the day it bears, as 2026-11-25, instead of today
    --link ADDRESS  the address that opens the programme
    --leave-out LIST  what it keeps back: any of ${LEFT_OUT.join(',')}

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
  const learn = values.learn === true ? true : undefined;
  if (learn === true && (ask !== undefined || values.handout !== undefined || format === 'csv'))
    return refuse('--learn reads the season log and nothing else: leave out --ask and --handout, and say --format text or json.');
  const carriers = values.carriers === true ? true : undefined;
  if (carriers === true && (learn === true || ask !== undefined || values.handout !== undefined || format === 'csv'))
    return refuse('--carriers looks at the trees and nothing else: leave out --learn, --ask and --handout, and say --format text or json.');
  const today = values.today === true ? true : undefined;
  if (today === true && learn === true) return refuse('--learn reads the season log and runs no plan: leave out --today.');
  if (today === true && carriers === true) return refuse('--carriers looks at the trees and runs no plan: leave out --today.');
  if (format === undefined) return refuse(`--format must be one of ${FORMATS.join(', ')}, not “${values.format ?? ''}”.`);
  if (values.out === '') return refuse('--out must name a file.');
  const handout = handoutOptions(values);
  if (typeof handout === 'string') return refuse(handout);
  return {
    kind: 'run',
    options: {
      file,
      plans: values.plan ?? [],
      runs,
      word,
      means: values.means ?? false,
      ask,
      learn,
      carriers,
      today,
      handout,
      format,
      out: values.out ?? null,
      threads,
    },
  };
}

interface HandoutValues {
  readonly handout?: string;
  readonly paper?: string;
  readonly date?: string;
  readonly link?: string;
  readonly 'leave-out'?: string;
  readonly ask?: string;
  readonly format?: string;
  readonly out?: string;
}

/** What is said about the sheet: nothing, all of it, or a sentence on what cannot be used. */
function handoutOptions({
  handout: file,
  paper: size = 'A4',
  date,
  link,
  'leave-out': list,
  ask,
  format,
  out,
}: HandoutValues): HandoutOptions | string | undefined {
  if (file === undefined) {
    const alone = { '--date': date, '--link': link, '--leave-out': list };
    const said = Object.entries(alone).find(([, value]) => value !== undefined);
    return said ? `${said[0]} says something about the sheet: name its file with --handout.` : undefined;
  }
  if (file === '') return '--handout must name a file.';
  if (ask !== undefined || format !== undefined || out !== undefined) return '--handout writes a sheet and nothing else: leave out --ask, --format and --out.';
  const paper = PAPERS.find((known) => known === size);
  if (!paper) return `--paper must be one of ${PAPERS.join(', ')}, not “${size}”.`;
  if (date !== undefined && !isDay(date)) return `--date must be a day as 2026-11-25, not “${date}”.`;
  if (link !== undefined && !/^https?:\/\/\S+$/.test(link)) return '--link must be an address that begins with http:// or https://.';
  const wanted = list === undefined ? [] : list.split(',');
  const strange = wanted.find((part) => !LEFT_OUT.some((known) => known === part));
  if (strange !== undefined) return `--leave-out takes any of ${LEFT_OUT.join(',')}, not “${strange}”.`;
  return { file, paper, date: date ?? null, link: link ?? null, leave: LEFT_OUT.filter((part) => wanted.includes(part)) };
}

/** Whether a text is a day of the calendar, not only of its form. */
function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
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
        learn: { type: 'boolean' },
        today: { type: 'boolean' },
        carriers: { type: 'boolean' },
        format: { type: 'string' },
        out: { type: 'string' },
        handout: { type: 'string' },
        paper: { type: 'string' },
        date: { type: 'string' },
        link: { type: 'string' },
        'leave-out': { type: 'string' },
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
