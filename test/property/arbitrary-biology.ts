import fc from 'fast-check';
import type { CrossDocument, KindDocument, MeasuredDocument, ShownDocument, TreeDocument } from '../engine/programmes.ts';

export const START = 2000;
const round = (x: number) => Math.round(x * 1000) / 1000;
export const real = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map(round);
export const whole = (min: number, max: number) => fc.integer({ min, max });
export const one = <T>(...values: readonly T[]) => fc.constantFrom(...values);
export const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

/** An estimate between bounds in any of its forms; counts only for shares. */
export function estimate(min: number, max: number, counts = false) {
  const forms = [
    real(min, max),
    fc.tuple(real(min, max), real(min, max), real(min, max)).map((three) => {
      const [low, likely, high] = [...three].sort((a, b) => a - b);
      return { low: low!, likely: likely!, high: high! };
    }),
    fc.array(fc.record({ value: real(min, max), weight: real(0.1, 5) }), { minLength: 2, maxLength: 3 }).map((oneOf) => ({ oneOf })),
  ];
  const counted = fc.tuple(whole(0, 40), whole(0, 40), whole(1, 4)).map(([hits, misses, lots]) => ({ hits, of: Math.max(1, hits + misses), lots }));
  return counts ? fc.oneof(...forms, counted) : fc.oneof(...forms);
}
/** Mostly a kind rate, so that most programmes get somewhere; now and then any share at all. */
export const mostly = (from: number, to: number) => fc.oneof({ weight: 5, arbitrary: estimate(from, to) }, { weight: 1, arbitrary: share() });
export const share = (most = 1) => (most === 1 ? estimate(0, 1, true) : estimate(0, most));

/** Drops keys without a value, so that defaults are read. */
type Defined<T> = { [K in keyof T]: Exclude<T[K], undefined> };
export const defined = <T extends object>(entry: T): Defined<T> =>
  Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined)) as Defined<T>;

const mostlyFlowers = fc.oneof({ weight: 5, arbitrary: estimate(8, 60) }, { weight: 1, arbitrary: estimate(0, 60) });
export const kindIds = ['k0', 'k1', 'k2'];
export const geneIds = ['g0', 'g1', 'g2'];

export function kind(k: number): fc.Arbitrary<KindDocument> {
  const seasons = fc.tuple(whole(1, 4), whole(0, 3), whole(1, 4)).map(([earliest, to, on]) => ({ earliest, half: earliest + to, ninety: earliest + to + on }));
  const years = estimate(1, 6).map((value) => ({ years: value }));
  const between = fc.constant({ between: { seed: 'k0', pollen: 'k0' } });
  return fc
    .record({
      firstFruit: k > 0 ? fc.oneof(years, seasons, between) : fc.oneof(years, seasons),
      familySpread: real(0, 0.4),
      neverFruits: share(0.2),
      regularity: mostly(0.5, 1),
      firstYearLoss: mostly(0, 0.2),
      yearlyLoss: mostly(0, 0.1),
      frostShare: share(),
      flowers: mostlyFlowers,
      yearsToFullBloom: whole(1, 5),
      fertilityAsSeedParent: estimate(0.3, 2),
      fertilityAsPollenParent: estimate(0.3, 2),
      selfCompatible: fc.boolean(),
      nurseryShare: one(0, 0.05, 0.3),
      plantOutAge: whole(1, 3),
      waitYears: whole(0, 2),
      pollenRejection: one('none' as const, 'none' as const, 'gametophytic' as const),
      maleShare: one<KindDocument['maleShare']>(0, 0, 0, 0, 0, 0, 0, { low: 0.3, likely: 0.5, high: 0.6 }),
    })
    .map((rest) => ({ id: kindIds[k]!, name: `kind ${String(k)}`, ...rest }));
}

export function cross(seed: string, pollen: string, gives: readonly string[], facts: readonly string[]): fc.Arbitrary<CrossDocument> {
  const course = fc.oneof(
    estimate(0.05, 24).map((halfLife) => ({ halfLife })),
    fc.record({ alive: real(0.1, 0.6), atYears: real(3, 10) }),
  );
  const root =
    facts.length > 0
      ? fc.oneof(
          share().map((chance) => ({ chance })),
          one(...facts).map((fact) => ({ fact })),
        )
      : share().map((chance) => ({ chance }));
  return fc
    .record({
      gives: one(...gives),
      set: mostly(0.3, 1),
      straySet: one(0, 0, 0.01, 0.2),
      emptyFruit: mostly(0, 0.3),
      seeds: one([1, 1], [1.5, 4], [3, 10]),
      germination: mostly(0.4, 1),
      dormancy: one(0, 0, 0, 1, 2),
      weakness: fc.option(fc.record({ share: share(), onset: estimate(0, 8), course, rootBorne: root }), { nil: undefined, freq: 1 }),
      route: fc.boolean(),
      motherClones: one<CrossDocument['motherClones']>(0, 0, 0, 0, 0, 0.3, { low: 0.2, likely: 0.6, high: 1 }),
      usableSeedlings: one(undefined, undefined, undefined, 0.5),
      necrosis: fc.oneof({ weight: 5, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: fc.record({ share: share(), months: estimate(1, 80) }) }),
    })
    .map(({ seeds, route, ...rest }) =>
      defined({
        id: `${seed}-${pollen}`,
        name: `${seed} × ${pollen}`,
        seed,
        pollen,
        seedsPerFruit: seeds[0]!,
        seedsAtMost: seeds[1]!,
        ...(route ? { routes: [{ id: 'out', name: 'taken out', germination: 0.8, hoursPerSeed: 0.1 }] } : {}),
        ...rest,
      }),
    );
}

const needs = fc.oneof(
  fc.array(fc.record({ gene: one(...geneIds), copies: whole(1, 2) }), { minLength: 1, maxLength: 2 }).map((of) => ({ needs: 'all' as const, of })),
  fc.array(fc.record({ gene: one(...geneIds), copies: whole(1, 2) }), { minLength: 1, maxLength: 2 }).map((of) => ({ needs: 'any' as const, of })),
  fc.subarray(geneIds, { minLength: 1 }).chain((genes) => whole(1, 2 * genes.length).map((copies) => ({ needs: 'total' as const, genes, copies }))),
);
export const shown: fc.Arbitrary<ShownDocument> = fc
  .record({
    rules: fc.array(fc.record({ weight: real(0.5, 3), needs }), { minLength: 1, maxLength: 2 }),
    canShow: mostly(0.5, 1),
    seasonsShown: mostly(0.5, 1),
    falseShow: share(0.2),
    sharedSeason: one(0, 0.5, 0.9),
    grade: maybe(fc.record({ mean: real(0.1, 1), sd: real(0, 0.4), fruitsCut: whole(1, 6) })),
    emptyIfShown: share(0.5),
  })
  .map(({ rules, ...rest }) =>
    defined({ type: 'shown', id: 'red', name: 'red', ...rest, rules: rules.map((rule, r) => ({ name: `rule ${String(r)}`, ...rule })) }),
  );
export const measured: fc.Arbitrary<MeasuredDocument> = fc
  .record({
    mean: real(-20, 20),
    sd: estimate(0.5, 4),
    heritability: share(),
    repeatability: share(),
    travels: share(),
    yearShare: share(),
    inbreeding: estimate(0, 3),
    genes: fc.array(fc.record({ gene: one(...geneIds), half: real(-2, 2), dominance: real(-1, 1) }), { maxLength: 1 }),
  })
  .map((rest) => ({ type: 'measured', id: 'size', name: 'size', unit: 'cm', ...rest }));

export function tree(t: number, kinds: readonly string[], gardens: readonly string[], withSize: boolean, mean: number): fc.Arbitrary<TreeDocument> {
  const state = fc.oneof(
    one(0, 1, 2, 2).map((copies) => ({ copies })),
    one('a' as const, 'b' as const).map((homologue) => ({ copies: 1, homologue })),
    share().map((frequency) => ({ frequency })),
  );
  const seen = fc.tuple(whole(0, 4), whole(1, 6)).map(([showed, more]) => ({ red: { showed, seasons: showed + more } }));
  return fc
    .record({
      kind: one(...kinds),
      flowers: mostlyFlowers,
      copies: whole(1, 3),
      gardens: fc.subarray([...gardens]),
      yearlyLoss: mostly(0, 0.04),
      bearsFrom: maybe(whole(START, START + 4)),
      genes: fc.record({ g0: state, g1: state, g2: state }, { requiredKeys: ['g0', 'g1'] }),
      values: withSize ? maybe(real(mean - 1, mean + 1).map((size) => ({ size }))) : fc.constant(undefined),
      seen: maybe(seen),
      s: one(undefined, undefined, 'S1S2', 'S2S3', "S1S4'", 'S1S?', 'S5'),
      testCrosses: maybe(whole(0, 3).chain((showed) => whole(Math.max(1, showed), 5).map((of) => ({ red: { showed, of } })))),
      // The first two are asked for most: with one sex alone few plans would set.
      sex: t < 2 ? one('both' as const) : one('both' as const, 'both' as const, 'male' as const, 'female' as const),
    })
    .map((rest) => defined({ id: `t${String(t)}`, name: `tree ${String(t)}`, ...rest }));
}
