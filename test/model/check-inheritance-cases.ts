import { shown, tree, type Document, type ShownDocument } from '../engine/programmes.ts';
import { first, second, type Case } from './check-flawless.ts';

type Needs = ShownDocument['rules'][number]['needs'];
const needing = (needs: Needs) => shown(2, { rules: [{ name: 'x', weight: 1, needs }] });
/** All kinds with four sets of which any pairs with any. */
const four = (d: Document): void => {
  for (const kind of d.kinds) Object.assign(kind, { ploidy: 4, inheritance: 'polysomic' });
};
const tested = (showed: number, of: number) => tree('b', { testCrosses: { red: { showed, of } } });

/** Ploidy, dosage, double reduction, test crosses, markers of origin. */
export const inheritanceCases: readonly Case[] = [
  {
    name: 'more copies than two sets hold',
    change: (d) => (d.trees[1]!.genes = { r: { copies: 3 } }),
    path: 'trees/1/genes/r/copies',
    says: /b cannot carry 3 copies: pear has 2 sets of chromosomes/,
  },
  {
    name: 'copies of a polyploid whose sets pair two by two',
    change: (d) => ((d.kinds[0]!.ploidy = 6), (d.trees[1]!.genes = { r: { copies: 3 } })),
    path: 'trees/1/genes/r/copies',
    says: /in pear the sets pair two by two, so a gene has at most 2/,
  },
  {
    name: 'a leaf test for copies that no kind has',
    change: (d) => (second(d).test = { gene: 'r', copies: 4 }),
    path: 'plans/0/generations/1/test/copies',
    says: /at least 4 copies, and no kind has more than 2/,
  },
  {
    name: 'a rule for copies that no kind has',
    change: (d) => (d.traits[0] = needing({ needs: 'all', of: [{ gene: 'r', copies: 3 }] })),
    path: 'traits/0/rules/0/needs/of/0/copies',
    says: /3 copies of a gene cannot be had: no kind has more than 2/,
  },
  {
    name: 'a rule for a total that no kind has, with four sets too',
    change: (d) => (four(d), (d.traits[0] = needing({ needs: 'total', genes: ['r'], copies: 5 }))),
    path: 'traits/0/rules/0/needs/copies',
    says: /5 copies cannot be had from 1 genes/,
  },
  {
    name: 'double reduction beyond its limit',
    change: (d) => (four(d), (d.genes![0]!.doubleReduction = 0.2)),
    path: 'genes/0/doubleReduction',
    says: /at most 1\/6 with 4 sets/,
  },
  {
    name: 'double reduction where two sets pair',
    change: (d) => (d.genes![0]!.doubleReduction = 0.1),
    path: 'genes/0/doubleReduction',
    says: /in no kind can any set pair with any/,
    note: true,
  },
  {
    name: 'two linked genes with different double reduction',
    change: (d) => {
      four(d);
      d.genes = [
        { id: 'r', name: 'r', group: 'one', position: 1 },
        { id: 's', name: 's', group: 'one', position: 9, doubleReduction: 0.1 },
      ];
    },
    path: 'genes/1/doubleReduction',
    says: /s and r lie in one linkage group and have different double reduction/,
  },
  {
    name: 'seedlings with other sets than their parents give',
    change: (d) => Object.assign(d.kinds[1]!, { ploidy: 4, inheritance: 'polysomic' }),
    path: 'crosses/1/gives',
    says: /pear with 2 × quince with 4 cannot give hybrid with 2 sets/,
  },
  {
    name: 'seedlings of another ploidy, with subgenomes that pair apart',
    change: (d) => (d.kinds[1]!.ploidy = 4),
    path: 'crosses/1/gives',
    says: /2 × 4 sets do not give 2/,
    note: true,
  },
  {
    name: 'more shown in test crosses than looked at',
    change: (d) => (d.trees[1] = tested(4, 3)),
    path: 'trees/1/testCrosses/red/showed',
    says: /cannot have shown it/,
  },
  {
    name: 'test crosses of a measured trait',
    change: (d) => (d.trees[1]!.testCrosses = { size: { showed: 0, of: 1 } }),
    path: 'trees/1/testCrosses/size',
    says: /is measured/,
  },
  {
    name: 'test crosses that rest on more genes than can be weighed',
    change: (d) => {
      const genes = Array.from({ length: 7 }, (_, i) => `g${String(i)}`);
      four(d);
      d.genes!.push(...genes.map((id) => ({ id, name: id })));
      d.traits[0] = shown(2, { rules: genes.map((gene) => ({ name: gene, weight: 1, needs: { needs: 'any', of: [{ gene, copies: 1 }] } })) });
      d.trees[0]!.seen = {};
      d.trees[1] = { ...tested(1, 3), genes: Object.fromEntries(genes.map((gene) => [gene, { frequency: 0.1 }])) };
    },
    path: 'trees/1/testCrosses/red',
    says: /rests on 7 unknown genes/,
  },
  {
    name: 'genes on more chromosomes than there are',
    change: (d) => ((d.genes = [...d.genes!, { id: 's', name: 's' }]), (d.origin = { chromosomes: 1, length: 70 })),
    path: 'origin/chromosomes',
    says: /lie on 2 chromosomes, and one set has 1/,
  },
  {
    name: 'a gene beyond the end of its chromosome',
    change: (d) => ((d.genes = [{ id: 'r', name: 'r', group: 'one', position: 90 }]), (d.origin = { chromosomes: 17, length: 70 })),
    path: 'origin/length',
    says: /r lies at 90 cM, beyond the end/,
    note: true,
  },
  {
    name: 'fathers of a generation that is not there',
    change: (d) => (first(d).pollen = [{ sires: 'moon', best: 1 }]),
    path: 'plans/0/generations/0/pollen/0/sires',
    says: /no generation “moon”/,
  },
];

export const soundInheritance: readonly Pick<Case, 'name' | 'change'>[] = [
  {
    name: 'four sets, copies and rules to match',
    change: (d) => (four(d), (d.trees[1]!.genes = { r: { copies: 4 } }), (d.traits[0] = needing({ needs: 'all', of: [{ gene: 'r', copies: 3 }] }))),
  },
  { name: 'double reduction within its limit', change: (d) => (four(d), (d.genes![0]!.doubleReduction = 0.15)) },
  { name: 'test crosses of two sets', change: (d) => (d.trees[1] = { ...tested(1, 3), genes: { r: { frequency: 0.2 } } }) },
  { name: 'origin followed on enough chromosomes', change: (d) => (d.origin = { chromosomes: 17, length: 70 }) },
];
