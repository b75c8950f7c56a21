import { describe, expect, it } from 'vitest';
import { crossBetween, kindOf, kinds, type CatalogueCross } from '../../src/catalogue/catalogue.ts';
import { rangeOf } from '../../src/catalogue/range.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { crossSchema, geneSchema, kindSchema, stockSchema, traitSchema } from '../../src/model/biology.ts';
import { sourceSchema, type Source } from '../../src/model/estimate.ts';
import { isRecord } from '../../src/model/problem.ts';
import { parseProgramme } from '../../src/model/read.ts';

const pairs = kinds.flatMap((seed) => kinds.map((pollen) => ({ seed: seed.id, pollen: pollen.id, found: crossBetween(seed.id, pollen.id) })));

/** Every estimate below a value, with its path and what it says of its source. */
function estimates(value: unknown, path: string): { path: string; source: Source | undefined }[] {
  if (Array.isArray(value)) return value.flatMap((entry, i) => estimates(entry, `${path}/${String(i)}`));
  if (!isRecord(value)) return [];
  if ('low' in value || 'hits' in value || 'oneOf' in value || ('value' in value && !('weight' in value)))
    return [{ path, source: value['source'] === undefined ? undefined : sourceSchema.parse(value['source']) }];
  return Object.entries(value).flatMap(([key, entry]) => estimates(entry, `${path}/${key}`));
}
const all = [
  ...kinds.flatMap(({ traits: _traits, ...kind }) => estimates(kind, kind.id)),
  ...pairs.flatMap(({ seed, pollen, found }) => estimates(found, `${seed} × ${pollen}`)),
];

describe('the catalogue of kinds', () => {
  it('has the fourteen kinds, each in the form of the document', () => {
    expect(kinds.map(({ id }) => id).sort()).toEqual([
      'almond',
      'apple',
      'apricot',
      'chestnut',
      'citrus',
      'european-plum',
      'japanese-plum',
      'peach',
      'pear',
      'persimmon',
      'quince',
      'sour-cherry',
      'sweet-cherry',
      'walnut',
    ]);
    for (const { id, kind, stocks, traits } of kinds) {
      expect(kind.id).toBe(id);
      expect(kindSchema.safeParse(kind).error?.issues, id).toBeUndefined();
      expect(stocks.length, id).toBeGreaterThan(0);
      for (const stock of stocks) expect(stockSchema.safeParse(stock).error?.issues, stock.id).toBeUndefined();
      for (const { genes, trait, summary, source } of traits) {
        expect(traitSchema.safeParse(trait).error?.issues, trait.id).toBeUndefined();
        for (const gene of genes) expect(geneSchema.safeParse(gene).error?.issues, gene.id).toBeUndefined();
        expect(summary, trait.id).not.toBe('');
        expect(source.note.length, trait.id).toBeGreaterThan(10);
        expect(source.confidence, trait.id).toBeDefined();
      }
    }
  });

  it('has an entry for every ordered pair, in the form of the document, with hybrid and ways back where the kinds differ', () => {
    expect(pairs).toHaveLength(kinds.length ** 2);
    for (const { seed, pollen, found } of pairs) {
      const what = `${seed} × ${pollen}`;
      for (const cross of [found.cross, ...found.backcrosses]) expect(crossSchema.safeParse(cross).error?.issues, `${what}: ${cross.id}`).toBeUndefined();
      if (seed === pollen) expect([found.hybrid, found.backcrosses.length], what).toEqual([undefined, 0]);
      else {
        expect(kindSchema.safeParse(found.hybrid).error?.issues, what).toBeUndefined();
        expect(found.backcrosses, what).toHaveLength(5);
      }
      const ids = [found.cross, ...found.backcrosses].map(({ id }) => id);
      expect(new Set(ids).size, what).toBe(ids.length);
    }
  });

  it('says of every figure where it is from and how sure it is', () => {
    expect(all.length).toBeGreaterThan(1000);
    expect(all.filter(({ source }) => source?.confidence === undefined || source.note.length < 4).map(({ path }) => path)).toEqual([]);
  });

  it('calls nothing published that names no source, and no guess anything but unsure', () => {
    const published = all.filter(({ source }) => source?.kind === 'published');
    expect(published.length).toBeGreaterThan(100);
    // A year, or in words that none was noted; or “The same” as the figure before it.
    const names = /\b(1[89]|20)\d\d\b|not noted|^The same/;
    expect([...new Set(published.filter(({ source }) => !names.test(source?.note ?? '')).map(({ path, source }) => `${path}: ${source?.note ?? ''}`))]).toEqual(
      [],
    );
    expect(all.filter(({ source }) => source?.kind === 'guess' && source.confidence !== 'low').map(({ path }) => path)).toEqual([]);
  });

  it('says that nobody counted a pair only where every figure of the pair itself is a guess', () => {
    for (const { seed, pollen, found } of pairs.filter(({ found: { cross } }) => cross.note?.includes('No count of this pair was found') === true)) {
      expect(found.basis, `${seed} × ${pollen}`).toBe('guess');
      expect(
        estimates([found.cross.set, found.cross.germination], '').map(({ source }) => source?.kind),
        `${seed} × ${pollen}`,
      ).toEqual(['guess', 'guess']);
    }
  });

  it('makes a programme of any two kinds that reads without a stopping problem and runs', () => {
    for (const { seed, pollen, found } of pairs) {
      const reading = parseProgramme(programmeOf(seed, pollen, found));
      expect(reading.ok ? [] : reading.problems, `${seed} × ${pollen}`).toEqual([]);
      if (reading.ok) expect(new Simulator(reading.programme).runs([0], 0, 20)[0]?.runs).toBe(20);
    }
  });

  it('knows how many sets of chromosomes a kind has, and gives hybrids half of each', () => {
    const many = kinds.filter(({ kind }) => kind.ploidy > 2).map(({ id, kind }) => `${id} ${String(kind.ploidy)} ${kind.inheritance}`);
    // Chromosome numbers 2n = 32, 48 and 90 against 16 and 15 of one set: Rehder and cytology handbooks, from memory.
    expect(many.sort()).toEqual(['european-plum 6 disomic', 'persimmon 6 polysomic', 'sour-cherry 4 disomic']);
    expect(crossBetween('sweet-cherry', 'sour-cherry').hybrid?.ploidy).toBe(3);
    expect(crossBetween('sweet-cherry', 'sour-cherry').backcrosses.every(({ usableSeedlings }) => usableSeedlings !== undefined)).toBe(true);
    expect(crossBetween('european-plum', 'apricot').hybrid?.ploidy).toBe(4);
    expect(crossBetween('persimmon', 'apple').hybrid).toMatchObject({ ploidy: 4, inheritance: 'polysomic' });
    expect(crossBetween('pear', 'quince').backcrosses.some(({ usableSeedlings }) => usableSeedlings !== undefined)).toBe(false);
  });

  it('flags the kinds that reject pollen by S alleles, which changes nothing until a tree’s are stated', () => {
    const flagged = kinds.filter(({ kind }) => kind.pollenRejection === 'gametophytic').map(({ id }) => id);
    expect(flagged.sort()).toEqual(['almond', 'apple', 'apricot', 'japanese-plum', 'pear', 'sour-cherry', 'sweet-cherry']);
    const apple = programmeOf('apple', 'apple', crossBetween('apple', 'apple'));
    const plain = { ...apple, kinds: apple.kinds.map((kind) => ({ ...kind, pollenRejection: 'none' })) };
    const [flaggedRuns, plainRuns] = [apple, plain].map((document) => {
      const reading = parseProgramme(document);
      if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
      return new Simulator(reading.programme).runs([0], 0, 50)[0];
    });
    expect(flaggedRuns).toEqual(plainRuns);
  });

  it('refuses a kind that it has not', () => {
    expect(kindOf('medlar')).toBeUndefined();
    expect(() => crossBetween('apple', 'medlar')).toThrow(RangeError);
  });
});

/** The least programme of one cross: everything of the two kinds, one tree of each, judged by a trait of its own. */
function programmeOf(seed: string, pollen: string, { cross, hybrid, backcrosses }: CatalogueCross) {
  const used = [...new Set([seed, pollen])].flatMap((id) => kindOf(id)?.kind ?? []);
  const crosses = [cross, ...backcrosses, ...(seed === pollen ? [] : [crossBetween(seed, seed).cross, crossBetween(pollen, pollen).cross])];
  return {
    format: 'orchard-odds programme',
    version: 4,
    title: `${seed} by ${pollen}`,
    startYear: 2030,
    lastYear: 2060,
    shuffleWord: 'catalogue',
    runs: 200,
    goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1 },
    limits: { places: 100, bloomDays: 5, hoursADay: 4, flowersAnHour: 40 },
    genes: [{ id: 'r', name: 'R' }],
    traits: [{ type: 'shown', id: 'red', name: 'red', rules: [{ name: 'one copy', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 1 }] } }] }],
    kinds: [...used, ...(hybrid ? [hybrid] : [])],
    crosses,
    stocks: kindOf(seed)?.stocks,
    trees: [
      { id: 'a', name: 'A', kind: seed, flowers: 100, genes: { r: { copies: 1 } } },
      { id: 'b', name: 'B', kind: pollen, flowers: 100 },
    ],
    plans: [
      {
        id: 'p',
        mark: 'A',
        name: 'cross',
        generations: [
          {
            id: 'g',
            name: 'cross',
            seedParents: [{ tree: 'a' }],
            pollen: [{ tree: 'b' }],
            flowers: 100,
            seedlings: 20,
            springs: 2,
            judge: 1,
            keep: { howMany: 1, conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }] },
          },
        ],
      },
    ],
  };
}

/** Figures as printed, with where; the entry of the catalogue must hold each within its range. */
const printed: readonly { what: string; value: number; source: string; found: () => Parameters<typeof rangeOf>[0] | undefined }[] = [
  { what: 'pear × quince, set', value: 23 / 60, source: 'J. Jpn. Soc. Hort. Sci. 52:243–249 (1983)', found: () => crossBetween('pear', 'quince').cross.set },
  { what: 'pear × quince, seeds a fruit', value: 97 / 23, source: 'the same', found: () => crossBetween('pear', 'quince').cross.seedsPerFruit },
  { what: 'pear × quince, germination', value: 47 / 97, source: 'the same', found: () => crossBetween('pear', 'quince').cross.germination },
  { what: 'pear × quince, dead within ten years', value: 40 / 47, source: 'the same', found: () => crossBetween('pear', 'quince').cross.weakness?.share },
  { what: 'pear × apple, set', value: 221 / 1306, source: 'Japanese pear × apple, crosses of 1974–77', found: () => crossBetween('pear', 'apple').cross.set },
  { what: 'pear × apple, seeds a fruit', value: 1172 / 217, source: 'the same', found: () => crossBetween('pear', 'apple').cross.seedsPerFruit },
  { what: 'apple × pear, set', value: 118 / 1152, source: 'the same', found: () => crossBetween('apple', 'pear').cross.set },
  { what: 'apple × pear, seeds a fruit', value: 362 / 114, source: 'the same', found: () => crossBetween('apple', 'pear').cross.seedsPerFruit },
  {
    what: 'plum × apricot, set, myrobalan',
    value: 0.08,
    source: 'Arbeloa and others 2006, Acta Hortic. 717:133–136',
    found: () => crossBetween('japanese-plum', 'apricot').cross.set,
  },
  {
    what: 'plum × apricot, set, Poland',
    value: 0.002,
    source: 'Szymajda and others 2015, Hort. Sci. 42:70–82',
    found: () => crossBetween('japanese-plum', 'apricot').cross.set,
  },
  { what: 'plum, set', value: 0.4, source: 'Topp 1982, Plum breeding in Queensland', found: () => crossBetween('japanese-plum', 'japanese-plum').cross.set },
  { what: 'almond, set by hand', value: 0.257, source: 'Socias i Company & Felipe, HortScience', found: () => crossBetween('almond', 'almond').cross.set },
  { what: 'pear, half have fruited', value: 6, source: 'Visser, Verhaegh & de Vries 1976, Euphytica 25', found: () => half('pear') },
];
function half(id: string) {
  const firstFruit = kindOf(id)?.kind.firstFruit;
  return firstFruit && 'half' in firstFruit ? firstFruit.half : undefined;
}

/** Seeds a fruit are kept to two decimals: half of the last one. */
const ROUNDING = 0.005;

describe('published figures in the catalogue', () => {
  for (const { what, value, source, found } of printed)
    it(`${what} (${source})`, () => {
      const estimate = found();
      if (estimate === undefined) throw new Error('The catalogue has no such figure.');
      const [low, , high] = rangeOf(estimate);
      expect(value).toBeGreaterThanOrEqual(low - ROUNDING);
      expect(value).toBeLessThanOrEqual(high + ROUNDING);
    });

  it('reciprocals of pear and apple are kept apart: 15.0–19.0 against 8.6–12.1 % (Jeffreys 95 % of the printed counts)', () => {
    const [low] = rangeOf(crossBetween('pear', 'apple').cross.set);
    const [, , high] = rangeOf(crossBetween('apple', 'pear').cross.set);
    expect(low).toBeGreaterThan(high);
  });
});
