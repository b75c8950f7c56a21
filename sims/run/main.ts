import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import type { Programme } from '../../src/model/programme.ts';
import { resultsDocument, resultsJson } from '../../src/results/writers/json.ts';
import { runsCsv } from '../../src/results/writers/runs-csv.ts';
import { nodeRunner } from '../../src/workers/node.ts';
import { askAll, answerJson, answerText } from './ask.ts';
import { carriersDocument, carriersJson, carriersReport } from './carriers.ts';
import { handoutFile } from './handout.ts';
import { HELP, readArguments, type Format, type Options } from './arguments.ts';
import { learnedDocument, learnedJson, learnedReport } from './learn.ts';
import { fileOutput, standardOutput, type Output } from './output.ts';
import { progressLine } from './progress.ts';
import { codeOf, readProgrammeFile } from './programme-file.ts';
import { outlookOf, simulate, type Results } from './results.ts';
import { textReport } from './text-report.ts';
import { fromToday } from './today.ts';

const DONE = 0;
const FAILED = 1;
const REFUSED = 2;
const INTERRUPTED = 130;

/**
 * The headless runner from command line to results.
 * @param argv arguments after the program's name
 * @param program the built file, which serves as program of the worker threads
 * @returns exit code
 */
export async function main(argv: readonly string[], program: URL): Promise<number> {
  const asked = readArguments(argv);
  if (asked.kind === 'help') {
    await standardOutput().write([HELP]);
    return DONE;
  }
  if (asked.kind === 'refused') return refuse([asked.message, 'Say --help for all that can be said.']);
  const { options } = asked;
  const path = fromCaller(options.file);
  const reading = await readProgrammeFile(path, options.file);
  if (!reading.ok) return refuse(reading.problems);
  const today = options.today === true ? fromToday(reading.programme) : { programme: reading.programme, notes: [] };
  if (typeof today === 'string') return refuse([today]);
  const plans = chosenPlans(reading.programme, options.plans);
  if (typeof plans === 'string') return refuse([plans]);
  const target = options.handout?.file ?? options.out;
  const output = target === null ? standardOutput() : fileOutput(fromCaller(target), path);
  if (typeof output === 'string') return refuse([output]);
  for (const note of [...reading.notes, ...today.notes]) process.stderr.write(`Note: ${note}\n`);
  try {
    if (options.learn === true) {
      const document = learnedDocument(reading.programme);
      await output.write([options.format === 'json' ? learnedJson(document) : learnedReport(document)]);
      return DONE;
    }
    if (options.carriers === true) {
      const document = carriersDocument(reading.programme);
      await output.write([options.format === 'json' ? carriersJson(document) : carriersReport(document)]);
      return DONE;
    }
    await run(today.programme, plans, options, program, output);
    return DONE;
  } catch (error) {
    output.giveUp();
    process.stderr.write(`The results could not be made: ${whatFailed(error)}\n`);
    return FAILED;
  }
}

function refuse(sentences: readonly string[]): number {
  process.stderr.write(`${sentences.join('\n')}\n`);
  return REFUSED;
}

/** npm runs scripts in the project's folder; files are meant from where the caller stands. */
function fromCaller(path: string): string {
  return resolve(process.env['npm_lifecycle_event'] === 'sim' ? (process.env['INIT_CWD'] ?? '.') : '.', path);
}

/** Positions of the plans asked for, or a sentence. */
function chosenPlans({ plans }: Programme, ids: readonly string[]): readonly number[] | string {
  const unknown = ids.find((id) => !plans.some((plan) => plan.id === id));
  if (unknown !== undefined) return `There is no plan “${unknown}”; the plans are ${plans.map(({ id }) => id).join(', ')}.`;
  return plans.flatMap(({ id }, p) => (ids.length === 0 || ids.includes(id) ? [p] : []));
}

async function run(
  source: Programme,
  plans: readonly number[],
  { runs, word, means, ask, handout, format, threads }: Options,
  program: URL,
  output: Output,
): Promise<void> {
  const programme: Programme = {
    ...source,
    runs: runs ?? source.runs,
    shuffleWord: word ?? source.shuffleWord,
    guessesAsTheyStand: means || source.guessesAsTheyStand,
  };
  const runner = nodeRunner(program, threads ?? availableParallelism());
  const progress = progressLine(process.stderr, programme.runs);
  const stop = () => {
    progress.end();
    output.giveUp();
    process.stderr.write('Stopped before the end; the results are not complete.\n');
    process.exit(INTERRUPTED);
  };
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const signal of signals) process.removeAllListeners(signal).on(signal, stop);
  try {
    if (ask !== undefined) {
      const document = await askAll(runner, ask, programme, source, plans);
      await output.write([format === 'json' ? answerJson(document) : answerText(document)]);
      return;
    }
    const results = await simulate(runner, programme, plans, format !== 'csv', progress.at);
    progress.end();
    if (handout) await output.write([handoutFile(programme, await outlookOf(results, programme, source), plans, handout)]);
    else await output.write(await written(results, programme, source, format));
  } finally {
    progress.end();
    for (const signal of signals) process.removeListener(signal, stop);
    runner.end();
  }
}

async function written(results: Results, programme: Programme, source: Programme, format: Format): Promise<Iterable<string>> {
  if (format === 'csv') return runsCsv(results.frame, results.columns);
  const outlook = await outlookOf(results, programme, source);
  return [format === 'json' ? resultsJson(resultsDocument(outlook, programme)) : textReport(outlook, programme)];
}

/** What the machine refuses (a full disk) in its own words; a fault of ours with the place where it happened. */
function whatFailed(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return codeOf(error) === '' ? (error.stack ?? error.message) : error.message;
}
