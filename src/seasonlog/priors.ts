import { formOf, type Estimate } from '../model/estimate.ts';
import { middleOf } from '../model/estimate-forms.ts';
import { spreadOf } from '../model/estimate-spread.ts';
import { meanOf } from '../model/mean.ts';
import { betaPdf } from '../statistics/beta.ts';

/*
 * What the programme states now, as belief that counts can change. A range has hard ends and a single number none at all; both were written
 * before anything was counted, and counts must be able to overrule them. So one part in ten of the belief lies on the whole axis, and a
 * single number stands for a guess whose odds may be 3.6 times off either way in eight of ten cases (a logit-normal of SD 1).
 */

/** Share of belief that what is stated is off altogether. Own choice: strong enough that a season or two of clear counts overrules a range. */
export const DOUBT = 0.1;
/** SD of the logit of a share given as one number; own choice, a factor of 3.6 in the odds either way in eight of ten. */
const LOGIT_SD = 1;
/** SD of ln of a time given as one number: a fifth to a quarter off is nothing unusual. Own choice. */
const LOG_SD = 0.25;

const normal = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/** Density of a share whose logit is normal around that of `middle`; 0 and 1 state nothing, so Jeffreys' beta stands for them. */
function aroundShare(middle: number): (p: number) => number {
  if (middle <= 0 || middle >= 1) return (p) => betaPdf(p, 0.5, 0.5);
  const centre = Math.log(middle / (1 - middle));
  return (p) => (p <= 0 || p >= 1 ? 0 : normal((Math.log(p / (1 - p)) - centre) / LOGIT_SD) / (LOGIT_SD * p * (1 - p)));
}

function stated(estimate: Estimate, around: (middle: number) => (value: number) => number, springLuck = 0): (value: number) => number {
  if (typeof estimate !== 'number' && 'oneOf' in estimate) {
    const total = estimate.oneOf.reduce((sum, { weight }) => sum + weight, 0);
    const parts = estimate.oneOf.map(({ value, weight }) => ({ density: around(value), weight: weight / total }));
    return (value) => parts.reduce((sum, { density, weight }) => sum + weight * density(value), 0);
  }
  const spread = spreadOf(estimate, springLuck);
  if (!spread) return around(middleOf(estimate));
  // A range gives its density on an axis from 0 to 1; a count gives it per share.
  const width = formOf(estimate) === 'ranged' ? spread.to - spread.from : 1;
  return (value) => spread.density(value) / width;
}

/**
 * Density of a share as stated, with `DOUBT` of it on Jeffreys' beta.
 * @param springLuck ρ of the rate, for a count of fruit set or germination
 */
export function shareDensity(estimate: Estimate, springLuck = 0): (p: number) => number {
  const own = stated(estimate, aroundShare, springLuck);
  return (p) => (1 - DOUBT) * own(p) + DOUBT * betaPdf(p, 0.5, 0.5);
}

/** Density of a time (years or months) as stated, with `DOUBT` of it on a lognormal of three times the usual spread. */
export function timeDensity(estimate: Estimate): (time: number) => number {
  const lognormal = (middle: number, sd: number) => (time: number) => (time <= 0 ? 0 : normal(Math.log(time / middle) / sd) / (sd * time));
  const own = stated(estimate, (middle) => lognormal(Math.max(middle, 0.05), LOG_SD));
  const off = lognormal(Math.max(middleOf(estimate), 0.05), 3 * LOG_SD);
  return (time) => (1 - DOUBT) * own(time) + DOUBT * off(time);
}

/** What the programme says now: mean, and its middle eight of ten where it states a spread. */
export interface Stated {
  readonly mean: number;
  readonly low?: number;
  readonly high?: number;
}

export function statedOf(estimate: Estimate, springLuck = 0): Stated {
  const spread = spreadOf(estimate, springLuck);
  return spread ? { mean: spread.mean, low: spread.low, high: spread.high } : { mean: meanOf(estimate) };
}
