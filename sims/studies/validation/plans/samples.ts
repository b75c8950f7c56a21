import { at, Inputs, published, range, type Entry } from '../entries.ts';
import { mean, ratio, share, variance, type Sampled } from '../sampling/tally.ts';
import { brotherSister, futureOf, type Parts, type Shown } from './base.ts';
import { PlanCheck } from './plan-checks.ts';
import { chanceOneKept } from './season-luck.ts';

/** A figure of whole plans run by the engine. */
export interface PlanFigure {
  readonly id: string;
  readonly title: string;
  /** Which figure of the check. */
  readonly key: string;
  readonly expected: number;
  /** How far the expected value itself may be off. */
  readonly goodTo: number;
  readonly sampled: Sampled;
  readonly source: string;
  readonly mark: Entry['mark'];
}

type Many = (full: number) => number;
/** Figures of one check. */
type PlanSample = (check: PlanCheck, many: Many) => readonly PlanFigure[];

const count = (values: Int32Array, test: (value: number) => boolean): number => values.reduce((n, value) => n + Number(test(value)), 0);
const shares = (values: Int32Array, of: number): Float64Array => Float64Array.from(values, (n) => n / of);
const happened = (years: Int32Array): Sampled =>
  share(
    count(years, (year) => year >= 0),
    years.length,
  );
const figure = (check: PlanCheck, key: string, sampled: Sampled): PlanFigure => ({
  id: check.id,
  title: check.title,
  key,
  expected: check.expected(key),
  goodTo: check.goodTo,
  sampled,
  source: `own derivation: ${check.derivation}`,
  mark: 'derived',
});

const RUNS = 60_000;
const SEEDLINGS = 500;

const proven: PlanSample = (check, many) => {
  const parts = brotherSister(check.setup('seedlings'), 1, 1);
  const wanted = check.id === 'PC2' ? check.setup('wanted') : 1;
  const goal = { conditions: [{ type: 'shown' as const, trait: 'red', atLeast: 1 }], crops: 1, trees: wanted };
  return [figure(check, 'chance', happened(futureOf(check.id, { ...parts, rest: { goal } }, many(RUNS)).run('yearProven')))];
};

const traitOf = (check: PlanCheck, sharedSeason: number): Shown => ({
  canShow: check.setup('canShow'),
  seasonsShown: check.setup('seasonsShown'),
  falseShow: check.setup('falseShow'),
  sharedSeason,
});

const seen: PlanSample = (check, many) => {
  const seedlings = check.setup('seedlings');
  const columns = futureOf(check.id, { ...brotherSister(seedlings, check.setup('judged'), check.setup('needed')), trait: traitOf(check, 0) }, many(RUNS));
  return [
    figure(check, 'keptShare', mean(shares(columns.generation(1, 'kept'), seedlings))),
    figure(check, 'trueAmongKept', ratio(columns.run('trulyGood'), columns.run('proven'))),
    figure(check, 'chanceOneKept', happened(columns.run('yearProven'))),
  ];
};

const seenInCommonSeasons: PlanSample = (check, many) => {
  const of = (key: string): number => check.setup(key);
  const [seedlings, judged, needed, sharedSeason] = [of('seedlings'), of('judged'), of('needed'), of('sharedSeason')];
  const columns = futureOf(check.id, { ...brotherSister(seedlings, judged, needed), trait: traitOf(check, sharedSeason) }, many(RUNS));
  const sampled = happened(columns.run('yearProven'));
  const judging = { share: of('share'), canShow: of('canShow'), seasonsShown: of('seasonsShown'), falseShow: of('falseShow'), sharedSeason, judged, needed };
  return [
    figure(check, 'chanceOneKept', sampled),
    {
      ...figure(check, 'chanceOneKept', sampled),
      expected: chanceOneKept(judging, seedlings),
      goodTo: 0,
      source: 'own derivation: our own integral over the common seasons (season-luck.ts), to 1e-9',
    },
  ];
};

const fewNeighbours: PlanSample = (check, many) => {
  const pool = { id: 'air', name: 'air', background: { trees: check.setup('neighbours'), weight: 1, kind: 'pear', genes: { r: check.setup('frequency') } } };
  const goal = { conditions: [{ type: 'shown' as const, trait: 'red', atLeast: 1 }], crops: 1 };
  const generations = [{ seedlings: check.setup('seedlings'), pollen: 'open' as const, flowers: 0 }];
  const columns = futureOf(check.id, { generations, rest: { pools: [pool], defaultPool: 'air', goal } }, many(RUNS));
  return [figure(check, 'chance', happened(columns.run('yearProven')))];
};

/** 500 seedlings of one cross, followed to first fruit. */
const raised = (parts: Partial<Parts>, generation: Parts['generations'][number] = {}): Parts => ({
  years: 9,
  ...parts,
  generations: [{ seedlings: SEEDLINGS, judge: 0, keep: { howMany: 1 }, ...generation }],
});

const alive: PlanSample = (check, many) => {
  const kind = { firstFruit: { years: check.setup('firstFruit') }, firstYearLoss: check.setup('firstYearLoss'), yearlyLoss: check.setup('yearlyLoss') };
  return [figure(check, 'alive', mean(shares(futureOf(check.id, raised({ kind }), many(4000)).run('fruiting'), SEEDLINGS)))];
};

const grafted: PlanSample = (check, many) => {
  const of = (key: string): number => check.setup(key);
  const run = (rootBorne: number, month: number, runs: number) =>
    futureOf(
      `${check.id} ${String(rootBorne)} ${String(month)}`,
      raised(
        {
          kind: { firstFruit: { years: of('firstFruit') } },
          cross: { weakness: { share: 1, onset: of('onset'), course: { halfLife: of('halfLife') }, rootBorne: { chance: rootBorne } } },
          stock: { takeTender: of('take'), takeRipe: of('take'), ripeMonths: 12, yearlyLoss: of('stockLoss') },
        },
        month > 0 ? { rescue: { who: 'weak', month, stock: 'stock' } } : {},
      ),
      runs,
    );
  const total = (values: Int32Array): Sampled =>
    share(
      values.reduce((sum, n) => sum + n, 0),
      values.length * SEEDLINGS,
    );
  const rootBorne = run(1, of('month'), many(4000));
  return [
    figure(check, 'aliveAtGraft', mean(shares(rootBorne.generation(0, 'aliveAtGraft'), SEEDLINGS))),
    figure(check, 'rootBorne', mean(shares(rootBorne.run('fruiting'), SEEDLINGS))),
    figure(check, 'topBorne', total(run(0, of('month'), many(8000)).run('fruiting'))),
    figure(check, 'notGrafted', total(run(1, 0, many(8000)).run('fruiting'))),
  ];
};

const source: PlanSample = (check, many) => {
  const winters = check.setup('winters');
  const trees = [{ bearsFrom: 2000 + winters, yearlyLoss: check.setup('yearlyLoss') }];
  const years = futureOf(check.id, { generations: [{}], trees, years: winters + 1 }, many(RUNS)).generation(0, 'firstPollination');
  return [figure(check, 'alive', happened(years))];
};

const frosts: PlanSample = (check, many) => {
  const weather = { frostChance: check.setup('frost'), frostTakes: 1, springLuckSet: 0, springLuckGermination: 0 };
  const fruits = futureOf(check.id, { generations: [{ springs: check.setup('springs') }], years: 4, rest: { weather } }, many(RUNS)).run('fruits');
  return [
    figure(
      check,
      'bothLost',
      share(
        count(fruits, (n) => n === 0),
        fruits.length,
      ),
    ),
  ];
};

/** By the id of the check. PC4 asks for endless neighbours, which no plan can have. */
const samples: Readonly<Record<string, PlanSample>> = {
  PC1: proven,
  PC2: proven,
  'PC3-11': seen,
  'PC3-21': seen,
  'PC3-32': seen,
  'PC3s-11': seenInCommonSeasons,
  'PC3s-32': seenInCommonSeasons,
  PC4b: fewNeighbours,
  PC5: alive,
  PC7: grafted,
  PC8: source,
  PC9: frosts,
};

/** Parts of the model that have an exact answer, seen through a plan of one cross. */
const parts: Readonly<Record<string, (inputs: Inputs, many: Many) => readonly (Sampled | null)[]>> = {
  PC10: (inputs, many) => {
    const kind = { firstFruit: { earliest: inputs.number('earliest'), half: inputs.number('half'), ninety: inputs.number('ninety') } };
    const years = futureOf('PC10', { kind, generations: [{ judge: 0, keep: { howMany: 1 } }] }, many(200_000)).generation(0, 'firstFruit');
    return [
      null,
      null,
      ...range(3, 14).map((season) =>
        share(
          count(years, (year) => year - 1 === season),
          years.length,
        ),
      ),
    ];
  },
  PC13: (inputs, many) => [null, null, ...fruitSet('PC13', { low: inputs.number('low'), likely: inputs.number('likely'), high: inputs.number('high') }, many)],
  PC14: (inputs, many) => [null, null, at(fruitSet('PC14', { hits: inputs.number('hits'), of: inputs.number('of') }, many), 0)],
  PC16: (inputs, many) => {
    // Forty seedlings with a tree that has two copies: with one copy some show and some do not.
    const trees = [{ genes: { r: { frequency: inputs.number('frequency') } }, seen: { red: { showed: 0, seasons: 1 } } }, { genes: { r: { copies: 2 } } }];
    const showing = futureOf('PC16', { trees, generations: [{ seedlings: 40 }], years: 6 }, many(RUNS)).generation(0, 'showing');
    return [
      share(
        count(showing, (n) => n > 0),
        showing.length,
      ),
    ];
  },
};

/** Mean and variance of the share of flowers that set, over futures; what 10 000 flowers add to the variance is taken off. */
function fruitSet(word: string, set: NonNullable<Parts['cross']>['set'], many: Many): readonly [Sampled, Sampled] {
  const flowers = 10_000;
  const fruits = futureOf(word, { generations: [{ flowers, seedlings: 100_000 }], ...(set === undefined ? {} : { cross: { set } }), years: 4 }, many(RUNS)).run(
    'fruits',
  );
  const of = shares(fruits, flowers);
  const middle = of.reduce((sum, p) => sum + p, 0) / of.length;
  const { got, error } = variance(of);
  // Var = V + (m(1 − m) − V)/n.
  return [mean(of), { got: (got - (middle * (1 - middle)) / flowers) / (1 - 1 / flowers), error }];
}

/** Runs every plan that has an exact answer. @param many how many of the full number of futures to run */
export function planFigures(many: Many): PlanFigure[] {
  const whole = Object.entries(samples).flatMap(([id, sample]) => sample(new PlanCheck(id), many));
  const pieces = Object.entries(parts).flatMap(([id, sample]) => {
    const entry = published.find((one) => one.id === id);
    if (!entry) throw new RangeError(`There is no entry ${id}.`);
    return sample(new Inputs(entry), many).flatMap((sampled, i) =>
      sampled
        ? [
            {
              id,
              title: entry.title,
              key: `figure ${String(i + 1)}`,
              expected: at(entry.expected, i),
              goodTo: entry.tolerance ?? 0,
              sampled,
              source: entry.source,
              mark: entry.mark,
            },
          ]
        : [],
    );
  });
  return [...whole, ...pieces];
}
