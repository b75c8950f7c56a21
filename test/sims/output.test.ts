import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { fileOutput, type Output } from '../../sims/run/output.ts';

const folder = mkdtempSync(join(tmpdir(), 'output-'));
const source = join(folder, 'programme.json');
const target = join(folder, 'results.csv');
afterAll(() => rmSync(folder, { recursive: true }));
beforeEach(() => {
  for (const name of readdirSync(folder)) rmSync(join(folder, name));
  writeFileSync(source, '{}');
});

/** The output for a file that can be written. */
function output(path: string): Output {
  const made = fileOutput(path, source);
  if (typeof made === 'string') throw new Error(made);
  return made;
}

const big = 'x'.repeat(100_000);

describe('a file of results', () => {
  it('appears only when it is whole', async () => {
    function* pieces() {
      yield big;
      expect(readdirSync(folder)).not.toContain('results.csv');
      yield 'end';
    }
    await output(target).write(pieces());
    expect(readFileSync(target, 'utf8')).toBe(`${big}end`);
    expect(readdirSync(folder).sort()).toEqual(['programme.json', 'results.csv']);
  });

  it('stays as it was when the new one is given up half way', async () => {
    writeFileSync(target, 'old');
    const out = output(target);
    function* pieces() {
      yield big;
      expect(readdirSync(folder)).toHaveLength(3);
      out.giveUp();
      throw new Error('stopped');
    }
    await expect(out.write(pieces())).rejects.toThrow('stopped');
    expect(readFileSync(target, 'utf8')).toBe('old');
    expect(readdirSync(folder).sort()).toEqual(['programme.json', 'results.csv']);
  });

  it('is written where a link points, and the link stays', async () => {
    writeFileSync(target, 'old');
    symlinkSync(target, join(folder, 'link'));
    await output(join(folder, 'link')).write(['new']);
    expect(readFileSync(target, 'utf8')).toBe('new');
  });

  it('cannot be a folder, lie in none, or be the programme itself', () => {
    symlinkSync(source, join(folder, 'link'));
    expect(fileOutput(folder, source)).toMatch(/names a folder/);
    expect(fileOutput(join(folder, 'none', 'x.csv'), source)).toMatch(/Nothing can be written/);
    expect(fileOutput(source, source)).toMatch(/the programme file itself/);
    expect(fileOutput(join(folder, 'link'), source)).toMatch(/the programme file itself/);
  });

  it('may be a device, which is written to and not replaced', async () => {
    await output('/dev/null').write(['gone']);
    expect(readdirSync(folder)).toEqual(['programme.json']);
  });
});
