import { describe, expect, it } from 'vitest';
import { blankOf, filledBlank } from '../../src/model/blanks.ts';
import { setAt } from '../../src/model/edits.ts';
import { number } from '../../src/model/fields.ts';
import { programmeSchema } from '../../src/model/programme.ts';
import { entrySchema, membersOf, schemaAt, type Path } from '../../src/model/walk.ts';
import { samplePear } from '../components/fields/sample.ts';

const programme = samplePear();
const GENERATION: Path = ['plans', 0, 'generations', 0];

/** Adds a blank where it belongs; for a list behind its last entry. */
function withBlank(path: Path): unknown {
  const last = path.at(-1);
  const schema = typeof last === 'number' ? entrySchema(schemaAt(programmeSchema, path.slice(0, -1), programme)!) : schemaAt(programmeSchema, path, programme);
  const blank = filledBlank(schema!, programme, path);
  if (!blank.ok) throw new Error(`needs ${blank.needs}`);
  return setAt(programme, path, blank.value);
}

describe('first values of what is added', () => {
  it.each<Path>([
    ['trees', 3],
    ['kinds', 3],
    ['crosses', 1],
    ['stocks', 2],
    ['gardens', 2],
    ['pools', 1],
    ['facts', 0],
    ['genes', 1],
    ['traits', 2],
    ['traits', 0, 'rules', 1],
    ['traits', 0, 'grade'],
    ['traits', 1, 'genes', 0],
    ['pools', 0, 'background'],
    ['crosses', 0, 'routes', 0],
    ['crosses', 0, 'weakness'],
    ['money'],
    [...GENERATION, 'test'],
    [...GENERATION, 'look'],
    [...GENERATION, 'rescue'],
    [...GENERATION, 'backup'],
    [...GENERATION, 'keep', 'conditions', 1],
    ['goal', 'conditions', 1],
  ])('the schema takes one at %s %s %s', (...path) => {
    expect(programmeSchema.safeParse(withBlank(path)).error?.issues ?? []).toEqual([]);
  });

  it('fits every form of every choice', () => {
    const unions: Path[] = [
      ['kinds', 0, 'firstFruit'],
      ['crosses', 0, 'weakness', 'course'],
      ['goal', 'conditions', 0],
      ['traits', 0, 'rules', 0, 'needs'],
      [...GENERATION, 'pollen'],
      [...GENERATION, 'seedParents', 0],
    ];
    for (const path of unions) {
      for (const member of membersOf(schemaAt(programmeSchema, path, programme)!)) {
        const blank = blankOf(member, programme, path);
        if (blank.ok) expect(member.safeParse(blank.value).error?.issues ?? [], path.join('/')).toEqual([]);
      }
    }
  });

  it('gives a rescue that rescues', () =>
    expect(withBlank([...GENERATION, 'rescue'])).toMatchObject({
      plans: [{ generations: [{ rescue: { who: 'weak', month: 6, stock: 'field-pear', scions: 1 } }, {}] }],
    }));

  it('gives each new entry an id of its own', () => {
    const once = programmeSchema.parse(withBlank(['trees', 3]));
    const blank = blankOf(entrySchema(schemaAt(programmeSchema, ['trees'], once)!)!, once, ['trees', 4]);
    expect(once.trees[3]?.id).toBe('new-1');
    expect(blank).toMatchObject({ ok: true, value: { id: 'new-2' } });
  });

  it('says which section is empty when a reference has nothing to name', () => {
    const bald = { ...programme, stocks: [], genes: [] };
    expect(blankOf(schemaAt(programmeSchema, [...GENERATION, 'rescue'], programme)!, bald, [...GENERATION, 'rescue'])).toEqual({ ok: false, needs: 'stocks' });
    expect(blankOf(schemaAt(programmeSchema, [...GENERATION, 'test'], programme)!, bald, [...GENERATION, 'test'])).toEqual({ ok: false, needs: 'genes' });
  });

  it('keeps within the bounds of a number', () => {
    expect(blankOf(number(3, 9, { label: 'x' }), {}, [])).toEqual({ ok: true, value: 3 });
    expect(blankOf(number(-9, 0.25, { label: 'x' }), {}, [])).toEqual({ ok: true, value: 0.25 });
  });
});
