import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { compareSpeeds, ratioOf, studentPoint } from '../../sims/bench/ratio.ts';
import { speedOf } from '../../sims/bench/speed.ts';

describe('two states of the engine', () => {
  it('are told apart by Student’s t: its 97.5 % points as in NIST/SEMATECH e-Handbook 1.3.6.7.2 (from memory)', () => {
    for (const [freedom, point] of [
      [1, 12.706],
      [5, 2.571],
      [10, 2.228],
      [29, 2.045],
      [100, 1.984],
    ] as const)
      expect(studentPoint(freedom)).toBeCloseTo(point, 3);
  });

  it('differ by the ratio of their speeds, whatever the machine does to both at once', () => {
    // The machine slows down tenfold half way; one state is always 1.2 times as fast.
    const pairs = Array.from({ length: 30 }, (_, i) => {
      const nanoseconds = i < 15 ? 1000 : 10_000;
      return { now: { runs: 6, seedlings: 12, nanoseconds }, then: { runs: 5, seedlings: 10, nanoseconds } };
    });
    const { runsPerSecond, seedlingsPerSecond } = compareSpeeds(pairs);
    for (const ratio of [runsPerSecond, seedlingsPerSecond]) for (const part of [ratio.value, ratio.low, ratio.high]) expect(part).toBeCloseTo(1.2, 9);
  });

  it('have an interval around the geometric mean, the same turned round', () => {
    const pairs = [
      [2, 1],
      [1, 2],
      [4, 1],
    ] as const;
    const there = ratioOf(pairs);
    const back = ratioOf(pairs.map(([a, b]) => [b, a] as const));
    expect(there.value).toBeCloseTo(Math.cbrt(4), 12);
    expect(there.low * back.high).toBeCloseTo(1, 12);
    // Logs in units of ln 2: 1, −1, 2; mean 2/3, variance 7/3, t(2) = 4.303.
    expect(Math.log2(there.high)).toBeCloseTo(2 / 3 + 4.303 * Math.sqrt(7 / 9), 2);
  });
});

describe('speed', () => {
  it('is counted in runs, seedlings and nanoseconds by the clock', () => {
    const speed = speedOf(2, [
      { runs: 100, seedlings: 4000, nanoseconds: 1e6 },
      { runs: 100, seedlings: 4000, nanoseconds: 2e6 },
      { runs: 100, seedlings: 4000, nanoseconds: 4e6 },
    ]);
    expect(speed.runsPerSecond).toEqual({ low: 25_000, middle: 50_000, high: 100_000 });
    expect(speed.nanosecondsPerSeedling).toEqual({ low: 250, middle: 500, high: 1000 });
  });
});

describe('the benchmark', () => {
  const launch = fileURLToPath(new URL('../../sims/launch.mjs', import.meta.url));
  const bench = (...argv: string[]) => spawnSync(process.execPath, [launch, 'bench', ...argv], { encoding: 'utf8' });

  it('prints a table and writes the same as JSON', () => {
    const folder = mkdtempSync(join(tmpdir(), 'bench-'));
    try {
      const file = join(folder, 'bench.json');
      const ended = bench('--runs', '100', '--json', file);
      expect(ended).toMatchObject({ status: 0, stderr: '' });
      expect(ended.stdout).toMatch(/runs a second .* ns a seedling\none thread /);
      const range = z.object({ low: z.number().positive(), middle: z.number().positive(), high: z.number().positive() });
      const schema = z.object({
        futures: z.literal(100),
        plans: z.literal(4),
        speeds: z.array(z.object({ threads: z.int().min(1), runsPerSecond: range, nanosecondsPerSeedling: range })).length(2),
      });
      expect(schema.safeParse(JSON.parse(readFileSync(file, 'utf8'))).error).toBeUndefined();
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('refuses what it does not know', () => {
    expect(bench('--speed').status).toBe(2);
    expect(bench('--runs', 'many').status).toBe(2);
    expect(bench('--runs', '100', '--against', 'no-such-commit')).toMatchObject({ status: 1, stderr: 'Git knows no commit “no-such-commit” here.\n' });
  });
});
