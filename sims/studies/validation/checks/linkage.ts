import { gameteShares, placeGenes, type Homologues, type PlacedGene } from '../../../../src/genetics/tray/linkage.ts';
import { offspringShares } from '../../../../src/genetics/family.ts';
import { PLAIN_GENE } from '../../../../src/model/plain.ts';
import { atLeast, plantsNeeded } from '../../../../src/statistics/binomial.ts';
import { at, published, type Check, type Checks, type Inputs } from '../entries.ts';

/** Genes g0, g1 … of one linkage group at these places (cM). */
export const genesAt = (positions: readonly number[]): PlacedGene[] =>
  placeGenes(
    { genes: positions.map((position, i) => ({ id: `g${String(i)}`, name: `g${String(i)}`, group: 'one', position, ...PLAIN_GENE })) },
    positions.map((_, i) => `g${String(i)}`),
  );

/** Recombination of two genes so far apart (cM). */
export const recombinationAt = (cM: number): number => at(genesAt([0, cM]), 1).recombination;

/** Genes in a row with stated recombination between neighbours. */
const row = (...recombination: readonly number[]): PlacedGene[] =>
  [0.5, ...recombination].map((r, i) => ({ id: `g${String(i)}`, recombination: r, alone: false }));

/** A double hybrid: both counted alleles on one homologue (coupling), or one on each (repulsion). */
export const PHASES: Readonly<Record<string, Homologues>> = { coupling: { a: 0b11, b: 0 }, repulsion: { a: 0b01, b: 0b10 } };

export function phaseOf(inputs: Inputs): Homologues {
  const phase = PHASES[inputs.text('phase')];
  if (!phase) throw new RangeError(`${inputs.entry.id} names no phase.`);
  return phase;
}

/** Shares of A_B_, A_bb, aaB_ and aabb among the selfed seedlings of a double hybrid. */
const second: Check = (inputs) => {
  const gametes = gameteShares(phaseOf(inputs), row(inputs.number('r')));
  const shares = [0, 0, 0, 0];
  gametes.forEach((mother, m) => {
    gametes.forEach((father, f) => {
      // Bits of what shows: A is bit 0, B bit 1.
      const place = 3 - ((((m | f) & 1) << 1) | ((m | f) >> 1));
      shares[place] = at(shares, place) + mother * father;
    });
  });
  return shares;
};

/** Distance (cM) at which our recombination reaches r, by halving. */
function distanceOf(r: number): number {
  let [near, far] = [0, 1000];
  for (let i = 0; i < 60; i += 1) {
    const middle = (near + far) / 2;
    if (recombinationAt(middle) < r) near = middle;
    else far = middle;
  }
  return near;
}

/** Chance that a free gene of a backcross line is that of the recurrent parent on both homologues, after t back-crosses. */
export function recovered(t: number): readonly [none: number, one: number, both: number] {
  let shares: readonly [number, number, number] = [0, 1, 0];
  for (let i = 0; i < t; i += 1) shares = offspringShares(shares[1] / 2 + shares[2], 1);
  return shares;
}

const each = (ids: RegExp, check: Check): Checks => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, check]));
const oneOrMore: (q: (r: number) => number) => Check = (q) => (inputs) => atLeast(1, inputs.number('n'), q(inputs.number('r')));

export const linkageChecks: Checks = {
  ...each(/^haldane-\d+(cM|-rounding)$/, (inputs) => recombinationAt(inputs.number('cM'))),
  ...each(/^f2-/, second),
  'haldane-inv-30': (inputs) => distanceOf(inputs.number('r')) / 100,
  'haldane-add': (inputs) => {
    const gametes = gameteShares({ a: 0b111, b: 0 }, row(inputs.number('r1'), inputs.number('r2')));
    return [0b001, 0b011, 0b100, 0b110].reduce((sum, mask) => sum + at(gametes, mask), 0);
  },
  'poly-repulsion-2': (inputs) => {
    const gametes = gameteShares({ a: 0b01, b: 0b10 }, row(inputs.number('r')));
    return at(gametes, 0b00) + at(gametes, 0b11);
  },
  // A crossover on one side or the other, each with chance r.
  'yt-150': oneOrMore((r) => 1 - (1 - r) ** 2),
  'yt-300': oneOrMore((r) => r),
  'dbl-recomb-hap': (inputs) => plantsNeeded(inputs.number('r') / 2, 1, inputs.number('P')),
  'frisch-n': (inputs) => plantsNeeded(inputs.number('r') / 2, 1, inputs.number('P')),
  'bc-nloci': (inputs) => recovered(inputs.number('t'))[2] ** inputs.number('n'),
};
