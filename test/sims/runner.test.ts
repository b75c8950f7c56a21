import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { csvParse } from 'd3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readProgramme } from '../../src/model/read.ts';
import { resultsSchema } from './results-schema.ts';

const LAUNCH = fileURLToPath(new URL('../../sims/launch.mjs', import.meta.url));
const RED_PEAR = fileURLToPath(new URL('../../sims/examples/red-pear.json', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'runner-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the runner as npm does, to its end; `stopAfter` interrupts it after so many milliseconds. */
function sim(argv: readonly string[], stopAfter?: number): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [LAUNCH, 'run', ...argv], { stdio: ['ignore', 'pipe', 'pipe'], cwd: folder });
    const said = { out: '', err: '' };
    child.stdout.setEncoding('utf8').on('data', (text: string) => (said.out += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (said.err += text));
    child.on('error', reject).on('close', (code) => resolve({ code, ...said }));
    if (stopAfter !== undefined) setTimeout(() => child.kill('SIGINT'), stopAfter);
  });
}

const readResults = (text: string) => resultsSchema.parse(JSON.parse(text));
const RUNS = 150;
const TWO = ['--plan', 'wide-rescue', '--plan', 'open-seed'];

beforeAll(() => sim(['--help']), 120_000);

describe('results of the runner', () => {
  let json: Ended;
  let oneThread: Ended;
  let text: Ended;
  let csv: Ended;
  beforeAll(async () => {
    [json, oneThread, text, csv] = await Promise.all([
      sim([RED_PEAR, ...TWO, '--runs', String(RUNS), '--format', 'json', '--threads', '2']),
      sim([RED_PEAR, ...TWO, '--runs', String(RUNS), '--format', 'json', '--threads', '1']),
      sim([RED_PEAR, '--runs', String(RUNS), '--plan', 'wide-rescue']),
      sim([RED_PEAR, '--runs', String(RUNS), '--format', 'csv']),
    ]);
  }, 120_000);

  it('as JSON have the form that is promised, with the plans asked for in the programme’s order', () => {
    expect(json).toMatchObject({ code: 0, err: '' });
    const results = readResults(json.out);
    expect(results.plans.map(({ id }) => id)).toEqual(['open-seed', 'wide-rescue']);
    expect(results.comparisons.map(({ a, b }) => [a, b])).toEqual([['open-seed', 'wide-rescue']]);
    expect(results).toMatchObject({ word: 'red', runs: RUNS, guessesAsTheyStand: false, startYear: 2027, lastYear: 2057 });
    for (const plan of results.plans) {
      expect(plan.chanceByYear).toHaveLength(31);
      expect(plan.chanceByYear.at(-1)).toMatchObject(plan.chance);
      plan.chanceByYear.reduce((before, now) => (expect(now.value).toBeGreaterThanOrEqual(before.value), now));
      expect(Object.values(plan.failures).reduce((sum, share) => sum + share, plan.chance.value)).toBeCloseTo(1, 12);
      for (const byRule of [plan.byRule, plan.byFact]) expect(byRule.reduce((sum, { runs }) => sum + runs, 0)).toBe(RUNS);
    }
  });

  it('name the programme by the SHA-256 of its canonical JSON', () => {
    const sorted = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(sorted);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([name, part]) => [name, sorted(part)]),
      );
    };
    const reading = readProgramme(readFileSync(RED_PEAR, 'utf8'));
    const programme = reading.ok ? JSON.stringify(sorted(reading.programme)) : '';
    expect(readResults(json.out).programme).toBe(createHash('sha256').update(programme).digest('hex'));
  });

  it('as CSV have a line for each future of each plan, which tell the same story', () => {
    expect(csv).toMatchObject({ code: 0, err: '' });
    const rows = csvParse(csv.out);
    expect(rows).toHaveLength(4 * RUNS);
    for (const plan of readResults(json.out).plans) {
      const own = rows.filter((row) => row['plan'] === plan.id);
      expect(own).toHaveLength(RUNS);
      const years = own.flatMap(({ yearProven }) => (yearProven ? [Number(yearProven)] : []));
      expect(years.length / RUNS).toBe(plan.chance.value);
      for (const { year, value } of plan.chanceByYear) expect(years.filter((proven) => proven <= year).length / RUNS).toBe(value);
      expect(own.filter(({ failure }) => failure === '')).toHaveLength(years.length);
      expect(own.reduce((sum, { seedlings }) => sum + Number(seedlings), 0) / RUNS).toBeCloseTo(plan.seedlings.mean, 9);
    }
  });

  it('in words say what the figures say, of the plan asked for alone', () => {
    expect(text).toMatchObject({ code: 0, err: '' });
    const plan = readResults(json.out).plans.find(({ id }) => id === 'wide-rescue')!;
    expect(text.out).toContain('D  Wide cross, rescue graft: ');
    expect(text.out).toContain('a proven tree by 2057');
    expect(text.out).toContain(
      `${String(Math.round(plan.chance.value * 100))} % (${String(Math.round(plan.chance.low * 100))}–${String(Math.round(plan.chance.high * 100))})`,
    );
    expect(text.out).toContain('planning aid, not a promise');
    expect(text.out).not.toContain('brother');
  });

  it('are the same bytes on one thread and on two', () => {
    expect(oneThread.out).toBe(json.out);
    expect(oneThread.code).toBe(0);
  });

  it('follow the word, the number of futures and the middle of the guesses', async () => {
    const asked = (...more: string[]) => sim([RED_PEAR, '--plan', 'open-seed', '--format', 'csv', '--runs', '60', ...more]);
    const [red, blue, means] = await Promise.all([asked(), asked('--word', 'blue'), asked('--means')]);
    expect(csvParse(blue.out)).toHaveLength(60);
    expect(blue.out).not.toBe(red.out);
    expect(means.out).not.toBe(red.out);
    // The first futures are the same, however many are run and whatever plans are beside.
    expect(csv.out.split('\r\n').slice(0, 61)).toEqual(red.out.split('\r\n').slice(0, 61));
  });
});

describe('what the runner refuses', () => {
  const out = join(folder, 'never.json');
  const write = (name: string, document: string) => {
    writeFileSync(join(folder, name), document);
    return name;
  };

  it('a file that is no programme, one that contradicts itself, and none at all: with sentences, and without writing', async () => {
    const red = readFileSync(RED_PEAR, 'utf8');
    const files = [
      [write('broken.json', '{"format": '), /breaks off on line 1/],
      [write('unknown.json', red.replace('"shuffleWord"', '"shuffledWord"')), /shuffledWord/],
      [
        write('contrary.json', red.replace('"tree": "old-hedgerow"', '"tree": "felled"')),
        /plans › “Open-pollinated seed” › generations › “Gathered seed” › .*felled/,
      ],
      ['none.json', /no file “none.json”/],
      ['.', /is a folder/],
    ] as const;
    const ends = await Promise.all(files.map(([file]) => sim([file, '--format', 'json', '--out', out])));
    ends.forEach((ended, i) => {
      expect(ended).toMatchObject({ code: 2, out: '' });
      expect(ended.err).toMatch(files[i]![1]);
    });
    expect(readdirSync(folder).filter((name) => name.includes('never'))).toEqual([]);
  });

  it('an option it does not know, and a plan that is not there', async () => {
    const [option, plan] = await Promise.all([sim([RED_PEAR, '--speed', '9']), sim([RED_PEAR, '--plan', 'grafts'])]);
    expect(option).toMatchObject({ code: 2, out: '' });
    expect(option.err).toMatch(/--speed/);
    expect(plan).toMatchObject({ code: 2, out: '', err: 'There is no plan “grafts”; the plans are open-seed, brother-sister, wide-own-roots, wide-rescue.\n' });
  });
});

describe('an interrupted run', () => {
  it('ends with 130 and leaves the file as it was', async () => {
    const out = join(folder, 'kept.csv');
    writeFileSync(out, 'old');
    const ended = await sim([RED_PEAR, '--plan', 'brother-sister', '--runs', '200000', '--format', 'csv', '--out', out], 1500);
    expect(ended).toMatchObject({ code: 130, out: '' });
    expect(readFileSync(out, 'utf8')).toBe('old');
    expect(readdirSync(folder).filter((name) => name.includes('kept'))).toEqual(['kept.csv']);
  });
});
