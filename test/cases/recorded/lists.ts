import { expect } from 'vitest';
import { standingToday } from '../../../src/seasonlog/standing.ts';
import { kind, tree } from '../../engine/programmes.ts';
import { kindsNamed, latin, learned, lines, orchard, recorded } from '../record.ts';

/* Lists, vague quantities, totals without their parts, and odd names. Figures as public reports print them. */

const rows = (number: number, row: (i: number) => string): string[] => Array.from({ length: number }, (_, i) => row(i));
const own = (name: string) => () => orchard(kindsNamed(name), [], [{ id: 'own', name: 'own', seed: 'k0', pollen: 'k0', gives: 'k0' }]);

/** Entries of the pedigree file of C38, with 888 rows whose first parent is “-”, 397 with an unknown parent of their own, 45 with a shared one. */
const PEDIGREE = { entries: 1754, noParent: 888, ownUnknown: 397, shared: 45 };
const pedigree = (): string => {
  const { entries, noParent, ownUnknown, shared } = PEDIGREE;
  const special = ['235,2\tA selection\tCox\tIdared', '1222,2\tAnother\tCox\t-', '1106.1\tA third\tGenotype_7\t-'];
  const made = rows(entries - special.length, (i) => {
    const name = `Variety ${String(i + 1)}`;
    const [first, second] =
      i < noParent
        ? ['-', '-']
        : i < noParent + shared - 1
          ? ['Genotype_7', i % 2 === 0 ? 'Cox' : '-']
          : i < noParent + shared - 1 + ownUnknown
            ? ['Cox', `UP_${name}`]
            : ['Cox', 'Golden Delicious'];
    return `${i % 9 === 0 ? 'Dummy' : String(i + 1)}\t${name}\t${first}\t${second}`;
  });
  return `${['ID\tName\tSeed parent\tPollen parent', ...special, ...made].join('\r\n')}\r\n`;
};

/** Progeny of C34: seed parent, pollen, seedlings. */
const SEMI = [
  ['Gold S3S6', "RS S6S13'S26Sa", 13],
  ['Emperor Francis S3S4', "UF S1'S4SdSnull", 40],
  ['Emperor Francis S3S4', 'Surefire', 37],
  ['Gold S3S6', 'Cig\u00e1ny', 40],
  ['Gold S3S6', 'Montmorency', 15],
  ['Gold S3S6', 'EB', 14],
  ['Emperor Francis S3S4', 'EB', 20],
] as const;

export const lists = [
  recorded('C11', 'entered', 'Citrus with seedlings that may be copies of the mother: 40+ seedlings, 3 seen as such', {
    programme: own('citrus'),
    kept: [
      {
        table: lines('Seed parent,Pollen,Year,Seedlings,Polyembryonic,Zygotic expected,Leaf', 'US 852,?,2012,40+,3,~20,unifoliate and trifoliate'),
        choices: { kinds: { 'us 852': 'k0', '': 'k0' } },
      },
    ],
    flags: ['atLeast'],
    stands: ['Seedlings: 40+', 'Polyembryonic: 3', 'Zygotic expected: ~20'],
    holds: (programme) => {
      // “40 and more” is no count: none is made of it, and no hybrid is counted.
      expect(programme.log.batches[0]?.counts).toEqual([]);
      expect(standingToday(programme).standing).toBe(0);
    },
    beyond: 'Seedlings are not told apart as copies of the mother or as crosses.',
  }),
  recorded('C12', 'entered', 'Figs of a persistent caprifig: years as ranges, drupelets as a range', {
    programme: own('fig'),
    kept: [
      {
        table: lines('Cross;Year;Seeds;Sown;Came up;First fruit, years', 'Common fig × persistent caprifig;2015;300–500;12;12;5–7 on own roots, 1–3 grafted'),
        choices: { kinds: { 'common fig': 'k0', 'persistent caprifig': 'k0' } },
      },
    ],
    flags: ['range'],
    stands: ['Seeds: 300–500', '5–7 on own roots, 1–3 grafted'],
    holds: (programme) => {
      expect(programme.log.batches[0]?.counts).toEqual([
        { stage: 'sown', count: 12 },
        { stage: 'cameUp', count: 12 },
      ]);
      // Of twelve, none edible where one in four would be: 3.2 %, as printed.
      expect(Number((100 * 0.75 ** 12).toFixed(1))).toBe(3.2);
    },
    beyond: 'A gene that only pollen hands on, and sex, are not weighed.',
  }),
  recorded('C16', 'entered', 'A hazel institute’s funnel: 4,000 seedlings to 20 in eight years', {
    programme: own('hazel'),
    kept: [
      {
        table: lines(
          'Batch\tCross\tYear\tSeedlings\tPlanted\tAlive\tAlive, on\tIn trial\tAdvanced\tNamed',
          'Cycle\tseveral x several\t1985\t4,000\t3,600\t2,400\t1989\t1,000\t100\t20',
        ),
        choices: { kinds: { several: 'k0' } },
      },
    ],
    flags: ['thousands'],
    stands: ['In trial: 1,000', 'Advanced: 100', 'Named: 20'],
    holds: (programme) => {
      expect(programme.log.batches[0]?.counts.map(({ count }) => count)).toEqual([4000, 3600, 2400]);
      // Twenty-five crosses of 160 a year, as printed.
      expect(25 * 160).toBe(4000);
    },
    beyond: 'Stages of selection are no losses, and are kept in words.',
  }),
  recorded('C22', 'entered', '~790 seedlings of five crosses, 133 without symptoms: a total without its parts', {
    programme: own('apple'),
    kept: [
      {
        table: lines(
          'Batch,Cross,Year,Seedlings,Alive,Remarks',
          'Five crosses,,2008,~790,133,"incl. Generos × Crimson Crisp and back; symptom-free kept for the marker"',
        ),
      },
    ],
    flags: ['about'],
    stands: ['Seedlings: ~790', 'Generos × Crimson Crisp and back'],
    noted: ['is not said, so its counts teach no rate'],
    holds: (programme) => {
      const { rates, leftOut } = learned(programme);
      expect(rates).toEqual([]);
      expect(leftOut).toMatchObject([{ name: 'Five crosses', why: 'noKind' }]);
      expect(Number(((100 * 133) / 790).toFixed(1))).toBe(16.8);
    },
  }),
  recorded('C26', 'entered', 'Pawpaws in round words: about 300, a row of ~60, fewer than half good, a tenth to cull', {
    programme: () => orchard(kindsNamed('pawpaw'), [tree('p', { kind: 'k0', name: 'Prolific' })], []),
    kept: [
      {
        table: lines(
          'Batch|Seed parent|Pollen|Year|Seedlings|Grade|Remarks',
          'All|Prolific|mixed|2010|~300|10% to cull|most average, few outstanding',
          'One row|Prolific|mixed|2010|about 60|<50% good or better|5 ft, too close; a dozen visitors tasted',
        ),
      },
    ],
    flags: ['about'],
    stands: ['Seedlings: ~300', 'Seedlings: about 60', 'Grade: 10% to cull', 'Grade: <50% good or better'],
    holds: (programme) => {
      // Two statements about overlapping trees stand side by side; nobody makes them agree.
      expect(programme.log.batches.map(({ counts }) => counts[0]?.count)).toEqual([300, 60]);
    },
    beyond: 'Grades by several tasters are kept in words.',
  }),
  recorded('C32', 'entered', 'Sports of Northern Spy as parents, told from the original by their tag', {
    programme: () => orchard(kindsNamed('apple'), [tree('ns', { kind: 'k0', name: 'Northern Spy' })], []),
    kept: [
      {
        table: lines(
          'Mother;Father;Year;Seedlings;Remarks',
          'Northern Spy, blushed sport 1;yellow cultivar;1936;25;more blushed than striped',
          'Northern Spy;yellow cultivar;1936;22;',
          'irradiated Stella;Van;1970;9;',
        ),
        choices: { kinds: { 'northern spy, blushed sport 1': 'k0', 'yellow cultivar': 'k0', 'irradiated stella': 'k0', van: 'k0' } },
      },
    ],
    stands: ['Northern Spy, blushed sport 1', 'irradiated Stella', 'more blushed than striped'],
    holds: (programme) => {
      const [sport, original] = programme.log.batches;
      // Neither a tree of the programme nor another new one by accident: a tag of its own.
      expect([sport?.seed, original?.seed]).toEqual([{ tag: 'Northern Spy, blushed sport 1' }, { tree: 'ns' }]);
    },
    beyond: 'The numbers of seedlings are invented; whether a sport breeds like its original is not weighed.',
  }),
  recorded('C34', 'entered', 'Sweet × sour cherry: alleles with primes, letters and a null in the names, in an old machine’s letters', {
    programme: () =>
      orchard(
        [...kindsNamed('sweet cherry', 'sour cherry'), kind({ id: 'hybrid', name: 'hybrid' })],
        [],
        [{ id: 'wide', name: 'wide', seed: 'k0', pollen: 'k1', gives: 'hybrid' }],
      ),
    kept: [
      {
        table: latin(
          lines('Seed parent;Pollen parent;Year;Progeny tested', ...SEMI.map(([seed, pollen, number]) => `${seed};${pollen};2007;${String(number)}`)),
        ),
        choices: {
          columns: { 3: { role: 'count:cameUp' } },
          kinds: Object.fromEntries(
            SEMI.flatMap(([seed, pollen]) => [
              [seed.toLowerCase(), 'k0'],
              [pollen.toLowerCase(), 'k1'],
            ]),
          ),
        },
      },
    ],
    stands: SEMI.map(([, pollen]) => pollen),
    holds: (programme) => {
      expect(programme.log.batches.map(({ counts }) => counts[0]?.count)).toEqual([13, 40, 37, 40, 15, 14, 20]);
      // Small families without seeds sown: no germination is made of them.
      expect(learned(programme).rates).toEqual([]);
    },
    beyond: 'Which pollen met which allele stands in the names.',
  }),
  recorded('C38', 'entered', 'A pedigree file of 1,754 entries: identifiers with commas and points, unknown parents that are not one another', {
    programme: () => orchard(kindsNamed('apple'), [], [{ id: 'own', name: 'own', seed: 'k0', pollen: 'k0', gives: 'k0' }]),
    kept: [{ table: pedigree(), choices: { year: 1990, columns: { 0: { role: 'tag' }, 1: { role: 'keep' } } } }],
    stands: ['235,2', '1222,2', '1106.1', 'Name: A selection', 'UP_Variety 933'],
    noted: ['is not said, so its counts teach no rate', '“Dummy” is written on two trees of this batch'],
    holds: (programme, [found]) => {
      expect(found?.table).toMatchObject({ separator: '\t', crlf: true });
      expect(found?.table.rows).toHaveLength(PEDIGREE.entries);
      const batches = programme.log.batches;
      const treesOf = (wanted: (batch: (typeof batches)[number]) => boolean): number =>
        batches.filter(wanted).reduce((sum, { trees }) => sum + trees.length, 0);
      const tagged = (parent: (typeof batches)[number]['pollen'], starts: string) =>
        typeof parent === 'object' && 'tag' in parent && parent.tag.startsWith(starts);
      expect(treesOf(({ seed }) => seed === 'unknown')).toBe(PEDIGREE.noParent);
      // The shared ancestor is one family; each unknown of its own would be a batch of its own, and a log holds four hundred.
      expect(treesOf(({ seed }) => tagged(seed, 'Genotype_7'))).toBe(PEDIGREE.shared);
      const unknowns = batches.filter(({ pollen }) => tagged(pollen, 'UP_'));
      expect(unknowns.every(({ trees }) => trees.length === 1)).toBe(true);
      expect(unknowns.length + (found?.additions.noRoom ?? 0)).toBeGreaterThanOrEqual(PEDIGREE.ownUnknown);
      expect(found?.additions.noRoom).toBeGreaterThan(0);
    },
    beyond: 'A log holds 400 batches: what finds no room is told, and the file stays.',
  }),
  recorded('C47', 'entered', 'Citrus between two and four sets: sound and poor seeds counted apart, survival as a range', {
    programme: () =>
      orchard(
        [...kindsNamed('citrus 2x', 'citrus 4x'), kind({ id: 'triploid', name: 'triploid' })],
        [],
        [
          { id: 'up', name: 'up', seed: 'k0', pollen: 'k1', gives: 'triploid' },
          { id: 'down', name: 'down', seed: 'k1', pollen: 'k0', gives: 'triploid' },
        ],
      ),
    kept: [
      {
        table: lines(
          'Cross,Year,Underdeveloped seeds,Germination %,Plantlets alive %,Harvest',
          'Kinnow 2x × Kinnow 4x,2003,yes,,59–89.3 %,12-14 weeks after pollination',
          'Kinnow 4x × Kinnow 2x,2003,no,75 %,59–89.3 %,7 months after pollination',
        ),
        choices: { kinds: { 'kinnow 2x': 'k0', 'kinnow 4x': 'k1' }, columns: { 3: { role: 'keep' } } },
      },
    ],
    stands: ['59–89.3 %', 'Germination %: 75 %', '12-14 weeks after pollination'],
    holds: (programme) => {
      const [one, other] = programme.log.batches;
      // Two directions, two batches of two kinds.
      expect([one?.seedKind, other?.seedKind]).toEqual(['k0', 'k1']);
      expect(learned(programme).rates).toEqual([]);
    },
    beyond: 'Two classes of seed are no stages; percentages without numbers stay words.',
  }),
];
