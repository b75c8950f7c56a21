import { describe, expect, it } from 'vitest';
import type { Needs } from '../../src/genetics/family.ts';
import { barrenOf } from '../../src/genetics/tray/fate.ts';
import { chanceAtAll } from '../../src/genetics/tray/needed.ts';
import { mixtureOf, SEEDLINGS, shareWanted } from '../../src/genetics/tray/tray.ts';
import { cross, kind, shown, tree, type Document, type KindDocument, type TreeDocument } from '../engine/programmes.ts';
import { programmeOf, trayIn, treeOf } from './tray-programmes.ts';

const needing = (gene: string, copies: number): Needs => ({ needs: 'all', of: [{ gene, copies }] });
const ruled = (needs: Needs) => shown(1, { rules: [{ name: 'rule', weight: 1, needs }] });
const manySets = (ploidy: number, changes: Partial<KindDocument> = {}) => kind({ ploidy, inheritance: 'polysomic', ...changes });
const sets = (ploidy: number, needs: Needs, trees: TreeDocument[], changes: Partial<Document> = {}) =>
  programmeOf({ kinds: [manySets(ploidy)], traits: [ruled(needs)], trees, ...changes });
const with_ = (id: string, copies: number) => tree(id, { genes: { r: { copies } } });

describe('more than two sets', () => {
  it('1 in 5 of a hexaploid that lacks two of six copies × one that has all: all six are needed (Haldane 1930, J. Genet. 22:359–372)', () => {
    const tray = trayIn(sets(6, needing('r', 6), [with_('a', 4), with_('b', 6)]));
    expect(tray.shares.able).toBeCloseTo(1 / 5, 14);
    // Every seedling has three copies from b.
    expect(tray.shares.without).toBe(0);
  });

  it('35 : 1 of a selfed tetraploid with two copies; 20.8 : 1 at α = 1/7 (Haldane 1930; entries.json)', () => {
    const selfed = (alpha: number) =>
      trayIn(sets(4, needing('r', 1), [with_('a', 2)], { genes: [{ id: 'r', name: 'r', doubleReduction: alpha }] }), 'a', 'a').shares;
    expect(selfed(0).able).toBeCloseTo(35 / 36, 14);
    expect(selfed(1 / 7).able / selfed(1 / 7).without).toBeCloseTo(1 / (3 / 14) ** 2 - 1, 10);
  });

  it('a gene with two sets that pair two by two is inherited as with two, whatever the ploidy', () => {
    const tray = trayIn(programmeOf({ kinds: [kind({ ploidy: 6 })], traits: [shown(2)], trees: [with_('a', 1)] }), 'a', 'a');
    expect(tray.shares).toMatchObject({ able: 0.25, carrier: 0.5, without: 0.25 });
  });

  it('hidden dosage: binomial copies of a tree that never showed it, weighed by its test cross (Bayes by hand)', () => {
    const q = 0.2;
    const choose = [1, 4, 6, 4, 1];
    const prior = choose.map((ways, n) => ways * q ** n * (1 - q) ** (4 - n));
    // Three copies are needed; the tester has four and gives every seedling two of them.
    const seen = (testCrosses: TreeDocument['testCrosses']) =>
      trayIn(
        sets(4, needing('r', 3), [
          tree('a', { genes: { r: { frequency: q } }, seen: { red: { showed: 0, seasons: 3 } }, ...(testCrosses ? { testCrosses } : {}) }),
          with_('b', 4),
        ]),
      );
    // It never showed: fewer than three copies. A seedling of a × b shows with at least one copy of a: 0, ½, 5/6 of the gametes.
    const gives = [0, 1 / 2, 5 / 6];
    const alone = prior.slice(0, 3);
    const share = (weights: readonly number[]) => weights.reduce((sum, w, n) => sum + w * gives[n]!, 0) / weights.reduce((a, b) => a + b, 0);
    expect(seen(undefined).shares.able).toBeCloseTo(share(alone), 12);
    const tested = alone.map((w, n) => w * gives[n]! ** 2 * (1 - gives[n]!) ** 3);
    expect(seen({ red: { showed: 2, of: 5 } }).shares.able).toBeCloseTo(share(tested), 12);
    expect(chanceAtAll(mixtureOf(seen({ red: { showed: 2, of: 5 } }), 'able'))).toBeCloseTo(1, 12);
  });

  it('a carrier’s odds halve with each test-cross seedling that does not show, with two sets too (Bayes; Murphy & Chase 1975, from memory)', () => {
    const of = (n: number) =>
      trayIn(
        programmeOf({
          traits: [shown(2)],
          trees: [
            tree('a', { genes: { r: { frequency: 0.5 } }, seen: { red: { showed: 0, seasons: 1 } }, testCrosses: { red: { showed: 0, of: n } } }),
            with_('b', 2),
          ],
        }),
      ).shares.able;
    // Carrier or not 2 : 1 before; of a carrier half of the seedlings show.
    for (const n of [1, 2, 5]) expect(of(n)).toBeCloseTo(0.5 * (2 / (2 + 2 ** n)), 12);
  });

  it('a triploid seed parent of two copies × a diploid without: eggs of two sets have one copy in 2 of 3, both in 1 of 3', () => {
    const programme = programmeOf({
      kinds: [manySets(3), kind({ id: 'two', name: 'two' }), manySets(3, { id: 'three', name: 'three' })],
      traits: [ruled(needing('r', 2))],
      trees: [with_('a', 2), tree('b', { kind: 'two', genes: { r: { copies: 0 } } })],
      crosses: [cross({ seed: 'pear', pollen: 'two', gives: 'three', usableSeedlings: 0.3 })],
    });
    const { shares } = trayIn(programme);
    expect(shares.useless).toBeCloseTo(0.7, 14);
    expect([shares.able, shares.carrier, shares.without]).toEqual([expect.closeTo(0.3 / 3, 14), expect.closeTo((0.3 * 2) / 3, 14), expect.closeTo(0, 14)]);
  });

  it('linked genes in repulsion with four sets: both from one gamete only by exchange between the two that carry them', () => {
    const r = (1 - Math.exp(-0.4)) / 2;
    const programme = sets(
      4,
      {
        needs: 'all',
        of: [
          { gene: 'u', copies: 1 },
          { gene: 'v', copies: 1 },
        ],
      },
      [tree('a', { genes: { u: { copies: 1, homologue: 'a' }, v: { copies: 1, homologue: 'b' } } }), tree('b')],
      {
        genes: [
          { id: 'u', name: 'u', group: 'one', position: 10 },
          { id: 'v', name: 'v', group: 'one', position: 30 },
        ],
      },
    );
    // Paired with each other (1 in 3) the two come together with r/2; apart, independently of each other.
    expect(trayIn(programme).shares.able).toBeCloseTo((1 / 3) * (r / 2) + (2 / 3) * (1 / 4), 12);
  });
});

describe('S alleles', () => {
  const cherries = (position: number, changes: Partial<Document> = {}) =>
    programmeOf({
      kinds: [kind({ pollenRejection: 'gametophytic' })],
      genes: [{ id: 'r', name: 'r', group: 'S', position }],
      incompatibility: { group: 'S', position: 0, alleles: [{ name: "S4'", like: 'S4', pollenWorks: false }] },
      traits: [ruled(needing('r', 1))],
      trees: [tree('a', { s: 'S1S3' }), tree('b', { s: 'S1S4', genes: { r: { copies: 1, homologue: 'b' } } })],
      ...changes,
    });

  it.each([2, 20, 60])('only what can be sired: a gene %i cM from the allele that works comes with 1 − r of the seedlings (Haldane 1919)', (cM) => {
    const r = (1 - Math.exp((-2 * cM) / 100)) / 2;
    expect(trayIn(cherries(cM)).shares.able).toBeCloseTo(1 - r, 14);
    // On the other homologue it comes with r; where it is not known on which, with half.
    const other = (genes: TreeDocument['genes']) =>
      trayIn(cherries(cM, { trees: [tree('a', { s: 'S1S3' }), tree('b', { s: 'S1S4', ...(genes ? { genes } : {}) })] })).shares.able;
    expect(other({ r: { copies: 1, homologue: 'a' } })).toBeCloseTo(r, 14);
    expect(other({ r: { copies: 1 } })).toBeCloseTo(0.5, 14);
    // All pollen works: half, as ever.
    expect(trayIn(cherries(cM), 'b', 'a').shares.able).toBe(0.5);
    // Of another group nothing follows.
    expect(trayIn(cherries(cM, { genes: [{ id: 'r', name: 'r', group: 'T', position: 0 }] })).shares.able).toBe(0.5);
  });

  it('a self-compatible allele sires all seedlings of a selfing: what stands with it is never lacking', () => {
    const programme = cherries(0, { trees: [tree('a', { s: "S3S4'", genes: { r: { copies: 1, homologue: 'b' } } })], traits: [ruled(needing('r', 2))] });
    const { shares } = trayIn(programme, 'a', 'a');
    expect([shares.able, shares.carrier, shares.without]).toEqual([0.5, 0.5, 0]);
  });

  it('tell barren pairs; what is not known counts as compatible', () => {
    const programme = cherries(5, { trees: [tree('a', { s: 'S1S3' }), tree('b', { s: 'S3S1' }), tree('c', { s: 'S1S?' }), tree('d')] });
    const why = (mother: string, father: string) => barrenOf(programme, treeOf(programme, mother), treeOf(programme, father))?.why;
    expect([why('a', 'b'), why('a', 'a'), why('a', 'c'), why('c', 'a'), why('a', 'd')]).toEqual(['rejects', 'rejects', undefined, undefined, undefined]);
  });
});

describe('what else comes up', () => {
  it('copies of the seed parent, what is of no use, what dies and males, each of what is left; all shares sum to 1', () => {
    const programme = programmeOf({
      kinds: [kind({ maleShare: 0.5 })],
      crosses: [cross({ motherClones: 0.2, usableSeedlings: 0.5, necrosis: { share: 0.25, months: 6 } })],
      traits: [shown(1)],
      trees: [with_('a', 1), with_('b', 0)],
    });
    const tray = trayIn(programme);
    const left = 0.8 * 0.5 * 0.75;
    expect(tray.shares).toEqual({
      copy: 0.2,
      useless: expect.closeTo(0.4, 14) as number,
      dies: 0.1,
      male: left / 2,
      able: expect.closeTo(left / 4, 14) as number,
      unable: 0,
      carrier: 0,
      without: expect.closeTo(left / 4, 14) as number,
    });
    expect(SEEDLINGS.reduce((sum, one) => sum + tray.shares[one], 0)).toBeCloseTo(1, 14);
    expect(shareWanted(tray.shares, 'notAble')).toBeCloseTo(left / 4, 14);
    expect(mixtureOf(tray, 'carries').map(({ share }) => share)).toEqual([expect.closeTo(left / 4, 14)]);
  });

  it('a gene that the pollen parent alone passes on comes from the father only', () => {
    const of = (mother: number, father: number) =>
      trayIn(programmeOf({ genes: [{ id: 'r', name: 'r', passes: 'pollen' }], traits: [shown(1)], trees: [with_('a', mother), with_('b', father)] })).shares
        .able;
    expect([of(2, 0), of(0, 2), of(2, 1)]).toEqual([0, 1, 0.5]);
  });

  it('sexes and odd ploidy are told', () => {
    const programme = programmeOf({ kinds: [kind({ ploidy: 3 })], trees: [tree('a', { sex: 'female' }), tree('b', { sex: 'male' }), tree('c')] });
    const why = (mother: string, father: string) => barrenOf(programme, treeOf(programme, mother), treeOf(programme, father))?.why;
    expect([why('a', 'b'), why('b', 'a'), why('a', 'a'), why('a', 'c')]).toEqual(['odd', 'sex', 'sex', 'odd']);
  });
});
