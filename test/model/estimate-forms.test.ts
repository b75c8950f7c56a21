import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateBounds, formOf, share, estimate as estimateOf, type Estimate, type EstimateForm } from '../../src/model/estimate.ts';
import { countShape, middleOf, perFlower, printEstimate, toForm, withSource } from '../../src/model/estimate-forms.ts';
import { pertMean, pertVariance } from '../../src/statistics/pert.ts';

const BOUNDS = { min: 0, max: 1 };
const shareSchema = share({ label: 'Share' });
const yearsSchema = estimateOf(1, 60, { label: 'Years', scale: 'years' });
const FORMS: EstimateForm[] = ['known', 'ranged', 'counted', 'alternatives'];

const percent = fc.integer({ min: 0, max: 100 }).map((n) => n / 100);
const anyShare: fc.Arbitrary<Estimate> = fc.oneof(
  percent,
  fc.tuple(percent, percent, percent).map((three) => {
    const [low = 0, likely = 0, high = 0] = three.toSorted((a, b) => a - b);
    return { low, likely, high };
  }),
  fc.tuple(fc.integer({ min: 1, max: 400 }), percent, fc.integer({ min: 1, max: 4 })).map(([of, p, lots]) => ({ hits: Math.floor(of * p), of, lots })),
  fc.array(fc.record({ value: percent, weight: fc.integer({ min: 1, max: 9 }) }), { minLength: 2, maxLength: 4 }).map((oneOf) => ({ oneOf })),
);

describe('an estimate written in another form', () => {
  it('is in that form and within the bounds of its field', () => {
    fc.assert(
      fc.property(anyShare, fc.constantFrom(...FORMS), (estimate, form) => {
        const other = toForm(estimate, form, BOUNDS, true);
        expect(formOf(other)).toBe(form);
        expect(shareSchema.safeParse(other).error?.issues ?? []).toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });

  it('does so for years, which cannot be counted', () => {
    const { min, max, forms } = estimateBounds.get(yearsSchema)!;
    fc.assert(
      fc.property(fc.integer({ min, max }), fc.constantFrom(...forms), (years, form) => {
        expect(yearsSchema.safeParse(toForm(years, form, { min, max }, false)).error?.issues ?? []).toEqual([]);
      }),
    );
  });

  it('keeps the middle when a count becomes a range, to the three digits written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), percent, (of, p) => {
        const hits = Math.floor(of * p);
        const other = toForm({ hits, of, lots: 1 }, 'ranged', BOUNDS, true);
        expect(typeof other === 'object' && 'likely' in other && other.likely).toBe(Number((hits / of).toPrecision(3)));
      }),
    );
  });

  it('keeps likely, low and high, and the value, where the forms share them', () => {
    expect(toForm({ low: 0.4, likely: 0.55, high: 0.7 }, 'known', BOUNDS, true)).toBe(0.55);
    expect(toForm(0.08, 'ranged', BOUNDS, true)).toMatchObject({ low: 0.04, likely: 0.08, high: 0.12, source: { kind: 'guess' } });
    expect(toForm(0.9, 'ranged', BOUNDS, true)).toMatchObject({ low: 0.85, likely: 0.9, high: 0.95 });
    expect(toForm(0, 'ranged', BOUNDS, true)).toMatchObject({ low: 0, likely: 0, high: 0.05 });
    expect(toForm(8, 'ranged', { min: 1, max: 60 }, false)).toMatchObject({ low: 6, likely: 8, high: 10 });
    expect(toForm(0.35, 'counted', BOUNDS, true)).toMatchObject({ hits: 7, of: 20 });
    expect(toForm(0.08, 'counted', BOUNDS, true)).toMatchObject({ hits: 4, of: 50 });
  });

  it('weighs a count like the range it came from: same mean and spread', () => {
    const range = { low: 0.1, likely: 0.3, high: 0.6 };
    const count = toForm(range, 'counted', BOUNDS, true);
    if (typeof count === 'number' || !('hits' in count)) throw new Error('not a count');
    const { a, b } = countShape(count);
    const mean = a / (a + b);
    // Whole hits of whole flowers: each can be half a flower off.
    expect(Math.abs(mean - pertMean(range.low, range.likely, range.high))).toBeLessThanOrEqual(0.5 / (a + b));
    const variance = (mean * (1 - mean)) / (a + b + 1);
    const wanted = pertVariance(range.low, range.likely, range.high);
    expect(Math.abs(variance / wanted - 1)).toBeLessThanOrEqual(1.5 / (a + b));
  });

  it('carries the source along', () => {
    const source = { kind: 'practice' as const, note: 'as everyone here does' };
    fc.assert(
      fc.property(anyShare, fc.constantFrom(...FORMS), (estimate, form) => {
        expect(toForm(withSource(estimate, source), form, BOUNDS, true)).toMatchObject({ source });
      }),
    );
  });
});

describe('a count', () => {
  // Jeffreys' prior for a binomial chance is Beta(½, ½): Gelman et al. (2013) Bayesian Data Analysis, 3rd ed., section 2.8 (from memory).
  it('is Jeffreys’ Beta', () => expect(countShape({ hits: 18, of: 240, lots: 1 })).toEqual({ a: 18.5, b: 222.5 }));

  // Kish (1965) design effect 1 + (m − 1)ρ with m flowers in each lot: 240 flowers of one spring at ρ = 0.1 weigh like 240/24.9 = 9.6.
  it('of one spring weighs like few flowers', () => {
    const { a, b } = countShape({ hits: 18, of: 240, lots: 1 }, 0.1);
    expect(a + b - 1).toBeCloseTo(240 / 24.9, 10);
    expect((a - 0.5) / (a + b - 1)).toBeCloseTo(18 / 240, 10);
  });

  it('never looks surer for having been made in more lots than flowers', () =>
    expect(countShape({ hits: 1, of: 2, lots: 9 }, 0.5)).toEqual({ a: 1.5, b: 1.5 }));

  it('of clusters is turned into flowers by 1 − (1 − p)^n, backwards', () => {
    fc.assert(
      fc.property(percent, fc.integer({ min: 1, max: 10 }), (p, n) => {
        const cluster = 1 - (1 - p) ** n;
        if (p < 1) expect(Math.abs(perFlower(cluster, n) - p) <= 1e-9 || cluster > 1 - 1e-9).toBe(true);
      }),
    );
    expect(middleOf({ hits: 75, of: 100, lots: 1, unit: { name: 'cluster', flowers: 2 } })).toBeCloseTo(0.5, 12);
  });
});

describe('an estimate in print', () => {
  it.each<[Estimate, string]>([
    [0.08, '8'],
    [{ value: 0.08 }, '8'],
    [{ low: 0.4, likely: 0.55, high: 0.7 }, '40–55–70'],
    [{ hits: 18, of: 240, lots: 1 }, '18 of 240'],
    [{ hits: 18, of: 240, lots: 1, unit: { name: 'cluster', flowers: 5 } }, '18 of 240 clusters of 5'],
    [
      {
        oneOf: [
          { value: 0.2, weight: 1 },
          { value: 0.5, weight: 2 },
        ],
      },
      '20 or 50',
    ],
  ])('%j is %s', (estimate, text) => expect(printEstimate(estimate, 'share')).toBe(text));
});
