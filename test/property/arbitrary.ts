import fc from 'fast-check';
import { FORMAT, VERSION } from '../../src/model/programme.ts';
import type { Document, GenerationDocument, KindDocument, PlanDocument, TreeDocument } from '../engine/programmes.ts';
import { START, real, whole, one, maybe, estimate, mostly, share, defined, kindIds, geneIds, kind, cross, shown, measured, tree } from './arbitrary-biology.ts';

interface Stage {
  readonly trees: readonly TreeDocument[];
  readonly kinds: readonly KindDocument[];
  readonly withSize: boolean;
  readonly pool: boolean;
  readonly gardens: readonly string[];
  readonly crops: number;
}

type Parents = GenerationDocument['seedParents'];

function generation(g: number, { trees, kinds, withSize, pool, gardens, crops }: Stage): fc.Arbitrary<GenerationDocument> {
  const named = trees.map(({ id }) => ({ tree: id }));
  const parents: Parents = [...named, ...Array.from({ length: g }, (_, i) => ({ picksOf: `gen${String(i)}` }))];
  const some: fc.Arbitrary<Parents> = fc.oneof<fc.Arbitrary<Parents>[]>(
    fc.subarray(parents, { minLength: 1, maxLength: Math.min(3, parents.length) }),
    g > 0 ? fc.constant([{ picksOf: `gen${String(g - 1)}` }]) : fc.constant(named.slice(0, 1)),
  );
  const selfing = trees.every((tree) => kinds.some(({ id, selfCompatible }) => id === tree.kind && selfCompatible === true));
  const pollen: fc.Arbitrary<GenerationDocument['pollen']> = fc.oneof<fc.Arbitrary<GenerationDocument['pollen']>[]>(
    some,
    ...(pool ? [one('open' as const)] : []),
    ...(selfing ? [one('self' as const)] : []),
  );
  const rescue = fc.record({
    who: one('none' as const, 'weak' as const, 'every' as const),
    month: one(0.5, 3, 8, 12, 20),
    stock: one('stock'),
    scions: whole(1, 3),
    keepOwnRoots: fc.boolean(),
  });
  const goOn = fc.record({
    when: one('firstPick' as const, 'enough' as const, 'allJudged' as const),
    count: maybe(whole(1, 3)),
    atLatest: maybe(whole(1, 15)),
  });
  /** A cross of one tree with itself is refused by the check: that is selfing, and asked for by its own word. */
  const sets = ({ seedParents, pollen: from }: Pick<GenerationDocument, 'seedParents' | 'pollen'>): boolean => {
    const trees = new Set([...seedParents, ...(Array.isArray(from) ? from : [])].map((parent) => JSON.stringify(parent)));
    return !Array.isArray(from) || trees.size > 1 || [...trees].some((parent) => parent.includes('picksOf'));
  };
  return one(0, 1, crops, crops).chain((judge) => {
    const conditions: fc.Arbitrary<NonNullable<GenerationDocument['keep']['conditions']>> =
      judge === 0
        ? fc.constant([])
        : fc.array(
            fc.oneof(
              fc.record({
                type: one('shown' as const),
                trait: one('red'),
                grade: one('any' as const, 'full' as const, 'part' as const),
                atLeast: whole(0, judge),
              }),
              fc.record({ type: one('shown' as const), trait: one('red'), atMost: whole(0, judge) }),
              ...(withSize ? [fc.record({ type: one('measured' as const), trait: one('size'), atLeast: real(-25, 20) })] : []),
            ),
            { maxLength: 2 },
          );
    return fc
      .record({
        seedParents: some,
        pollen,
        reciprocal: fc.boolean(),
        selfs: fc.boolean(),
        cover: one(0, 0.3, 1),
        flowers: whole(1, 80),
        seedlings: whole(1, 25),
        springs: whole(1, 4),
        after: g > 0 ? maybe(one(...Array.from({ length: g }, (_, i) => `gen${String(i)}`))) : fc.constant(undefined),
        garden: gardens.length > 0 ? maybe(one(...gardens)) : fc.constant(undefined),
        repeat: g > 0 ? one(1, 1, 1, 2) : fc.constant(1),
        test: maybe(fc.record({ gene: one(...geneIds), copies: whole(1, 2), falsePositive: real(0, 0.3), falseNegative: real(0, 0.3), cull: fc.boolean() })),
        look: maybe(fc.record({ trait: one('red'), keepIfShown: fc.boolean(), falsePositive: real(0, 0.3), falseNegative: real(0, 0.3) })),
        rescue: maybe(rescue),
        keep: fc
          .record({
            conditions,
            rank: one('first' as const, 'earliest' as const, 'index' as const),
            howMany: whole(1, 4),
            males: one(0, 0, 2),
            bestLeft: fc.boolean(),
          })
          .map((keep) => ({ ...keep, weights: withSize ? { size: 1 } : {} })),
        goOn: maybe(goOn.map(defined)),
        backup: maybe(
          fc.record({ copies: whole(1, 3), stock: one('stock'), garden: gardens.length > 0 ? maybe(one(...gardens)) : fc.constant(undefined) }).map(defined),
        ),
      })
      .filter(sets)
      .map((rest) => defined({ id: `gen${String(g)}`, name: `generation ${String(g)}`, judge, ...rest }));
  });
}

const sizes = fc
  .record({
    kinds: whole(1, 3),
    trees: whole(1, 4),
    gardens: whole(0, 2),
    plans: whole(1, 2),
    withSize: fc.boolean(),
    pool: fc.boolean(),
    fact: fc.boolean(),
    crops: whole(1, 3),
  })
  // A tree that stands alone needs pollen from the air.
  .map((size) => ({ ...size, pool: size.pool || size.trees === 1 }));

/** Programmes of every shape that the form allows, small enough to run in a blink. About eight in ten pass the check. */
export const programmes: fc.Arbitrary<Document> = sizes.chain(
  ({ kinds: kindCount, trees: treeCount, gardens: gardenCount, plans: planCount, withSize, pool, fact, crops }) => {
    const kinds = kindIds.slice(0, kindCount);
    const gardens = ['home', 'far'].slice(0, gardenCount);
    const facts = fact ? ['f'] : [];
    return fc.tuple(fc.tuple(...kinds.map((_, k) => kind(k))), shown, measured).chain(([kindList, red, size]) =>
      fc.tuple(...Array.from({ length: treeCount }, (_, t) => tree(t, kinds, gardens, withSize, size.mean))).chain((trees) => {
        const stage = { trees, kinds: kindList, withSize, pool, gardens, crops };
        const plan = (p: number): fc.Arbitrary<PlanDocument> =>
          fc
            .record({
              generations: whole(1, 3).chain((n) => fc.tuple(...Array.from({ length: n }, (_, g) => generation(g, stage)))),
              clearDiscards: fc.boolean(),
            })
            .map(({ generations, clearDiscards }) => ({
              id: `p${String(p)}`,
              mark: p === 0 ? ('A' as const) : ('B' as const),
              name: `plan ${String(p)}`,
              clearDiscards,
              generations,
            }));
        return fc
          .record({
            plans: fc.tuple(...Array.from({ length: planCount }, (_, p) => plan(p))),
            crosses: fc.tuple(...kinds.flatMap((seed) => kinds.map((pollen) => cross(seed, pollen, kinds, facts)))),
            limits: fc.record({
              places: one(0, 1.5, 6, 30, 60, 500, 500, 500),
              bloomDays: one(1, 5),
              hoursADay: one(2, 8),
              flowersAnHour: one(0, 5, 20, 40, 40, 40, 40, 40),
            }),
            weather: fc.record({ frostChance: mostly(0, 0.4), frostTakes: share(), springLuckSet: one(0, 0.1, 0.6), springLuckGermination: one(0, 0.1) }),
            guessesAsTheyStand: fc.boolean(),
            goalLeast: one(0, 1, 1, crops),
            goalTrees: one(1, 1, 2, 3),
            breedsTrue: one(false, false, true),
            byValue: fc.boolean(),
            lastYear: fc.oneof({ weight: 5, arbitrary: whole(START + 15, START + 30) }, { weight: 1, arbitrary: whole(START, START + 15) }),
            background: maybe(
              fc.record({ trees: whole(1, 5), weight: real(0.1, 3), kind: one(...kinds), genes: fc.record({ g0: share() }, { requiredKeys: [] }) }),
            ),
            positions: fc.tuple(real(0, 100), real(0, 100)),
            grouped: fc.boolean(),
            sets: one(2, 2, 2, 4, 6),
            doubleReduction: one(0, 0.1),
            passes: one('both' as const, 'both' as const, 'both' as const, 'pollen' as const, 'seed' as const),
            origin: fc.oneof(
              { weight: 3, arbitrary: fc.constant(undefined) },
              { weight: 1, arbitrary: fc.record({ chromosomes: whole(3, 8), length: real(30, 120) }) },
            ),
            stock: fc.record({
              yearlyLoss: mostly(0, 0.1),
              place: one(0.1, 0.5, 1),
              precocity: estimate(0.5, 1.5),
              takeTender: mostly(0.4, 1),
              takeRipe: mostly(0.5, 1),
              ripeMonths: one(1.5, 12),
              fertility: estimate(0.5, 3),
            }),
          })
          .map((c): Document => {
            const group = (at: number) => (c.grouped ? { group: 'one', position: c.positions[at]! } : {});
            return defined({
              format: FORMAT,
              version: VERSION,
              title: 'Any',
              startYear: START,
              lastYear: c.lastYear,
              shuffleWord: 'any',
              runs: 100,
              guessesAsTheyStand: c.guessesAsTheyStand,
              goal: {
                conditions: [
                  { type: 'shown' as const, trait: 'red', ...(c.goalLeast > 0 ? { atLeast: c.goalLeast } : { atMost: 0 }) },
                  ...(withSize && c.byValue ? [{ type: 'measured' as const, trait: 'size', atLeast: size.mean }] : []),
                ],
                crops,
                trees: c.goalTrees,
                breedsTrue: c.breedsTrue,
              },
              limits: c.limits,
              hours: { perFlower: 0.1, perFruit: 0.1, perSeedling: 0.5, perGraft: 0.3, perTest: 0.1, perLook: 0.1, perPlaceYear: 1, perJudging: 0.2 },
              money: { perSeedling: 2, perPlaceYear: 1 },
              weather: c.weather,
              facts: facts.map((id) => ({ id, name: id, chance: 0.5 })),
              genes: [
                { id: 'g0', name: 'g0', doubleReduction: c.doubleReduction, ...group(0) },
                { id: 'g1', name: 'g1', doubleReduction: c.doubleReduction, ...group(1) },
                { id: 'g2', name: 'g2', passes: c.passes },
              ],
              incompatibility: { group: 'one', position: 20, halfSet: 0.5, alleles: [{ name: "S4'", like: 'S4', pollenWorks: false }] },
              traits: [red, ...(withSize ? [size] : [])],
              kinds: kindList.map((each) => (c.sets > 2 ? { ...each, ploidy: c.sets, inheritance: 'polysomic' as const } : each)),
              origin: c.origin,
              gardens: gardens.map((id) => ({ id, name: id, yearlyLoss: 0.05 })),
              trees,
              pools: pool
                ? [defined({ id: 'air', name: 'air', trees: trees.slice(0, 2).map(({ id }) => ({ tree: id, weight: 1 })), background: c.background })]
                : [],
              defaultPool: pool ? 'air' : undefined,
              crosses: c.crosses,
              stocks: [{ id: 'stock', name: 'stock', ...c.stock }],
              plans: c.plans,
            });
          });
      }),
    );
  },
);
