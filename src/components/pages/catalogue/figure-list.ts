import { html, nothing, type TemplateResult } from 'lit';
import type { z } from 'zod';
import { kindSchema, crossSchema, stockSchema, traitSchema } from '../../../model/biology.ts';
import type { Source } from '../../../model/estimate.ts';
import type { Cross, Kind, Stock, Trait } from '../../../model/programme.ts';
import { tallySources, type SourceTally } from '../../../model/sources.ts';
import { figuresOf, type Figure } from '../../../start/figures.ts';
import { catalogueText } from '../../../text/catalogue.ts';
import { badge } from '../../fields/badge.ts';

/** The figures of one entry, under its name. */
export interface Group {
  readonly name: string;
  readonly figures: readonly Figure[];
  readonly tally: SourceTally;
}

interface Entries {
  readonly kinds?: readonly Kind[];
  readonly crosses?: readonly Cross[];
  readonly stocks?: readonly Stock[];
  readonly traits?: readonly Trait[];
}

const group = (schema: z.ZodType, entry: { readonly name: string }): Group => ({
  name: entry.name,
  figures: figuresOf(schema, entry),
  tally: tallySources(entry),
});

/** Figures of entries, entry by entry; those without any are left out. */
export const groupsOf = ({ kinds = [], crosses = [], stocks = [], traits = [] }: Entries): readonly Group[] =>
  [
    ...kinds.map((entry) => group(kindSchema, entry)),
    ...crosses.map((entry) => group(crossSchema, entry)),
    ...stocks.map((entry) => group(stockSchema, entry)),
    ...traits.map((entry) => group(traitSchema, entry)),
  ].filter(({ figures }) => figures.length > 0);

/** Badge and note of a source, as they stand under a figure. */
export const sourced = (source: Source): TemplateResult =>
  html`${badge(source)}${source.note === '' ? nothing : html`<span class="note">${source.note}</span>`}`;

/** Every figure with its badge and what it rests on, folded entry by entry. */
export function figureList(groups: readonly Group[]): TemplateResult | typeof nothing {
  if (groups.length === 0) return nothing;
  const all = groups.reduce((sum, { figures }) => sum + figures.length, 0);
  return html`<details class="figures">
    <summary>${catalogueText.kind.figures(all)}</summary>
    ${groups.map(
      ({ name, figures, tally }) =>
        html`<details ?open=${groups.length === 1}>
          <summary>
            <span><b>${name}</b> <span class="quiet">${catalogueText.kind.tally(tally)}</span></span>
          </summary>
          <dl>
            ${figures.map(
              ({ label, text, source }) =>
                html`<div class="figure">
                  <dt>${label}</dt>
                  <dd class="value">${text}</dd>
                  <dd class="from">${sourced(source)}</dd>
                </div>`,
            )}
          </dl>
        </details>`,
    )}
  </details>`;
}
