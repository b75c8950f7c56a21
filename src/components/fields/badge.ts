import { html, type TemplateResult } from 'lit';
import type { Source } from '../../model/estimate.ts';
import { saidOf } from '../../text/fields.ts';

/** Where a figure is from and how sure it is, to be read only; `badgeStyles` dress it. */
export const badge = (source: Source): TemplateResult => html`<span class=${source.kind}><span class="badge">${saidOf(source)}</span></span>`;
