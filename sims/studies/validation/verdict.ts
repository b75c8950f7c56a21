import type { Entry } from './entries.ts';

/** Standard errors that a sampled figure may lie from the published one. */
export const ERRORS = 4;
/** For entries that are exact: what double arithmetic may lose on the way. */
const ROUNDING = 1e-12;

/** Why ours differs from the published value where it does, by entry. Nothing else may differ. */
export const DIFFERENCES: Readonly<Record<string, string>> = {
  'i-2dp-0.1-rounding': 'The printed table rounded twice: 1.75498 to 1.755, then to 1.76. To two decimals the intensity at 10 % is 1.75.',
  'pert-sd':
    'The published rule of thumb takes one sixth of the range whatever the likeliest value. Ours is the exact spread of the beta with weight 4 on that value, √((mean − low)(high − mean)/7), here for 5 / 8 / 14.',
};

/** How far a figure that carries no luck may be off. */
export const allowed = ({ tolerance }: Pick<Entry, 'tolerance'>, expected: number): number => tolerance ?? ROUNDING * Math.max(1, Math.abs(expected));

/** Whether a figure agrees: within its rounding, and four standard errors where it was sampled. NaN never agrees. */
export function agrees(entry: Pick<Entry, 'tolerance'>, expected: number, got: number, error = 0): boolean {
  return Math.abs(got - expected) <= allowed(entry, expected) + ERRORS * error;
}
