/** A tree (or patient) followed until `time`: it happened then, or it had not happened yet. */
export interface Followed {
  readonly time: number;
  readonly happened: boolean;
}

export interface SurvivalStep {
  readonly time: number;
  /** Still followed just before. */
  readonly atRisk: number;
  readonly happened: number;
  /** Share to which it has not happened by this time. */
  readonly left: number;
}

/**
 * Returns the share left at each time at which something happened. One that was lost sight of at a time still counts as at risk then.
 * @param followed in any order
 *
 * **Source:** Kaplan, E. L. & Meier, P. (1958) J. Am. Stat. Assoc. 53:457–481.
 */
export function kaplanMeier(followed: readonly Followed[]): SurvivalStep[] {
  const times = [...new Set(followed.filter(({ happened }) => happened).map(({ time }) => time))].sort((a, b) => a - b);
  let left = 1;
  return times.map((time) => {
    const atRisk = followed.filter((one) => one.time >= time).length;
    const happened = followed.filter((one) => one.happened && one.time === time).length;
    left *= 1 - happened / atRisk;
    return { time, atRisk, happened, left };
  });
}
