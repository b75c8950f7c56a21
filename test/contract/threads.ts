import { inlineThread } from '../../src/workers/inline.ts';
import type { Thread } from '../../src/workers/runner.ts';
import { document, generation, picksOf, plans, read } from '../engine/programmes.ts';

/** Three in a second generation, quick to run: for the second pass. */
export const quick = read(
  document({
    lastYear: 2012,
    plans: plans([
      generation('f1', 2, { judge: 0, keep: { howMany: 2 }, goOn: { when: 'enough', count: 2 } }),
      generation('f2', 3, { seedParents: picksOf('f1'), pollen: picksOf('f1') }),
    ]),
  }),
);

/** Answers late, and later for every second request: replies of several threads arrive out of order. */
export function dawdling(): Thread {
  const thread = inlineThread(true);
  let asked = 0;
  return {
    ...thread,
    post(request) {
      asked += 1;
      if (request.type === 'load') thread.post(request);
      else setTimeout(() => thread.post(request), asked % 2 === 0 ? 3 : 0);
    },
  };
}
