import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { entries, isSkipped } from '../../sims/studies/validation/entries.ts';
import { report, zScores } from '../../sims/studies/validation/report.ts';
import { picture } from '../../sims/studies/validation/picture.ts';
import { WAYS, workedRows } from '../../sims/studies/validation/study.ts';

const docs = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');
const text = z.string().min(1);
const studySchema = z.strictObject({
  rows: z.array(
    z.strictObject({
      id: text,
      way: z.enum(WAYS),
      title: text,
      source: text,
      mark: z.enum(['seen', 'from memory', 'derived']),
      note: text.exactOptional(),
      figures: z
        .array(z.strictObject({ what: text.exactOptional(), published: z.number(), ours: z.number(), error: z.number().min(0), z: z.number().nullable() }))
        .min(1),
      verdict: z.enum(['exact', 'to the digits published', 'within 4 s.e.', 'differs']),
      why: text.exactOptional(),
    }),
  ),
  covered: z.array(text),
  skipped: z.array(z.strictObject({ id: text, title: text, source: text, reason: text })),
});
const study = studySchema.parse(JSON.parse(docs('validation.json')));

/** How many check values of the field are known: none may drop out unseen. */
const KNOWN = 324;

describe('the committed validation', () => {
  it('accounts for every known check value once: covered or skipped with a reason', () => {
    const ids = entries.map(({ id }) => id);
    expect(new Set(ids).size).toBe(KNOWN);
    expect(ids).toHaveLength(KNOWN);
    expect([...study.covered, ...study.skipped.map(({ id }) => id)].sort()).toEqual([...ids].sort());
    expect(study.skipped.map(({ id, reason }) => ({ id, reason }))).toEqual(
      entries.flatMap((entry) => (isSkipped(entry) ? [{ id: entry.id, reason: entry.skip }] : [])),
    );
    for (const { reason } of study.skipped) expect(reason.trim().length, reason).toBeGreaterThan(15);
  });

  it('has a verdict for every covered entry, and none for a skipped one', () => {
    const judged = new Set(study.rows.map(({ id }) => id));
    for (const id of study.covered) expect(judged.has(id), id).toBe(true);
    for (const { id } of study.skipped) expect(judged.has(id), id).toBe(false);
  });

  it('gives a reason wherever ours differs, and for nothing else', () => {
    for (const { id, verdict, why } of study.rows) expect(why !== undefined, id).toBe(verdict === 'differs');
  });

  it('says “agrees” only where the figures do', () => {
    for (const { id, verdict, figures } of study.rows)
      if (verdict === 'within 4 s.e.') for (const figure of figures) expect(Math.abs(figure.z ?? 0), id).toBeLessThanOrEqual(4);
  });

  it('was written by the checks as they are now', () => {
    expect(study.rows.filter(({ way }) => way === 'worked out')).toEqual(workedRows());
  });

  it('says the same in words and in the picture', () => {
    expect(docs('validation.md')).toBe(`${report(study).trimEnd()}\n`);
    expect(docs('validation.svg')).toBe(picture(zScores(study)));
  });
});
