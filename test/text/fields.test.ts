import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { formKey } from '../../src/components/fields/form-items.ts';
import { fieldKind, optionsOf } from '../../src/components/fields/field-kind.ts';
import { estimateBounds, sourceSchema } from '../../src/model/estimate.ts';
import { programmeSchema } from '../../src/model/programme.ts';
import { bare, entrySchema, fieldsOf, membersOf } from '../../src/model/walk.ts';
import { amountInWords, countWords, formWords, groupWords, hasFormWords, problems, shareInWords, sourceWords } from '../../src/text/fields.ts';

interface Node {
  readonly keys: readonly string[];
  readonly schema: z.ZodType;
}

/** Every node of the schema with the keys that lead to it; estimates are leaves. */
function nodesOf(schema: z.ZodType, keys: readonly string[] = []): Node[] {
  const here = [{ keys, schema }];
  if (estimateBounds.has(bare(schema).schema)) return here;
  const entry = entrySchema(schema);
  return [
    ...here,
    ...membersOf(schema).flatMap((member) => nodesOf(member, keys)),
    ...fieldsOf(schema).flatMap(([key, inner]) => nodesOf(inner, [...keys, key])),
    ...(entry ? nodesOf(entry, keys) : []),
  ];
}

const nodes = nodesOf(programmeSchema);
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll('\u2060', '');

describe('words of the fields', () => {
  it('looks at the whole schema', () => expect(nodes.length).toBeGreaterThan(300));

  it('names every group, list and table that has no label with the schema', () => {
    const wordless = nodes.filter(({ keys, schema }) => {
      const { schema: node, meta } = bare(schema);
      const groups = node instanceof z.ZodObject || node instanceof z.ZodArray || node instanceof z.ZodRecord || node instanceof z.ZodUnion;
      return keys.length > 0 && groups && !estimateBounds.has(node) && meta === undefined && groupWords(keys) === undefined;
    });
    expect(wordless.map(({ keys }) => keys.join('.'))).toEqual([]);
  });

  it('has words on the button of every group that may be absent', () => {
    const silent = nodes.filter(
      ({ keys, schema }) => bare(schema).optional && bare(schema).schema instanceof z.ZodObject && groupWords(keys)?.add === undefined,
    );
    expect(silent.map(({ keys }) => keys.join('.'))).toEqual([]);
  });

  it('has words on the button of every list of entries, and for one entry of it', () => {
    const silent = nodes.filter(({ keys, schema }) => bare(schema).schema instanceof z.ZodArray && groupWords(keys)?.add === undefined);
    expect(silent.map(({ keys }) => keys.join('.'))).toEqual([]);
  });

  it('names every form of every choice', () => {
    const silent = nodes.flatMap(({ keys, schema }) => {
      const members = membersOf(schema);
      if (estimateBounds.has(bare(schema).schema) || members.length === 0) return [];
      // Parents are chosen from one list of trees and picks, and a list of entries stands for itself.
      const named = members.filter(
        (member) => bare(member).schema instanceof z.ZodLiteral || (bare(member).schema instanceof z.ZodObject && !isParent(member)),
      );
      return named.map((member) => [keys.at(-1) ?? '', literal(member) ?? formKey(member)] as const).filter(([key, form]) => !hasFormWords(key, form));
    });
    expect(silent).toEqual([]);
  });

  it('labels every field that is drawn, and words every closed list', () => {
    const hidden = new Set(['id', 'mark', 'format', 'version', 'example']);
    for (const { keys, schema } of nodes) {
      const { meta, schema: node } = bare(schema);
      if (hidden.has(keys.at(-1) ?? '') || node instanceof z.ZodLiteral || !fieldKind(schema)) continue;
      expect(meta?.label, keys.join('.')).toMatch(/\p{L}/u);
      for (const option of optionsOf(schema)) expect(meta?.words?.[option], `${keys.join('.')} ${option}`).toBeDefined();
    }
  });

  it('has a word for each kind of source', () => expect(Object.keys(sourceWords)).toEqual(sourceSchema.shape.kind.options));

  it('never shouts and never uses the words that the house avoids', () => {
    const all = nodes.flatMap(({ keys }) => Object.values<string>({ ...groupWords(keys) })).join(' ');
    expect(all).not.toMatch(/!|\b(optimi[sz]e|confidence|significant|error|invalid|user|dashboard|accession|seed lot)\b/i);
  });
});

const isParent = (member: z.ZodType): boolean => ['tree', 'picksOf', 'sires'].includes(fieldsOf(member)[0]?.[0] ?? '');
function literal(member: z.ZodType): string | undefined {
  const node = bare(member).schema;
  return node instanceof z.ZodLiteral ? String(node.def.values[0]) : undefined;
}

describe('sentences of the fields', () => {
  it('says shares as a hand can count them', () => {
    expect(plain(shareInWords(0.077, 0.055, 0.099))).toBe('about 8 in 100; likely 6–10');
    expect(plain(shareInWords(0.69, 0.56, 0.81))).toBe('about 7 in 10; likely 6–8');
    expect(plain(shareInWords(0.004, 0.002, 0.006))).toBe('about 4 in 1,000; likely 2–6');
    expect(plain(shareInWords(0.5, 0.499, 0.501))).toBe('about 50 in 100; likely 50');
  });

  it('says amounts with their unit, in two digits', () => {
    expect(plain(amountInWords(6.17, 3.3, 9.42, 'months'))).toBe('about 6.2 months; likely 3.3–9.4');
    expect(plain(amountInWords(1234.5, 900, 1600, 'flowers'))).toBe('about 1,235 flowers; likely 900–1,600');
    expect(plain(amountInWords(0.8, 0.7, 0.9, ''))).toBe('about 0.8; likely 0.7–0.9');
  });

  it('lists the last good numbers', () => {
    expect(problems.stands(['4'])).toBe('The picture still shows your last good number, 4.');
    expect(problems.stands(['4', '6', '9'])).toBe('The picture still shows your last good numbers, 4, 6 and 9.');
    expect(plain(problems.between('0', '1000000', 'flowers'))).toBe('Must lie between 0 and 1,000,000 flowers.');
    expect(problems.between('1500', '3000', '', true)).toBe('Must lie between 1500 and 3000.');
  });

  it('falls back to plain words', () => {
    expect(formWords('no-such', 'thing')).toBe('thing');
    expect(countWords('no-such')).toEqual(['', '']);
    expect(groupWords(['trees', 'genes'])?.label).toBe('Its genes');
    expect(groupWords(['genes'])?.label).toBe('Genes');
  });
});
