import type { Inputs } from '../entries.ts';
import type { Figures } from './tally.ts';

/**
 * Samples the figures of an entry with our own meiosis or draws.
 * @param many how many of the full number of trials to make (the tests make fewer than the study)
 */
export type Sampler = (inputs: Inputs, many: (full: number) => number) => Figures;
export type Samplers = Readonly<Record<string, Sampler>>;
