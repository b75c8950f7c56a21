import { afterSeasons, type Hidden } from '../../../../src/genetics/carriers.ts';
import type { Needs } from '../../../../src/genetics/family.ts';
import { fixedAfter, heterozygosityKept } from '../../../../src/genetics/polysomic-lines.ts';
import { linkedGametes } from '../../../../src/genetics/polysomic-linkage.ts';
import {
  chromatidDoubleReduction,
  dosagesInPopulation,
  doubleReductionAt,
  gameteDosages,
  mostDoubleReduction,
  polysomicShareQualifying,
  seedlingDosages,
  together,
} from '../../../../src/genetics/polysomic.ts';
import { at, published, range, sum, type Check, type Checks, type Inputs } from '../entries.ts';

const each = (ids: RegExp, check: Check): Checks => Object.fromEntries(published.filter(({ id }) => ids.test(id)).map(({ id }) => [id, check]));

const alphaOf = ({ entry: { inputs } }: Inputs): number => (typeof inputs['alpha'] === 'number' ? inputs['alpha'] : 0);
/** Shares as parts of as many as the published ratio counts. */
const asPublished = (shares: readonly number[], { entry }: Inputs): number[] => shares.map((share) => share * sum(entry.expected));
/** Dominant to recessive: trees with any copy, and without. */
const shown = (shares: readonly number[]): number[] => [1 - at(shares, 0), at(shares, 0)];

const tree = (inputs: Inputs, key = 'copies') => ({ sets: inputs.number('sets'), copies: inputs.number(key) });
const gametes: Check = (inputs) => asPublished(gameteDosages(inputs.number('sets'), inputs.number('copies'), alphaOf(inputs)), inputs);
const selfed: Check = (inputs) => asPublished(shown(seedlingDosages(tree(inputs), tree(inputs), alphaOf(inputs))), inputs);
const tested: Check = (inputs) => asPublished(shown(seedlingDosages(tree(inputs), { sets: inputs.number('sets'), copies: 0 }, alphaOf(inputs))), inputs);
const crossed: Check = (inputs) => asPublished(seedlingDosages(tree(inputs, 'mother'), tree(inputs, 'father')), inputs);

const firstFixed: Check = (inputs) => {
  const fixed = fixedAfter(inputs.list('alleles'), 60);
  return fixed.findIndex((share) => share >= inputs.number('share'));
};

/** Gametes with one or none of two counted alleles that lie on two homologues, or with one only of two on the same. */
const apart: Check = (inputs) => {
  const coupled = inputs.text('phase') === 'coupling';
  const homologues = Array.from({ length: inputs.number('sets') }, (_, h) => (coupled ? (h === 0 ? 0b11 : 0) : h === 0 ? 0b01 : h === 1 ? 0b10 : 0));
  const genes = [0.5, inputs.number('r')].map((recombination, g) => ({ id: `g${String(g)}`, recombination, alone: false }));
  const moved = linkedGametes(homologues, genes).filter(({ copies }) => (copies[0] === copies[1]) !== coupled);
  return sum(moved.map(({ share }) => share));
};

/** Chance that both copies of a gamete are the same by descent, in a large population after many matings. */
const gameticIdentity: Check = (inputs) => {
  let pool: number[] = [0.5, 0, 0.5];
  for (let t = 0; t < 80; t += 1) {
    const trees = together(pool, pool);
    const next = [0, 0, 0];
    trees.forEach((share, copies) => {
      gameteDosages(4, copies, inputs.number('alpha')).forEach((chance, n) => (next[n] = at(next, n) + share * chance));
    });
    // Rounding would double with every mating.
    pool = next.map((share) => share / sum(next));
  }
  // Both alleles are equally frequent: without identity half of the gametes would carry one of each.
  return 1 - at(pool, 1) / 0.5;
};

/** Seedlings of a tree with so many foreign copies by one without any: those that do not show the recessive, by one without any again. */
const backcrossed: Check = (inputs) =>
  inputs.list('foreign').map((foreign) => {
    const sets = inputs.number('sets');
    const first = gameteDosages(sets, foreign);
    const hidden = range(1, sets / 2);
    const shows = sum(hidden.map((copies) => at(first, copies) * at(gameteDosages(sets, copies), 0)));
    return shows / sum(hidden.map((copies) => at(first, copies)));
  });

/** Variance of a gamete's copies within trees, both parents, over that of copies between trees. */
const withinFamilies: Check = (inputs) => {
  const sets = inputs.number('sets');
  const q = inputs.number('q');
  const spread = (shares: readonly number[]): number => {
    const middle = sum(shares.map((share, n) => share * n));
    return sum(shares.map((share, n) => share * (n - middle) ** 2));
  };
  const trees = dosagesInPopulation(sets, q);
  return (2 * sum(trees.map((share, copies) => share * spread(gameteDosages(sets, copies))))) / spread(trees);
};

/** A tree of four sets that was seen to show a dominant trait, by copies. */
function shownFounder(inputs: Inputs): readonly (Hidden & { readonly copies: number })[] {
  const sets = inputs.number('sets');
  const states = dosagesInPopulation(sets, 1 - inputs.number('recessive')).map((chance, copies) => ({
    copies,
    chance,
    carries: copies > 0,
    right: copies > 0,
    fromTest: 1,
    owed: 0,
  }));
  const seen = afterSeasons(states, 1, 1, { canShow: 1, seasons: 1, falseShow: 0 });
  return seen.map((state, copies) => ({ ...state, copies }));
}

export const polyploidChecks: Checks = {
  ...each(/^(tet|hex)-gam-(chrom|chromatid|maxeq)-\d$|^hex-gam-\d$/, gametes),
  'hex-gam-ces-3': (inputs) => gameteDosages(inputs.number('sets'), inputs.number('copies'), alphaOf(inputs)),
  ...each(/^(tet|hex)-self-/, selfed),
  ...each(/^(tet|hex)-test-/, tested),
  'tet-duplex-zygotes': crossed,
  'hex-triplex-zygotes': crossed,
  'tet-duplex-x-simplex': (inputs) => asPublished(shown(seedlingDosages(tree(inputs, 'mother'), tree(inputs, 'father'))), inputs),
  ...each(/^alpha-rcs-/, (inputs) => chromatidDoubleReduction(inputs.number('sets'))),
  'alpha-ces-4': (inputs) => mostDoubleReduction(inputs.number('sets')),
  ...each(/^alpha-dist-/, (inputs) => doubleReductionAt(inputs.number('sets') === 4 ? 4 : 6, inputs.number('morgans'), inputs.number('together'))),
  ...each(/^selfing-[46]x$/, (inputs) => heterozygosityKept(inputs.number('sets'))),
  ...each(/^selfing-95-[46]x/, firstFixed),
  'tet-rm-F-17': gameticIdentity,
  'tet-rm-null': (inputs) => at(dosagesInPopulation(inputs.number('sets'), inputs.number('frequency')), inputs.number('sets')),
  ...each(/^poly-(repulsion-[46]|coupling-6)$/, apart),
  'persimmon-bc-hex': backcrossed,
  ...each(/^kaki-/, (inputs) => {
    const sets = inputs.number('sets');
    const right: Needs = { needs: 'all', of: [{ gene: 'a', copies: sets }] };
    return polysomicShareQualifying({ sets, copies: { a: sets - inputs.number('foreign') } }, { sets, copies: { a: sets } }, right);
  }),
  ...each(/^mendel-var-(tet|hex)$/, withinFamilies),
  'founder-prior-4x': (inputs) => shownFounder(inputs).flatMap(({ copies, chance }) => (copies > 0 ? [chance] : [])),
  'founder-test-4x': (inputs) => sum(shownFounder(inputs).map(({ copies, chance }) => chance * at(gameteDosages(4, copies), 0))),
};
