import fc from 'fast-check';
import { kinds } from '../../src/catalogue/catalogue.ts';
import { EMPTY, MEASURES, type Draft } from '../../src/start/answers.ts';
import { knownRules } from '../../src/start/inheritance.ts';

const kindIds = kinds.map(({ id }) => id);
const letters = fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim().length > 0);
const name = (most: string) => fc.oneof(letters, fc.constantFrom(most, '×', '  x ', 'A long name of forty letters, no less ok', 'Ä–Ö 3'));
const kind = fc.constantFrom(...kindIds);

const count = fc.oneof(
  fc.constant({}),
  fc
    .tuple(fc.integer({ min: 1, max: 5000 }), fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 1, max: 12 }))
    .map(([of, share, springs]) => ({ hits: Math.round(of * share), of, springs })),
);

/** Drafts without troubles: every question could be left. Each answer may be missing where a filled-in one stands for it. */
export const drafts: fc.Arbitrary<Draft> = fc
  .record({
    tree: fc.record(
      {
        showed: fc.integer({ min: 1, max: 200 }),
        seasons: fc.integer({ min: 1, max: 200 }),
        fruit: fc.constantFrom('all' as const, 'part' as const),
        standing: fc.integer({ min: 1, max: 50 }),
      },
      { requiredKeys: [] },
    ),
    named: fc.record({ name: name('Old Hedgerow'), kind, trait: name('red flesh') }),
    partners: fc.array(
      fc.record({
        name: name('Saffron Bell'),
        kind: fc.oneof(kind, fc.constant(undefined)),
        shows: fc.constantFrom('no' as const, 'yes' as const, 'unknown' as const),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    way: fc.record(
      { how: fc.constantFrom('both' as const, 'hand' as const, 'open' as const), neighbours: fc.integer({ min: 1, max: 2000 }) },
      { requiredKeys: [] },
    ),
    means: fc.record(
      {
        places: fc.integer({ min: 4, max: 3000 }),
        hours: fc.double({ min: 5, max: 5000, noNaN: true }),
        bloomDays: fc.double({ min: 1, max: 60, noNaN: true }),
        hoursADay: fc.double({ min: 0.5, max: 24, noNaN: true }),
        firstSpring: fc.integer({ min: 1500, max: 2900 }),
      },
      { requiredKeys: [] },
    ),
    years: fc.option(fc.integer({ min: 3, max: 60 }), { nil: undefined }),
    counts: fc.record({ set: count, germination: count, weak: count }),
    weakMonths: fc.option(fc.double({ min: 0.5, max: 120, noNaN: true }), { nil: undefined }),
    rule: fc.nat(),
    goal: fc.record(
      {
        crops: fc.integer({ min: 1, max: 20 }),
        trees: fc.integer({ min: 1, max: 20 }),
        measure: fc.constantFrom(...Object.keys(MEASURES)),
        ordinary: fc.double({ min: 0, max: 1e6, noNaN: true }),
        least: fc.double({ min: 0, max: 1e6, noNaN: true }),
        own: fc.double({ min: 0, max: 1e6, noNaN: true }),
      },
      { requiredKeys: [] },
    ),
    shows: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
  })
  .map(({ tree, named, partners, way, means, years, counts, weakMonths, rule, goal, shows }): Draft => {
    const { showed, seasons } = tree;
    const rules = ['unknown', 'one', 'two', ...knownRules(named.kind).map(({ id }) => id)];
    const crops = goal.crops;
    return {
      ...EMPTY,
      tree: {
        ...tree,
        ...named,
        ...(showed !== undefined && seasons !== undefined ? { showed: Math.min(showed, seasons), seasons: Math.max(showed, seasons) } : {}),
      },
      partners: partners.map(({ kind: own, ...partner }, place) => ({
        ...partner,
        name: `${partner.name.slice(0, 38)}${String(place)}`,
        ...(own === undefined ? {} : { kind: own }),
      })),
      way,
      means: { ...means, ...(years === undefined ? {} : { lastYear: (means.firstSpring ?? 2027) + years }) },
      counts,
      known: { rule: rules[rule % rules.length] ?? 'unknown', ...(weakMonths === undefined ? {} : { weakMonths }) },
      goal: { ...goal, ...(shows === undefined ? {} : { shows: Math.max(1, Math.round(shows * (crops ?? 3))) }) },
    };
  });
