import type { Document } from '../engine/programmes.ts';

/** A case that the app can express, as a programme and what must come of it. */
export interface Entered {
  readonly id: string;
  readonly what: string;
  readonly verdict: 'entered';
  readonly programme: () => Document;
  readonly holds: () => void;
  /** What of the case the app cannot say yet. */
  readonly beyond?: string;
}

export interface OutOfScope {
  readonly id: string;
  readonly what: string;
  readonly verdict: 'outOfScope';
  readonly reason: string;
}

/** Real records and crosses of public reports, figures as printed. */
export type Case = Entered | OutOfScope;

export const entered = (id: string, what: string, parts: Omit<Entered, 'id' | 'what' | 'verdict'>): Entered => ({ id, what, verdict: 'entered', ...parts });
