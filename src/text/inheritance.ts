/** Words of the finer points of inheritance: lines that they are folded under, S alleles, and who sets with whom. */
import type { Cross, Kind, Tree } from '../model/programme.ts';
import { meanOf } from '../model/mean.ts';
import { counted, listed, percent } from './charts.ts';

const capital = (text: string): string => text.replace(/^./u, (letter) => letter.toUpperCase());

export const sText = {
  unread: (message: string) => `${message}. Write S and the name of each, as in S3S4, S101S102 or ScSd; S? for one that is not known.`,
  oneName: "One S allele: S and its name, as in S4'.",
  readAs: (alleles: readonly (string | null)[]) => `Read as ${listed(alleles.map((allele) => allele ?? 'one not known'))}.`,
};

const setsWords = ({ ploidy, inheritance }: Kind): string =>
  `${counted(ploidy)} sets of chromosomes${ploidy > 2 ? (inheritance === 'polysomic' ? ', any pairs with any' : ', two by two') : ''}`;

/** Lines that the finer points of an entry are folded under: what they say as they stand. */
export const finerText = {
  kind: (kind: Kind): string =>
    capital(
      [
        setsWords(kind),
        kind.pollenRejection === 'gametophytic' ? 'self-incompatible by S alleles' : 'no pollen rejected by S alleles',
        meanOf(kind.maleShare) > 0 ? `${percent(meanOf(kind.maleShare))} of the seedlings male` : 'no separate sexes',
      ].join('; '),
    ),
  tree: ({ s, sex, testCrosses }: Tree, kind: Kind | undefined): string => {
    const crossed = Object.keys(testCrosses).length;
    return capital(
      [
        kind ? setsWords(kind) : '',
        kind?.pollenRejection === 'gametophytic'
          ? `self-incompatible by S alleles: ${s ?? 'not stated'}`
          : s === undefined
            ? ''
            : `S alleles ${s}, of no effect here`,
        sex === 'both' ? '' : sex,
        crossed > 0 ? 'test-crossed' : 'no test crosses',
      ]
        .filter(Boolean)
        .join('; '),
    );
  },
  gene: ({ doubleReduction, passes }: { readonly doubleReduction: number; readonly passes: 'both' | 'pollen' | 'seed' }): string =>
    `Passed on by ${{ both: 'both parents', pollen: 'the pollen parent alone', seed: 'the seed parent alone' }[passes]}; ${doubleReduction > 0 ? `double reduction ${String(doubleReduction)}` : 'no double reduction'}`,
  cross: ({ usableSeedlings, motherClones, necrosis }: Cross): string => {
    const copies = meanOf(motherClones);
    return capital(
      [
        usableSeedlings === undefined ? 'every seedling of use' : `${percent(meanOf(usableSeedlings))} of the seedlings of use`,
        copies > 0 ? `${percent(copies)} copies of the seed parent` : 'none a copy of the seed parent',
        necrosis ? `${percent(meanOf(necrosis.share))} die whatever they are grafted on` : 'none that no rootstock saves',
      ].join('; '),
    );
  },
};

/** How a pair suits: all of the pollen works, part of it, none. */
export type Match = 'full' | 'part' | 'none';

const sets = (n: number, how: string): string[] => (n === 0 ? [] : [`${counted(n)} ${n === 1 ? 'sets' : 'set'} ${how}`]);

/** “Who sets with whom.” */
export const compatibilityText = {
  title: 'Who sets with whom',
  said: (full: number, part: number, none: number): string =>
    `By their S alleles, of ${counted(full + part + none)} pairs ${listed([...sets(full, 'in full'), ...sets(part, 'where part of the pollen works'), ...sets(none, 'no fruit')])}.`,
  intro: 'Seed parents by row, pollen parents by column.',
  notKnown: 'What is not known counts as compatible, and is marked “?”.',
  corner: 'Seed parent',
  mark: { full: '✓', part: '◐', none: '✕' } satisfies Record<Match, string>,
  word: (match: Match, share: number): string => (match === 'full' ? 'full' : match === 'none' ? 'none' : share === 0.5 ? 'half' : percent(share)),
  with: { full: 'In full with', part: 'Part of the pollen works of', none: 'No fruit with' } satisfies Record<Match, string>,
  own: 'its own pollen',
  unknown: 'not stated',
  unsure: '?',
  key: 'Full: sets in full. Half: half of the pollen works, and the seedlings get only what it carries. None: no fruit.',
  shaded: 'Shaded: its own pollen.',
};
