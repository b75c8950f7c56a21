import { describe, expect, it } from 'vitest';
import { readArguments } from '../../sims/run/arguments.ts';
import { fromToday } from '../../sims/run/today.ts';
import { exampleOf } from '../handout/sample.ts';

describe('headless, from today', () => {
  it('forecasts from the first spring of which the log says nothing, and notes what it leaves out', () => {
    const found = fromToday(exampleOf('red-pear-ten-seasons'));
    if (typeof found === 'string') throw new Error(found);
    expect(found.programme.log.forecastFrom).toBe(2037);
    expect(found.notes.join('\n')).toMatch(/Tray without labels: 15 in no plan/);
    // A spring that the document names itself stands.
    const { programme } = found;
    const again = fromToday({ ...programme, log: { ...programme.log, forecastFrom: 2034 } });
    expect(typeof again === 'string' ? again : again.programme.log.forecastFrom).toBe(2034);
  });

  it('refuses an empty log in words, and what it cannot be said with', () => {
    expect(fromToday(exampleOf('peach-quick'))).toMatch(/log is empty/);
    expect(readArguments(['a.json', '--today'])).toMatchObject({ kind: 'run', options: { today: true } });
    expect(readArguments(['a.json', '--today', '--learn']).kind).toBe('refused');
    expect(readArguments(['a.json', '--today', '--carriers']).kind).toBe('refused');
  });
});
