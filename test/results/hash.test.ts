import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, hashOf } from '../../src/results/hash.ts';

/** The same data with its names put in another order, deeply. */
function turned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turned);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([name, part]) => [name, turned(part)]),
  );
}

describe('JSON that is the same for equal data', () => {
  it('writes the sample of RFC 8785 §3.2.2 as the RFC does (from memory)', () => {
    const sample: unknown = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    );
    expect(canonicalJson(sample)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('orders names by UTF-16 code units, as RFC 8785 §3.2.3 does: a surrogate pair before U+FB33', () => {
    expect(canonicalJson({ '\ufb33': 1, '\u{1f600}': 2, '\u00f6': 3, '1': 4, '\r': 5 })).toBe('{"\\r":5,"1":4,"ö":3,"😀":2,"\ufb33":1}');
  });

  it('does not depend on the order of names, and says what JSON says', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const plain: unknown = JSON.parse(JSON.stringify(value));
        expect(canonicalJson(turned(plain))).toBe(canonicalJson(plain));
        expect(JSON.parse(canonicalJson(plain))).toEqual(plain);
      }),
    );
  });

  it('leaves out what is undefined and refuses what JSON cannot say', () => {
    expect(canonicalJson({ a: undefined, b: 1 })).toBe('{"b":1}');
    for (const bad of [NaN, Infinity, undefined, [undefined], 1n, () => 1]) expect(() => canonicalJson(bad)).toThrow(TypeError);
  });
});

describe('hash of plain data', () => {
  it('is the SHA-256 that Node’s own crypto finds', async () => {
    for (const value of [{}, 'abc', { title: 'Röte', years: [2027, 2057] }]) {
      expect(await hashOf(value)).toBe(createHash('sha256').update(canonicalJson(value)).digest('hex'));
    }
  });
});
