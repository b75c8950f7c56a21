/** Names and limits that turn columns of numbers back into a breeder's words. Built once from a programme. */
export interface Frame {
  readonly startYear: number;
  readonly lastYear: number;
  readonly years: number;
  readonly hoursLimit: number | null;
  readonly moneyLimit: number | null;
  readonly placesLimit: number;
  readonly plans: readonly PlanFrame[];
  /** Traits that are shown or not, with the names of their rules. */
  readonly shown: readonly { readonly name: string; readonly rules: readonly string[] }[];
  /** Yes/no facts; those that one cross entry has for itself have no name and are left out of the tables. */
  readonly facts: readonly { readonly name: string }[];
  /** Founding kinds whose genome is followed, and the gene whose surroundings are looked at; left out where none is. */
  readonly origin?: { readonly kinds: readonly string[]; readonly gene: string | null };
  readonly measured: readonly { readonly name: string; readonly unit: string; readonly inGoal: boolean }[];
}

export interface PlanFrame {
  readonly id: string;
  readonly mark: string;
  readonly name: string;
  readonly generations: readonly GenerationFrame[];
}

export interface GenerationFrame {
  readonly id: string;
  readonly round: number;
  readonly name: string;
  readonly grownFrom: number | null;
}
