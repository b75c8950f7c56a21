import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { yearAfter, type Press } from '../../charts/reading.ts';
import { drawToday } from '../../charts/today-by-year/draw.ts';
import { todayLayout, type TodayLayout, type TodayPlan } from '../../charts/today-by-year/layout.ts';
import type { PlanOutlook } from '../../results/outlook.ts';
import { percent, percentRange } from '../../text/charts.ts';
import { today as words } from '../../text/today.ts';
import { AnswerPicture, pictured } from '../pay/answer-picture.ts';
import { panelStyles } from '../pay/panel.styles.ts';

const at = (plan: PlanOutlook | null, year: number) => plan?.chanceByYear.find((point) => point.year === year);

/** One plan's chance by year from what stands today, with the first forecast as a dashed line. */
@customElement('oo-today-picture')
export class TodayPicture extends AnswerPicture<TodayPlan, TodayLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, panelStyles];

  @property(pictured) override answer: TodayPlan | null = null;

  protected override layoutOf(answer: TodayPlan, width: number): TodayLayout {
    return todayLayout(answer, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: TodayLayout): void {
    const { answer, reading: year } = this;
    const shares =
      year === null ? [] : [answer?.first ?? null, answer && year >= answer.year - 1 ? answer.now : null].flatMap((plan) => at(plan, year)?.value ?? []);
    drawToday(svg, layout, year === null ? null : { year, shares });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout) return nothing;
    const said = reading === null ? words.none : words.at(reading, at(answer.now, reading)?.value ?? 0, at(answer.first, reading)?.value ?? 0);
    const { panel, firstYear, lastYear } = layout;
    return html`<section data-mark=${answer.now.mark} aria-label=${words.picture(answer.now.name)}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.overtaken()} ${this.slider({ label: words.slider, from: firstYear, to: lastYear, words: said, plot: panel.plot })}
      </div>
      <p class="read" aria-hidden="true">${reading === null ? html`<span class="keys">${words.keys}</span>` : said}</p>
      ${this.data(this.table(answer))}
    </section>`;
  }

  private table({ now, first, year }: TodayPlan): TemplateResult {
    const cell = (plan: PlanOutlook | null, of: number) => {
      const point = at(plan, of);
      return html`<td>${point ? `${percent(point.value)} (${percentRange(point.low, point.high)})` : nothing}</td>`;
    };
    return html`<table>
      <thead>
        <tr>
          ${words.tableHeads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${now.chanceByYear
          .filter((point) => point.year >= year - 1)
          .map(
            (point) =>
              html`<tr>
                <th scope="row">${point.year}</th>
                ${cell(now, point.year)} ${cell(first, point.year)}
              </tr>`,
          )}
      </tbody>
    </table>`;
  }

  protected override get reading(): number | null {
    return this.chosen === null || this.chosen === undefined || !this.layout
      ? null
      : Math.min(this.layout.lastYear, Math.max(this.layout.firstYear, this.chosen));
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.layout ? yearAfter(press, this.reading, this.layout.firstYear, this.layout.lastYear) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout ? this.layout.yearAt(clientX - picture.left) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-today-picture': TodayPicture;
  }
}
