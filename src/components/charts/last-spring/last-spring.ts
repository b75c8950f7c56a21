import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { drawSprings } from '../../../charts/last-spring/draw.ts';
import { readSpring, springFinding, springLayout, type LaterPlan, type SpringLayout } from '../../../charts/last-spring/layout.ts';
import { shortName } from '../../../charts/marks.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { Outlook } from '../../../results/outlook.ts';
import { laterBegin } from '../../../statistics/last-spring.ts';
import { chanceText, common, percent, percentRange } from '../../../text/charts.ts';
import { springText } from '../../../text/charts-years.ts';
import { chanceStyles } from '../chance-by-year/chance-by-year.styles.ts';
import { ReadElement } from '../read-element.ts';

/** What is left of each plan’s chance when it begins in a later spring. */
@customElement('oo-last-spring')
export class LastSpring extends ReadElement {
  static override styles: CSSResultGroup = [ReadElement.styles, chanceStyles];

  private plans: readonly LaterPlan[] = [];
  private layout: SpringLayout | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (!this.laysOut(changed)) return;
    const { outlook, width, measure, words } = this;
    this.plans = (outlook?.plans ?? []).map((plan) => ({ plan: plan.id, mark: plan.mark, name: shortName(plan, words), later: laterBegin(plan) }));
    this.layout = outlook && width > 0 ? springLayout(this.plans, { startYear: outlook.startYear, lastYear: outlook.lastYear, width, measure }) : null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { outlook, layout } = this;
    if (!outlook || !layout) return nothing;
    return html`<section aria-label=${springText.name} aria-describedby="summary">
      ${this.head(springText.title, springText.intro(outlook.lastYear))}
      <p class="finding" id="summary">${springFinding(this.plans, outlook.startYear)}</p>
      <div class="picture">
        <svg aria-hidden="true" @pointerover=${this.liftUnder} @pointerout=${() => this.lift(null)}></svg>
        ${this.years(outlook, layout)} ${this.box(outlook, layout)}
        <ul class="plans">
          ${this.plans.map(
            ({ plan, mark, name, later: { half, any, skipped } }) =>
              html`<li
                data-mark=${mark}
                data-plan=${plan}
                class=${this.rests(plan)}
                @pointerenter=${() => this.lift(plan)}
                @pointerleave=${() => this.lift(null)}
              >
                <span class="mark" aria-hidden="true">${mark}</span
                ><span
                  ><b>${name}</b>:
                  ${half === null || any === null ? springText.endsNever : `${springText.ends(half, any)}; ${springText.skip(skipped.value)}`}</span
                >
              </li>`,
          )}
        </ul>
        <p class="under-words">${springText.note}</p>
      </div>
      ${this.data(html`${this.readOffs(outlook)}${this.table(outlook)}`)}
    </section>`;
  }

  private rests(plan: string): string {
    return this.lifted !== null && this.lifted !== plan ? 'resting' : '';
  }

  /** At first: the spring in which half of the likeliest plan’s chance is left. */
  protected override get reading(): number | null {
    const { outlook, plans, chosen } = this;
    if (!outlook) return null;
    if (chosen !== undefined) return chosen === null ? null : Math.min(outlook.lastYear, Math.max(outlook.startYear, chosen));
    return readSpring(plans, outlook.startYear)[0]?.plan.later.half ?? null;
  }

  private years({ startYear, lastYear, plans }: Outlook, { plot }: SpringLayout) {
    const { reading } = this;
    const said = reading === null ? [] : readSpring(this.plans, reading);
    const nameOf = (id: string) => plans.find((plan) => plan.id === id)?.name ?? id;
    const words =
      reading === null
        ? chanceText.none
        : springText.sliderValue(
            reading,
            said.map(({ plan, value }) => ({ name: nameOf(plan.plan), chance: percent(value) })),
          );
    return this.slider({ label: springText.slider, from: startYear, to: lastYear, words, plot });
  }

  private box({ startYear }: Outlook, { box }: SpringLayout) {
    const { reading } = this;
    if (reading === null && box) return nothing;
    const place = box ? `left: ${String(box.x)}px; top: ${String(box.y)}px; width: ${String(box.width)}px` : '';
    // Under the picture the box keeps its room when nothing is read, so that nothing below it moves.
    return html`<div class=${classMap({ box: true, inside: box !== null, under: box === null, empty: reading === null })} style=${place} aria-hidden="true">
      <h3>${springText.from(reading ?? startYear)}</h3>
      <ol>
        ${readSpring(this.plans, reading ?? startYear).map(
          ({ plan, value }) =>
            html`<li data-mark=${plan.mark} class=${this.rests(plan.plan)}>
              <span class="mark">${plan.mark}</span><span>${plan.name}</span><b>${percent(value)}</b>
            </li>`,
        )}
      </ol>
      <p class="keys">${chanceText.keys}</p>
    </div>`;
  }

  /** What is read off the lines, per plan. */
  private readOffs({ plans, startYear }: Outlook): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          ${springText.heads(startYear).map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${this.plans.map(
          ({ mark, name, later: { chances, half, any, skipped } }, index) =>
            html`<tr>
              <th scope="row">${mark} ${plans[index]?.name ?? name}</th>
              ${[chances[0], chances[1], skipped].map(
                (chance) => html`<td>${chance ? `${percent(chance.value)} (${percentRange(chance.low, chance.high)})` : common.noValue}</td>`,
              )}
              <td>${half ?? common.noValue}</td>
              <td>${any ?? common.noValue}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  private table({ plans }: Outlook): TemplateResult {
    const end = Math.max(...this.plans.map(({ later }) => later.any ?? 0));
    const years = this.plans[0]?.later.chances.map(({ year }) => year).filter((year) => year <= end) ?? [];
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${springText.spring}</th>
          ${plans.map(({ mark, name }) => html`<th scope="col">${mark} ${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${years.map(
          (year, index) =>
            html`<tr>
              <th scope="row">${year}</th>
              ${this.plans.map(({ later }) => {
                const chance = later.chances[index];
                return html`<td>${chance ? `${percent(chance.value)} (${percentRange(chance.low, chance.high)})` : nothing}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const picture = this.renderRoot.querySelector<SVGSVGElement>('.picture svg');
    const { layout, reading, plans, lifted } = this;
    if (!picture || !layout) return;
    const shares = new Map(reading === null ? [] : readSpring(plans, reading).map(({ plan, value }) => [plan.plan, value]));
    drawSprings(picture, layout, { reading, shares, lifted });
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.outlook ? yearAfter(press, this.reading, this.outlook.startYear, this.outlook.lastYear) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const { layout, outlook } = this;
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (!layout || !outlook || !picture) return null;
    return Math.min(outlook.lastYear, Math.max(outlook.startYear, Math.round(layout.calendar.yearAt(clientX - picture.left))));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-last-spring': LastSpring;
  }
}
