import { describe, expect, it } from 'vitest';
import { parseProgramme } from '../../src/model/read.ts';
import type { Programme } from '../../src/model/programme.ts';
import { meanOf } from '../../src/model/mean.ts';
import { spreadOf } from '../../src/model/estimate-spread.ts';
import { readEstimate } from '../../src/model/estimate-forms.ts';
import { learnFirstFruit } from '../../src/seasonlog/first-fruit.ts';
import { learnRates } from '../../src/seasonlog/learned.ts';
import type { Learnable, Learned } from '../../src/seasonlog/learned-types.ts';
import { learnLosses } from '../../src/seasonlog/survival.ts';
import type { Stretch } from '../../src/seasonlog/stretch.ts';
import { halfLifeFromSurvivors } from '../../src/statistics/graft.ts';
import { myCounts } from '../../src/text/log-learned.ts';
import { alive, batch, counts, judged, tenSeasons, withLog, type BatchDocument } from './orchard.ts';

const learn = (...batches: BatchDocument[]) => learnRates(withLog(batches), myCounts);
const row = (rates: readonly Learned[], what: Learnable, of?: string): Learned => {
  const found = rates.find((one) => one.what === what && (of === undefined || one.of.id === of));
  if (!found) throw new Error(`Nothing was learned of ${what}.`);
  return found;
};

/** The document with edits put where they say. */
function put(programme: Programme, { puts }: Pick<Learned, 'puts'>): Programme {
  const copy: unknown = structuredClone(programme);
  for (const { path, value } of puts) {
    let here = copy as Record<string | number, unknown>;
    for (const key of path.slice(0, -1)) here = here[key] as Record<string | number, unknown>;
    here[path[path.length - 1]!] = value;
  }
  const reading = parseProgramme(copy);
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join(' '));
  return reading.programme;
}

describe('what ten seasons teach', () => {
  const programme = tenSeasons();
  const { rates, leftOut } = learnRates(programme, myCounts);

  it('finds each estimate that was counted for, once', () => {
    expect(rates.map(({ id }) => id).sort()).toEqual(
      [
        'crosses/0/germination',
        'crosses/0/set',
        'crosses/1/germination',
        'crosses/1/set',
        'crosses/1/weakness/course/halfLife',
        'crosses/1/weakness/share',
        'kinds/0/firstFruit/half',
        'kinds/0/firstFruit/ninety',
        'kinds/0/firstYearLoss',
        'kinds/0/neverFruits',
        'kinds/0/yearlyLoss',
        'stocks/0/takeTender',
        'weather/springLuckGermination',
        'weather/springLuckSet',
      ].sort(),
    );
  });

  it('counts what speaks to fruit set, and says what does not: 30 + 4 + 21 + 0 + 18 of 120 + 200 + (150 − 60) + 80 + 40 × 3', () => {
    expect(row(rates, 'set', 'within').counts).toMatchObject({ hits: 73, of: 610, springs: 5, from: 2027, to: 2031 });
    expect(leftOut.map(({ batch: id, why, about }) => `${id} ${why} ${about}`.trim()).sort()).toEqual([
      'mice apart',
      'nobody noKind',
      'partly eventLoss 60 flowers',
      'wide weakCross',
      'wrong doesNotAddUp set: 32 of 20',
    ]);
  });

  it('names the counts as the source of each number, and the document takes it', () => {
    for (const { id, of, estimate } of rates) {
      if (of.section === 'weather') continue;
      expect(JSON.stringify(estimate), id).toContain('"kind":"counted"');
      expect(JSON.stringify(estimate), id).toMatch(/"note":"my counts 20\d\d(–20\d\d)?"/);
    }
    const all = (of: Programme): Learned[] => learnRates(of, myCounts).rates;
    const second = all(rates.reduce(put, programme));
    const third = all(second.reduce(put, programme));
    expect(second.every(({ used }) => used)).toBe(true);
    expect(rates.some(({ used }) => used)).toBe(false);
    // The same counts are not learned from again and again: a third look at them would be narrower by √(2/3) = 0.82; this is nearer to none.
    for (const { id, after } of second) expect(third.find((one) => one.id === id)!.after.sd / after.sd, id).toBeGreaterThan((1 + Math.sqrt(2 / 3)) / 2);
  });

  it('puts a range with the mean and the 10–90 % range of what was learned', () => {
    for (const one of rates.filter(({ of }) => of.section !== 'weather')) {
      const estimate = readEstimate(one.estimate)!;
      const spread = spreadOf(estimate)!;
      const width = one.after.high - one.after.low;
      // Four written digits; a belief more lopsided than a PERT can be keeps mean and width but not both ends.
      expect(Math.abs(meanOf(estimate) - one.after.mean) / width, one.id).toBeLessThan(0.05);
      expect(Math.abs(spread.high - spread.low - width) / width, one.id).toBeLessThan(0.05);
    }
  });

  it('lets the frost year and the failed batch widen the forecast', () => {
    const luck = row(rates, 'luckOfSet');
    expect(luck.after.mean).toBeGreaterThan(0.13);
    const set = row(rates, 'set', 'within');
    expect(set.nextSpring!.low).toBeLessThan(0.05);
    expect(set.nextSpring!.high - set.nextSpring!.low).toBeGreaterThan(2 * (set.after.high - set.after.low));
  });
});

describe('catastrophes', () => {
  const usual = [2027, 2028, 2029].map((year, i) => batch(`y${String(i)}`, year, { counts: counts({ flowers: 100, fruits: 20 + i }) }));
  const storm = (apart: boolean) => batch('storm', 2030, { apart, counts: counts({ flowers: 100, fruits: 0 }) });

  it('stay in unless they are kept out', () => {
    const without = row(learn(...usual).rates, 'set').after;
    const kept = learn(...usual, storm(true));
    expect(row(kept.rates, 'set').after).toEqual(without);
    expect(kept.leftOut).toMatchObject([{ batch: 'storm', why: 'apart' }]);
    const inside = row(learn(...usual, storm(false)).rates, 'set').after;
    expect(inside.mean).toBeLessThan(without.mean);
    expect(inside.sd).toBeGreaterThan(without.sd);
  });

  it('take what they took out of what is counted, by when they came', () => {
    const lost = (when: string, number: number) => ({ what: 'other' as const, when, lost: number });
    const counted = counts({ flowers: 100, fruits: 20, seeds: 90, sown: 90, cameUp: 50 });
    const plain = learn(batch('a', 2027, { counts: counted })).rates;
    const bloom = learn(batch('a', 2027, { counts: counted, events: [lost('2027-05', 40)] })).rates;
    expect(row(bloom, 'set').counts).toMatchObject({ hits: 20, of: 60 });
    expect(row(bloom, 'germination').counts).toEqual(row(plain, 'germination').counts);
    const winter = learn(batch('a', 2027, { counts: counted, events: [lost('2028-01', 30)] })).rates;
    expect(row(winter, 'germination').counts).toMatchObject({ hits: 50, of: 60 });
    const later = [...counted, alive('2029-06', 20)];
    const seedlings = learn(batch('a', 2027, { counts: later, events: [lost('2028-09', 26)] })).rates;
    expect(row(seedlings, 'firstWinter').counts).toMatchObject({ hits: 4, of: 24 });
  });
});

describe('small and odd counts', () => {
  it('none of n and one of one move belief without ending it', () => {
    const none = row(learn(batch('a', 2027, { counts: counts({ flowers: 40, fruits: 0 }) })).rates, 'set').after;
    expect(none.mean).toBeGreaterThan(0.01);
    expect(none.mean).toBeLessThan(0.2167);
    const one = row(learn(batch('a', 2027, { counts: counts({ sown: 1, cameUp: 1 }) })).rates, 'germination').after;
    expect(one.mean).toBeGreaterThan(0.69);
    expect(one.high).toBeLessThan(0.9);
  });

  it('clear counts overrule a range that was stated too narrow, the sooner the more springs there are', () => {
    const springs = (n: number) => Array.from({ length: n }, (_, i) => batch(`b${String(i)}`, 2027 + i, { counts: counts({ flowers: 400, fruits: 4 }) }));
    const [four, eight] = [4, 8].map((n) => row(learn(...springs(n)).rates, 'set').after);
    // 10 to 40 % was stated. Four bad springs in a row may still be bad luck; eight are not.
    expect(four!.mean).toBeLessThan(0.1);
    expect(eight!.high).toBeLessThan(0.1);
    expect(eight!.mean).toBeLessThan(0.02);
  });

  it('are used as entered where they can be, and left out by name where they cannot', () => {
    const { rates, leftOut } = learn(batch('a', 2027, { counts: counts({ flowers: 10, fruits: 12, sown: 20, cameUp: 30 }) }));
    expect(rates).toEqual([]);
    expect(leftOut.map(({ about }) => about)).toEqual(['set: 12 of 10', 'germination: 30 of 20']);
  });

  it('of one spring and pair share its luck, of two springs do not', () => {
    const half = counts({ flowers: 200, fruits: 40 });
    const one = row(learn(batch('a', 2027, { counts: half }), batch('b', 2027, { counts: half })).rates, 'set');
    const two = row(learn(batch('a', 2027, { counts: half }), batch('b', 2028, { counts: half })).rates, 'set');
    expect(one.counts.springs).toBe(1);
    expect(two.counts.springs).toBe(2);
    expect(two.after.sd).toBeLessThan(one.after.sd);
  });

  it('belong to the ordered pair: the other way round is another entry, or none', () => {
    const { rates, leftOut } = learn(batch('a', 2027, { seed: { tree: 'mill' }, pollen: { tree: 'bell' }, counts: counts({ flowers: 100, fruits: 50 }) }));
    expect(rates).toEqual([]);
    expect(leftOut).toMatchObject([{ why: 'noEntry', about: 'quince × pear' }]);
  });
});

describe('losses', () => {
  const stretch = (age: number, until: number, atRisk: number, left: number): Stretch => ({
    batch: 'b',
    kind: 'pear',
    year: 2030,
    age,
    until,
    atRisk,
    alive: left,
  });

  it('of the first and of later winters come apart, also from counts years apart (SciPy 1.17.1, 700 × 700 grid of logits, same priors)', () => {
    const learned = learnLosses([stretch(0, 1.25, 72, 66), stretch(1.25, 4.25, 66, 61), stretch(0, 3.25, 40, 30)], { firstYearLoss: 0.1, yearlyLoss: 0.03 })!;
    expect(learned.first.mean).toBeCloseTo(0.11174781, 3);
    expect(learned.first.sd).toBeCloseTo(0.03230464, 3);
    expect(learned.later.mean).toBeCloseTo(0.0325498, 3);
    expect(learned.later.sd).toBeCloseTo(0.0120954, 3);
    expect(learned.wave?.chance).toBeLessThan(0.5);
  });

  it('a late wave is found in its winter and does not raise the loss of the others', () => {
    const calm = [
      stretch(0, 1.25, 100, 90),
      stretch(1.25, 2.25, 90, 88),
      stretch(2.25, 3.25, 88, 86),
      stretch(4.25, 5.25, 40, 39),
      stretch(5.25, 6.25, 39, 38),
    ];
    const wave = [...calm, stretch(3.25, 4.25, 86, 40)];
    const kind = { firstYearLoss: 0.1, yearlyLoss: 0.03 };
    const learned = learnLosses(wave, kind)!;
    expect(learned.wave).toMatchObject({ winter: 4 });
    expect(learned.wave!.chance).toBeGreaterThan(0.95);
    // 46 of 86 died where some 2 would have.
    expect(learned.wave!.took).toBeCloseTo(0.52, 1);
    expect(learned.later.mean).toBeCloseTo(learnLosses(calm, kind)!.later.mean, 2);
    expect(learnLosses(calm, kind)!.wave!.chance).toBeLessThan(0.2);
  });
});

describe('weak seedlings', () => {
  it('give the months by which half are dead that the closed form gives for the same counts (docs/model.md §7)', () => {
    const [up, weak, left] = [4000, 3200, 2000];
    const { rates } = learn(batch('w', 2027, { pollen: { tree: 'mill' }, counts: [...counts({ sown: 8000, cameUp: up, weak }), alive('2028-10', left)] }));
    // From April to October: six months.
    const closed = halfLifeFromSurvivors({ weakShare: weak / up, alive: left / up, atYears: 0.5, ordinarySurvival: 1, onset: 2 })!;
    const { after } = row(rates, 'halfDeadBy');
    expect(Math.abs(after.mean - closed)).toBeLessThan(4 * after.sd);
    expect(after.sd).toBeLessThan(0.1 * closed);
    expect(row(rates, 'halfDeadBy').puts).toMatchObject([{ path: ['crosses', 1, 'weakness', 'course'], value: { halfLife: { source: { kind: 'counted' } } } }]);
  });
});

describe('first fruit', () => {
  const seen = [
    { from: 4, to: 5, times: 3 },
    { from: 5, to: 6, times: 6 },
    { from: 6, to: 7, times: 5 },
    { from: 5, to: 8, times: 2 },
    { from: 7, to: Infinity, times: 8 },
    { from: 9, to: Infinity, times: 2 },
  ];
  const stated = { earliest: 4, half: { low: 5, likely: 7, high: 10 }, ninety: { low: 8, likely: 10, high: 14 } };
  const family = (pair: string) => ({ batch: pair, kind: 'pear', pair, first: 2030, year: 2036, seen, fruited: 16, waiting: 10 });

  it('from trees that bore, between looks or not yet, as an independent grid of NumPy 2.4 and SciPy 1.17.1 has it', () => {
    const { half, ninety, never } = learnFirstFruit({ familySpread: 0, neverFruits: 0.03 }, stated, [family('a')])!;
    expect(half.mean).toBeCloseTo(6.847, 1);
    expect(half.sd).toBeCloseTo(0.4145, 1);
    expect(Math.abs(half.mean - 6.847319)).toBeLessThan(0.01);
    expect(Math.abs(ninety.mean - 9.902989)).toBeLessThan(0.03);
    expect(Math.abs(ninety.sd - 0.929566)).toBeLessThan(0.03);
    expect(Math.abs(never.mean - 0.046538)).toBeLessThan(0.002);
  });

  it('one family, however large, narrows no further than families differ', () => {
    const many = (pair: string) => ({ ...family(pair), seen: seen.map((one) => ({ ...one, times: one.times * 40 })) });
    const one = learnFirstFruit({ familySpread: 0.15, neverFruits: 0.03 }, stated, [many('a')])!;
    const alike = learnFirstFruit({ familySpread: 0, neverFruits: 0.03 }, stated, [many('a')])!;
    // The pace multiplies the years after the third: their lognormal of 15 % is what is left.
    expect(one.half.sd).toBeGreaterThan(2.5 * alike.half.sd);
    const four = learnFirstFruit({ familySpread: 0.15, neverFruits: 0.03 }, stated, ['a', 'b', 'c', 'd'].map(many))!;
    expect(four.half.sd).toBeLessThan(one.half.sd);
  });

  it('trees that have not borne push the years back, as survivors alone would not', () => {
    const bore = seen.filter(({ to }) => to !== Infinity);
    const all = learnFirstFruit({ familySpread: 0.15, neverFruits: 0.03 }, stated, [family('a')])!;
    const survivors = learnFirstFruit({ familySpread: 0.15, neverFruits: 0.03 }, stated, [{ ...family('a'), seen: bore }])!;
    expect(all.half.mean).toBeGreaterThan(survivors.half.mean + 0.3);
    expect(all.never.mean).toBeGreaterThan(survivors.never.mean);
  });

  it('reads ages from the log: bloom 2027, up 2028, fruit 2034 is season 6; a gap between looks is a gap', () => {
    const { rates, leftOut } = learn(
      batch('a', 2027, {
        trees: [judged('1', 2034, 0, 1), { tag: '2', firstFruit: 2036, lookedUntil: 2033 }, { tag: '3', lookedUntil: 2036 }, { tag: '4', status: 'dead' }],
      }),
    );
    expect(row(rates, 'halfFruitBy').counts).toMatchObject({ hits: 2, of: 3, from: 2034, to: 2036 });
    expect(leftOut).toMatchObject([{ why: 'noLastLook', about: '4' }]);
  });

  it('a tree that bears sooner than the programme’s earliest lowers it', () => {
    const { rates } = learn(
      batch('a', 2027, {
        trees: [
          { tag: '1', firstFruit: 2030 },
          { tag: '2', lookedUntil: 2031 },
        ],
      }),
    );
    expect(row(rates, 'halfFruitBy').puts).toMatchObject([{ path: ['kinds', 0, 'firstFruit'], value: { earliest: 2 } }]);
  });
});
