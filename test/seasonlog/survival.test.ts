import { describe, expect, it } from 'vitest';
import { placeBatches } from '../../src/seasonlog/batches.ts';
import { learnRates } from '../../src/seasonlog/learned.ts';
import { stretchesOf } from '../../src/seasonlog/survival-facts.ts';
import { myCounts } from '../../src/text/log-learned.ts';
import { alive, batch, counts, withLog, type BatchDocument, type LoggedDocument } from './orchard.ts';

const BLOOM = 2027;
/** First spring of the seedlings. */
const UP = BLOOM + 1;
const stretches = (...batches: BatchDocument[]) => {
  const programme = withLog(batches);
  return stretchesOf(programme, placeBatches(programme).placed);
};
const learn = (...batches: BatchDocument[]) => learnRates(withLog(batches), myCounts).rates;
const trees = (number: number, changes: Partial<LoggedDocument> = {}): LoggedDocument[] =>
  Array.from({ length: number }, (_, i) => ({ tag: `${JSON.stringify(changes)} ${String(i)}`.slice(0, 60), ...changes }));
const dead = (year?: number): Partial<LoggedDocument> => ({ status: 'dead', ...(year === undefined ? {} : { statusSince: year }) });
const culled = (year?: number): Partial<LoggedDocument> => ({ status: 'culled', ...(year === undefined ? {} : { statusSince: year }) });

describe('winter losses from single trees', () => {
  it('are those of a published life table', () => {
    // Remission of 21 patients on 6-mercaptopurine, weeks; + censored. Source: Freireich et al. (1963) Blood 21:699, as in Kalbfleisch & Prentice (2002)
    // table 1.1 and Collett (2015) example 2.2; product-limit estimates at 6, 7, 10, 13, 16, 22, 23 as printed there. One week stands for one year.
    const ended = [6, 6, 6, 7, 10, 13, 16, 22, 23];
    const censored = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
    const listed = [...ended.flatMap((time) => trees(1, dead(UP + time))), ...censored.flatMap((time) => trees(1, culled(UP + time + 1)))];
    const { facts } = stretches(batch('a', BLOOM, { counts: counts({ cameUp: 21 }), trees: listed }));
    const by = (time: number): number => facts.filter(({ until }) => until < time + 0.5).reduce((left, one) => (left * one.alive) / one.atRisk, 1);
    expect([6, 7, 10, 13, 16, 22, 23].map((time) => by(time).toFixed(3))).toEqual(['0.857', '0.807', '0.753', '0.690', '0.627', '0.538', '0.448']);
  });

  it('teach what counts of the living in each summer teach', () => {
    const counted = batch('a', BLOOM, { counts: [...counts({ cameUp: 40 }), alive('2029', 34), alive('2030', 33), alive('2031', 31)] });
    const listed = batch('a', BLOOM, {
      counts: counts({ cameUp: 40 }),
      trees: [...trees(6, dead(2029)), ...trees(1, dead(2030)), ...trees(2, dead(2031)), ...trees(31, { lookedUntil: 2031 })],
    });
    for (const what of ['firstWinter', 'laterWinters'] as const) {
      const [one, other] = [counted, listed].map((each) => learn(each).find((rate) => rate.what === what));
      expect(other?.after.mean).toBeCloseTo(one!.after.mean, 12);
      expect(other?.counts).toMatchObject({ hits: one!.counts.hits, of: one!.counts.of });
    }
  });

  it('keep a wave that came late apart from the usual losses', () => {
    // 40 come up, one a winter dies, and 20 in the fourth.
    const lost = [1, 1, 1, 20, 1, 0];
    const listed = [...lost.flatMap((number, i) => trees(number, dead(UP + 1 + i))), ...trees(16, { lookedUntil: UP + 6 })];
    const later = learn(batch('a', BLOOM, { counts: counts({ cameUp: 40 }), trees: listed })).find(({ what }) => what === 'laterWinters');
    expect(later?.wave?.winter).toBe(4);
    expect(later!.wave!.chance).toBeGreaterThan(0.9);
    // 20 of the 37 that stood: 54 %.
    expect(Math.abs(later!.wave!.took - 20 / 37)).toBeLessThan(0.1);
    expect(later!.after.mean).toBeLessThan(0.06);
  });

  it('put a tree that died, nobody knows when, at any of the years, and know nothing of one culled so', () => {
    const some = (...more: LoggedDocument[]) => batch('a', BLOOM, { counts: counts({ cameUp: 10 }), trees: [...trees(9, { lookedUntil: 2031 }), ...more] });
    const rate = (...more: LoggedDocument[]) => learn(some(...more)).find(({ what }) => what === 'laterWinters')!.after.mean;
    const [undated, gone, whole] = [rate(...trees(1, dead())), rate(...trees(1, culled())), rate(...trees(1, { lookedUntil: 2031 }))];
    expect(undated).toBeGreaterThan(gone);
    expect(gone).toBeGreaterThan(whole);
    expect(stretches(some(...trees(1, dead()))).facts).toContainEqual(expect.objectContaining({ age: 0, atRisk: 1, alive: 0 }));
  });

  it('say nothing where trees were listed that had lived already, until they were all there at planting', () => {
    const listed = [...trees(2, dead(2031)), ...trees(28, { lookedUntil: 2032 })];
    expect(stretches(batch('a', BLOOM, { counts: counts({ cameUp: 50 }), trees: listed })).facts).toEqual([]);
    expect(stretches(batch('a', BLOOM, { trees: listed })).facts).toEqual([]);
    const planted = { stage: 'planted', count: 30, when: '2030-03' } as const;
    const { facts } = stretches(batch('a', BLOOM, { counts: [...counts({ cameUp: 50 }), planted], trees: listed }));
    expect(facts.map(({ atRisk, alive: left }) => [atRisk, left])).toEqual([
      [30, 30],
      [30, 28],
      [28, 28],
    ]);
    expect(facts[0]!.age).toBeGreaterThan(1.5);
  });

  it('leave to an event what it took, and no more than died', () => {
    const listed = [...trees(5, dead(2030)), ...trees(15, { lookedUntil: 2031 })];
    const struck = (lost: number) =>
      stretches(batch('a', BLOOM, { counts: counts({ cameUp: 20 }), trees: listed, events: [{ what: 'rodents', when: '2030-02', lost }] }));
    expect(struck(4).facts.map(({ atRisk, alive: left }) => [atRisk, left])).toContainEqual([16, 15]);
    expect(struck(4).leftOut).toMatchObject([{ why: 'eventLoss', about: '4 seedlings' }]);
    expect(struck(9).facts.every(({ atRisk, alive: left }) => atRisk === left)).toBe(true);
  });

  it('give way to counts of the living, so that no tree counts twice', () => {
    const listed = [...trees(6, dead(2029)), ...trees(34, { lookedUntil: 2031 })];
    const { facts } = stretches(batch('a', BLOOM, { counts: [...counts({ cameUp: 40 }), alive('2029', 34)], trees: listed }));
    expect(facts.map(({ atRisk, alive: left }) => [atRisk, left])).toEqual([[40, 34]]);
  });
});

describe('open pollen', () => {
  it('is of the seed parent’s kind unless it is said: its counts teach', () => {
    const seedlings = counts({ sown: 40, cameUp: 30 });
    const [open, mixed, said] = (['open', 'mixed', { tree: 'bell' }] as const).map((pollen) =>
      learn(batch('a', BLOOM, { pollen, counts: seedlings })).find(({ what }) => what === 'germination'),
    );
    expect(open?.after).toEqual(said?.after);
    expect(mixed?.after).toEqual(said?.after);
    expect(placeBatches(withLog([batch('a', BLOOM, { pollen: 'unknown', counts: seedlings })])).leftOut).toMatchObject([{ why: 'noKind' }]);
  });
});

describe('weak seedlings that nobody counted as such', () => {
  it('are told by those that died', () => {
    const died = batch('a', BLOOM, { pollen: { tree: 'mill' }, counts: [...counts({ cameUp: 60 }), alive('2028-09', 12)] });
    const rates = learn(died);
    const share = rates.find(({ what }) => what === 'weakShare');
    expect(share?.counts).toMatchObject({ hits: 48, of: 60 });
    expect(share!.after.low).toBeGreaterThan(0.7);
    // Where they were counted, that count speaks, once.
    const counted = learn({ ...died, counts: [...died.counts!, { stage: 'weak', count: 50 }] }).filter(({ what }) => what === 'weakShare');
    expect(counted.map(({ counts: of }) => of.hits)).toEqual([50]);
  });
});
