import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { placeAfter, type Press } from '../../charts/reading.ts';
import { common } from '../../text/charts.ts';
import { AnswerPicture } from '../pay/answer-picture.ts';

interface Rows {
  readonly rows: readonly { readonly id: string; readonly top: number; readonly bottom: number }[];
}

/** A picture of rows, read row by row. Its words stand in the row that is read, so it is brought into view. */
export abstract class RowsPicture<Row, Layout extends Rows> extends AnswerPicture<readonly Row[], Layout> {
  abstract override answer: readonly Row[] | null;

  /** Says under the picture that it is overtaken, in room of its own: nothing moves, and no row is covered. */
  protected staleLine(): TemplateResult {
    return html`<div class="stale-room">${this.stale ? html`<p class="stale-words">${common.stale}</p>` : nothing}</div>`;
  }

  /** The row that was brought into view last. */
  private shown: number | null = null;

  protected override get reading(): number | null {
    const { chosen, answer } = this;
    return chosen === null || chosen === undefined || !answer || answer.length === 0 ? null : Math.min(chosen, answer.length - 1);
  }

  /** Counts from one, as rows do. */
  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  protected override placeFor(press: Press): number | null | undefined {
    return placeAfter(press, this.reading, this.layout?.rows.map(({ id }) => id) ?? []);
  }

  /** Every row says what it says without being pointed at. */
  protected override placeAt(): null {
    return null;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const { reading } = this;
    if (reading !== null && reading !== this.shown && this.renderRoot.querySelector('.plot:focus-visible'))
      this.renderRoot.querySelector('.rate-read')?.scrollIntoView({ block: 'nearest' });
    this.shown = reading;
  }
}
