import type { LoggedTree } from '../model/log.ts';
import type { Programme } from '../model/programme.ts';
import type { LeftOut, PlacedBatch } from './batches.ts';
import { fullest, springOf, timeOf } from './counts.ts';
import type { Stretch } from './stretch.ts';

/** From when on the listed trees were all that stood: those that were listed later had lived until then, and say nothing of before. */
function listedFrom(programme: Programme, { batch, germinates }: PlacedBatch): number | undefined {
  const [up, planted] = [fullest(batch, 'cameUp'), fullest(batch, 'planted')];
  if (up && batch.trees.length >= up.count) return springOf(programme, germinates);
  return planted?.when !== undefined && batch.trees.length >= planted.count ? timeOf(programme, planted.when) : undefined;
}

/** The last year of which anything is told of a tree. */
const lastTold = ({ firstFruit, lookedUntil, seasons, status, statusSince }: LoggedTree): number =>
  Math.max(0, firstFruit ?? 0, lookedUntil ?? 0, ...seasons.map(({ year }) => year), status === 'alive' ? 0 : (statusSince ?? 0));

const ended = ({ status }: LoggedTree): boolean => status === 'dead' || status === 'culled';

/**
 * Finds stretches, a year each, between one summer and the next, from the status of listed trees: dead in a year means that it died since
 * the summer before. A culled tree leaves unharmed in its year. Trees that died, nobody knows when, died at some time of all the years that
 * are told of; culled ones of which the year is not known say nothing.
 * @param taken what events took of the seedlings between two times; no more of it than died then is taken from those at risk
 *
 * **Source:** actuarial life table with withdrawals taken out before the year, as in Kalbfleisch & Prentice (2002) ch. 1.
 */
export function treeStretches(
  programme: Programme,
  one: PlacedBatch,
  taken: (from: number, to: number) => number,
): { readonly facts: Stretch[]; readonly leftOut: LeftOut[] } {
  const { batch, germinates, kind } = one;
  const from = listedFrom(programme, one);
  const last = Math.max(0, ...batch.trees.map(lastTold));
  const up = springOf(programme, germinates);
  const facts: Stretch[] = [];
  const leftOut: LeftOut[] = [];
  if (from === undefined || last <= from) return { facts, leftOut };
  const stretch = (start: number, end: number, atRisk: number, alive: number): void => {
    if (atRisk > 0) facts.push({ batch: batch.id, kind: kind.id, year: Math.floor(end), age: start - up, until: end - up, atRisk, alive });
  };
  const summer = (year: number): number => timeOf(programme, String(year));
  const undated = batch.trees.filter((tree) => tree.status === 'dead' && tree.statusSince === undefined).length;
  stretch(from, summer(last), undated, 0);
  const told = batch.trees.filter((tree) => !ended(tree) || tree.statusSince !== undefined);
  let start = from;
  for (let year = Math.floor(from) + (summer(Math.floor(from)) > from ? 0 : 1); year <= last; year += 1) {
    const still = told.filter((tree) => !ended(tree) || (tree.statusSince ?? 0) > year || (tree.status === 'dead' && tree.statusSince === year));
    const died = still.filter(({ status, statusSince }) => status === 'dead' && statusSince === year).length;
    const lost = Math.min(died, taken(start, summer(year)));
    if (lost > 0) leftOut.push({ batch: batch.id, name: batch.name, why: 'eventLoss', about: `${String(lost)} seedlings` });
    stretch(start, summer(year), still.length - lost, still.length - died);
    start = summer(year);
  }
  return { facts, leftOut };
}
