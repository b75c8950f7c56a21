import { first, second, wide, type Case } from './check-flawless.ts';

/** Crosses and plans. */
export const planCases: readonly Case[] = [
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
    says: /cannot be told before 2 months/,
  },
  {
    name: 'the same where the parents are picks',
    change: (d) => {
      d.crosses![2]!.weakness = { share: 0.5, onset: 4, course: { halfLife: 5 }, rootBorne: { fact: 'roots' } };
      d.plans[1]!.generations[1]!.rescue = { who: 'weak', month: 3, stock: 'stock' };
    },
    path: 'plans/1/generations/1/rescue/month',
    says: /cannot be told before 4 months/,
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
