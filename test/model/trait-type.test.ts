import { describe, expect, it } from 'vitest';
import { checkProgramme } from '../../src/model/check.ts';
import { programmeSchema } from '../../src/model/programme.ts';
import { blankTrait, withTraitType } from '../../src/model/trait-type.ts';
import { samplePear } from '../components/fields/sample.ts';

describe('a trait of another type', () => {
  it('keeps id, name and note, and is a sound trait', () => {
    const before = samplePear();
    before.traits[0] = { ...before.traits[0]!, note: 'from the old tree' };
    const after = withTraitType(before, 0, 'measured');
    expect(after.traits[0]).toMatchObject({ type: 'measured', id: 'red', name: 'Red flesh', note: 'from the old tree' });
    expect(after.traits[1]).toBe(before.traits[1]);
    expect(programmeSchema.safeParse(after).error?.issues ?? []).toEqual([]);
  });

  it('keeps the conditions that ask for it, without bounds, and nothing runs before they have new ones', () => {
    const after = withTraitType(samplePear(), 0, 'measured');
    expect(after.goal.conditions).toEqual([{ type: 'measured', trait: 'red' }]);
    expect(after.plans[0]?.generations[0]?.keep.conditions).toEqual([{ type: 'measured', trait: 'red' }]);
    const stops = checkProgramme(after).filter(({ stops }) => stops);
    expect(stops.map(({ path }) => path.join('.'))).toEqual(['goal.conditions.0', 'plans.0.generations.0.keep.conditions.0']);
  });

  it('lets go of what was stated of trees by the old type, and of nothing else', () => {
    expect(withTraitType(samplePear(), 0, 'measured').trees[0]).toMatchObject({ seen: {}, genes: { redness: { copies: 1 } } });
    const after = withTraitType(samplePear(), 1, 'shown');
    expect(after.trees[1]?.values).toEqual({});
    expect(after.trees[0]?.seen).toEqual(samplePear().trees[0]?.seen);
  });

  it('leaves the programme alone where there is nothing to change, no such trait, or no gene to rest on', () => {
    const programme = samplePear();
    expect(withTraitType(programme, 0, 'shown')).toBe(programme);
    expect(withTraitType(programme, 9, 'shown')).toBe(programme);
    const bare = { ...programme, genes: [] };
    expect(blankTrait('shown', bare)).toEqual({ ok: false, needs: 'genes' });
    expect(withTraitType(bare, 1, 'shown')).toBe(bare);
  });
});
