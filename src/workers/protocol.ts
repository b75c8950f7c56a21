import type { Programme } from '../model/programme.ts';
import type { Diary } from '../results/diary.ts';
import type { Shape } from '../results/columns.ts';

/** What a thread is asked. `load` has no answer; the others answer once, under the same number. */
export type Request =
  | { readonly type: 'load'; readonly programme: Programme }
  | { readonly type: 'runs'; readonly id: number; readonly plans: readonly number[]; readonly from: number; readonly runs: number }
  | {
      readonly type: 'factSets';
      readonly id: number;
      readonly plans: readonly number[];
      readonly from: number;
      readonly sets: number;
      readonly futures: number;
    }
  | { readonly type: 'diary'; readonly id: number; readonly plan: number; readonly run: number }
  | {
      /** Futures of any programme, whatever is loaded. Answered by `runs`. */
      readonly type: 'variant';
      readonly id: number;
      readonly programme: Programme;
      /** The same number stands for the same programme: a thread may keep what it has compiled under it. */
      readonly variant: number;
      readonly plans: readonly number[];
      readonly from: number;
      readonly runs: number;
    };

export type Reply =
  | {
      readonly type: 'runs';
      readonly id: number;
      readonly columns: readonly {
        readonly shape: Shape;
        readonly runs: number;
        readonly ints: Int32Array;
        readonly amounts: Float64Array;
        readonly byYear: Float32Array;
      }[];
    }
  | { readonly type: 'factSets'; readonly id: number; readonly provenBy: Int32Array }
  | { readonly type: 'diary'; readonly id: number; readonly diary: Diary }
  | { readonly type: 'failed'; readonly id: number; readonly name: string; readonly message: string; readonly stack: string };
