import type { OutOfScope } from './case.ts';
import type { RecordCase } from './record.ts';
import { families } from './recorded/families.ts';
import { lists } from './recorded/lists.ts';
import { raising } from './recorded/raising.ts';
import { setting } from './recorded/setting.ts';

const out = (id: string, what: string, reason: string): OutOfScope => ({ id, what, verdict: 'outOfScope', reason });

const outOfScope = [
  out('C15', 'Chestnut: 73,000 trees to be made by hand, one nut in a bag', 'A plan and no record: nothing of it was counted yet.'),
  out(
    'C23',
    'Years to first fruit of apple and pear families',
    'Means and ranges without the numbers of trees at each age: no count and no tree of it could be entered.',
  ),
  out(
    'C31',
    'Honeycrisp: set in percent, and bloom of the year after',
    'Return bloom of a mother tree is no stage of a batch; what is known of parents is entered with the programme’s trees.',
  ),
  out('C35', 'Stored cherimoya pollen: germination in a dish', 'Tests of pollen are no stage of a batch; a lot of stored pollen has no place in the log.'),
] as const;

/** Every case of the collection as records, or why not. */
export const records: readonly RecordCase[] = [...setting, ...raising, ...families, ...lists, ...outOfScope];
