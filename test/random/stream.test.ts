import { describe, expect, it } from 'vitest';
import { mix2, textKey } from '../../src/random/mix.ts';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { count, expectMean, expectShare, expectVariance } from '../engine/agreement.ts';

const N = 100_000;
const stream = (word = 'word') => new Stream(rootOf(word)).future(1, 7);
const many = (draw: () => number, n = N) => Array.from({ length: n }, draw);
const uniforms = (s: Stream) => many(() => s.uniform());

/** Upper 3.2·10⁻⁵ point of chi-square (four standard errors of a normal value), by its cube root: Wilson & Hilferty (1931) PNAS 17:684–688. */
const limit = (freedom: number) => freedom * (1 - 2 / (9 * freedom) + 4 * Math.sqrt(2 / (9 * freedom))) ** 3;

describe('streams', () => {
  it('are uniform on (0, 1): mean ½, variance 1/12, even over 256 cells by the top and by the low bits', () => {
    const s = stream().key(3);
    const values = uniforms(s);
    expect(Math.min(...values)).toBeGreaterThan(0);
    expect(Math.max(...values)).toBeLessThan(1);
    expectMean(values, 0.5);
    expectVariance(values, 1 / 12);
    const chi = (cell: () => number) => {
      const cells = new Float64Array(256);
      for (let i = 0; i < N; i += 1) cells[cell()]! += 1;
      return cells.reduce((sum, seen) => sum + (seen - N / 256) ** 2 / (N / 256), 0);
    };
    expect(chi(() => s.bits() >>> 24)).toBeLessThan(limit(255));
    expect(chi(() => s.bits() & 255)).toBeLessThan(limit(255));
  });

  it('every bit of the generator is a coin', () => {
    const s = stream().key(9);
    const ones = new Float64Array(32);
    for (let i = 0; i < N; i += 1) {
      const bits = s.bits();
      for (let b = 0; b < 32; b += 1) ones[b]! += (bits >>> b) & 1;
    }
    ones.forEach((hits, b) => expectShare(hits, N, 0.5, `bit ${String(b)}`));
  });

  it('neighbouring numbers, keys, futures, domains and words do not go together', () => {
    const covariance = (a: readonly number[], b: readonly number[], what: string) =>
      expectMean(
        a.map((x, i) => (x - 0.5) * (b[i]! - 0.5)),
        0,
        what,
      );
    const base = uniforms(stream().key(3));
    covariance(base.slice(1), base.slice(0, -1), 'next number');
    covariance(base, uniforms(stream().key(4)), 'next key');
    covariance(base, uniforms(new Stream(rootOf('word')).future(1, 8).key(3)), 'next future');
    covariance(base, uniforms(new Stream(rootOf('word')).future(2, 7).key(3)), 'next domain');
    covariance(base, uniforms(stream('words').key(3)), 'another word');
  });

  it('first numbers of many keys, and of many futures, are as random as one stream', () => {
    const s = new Stream(rootOf('first'));
    const byKey = many(() => 0).map((_, k) => s.future(1, 5).key(k).uniform());
    const byFuture = many(() => 0).map((_, f) => s.future(1, f).key(12).uniform());
    for (const values of [byKey, byFuture]) {
      expectMean(values, 0.5);
      expectVariance(values, 1 / 12);
      expectMean(
        values.slice(1).map((x, i) => (x - 0.5) * (values[i]! - 0.5)),
        0,
      );
      expectShare(
        count(values, (x) => x < 0.001),
        N,
        0.001,
      );
    }
    // Equal first numbers are as rare as chance has it: N²/2³³ pairs, Poisson.
    const pairs = N - new Set(byKey).size;
    expect(pairs).toBeLessThan(N ** 2 / 2 ** 33 + 4 * Math.sqrt(N ** 2 / 2 ** 33) + 4);
  });

  it('the same word, domain, future and key give the same numbers, whatever was drawn before', () => {
    const a = stream();
    a.key(1);
    many(() => a.bits(), 17);
    const again = many(() => a.key(5).bits(), 1);
    expect(many(() => stream().key(5).bits(), 1)).toEqual(again);
    expect(Array.from(rootOf('word'))).toEqual(Array.from(rootOf('word')));
    expect(Array.from(rootOf('word'))).not.toEqual(Array.from(rootOf('Word')));
  });

  it('fine uniforms lie in (0, 1) with more than 32 bits', () => {
    const s = stream().key(2);
    const values = many(() => s.fineUniform(), 20_000);
    expect(Math.min(...values)).toBeGreaterThan(0);
    expect(Math.max(...values)).toBeLessThan(1);
    expectMean(values, 0.5);
    expect(values.filter((x) => (x * 2 ** 32) % 1 !== 0.5).length).toBeGreaterThan(19_000);
  });

  it('mixing tells numbers apart, and their order', () => {
    const inputs = Array.from({ length: 50_000 }, (_, i) => i);
    expect(new Set(inputs.map((i) => mix2(7, i))).size).toBe(inputs.length);
    expect(mix2(1, 2)).not.toBe(mix2(2, 1));
    expect(new Set(inputs.map((i) => mix2(i % 224, Math.floor(i / 224)))).size).toBeGreaterThan(inputs.length - 4);
    const flips = Array.from({ length: 2000 }, (_, i) => {
      let different = mix2(7, i) ^ mix2(7, i ^ (1 << (i % 32)));
      let bits = 0;
      for (; different !== 0; different &= different - 1) bits += 1;
      return bits;
    });
    // One bit of the input turns half of the output.
    expectMean(flips, 16);
  });

  it('texts that differ have keys that differ', () => {
    const texts = [
      '',
      'a',
      'b',
      'ab',
      'ba',
      'kinds/pear/set',
      'kinds/pear/ser',
      'kinds/pea/rset',
      ...Array.from({ length: 20_000 }, (_, i) => `trees/t${String(i)}/flowers`),
    ];
    expect(new Set(texts.map(textKey)).size).toBe(texts.length);
  });
});
