import { html, nothing, type TemplateResult } from 'lit';
import { formOf, type Estimate, type Source } from '../../model/estimate.ts';
import { printEstimate, sourceOf } from '../../model/estimate-forms.ts';
import type { Scale } from '../../model/fields.ts';
import type { Understood } from '../../model/typed-estimate.ts';
import { typedText } from '../../text/typed.ts';

/** A text that was taken for a whole estimate: what is said of it, and the way back. */
export interface Taken {
  readonly text: string;
  readonly understood: Understood;
  readonly before: Estimate;
  readonly after: Estimate;
}

const GUESS: Source = { kind: 'guess', note: '' };

/** Where a typed estimate comes from: “about” is a guess and says so; a count is counted, whatever the number before it rested on; else as before. */
function sourceFor({ kind }: Understood, text: string, before: Source | undefined): Source | undefined {
  if (kind === 'about' || kind === 'atLeast' || kind === 'atMost')
    return { ...before, kind: 'guess', note: before?.note === '' ? text : (before?.note ?? text) };
  if (kind === 'count') return before?.kind === 'counted' ? before : { kind: 'counted', note: '' };
  return before ?? (kind === 'range' ? GUESS : undefined);
}

/** The estimate that a typed text stands for; a count keeps the springs it was made in, and its clusters, unless the text says other ones. */
export function estimateFrom(understood: Understood, text: string, before: Estimate): Estimate {
  const source = sourceFor(understood, text, sourceOf(before));
  const kept = source ? { source } : {};
  const { kind, estimate } = understood;
  if (kind === 'number') return source ? { value: estimate, source } : estimate;
  if (kind === 'either') return { oneOf: [...estimate.oneOf], ...kept };
  if (kind !== 'count') return { ...estimate, ...kept };
  return typeof before !== 'number' && 'hits' in before
    ? { ...before, hits: estimate.hits, of: estimate.of, ...(estimate.unit ? { unit: estimate.unit } : {}), ...kept }
    : { ...estimate, ...kept };
}

/** The quiet line under a box after a text was taken: how it was read, and the way back. */
export function takenLine({ text, understood, before }: Taken, scale: Scale, unit: string, putBack: () => void): TemplateResult {
  const old = `${printEstimate(before, scale)}${formOf(before) === 'counted' || unit === '' ? '' : `\u00a0${unit}`}`;
  return html`${typedText.taken(text, understood, scale, unit)} ${typedText.change}
    <button type="button" class="plain put-back" @click=${putBack}>${typedText.putBack(old)}</button>`;
}

/** The same line while the text is still being typed, or for a number that was not plain to read. */
export function waitingLine(whole: Understood | undefined, said: string, scale: Scale, unit: string): string | typeof nothing {
  if (whole) return typedText.waits(whole, scale, unit);
  return said === '' ? nothing : said;
}
