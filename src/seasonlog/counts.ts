import type { Batch, CountedStage, Count } from '../model/log.ts';
import type { Programme } from '../model/programme.ts';
import type { PlacedBatch } from './batches.ts';

/** Dates of the log against the life of a batch. Years run with the orchard's springs: bloom, and seedlings, in `bloomMonth`. */

/** Middle of a month as a share of its year, with the year. */
const ofMonth = (year: number, month: number): number => year + (month - 0.5) / 12;

/** The spring of a year, as a time in years. */
export const springOf = ({ limits }: Pick<Programme, 'limits'>, year: number): number => ofMonth(year, limits.bloomMonth);

/** A date of the log as a time in years; a bare year stands for that season's summer. */
export function timeOf(programme: Pick<Programme, 'limits'>, when: string): number {
  const [year = 0, month, day] = when.split('-').map(Number);
  if (month === undefined) return springOf(programme, year) + 0.25;
  return day === undefined ? ofMonth(year, month) : year + (month - 1) / 12 + (day - 0.5) / 372;
}

/** Winters come through by an age in years: one is behind a tree from about the ninth month of each year on. */
export const wintersBy = (age: number): number => Math.max(0, Math.floor(age + 0.25));

const inFlowers = ({ count, unit }: Count): number => count * (unit?.flowers ?? 1);

/** The fullest count of a stage, as a list is kept by adding to it; a count by cluster, bag or bur keeps its unit. */
export function fullest(batch: Batch, stage: CountedStage): Count | undefined {
  return batch.counts
    .filter((count) => count.stage === stage)
    .reduce<Count | undefined>((most, one) => (most && inFlowers(most) >= inFlowers(one) ? most : one), undefined);
}

/** What events took, by the stage at which it was lost. Kept in the log and out of the rates. */
export interface Losses {
  readonly flowers: number;
  readonly seeds: number;
  /** Seedlings, with the time. */
  readonly seedlings: readonly { readonly time: number; readonly lost: number }[];
}

/** Divides what events took by when they came: before fruit is ripe, before seed comes up, or later. */
export function lossesOf(programme: Programme, { batch, germinates }: PlacedBatch): Losses {
  const ripe = springOf(programme, batch.year) + programme.limits.ripeAfter / 12;
  const up = springOf(programme, germinates);
  const seedlings: { time: number; lost: number }[] = [];
  let [flowers, seeds] = [0, 0];
  for (const { what, when, lost } of batch.events) {
    if (lost === 0) continue;
    const time = timeOf(programme, when);
    // Rodents and standing water find seed in the ground; with the year alone they are not taken for losses in bloom.
    const inGround = when.length === 4 && (what === 'rodents' || what === 'waterlogging' || what === 'moved');
    if (time < ripe && !inGround) flowers += lost;
    else if (time < up || (inGround && time < ripe)) seeds += lost;
    else seedlings.push({ time, lost });
  }
  return { flowers, seeds, seedlings: seedlings.sort((a, b) => a.time - b.time) };
}
