/** What a breeder keeps from others. */
export interface LeaveOut {
  readonly trees: boolean;
  readonly gardens: boolean;
  /** Notes, and what was noted beside own numbers; published sources stay. */
  readonly notes: boolean;
  readonly title: boolean;
  /** What was counted season by season, with tags, places and whose they are. Goes with any of the names and notes. */
  readonly log: boolean;
  /** Ids of plans. */
  readonly plans: readonly string[];
}

export type Paper = 'A4' | 'Letter';

/** What a breeder decides about the sheet. */
export interface Choices {
  readonly leaveOut: LeaveOut;
  /** Id of the plan that others are asked to help with; null for the surest. */
  readonly lead: string | null;
  readonly paper: Paper;
  /** What is wanted, in the breeder’s own words; empty for what the goal says. */
  readonly wanted: string;
}

export const NOTHING_LEFT_OUT: LeaveOut = { trees: false, gardens: false, notes: false, title: false, log: false, plans: [] };
export const FIRST_CHOICES: Choices = { leaveOut: NOTHING_LEFT_OUT, lead: null, paper: 'A4', wanted: '' };

/** What a sheet says of itself: given, never looked up, so that the same arguments give the same bytes. */
export interface Imprint {
  /** Calendar date, year-month-day. */
  readonly date: string;
  /** Address that opens the programme; null where there is none that others could use. */
  readonly link: string | null;
}
