import { describe, expect, it } from 'vitest';
import { unbrokenPiece } from '../../src/genetics/drag.ts';
import { placeMarkers } from '../../src/genetics/markers.ts';
import { kindAt, lengthAround, originShares } from '../../src/genetics/origin.ts';
import { frameOf } from '../../src/engine/frame.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { runsCsv } from '../../src/results/writers/runs-csv.ts';
import { planOutlook } from '../../src/statistics/outlook.ts';
import { entries, originWords } from '../../src/text/diary.ts';
import { expectMean, expectShare } from './agreement.ts';
import { Nursery } from './genomes.ts';
import { cross, document, generation, kind, picksOf, plans, read, shown, tree, type Document } from './programmes.ts';

const LENGTH = 100;
const haldane = (cM: number) => (1 - Math.exp((-2 * cM) / 100)) / 2;
const PEAR = 0;
const QUINCE = 1;
const HYBRID = 2;
/** The quince (tree b) carries gene r twice, in the middle of a chromosome of 100 cM; the pear (tree a) does not. */
const wide = (changes: Partial<Document> = {}): Document =>
  document({
    genes: [{ id: 'r', name: 'red', group: 'one', position: LENGTH / 2 }],
    traits: [shown(1)],
    kinds: [kind(), kind({ id: 'quince', name: 'quince' }), kind({ id: 'hybrid', name: 'hybrid' })],
    trees: [tree('a'), tree('b', { kind: 'quince', genes: { r: { copies: 2 } } })],
    crosses: [cross({ id: 'wide', pollen: 'quince', gives: 'hybrid' }), cross({ id: 'back', pollen: 'hybrid', gives: 'hybrid' })],
    origin: { chromosomes: 17, length: LENGTH },
    plans: plans([generation('g', 1)]),
    ...changes,
  });

/** Crosses back to the pear t times, taking the first seedling with the gene (or any): the handle of the last. */
function back(nursery: Nursery, t: number, selected: boolean): number {
  let hybrid = nursery.breed(0, 1, HYBRID);
  for (let round = 0; round < t; round += 1) {
    const before = hybrid;
    do hybrid = nursery.breed(0, before, HYBRID);
    while (selected && nursery.stand.copies(hybrid, 0) === 0);
  }
  return hybrid;
}

describe('markers of origin', () => {
  it('are 32, half on chromosomes with genes, one at each gene; what they stand for is the whole genome', () => {
    for (const genes of [
      new Map([[0, [50]]]),
      new Map([
        [0, [3, 4, 65]],
        [1, [10]],
      ]),
      new Map<number, number[]>(),
    ])
      for (const count of [2, 8, 17, 32]) {
        const markers = placeMarkers(new Array<number>(count).fill(70), genes);
        expect(markers).toHaveLength(32);
        expect(markers.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(count * 70, 9);
        for (const [chromosome, places] of genes)
          for (const place of places) expect(markers.some((marker) => marker.chromosome === chromosome && marker.position === place)).toBe(true);
        if (genes.size > 0 && count > genes.size) expect(markers.filter(({ chromosome }) => genes.has(chromosome))).toHaveLength(16);
        for (const [m, { chromosome, position, length }] of markers.entries()) {
          expect(length).toBeGreaterThan(0);
          const next = markers[m + 1];
          if (next?.chromosome === chromosome) expect(next.position).toBeGreaterThan(position);
        }
      }
  });
});

describe('recovery of the recurrent parent', () => {
  it.each([0, 1, 2, 3])('is 1 − ½^(t+1) on average after %i back-crosses without selection (Allard 1960)', (t) => {
    const nursery = new Nursery(wide());
    const { markers, words } = nursery.compiled.origin!;
    const recovered: number[] = [];
    for (let n = 0; n < 800; n += 1) {
      const shares = new Float64Array(2);
      originShares(nursery.stand.genome, nursery.stand.offset(back(nursery, t, false)), 2, words, markers, shares);
      expect(shares[PEAR]! + shares[QUINCE]!).toBeCloseTo(1, 9);
      recovered.push(shares[PEAR]!);
      nursery.stand.clear();
    }
    if (t === 0) for (const share of recovered) expect(share).toBeCloseTo(0.5, 9);
    else expectMean(recovered, 1 - 0.5 ** (t + 1));
  });

  it.each([1, 2, 3])(
    'beside a gene that was picked %i times a marker is still the donor’s with (1 − r)^t, and the unbroken piece is as long as Hanson (1959) has it',
    (t) => {
      const runs = 3000;
      const nursery = new Nursery(wide());
      const { markers, words, gene, marker } = nursery.compiled.origin!;
      expect(markers[marker]).toMatchObject({ chromosome: 0, position: LENGTH / 2 });
      const looked = [marker - 5, marker - 1, marker, marker + 2, marker + 7];
      const donor = looked.map(() => 0);
      const lengths: number[] = [];
      for (let n = 0; n < runs; n += 1) {
        const at = nursery.stand.offset(back(nursery, t, true));
        // The father's homologue comes second.
        const carrier = at + nursery.compiled.words;
        looked.forEach((m, i) => (donor[i]! += +(kindAt(nursery.stand.genome, carrier, words, m) === QUINCE)));
        const shares = new Float64Array(2);
        originShares(nursery.stand.genome, at, 2, words, markers, shares);
        lengths.push(lengthAround(nursery.stand.genome, at, 2, words, markers, gene, marker, shares));
        nursery.stand.clear();
      }
      looked.forEach((m, i) => {
        expectShare(donor[i]!, runs, (1 - haldane(Math.abs(markers[m]!.position - LENGTH / 2))) ** t, `marker at ${String(markers[m]!.position)} cM`);
      });
      // Seen through markers: the lengths that they stand for, each as far as all between it and the gene are the donor's.
      const own = markers.flatMap(({ chromosome }, m) => (chromosome === 0 ? [m] : []));
      const kept = (m: number) => {
        let share = 1;
        for (let i = Math.min(m, marker); i < Math.max(m, marker); i += 1) share *= 1 - haldane(markers[i + 1]!.position - markers[i]!.position);
        return share ** t;
      };
      const seen = own.reduce((sum, m) => sum + markers[m]!.length * kept(m), 0);
      expectMean(lengths, seen, 'unbroken piece');
      // Off from the true length by less than half of what lies between two markers.
      expect(Math.abs(seen - unbrokenPiece(t, LENGTH / 2, LENGTH / 2))).toBeLessThan(LENGTH / 16 / 2);
    },
  );
});

describe('neutral drift', () => {
  it('brother × sister: a quarter of heterozygosity is lost a round from the second on; an allele is fixed as often as it was frequent (Wright 1931)', () => {
    // One copy in the two founders: frequency ¼. After many rounds of one brother × one sister every line is fixed, a quarter of them for r.
    const runs = 1500;
    const nursery = new Nursery(document({ plans: plans([generation('g', 1)]), trees: [tree('a', { genes: { r: { copies: 1 } } }), tree('b')] }));
    let fixed = 0;
    for (let n = 0; n < runs; n += 1) {
      let pair: [number, number] = [0, 1];
      for (let round = 0; round < 60; round += 1) {
        const [mother, father] = pair;
        pair = [nursery.breed(mother, father), nursery.breed(mother, father)];
      }
      const copies = nursery.stand.copies(pair[0], 0) + nursery.stand.copies(pair[1], 0);
      expect([0, 4]).toContain(copies);
      fixed += +(copies === 4);
      nursery.stand.clear();
    }
    expectShare(fixed, runs, 1 / 4);
  });
});

describe('S alleles', () => {
  const sweet = kind({ pollenRejection: 'gametophytic', selfCompatible: false });
  const cherry = (changes: Partial<Document> = {}) =>
    document({
      kinds: [sweet],
      genes: [{ id: 'r', name: 'r', group: 'one', position: 10 }],
      incompatibility: { group: 'one', position: 30 },
      trees: [tree('a', { s: 'S1S2' }), tree('b', { s: 'S1S3', genes: { r: { copies: 1, homologue: 'a' } } })],
      plans: plans([generation('g', 1)]),
      ...changes,
    });

  it('half of the pollen works: every seedling has the other allele, and what is linked to the rejected one is seldom passed on (r)', () => {
    const runs = 4000;
    const nursery = new Nursery(cherry());
    const { word } = nursery.compiled.incompatibility!;
    const b = (h: number) => nursery.word(1, h, word);
    let passed = 0;
    for (let n = 0; n < runs; n += 1) {
      const seedling = nursery.breed(0, 1);
      expect(nursery.word(seedling, 1, word)).toBe(b(1));
      passed += nursery.stand.copies(seedling, 0);
      nursery.stand.clear();
    }
    // r stands on the homologue with S1, which the style rejects.
    expectShare(passed, runs, haldane(20));
    expect(b(0)).not.toBe(b(1));
  });

  it('the seed parent passes both of its alleles', () => {
    const nursery = new Nursery(cherry());
    const { word } = nursery.compiled.incompatibility!;
    let first = 0;
    for (let n = 0; n < 2000; n += 1) first += +(nursery.word(nursery.breed(0, 1), 0, word) === nursery.word(0, 0, word));
    expectShare(first, 2000, 0.5);
  });

  it('sets of four: a grain with two alleles fails if either is recognised', () => {
    const kinds = [kind({ ploidy: 4, inheritance: 'polysomic', pollenRejection: 'gametophytic' })];
    const nursery = new Nursery(cherry({ kinds, incompatibility: {}, trees: [tree('a', { s: 'S1S2S5S6' }), tree('b', { s: 'S1S3S4S7' })] }));
    const { word } = nursery.compiled.incompatibility!;
    const bad = nursery.word(1, 0, word);
    const counts = new Map<string, number>();
    for (let n = 0; n < 3000; n += 1) {
      const seedling = nursery.breed(0, 1);
      const grain = [2, 3].map((h) => nursery.word(seedling, h, word)).sort((x, y) => x - y);
      expect(grain).not.toContain(bad);
      counts.set(grain.join(' '), (counts.get(grain.join(' ')) ?? 0) + 1);
      nursery.stand.clear();
    }
    // Of the six pairs of four alleles three are without the recognised one, all as likely.
    expect(counts.size).toBe(3);
    for (const [grain, n] of counts) expectShare(n, 3000, 1 / 3, grain);
  });
});

describe('a plan that follows origin', () => {
  const input = wide({
    lastYear: 2020,
    goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 20 },
    plans: plans([
      generation('wide', 4, { keep: { howMany: 1 } }),
      generation('back', 30, { pollen: picksOf('wide'), keep: { howMany: 2, conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }] } }),
    ]),
  });
  const programme = read(input);
  const runs = 200;
  const simulator = new Simulator(programme);
  const [columns] = simulator.runs([0], 0, runs);

  it('keeps shares of both kinds and the length around the gene, by generation', () => {
    expect(Array.from(columns!.originShare(0, 1))).toEqual(new Array(runs).fill(0.5));
    const quince = columns!.originShare(1, 1);
    // Picked for the gene, so more than a quarter: by what the chromosome of the gene adds, under a tenth of it.
    expect(quince.reduce((a, b) => a + b, 0) / runs).toBeGreaterThan(0.25);
    expect(quince.reduce((a, b) => a + b, 0) / runs).toBeLessThan(0.27);
    expectMean(columns!.aroundGene(1), unbrokenPiece(1, LENGTH / 2, LENGTH / 2), 'around the gene', LENGTH / 16 / 2);
  });

  it('says so in the outlook, the table and the diary', () => {
    const frame = frameOf(programme);
    expect(frame.origin).toEqual({ kinds: ['pear', 'quince'], gene: 'red' });
    const outlook = planOutlook(frame, 0, columns!, null);
    expect(outlook.generations[1]!.origin!.kinds[1]).toMatchObject({ kind: 'quince' });
    expect(outlook.generations[0]!.origin!.around!.length.p50).toBeCloseTo(LENGTH, 6);
    const [head] = [...runsCsv(frame, [columns!])];
    expect(head).toContain('generation 2: share of quince');
    expect(head).toContain('generation 2: cM around red');
    const lines = simulator.diary(0, 3).years.flatMap((year) => entries(year, ['Wide', 'Back']));
    expect(lines.join('\n').replaceAll('\u00a0', ' ')).toMatch(/Wide: .*1 kept, about 50 % quince left, 100 cM of it around the gene/);
    expect(lines.join('\n').replaceAll('\u00a0', ' ')).toMatch(/Back: .*kept, about \d+ % quince left, \d+ cM of it around the gene/);
    expect(originWords({ kind: 'quince', share: 0.22, around: 31.2 }).replaceAll('\u00a0', ' ')).toBe('about 22 % quince left, 31 cM of it around the gene');
  });

  it('changes no rate: half of the seedlings have the gene', () => {
    expectMean(
      Array.from(columns!.generation(1, 'showing'), (n) => n / 30),
      1 / 2,
    );
  });
});
