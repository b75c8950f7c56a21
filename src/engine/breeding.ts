import { child } from '../genetics/genome.ts';
import { rejects } from '../genetics/incompatibility-words.ts';
import { Meiosis } from '../genetics/meiosis.ts';
import { gameteSizes } from '../model/sets.ts';
import type { Stream } from '../random/stream.ts';
import type { Compiled } from './compiled.ts';
import type { Stand } from './stand.ts';

/** Grains drawn until one works, at most. Whether any does is known before flowers are counted; the rarest that can is 1 in 20. */
const MOST_GRAINS = 2000;

/** Makes seedlings' genomes from those of their parents. */
export class Breeding {
  private readonly meiosis: Meiosis | null;

  constructor(
    private readonly compiled: Compiled,
    private readonly stand: Stand,
  ) {
    this.meiosis = compiled.layout ? new Meiosis(compiled.layout) : null;
  }

  /** Writes the genome of a seedling of `kind` to that of `to`; all are handles, mother and father may be one tree. */
  child(mother: number, father: number, to: number, kind: number, stream: Stream): void {
    const { meiosis, stand, compiled } = this;
    const { words } = compiled;
    if (!meiosis) {
      child(stand.genome, stand.offset(mother), stand.offset(father), stand.offset(to), words, stream, compiled.genes);
      return;
    }
    const seedSets = this.setsOf(mother);
    const pollenSets = this.setsOf(father);
    const { sets } = compiled.kinds[kind]!;
    const fromPollen = this.fromPollen(seedSets, pollenSets, sets, stream);
    const fromSeed = sets - fromPollen;
    const at = stand.offset(to);
    meiosis.gamete(stand.genome, stand.offset(mother), seedSets, fromSeed, at, true, stream);
    const paternal = at + fromSeed * words;
    let grains = 0;
    do {
      meiosis.gamete(stand.genome, stand.offset(father), pollenSets, fromPollen, paternal, false, stream);
      grains += 1;
    } while (grains < MOST_GRAINS && this.isRejected(mother, seedSets, paternal, fromPollen));
    meiosis.clear(stand.genome, at, sets);
  }

  private setsOf(handle: number): number {
    return this.compiled.kinds[this.stand.kindOf(handle)]!.sets;
  }

  /** Homologues that come with the pollen: with odd parents that which adds up, either if both do. The check has refused what cannot. */
  private fromPollen(seedSets: number, pollenSets: number, sets: number, stream: Stream): number {
    if (seedSets % 2 === 0) return sets - seedSets / 2;
    const sizes = gameteSizes(pollenSets).filter((size) => gameteSizes(seedSets).includes(sets - size));
    return sizes.length > 1 ? sizes[Math.floor(stream.uniform() * sizes.length)]! : (sizes[0] ?? Math.floor(sets / 2));
  }

  /** Whether the grain at word offset `at` fails in the mother's style: one allele that is recognised is enough. */
  private isRejected(mother: number, sets: number, at: number, take: number): boolean {
    const { compiled, stand } = this;
    const { incompatibility, words } = compiled;
    if (!incompatibility || !compiled.kinds[stand.kindOf(mother)]!.gametophytic) return false;
    for (let h = 0; h < take; h += 1)
      if (
        rejects(incompatibility, stand.genome, stand.offset(mother) + incompatibility.word, sets, words, stand.genome[at + h * words + incompatibility.word]!)
      )
        return true;
    return false;
  }
}
