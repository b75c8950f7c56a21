import { expect } from 'vitest';
import { fullest } from '../../../src/seasonlog/counts.ts';
import { kind, shown, tree } from '../../engine/programmes.ts';
import { expectInterval, percent } from '../programmes.ts';
import { expectLearned, kindsNamed, learned, lines, orchard, rateOf, recorded } from '../record.ts';

/* Flowers, fruits and seeds. Figures as public reports print them; the columns, and remarks without a figure, are invented habits. */

const PEAR = tree('nashi', { kind: 'k0', name: 'Japanese pear' });
const APPLE = tree('apple', { kind: 'k1', name: 'Apple' });
const pearAndApple = () =>
  orchard(
    [...kindsNamed('Japanese pear', 'apple'), kind({ id: 'hybrid', name: 'pear × apple' })],
    [PEAR, APPLE],
    [
      { id: 'on-pear', name: 'on pear', seed: 'k0', pollen: 'k1', gives: 'hybrid' },
      { id: 'on-apple', name: 'on apple', seed: 'k1', pollen: 'k0', gives: 'hybrid' },
    ],
  );

/** Rows of C05: seed parent, crosses of one cluster of three flowers, succeeded, failed at pollination, failed later. */
const GARDEN: readonly (readonly [string, number, number, number, number])[] = [
  ["Adam's Pearmain", 6, 1, 5, 0],
  ['Annie Elizabeth', 5, 0, 5, 0],
  ["Ashmead's Kernel", 8, 2, 4, 3],
  ['Beauty of Bath', 20, 13, 1, 6],
  ["Bramley's", 6, 2, 3, 1],
  ["Cox's Pomona", 1, 1, 0, 0],
  ['Discovery', 23, 16, 5, 2],
  ["Ellison's Orange", 19, 9, 0, 10],
  ['Emneth Early', 1, 1, 0, 0],
  ['George Cave', 14, 6, 6, 2],
  ['Grenadier', 4, 1, 1, 2],
  ['Ida Red', 10, 6, 1, 3],
  ['James Grieve', 6, 3, 2, 1],
  ['Katy', 4, 2, 0, 2],
];

/** Mean of a share p of which each of n clusters of three says only whether any flower of it set: by the trapezoid rule over logit p. */
function clusterMean(hits: number, of: number): number {
  let [sum, mass] = [0, 0];
  for (let x = -12; x <= 12; x += 0.001) {
    const p = 1 / (1 + Math.exp(-x));
    // Jeffreys' beta of p on the scale of its logit: √(p (1 − p)).
    const weight = Math.exp(hits * Math.log(1 - (1 - p) ** 3) + 3 * (of - hits) * Math.log(1 - p) + 0.5 * Math.log(p * (1 - p)));
    mass += weight;
    sum += p * weight;
  }
  return sum / mass;
}

/** Clusters and apples of C40: by hand, natural, excluded. */
const NORWAY = [
  ['Aroma', [510, 370], [709, 316], [457, 65]],
  ['Discovery', [397, 257], [446, 288], [328, 19]],
  ['Summerred', [619, 412], [678, 384], [417, 33]],
] as const;

export const setting = [
  recorded('C01', 'computed', 'Japanese pear × apple: 1,306 flowers, 221 fruits, 1,172 seeds, with points between thousands', {
    programme: pearAndApple,
    kept: [
      {
        table: lines(
          'Seed parent;Pollen parent;Year;Flowers;Fruits;Seeds;Fruits without a seed;Remarks',
          'Japanese pear;apple;1974;1.306;221;1.172;4;5 seed parents, 3 pollen parents',
        ),
      },
    ],
    flags: ['thousands'],
    stands: ['Fruits without a seed: 4', '5 seed parents'],
    holds: (programme) => {
      expectLearned(rateOf(programme, 'set', 'on-pear'), 221, 1306);
      expectInterval(221, 1306, 15, 19, 1);
      expect(percent(221 / 1306, 1)).toBe(16.9);
      expect(programme.log.batches[0]?.counts.map(({ count }) => count)).toEqual([1306, 221, 1172]);
    },
    beyond: 'Seeds in a fruit are no rate that is learned: fruits without a seed stand in the note.',
  }),
  recorded('C02', 'computed', 'The same pair the other way: 1,152 flowers, 118 fruits, 362 seeds, with commas between thousands', {
    programme: pearAndApple,
    kept: [
      {
        table: lines('Cross,Year,Flowers,Fruits,Seeds', 'Japanese pear x Apple,1974,"1,306",221,"1,172"', 'Apple x Japanese pear,1974,"1,152",118,362'),
      },
    ],
    flags: ['thousands'],
    holds: (programme) => {
      const [pear, apple] = [rateOf(programme, 'set', 'on-pear'), rateOf(programme, 'set', 'on-apple')];
      expectLearned(pear, 221, 1306);
      expectLearned(apple, 118, 1152);
      expectInterval(118, 1152, 8.6, 12.1, 1);
      // The two directions are two rates, and no luck of the draw makes them one.
      expect(apple.after.nine.high).toBeLessThan(pear.after.nine.low);
    },
  }),
  recorded('C04', 'computed', 'Dwarf rootstock cherry: 3,000 flowers, 20 fruits, 7 seedlings, 4 of 4 counted were triploid', {
    programme: () =>
      orchard(
        [...kindsNamed('ground cherry', 'mahaleb cherry'), kind({ id: 'triploid', name: 'triploid' })],
        [tree('p', { kind: 'k0', name: 'P. fruticosa' }), tree('q', { kind: 'k1', name: 'P. mahaleb' })],
        [{ id: 'wide', name: 'wide', seed: 'k0', pollen: 'k1', gives: 'triploid' }],
      ),
    kept: [{ table: lines('Cross\tYear\tFlowers pollinated\tFruits\tSeedlings\tTriploid', 'P. fruticosa × P. mahaleb\t1990\t3000\t20\t7\t4 of 4') }],
    stands: ['Triploid: 4 of 4'],
    holds: (programme) => {
      const set = rateOf(programme, 'set', 'wide');
      expectLearned(set, 20, 3000);
      expect(percent(20 / 3000, 2)).toBe(0.67);
      // A rate of two thirds of a percent is not none: four written digits keep it.
      expect(set.estimate).toMatchObject({ source: { kind: 'counted' } });
      expect(set.after.low).toBeGreaterThan(0.004);
      expectInterval(7, 3000, 0.1, 0.46, 2);
      expect(fullest(programme.log.batches[0]!, 'cameUp')?.count).toBe(7);
    },
    beyond: 'Sets of chromosomes that were counted stand in the note; a count of seedlings without one of seeds teaches no germination.',
  }),
  recorded('C05', 'computed', 'A garden’s table of fourteen seed parents, crossed by the cluster of three flowers', {
    programme: () => orchard(kindsNamed('apple'), [], [{ id: 'apples', name: 'apples', seed: 'k0', pollen: 'k0', gives: 'k0' }]),
    kept: [
      {
        table: lines(
          'Seed parent,Clusters,Success,Failed at pollination,Failed later',
          ...GARDEN.map(([name, made, ...rest]) => [name, `${String(made)} clusters of 3`, ...rest].join(',')),
        ),
        choices: {
          year: 2012,
          columns: { 2: { role: 'count:fruits' } },
          kinds: Object.fromEntries(['', ...GARDEN.map(([name]) => name.toLowerCase())].map((name) => [name, 'k0'])),
        },
      },
    ],
    stands: ['Failed at pollination: 4', 'Failed later: 3', "Ashmead's Kernel"],
    holds: (programme, [found]) => {
      const set = rateOf(programme, 'set', 'apples');
      // Pooled: 63 of 127 clusters, or 381 flowers.
      expect([set.counts.hits, set.counts.of]).toEqual([63, 381]);
      expectInterval(63, 127, 41, 58);
      expect(percent(1 - (1 - 63 / 127) ** (1 / 3), 1)).toBe(20.4);
      const exact = clusterMean(63, 127);
      expect(Math.abs(set.after.mean - exact)).toBeLessThan((set.after.nine.high - set.after.nine.low) / 100);
      // Not one fruit to every sixth flower.
      expect(set.after.nine.low).toBeGreaterThan(63 / 381);
      // Fourteen rows, fourteen batches: apostrophes are letters.
      expect(found?.additions.newBatches).toBe(14);
      // None of five is no proof: that row alone leaves up to 38 %.
      expectInterval(0, 5, 0, 38);
    },
    beyond: 'Failed early and failed late are no fields: 2 + 4 + 3 of 8 stands as it was entered, the two failures in the note.',
  }),
  recorded('C09', 'entered', 'A triploid crab fruits without pollen: a control that is not nought, in percent', {
    programme: () => orchard(kindsNamed('crab'), [], [{ id: 'crabs', name: 'crabs', seed: 'k0', pollen: 'k0', gives: 'k0' }]),
    kept: [
      {
        table: lines(
          'Seed parent;Pollen;Year;Treatment;Fruit set',
          'Royalty;mixed;1985;emasculated, foreign pollen;98,44 %',
          'Royalty;unknown;1985;emasculated, bagged, no pollen;47,46 %',
          'Royalty;unknown;1985;bagged only;19,7 %',
        ),
        choices: { kinds: { royalty: 'k0', '': 'k0' } },
      },
    ],
    flags: ['notNumber'],
    stands: ['Fruit set: 47,46 %', 'Treatment: bagged only'],
    holds: (programme, [found]) => {
      expect(found?.additions.newBatches).toBe(3);
      // A percentage is no count: nothing is learned from it, least of all that the cross works.
      expect(learned(programme).rates).toEqual([]);
    },
    beyond: 'Fruit without a father is told in the note; no rate takes a control off another.',
  }),
  recorded('C18', 'entered', 'Myrobalan × Moniquí, emasculated and not bagged: set as a range of percent, and a control, in an old machine’s letters', {
    programme: () => orchard(kindsNamed('myrobalan', 'apricot'), [tree('m', { kind: 'k0', name: 'Myrobalan' })], []),
    kept: [
      {
        table: Uint8Array.from(
          lines(
            'Seed parent;Pollen parent;Year;Fruit set',
            'Myrobalan;Moniqu\u00ed;1998;1.8\u20138.0 %',
            'Myrobalan;Moniqu\u00ed Borde;1999;',
            'Myrobalan;-;1998;1.2 %',
          ),
          // The one letter above 255, a dash, is byte 0x96 of Windows-1252.
          (letter) => (letter === '\u2013' ? 0x96 : letter.charCodeAt(0)),
        ),
      },
    ],
    flags: ['notNumber'],
    stands: ['Moniquí', 'Moniquí Borde', 'Fruit set: 1.8–8.0 %', 'Fruit set: 1.2 %'],
    noted: ['is not said, so its counts teach no rate'],
    holds: (programme) => {
      expect(programme.log.batches.map(({ pollen }) => pollen)).toEqual([{ tag: 'Moniquí' }, { tag: 'Moniquí Borde' }, 'unknown']);
      // The two pollen parents stay two, though one name begins the other.
      expect(learned(programme).rates).toEqual([]);
    },
    beyond: 'The share of strays among the fruits is a field of the cross entry, and is not learned from a control.',
  }),
  recorded('C40', 'computed', 'Apples of Norway by cluster: by hand, open, and in bags that kept pollen out, with a name that ends in a space', {
    programme: () =>
      orchard(
        kindsNamed('apple'),
        NORWAY.map(([name], i) => tree(`n${String(i)}`, { kind: 'k0', name })),
        [{ id: 'apples', name: 'apples', seed: 'k0', pollen: 'k0', gives: 'k0' }],
        { traits: [shown(2)] },
      ),
    kept: [
      {
        table: lines(
          'Batch;Seed parent;Pollen parent;Year;Flower clusters;Apples;Kept out of the rates;Remarks',
          ...NORWAY.flatMap(([name, hand, open, bag]) => [
            `${name}, by hand;${name};mixed;2014;${hand.join(';')};no;${name === 'Aroma' ? 'Overpollinated?' : ''}`,
            `${name}, natural;${name} ;open;2014;${open.join(';')};yes;`,
            `${name}, excluded;${name};unknown;2014;${bag.join(';')};yes;${name === 'Summerred' ? 'feil farge på merke på Sørlandet?' : ''}`,
          ]),
        ),
        choices: { kinds: { '': 'k0' } },
      },
    ],
    flags: ['notKnown', 'spaces'],
    stands: ['Overpollinated?', 'feil farge på merke på Sørlandet?'],
    holds: (programme) => {
      const batches = programme.log.batches;
      // “Discovery ” and “Discovery” are one tree.
      expect(new Set(batches.map(({ seed }) => JSON.stringify(seed))).size).toBe(3);
      // By hand alone; per cluster, since how many flowers were in one is not said.
      expectLearned(rateOf(programme, 'set', 'apples'), 370 + 257 + 412, 510 + 397 + 619);
      expect(learned(programme).leftOut.filter(({ why }) => why === 'apart')).toHaveLength(6);
      // The control is not nought: 6 to 14 in 100 clusters.
      const leaks = batches.filter(({ name }) => name.endsWith('excluded')).map((batch) => fullest(batch, 'fruits')!.count / fullest(batch, 'flowers')!.count);
      expect(leaks.map((leak) => percent(leak))).toEqual([14, 6, 8]);
    },
    beyond: 'The leak of the bags stands in the log and is typed into the cross entry; it is not learned.',
  }),
];
