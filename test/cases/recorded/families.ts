import { expect } from 'vitest';
import { learnInheritance } from '../../../src/seasonlog/inheritance.ts';
import { measured, shown, tree, type ShownDocument } from '../../engine/programmes.ts';
import { expectInterval, percent } from '../programmes.ts';
import { kindsNamed, learned, lines, orchard, recorded } from '../record.ts';

/* Trees of a family, one row each. Tags and places are invented; figures as public reports print them. */

type Rules = NonNullable<ShownDocument['rules']>;
const needs = (gene: string, copies: 1 | 2) => ({ gene, copies });
const ONE_COPY: Rules[number] = { name: 'one copy is enough', weight: 1, needs: { needs: 'all', of: [needs('r', 1)] } };
const TWO_GENES: Rules[number] = { name: 'two genes, one copy of each', weight: 1, needs: { needs: 'all', of: [needs('r', 1), needs('d', 1)] } };

const rows = (number: number, row: (i: number) => string): string[] => Array.from({ length: number }, (_, i) => row(i));

/** Families of C45 and years of their bloom, as days of the year; the days are invented within the printed spans. */
const BLOOM = { families: 19, trees: 3, years: [2005, 2009, 2014] };

export const families = [
  recorded('C20', 'computed', 'Salva × Jonathan: 24 of 67 seedlings resistant, where half were expected', {
    programme: () =>
      orchard(
        kindsNamed('apple'),
        [
          tree('salva', { kind: 'k0', name: 'Salva', genes: { r: { copies: 1 }, d: { copies: 1 } } }),
          tree('jonathan', { kind: 'k0', name: 'Jonathan', genes: { r: { copies: 0 }, d: { copies: 0 } } }),
        ],
        [{ id: 'apples', name: 'apples', seed: 'k0', pollen: 'k0', gives: 'k0' }],
        {
          genes: [
            { id: 'r', name: 'Vf' },
            { id: 'd', name: 'another' },
          ],
          traits: [shown(1, { name: 'No scab', rules: [ONE_COPY, TWO_GENES] })],
        },
      ),
    kept: [
      {
        table: lines(
          'Tag,Seed parent,Pollen parent,Year,Season,No scab',
          ...rows(67, (i) => `20-${String(i + 1).padStart(3, '0')},Salva,Jonathan,1998,2000,${i < 24 ? 'yes' : 'no'}`),
        ),
      },
    ],
    flags: ['yesNo'],
    stands: ['20-001', '20-067'],
    holds: (programme) => {
      const [found] = learnInheritance(programme);
      expect(found?.families).toMatchObject([{ showed: 24, of: 67 }]);
      // χ² = 5.39 against one in two, as printed; against one in four: (24 − 16.75)²/16.75 + (43 − 50.25)²/50.25 = 4.18.
      const squares = (share: number) => (24 - 67 * share) ** 2 / (67 * share) + (43 - 67 * (1 - share)) ** 2 / (67 * (1 - share));
      expect([0.5, 0.25].map((share) => Number(squares(share).toFixed(2)))).toEqual([5.39, 4.18]);
      // Both rules are off to the same side as each other’s mirror: neither is settled, the data replace neither, and more trees are asked for.
      expect(found?.settled).toBe(false);
      for (const { after } of found?.rules ?? []) expect(after).toBeGreaterThan(0.1);
      expect(found?.settling?.seedlings).toBeGreaterThan(0);
      expectInterval(24, 67, 25, 48);
      // Those without it that may carry it are listed, and stay.
      expect(found?.losers).toHaveLength(43);
    },
  }),
  recorded('C21', 'entered', 'GoldRush × Enterprise: classes by a marker, and scab seen in the field', {
    programme: () =>
      orchard(
        kindsNamed('apple'),
        [tree('g', { kind: 'k0', name: 'GoldRush', genes: { r: { copies: 1 } } }), tree('e', { kind: 'k0', name: 'Enterprise', genes: { r: { copies: 1 } } })],
        [{ id: 'apples', name: 'apples', seed: 'k0', pollen: 'k0', gives: 'k0' }],
        { traits: [shown(2, { name: 'Scab' })] },
      ),
    kept: [
      {
        table: lines(
          'Label\tCross\tYear\tMarker\tScab 2004',
          ...rows(26, (i) => `S${String(i + 1)}\tGoldRush x Enterprise\t2001\tno Vf\t${i < 22 ? '4 of 5' : '0 of 5'}`),
          ...rows(35, (i) => `H${String(i + 1)}\tGoldRush x Enterprise\t2001\tone copy\t${i < 1 ? '1/5' : '0/5'}`),
        ),
      },
    ],
    stands: ['Marker: no Vf', 'Marker: one copy'],
    holds: (programme) => {
      const trees = programme.log.batches[0]!.trees;
      const scabbed = (marker: string) => trees.filter(({ note, seasons }) => note?.includes(marker) && (seasons[0]?.seen['red']?.showed ?? 0) > 0).length;
      expect([scabbed('no Vf'), scabbed('one copy')]).toEqual([22, 1]);
      // Printed 68–95; to one place 67.5–94.6.
      expectInterval(22, 26, 67.5, 94.6, 1);
      expect(percent(22 / 26)).toBe(85);
    },
    beyond: 'What a marker said stands in the note: “able to show it” is not learned from classes that a marker told apart.',
  }),
  recorded('C39', 'entered', 'Two trees of one clone, judged in one season: 7.5 days apart in the mean, 99 at the most', {
    programme: () =>
      orchard(kindsNamed('apple'), [], [{ id: 'apples', name: 'apples', seed: 'k0', pollen: 'k0', gives: 'k0' }], {
        traits: [measured({ id: 'ripe', name: 'Ripe on day', unit: 'days' })],
        goal: { conditions: [{ type: 'measured', trait: 'ripe', atLeast: 0 }], crops: 1 },
      }),
    kept: [
      {
        table: lines('Tag;Clone;Seed parent;Year;Ripe on day 2018', '1-1;A;?;2010;262', '1-2;A;?;2010;254,5', '2-1;B;?;2010;199', '2-2;B;?;2010;298'),
        choices: { kinds: { '': 'k0' } },
      },
    ],
    flags: ['decimal'],
    stands: ['Clone: A', 'Clone: B'],
    holds: (programme) => {
      const [batch] = programme.log.batches;
      const days = batch?.trees.map(({ seasons }) => seasons[0]?.values['ripe']);
      // Two trees of one clone are two trees; the pair that is 99 days apart is kept as it was entered.
      expect(days).toEqual([262, 254.5, 199, 298]);
      expect([262 - 254.5, 298 - 199]).toEqual([7.5, 99]);
    },
    beyond: 'That two trees are one clone stands in the note: the noise of a judgement is not learned from it.',
  }),
  recorded('C45', 'entered', 'First bloom of nineteen families over ten years, a column for each year', {
    programme: () =>
      orchard(kindsNamed('apple'), [], [{ id: 'apples', name: 'apples', seed: 'k0', pollen: 'k0', gives: 'k0' }], {
        traits: [measured({ id: 'bloom', name: 'First bloom', unit: 'day of the year' })],
        goal: { conditions: [{ type: 'measured', trait: 'bloom', atLeast: 0 }], crops: 1 },
      }),
    kept: [
      {
        table: lines(
          `Tag,Cross,Year,${BLOOM.years.map((year) => `First bloom ${String(year)}`).join(',')}`,
          ...rows(BLOOM.families * BLOOM.trees, (i) => {
            const family = Math.floor(i / BLOOM.trees);
            const cross = family === 0 ? 'Pink Lady × Discovery' : `Parent ${String(family)} × Parent ${String(family + 1)}`;
            return `${String(family + 1)}-${String((i % BLOOM.trees) + 1)},${cross},1999,${BLOOM.years.map((_, y) => String(100 + 6 * y + (family % 12) - (family === 0 ? 12 : 0))).join(',')}`;
          }),
        ),
        choices: {
          kinds: Object.fromEntries(['pink lady', 'discovery', ...rows(BLOOM.families + 1, (i) => `parent ${String(i)}`)].map((name) => [name, 'k0'])),
        },
      },
    ],
    holds: (programme) => {
      const batches = programme.log.batches;
      expect(batches).toHaveLength(BLOOM.families);
      // A year in a heading is the season of its cells.
      for (const { trees } of batches) for (const { seasons } of trees) expect(seasons.map(({ year }) => year)).toEqual(BLOOM.years);
      // The early family stays early: within a year, 11 to 14 days before the others’ earliest is what the report prints.
      expect(batches[0]?.trees[0]?.seasons[0]?.values['bloom']).toBe(88);
    },
    beyond: 'Bloom of a family against that of its parents is not computed; the days stand tree by tree.',
  }),
  recorded('C14', 'entered', 'Persimmons whose parents are all female, and nine seedlings of which one is male', {
    programme: () =>
      orchard(
        kindsNamed('persimmon'),
        [tree('jt', { kind: 'k0', name: 'JT-02' }), tree('ng', { kind: 'k0', name: "Nikita's Gift" })],
        [{ id: 'persimmons', name: 'persimmons', seed: 'k0', pollen: 'k0', gives: 'k0' }],
      ),
    kept: [
      {
        table: lines(
          'Seedling,Female parent,Male parent,Year,Sex',
          ...rows(9, (i) => `${String(i + 1)},"Nikita’s Gift",JT-02,2008,${i === 8 ? 'male' : 'female'}`),
        ),
      },
    ],
    stands: ['Sex: male', 'Sex: female'],
    holds: (programme) => {
      // A curly apostrophe is the straight one.
      expect(programme.log.batches).toMatchObject([{ seed: { tree: 'ng' }, pollen: { tree: 'jt' } }]);
      expect(programme.log.batches[0]?.trees.filter(({ note }) => note === 'Sex: male')).toHaveLength(1);
    },
    beyond: 'Sex of a seedling stands in its note; it opens and closes no cross.',
  }),
  recorded('C27', 'entered', '125 seedlings of one year; 12 earlier ones blossomed in 2016, 2 were lost to fireblight, each tree later a graft', {
    programme: () =>
      orchard(kindsNamed('apple'), [tree('m', { kind: 'k0', name: 'Mother' })], [{ id: 'apples', name: 'apples', seed: 'k0', pollen: 'k0', gives: 'k0' }]),
    kept: [
      {
        table: lines(
          'Batch,Cross,Year,Planted,Borne fruit,"Borne fruit, on",What happened,Happened on,Lost to it,Remarks',
          'Nursery beds,Mother OP,2014,125,,,,,,grafted at 12 in × 6 ft',
          'Earlier,Mother OP,2010,,12,2016-04,fireblight,2016,2,blossomed; of how many is not said',
        ),
        choices: { kinds: { '': 'k0' } },
      },
      {
        table: lines('Batch,Cross,Year,Tag,Status,Copy at,Copies', 'Nursery beds,Mother OP,2014,14-1,alive,"dwarf row, 12 in × 6 ft",1'),
        choices: { kinds: { '': 'k0' } },
      },
    ],
    flags: ['notKnown'],
    stands: ['What happened: fireblight', '12 in × 6 ft'],
    holds: (programme) => {
      const [beds, earlier] = programme.log.batches;
      // The graft is a copy of its seedling, not a second tree.
      expect(beds?.trees).toMatchObject([{ tag: '14-1', copies: [{ number: 1 }] }]);
      // What was lost is an event, and no rate: of how many is not known.
      expect(earlier?.events).toMatchObject([{ what: 'disease', when: '2016', lost: 2 }]);
      expect(learned(programme).rates).toEqual([]);
    },
  }),
  recorded('C48', 'entered', 'A freeze screen of 92 seed parents with 8 seedlings each, fewer at the later date', {
    programme: () =>
      orchard(kindsNamed('citrus'), [], [{ id: 'citrus', name: 'citrus', seed: 'k0', pollen: 'k0', gives: 'k0' }], {
        traits: [measured({ id: 'harm', name: 'Frost harm', unit: 'score' })],
        goal: { conditions: [{ type: 'measured', trait: 'harm', atLeast: 0 }], crops: 1 },
      }),
    kept: [
      {
        table: lines(
          'Tag,Seed parent,Pollen,Year,Status,Frost harm 2011,Frost harm 2012',
          ...rows(92 * 8, (i) => {
            const [parent, seedling] = [Math.floor(i / 8) + 1, (i % 8) + 1];
            const later = i % 5 === 0 ? 'missing,3,' : i % 7 === 0 ? ',2,' : `alive,1,${String(i % 4)}`;
            return `${String(parent)}-${String(seedling)},P${String(parent)},open,2009,${later}`;
          }),
        ),
        choices: { kinds: Object.fromEntries(rows(92, (i) => `p${String(i + 1)}`).map((name) => [name, 'k0'])) },
      },
    ],
    flags: ['notKnown'],
    stands: ['Status: missing'],
    holds: (programme, [found]) => {
      expect(found?.additions).toMatchObject({ newBatches: 92, newTrees: 736 });
      const trees = programme.log.batches.flatMap((batch) => batch.trees);
      // Not scored is not dead; what “missing” was taken for is flagged, and the word stays.
      const unscored = trees.filter(({ seasons }) => seasons.length === 1);
      expect(new Set(unscored.map(({ status }) => status))).toEqual(new Set(['dead', 'alive']));
      expect([...found!.read.flags.values()].filter(({ raw, readings }) => raw === 'missing' && readings[0] === 'dead')).toHaveLength(Math.ceil(736 / 5));
    },
    beyond: 'Scores are kept by tree and season; no mean over fewer than eight is made of them.',
  }),
];
