/** A FIXTURE: single futures with invented numbers, laid evenly along smooth curves, to go with fixture.ts. */
import type { Futures } from '../../src/charts/years-against-trees/layout.ts';
import { FIXTURE } from './fixture.ts';

/** Fractions that fill 0–1 evenly: the golden-ratio sequence. */
const even = (index: number, shift: number) => (index * 0.6180339887498949 + shift) % 1;
/** A bell from a fraction, by the logistic curve. */
const bell = (fraction: number, middle: number, scale: number) => middle + scale * 0.55 * Math.log(Math.max(1e-4, fraction) / Math.max(1e-4, 1 - fraction));

const FUTURES_DRAWN = 4000;

export const FIXTURE_FUTURES: readonly Futures[] = FIXTURE.plans.map((plan) => {
  const yearProven = new Int16Array(FUTURES_DRAWN);
  const seedlings = new Int32Array(FUTURES_DRAWN);
  const { p10, p50, p90 } = plan.whenItWorks;
  for (let i = 0; i < FUTURES_DRAWN; i++) {
    const wins = even(i, 0.11) < plan.chance.value;
    const year = Math.round(bell(even(i * 7, 0.37), p50 ?? 2050, ((p90 ?? 2057) - (p10 ?? 2044)) / 2.4));
    yearProven[i] = wins ? Math.min(FIXTURE.lastYear, Math.max(2041, year)) : 0;
    const { p10: low, p50: middle, p90: high } = plan.seedlings;
    const wide = (high - low) / 2.8;
    seedlings[i] = Math.max(
      0,
      Math.round(wins ? bell(even(i * 13, 0.71), Math.max(middle, high * 0.8), wide * 0.7) : bell(even(i * 11, 0.53), middle * 0.7, wide)),
    );
  }
  return { plan: plan.id, yearProven, seedlings };
});
