import {
  cross,
  document,
  generation,
  kind,
  measured,
  picksOf,
  plans,
  shown,
  stock,
  tree,
  type Document,
  type GenerationDocument,
} from '../engine/programmes.ts';

/** A programme without a flaw that uses every section, so that one change at a time can break it. */
export const flawless = (): Document =>
  document({
    traits: [shown(2), measured({ genes: [{ gene: 'r', half: 1 }] })],
    facts: [{ id: 'roots', name: 'in the roots', chance: 0.5 }],
    gardens: [{ id: 'home', name: 'home', yearlyLoss: 0.01 }],
    kinds: [
      kind(),
      kind({ id: 'quince', name: 'quince' }),
      kind({ id: 'hybrid', name: 'hybrid', firstFruit: { between: { seed: 'pear', pollen: 'quince' } } }),
    ],
    trees: [
      tree('a', { genes: { r: { frequency: 0.3 } }, values: { size: 1 }, seen: { red: { source: true } } }),
      tree('b', { gardens: ['home'] }),
      tree('q', { kind: 'quince' }),
    ],
    pools: [
      {
        id: 'air',
        name: 'air',
        trees: [{ tree: 'b', weight: 1 }],
        background: { trees: 5, weight: 1, kind: 'pear', genes: { r: 0.1 }, values: { size: 0 }, spread: { size: 0.5 } },
      },
    ],
    defaultPool: 'air',
    crosses: [
      cross({ routes: [{ id: 'out', name: 'taken out', germination: 0.8 }] }),
      cross({
        id: 'wide',
        name: 'wide',
        pollen: 'quince',
        gives: 'hybrid',
        weakness: { share: 0.9, onset: 2, course: { alive: 0.3, atYears: 5 }, rootBorne: { fact: 'roots' } },
      }),
      cross({ id: 'back', name: 'back', pollen: 'hybrid', gives: 'hybrid' }),
    ],
    stocks: [stock()],
    plans: plans(
      [
        generation('f1', 4, { judge: 0, keep: { howMany: 2 } }),
        generation('f2', 4, {
          seedParents: picksOf('f1'),
          pollen: picksOf('f1'),
          test: { gene: 'r', copies: 1 },
          route: 'out',
          keep: { howMany: 2, conditions: [{ type: 'test', gene: 'r' }] },
        }),
      ],
      [
        generation('w1', 4, {
          pollen: [{ tree: 'q' }],
          rescue: { who: 'weak', month: 3, stock: 'stock' },
          backup: { copies: 1, stock: 'stock', garden: 'home' },
          look: { trait: 'red' },
        }),
        generation('w2', 4, { seedParents: [{ tree: 'a' }], pollen: picksOf('w1'), after: 'w1', keep: { howMany: 1, rank: 'index', weights: { size: 1 } } }),
      ],
      [generation('o', 4, { pollen: 'open', flowers: 0 })],
    ),
  });

const first = (input: Document): GenerationDocument => input.plans[0]!.generations[0]!;
const second = (input: Document): GenerationDocument => input.plans[0]!.generations[1]!;
const wide = (input: Document): GenerationDocument => input.plans[1]!.generations[0]!;

interface Case {
  readonly name: string;
  readonly change: (input: Document) => unknown;
  readonly path: string;
  readonly says: RegExp;
  /** A note: it runs. */
  readonly note?: true;
}

export const cases: readonly Case[] = [
  // References.
  { name: 'an id used twice', change: (d) => d.trees.push(tree('a')), path: 'trees/3/id', says: /“a” is used twice/ },
  { name: 'a plan’s id used twice', change: (d) => (d.plans[1]!.id = 'plan-0'), path: 'plans/1/id', says: /used twice/ },
  { name: 'a generation’s id used twice', change: (d) => (second(d).id = 'f1'), path: 'plans/0/generations/1/id', says: /used twice in this plan/ },
  { name: 'a kind that is not there', change: (d) => (d.trees[1]!.kind = 'plum'), path: 'trees/1/kind', says: /no “plum” among the kinds/ },
  { name: 'a garden that is not there', change: (d) => (d.trees[1]!.gardens = ['moon']), path: 'trees/1/gardens/0', says: /no “moon” among the gardens/ },
  { name: 'a gene that is not there', change: (d) => (d.trees[1]!.genes = { z: { copies: 1 } }), path: 'trees/1/genes/z', says: /no “z” among the genes/ },
  { name: 'a value of a trait that is shown', change: (d) => (d.trees[1]!.values = { red: 1 }), path: 'trees/1/values/red', says: /is shown or not/ },
  {
    name: 'a sighting of a trait that is measured',
    change: (d) => (d.trees[1]!.seen = { size: { showed: 0, seasons: 2 } }),
    path: 'trees/1/seen/size',
    says: /is measured/,
  },
  {
    name: 'a goal of a trait that is not there',
    change: (d) => (d.goal.conditions = [{ type: 'shown', trait: 'blue', atLeast: 1 }]),
    path: 'goal/conditions/0/trait',
    says: /no “blue” among the traits/,
  },
  {
    name: 'a goal that asks for nothing',
    change: (d) => (d.goal.conditions = [{ type: 'shown', trait: 'red' }]),
    path: 'goal/conditions/0',
    says: /asks for nothing/,
  },
  {
    name: 'a rule on no gene',
    change: (d) => (d.traits[0] = shown(2, { rules: [{ name: 'x', weight: 1, needs: { needs: 'total', genes: ['z'], copies: 1 } }] })),
    path: 'traits/0/rules/0/needs/genes/0',
    says: /no “z” among the genes/,
  },
  {
    name: 'a gene of a measured trait',
    change: (d) => (d.traits[1] = measured({ genes: [{ gene: 'z', half: 1 }] })),
    path: 'traits/1/genes/0/gene',
    says: /no “z”/,
  },
  {
    name: 'a hybrid of no kind',
    change: (d) => (d.kinds[2]!.firstFruit = { between: { seed: 'pear', pollen: 'plum' } }),
    path: 'kinds/2/firstFruit/between/pollen',
    says: /no “plum”/,
  },
  { name: 'a pool of no tree', change: (d) => (d.pools![0]!.trees = [{ tree: 'z', weight: 1 }]), path: 'pools/0/trees/0/tree', says: /no “z” among the trees/ },
  { name: 'neighbours of no kind', change: (d) => (d.pools![0]!.background!.kind = 'plum'), path: 'pools/0/background/kind', says: /no “plum”/ },
  { name: 'no such pool', change: (d) => (d.defaultPool = 'sea'), path: 'defaultPool', says: /no “sea” among the pools/ },
  { name: 'a cross of no kind', change: (d) => (d.crosses![1]!.gives = 'plum'), path: 'crosses/1/gives', says: /no “plum”/ },
  {
    name: 'weakness by no fact',
    change: (d) => (d.crosses![1]!.weakness!.rootBorne = { fact: 'moon' }),
    path: 'crosses/1/weakness/rootBorne/fact',
    says: /no “moon” among the facts/,
  },
  {
    name: 'a parent that is not there',
    change: (d) => (first(d).seedParents = [{ tree: 'z' }]),
    path: 'plans/0/generations/0/seedParents/0/tree',
    says: /no “z” among the trees/,
  },
  {
    name: 'picks that do not exist yet',
    change: (d) => (first(d).seedParents = picksOf('f2')),
    path: 'plans/0/generations/0/seedParents/0/picksOf',
    says: /does not exist yet/,
  },
  {
    name: 'its own picks',
    change: (d) => (second(d).seedParents = picksOf('f2')),
    path: 'plans/0/generations/1/seedParents/0/picksOf',
    says: /does not exist yet/,
  },
  {
    name: 'picks of another plan',
    change: (d) => (second(d).pollen = picksOf('w1')),
    path: 'plans/0/generations/1/pollen/0/picksOf',
    says: /no generation “w1” in this plan/,
  },
  { name: 'a generation after one that comes later', change: (d) => (first(d).after = 'f2'), path: 'plans/0/generations/0/after', says: /comes later/ },
  { name: 'a route no entry knows', change: (d) => (second(d).route = 'magic'), path: 'plans/0/generations/1/route', says: /no cross entry knows “magic”/ },
  { name: 'no such stock', change: (d) => (wide(d).rescue!.stock = 'z'), path: 'plans/1/generations/0/rescue/stock', says: /no “z” among the stocks/ },
  {
    name: 'backups in no garden',
    change: (d) => (wide(d).backup!.garden = 'z'),
    path: 'plans/1/generations/0/backup/garden',
    says: /no “z” among the gardens/,
  },
  { name: 'a look at a measured trait', change: (d) => (wide(d).look = { trait: 'size' }), path: 'plans/1/generations/0/look/trait', says: /is measured/ },
  {
    name: 'a weight on a shown trait',
    change: (d) => (first(d).keep.weights = { red: 1 }),
    path: 'plans/0/generations/0/keep/weights/red',
    says: /is shown or not/,
  },
  // Biology.
  {
    name: 'seasons out of order',
    change: (d) => (d.kinds[1]!.firstFruit = { earliest: 6, half: 5, ninety: 9 }),
    path: 'kinds/1/firstFruit/half',
    says: /must not come before/,
  },
  {
    name: 'nine in ten no later than half',
    change: (d) => (d.kinds[1]!.firstFruit = { earliest: 4, half: 6, ninety: 6 }),
    path: 'kinds/1/firstFruit/ninety',
    says: /must come after/,
  },
  {
    name: 'kinds that follow each other',
    change: (d) => (d.kinds[0]!.firstFruit = { between: { seed: 'hybrid', pollen: 'quince' } }),
    path: 'kinds/0/firstFruit',
    says: /follows a kind that follows pear itself/,
  },
  {
    name: 'more copies than genes hold',
    change: (d) => (d.traits[0] = shown(2, { rules: [{ name: 'x', weight: 1, needs: { needs: 'total', genes: ['r'], copies: 3 } }] })),
    path: 'traits/0/rules/0/needs/copies',
    says: /3 copies cannot be had from 1 genes/,
  },
  {
    name: 'repeatability below heritability',
    change: (d) => (d.traits[1] = measured({ repeatability: 0.4, heritability: 0.5 })),
    path: 'traits/1/repeatability',
    says: /cannot be below heritability/,
    note: true,
  },
  {
    name: 'a value out of reach',
    change: (d) => (d.trees[1]!.values = { size: 12 }),
    path: 'trees/1/values/size',
    says: /out of reach.*−?-?8 to 8/,
    note: true,
  },
  {
    name: 'more seeds than at most',
    change: (d) => Object.assign(d.crosses![0]!, { seedsPerFruit: 4, seedsAtMost: 4 }),
    path: 'crosses/0/seedsPerFruit',
    says: /mean of 4 seeds cannot be had with at most 4/,
  },
  {
    name: 'more alive than ordinary losses leave',
    change: (d) => (d.kinds[2]!.yearlyLoss = 0.5),
    path: 'crosses/1/weakness/course/alive',
    says: /More were alive/,
  },
  {
    name: 'fewer alive than the sound ones',
    change: (d) => (d.crosses![1]!.weakness!.share = 0.5),
    path: 'crosses/1/weakness/course/alive',
    says: /Fewer were alive/,
  },
  {
    name: 'counted before the onset',
    change: (d) => (d.crosses![1]!.weakness!.onset = 60),
    path: 'crosses/1/weakness/course/atYears',
    says: /before the weakness shows/,
  },
  {
    name: 'shown in more seasons than watched',
    change: (d) => (d.trees[1]!.seen = { red: { showed: 4, seasons: 3 } }),
    path: 'trees/1/seen/red/showed',
    says: /more seasons than it was watched/,
  },
  {
    name: 'a source that cannot carry it',
    change: (d) => (d.trees[0]!.genes = { r: { copies: 1 } }),
    path: 'trees/0/seen/red',
    says: /a is the source of red flesh, but cannot carry it if “2 needed”/,
  },
  // Crosses.
  {
    name: 'a pair without an entry',
    change: (d) => d.crosses!.splice(2, 1),
    path: 'plans/1/generations/1',
    says: /pear × hybrid, and there is no cross entry/,
  },
  {
    name: 'a reciprocal without an entry',
    change: (d) => (wide(d).reciprocal = true),
    path: 'plans/1/generations/0',
    says: /quince × pear, and there is no cross entry/,
  },
  {
    name: 'stray pollen without an entry',
    change: (d) => ((d.crosses![0]!.straySet = 0.01), (d.pools![0]!.background!.kind = 'hybrid'), d.crosses!.splice(2, 1), d.plans.splice(1, 2)),
    path: 'plans/0/generations/0',
    says: /stray pollen of hybrid on pear/,
  },
  // Plans.
  { name: 'years that end before they begin', change: (d) => (d.lastYear = 1999), path: 'lastYear', says: /before the first spring/ },
  { name: 'too many years', change: (d) => (d.lastYear = 2151), path: 'lastYear', says: /more than 150 years/ },
  { name: 'a letter used twice', change: (d) => (d.plans[1]!.mark = 'A'), path: 'plans/1/mark', says: /Two plans carry the letter A/ },
  {
    name: 'too many rounds',
    change: (d) => (d.plans[0]!.generations = Array.from({ length: 4 }, (_, g) => ({ ...first(d), id: `g${String(g)}`, repeat: 20 }))),
    path: 'plans/0/generations',
    says: /80 rounds/,
  },
  {
    name: 'open pollination without pollen',
    change: (d) => Reflect.deleteProperty(d, 'defaultPool'),
    path: 'plans/2/generations/0/pool',
    says: /no pollen is in the air/,
  },
  { name: 'a cross of no flowers', change: (d) => (first(d).flowers = 0), path: 'plans/0/generations/0/flowers', says: /crosses no flowers/ },
  {
    name: 'a self of a kind that cannot',
    change: (d) => (first(d).pollen = 'self'),
    path: 'plans/0/generations/0/pollen',
    says: /selfs pear, which sets no fruit/,
  },
  { name: 'a self of picks that cannot', change: (d) => (second(d).pollen = 'self'), path: 'plans/0/generations/1/pollen', says: /sets no fruit/ },
  {
    name: 'selfs of picks of no such kind',
    change: (d) => (second(d).selfs = true),
    path: 'plans/0/generations/1/selfs',
    says: /no kind sets fruit with its own pollen/,
    note: true,
  },
  {
    name: 'a graft of the weak before they can be told',
    change: (d) => (wide(d).rescue!.month = 1),
    path: 'plans/1/generations/0/rescue/month',
    says: /cannot be told at 1 months, before 2/,
  },
  {
    name: 'the same where the parents are picks',
    change: (d) => {
      d.crosses![2]!.weakness = { share: 0.5, onset: 4, course: { halfLife: 5 }, rootBorne: { fact: 'roots' } };
      d.plans[1]!.generations[1]!.rescue = { who: 'weak', month: 3, stock: 'stock' };
    },
    path: 'plans/1/generations/1/rescue/month',
    says: /cannot be told at 3 months, before 4/,
  },
  {
    name: 'an index of nothing',
    change: (d) => (second(d).keep = { howMany: 1, rank: 'index' }),
    path: 'plans/0/generations/1/keep/weights',
    says: /nothing has a weight/,
    note: true,
  },
  {
    name: 'a keep rule without judging',
    change: (d) => (first(d).keep.conditions = [{ type: 'shown', trait: 'red', atLeast: 0 }]),
    path: 'plans/0/generations/0/judge',
    says: /judges no crop/,
  },
  {
    name: 'more crops than are judged',
    change: (d) => (second(d).keep.conditions = [{ type: 'shown', trait: 'red', atLeast: 2 }]),
    path: 'plans/0/generations/1/keep/conditions/0/atLeast',
    says: /asks for 2 of 1 crops/,
  },
  {
    name: 'a test that is not made',
    change: (d) => Reflect.deleteProperty(second(d), 'test'),
    path: 'plans/0/generations/1/keep/conditions/0/gene',
    says: /does not make/,
  },
  {
    name: 'picks crossed with each other, of which one is kept',
    change: (d) => (first(d).keep.howMany = 1),
    path: 'plans/0/generations/1/pollen',
    says: /only one is kept/,
    note: true,
  },
  { name: 'a plan that never judges', change: (d) => (d.plans[2]!.generations[0]!.judge = 0), path: 'plans/2', says: /never judges a crop/, note: true },
  {
    name: 'a goal of more crops than it takes',
    change: (d) => (d.goal.conditions = [{ type: 'shown', trait: 'red', atLeast: 3 }]),
    path: 'goal/conditions/0/atLeast',
    says: /asks for 3 of 1 crops/,
  },
  { name: 'years in which nothing can fruit', change: (d) => (d.lastYear = 2005), path: 'lastYear', says: /no seedling can fruit by 2005/, note: true },
];
