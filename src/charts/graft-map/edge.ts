export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The break-even line and its interval at one place, px. `high`: above it grafting wins surely; `low`: below it own roots do. */
export interface Edge {
  readonly x: number;
  readonly line: number;
  readonly low: number;
  readonly high: number;
}
