import type { Programme } from '../model/programme.ts';
import { Stream, rootOf } from '../random/stream.ts';
import { weibullQuantile } from '../statistics/weibull.ts';
import { firstFruitCurve } from './cohorts.ts';
import { compile } from './compile.ts';
import type { Compiled } from './compiled.ts';
import { drawnFacts } from './fact-mix.ts';
import { Facts } from './facts.ts';
import { DOMAIN } from './keys.ts';
import { Stand } from './stand.ts';
import { Weather } from './weather.ts';

/** How the weak seedlings of a cross die in a future; months from germination. Half-life 0: all at the onset; Infinity: never. */
export interface WeakFacts {
  readonly share: number;
  readonly onset: number;
  readonly halfLife: number;
  /** Whether new roots cure them. */
  readonly inRoots: boolean;
}

/** What a stock does in a future. */
export interface StockFacts {
  readonly takeTender: number;
  readonly takeRipe: number;
  readonly ripeMonths: number;
  readonly yearlyLoss: number;
  readonly precocity: number;
}

/** What seedlings of a kind do in a future, on their own roots. */
export interface KindFacts {
  readonly firstYearLoss: number;
  readonly yearlyLoss: number;
  /** Years from germination by which a share u of a middling family's seedlings bears, u in (0, 1). */
  readonly yearsToFruit: (u: number) => number;
}

/**
 * Reads the facts, and the losses of founding trees, of one future after another: the very draws that a Simulator of the same
 * programme makes in its headline pass. Runs no plan. Ids must be in the programme, else a RangeError is thrown.
 */
export class FactReader {
  private readonly compiled: Compiled;
  private readonly facts: Facts;
  private readonly weather: Weather;
  private readonly luck: Stream;

  constructor(private readonly programme: Programme) {
    const root = rootOf(programme.shuffleWord);
    this.compiled = compile(programme);
    this.facts = new Facts(this.compiled, new Stream(root), new Stand(this.compiled));
    this.weather = new Weather(this.compiled);
    this.luck = new Stream(root);
  }

  /** Goes to a future; everything read from now on is of it. */
  goTo(run: number): void {
    this.facts.draw(DOMAIN.facts, run);
    this.luck.future(DOMAIN.luck, run);
    this.weather.draw(this.facts, this.luck);
  }

  /** @throws RangeError for a cross without weakness */
  weak(cross: string): WeakFacts {
    const at = place(this.programme.crosses, cross);
    const { weakShareAt, onsetAt, rootFact } = this.compiled.crosses[at]!;
    if (weakShareAt < 0) throw new RangeError(`No seedling of “${cross}” is weak.`);
    const { values, halfLife, holds } = this.facts;
    return { share: values[weakShareAt]!, onset: values[onsetAt]!, halfLife: halfLife[at]!, inRoots: rootFact >= 0 && holds[rootFact] === 1 };
  }

  stock(id: string): StockFacts {
    const { takeTenderAt, takeRipeAt, ripeMonths, lossAt, precocityAt } = this.compiled.stocks[place(this.programme.stocks, id)]!;
    const { values } = this.facts;
    return { takeTender: values[takeTenderAt]!, takeRipe: values[takeRipeAt]!, ripeMonths, yearlyLoss: values[lossAt]!, precocity: values[precocityAt]! };
  }

  kind(id: string): KindFacts {
    const kind = this.compiled.kinds[place(this.programme.kinds, id)]!;
    const { values } = this.facts;
    const curve = firstFruitCurve(this.compiled, kind, values, () => 1);
    return {
      firstYearLoss: values[kind.firstYearLossAt]!,
      yearlyLoss: values[kind.yearlyLossAt]!,
      yearsToFruit: (u) => (curve.shape === 0 ? curve.fixed : curve.start + weibullQuantile(u, curve)),
    };
  }

  /** Places of everything that is drawn once a future (see fact-mix.ts). */
  drawn(): readonly string[] {
    return drawnFacts(this.programme, this.compiled).map(({ place }) => place);
  }

  /** What an estimate that is drawn comes to, by its place. @throws RangeError for a place where nothing is drawn */
  estimate(place: string): number {
    const slot = this.compiled.estimates.slotOf(place);
    if (slot < 0) throw new RangeError(`Nothing is drawn for “${place}”.`);
    return this.facts.values[slot]!;
  }

  /** Chance a year of losing one copy of a founding tree. */
  treeLoss(id: string): number {
    return this.facts.values[this.compiled.trees[place(this.programme.trees, id)]!.lossAt]!;
  }

  /** Chance a year that a garden is lost as a whole. */
  gardenLoss(id: string): number {
    return this.facts.values[this.compiled.gardens[place(this.programme.gardens, id)]!.lossAt]!;
  }

  /** First spring without any copy of a founding tree, as an index from the start year; past the last year when it outlives it. */
  treeLostIn(id: string): number {
    return this.weather.treeLost[place(this.programme.trees, id)]!;
  }
}

function place(list: readonly { readonly id: string }[], id: string): number {
  const at = list.findIndex((entry) => entry.id === id);
  if (at < 0) throw new RangeError(`There is no “${id}”.`);
  return at;
}
