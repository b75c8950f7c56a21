/** What a place of a picture says, for pictures that are read with the arrow keys from place to place. Shares are 0–1, years calendar years. */
import { percentNumber, whole } from './charts.ts';

const NB = '\u00a0';
const of100 = (share: number): string => `${share > 0 && share < 0.005 ? 'under 1' : percentNumber(share)} of${NB}100 futures`;

/** Steps of a cloud: by when a tenth, half and nine tenths of the futures that succeed have done so. */
export type CloudStep = 'tenth' | 'half' | 'most';
const STEP_WORDS: Readonly<Record<CloudStep, string>> = { tenth: `1 in${NB}10`, half: 'half', most: `9 in${NB}10` };

export const readText = {
  none: 'nothing read',
  keys: 'Point at a part to read it; by keys, ← → goes on, ↑ ↓ goes to another plan.',
  keysGeneration: 'Point at a step to read it; by keys, ← → goes on, ↑ ↓ goes to another generation.',
  cloudSlider: 'Part of a cloud to read',
  cloud: (name: string, step: CloudStep, year: number, seedlings: number) =>
    `${name}: ${STEP_WORDS[step]} of its successes by ${String(year)}; ${STEP_WORDS[step]} raise ${whole(seedlings)} seedlings or fewer`,
  noTree: (name: string, last: number, share: number, seedlings: number | null) =>
    `${name}: no tree by ${String(last)} in ${of100(share)}${seedlings === null ? '' : `; half of those raise ${whole(seedlings)} seedlings or fewer`}`,
  failSlider: 'Outcome to read',
  outcome: (name: string, words: string, share: number) => `${name}: ${words} in ${of100(share)}`,
  success: 'a proven tree',
  funnelSlider: 'Step to read',
  step: (plan: string, generation: string, amount: string, range: readonly [string, string] | null, reached: number) =>
    `${plan}, ${generation}: ${amount}${range ? `; 8 in${NB}10 futures between ${range[0]} and ${range[1]}` : `, in 8 of${NB}10 futures or more`}${
      reached < 0.995 ? `, among the ${of100(reached)} that get so far` : ''
    }`,
};
