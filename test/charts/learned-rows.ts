import type { RateRow } from '../../src/charts/learned/layout.ts';

const curve = (middle: number, width: number, to: number): RateRow['curves']['after'] =>
  Array.from({ length: 60 }, (_, i) => {
    const value = ((i + 0.5) * to) / 60;
    return [value, Math.exp(-0.5 * ((value - middle) / width) ** 2) / width] as const;
  });

/** Learned numbers of an invented orchard: a change, a range that stays, one without spread before, one in use, long names. */
export const RATES: readonly RateRow[] = [
  {
    id: 'crosses/0/set',
    name: 'Fruit set',
    of: 'pear × quince',
    unit: 'per 100 flowers',
    scale: 'share',
    used: false,
    before: { mean: 0.4, low: 0.2, high: 0.6 },
    after: { mean: 0.12, low: 0.07, high: 0.21 },
    nextSpring: { low: 0.039, high: 0.25 },
    counted: '70 fruits of 900 flowers',
    where: '3 batches, 2027–2029',
    curves: { to: 0.6, before: curve(0.4, 0.15, 0.6), after: curve(0.12, 0.05, 0.6) },
  },
  {
    id: 'kinds/0/firstFruit/half',
    name: 'Half have fruited by',
    of: 'pear',
    unit: 'years',
    scale: 'years',
    used: true,
    before: null,
    after: { mean: 7, low: 6.4, high: 7.6 },
    nextSpring: null,
    counted: '23 of 53 trees have borne',
    where: '4 batches, 2033–2036',
    curves: { to: 20, before: null, after: curve(7, 0.4, 20) },
  },
  {
    id: 'kinds/0/neverFruits',
    name: 'Never fruits, of trees that a long name of a kind was given to',
    of: 'a kind with a name that takes two lines at least, or three',
    unit: 'per 100 trees',
    scale: 'share',
    used: false,
    before: null,
    after: { mean: 0.004, low: 0.0004, high: 0.009 },
    nextSpring: null,
    counted: '0 of 1 tree',
    where: '1 batch, 2031',
    curves: { to: 0.02, before: [[0.0001, 1e9], ...curve(0.01, 0.01, 0.02)], after: curve(0.004, 0.003, 0.02) },
  },
];
