import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, taking, tongue } from '../grafting.ts';
import { twoCopies } from '../inheritance.ts';
import { FAMILIES, FROST_LATE, NURSERY_LOSS, ROUGH_REGULARITY } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

const TAKE = guess([0.3, 0.65, 0.9], 'No count for chestnut was found; it is held to be harder than apple.');

export const chestnut = entryFrom({
  id: 'chestnut',
  name: 'chestnut',
  botanical: 'Castanea species and hybrids',
  figures: {
    firstFruit: {
      earliest: remembered([3, 4, 6], 'middling', 'Chinese and Japanese chestnut 3–5 years, European 6–12, as generally told.'),
      half: remembered(
        [4, 6, 9],
        'middling',
        'Chinese and Japanese chestnut 3–5 years, European 6–12, as generally told. American backcrosses 6–10, with good culture 2–4.',
      ),
      ninety: remembered([5, 9, 14], 'low', 'European chestnut to 12 years, as generally told; the end is drawn on.'),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: published(
      [0.01, 0.04, 0.07],
      'middling',
      'A breeder’s catalogue of 1988, hybrid chestnuts on a cold site: 2,453 of about 5,000 sown were alive after some ten years of weather and culling, so 7 % a year at the most.',
    ),
    frostShare: FROST_LATE,
    flowers: guess([30, 100, 300], 'Burs in reach and bagged on one tree; not counted.'),
    yearsToFullBloom: 5,
    seedsPerFruit: remembered([1, 1.4, 2.2], 'low', 'A bagged bur gives 0.5–2 nuts, at most 3, as generally told; burs without a nut are left out here.'),
    seedsAtMost: 3,
    selfCompatible: false,
    note: 'Barren with its own pollen in effect. Count in burs: rules of thumb say one good nut a bag.',
  },
  chilling: remembered([30, 60, 90], 'middling', 'USDA Handbook 727: 30–90 days moist cold; the nut must never dry out. From memory.'),
  stocks: [
    ...stocksOf({
      id: 'chestnut-seedling',
      name: 'seedling chestnut',
      methods: [taking(chip, TAKE), taking(tongue, TAKE)],
      note: 'Chestnut often rejects foreign stock after years; seedlings of the scion’s own family are safest.',
    }),
  ],
  traits: [
    twoCopies({
      id: 'chestnut-easy-peel',
      name: 'easy peeling',
      gene: { id: 'chestnut-peel', name: 'easy peel' },
      summary: 'One recessive gene of Japanese chestnut: a quarter from two carriers, a half from carrier × easy peeler.',
      source: { kind: 'published', confidence: 'high', note: 'Takada and others (year not noted): single recessive gene, 1/4 or 1/2.' },
    }),
  ],
  notes: ['Chestnut blight and gall wasp travel with plants and wood: ask your plant-health office before moving any.'],
});

export const chestnutWithin: PairFigures = {
  seed: 'chestnut',
  pollen: 'chestnut',
  set: guess([0.2, 0.5, 0.85], 'Burs with a sound nut of the burs bagged; a rule of thumb of one nut a bag was all that was found.'),
  germination: guess([0.5, 0.75, 0.95], 'No count was found; nuts kept moist come up well.'),
};
