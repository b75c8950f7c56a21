import { programmeSchema, type Programme } from '../../../src/model/programme.ts';

/** A small invented programme with every kind of field in it: two pears, a quince, one wide cross with a rescue graft. */
export function samplePear(): Programme {
  return programmeSchema.parse({
    format: 'orchard-odds programme',
    version: 4,
    title: 'Red pear at the mill',
    startYear: 2027,
    lastYear: 2057,
    shuffleWord: 'hedgerow',
    runs: 4000,
    goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 2 },
    limits: { places: 120, hoursPerYear: 160, bloomDays: 10, hoursADay: 6, flowersAnHour: 20 },
    genes: [{ id: 'redness', name: 'Redness' }],
    traits: [
      {
        type: 'shown',
        id: 'red',
        name: 'Red flesh',
        rules: [{ name: 'one copy is enough', weight: 5, needs: { needs: 'all', of: [{ gene: 'redness', copies: 1 }] } }],
      },
      { type: 'measured', id: 'sweet', name: 'Sweetness', unit: '°Bx', mean: 13, sd: 1.5, heritability: 0.4, repeatability: 0.6 },
    ],
    kinds: [
      { id: 'pear', name: 'Pear', firstFruit: { earliest: 4, half: 6, ninety: 9 } },
      { id: 'quince', name: 'Quince', firstFruit: { years: { low: 3, likely: 4, high: 6, source: { kind: 'practice', note: '' } } } },
      { id: 'wide', name: 'Pear × quince', firstFruit: { between: { seed: 'pear', pollen: 'quince' } } },
    ],
    gardens: [
      { id: 'home', name: 'Home', yearlyLoss: 0.01 },
      { id: 'mill', name: 'The mill', yearlyLoss: 0.02 },
    ],
    trees: [
      {
        id: 'hedgerow',
        name: 'Old Hedgerow',
        kind: 'pear',
        flowers: 520,
        gardens: ['home'],
        genes: { redness: { copies: 1 } },
        seen: { red: { showed: 3, seasons: 4 } },
      },
      { id: 'saffron', name: 'Saffron Bell', kind: 'pear', flowers: 400, values: { sweet: 15 } },
      { id: 'mill-quince', name: 'Mill Quince', kind: 'quince', flowers: 300 },
    ],
    pools: [{ id: 'hedge', name: 'The hedge', trees: [{ tree: 'saffron', weight: 1 }] }],
    crosses: [
      {
        id: 'wide',
        name: 'Pear by quince',
        seed: 'pear',
        pollen: 'quince',
        gives: 'wide',
        set: { hits: 18, of: 240, lots: 2, source: { kind: 'counted', note: '2025–26' } },
        germination: { low: 0.4, likely: 0.55, high: 0.7, source: { kind: 'published', note: 'invented figure: quince seed, chilled 12 weeks' } },
        weakness: {
          share: { low: 0.955, likely: 0.985, high: 0.997, source: { kind: 'guess', note: 'nearly all of them' } },
          onset: 2,
          course: { halfLife: { low: 2, likely: 5, high: 15, source: { kind: 'guess', note: '' } } },
          rootBorne: { chance: { low: 0.62, likely: 0.86, high: 0.97, source: { kind: 'guess', note: 'if not, no graft cures it' } } },
        },
      },
    ],
    stocks: [
      { id: 'field-pear', name: 'field pear, seedling', takeTender: 0.3, takeRipe: { hits: 14, of: 20, source: { kind: 'counted', note: '2026' } } },
      { id: 'quince-c', name: 'quince stock', takeTender: 0.2, takeRipe: 0.5 },
    ],
    plans: [
      {
        id: 'rescue',
        mark: 'D',
        name: 'Wide cross, rescue graft',
        generations: [
          {
            id: 'g1',
            name: 'Wide cross, grafted',
            seedParents: [{ tree: 'hedgerow' }],
            pollen: [{ tree: 'mill-quince' }],
            flowers: 400,
            seedlings: 60,
            springs: 3,
            judge: 2,
            rescue: { who: 'weak', month: 8, stock: 'field-pear' },
            keep: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], howMany: 2 },
            goOn: { when: 'firstPick', atLatest: 12 },
          },
          {
            id: 'g2',
            name: 'Pick × Saffron Bell',
            seedParents: [{ picksOf: 'g1' }],
            pollen: [{ tree: 'saffron' }],
            flowers: 420,
            seedlings: 80,
            springs: 2,
            judge: 2,
            keep: { howMany: 1 },
          },
        ],
      },
    ],
  });
}
