import type { BusyYear } from '../../statistics/busy.ts';
import type { Load } from '../../text/charts-years.ts';

/** A plan, and what each year asks of it. */
export interface PlanYears {
  readonly plan: string;
  readonly mark: string;
  readonly name: string;
  readonly years: readonly BusyYear[];
}

/** One kind of load against its limit, both in hours, bloom days or places. */
export interface BusyLoad {
  readonly load: Load;
  readonly limit: number | null;
  /** No future can pass it: see statistics/busy.ts. */
  readonly hard: boolean;
}

/** Size of the words beside a strip, and from one line to the next, px. */
export const BUSY_SIZE = 16;
export const BUSY_LINE = 20;
