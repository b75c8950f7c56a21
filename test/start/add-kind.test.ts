import { describe, expect, it } from 'vitest';
import example from '../../sims/examples/red-pear.json';
import { crossBetween, kinds } from '../../src/catalogue/catalogue.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { isRecord, sentence } from '../../src/model/problem.ts';
import type { Programme } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { addKind, kindOffer, type KindOffer } from '../../src/start/add-kind.ts';
import { EMPTY, filledIn } from '../../src/start/answers.ts';
import { buildProgramme } from '../../src/start/build.ts';
import type { Merged } from '../../src/start/merge.ts';
import { ProgrammeStore } from '../../src/state/programme-store.ts';

const FUTURES = 20;
const SECTIONS = ['facts', 'genes', 'traits', 'kinds', 'gardens', 'trees', 'pools', 'crosses', 'stocks', 'plans'] as const;

function sound(document: unknown): Programme {
  const reading = parseProgramme(document);
  if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(document, problem)).join(' '));
  return reading.programme;
}
/** A first programme of one kind, as the questions build it. */
function startedWith(kind: string): Programme {
  const reading = buildProgramme(
    filledIn({ ...EMPTY, tree: { name: 'Gate Tree', kind, trait: 'pink leaf', showed: 2, seasons: 3 }, partners: [{ name: 'Lane Tree' }] }, 2027),
  );
  if (!reading.ok) throw new Error(`No programme of ${kind}.`);
  return { ...reading.programme, lastYear: reading.programme.startYear + 25 };
}
const redPear = (): Programme => sound(example);
const all = ({ parts }: KindOffer): ReadonlySet<string> => new Set(parts.map(({ id }) => id));
function done(result: Merged): Programme {
  if (!result.ok) throw new Error(JSON.stringify(result));
  return result.programme;
}
const withAll = (programme: Programme, id: string): Programme => {
  const offer = kindOffer(programme, id);
  return done(addKind(programme, offer, all(offer)));
};
/** What stood there stands there still, at its place, the very same objects. */
function expectUntouched(before: Programme, after: Programme, what: string): void {
  for (const section of SECTIONS)
    expect(
      before[section].every((entry, i) => Object.is(entry, after[section][i])),
      `${what}: ${section}`,
    ).toBe(true);
  const rest = (programme: Programme) => Object.entries(programme).filter(([key]) => !SECTIONS.some((section) => section === key));
  expect(rest(after), what).toEqual(rest(before));
}
const pairsOf = ({ crosses }: Programme) => crosses.map(({ seed, pollen }) => `${seed} ${pollen}`);

describe('adding a kind of the catalogue', () => {
  const started = new Map(kinds.map(({ id }) => [id, startedWith(id)]));

  it.each(kinds.map(({ id }) => id))('to a programme of %s: every other kind gives a sound programme that runs, and undo gives the one before', (first) => {
    const before = started.get(first);
    if (!before) throw new Error('There is one for each.');
    for (const { id } of kinds.filter((kind) => kind.id !== first)) {
      const what = `${first}, then ${id}`;
      const after = withAll(before, id);
      expectUntouched(before, after, what);
      expect(
        sound(after).kinds.map((kind) => kind.id),
        what,
      ).toContain(id);
      for (const pair of [`${id} ${id}`, `${id} ${first}`, `${first} ${id}`]) expect(pairsOf(after), what).toContain(pair);
      for (const section of SECTIONS) expect(new Set(after[section].map((entry) => entry.id)).size, `${what}: ids of ${section}`).toBe(after[section].length);
      expect(new Set(pairsOf(after)).size, what).toBe(after.crosses.length);
      const runs = new Simulator(after).runs(
        after.plans.map((_, plan) => plan),
        0,
        FUTURES,
      );
      expect(
        runs.map((columns) => columns.runs),
        what,
      ).toEqual(after.plans.map(() => FUTURES));
      const store = new ProgrammeStore(before);
      expect(store.edit(after, `${id} added`), what).toEqual([]);
      expect(
        store.state.undo.map(({ label }) => label),
        what,
      ).toEqual([`${id} added`]);
      store.undo();
      expect(JSON.stringify(store.state.programme), what).toBe(JSON.stringify(before));
      expect(kindOffer(after, id).parts, `${what}: nothing is missing any more`).toEqual([]);
    }
  });

  it('brings every figure with its source as the catalogue has it', () => {
    const after = withAll(startedWith('pear'), 'quince');
    const pear = crossBetween('pear', 'quince');
    expect(after.kinds.find(({ id }) => id === 'quince')).toEqual(kinds.find(({ id }) => id === 'quince')?.kind);
    const cross = after.crosses.find(({ seed, pollen }) => seed === 'pear' && pollen === 'quince');
    expect(cross?.set).toEqual(pear.cross.set);
    expect(cross?.weakness).toEqual(pear.cross.weakness);
    expect(kindOffer(startedWith('pear'), 'quince').parts.find(({ pair: of }) => of)?.pair).toEqual({ name: 'pear', ways: 2, known: 'published' });
    expect(kindOffer(startedWith('pear'), 'walnut').parts.find(({ pair: of }) => of)?.pair?.known).toBe('unheard-of');
    expect(isRecord(cross?.set) && isRecord(cross.set['source']) && cross.set['source']['confidence']).toBe('high');
  });

  it('of a kind that is there offers only what is missing, and takes the programme’s own hybrid for the catalogue’s', () => {
    const before = redPear();
    const offer = kindOffer(before, 'quince');
    expect(offer.present).toBe(true);
    expect(offer.parts.flatMap((part) => part.kinds)).toEqual([]);
    const had = new Set(pairsOf(before));
    const crosses = offer.parts.flatMap((part) => part.crosses);
    expect(crosses.length).toBeGreaterThan(0);
    for (const { seed, pollen } of crosses) expect(had.has(`${seed} ${pollen}`), `${seed} × ${pollen}`).toBe(false);
    // Pear × quince was printed and is there; the other way round nobody counted.
    expect(offer.parts.find(({ pair }) => pair)?.pair).toEqual({ name: 'pear', ways: 1, known: 'guess' });
    const after = withAll(before, 'quince');
    expectUntouched(before, after, 'red pear');
    // The example calls its hybrid “pear-quince”; no second one is made.
    expect(after.kinds.map(({ id }) => id)).toEqual(before.kinds.map(({ id }) => id));
    expect(after.crosses.find(({ seed, pollen }) => seed === 'quince' && pollen === 'pear')?.gives).toBe('pear-quince');
    expect(after.crosses.map(({ name }) => name)).toContain('quince × (pear × quince)');
  });

  it('finds a kind by its name where the id is another, and gives fresh ids where one is taken', () => {
    const pear = startedWith('pear');
    const renamed = sound(
      JSON.parse(
        JSON.stringify(pear)
          .replaceAll('"id":"pear"', '"id":"my-kind"')
          .replaceAll('"kind":"pear"', '"kind":"my-kind"')
          .replaceAll(/"(seed|pollen|gives)":"pear"/g, '"$1":"my-kind"')
          .replaceAll('"id":"pear-itself"', '"id":"pear-by-quince"'),
      ),
    );
    const after = withAll(renamed, 'quince');
    expectUntouched(renamed, after, 'renamed');
    expect(pairsOf(after)).toEqual(expect.arrayContaining(['my-kind quince', 'quince my-kind']));
    expect(after.crosses.find(({ seed, pollen }) => seed === 'my-kind' && pollen === 'quince')?.id).toBe('pear-by-quince-2');
    expect(kindOffer(after, 'pear')).toMatchObject({ present: true });
  });

  it('an id that stands for another kind of the catalogue is not taken for its own', () => {
    const pear = startedWith('pear');
    const swapped = { ...pear, kinds: pear.kinds.map((kind) => ({ ...kind, name: 'Apple' })) };
    expect(kindOffer(swapped, 'apple').present).toBe(true);
    const offer = kindOffer(swapped, 'pear');
    expect(offer.present).toBe(false);
    expect(done(addKind(swapped, offer, all(offer))).kinds.map(({ id }) => id)).toEqual(expect.arrayContaining(['pear', 'pear-2']));
  });

  it('a kind whose own seeds are fewer does not contradict what a cross brings', () => {
    const pear = startedWith('pear');
    const small = { ...pear, kinds: pear.kinds.map((kind) => ({ ...kind, seedsPerFruit: 1, seedsAtMost: 1 })) };
    const after = withAll(sound(small), 'quince');
    expect(after.crosses.find(({ seed, pollen }) => seed === 'pear' && pollen === 'quince')?.seedsAtMost).toBe(10);
  });

  it('adds only the parts that are wanted, and the kind with any of them', () => {
    const before = startedWith('pear');
    const offer = kindOffer(before, 'apple');
    const bare = done(addKind(before, offer, new Set()));
    expect([bare.kinds.length - before.kinds.length, bare.crosses.length - before.crosses.length, bare.stocks.length - before.stocks.length]).toEqual([
      1, 1, 0,
    ]);
    expect(kindOffer(bare, 'apple').parts.map(({ id }) => id)).toEqual(['with-pear', 'stocks']);
  });

  it('says when there is no room, and which list is full', () => {
    let programme = startedWith('apple');
    const answers: Merged[] = [];
    for (const { id } of kinds) {
      const offer = kindOffer(programme, id);
      const wanted = new Set(offer.parts.map((part) => part.id).filter((part) => part !== 'stocks'));
      const answer = addKind(programme, offer, wanted);
      answers.push(answer);
      if (answer.ok) ({ programme } = answer);
    }
    const refused = answers.find((answer) => !answer.ok);
    expect(refused).toMatchObject({ why: 'room', section: 'crosses', most: 80 });
    expect(parseProgramme(programme).ok).toBe(true);
  });

  it('refuses a kind that the catalogue has not', () => {
    expect(() => kindOffer(redPear(), 'medlar')).toThrow(RangeError);
  });
});
