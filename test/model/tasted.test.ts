import { describe, expect, it } from 'vitest';
import { measuredTraitSchema } from '../../src/model/biology.ts';
import { tastedEstimate } from '../../src/model/tasted.ts';
import { treeSchema } from '../../src/model/orchard.ts';

const trait = measuredTraitSchema.parse({
  type: 'measured',
  id: 'sweet',
  name: 'Sweetness',
  unit: '°Bx',
  mean: 13,
  sd: 1.5,
  heritability: 0.4,
  repeatability: 0.6,
});
const note = (tasted: string, mean: string): string => `tasted ${tasted}, reference ${mean}`;

describe('a tasted mean as an estimate', () => {
  // By hand: 13 + 2·6/11 = 14.0909; √7·√(0.4·2.25·5/11) = 1.6922; to a hundredth of the unit.
  it('is a range around the true value, with the standard error as its spread', () => {
    expect(tastedEstimate(15, 3, trait, note).estimate).toEqual({
      low: 12.4,
      likely: 14.09,
      high: 15.78,
      source: { kind: 'counted', note: 'tasted 15, reference 13' },
    });
  });

  it('is one number where nothing is left unknown', () =>
    expect(tastedEstimate(15, 2, { ...trait, heritability: 1 }, note).estimate).toEqual({
      value: 15,
      source: { kind: 'counted', note: 'tasted 15, reference 13' },
    }));

  it('takes estimates of the trait at their means', () => {
    // PERT mean of 0.1–0.4–0.7 is 0.4.
    const vague = { ...trait, heritability: { low: 0.1, likely: 0.4, high: 0.7 } };
    const { estimate, found } = tastedEstimate(15, 3, vague, note);
    expect(found.kept).toBeCloseTo(6 / 11, 12);
    expect(treeSchema.shape.values.safeParse({ sweet: estimate }).success).toBe(true);
  });
});
