import { cross, kind, picksOf, shown, tree } from '../engine/programmes.ts';
import type { Document, KindDocument } from '../engine/programmes.ts';
import { first, second, wide, type Case } from './check-flawless.ts';

/** Kinds c1 … cn, each with seasons between those of the one before and pears. */
const chain = (n: number): KindDocument[] =>
  Array.from({ length: n }, (_, i) =>
    kind({ id: `c${String(i + 1)}`, name: `c${String(i + 1)}`, firstFruit: { between: { seed: i === 0 ? 'pear' : `c${String(i)}`, pollen: 'pear' } } }),
  );
const onlyOwnPollen = (): Partial<Document> => ({ pools: [{ id: 'air', name: 'air', trees: [{ tree: 'a', weight: 1 }] }] });
const graded = (fruitsCut: number) => shown(2, { grade: { mean: 0.5, sd: 0.2, fruitsCut } });

/** What would run, but not as it was meant. */
export const gapCases: readonly Case[] = [
  {
    name: 'two entries for the same two kinds, none of them named',
    change: (d) => d.crosses!.push(cross({ id: 'hand', name: 'by hand' })),
    path: 'plans/0/generations/0/cross',
    says: /“pear × pear” and “by hand” are both for pear × pear: “pear × pear” is used/,
    note: true,
  },
  {
    name: 'two entries for the same two kinds, of which only the first is named',
    change: (d) => (d.crosses!.push(cross({ id: 'hand', name: 'by hand' })), (first(d).cross = 'within')),
    path: 'plans/0/generations/1/cross',
    says: /“pear × pear” and “by hand” are both for pear × pear/,
    note: true,
  },
  {
    name: 'a named entry of other kinds',
    change: (d) => (first(d).cross = 'wide'),
    path: 'plans/0/generations/0/cross',
    says: /names the cross entry “wide”, which is for pear × quince, but crosses pear × pear/,
  },
  {
    name: 'a named entry of the kinds the other way round',
    change: (d) => (d.crosses!.push(cross({ id: 'turned', name: 'turned', seed: 'quince', gives: 'hybrid' })), (wide(d).cross = 'turned')),
    path: 'plans/1/generations/0/cross',
    says: /which is for quince × pear, but crosses pear × quince/,
  },
  {
    name: 'a named entry of the kinds of some parents only',
    change: (d) => ((wide(d).cross = 'wide'), (wide(d).pollen = [{ tree: 'q' }, { tree: 'b' }])),
    path: 'plans/1/generations/0/cross',
    says: /which is for pear × quince, but crosses pear × pear/,
  },
  {
    name: 'a way of raising seed that the entry does not know',
    change: (d) => (wide(d).route = 'out'),
    path: 'plans/1/generations/0/route',
    says: /raises seed by “out”, which the cross entry “wide” does not know/,
  },
  {
    name: 'a tree crossed with itself that sets no fruit so',
    change: (d) => (first(d).pollen = [{ tree: 'a' }]),
    path: 'plans/0/generations/0/pollen',
    says: /crosses a with itself, which sets no fruit with its own pollen/,
  },
  {
    name: 'the same, though the picks are selfed too',
    change: (d) => ((d.kinds[1]!.selfCompatible = true), (first(d).pollen = [{ tree: 'a' }]), (first(d).selfs = true)),
    path: 'plans/0/generations/0/pollen',
    says: /sets no fruit with its own pollen/,
  },
  {
    name: 'a tree crossed with itself where selfs are left out',
    change: (d) => ((d.kinds[0]!.selfCompatible = true), (first(d).pollen = [{ tree: 'a' }])),
    path: 'plans/0/generations/0/pollen',
    says: /crosses a with itself, and a cross leaves selfs out/,
  },
  {
    name: 'no pollen in the air but its own',
    change: (d) => Object.assign(d, onlyOwnPollen()),
    path: 'plans/2/generations/0/pool',
    says: /all the pollen in “air” is a’s own/,
  },
  {
    name: 'pollen in the air that weighs nothing',
    change: (d) => ((d.pools![0]!.trees![0]!.weight = 0), (d.pools![0]!.background!.weight = 0)),
    path: 'plans/2/generations/0/pool',
    says: /“air” has no pollen in it/,
  },
  {
    name: 'pollen that never sets fruit',
    change: (d) => (d.kinds[1]!.fertilityAsPollenParent = 0),
    path: 'plans/1/generations/0/pollen',
    says: /relies on quince, whose pollen sets no fruit/,
  },
  {
    name: 'seed parents that never set fruit',
    change: (d) => {
      d.kinds[2]!.fertilityAsSeedParent = { low: 0, likely: 0, high: 0 };
      d.crosses!.push(cross({ id: 'forth', name: 'forth', seed: 'hybrid', gives: 'hybrid' }));
      Object.assign(d.plans[1]!.generations[1]!, { seedParents: picksOf('w1'), pollen: [{ tree: 'a' }] });
    },
    path: 'plans/1/generations/1/pollen',
    says: /relies on hybrid as seed parent, which sets no fruit/,
  },
  {
    name: 'kinds that follow others too deep',
    change: (d) => d.kinds.push(...chain(5)),
    path: 'kinds/7/firstFruit',
    says: /c5 follows kinds that follow others, more than 4 deep/,
  },
  {
    name: 'a kind that leads into a circle',
    change: (d) =>
      d.kinds.push(
        kind({ id: 'x', name: 'x', firstFruit: { between: { seed: 'y', pollen: 'pear' } } }),
        kind({ id: 'y', name: 'y', firstFruit: { between: { seed: 'y', pollen: 'pear' } } }),
      ),
    path: 'kinds/4/firstFruit',
    says: /y follows a kind that follows y itself/,
  },
  {
    name: 'a goal of a leaf test that a plan never makes',
    change: (d) => (d.goal.conditions = [{ type: 'test', gene: 'r' }]),
    path: 'plans/1',
    says: /no generation of which leaves are tested for r, and the goal asks/,
    note: true,
  },
  {
    name: 'fruit in part, where it is not said how much shows it',
    change: (d) => (second(d).keep.conditions = [{ type: 'shown', trait: 'red', grade: 'part', atLeast: 1 }]),
    path: 'plans/0/generations/1/keep/conditions/0/grade',
    says: /in part of the fruit, but it is not said how much/,
  },
  {
    name: 'fruit in part, of one that is cut',
    change: (d) => (
      (d.traits[0] = graded(1)),
      (d.goal.conditions = [{ type: 'shown', trait: 'red', grade: 'part', atLeast: 1 }]),
      Reflect.deleteProperty(wide(d), 'look')
    ),
    path: 'goal/conditions/0/grade',
    says: /in part of the fruit, but only one fruit is cut/,
  },
  {
    name: 'more at least than at most',
    change: (d) => (d.goal.conditions = [{ type: 'measured', trait: 'size', atLeast: 3, atMost: 2 }]),
    path: 'goal/conditions/0/atMost',
    says: /at least 3 and at most 2/,
  },
  {
    name: 'an index of crops that nobody judges',
    change: (d) => (first(d).keep = { howMany: 2, rank: 'index', weights: { size: 1 } }),
    path: 'plans/0/generations/0/keep/rank',
    says: /ranks by an index, but judges no crop/,
    note: true,
  },
  {
    name: 'a look at seedlings for what is told by cutting fruit',
    change: (d) => (d.traits[0] = graded(5)),
    path: 'plans/1/generations/0/look/trait',
    says: /looks at seedlings for red flesh, which is told by cutting fruit/,
    note: true,
  },
];

/** Near the flaws above, and right: nothing may be said. */
export const soundCases: readonly Pick<Case, 'name' | 'change'>[] = [
  { name: 'an entry named for its own kinds', change: (d) => (wide(d).cross = 'wide') },
  {
    name: 'two entries for the same two kinds, each named where it is used',
    change: (d) => {
      d.crosses!.push(cross({ id: 'hand', name: 'by hand' }));
      second(d).cross = 'within';
      for (const generation of [first(d), d.plans[2]!.generations[0]!]) generation.cross = 'hand';
    },
  },
  {
    name: 'a second entry for the same two kinds, named where it is meant; the others take the first',
    change: (d) => {
      d.crosses!.push(cross({ id: 'hand', name: 'by hand' }));
      first(d).cross = 'hand';
    },
  },
  {
    name: 'a tree that sets fruit with its own pollen, selfed too',
    change: (d) => ((d.kinds[0]!.selfCompatible = true), (first(d).pollen = [{ tree: 'a' }]), (first(d).selfs = true)),
  },
  { name: 'a tree among its own pollen parents', change: (d) => (first(d).pollen = [{ tree: 'a' }, { tree: 'b' }]) },
  {
    name: 'its own pollen in the air, with which it sets fruit',
    change: (d) => Object.assign(d, onlyOwnPollen(), { kinds: [{ ...d.kinds[0]!, selfCompatible: true }, ...d.kinds.slice(1)] }),
  },
  {
    name: 'pollen that never sets fruit, where stray pollen does',
    change: (d) => {
      d.kinds[1]!.fertilityAsPollenParent = 0;
      d.crosses![1]!.straySet = 0.01;
    },
  },
  { name: 'kinds that follow others four deep', change: (d) => d.kinds.push(...chain(4)) },
  {
    name: 'fruit in part, of several that are cut',
    change: (d) => (
      (d.traits[0] = graded(2)),
      Reflect.deleteProperty(wide(d), 'look'),
      (second(d).keep.conditions = [{ type: 'shown', trait: 'red', grade: 'part', atLeast: 1 }])
    ),
  },
  { name: 'a garden in which nothing stands', change: (d) => d.gardens!.push({ id: 'empty', name: 'empty', yearlyLoss: 0.01 }) },
  { name: 'a tree that no plan uses', change: (d) => d.trees.push(tree('unused')) },
];
