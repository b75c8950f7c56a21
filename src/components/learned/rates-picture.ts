import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawRates } from '../../charts/learned/draw.ts';
import { ratesLayout, type RateRow, type RatesLayout } from '../../charts/learned/layout.ts';
import { common } from '../../text/charts.ts';
import { lessons as words, rateNumber, rateRange, rowName } from '../../text/log-lessons.ts';
import { pictured } from '../pay/answer-picture.ts';
import { beliefStyles } from './beliefs.styles.ts';
import { RowsPicture } from './rows-picture.ts';

/** A row of the picture, with what its button does and what the table says further. */
export interface ShownRate extends RateRow {
  readonly act: 'use' | 'back' | 'none';
  readonly nine: { readonly low: number; readonly high: number } | null;
  readonly source: string;
}

declare global {
  interface HTMLElementEventMap {
    'oo-use-counts': CustomEvent<string>;
    'oo-go-back': CustomEvent<string>;
  }
}

/**
 * Every number that the log speaks to: belief before and now as curves, with the numbers in words, and a button for each.
 * @fires oo-use-counts with the id of a row
 * @fires oo-go-back with the id of a row
 */
@customElement('oo-rates-picture')
export class RatesPicture extends RowsPicture<ShownRate, RatesLayout> {
  static override styles: CSSResultGroup = [RowsPicture.styles, beliefStyles];

  @property(pictured) override answer: readonly ShownRate[] | null = null;

  protected override layoutOf(rows: readonly ShownRate[], width: number): RatesLayout {
    return ratesLayout(rows, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: RatesLayout): void {
    drawRates(svg, layout, this.reading);
  }

  private act(row: ShownRate): void {
    if (this.stale) return;
    this.dispatchEvent(new CustomEvent(row.act === 'use' ? 'oo-use-counts' : 'oo-go-back', { detail: row.id }));
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout) return nothing;
    const read = reading === null ? undefined : answer[reading];
    return html`<section aria-label=${words.picture} aria-describedby="summary">
      <p class="visually-hidden" id="summary">${words.summary}</p>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.slider({ label: words.slider, from: 1, to: Math.max(1, answer.length), words: read ? words.place(read) : words.none })}
        <div class="controls">${answer.map((row, i) => this.button(row, layout.rows[i]))}</div>
      </div>
      ${this.staleLine()} ${this.data(this.table(answer))}
    </section>`;
  }

  private button(row: ShownRate, place: RatesLayout['rows'][number] | undefined): TemplateResult | typeof nothing {
    if (row.act === 'none' || !place) return nothing;
    const { left, top, width } = place.button;
    const name = rowName(row);
    const said = row.act === 'use' ? words.useFor(name) : words.backFor(name);
    return html`<button
      type="button"
      style="left: ${String(left)}px; top: ${String(top)}px; width: ${String(width)}px"
      aria-label=${said}
      aria-disabled=${this.stale ? 'true' : 'false'}
      title=${this.stale ? words.waits : ''}
      @click=${() => this.act(row)}
    >
      ${row.act === 'use' ? words.use : words.back}
    </button>`;
  }

  private table(rows: readonly ShownRate[]): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          ${words.heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map((row) => {
          const { before, after, scale, nextSpring } = row;
          const range = before?.low !== undefined && before.high !== undefined ? ` (${rateRange({ low: before.low, high: before.high }, scale)})` : '';
          return html`<tr>
            <th scope="row">${rowName(row)}</th>
            <td>${row.unit}</td>
            <td>${before ? `${rateNumber(before.mean, scale)}${range}` : row.used ? common.noValue : words.unsaid}</td>
            <td>${rateNumber(after.mean, scale)}</td>
            <td>${rateRange(after, scale)}</td>
            <td>${row.nine ? rateRange(row.nine, scale) : common.noValue}</td>
            <td>${nextSpring ? rateRange(nextSpring, scale) : common.noValue}</td>
            <td>${row.counted}</td>
            <td>${row.where}</td>
            <td>${row.used ? row.source : words.usesNot}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-rates-picture': RatesPicture;
  }
}
