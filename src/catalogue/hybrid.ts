import type { Cross, Kind } from '../model/programme.ts';
import { setsOf } from '../model/sets.ts';
import { crossFrom, kindFrom, type HybridFigures, type PairFigures } from './build.ts';
import { GUESSES, kinship, type Kinship } from './kin.ts';
import { guess } from './sources.ts';
import { rangeOf, type Range } from './range.ts';
import type { CatalogueKind, Figure } from './types.ts';

export const ROOTS_OR_TOP = guess(
  [0, 0.3, 0.7],
  'No paired count of weak hybrids on own and on other roots was found. Dying of cells in the top is not cured by roots; a small trial would tell.',
);
const ONSET = guess([1, 2, 6], 'Guessed after pear × apple and pears of mixed species, where weakness shows within one to a few months.');
const COURSE = { halfLife: guess([2, 6, 24], 'Nobody followed such seedlings; pear × apple were all dead within five months.') };

/** A pair nobody counted, as wide as its kinship leaves it. */
export function guessedPair(seed: string, pollen: string): PairFigures {
  const { set, germination, weak } = GUESSES[kinship(seed, pollen)];
  return {
    seed,
    pollen,
    set,
    germination,
    weakness: { share: weak, onset: ONSET, course: COURSE, rootBorne: { chance: ROOTS_OR_TOP } },
    note: 'No count of this pair was found: every figure is a guess. The first fruits and seedlings you count say more than all of them.',
  };
}

/** From the lower low over the middle to the higher high. */
const span = ([a, b, c]: Range, [d, e, f]: Range): Range => [Math.min(a, d), (b + e) / 2, Math.max(c, f)];

function seasons(first: CatalogueKind, second: CatalogueKind): Kind['firstFruit'] {
  const [a, b] = [first.kind.firstFruit, second.kind.firstFruit];
  if (!('earliest' in a) || !('earliest' in b)) return { between: { seed: first.id, pollen: second.id } };
  const note = `Spans ${first.name} and ${second.name}; not counted for this hybrid. Hybrids between groups of cherries followed the seed parent (Schmidt 1976).`;
  const of = (key: 'earliest' | 'half' | 'ninety') => guess(span(rangeOf(a[key]), rangeOf(b[key])), note);
  return { earliest: of('earliest'), half: of('half'), ninety: of('ninety') };
}

function seedsOf(first: CatalogueKind, second: CatalogueKind): { readonly seedsPerFruit: Figure; readonly seedsAtMost: number } {
  const most = Math.max(first.kind.seedsAtMost, second.kind.seedsAtMost);
  if (most === 1) return { seedsPerFruit: guess(1, 'Both parents bear one seed a fruit.'), seedsAtMost: 1 };
  const note = 'Hybrids often have fewer sound seeds than either parent; not counted.';
  return { seedsPerFruit: guess([1, Math.max(1.2, most * 0.3), Math.max(1.5, most * 0.6)], note), seedsAtMost: most };
}

/** Half of the sets of each parent. Where any pairs with any in one of them, so they do in the hybrid, and what is followed adds up. */
function halves({ kind: a }: CatalogueKind, { kind: b }: CatalogueKind): Pick<Kind, 'ploidy' | 'inheritance'> {
  const mixed = a.inheritance === 'polysomic' || b.inheritance === 'polysomic';
  const of = (kind: Kind): number => (mixed ? setsOf(kind) : kind.ploidy) / 2;
  return { ploidy: of(a) + of(b), inheritance: mixed ? 'polysomic' : 'disomic' };
}

const USABLE = guess(
  [0.02, 0.15, 0.5],
  'Hybrids with an odd number of sets give few whole seedlings; not counted for this one. Of triploid seed parents most seedlings are weak.',
);

/** The kind of the seedlings of two kinds: one for both ways round, so that a programme may use both. */
export function hybridOf(first: CatalogueKind, second: CatalogueKind, figures: HybridFigures = {}): Kind {
  const { fertility } = GUESSES[kinship(first.id, second.id)];
  const middle = (key: 'firstYearLoss' | 'yearlyLoss' | 'regularity' | 'frostShare') =>
    guess(span(rangeOf(first.kind[key]), rangeOf(second.kind[key])), `Spans ${first.name} and ${second.name}; not counted for this hybrid.`);
  return kindFrom({
    id: `${first.id}-${second.id}-hybrid`,
    name: `${first.name}-${second.name} hybrid`,
    firstFruit: seasons(first, second),
    familySpread: guess([0.1, 0.2, 0.35], 'Hybrids differ more than families within a kind; not counted.'),
    neverFruits: figures.neverFruits ?? guess([0, 0.1, 0.4], 'Some hybrids never flower; how many was not counted.'),
    regularity: middle('regularity'),
    firstYearLoss: middle('firstYearLoss'),
    yearlyLoss: middle('yearlyLoss'),
    frostShare: middle('frostShare'),
    flowers: figures.flowers ?? guess([20, 100, 400], 'Not counted for hybrids.'),
    ...seedsOf(first, second),
    selfCompatible: figures.selfCompatible ?? false,
    ...halves(first, second),
    yearsToFullBloom: Math.max(first.kind.yearsToFullBloom, second.kind.yearsToFullBloom),
    fertilityAsSeedParent: figures.fertilityAsSeedParent ?? fertility,
    fertilityAsPollenParent: figures.fertilityAsPollenParent ?? fertility,
    ...(figures.note === undefined ? {} : { note: figures.note }),
  });
}

const BACK_WEAK: Readonly<Record<Kinship, Range>> = { near: [0, 0.08, 0.3], genus: [0.02, 0.2, 0.5], family: [0.05, 0.3, 0.7], far: [0.2, 0.6, 1] };

/** The hybrid with each parent, both ways round, and with itself. Its part sterility stands with the hybrid kind, not here. */
export function backcrossesOf(hybrid: Kind, first: CatalogueKind, second: CatalogueKind): readonly Cross[] {
  const share = guess(BACK_WEAK[kinship(first.id, second.id)], 'Guessed below the first cross: half or more of the plant is one kind again. Not counted.');
  const set = guess([0.05, 0.2, 0.5], 'Not counted. Before part sterility, which stands with the hybrid: between a poor and a good cross within a kind.');
  const germination = guess([0.1, 0.45, 0.8], 'Not counted: from the poorest first crosses to a good year within a kind.');
  const weakness = { share, onset: ONSET, course: COURSE, rootBorne: { chance: ROOTS_OR_TOP } };
  const seeds = seedsOf(first, second);
  const odd = hybrid.ploidy % 2 === 1 ? { usableSeedlings: USABLE } : {};
  const pairs: readonly (readonly [{ id: string; name: string }, { id: string; name: string }])[] = [
    [first, hybrid],
    [hybrid, first],
    [second, hybrid],
    [hybrid, second],
    [hybrid, hybrid],
  ];
  return pairs.map(([seed, pollen]) =>
    crossFrom({ seed: seed.id, pollen: pollen.id, set, germination, weakness, ...seeds, ...odd }, { seed: seed.name, pollen: pollen.name }, hybrid.id),
  );
}
