import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { firstProven, tellingYear } from '../../../charts/chance-by-year/crossing.ts';
import { drawChance } from '../../../charts/chance-by-year/draw.ts';
import { chanceLayout, type ChanceLayout } from '../../../charts/chance-by-year/layout.ts';
import { readingAt } from '../../../charts/chance-by-year/reading.ts';
import { shortName } from '../../../charts/marks.ts';
import { clip } from '../../../charts/measure.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { Outlook } from '../../../results/outlook.ts';
import { leadChange } from '../../../statistics/lead.ts';
import { chanceText, percent, percentRange, plusMinus } from '../../../text/charts.ts';
import { ReadElement } from '../read-element.ts';
import { chanceStyles } from './chance-by-year.styles.ts';

/**
 * Chance of a proven tree by each year, per plan. A reading rule lists all plans at one year: it follows the mouse, a finger or the arrow keys.
 */
@customElement('oo-chance-by-year')
export class ChanceByYear extends ReadElement {
  static override styles: CSSResultGroup = [ReadElement.styles, chanceStyles];

  /** Year to read; undefined lets the picture choose the year that tells most, null shows no reading. */
  @property({ attribute: false }) year: number | null | undefined = undefined;

  private layout: ChanceLayout | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (changed.has('year')) this.read(undefined);
    if (!this.laysOut(changed)) return;
    this.layout = this.outlook && this.width > 0 ? chanceLayout(this.outlook, { width: this.width, measure: this.measure, words: this.words }) : null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { outlook, layout } = this;
    if (!outlook || !layout) return nothing;
    const plans = outlook.plans;
    const ends = [...plans].sort((a, b) => b.chance.value - a.chance.value);
    const summary = chanceText.summary(
      ends.map(({ mark, chance }) => ({ mark, chance: chance.value })),
      outlook.lastYear,
    );
    return html`<section aria-label=${chanceText.name} aria-describedby="summary">
      ${this.head(this.title_(outlook), this.intro(outlook, layout))}
      <p class="visually-hidden" id="summary">${summary} ${layout.noteText}</p>
      <div class="picture">
        <svg aria-hidden="true" @pointerover=${this.liftUnder} @pointerout=${() => this.lift(null)}></svg>
        ${this.years(outlook, layout)} ${this.box(outlook, layout)} ${layout.note ? nothing : html`<p class="under-words">${layout.noteText}</p>`}
      </div>
      ${this.data(this.table(outlook))}
    </section>`;
  }

  private title_({ plans }: Outlook): string {
    const crossing = leadChange(plans);
    const nameOf = (id: string) => {
      const plan = plans.find((other) => other.id === id);
      return plan ? shortName(plan, this.words) : id;
    };
    return crossing ? chanceText.titleCross(nameOf(crossing.early), nameOf(crossing.late), crossing.year) : chanceText.title;
  }

  private intro({ plans, runs }: Outlook, { dropped, firstYear }: ChanceLayout): string {
    const widest = [...plans].sort((a, b) => b.chance.high - b.chance.low - (a.chance.high - a.chance.low))[0];
    const half = widest ? plusMinus(widest.chance.low, widest.chance.high) : '';
    const words = chanceText.intro(
      half,
      runs,
      plans.some(({ guessesByYear }) => guessesByYear !== null),
    );
    return dropped ? `${words} ${chanceText.starts(firstYear)}` : words;
  }

  protected override get reading(): number | null {
    const plans = this.outlook?.plans ?? [];
    const wanted = this.chosen !== undefined ? this.chosen : this.year !== undefined ? this.year : tellingYear(plans);
    if (wanted === null || !this.layout) return null;
    return Math.min(this.layout.lastYear, Math.max(this.layout.firstYear, wanted));
  }

  private years({ plans }: Outlook, { plot, firstYear, lastYear }: ChanceLayout) {
    const { reading } = this;
    const words =
      reading === null
        ? chanceText.none
        : chanceText.sliderValue(
            reading,
            readingAt(plans, reading).map(({ plan, value }) => ({ name: plan.name, chance: value })),
          );
    return this.slider({ label: chanceText.slider, from: firstYear, to: lastYear, words, plot });
  }

  private box({ plans, lastYear }: Outlook, { box }: ChanceLayout) {
    const { reading } = this;
    if (reading === null && box) return nothing;
    const place = box ? `left: ${String(box.x)}px; top: ${String(box.y)}px; width: ${String(box.width)}px` : '';
    // Under the picture the box keeps its room when nothing is read, so that nothing below it moves.
    return html`<div class=${classMap({ box: true, inside: box !== null, under: box === null, empty: reading === null })} style=${place} aria-hidden="true">
      <h3>${chanceText.endOf(reading ?? lastYear)}</h3>
      <ol>
        ${readingAt(plans, reading ?? lastYear).map(
          ({ plan, value }) =>
            html`<li data-mark=${plan.mark} class=${this.lifted !== null && this.lifted !== plan.id ? 'resting' : ''}>
              <span class="mark">${plan.mark}</span
              ><span>${box ? clip(shortName(plan, this.words), box.nameRoom, 17, this.measure) : shortName(plan, this.words)}</span><b>${percent(value)}</b>
            </li>`,
        )}
      </ol>
      <p class="keys">${chanceText.keys(box === null)}</p>
    </div>`;
  }

  private table({ plans, startYear, lastYear }: Outlook): TemplateResult {
    const from = Math.max(startYear, (firstProven(plans) ?? lastYear) - 1);
    const years = plans[0]?.chanceByYear.map(({ year }) => year).filter((year) => year >= from) ?? [];
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${chanceText.year}</th>
          ${plans.map(({ mark, name }) => html`<th scope="col">${mark} ${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${years.map(
          (year) =>
            html`<tr>
              <th scope="row">${year}</th>
              ${plans.map(({ chanceByYear }) => {
                const point = chanceByYear.find((other) => other.year === year);
                return html`<td>${point ? `${percent(point.value)} (${percentRange(point.low, point.high)})` : nothing}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const picture = this.renderRoot.querySelector<SVGSVGElement>('.picture svg');
    const { outlook, layout, reading } = this;
    if (!picture || !outlook || !layout) return;
    const shares = new Map(reading === null ? [] : readingAt(outlook.plans, reading).map(({ plan, value }) => [plan.id, value]));
    drawChance(picture, layout, { reading, shares, lifted: this.lifted });
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.layout ? yearAfter(press, this.reading, this.layout.firstYear, this.layout.lastYear) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const { layout } = this;
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (!layout || !picture) return null;
    // The end of a year stands at year + ½.
    return Math.min(layout.lastYear, Math.max(layout.firstYear, Math.round(layout.calendar.yearAt(clientX - picture.left) - 0.5)));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-chance-by-year': ChanceByYear;
  }
}
