import { it } from 'vitest';
import { learnRates } from '../../src/seasonlog/learned.ts';
import { learnInheritance } from '../../src/seasonlog/inheritance.ts';
import { tenSeasons } from './orchard.ts';
it('x', () => {
  const p = tenSeasons();
  let t = performance.now();
  const { rates, leftOut } = learnRates(p, (a, b) => `my counts ${a}–${b}`);
  console.log('ms', performance.now() - t);
  for (const r of rates) console.log(r.id, JSON.stringify({ b: r.before, a: r.after, n: r.nextSpring, l: r.luck, c: r.counts, e: r.estimate, w: r.wave }));
  console.log(JSON.stringify(leftOut, null, 0));
  t = performance.now();
  const i = learnInheritance(p);
  console.log('ms', performance.now() - t);
  console.log(JSON.stringify(i, null, 1).slice(0, 6000));
});
