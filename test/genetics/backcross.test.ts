import { describe, expect, it } from 'vitest';
import { donorLength, lostBesideMarker, lostBetweenMarkers, recombinationAt, unbrokenPiece } from '../../src/genetics/drag.ts';
import { offspringShares } from '../../src/genetics/family.ts';
import { donorShareVariance, recurrentShare, recurrentShareVariance } from '../../src/genetics/recovery.ts';
import { gameteShares } from '../../src/genetics/tray/linkage.ts';

/** ∫ f over [0, to] by Simpson's rule: a second way for every closed form that is an integral. */
function integral(f: (x: number) => number, to: number, steps = 400): number {
  const h = to / steps;
  let sum = f(0) + f(to);
  for (let i = 1; i < steps; i += 1) sum += (i % 2 === 0 ? 2 : 4) * f(i * h);
  return (sum * h) / 3;
}
const inRow = (...recombination: number[]) => [0.5, ...recombination].map((r, g) => ({ id: `g${String(g)}`, recombination: r, alone: false }));

describe('recovery of the recurrent parent', () => {
  it('is what Mendel’s families come to, one back-cross after the other', () => {
    let shares: readonly [number, number, number] = [0, 1, 0];
    for (let t = 0; t < 6; t += 1) {
      expect(recurrentShare(t)).toBeCloseTo(shares[2] + shares[1] / 2, 14);
      shares = offspringShares(shares[1] / 2 + shares[2], 1);
    }
  });

  it('varies as the covariance of two places says, integrated over the chromosome', () => {
    const [t, cM] = [3, 120];
    // Donor at both of two places: ½^t of lines hold the first, and each meiosis keeps the second with 1 − r.
    const both = integral((x) => (2 * (120 - x) * ((1 - recombinationAt(x)) / 2) ** t) / 120 ** 2, 120) / 4;
    expect(donorShareVariance(t, cM)).toBeCloseTo(both - 0.5 ** (2 * t + 2), 8);
  });

  it('varies less over many chromosomes: as one over their number where they are alike', () => {
    expect(recurrentShareVariance(2, new Array<number>(17).fill(70))).toBeCloseTo(donorShareVariance(2, 70) / 17, 14);
  });
});

describe('drag around a gene', () => {
  it('is longer in all than the unbroken piece, and both are the integrals of their chances', () => {
    const [t, left, right] = [4, 30, 75];
    const unbroken = (side: number) => integral((x) => Math.exp((-t * x) / 100), side);
    const donor = (side: number) => integral((x) => (1 - recombinationAt(x)) ** t, side);
    expect(unbrokenPiece(t, left, right)).toBeCloseTo(unbroken(left) + unbroken(right), 6);
    expect(donorLength(t, left, right)).toBeCloseTo(donor(left) + donor(right), 6);
    expect(donorLength(t, left, right)).toBeGreaterThan(unbrokenPiece(t, left, right));
    expect(donorLength(0, left, right)).toBe(105);
  });

  it('is lost from between or beside markers as the gametes are counted', () => {
    const both = gameteShares({ a: 0b111, b: 0 }, inRow(0.08, 0.03));
    expect(lostBetweenMarkers(0.08, 0.03)).toBeCloseTo(both[0b101]! / (both[0b101]! + both[0b111]!), 14);
    const beside = gameteShares({ a: 0b11, b: 0 }, inRow(0.05));
    expect(1 - lostBesideMarker(0.05, 5)).toBeCloseTo((beside[0b11]! / (beside[0b01]! + beside[0b11]!)) ** 5, 14);
  });
});
