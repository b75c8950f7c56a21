import { afterSeasons, chanceOfSeasons, rightChance, type Hidden } from '../../../../src/genetics/carriers.ts';
import { offspringShares, shareQualifying } from '../../../../src/genetics/family.ts';
import { carrierIfNotShown, hardyWeinberg, inbreeding, openPollinated, strayShareOfFruit, type Mating } from '../../../../src/genetics/population.ts';
import { atLeast, binomialPmf, plantsNeeded } from '../../../../src/statistics/binomial.ts';
import { RATIOS, worked } from './ratios.ts';
import { range, type Check, type Checks } from '../entries.ts';

const inbreedingSeries =
  (mating: Mating, generations: number): Check =>
  () =>
    range(1, generations).map((t) => inbreeding(mating, t));

const openSeedlingsNeeded: Check = (inputs) =>
  plantsNeeded(openPollinated(inputs.number('motherCopies'), inputs.number('pollenFrequency'))[2], 1, inputs.number('P'));
const strayShare: Check = (inputs) => strayShareOfFruit(inputs.number('set'), inputs.number('stray'));

/** Seedlings of a selfed hybrid that show nothing in all of n progeny although it carries the allele. */
const missed = (progeny: number): number => binomialPmf(0, progeny, shareQualifying({ a: 1 }, { a: 1 }, { needs: 'all', of: [{ gene: 'a', copies: 2 }] }));

export const inheritanceChecks: Checks = {
  ...Object.fromEntries(Object.entries(RATIOS).map(([id, ratio]) => [id, (): number[] => worked(ratio)])),
  'penetrance-3to1': (inputs) => inputs.number('penetrance') * shareQualifying({ a: 1 }, { a: 1 }, { needs: 'all', of: [{ gene: 'a', copies: 2 }] }),
  'fix-m-loci': (inputs) => inbreeding('selfing', inputs.number('selfings')) ** inputs.number('genes'),
  'hw-carrier-2500': (inputs) => hardyWeinberg(Math.sqrt(inputs.number('q2')))[1],
  'hw-carrier-10000': (inputs) => hardyWeinberg(Math.sqrt(inputs.number('q2')))[1],
  'hw-carrier-cond': (inputs) => carrierIfNotShown(inputs.number('q')),
  'op-recessive-Aa-0.1-50': (inputs) =>
    atLeast(1, inputs.number('seedlings'), openPollinated(inputs.number('motherCopies'), inputs.number('pollenFrequency'))[2]),
  'op-recessive-random-0.1-100': (inputs) => atLeast(1, inputs.number('seedlings'), hardyWeinberg(inputs.number('frequency'))[2]),
  'op-n-Aa-0.1': openSeedlingsNeeded,
  'op-n-aa-0.1': openSeedlingsNeeded,
  'op-n-Aa-0.02': openSeedlingsNeeded,
  'F-selfing': inbreedingSeries('selfing', 6),
  'F-fullsib': inbreedingSeries('fullSibs', 10),
  'F-halfsib': inbreedingSeries('halfSibs', 5),
  'F-backcross-rb': inbreedingSeries('backcross', 6),
  'F-relations': () => [inbreeding('selfing', 1), inbreeding('fullSibs', 1), inbreeding('halfSibs', 1)],
  'carrier-test-5': (inputs) => {
    const silent =
      inputs.number('prior') * binomialPmf(0, inputs.number('n'), shareQualifying({ a: 1 }, { a: 2 }, { needs: 'all', of: [{ gene: 'a', copies: 2 }] }));
    return silent / (silent + 1 - inputs.number('prior'));
  },
  'apple-scab-escape': (inputs) => {
    const [none, one, two] = offspringShares(0.5, 0.5);
    const states: readonly Hidden[] = [
      { chance: none, carries: false, right: false, fromTest: 1, owed: 0 },
      { chance: one + two, carries: true, right: true, fromTest: 1, owed: 0 },
    ];
    const how = { canShow: 1, seasons: 1, falseShow: 1 - inputs.number('scabbedWithout') / inputs.number('of') };
    const clean = states.reduce((sum, { chance, right }) => sum + chance * chanceOfSeasons(right, 1, 1, how), 0);
    return [clean, 1 - rightChance(afterSeasons(states, 1, 1, how))];
  },
  'mendel-misclass': (inputs) => missed(inputs.number('progeny')),
  'mendel-corrected-ratio': (inputs) => [2 * (1 - missed(inputs.number('progeny'))), 1 + 2 * missed(inputs.number('progeny'))],
  'PC11-0.018': strayShare,
  'PC11-0.02': strayShare,
  'PC11-0.08': strayShare,
  'PC11-0.2': strayShare,
  'PC11-0.4': strayShare,
  PC16: (inputs) => carrierIfNotShown(inputs.number('frequency')),
};
