/** Seedlings of one batch counted twice: how many of those at the first count stood at the second. */
export interface Stretch {
  readonly batch: string;
  readonly kind: string;
  readonly year: number;
  /** Age in years at the first count. */
  readonly age: number;
  readonly until: number;
  readonly atRisk: number;
  readonly alive: number;
}
