import { log } from '../random/elementary.ts';
import { normalCdfFast, normalFrom } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import type { Stream } from '../random/stream.ts';
import type { Compiled } from './compiled.ts';
import type { Facts } from './facts.ts';
import { LUCK } from './keys.ts';

const NEVER = 0x7fff;

/** Luck that all plans of a future share: frosts, good and bad seasons, and which founding trees and gardens are lost when. Years are indices from 0. */
export class Weather {
  readonly frost: Uint8Array;
  /** chanceShown[trait · years + year]: chance that an able tree shows the trait in that year. */
  readonly chanceShown: Float64Array;
  /** yearEffect[trait · years + year], in the trait's unit. */
  readonly yearEffect: Float64Array;
  /** First spring without the founding tree. */
  readonly treeLost: Int32Array;
  /** gardenLost[garden · years + year]: lost in the winter before that year. */
  readonly gardenLost: Uint8Array;

  constructor(private readonly compiled: Compiled) {
    const { years, shown, measured, trees, gardens } = compiled;
    this.frost = new Uint8Array(years);
    this.chanceShown = new Float64Array(shown.length * years);
    this.yearEffect = new Float64Array(measured.length * years);
    this.treeLost = new Int32Array(trees.length);
    this.gardenLost = new Uint8Array(gardens.length * years);
  }

  draw(facts: Facts, stream: Stream): void {
    const { compiled } = this;
    const { values } = facts;
    const { years } = compiled;
    stream.key(LUCK.frost);
    for (let y = 0; y < years; y += 1) this.frost[y] = +(stream.uniform() < values[compiled.frostChanceAt]!);
    const { frostIn, frostFalls } = compiled.whatIf;
    if (frostIn >= 0 && frostIn < years) this.frost[frostIn] = frostFalls;
    compiled.shown.forEach((trait, t) => {
      const consistency = values[trait.seasonsAt]!;
      if (trait.sharedSeason <= 0 || consistency <= 0 || consistency >= 1) this.chanceShown.fill(consistency, t * years, (t + 1) * years);
      else {
        stream.key(mix2(LUCK.season, trait.key));
        const threshold = normalFrom(consistency);
        const common = Math.sqrt(trait.sharedSeason);
        const own = Math.sqrt(1 - trait.sharedSeason);
        for (let y = 0; y < years; y += 1) this.chanceShown[t * years + y] = normalCdfFast((threshold + common * normalFrom(stream.uniform())) / own);
      }
    });
    facts.scales.forEach((scale, t) => {
      stream.key(mix2(LUCK.yearEffect, scale.trait.key));
      for (let y = 0; y < years; y += 1) this.yearEffect[t * years + y] = scale.year * normalFrom(stream.uniform());
    });
    this.drawLosses(values, stream);
  }

  private drawLosses(values: Float64Array, stream: Stream): void {
    const { compiled, gardenLost } = this;
    const { years } = compiled;
    // What the log is forecast from has not been lost: losses begin with the winter before the first spring that is simulated.
    const stood = Math.max(0, (compiled.today?.year ?? 0) - 1);
    compiled.gardens.forEach((garden, g) => {
      stream.key(mix2(LUCK.gardenLoss, garden.key));
      gardenLost.fill(0, g * years, g * years + Math.min(years, stood + 1));
      for (let y = stood + 1; y < years; y += 1) gardenLost[g * years + y] = +(stream.uniform() < values[garden.lossAt]!);
      const forSure = compiled.whatIf.gardenLostIn[g]!;
      if (forSure > 0 && forSure < years) gardenLost[g * years + forSure] = 1;
    });
    compiled.trees.forEach((tree, t) => {
      stream.key(mix2(LUCK.treeLoss, tree.key));
      const loss = values[tree.lossAt]!;
      let last = 0;
      for (let copy = 0; copy < tree.copies; copy += 1) {
        const u = stream.uniform();
        // First winter in which this copy is lost: geometric, by inversion.
        const own = loss <= 0 ? NEVER : loss >= 1 ? 1 : Math.min(NEVER, Math.ceil(log(u) / log(1 - loss)));
        last = Math.max(last, Math.min(stood + own, this.gardenLoss(tree.gardens, copy)));
      }
      this.treeLost[t] = last;
    });
  }

  /** First year in which the garden of a copy is lost; copies are dealt in turn over the gardens. */
  private gardenLoss(gardens: readonly number[], copy: number): number {
    if (gardens.length === 0) return NEVER;
    const { years } = this.compiled;
    const garden = gardens[copy % gardens.length]!;
    for (let y = 1; y < years; y += 1) if (this.gardenLost[garden * years + y] === 1) return y;
    return NEVER;
  }
}
