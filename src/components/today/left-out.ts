import { html, nothing, type TemplateResult } from 'lit';
import type { Programme } from '../../model/programme.ts';
import { notedFrom } from '../../seasonlog/as-of.ts';
import type { Today } from '../../seasonlog/today-types.ts';
import { leftOutLines, today as words } from '../../text/today.ts';

/** What could not be brought in, folded away, with how many lines there are. */
export function leftOut(programme: Programme, { year, plans }: Today): TemplateResult | typeof nothing {
  const marked = plans.map(({ plan, notPlaced }) => ({ mark: programme.plans.find(({ id }) => id === plan)?.mark ?? '', notPlaced }));
  const lines = leftOutLines(marked, notedFrom(programme.log.batches, year), year);
  if (lines.length === 0) return nothing;
  return html`<details>
    <summary>${words.notPlacedTitle} (${lines.length})</summary>
    <p class="quiet">${words.notPlacedIntro}</p>
    <ul class="left-out">
      ${lines.map((line) => html`<li>${line}</li>`)}
    </ul>
  </details>`;
}
