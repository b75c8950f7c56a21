/** How a plan is told apart without colour: its letter always, its dash on lines. Lengths in px; null is a solid line. */
const DASHES: Readonly<Record<string, string | null>> = {
  A: '1 7',
  B: null,
  C: '9 6',
  D: '16 5 3 5',
  E: '2 4',
  F: '12 4 2 4 2 4',
  G: '5 5',
  H: '20 6',
};

/** Dash of a plan's lines. */
export const dashOf = (mark: string): string | null => DASHES[mark] ?? null;

/** Only the dotted line of A has round ends: a dash of 1 px shows as a dot. */
export const capOf = (mark: string): 'round' | 'butt' => (mark === 'A' ? 'round' : 'butt');

/** Names beside a plan that the outlook does not hold. */
export interface PlanWords {
  /** For labels with little room; the plan's name where there is none. */
  readonly short?: string;
  /** A line under the plan's name. */
  readonly note?: string;
}
export type WordsByPlan = Readonly<Record<string, PlanWords>>;

/** Shortest name a plan has. */
export const shortName = (plan: { readonly id: string; readonly name: string }, words: WordsByPlan): string => words[plan.id]?.short ?? plan.name;
