import type { Programme, Stock } from '../model/programme.ts';
import { takeAt } from '../statistics/graft.ts';
import { learnGrid, shareAxis } from '../statistics/learn-grid.ts';
import type { Belief } from '../statistics/weighed.ts';
import type { LeftOut, PlacedBatch } from './batches.ts';
import { fullest } from './counts.ts';
import { shareDensity } from './priors.ts';

/** Grafts of one batch onto one stock, at one age. */
export interface TakeFact {
  readonly stock: string;
  readonly month: number;
  readonly took: number;
  readonly grafted: number;
  readonly batch: string;
  readonly year: number;
}

/** Finds grafts that were counted together with their age and stock. */
export function takeFacts(placed: readonly PlacedBatch[]): { readonly facts: TakeFact[]; readonly leftOut: LeftOut[] } {
  const facts: TakeFact[] = [];
  const leftOut: LeftOut[] = [];
  for (const { batch, germinates } of placed) {
    const [grafted, took] = [fullest(batch, 'grafted'), fullest(batch, 'took')];
    if (!grafted || !took || grafted.count === 0) continue;
    const about = `${String(took.count)} of ${String(grafted.count)}`;
    if (!batch.grafting) leftOut.push({ batch: batch.id, name: batch.name, why: 'noGrafting', about });
    else if (took.count > grafted.count) leftOut.push({ batch: batch.id, name: batch.name, why: 'doesNotAddUp', about: `take: ${about}` });
    else {
      const { month, stock } = batch.grafting;
      facts.push({ stock, month, took: took.count, grafted: grafted.count, batch: batch.id, year: germinates + Math.floor(month / 12) });
    }
  }
  return { facts, leftOut };
}

/** Belief about the take of tender and of ripe wood: grafts of an age between speak to both, as take rises evenly between. Grafts are binomial. */
export function learnTake(stock: Stock, facts: readonly TakeFact[]): { readonly tender: Belief; readonly ripe: Belief } {
  const [tender, ripe] = learnGrid([shareAxis(shareDensity(stock.takeTender)), shareAxis(shareDensity(stock.takeRipe))], ([a = 0, b = 0]) =>
    facts.reduce((sum, { month, took, grafted }) => {
      const p = takeAt(month, a, b, stock.ripeMonths);
      return sum + took * Math.log(p) + (grafted - took) * Math.log1p(-p);
    }, 0),
  );
  if (!tender || !ripe) throw new RangeError('Two axes give two beliefs.');
  return { tender, ripe };
}

/** The stock of an id with its place in the document. */
export const stockAt = ({ stocks }: Programme, id: string): { readonly stock: Stock; readonly at: number } | undefined => {
  const at = stocks.findIndex((one) => one.id === id);
  const stock = stocks[at];
  return stock && { stock, at };
};
