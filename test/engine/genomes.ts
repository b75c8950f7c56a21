import { Breeding } from '../../src/engine/breeding.ts';
import { compile } from '../../src/engine/compile.ts';
import type { Compiled } from '../../src/engine/compiled.ts';
import { Facts } from '../../src/engine/facts.ts';
import { DOMAIN } from '../../src/engine/keys.ts';
import { Stand } from '../../src/engine/stand.ts';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { read, type Document } from './programmes.ts';

/** Facts, founders and meiosis of the engine without the years around them. */
export class Nursery {
  readonly compiled: Compiled;
  readonly stand: Stand;
  readonly facts: Facts;
  readonly luck: Stream;
  private readonly breeding: Breeding;

  constructor(document: Document) {
    const programme = read(document);
    this.compiled = compile(programme);
    this.stand = new Stand(this.compiled);
    const root = rootOf(programme.shuffleWord);
    this.facts = new Facts(this.compiled, new Stream(root), this.stand);
    this.luck = new Stream(root);
    this.breeding = new Breeding(this.compiled, this.stand);
    this.future(0);
  }

  /** Draws the facts of a future; what was bred before is forgotten. */
  future(run: number): void {
    this.facts.draw(DOMAIN.facts, run);
    this.luck.future(DOMAIN.luck, run).key(1);
    this.stand.clear();
  }

  /** A seedling of two trees (handles), of a kind (position); returns its handle. */
  breed(mother: number, father: number, kind = 0): number {
    const i = this.stand.add();
    this.stand.kind[i] = kind;
    const handle = this.stand.handleOf(i);
    this.breeding.child(mother, father, handle, kind, this.luck);
    return handle;
  }

  /** Copies of gene 0 of many seedlings of a pair: how many seedlings have 0, 1, 2 … */
  dosages(mother: number, father: number, n: number, kind = 0, gene = 0): number[] {
    const counts = new Array<number>(this.compiled.sets + 1).fill(0);
    for (let s = 0; s < n; s += 1) {
      counts[this.stand.copies(this.breed(mother, father, kind), gene)]! += 1;
      this.stand.clear();
    }
    return counts;
  }

  /** Word w of homologue h of a tree. */
  word(handle: number, h: number, w: number): number {
    return this.stand.genome[this.stand.offset(handle) + h * this.compiled.words + w]!;
  }
}
