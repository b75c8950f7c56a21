import { describe, expect, it } from 'vitest';
import { courseOf } from '../../src/genetics/tray/course.ts';
import { familyValue } from '../../src/genetics/tray/measured.ts';
import type { MeasuredTrait } from '../../src/model/programme.ts';
import { cross, kind, measured, shown, tree, type Document, type TreeDocument } from '../engine/programmes.ts';
import { programmeOf, treeOf } from './tray-programmes.ts';

describe('measured traits', () => {
  const value = (changes: Partial<Document>, mother = 'a', father = 'b') => {
    const programme = programmeOf({ traits: [shown(2), measured()], ...changes });
    const trait = programme.traits.find((one) => one.type === 'measured') as MeasuredTrait;
    return familyValue(programme, trait, treeOf(programme, mother), treeOf(programme, father));
  };

  it('average their parents; within the family V_G/2, less one part in 32·2 − 1 where copies are placed for certain (Bulmer 1980, from memory; docs/model.md §3)', () => {
    const of = value({ trees: [tree('a', { values: { size: 1 } }), tree('b', { values: { size: -1 } })] });
    expect(of.mean).toBe(0);
    expect(of.between).toBe(0);
    // 36 and 28 of 64 copies: 2·36·28/(64·63) of the loci mixed in each.
    expect(of.within ** 2).toBeCloseTo((2 * 36 * 28) / (64 * 63), 14);
  });

  it('of unknown parents: within V_G/2, mean V_G/4 for each; selfed V_G, for it is the tree’s own value', () => {
    const cross = value({ trees: [tree('a'), tree('b')] });
    expect(cross.within ** 2).toBeCloseTo(0.5, 14);
    expect(cross.between ** 2).toBeCloseTo(0.5, 14);
    const selfed = value({ trees: [tree('a')] }, 'a', 'a');
    expect([selfed.within ** 2, selfed.between ** 2]).toEqual([expect.closeTo(0.5, 14), expect.closeTo(1, 14)]);
  });

  it('at the end of the scale nothing varies, and values beyond it count as the end', () => {
    const of = value({ trees: [tree('a', { values: { size: 8 } }), tree('b', { values: { size: 100 } })] });
    expect([of.mean, of.within]).toEqual([8, 0]);
  });

  it('a gene of −a, d, +a in the F2: mean d/2, variance a²/2 + d²/4 (Falconer & Mackay 1996 ch. 8, p = ½)', () => {
    const [a, d] = [3, 1];
    const single = (trees: TreeDocument[]) =>
      value(
        { genes: [{ id: 'r', name: 'r' }], traits: [shown(2), measured({ heritability: 0, genes: [{ gene: 'r', half: a, dominance: d }] })], trees },
        'a',
        'a',
      );
    const of = single([tree('a', { genes: { r: { copies: 1 } }, values: { size: d } })]);
    expect(of.mean).toBeCloseTo(d / 2, 14);
    expect(of.within ** 2).toBeCloseTo(a ** 2 / 2 + d ** 2 / 4, 14);
    expect(of.between).toBe(0);
    // Not known whether it has one copy: by Hardy–Weinberg at ½ the mean of a selfed family is −a, d/2 or a.
    const unknown = single([tree('a', { genes: { r: { frequency: 0.5 } }, values: { size: 0 } })]);
    expect(unknown.between ** 2).toBeCloseTo((2 * a ** 2 + 2 * (d / 2) ** 2) / 4 - (d / 4) ** 2, 14);
  });

  it('selfing takes off half of what full inbreeding costs: F = ½ (Falconer & Mackay 1996 ch. 14)', () => {
    const of = value({ traits: [shown(2), measured({ inbreeding: 2 })], trees: [tree('a', { values: { size: 1 } })] }, 'a', 'a');
    expect([of.mean, of.lost]).toEqual([0, 1]);
  });
});

describe('course of the seed', () => {
  const kinds = [
    kind({ firstFruit: { earliest: 6, half: 8, ninety: 10 } }),
    kind({ id: 'quince', name: 'quince', firstFruit: { years: 3 }, fertilityAsPollenParent: 0.5 }),
    kind({ id: 'hybrid', name: 'hybrid', firstFruit: { between: { seed: 'pear', pollen: 'quince' } }, neverFruits: 0.05 }),
  ];
  const programme = programmeOf({
    kinds,
    facts: [{ id: 'roots', name: 'sits in the roots', chance: { low: 0.2, likely: 0.5, high: 0.8, source: { kind: 'guess', note: '' } } }],
    trees: [tree('a', { bearsFrom: 2004 }), tree('b', { kind: 'quince' })],
    crosses: [
      cross({ straySet: 0.018, set: 0.2 }),
      cross({
        id: 'wide',
        seed: 'pear',
        pollen: 'quince',
        gives: 'hybrid',
        set: 0.4,
        straySet: 0.012,
        emptyFruit: 0.3,
        dormancy: 1,
        weakness: { share: 0.9, onset: 2, course: { halfLife: 5 }, rootBorne: { fact: 'roots' } },
      }),
    ],
  });
  const of = (mother: string, father: string) => courseOf(programme, treeOf(programme, mother), treeOf(programme, father));

  it('a hybrid’s seasons follow its parents’, the seed parent’s two to one (docs/model.md §8), from the first spring both bear', () => {
    // (2·6 + 3)/3 = 5, (2·8 + 3)/3 = 6⅓, (2·10 + 3)/3 = 7⅔: in whole seasons 5, 7 and 8.
    expect(of('a', 'b')).toMatchObject({ seasons: { earliest: 5, half: 7, ninety: 8 }, pollinated: 2004, toGermination: 2, never: 0.05, emptyFruit: 0.3 });
    expect(of('a', 'b')!.weak).toEqual({ share: 0.9, onset: 2, course: { halfLife: 5 }, inRoots: 0.5 });
  });

  it('counts strays among the fruit: what the wanted pollen left, the pollen parent’s fertility in it (docs/model.md §6)', () => {
    expect(of('a', 'b')!.stray).toBeCloseTo((0.012 * 0.8) / (0.2 + 0.012 * 0.8), 14);
    expect(of('a', 'a')).toMatchObject({ seasons: { earliest: 6, half: 8, ninety: 10 }, weak: null, selfSterile: true });
  });

  it('says what the S alleles come to', () => {
    const cherry = kind({ pollenRejection: 'gametophytic' });
    const s = programmeOf({
      kinds: [cherry],
      incompatibility: { halfSet: 0.5 },
      trees: [tree('a', { s: 'S1S3' }), tree('b', { s: 'S3S4' }), tree('c', { s: 'S1S3' }), tree('d')],
      crosses: [cross({ set: 0.2, straySet: 0.012 })],
    });
    const pair = (mother: string, father: string) => courseOf(s, treeOf(s, mother), treeOf(s, father))!;
    expect(pair('a', 'b').pollen).toEqual({
      share: 0.5,
      set: 0.5,
      grains: ['S4'],
      seedlings: [
        { alleles: 'S1S4', share: 0.5 },
        { alleles: 'S3S4', share: 0.5 },
      ],
      takeOwn: 0,
      linked: [],
    });
    expect(pair('a', 'b').stray).toBeCloseTo((0.012 * 0.9) / (0.1 + 0.012 * 0.9), 14);
    expect(pair('a', 'd').pollen).toMatchObject({ share: 1, set: 1, seedlings: [] });
    expect(pair('d', 'd')).toMatchObject({ pollen: null, selfSterile: true });
  });

  it('is nothing without an entry for that order of kinds', () => expect(of('b', 'a')).toBeNull());
});
