import type { FactMix } from '../engine/fact-mix.ts';
import type { WhatIf } from '../engine/what-if.ts';
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
      readonly whatIf: WhatIf;
      /** The same number stands for the same programme and what-if: a thread may keep what it has compiled under it. */
      readonly variant: number;
      readonly plans: readonly number[];
      readonly from: number;
      readonly runs: number;
    }
  | {
      /** Futures of mixed facts of any programme. */
      readonly type: 'mixed';
      readonly id: number;
      readonly programme: Programme;
      readonly whatIf: WhatIf;
      readonly variant: number;
      readonly plans: readonly number[];
      readonly mix: FactMix;
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
  | { readonly type: 'mixed'; readonly id: number; readonly yearProven: Int32Array }
  | { readonly type: 'diary'; readonly id: number; readonly diary: Diary }
  | { readonly type: 'failed'; readonly id: number; readonly name: string; readonly message: string; readonly stack: string };
