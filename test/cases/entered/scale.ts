import { expect } from 'vitest';
import { count as hits, expectMean, expectShare, total } from '../../engine/agreement.ts';
import { future, START, type Document } from '../../engine/programmes.ts';
import { entered } from '../case.ts';
import { known, nursery } from '../programmes.ts';

const BAGS = 73_000;
const FARM = 5800;
/** A future that takes longer keeps nobody at the screen; some twenty times what it took when this was written. */
const LONGEST_SECONDS = 1;
/** One nut a bag, every nut a tree, each judged for three crops as far as there is room. */
const chestnut = (places: number): Document =>
  nursery(
    BAGS,
    { name: 'chestnut', firstFruit: { earliest: 2, half: 3, ninety: 4 }, waitYears: 1 },
    { judge: 3 },
    {
      lastYear: START + 8,
      limits: { places, bloomDays: 366, hoursADay: 24, flowersAnHour: 10_000 },
    },
  );

const INTAKE = 4000;
const SPRINGS = 15;
const CULL = 1 / 3;
/** 15 yearly families of 4,000: 60,000 in all. First winter 4,000 → 3,600, then 3,600 → 2,400 and so on. */
const hazel = (): Document =>
  nursery(
    INTAKE * SPRINGS,
    { name: 'hazel', firstFruit: { years: 30 }, firstYearLoss: known(0.1), yearlyLoss: known(CULL) },
    { flowers: INTAKE, springs: SPRINGS },
    { lastYear: START + 32 },
  );

const ONE_IN = 8000;
const RAISED = 60_000;
/** Worth a name: one in 8,000. Nothing else ever counts as fruit here. */
const releases = (): Document => nursery(RAISED, { name: 'hazel', firstFruit: { years: 8 }, neverFruits: 1 - 1 / ONE_IN }, {}, { lastYear: START + 10 });

export const scale = [
  entered('C15', 'Chestnut: 73,000 trees by hand, one nut a bag; the first farm is full at 5,800', {
    programme: () => chestnut(FARM),
    holds: () => {
      // With room for all, 73,000 trees are judged one by one: the most that this case can ask of a machine.
      const begun = performance.now();
      const roomy = future(chestnut(BAGS), 3);
      const seconds = (performance.now() - begun) / 1000 / 3;
      expect(new Set(roomy.run('fruiting'))).toEqual(new Set([BAGS]));
      expect(seconds).toBeLessThan(LONGEST_SECONDS);
      const full = future(chestnut(FARM), 3);
      expect(new Set(full.run('flowers'))).toEqual(new Set([BAGS]));
      expect(new Set(full.run('seedlings'))).toEqual(new Set([BAGS]));
      // The wall: what finds no room is counted, and no tree stands beyond it.
      expect(Math.max(...full.amount('mostPlaces'))).toBe(FARM);
      expect(new Set(full.run('planted'))).toEqual(new Set([FARM]));
      expect(new Set(full.run('noRoom'))).toEqual(new Set([BAGS - FARM]));
    },
    beyond: 'Ages that shorten as husbandry improves over the years: a kind has the same seasons in all years.',
  }),
  entered('C16', 'Hazel: 4,000 seedlings a year, more than 60,000 in all, one in 8,000 worth a name', {
    programme: hazel,
    holds: () => {
      const runs = 300;
      const columns = future(hazel(), runs);
      expect(new Set(columns.run('seedlings'))).toEqual(new Set([INTAKE * SPRINGS]));
      // What stands is the sum over families of every age: planted at one year, then a third fewer each winter.
      for (const year of [2, 5, 10, SPRINGS]) {
        const ages = Array.from({ length: year - 1 }, (_, i) => i + 1);
        const standing = ages.reduce((sum, age) => sum + INTAKE * 0.9 * (1 - CULL) ** (age - 1), 0);
        expectMean(columns.year('places', year), standing, `standing in year ${String(year)}`);
      }
      // 60,000/8,000 ≈ 7–8 are implied; the one of the record would be rare (Poisson with mean 7.5: 8.5·e^−7.5).
      const named = future(releases(), 4000).run('fruiting');
      expectMean(named, RAISED / ONE_IN, 'worth a name');
      const p = 1 / ONE_IN;
      const atMostOne = (1 - p) ** RAISED + RAISED * p * (1 - p) ** (RAISED - 1);
      expectShare(
        hits(named, (n) => n <= 1),
        4000,
        atMostOne,
        'one name or none',
      );
      expect(atMostOne).toBeLessThan(0.01);
      expect(total(named)).toBeGreaterThan(0);
    },
    beyond: 'Stages of selection without a trait are entered as losses.',
  }),
];
