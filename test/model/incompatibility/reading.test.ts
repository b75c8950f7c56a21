import { describe, expect, it } from 'vitest';
import { alleleBook, saysMutant } from '../../../src/model/incompatibility/alleles.ts';
import { readSAlleles } from '../../../src/model/incompatibility/reading.ts';

describe('S alleles as the trade writes them', () => {
  it.each([
    ["S3S4'", ['S3', "S4'"]],
    ['S3S4’', ['S3', "S4'"]],
    ['S₃S₄′', ['S3', "S4'"]],
    ['S1S?', ['S1', null]],
    ["S6 S13' Sa Snull", ['S6', "S13'", 'Sa', 'Snull']],
    ["S6,S13',Sa; Snull", ['S6', "S13'", 'Sa', 'Snull']],
    ['ScSd', ['Sc', 'Sd']],
    ['S101S102', ['S101', 'S102']],
    ['S6m2 S9 S26 Sa', ['S6m2', 'S9', 'S26', 'Sa']],
    ['S2/S4sm', ['S2', 'S4sm']],
    ['S2S3S9', ['S2', 'S3', 'S9']],
    ['  ', []],
  ])('%s', (text, alleles) => {
    expect(readSAlleles(text)).toEqual({ ok: true, alleles });
  });

  it.each([
    ['S3X4', 3, 'X4'],
    ['s3s4', 1, 's3s4'],
    ['S3 and S4', 4, 'and S4'],
    ['SS4', 1, 'SS4'],
    ['3 4', 1, '3 4'],
  ])('%s cannot be read from letter %i', (text, at, found) => {
    const reading = readSAlleles(text);
    expect(reading).toMatchObject({ ok: false, at, found });
    expect(reading.ok ? '' : reading.message).toContain(`letter ${String(at)}`);
  });
});

it('alleles out of the ordinary: what they are like, and what of them works', () => {
  const book = alleleBook([
    { name: 'S4’', like: 'S4', pollenWorks: false, styleWorks: true },
    { name: 'S4"', like: "S4'", pollenWorks: true, styleWorks: true },
    { name: 'Sx', like: 'Sy', pollenWorks: true, styleWorks: true },
    { name: 'Sy', like: 'Sx', pollenWorks: true, styleWorks: true },
  ]);
  expect(book("S4'")).toEqual({ name: "S4'", like: 'S4', pollenWorks: false, styleWorks: true });
  expect(book('S4"')?.like).toBe('S4');
  expect(book('S9')).toEqual({ name: 'S9', like: 'S9', pollenWorks: true, styleWorks: true });
  expect(book('Sx')?.like).toBe(book('Sy')?.like);
  expect(book(null)).toBeNull();
  expect(["S4'", 'Snull', 'S6m', 'S6m2', 'S4sm'].every(saysMutant)).toBe(true);
  expect(['S4', 'Sa', 'Sm', 'S101', 'Sf'].some(saysMutant)).toBe(false);
});
