import { describe, expect, it } from 'vitest';
import type { Diary, DiaryGeneration } from '../../src/results/diary.ts';
import { diaryRows, entries } from '../../src/text/diary.ts';

const idle: DiaryGeneration = {
  generation: 0,
  flowers: 0,
  fruits: 0,
  seedlings: 0,
  grafted: 0,
  fruiting: 0,
  judged: 0,
  kept: 0,
  picksLost: 0,
  wentOn: false,
  standing: 0,
};
const diary: Diary = {
  run: 0,
  rules: [],
  facts: [],
  proven: true,
  years: [
    { year: 2027, frost: false, lost: [], proven: 0, generations: [{ ...idle, flowers: 1200, fruits: 30 }] },
    { year: 2028, frost: true, lost: ['Mill Quince'], proven: 0, generations: [] },
    {
      year: 2034,
      frost: false,
      lost: [],
      proven: 1,
      generations: [
        { ...idle, wentOn: true, standing: 3 },
        { ...idle, generation: 1, seedlings: 12, standing: 12 },
      ],
    },
  ],
};
const names = ['Cross', 'Pick × pick'];

describe('the diary as a table', () => {
  const { counts, rows } = diaryRows(diary, names);

  it('has the counts that any year has, and no others', () => {
    expect(counts).toEqual(['flowers', 'fruits', 'seedlings', 'standing']);
    expect(rows.map(({ counts: row }) => row)).toEqual([[1200, 30, 0, 0], [], [0, 0, 0, 3], [0, 0, 12, 12]]);
  });

  it('has a row for each generation at work, and for a year in which only the weather was', () => {
    expect(rows.map(({ year, generation }) => [year, generation])).toEqual([
      [2027, 'Cross'],
      [2028, ''],
      [2034, 'Cross'],
      [2034, 'Pick × pick'],
    ]);
  });

  it('says what happened to the orchard once a year, in the words of the diary', () => {
    expect(rows.map(({ happened }) => happened)).toEqual(['', 'Mill Quince was lost over the winter. Frost in bloom.', 'A tree is proven. Time to go on.', '']);
    expect(diary.years.map((year) => entries(year, names).join(' '))[1]).toBe(rows[1]!.happened);
  });
});
