import { meanOf } from '../model/mean.ts';
import type { LoggedTree } from '../model/log.ts';
import type { Programme } from '../model/programme.ts';
import type { Between } from '../statistics/censored.ts';
import type { LeftOut, PlacedBatch } from './batches.ts';
import { timeOf } from './counts.ts';

/** Years to first fruit of the trees of one family, as far as they are known. */
export interface FamilyAges {
  readonly batch: string;
  readonly kind: string;
  /** Families of one pair share its effect. */
  readonly pair: string;
  /** Years in which a first tree bore, and last one was looked at. */
  readonly first: number;
  readonly year: number;
  /** In years of age (x of the model: first fruit in season ⌈x⌉), on own roots. */
  readonly seen: readonly Between[];
  readonly fruited: number;
  readonly waiting: number;
}

/** Finds when trees first bore, and until when others had not; from the trees, else from dated counts of the batch. */
export function fruitingFacts(programme: Programme, placed: readonly PlacedBatch[]): { readonly facts: FamilyAges[]; readonly leftOut: LeftOut[] } {
  const facts: FamilyAges[] = [];
  const leftOut: LeftOut[] = [];
  for (const one of placed) {
    const { batch } = one;
    const out = (why: LeftOut['why'], about: string): void => void leftOut.push({ batch: batch.id, name: batch.name, why, about });
    const found = batch.trees.length > 0 ? ofTrees(programme, one, out) : ofCounts(programme, one, out);
    if (found.seen.length === 0) continue;
    const sum = (ended: boolean) => found.seen.reduce((total, { to, times = 1 }) => ((to === Infinity) === ended ? total + times : total), 0);
    const first = Math.min(...found.seen.map(({ to }) => (to === Infinity ? found.year : Math.ceil(one.germinates + to))));
    facts.push({ batch: batch.id, kind: one.kind.id, pair: one.pair, first, year: found.year, seen: found.seen, fruited: sum(false), waiting: sum(true) });
  }
  return { facts, leftOut };
}

interface Found {
  readonly seen: Between[];
  readonly year: number;
}

type Out = (why: LeftOut['why'], about: string) => void;

function ofTrees(programme: Programme, one: PlacedBatch, out: Out): Found {
  const { batch, germinates } = one;
  const seen: Between[] = [];
  let year = batch.year;
  const latest = lastSeason(one);
  for (const tree of batch.trees) {
    const until = lastLook(tree, latest);
    const end = tree.firstFruit ?? until;
    if (end === undefined) {
      out('noLastLook', tree.tag);
      continue;
    }
    // Found bearing at the first look after a gap: it may have borne at any time between.
    const looked = tree.firstFruit !== undefined && tree.lookedUntil !== undefined && tree.lookedUntil < tree.firstFruit ? tree.lookedUntil : end - 1;
    const ages = tree.firstFruit === undefined ? { from: end - germinates, to: Infinity } : { from: looked - germinates, to: end - germinates };
    if (ages.to <= 0) out('doesNotAddUp', tree.tag);
    else if (tree.stock === undefined) seen.push({ from: Math.max(0, ages.from), to: ages.to });
    else {
      const own = ownRoots(programme, one, tree.stock, ages);
      if (own) seen.push(own);
      else out('graftAge', tree.tag);
    }
    year = Math.max(year, end);
  }
  return { seen, year };
}

/** The last year in which somebody looked at a tree that has not borne. */
function lastLook(tree: LoggedTree, latest: number | undefined): number | undefined {
  if (tree.lookedUntil !== undefined) return tree.lookedUntil;
  if (tree.status !== 'alive') return tree.statusSince === undefined ? undefined : tree.statusSince - 1;
  return latest;
}

/** Last season of which a batch tells anything: trees that stand and have not borne were looked at then. */
function lastSeason({ batch }: PlacedBatch): number | undefined {
  const years = [
    ...batch.trees.flatMap(({ firstFruit, seasons, lookedUntil }) => [
      ...(firstFruit === undefined ? [] : [firstFruit]),
      ...(lookedUntil === undefined ? [] : [lookedUntil]),
      ...seasons.map(({ year }) => year),
    ]),
    ...batch.counts.flatMap(({ stage, when }) => ((stage === 'alive' || stage === 'fruiting') && when !== undefined ? [Number(when.slice(0, 4))] : [])),
  ];
  return years.length === 0 ? undefined : Math.max(...years);
}

/** Turns the ages of a grafted tree into those of its own roots: the stock multiplied what was still ahead at the graft. */
function ownRoots({ stocks }: Programme, { batch }: PlacedBatch, id: string, { from, to }: Between): Between | undefined {
  const stock = stocks.find((one) => one.id === id);
  if (!stock || !batch.grafting) return undefined;
  const graft = batch.grafting.month / 12;
  const hasten = meanOf(stock.precocity);
  const back = (age: number): number => (age <= graft ? age : graft + (age - graft) / hasten);
  return { from: back(Math.max(0, from)), to: to === Infinity ? to : back(to) };
}

/** From dated counts: those that came into bearing between two, and those alive that had not by the last. */
function ofCounts(programme: Programme, { batch, germinates }: PlacedBatch, out: Out): Found {
  const dated = (stage: 'fruiting' | 'alive') =>
    batch.counts
      .flatMap((count) => (count.stage === stage && count.when !== undefined ? [{ year: Math.floor(timeOf(programme, count.when)), count: count.count }] : []))
      .sort((a, b) => a.year - b.year);
  const [fruiting, alive] = [dated('fruiting'), dated('alive')];
  const last = fruiting[fruiting.length - 1];
  if (!last || batch.grafting) return { seen: [], year: batch.year };
  const standing = alive.filter(({ year }) => year <= last.year).pop() ?? alive[0];
  const rising = fruiting.every(({ count }, i) => count >= (fruiting[i - 1]?.count ?? 0));
  if (!standing || !rising || last.count > standing.count) {
    out('doesNotAddUp', `fruiting: ${fruiting.map(({ count }) => String(count)).join(', ')}${standing ? ` of ${String(standing.count)}` : ''}`);
    return { seen: [], year: batch.year };
  }
  let before = { year: germinates, count: 0 };
  const seen: Between[] = [];
  for (const next of fruiting) {
    const times = next.count - before.count;
    if (times > 0 && next.year > germinates) seen.push({ from: Math.max(0, before.year - germinates), to: next.year - germinates, times });
    before = next;
  }
  if (standing.count > last.count) seen.push({ from: Math.max(0, last.year - germinates), to: Infinity, times: standing.count - last.count });
  return { seen, year: last.year };
}
