import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawMap } from '../../../charts/graft-map/draw.ts';
import { mapLayout, type MapLayout } from '../../../charts/graft-map/layout.ts';
import { cellAfter, cellNear, cellUnder, sameCell } from '../../../charts/graft-map/reading.ts';
import type { Press } from '../../../charts/reading.ts';
import type { GraftMap } from '../../../decisions/graft-map.ts';
import type { Standing } from '../../../decisions/standing.ts';
import { differenceInWords, differenceRange, monthsInWords } from '../../../text/pay-figures.ts';
import { breakEvenWords, cellWords, graftText } from '../../../text/pay-graft.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { mapStyles } from './graft-map.styles.ts';

export interface MapAnswer {
  readonly plan: string;
  readonly map: GraftMap;
  readonly standing: Standing;
}

/** Which choice wins, over “half are dead by” and the share of grafts that take; with where this programme stands. */
@customElement('oo-graft-map')
export class GraftMapPicture extends AnswerPicture<MapAnswer, MapLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, mapStyles];

  @property(pictured) override answer: MapAnswer | null = null;

  private shown: GraftMap | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    const map = this.answer?.map ?? null;
    // A finer map has other cells: what is read stays at its place.
    if (map && this.shown && typeof this.chosen === 'number' && map.cells.length !== this.shown.cells.length) this.read(sameCell(this.shown, this.chosen, map));
    this.shown = map;
    super.willUpdate(changed);
  }

  protected override layoutOf({ plan, map, standing }: MapAnswer, width: number): MapLayout {
    return mapLayout(map, standing, { width, measure: this.measure, mark: this.mark, plan });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: MapLayout): void {
    drawMap(svg, layout, { cell: this.reading === null ? null : (layout.cells[this.reading] ?? null) });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout) return nothing;
    const words = reading === null ? graftText.mapNone : cellWords(answer.map, reading);
    return html`<div data-mark=${this.mark}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.overtaken()} ${this.slider({ label: graftText.mapSlider, from: 1, to: answer.map.cells.length, words, plot: layout.plot })}
      </div>
      ${layout.unsaid.length > 0 ? html`<p class="key">${layout.unsaid.join('; ')}</p>` : nothing}
      <p class="read" aria-hidden="true">${reading === null ? html`<span class="keys">${graftText.mapKeys}</span>` : words}</p>
      ${this.data(this.table(answer))}
    </div>`;
  }

  /** Column by column: the break-even take, and what grafting gains in the row nearest to the programme's take. */
  private table({ map, standing }: MapAnswer): TemplateResult {
    const row = Math.floor(cellNear(map, standing.middle) / map.halfLives.length) * map.halfLives.length;
    return html`<table>
      <thead>
        <tr>
          ${graftText.tableHeads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${map.halfLives.map((months, column) => {
          const [edge, cell] = [map.line[column], map.cells[row + column]];
          return html`<tr>
            <th scope="row">${monthsInWords(months)}</th>
            <td>${edge ? breakEvenWords(edge) : nothing}</td>
            <td>${cell ? `${differenceInWords(cell.difference, cell.wins !== null)} (${differenceRange(cell.difference)})` : nothing}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  protected override get reading(): number | null {
    const { chosen, answer } = this;
    if (!answer || chosen === null || chosen === undefined) return null;
    return Math.min(chosen, answer.map.cells.length - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    if (!this.answer) return undefined;
    const { map, standing } = this.answer;
    return cellAfter(press, this.reading, map, cellNear(map, standing.middle));
  }

  protected override placeAt({ clientX, clientY }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout ? cellUnder(this.layout.cells, clientX - picture.left, clientY - picture.top) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-graft-map': GraftMapPicture;
  }
}
