import { frost } from './frost.ts';
import { hands } from './hands.ts';
import { land } from './land.ts';
import { leafTest } from './leaf-test.ts';
import { skip } from './skip.ts';
import { takeover } from './takeover.ts';
import type { If, IfId } from './way.ts';

/** Everything that can happen, in the order of the answer. A new one is a file, an id in `way.ts`, and a line here. */
export const IFS: readonly If[] = [skip, frost, land, takeover, hands, leafTest];

/** What this year's jobs gain is asked under a name of its own. */
export type Asked = IfId | 'jobs';

export const ASKED: readonly Asked[] = [...IFS.map(({ id }) => id), 'jobs'];
