import { readFileSync } from 'node:fs';
import { availableParallelism, cpus } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { ENGINE } from '../../src/engine/version.ts';
import { readProgramme } from '../../src/model/read.ts';
import type { Programme } from '../../src/model/programme.ts';
import { hashOf } from '../../src/results/hash.ts';
import { nodeRunner } from '../../src/workers/node.ts';
import { fileOutput } from '../run/output.ts';
import { against, commitOf } from './against.ts';
import { prepare } from './kernel.ts';
import { pageSpeed } from './page-speed.ts';
import { questionSpeeds } from './questions.ts';
import { benchReport, type Benchmark } from './report.ts';
import { speedOf, timed, timedOn, type Speed } from './speed.ts';

const HELP = `Times the engine on the red pear, and the page.

  npm run --silent bench -- [options]

  --runs N         futures of each plan; 10000 if nothing is said
  --against REF    also time a commit, in turns with this state, and say by how much they differ
  --questions      also time every question about one plan
  --browser        also time the built page in Chromium: edit to picture, and its longest task
  --json FILE      also write all of it as JSON
`;

interface Options {
  readonly runs: number;
  readonly against: string | null;
  readonly questions: boolean;
  readonly browser: boolean;
  readonly json: string | null;
}

const EXAMPLE = 'sims/examples/red-pear.json';
/** The plan with a rescue graft: every question applies to it. */
const ASKED = 'wide-rescue';
const ONE_THREAD_STRETCHES = 20;
const ALL_CORES_STRETCHES = 3;
const WARM_UP = 200;

/**
 * @param argv arguments after the program's name
 * @param program the built file, which serves as program of the worker threads
 * @returns exit code
 */
export async function main(argv: readonly string[], program: URL): Promise<number> {
  const options = readArguments(argv);
  if (typeof options === 'string') {
    process.stderr.write(`${options}\n`);
    return 2;
  }
  if (options === null) {
    process.stdout.write(HELP);
    return 0;
  }
  const top = fileURLToPath(new URL('..', program));
  const example = join(top, EXAMPLE);
  const caller = process.env['npm_lifecycle_event'] === 'bench' ? (process.env['INIT_CWD'] ?? '.') : '.';
  const json = options.json === null ? null : fileOutput(resolve(caller, options.json), example);
  if (typeof json === 'string') {
    process.stderr.write(`${json.replace('--out', '--json')}\n`);
    return 2;
  }
  try {
    const bench = await measure(top, readFileSync(example, 'utf8'), options, program);
    process.stdout.write(benchReport(bench));
    await json?.write([`${JSON.stringify(bench, null, 2)}\n`]);
    return 0;
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    return 1;
  }
}

/** Null: help is wanted. A text: why the options cannot be used. */
function readArguments(argv: readonly string[]): Options | string | null {
  try {
    const { values } = parseArgs({
      args: [...argv],
      strict: true,
      options: {
        runs: { type: 'string' },
        against: { type: 'string' },
        questions: { type: 'boolean' },
        browser: { type: 'boolean' },
        json: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    });
    if (values.help === true) return null;
    const runs = Number(values.runs ?? '10000');
    if (!Number.isInteger(runs) || runs < 100 || runs > 1_000_000) return `--runs must be a whole number from 100 to 1000000, not “${values.runs ?? ''}”.`;
    return { runs, against: values.against ?? null, questions: values.questions ?? false, browser: values.browser ?? false, json: values.json ?? null };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

async function measure(top: string, text: string, options: Options, program: URL): Promise<Benchmark> {
  const reading = readProgramme(text);
  if (!reading.ok) throw new Error('The example programme cannot be read.');
  const { programme } = reading;
  const plans = programme.plans.length;
  const cores = availableParallelism();
  const earlier = options.against === null ? null : { ref: options.against, commit: commitOf(top, options.against) };
  return {
    format: 'orchard-odds benchmark',
    version: 1,
    engine: ENGINE,
    node: process.version,
    processor: cpus()[0]?.model ?? 'unknown processor',
    cores,
    title: programme.title,
    programme: await hashOf(programme),
    futures: options.runs,
    plans,
    speeds: [oneThread(text, plans, options.runs), await allCores(programme, cores, options.runs, program)],
    against: earlier === null ? null : await against(top, earlier, EXAMPLE, plans, options.runs),
    questions: options.questions ? await questionSpeeds(programme, ASKED, cores, program) : null,
    page: options.browser ? await pageSpeed(top) : null,
  };
}

function oneThread(text: string, plans: number, futures: number): Speed {
  const work = prepare(text);
  work(0, WARM_UP);
  const length = Math.ceil(futures / ONE_THREAD_STRETCHES);
  return speedOf(
    1,
    Array.from({ length: ONE_THREAD_STRETCHES }, (_, stretch) => timed(work, plans, stretch * length, length)),
  );
}

async function allCores(programme: Programme, threads: number, futures: number, program: URL): Promise<Speed> {
  const runner = nodeRunner(program, threads);
  try {
    runner.load(programme);
    const plans = programme.plans.length;
    await timedOn(runner, plans, 0, WARM_UP * threads, WARM_UP);
    const stretches = [];
    for (let stretch = 0; stretch < ALL_CORES_STRETCHES; stretch += 1) stretches.push(await timedOn(runner, plans, 0, futures));
    return speedOf(threads, stretches);
  } finally {
    runner.end();
  }
}
