import { Meiosis, type GenomeLayout } from '../../../../src/genetics/meiosis.ts';
import type { Stream } from '../../../../src/random/stream.ts';
import { at, published, sum, type Inputs } from '../entries.ts';
import type { Sampler, Samplers } from './samplers.ts';
import { share, streamOf } from './tally.ts';

const MOST_SETS = 6;

/** Two genes and nothing else, linked with recombination r or free of each other. */
function layoutOf(alpha: number, r?: number): GenomeLayout {
  return {
    words: 1,
    most: MOST_SETS,
    measured: 0,
    sWord: -1,
    originFrom: 1,
    originWords: 0,
    loci: Uint8Array.of(0, 1),
    recombination: Float64Array.of(0.5, r ?? 0.5),
    free: r === undefined,
    doubleReduction: alpha > 0 ? [{ share: alpha, genes: 0b11, markers: 0, s: false }] : [],
    notBySeed: 0,
    notByPollen: 0,
  };
}

/** Gametes of one tree, made by the engine's own meiosis. */
class Parent {
  private readonly genome = new Int32Array(2 * MOST_SETS);
  private readonly meiosis: Meiosis;

  constructor(
    private readonly homologues: readonly number[],
    layout: GenomeLayout,
    private readonly stream: Stream,
  ) {
    this.meiosis = new Meiosis(layout);
    this.genome.set(homologues);
  }

  /** Words of the next gamete. */
  next(): Int32Array {
    const sets = this.homologues.length;
    this.meiosis.gamete(this.genome, 0, sets, sets / 2, MOST_SETS, true, this.stream);
    return this.genome.subarray(MOST_SETS, MOST_SETS + sets / 2);
  }

  /** Copies of gene 0 in the next gamete. */
  copies(): number {
    let copies = 0;
    for (const word of this.next()) copies += word & 1;
    return copies;
  }
}

const alphaOf = ({ entry: { inputs } }: Inputs): number => (typeof inputs['alpha'] === 'number' ? inputs['alpha'] : 0);
/** A tree with so many copies of gene 0, on its first homologues. */
const parent = (inputs: Inputs, stream: Stream, copies: number): Parent =>
  new Parent(
    Array.from({ length: inputs.number('sets') }, (_, h) => Number(h < copies)),
    layoutOf(alphaOf(inputs)),
    stream,
  );

/** Counts what `draw` gives, as parts of as many as the published ratio counts. */
function tally(inputs: Inputs, of: number, draw: () => number) {
  const { expected } = inputs.entry;
  const hits = new Array<number>(expected.length).fill(0);
  for (let i = 0; i < of; i += 1) {
    const place = draw();
    hits[place] = at(hits, place) + 1;
  }
  return hits.map((n) => share(n, of, sum(expected)));
}

const gametes: Sampler = (inputs, many) => {
  const tree = parent(inputs, streamOf(inputs.entry.id), inputs.number('copies'));
  return tally(inputs, many(1_000_000), () => tree.copies());
};

/** Seedlings that show a dominant, then those that do not. */
const dominant =
  (father: (inputs: Inputs) => number, mother = (inputs: Inputs): number => inputs.number('copies')): Sampler =>
  (inputs, many) => {
    const stream = streamOf(inputs.entry.id);
    const [one, other] = [parent(inputs, stream, mother(inputs)), parent(inputs, stream, father(inputs))];
    return tally(inputs, many(1_000_000), () => Number(one.copies() + other.copies() === 0));
  };

const zygotes: Sampler = (inputs, many) => {
  const stream = streamOf(inputs.entry.id);
  const [one, other] = [parent(inputs, stream, inputs.number('mother')), parent(inputs, stream, inputs.number('father'))];
  return tally(inputs, many(1_000_000), () => one.copies() + other.copies());
};

/** Gametes that look recombined: one or none of two alleles in repulsion, one of two in coupling. */
const apart: Sampler = (inputs, many) => {
  const coupled = inputs.text('phase') === 'coupling';
  const homologues = Array.from({ length: inputs.number('sets') }, (_, h) => (coupled ? (h === 0 ? 0b11 : 0) : h === 0 ? 0b01 : h === 1 ? 0b10 : 0));
  const tree = new Parent(homologues, layoutOf(0, inputs.number('r')), streamOf(inputs.entry.id));
  const of = many(1_000_000);
  let hits = 0;
  for (let i = 0; i < of; i += 1) {
    let [a, b] = [0, 0];
    for (const word of tree.next()) [a, b] = [a + (word & 1), b + (word >> 1)];
    hits += Number((a === b) !== coupled);
  }
  return [share(hits, of)];
};

const sweet: Sampler = (inputs, many) => {
  const sets = inputs.number('sets');
  const tree = parent(inputs, streamOf(inputs.entry.id), sets - inputs.number('foreign'));
  const of = many(1_000_000);
  let hits = 0;
  for (let i = 0; i < of; i += 1) hits += Number(tree.copies() === sets / 2);
  return [share(hits, of)];
};

const each = (ids: RegExp, sampler: Sampler): Samplers => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, sampler]));

export const polyploidSamplers: Samplers = {
  ...each(/^(tet|hex)-gam-(chrom|chromatid|maxeq)-\d$|^hex-gam-\d$|^hex-gam-ces-3$/, gametes),
  ...each(
    /^(tet|hex)-self-/,
    dominant((inputs) => inputs.number('copies')),
  ),
  ...each(
    /^(tet|hex)-test-/,
    dominant(() => 0),
  ),
  'tet-duplex-x-simplex': dominant(
    (inputs) => inputs.number('father'),
    (inputs) => inputs.number('mother'),
  ),
  'tet-duplex-zygotes': zygotes,
  'hex-triplex-zygotes': zygotes,
  ...each(/^poly-(repulsion-[46]|coupling-6)$/, apart),
  ...each(/^kaki-/, sweet),
};
