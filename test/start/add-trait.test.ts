import { describe, expect, it } from 'vitest';
import { kinds } from '../../src/catalogue/catalogue.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { PLAIN_GENE } from '../../src/model/plain.ts';
import { sentence } from '../../src/model/problem.ts';
import type { Programme } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { addTrait, traitOffers, type Shows, type TraitOffer } from '../../src/start/add-trait.ts';
import { EMPTY, filledIn, type Draft } from '../../src/start/answers.ts';
import { buildProgramme } from '../../src/start/build.ts';
import { meantBy } from '../../src/start/known-traits.ts';
import { ProgrammeStore } from '../../src/state/programme-store.ts';

const FUTURES = 20;
const withTraits = kinds.filter(({ traits }) => traits.length > 0);

function startedWith(kind: string, changes: Partial<Draft> = {}): Programme {
  const tree = { name: 'Gate Tree', kind, trait: 'odd leaf', showed: 2, seasons: 3 };
  const reading = buildProgramme(filledIn({ ...EMPTY, tree, partners: [{ name: 'Lane Tree' }], ...changes }, 2027));
  if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(reading.draft ?? null, problem)).join(' '));
  return { ...reading.programme, lastYear: reading.programme.startYear + 25 };
}
const offerOf = (programme: Programme, id: string): TraitOffer => {
  const offer = traitOffers(programme).find(({ known }) => known.id === id);
  if (!offer) throw new Error(`No “${id}” is offered.`);
  return offer;
};
function added(programme: Programme, id: string, shows: Readonly<Record<string, Shows>> = {}): Programme {
  const result = addTrait(programme, offerOf(programme, id), shows);
  if (!result.ok) throw new Error(JSON.stringify(result));
  return result.programme;
}
const trait = ({ traits }: Programme, id: string) => traits.find((each) => each.id === id);
const tree = ({ trees }: Programme, id: string) => trees.find((each) => each.id === id);

describe('adding a known trait of the catalogue', () => {
  it.each(withTraits.map(({ id }) => id))(
    'of %s: each gives a sound programme that runs, changes nothing that was stated, and undo gives the one before',
    (kind) => {
      const before = startedWith(kind);
      const offers = traitOffers(before);
      expect(offers.map(({ known }) => known.id)).toEqual(kinds.find(({ id }) => id === kind)?.traits.map(({ id }) => id));
      for (const { known } of offers) {
        const after = added(before, known.id, { 'gate-tree': 'yes', 'lane-tree': 'no' });
        const reading = parseProgramme(after);
        expect(reading.ok ? [] : reading.problems, known.id).toEqual([]);
        expect(after.traits.slice(0, before.traits.length)).toEqual(before.traits);
        expect(after.genes.slice(0, before.genes.length)).toEqual(before.genes);
        for (const each of before.trees) expect(tree(after, each.id), known.id).toMatchObject(each);
        for (const [at, pool] of before.pools.entries()) expect(after.pools[at], known.id).toMatchObject(pool);
        const { trees: _t, pools: _p, genes: _g, traits: _tr, ...rest } = after;
        expect(before).toMatchObject(rest);
        const [columns] = new Simulator(after).runs([0], 0, FUTURES);
        expect(columns?.runs, known.id).toBe(FUTURES);
        const store = new ProgrammeStore(before);
        expect(store.edit(after, 'added'), known.id).toEqual([]);
        store.undo();
        expect(JSON.stringify(store.state.programme), known.id).toBe(JSON.stringify(before));
        expect(
          traitOffers(after).map((offer) => offer.known.id),
          known.id,
        ).not.toContain(known.id);
      }
    },
  );

  it('brings gene, rule and source, and weighs hidden genes by what was seen of each tree', () => {
    const after = added(startedWith('peach'), 'peach-white-flesh', { 'gate-tree': 'yes', 'lane-tree': 'no' });
    expect(after.genes.at(-1)).toMatchObject({ id: 'peach-y', name: 'Y' });
    // White over yellow, one gene: Monet and others, from memory (the catalogue’s own source).
    expect(trait(after, 'peach-white-flesh')).toMatchObject({
      type: 'shown',
      name: 'white flesh',
      rules: [{ weight: 1, needs: { needs: 'all', of: [{ gene: 'peach-y', copies: 1 }] } }],
    });
    expect(trait(after, 'peach-white-flesh')?.note).toMatch(/Only remembered, .*high confidence: Monet/);
    expect(tree(after, 'gate-tree')).toMatchObject({
      genes: { 'peach-y': { frequency: { source: { kind: 'guess' } } } },
      seen: { 'peach-white-flesh': { source: true } },
    });
    expect(tree(after, 'lane-tree')?.seen['peach-white-flesh']).toEqual({ showed: 0, seasons: 3 });
    expect(after.pools[0]?.background?.genes['peach-y']).toBeDefined();
  });

  it('a tree of which nothing was seen is left open', () => {
    expect(tree(added(startedWith('peach'), 'peach-white-flesh'), 'lane-tree')?.seen).not.toHaveProperty('peach-white-flesh');
  });

  it('is not offered again where the first questions took it in', () => {
    const programme = startedWith('peach', {
      tree: { name: 'Gate Tree', kind: 'peach', trait: 'snow flesh', showed: 2, seasons: 3 },
      known: { rule: 'known:peach-white-flesh' },
    });
    expect(programme.traits[0]).toMatchObject({ id: 'snow-flesh' });
    expect(traitOffers(programme).map(({ known }) => known.id)).not.toContain('peach-white-flesh');
    expect(traitOffers(programme).map(({ known }) => known.id)).toContain('peach-nectarine');
  });

  it('gives fresh ids where one is taken by something else, and a name of its own', () => {
    const pear = startedWith('peach');
    const [first] = pear.genes;
    const taken = {
      ...pear,
      genes: [...pear.genes, { ...PLAIN_GENE, id: 'peach-y', name: 'yield' }],
      traits: pear.traits.map((each) => ({ ...each, name: 'White flesh' })),
    };
    expect(first?.id).toBe('wanted');
    const after = added(taken, 'peach-white-flesh');
    expect(after.genes.at(-1)).toMatchObject({ id: 'peach-y-2', name: 'Y' });
    expect(trait(after, 'peach-white-flesh')).toMatchObject({ name: 'white flesh (peach)', rules: [{ needs: { of: [{ gene: 'peach-y-2' }] } }] });
    expect(parseProgramme(after).ok).toBe(true);
  });

  it('says when there is no room for another trait', () => {
    let programme = startedWith('peach');
    let refused: unknown;
    for (const { known } of traitOffers(programme)) {
      const result = addTrait(programme, offerOf(programme, known.id), {});
      if (result.ok) ({ programme } = result);
      else refused = result;
    }
    expect(refused).toMatchObject({ why: 'room', section: 'traits', most: 8 });
  });
});

describe('what a breeder’s words may mean', () => {
  it.each([
    ['peach', 'white flesh', ['peach-white-flesh']],
    ['peach', 'White-fleshed', ['peach-white-flesh']],
    ['peach', 'nectarine', ['peach-nectarine']],
    ['peach', 'flesh', ['peach-white-flesh', 'peach-blood-flesh']],
    ['apple', 'red flesh', ['apple-red-flesh']],
    ['apple', 'pink flesh', []],
    ['pear', 'white flesh', []],
    ['peach', '', []],
    ['medlar', 'white flesh', []],
  ])('%s, “%s”', (kind, words, ids) => {
    expect(meantBy(kind, words).map(({ trait: found }) => found.id)).toEqual(ids);
  });
});
