import { isRecord } from './problem.ts';
import type { Source } from './estimate.ts';

export type SourceTally = Readonly<Record<Source['kind'] | 'unsaid', number>>;

const isEstimate = (value: Readonly<Record<string, unknown>>) =>
  'low' in value || 'hits' in value || 'oneOf' in value || ('value' in value && typeof value['value'] === 'number' && !('weight' in value));

/** How many estimates of a document rest on what: for the sentence that opens the page of numbers. Plain numbers are not counted. */
export function tallySources(document: unknown): SourceTally {
  const tally = { counted: 0, published: 0, practice: 0, remembered: 0, guess: 0, invented: 0, unsaid: 0 };
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(visit);
    else if (isRecord(value)) {
      if (isEstimate(value)) {
        const { source } = value as { source?: { kind?: Source['kind'] } };
        tally[source?.kind ?? 'unsaid'] += 1;
      } else Object.values(value).forEach(visit);
    }
  };
  visit(document);
  return tally;
}
