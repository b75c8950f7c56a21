import { css, html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawFared } from '../../charts/fared/draw.ts';
import { faredLayout, type FaredLayout } from '../../charts/fared/layout.ts';
import { yearAfter, type Press } from '../../charts/reading.ts';
import type { FaredYear } from '../../results/fared.ts';
import { faredSummary, faredText as words, yearWords } from '../../text/today.ts';
import { AnswerPicture, pictured } from '../pay/answer-picture.ts';
import { panelStyles } from '../pay/panel.styles.ts';

/** What was forecast of a plan, and what came, year by year. */
export interface FaredPlan {
  readonly name: string;
  readonly years: readonly FaredYear[];
  readonly startYear: number;
  readonly lastYear: number;
  /** First spring of which the log says nothing. */
  readonly today: number;
}

/** Bars of 8 in 10 futures and dots of the years in the log. It is read row by row. */
@customElement('oo-fared-picture')
export class FaredPicture extends AnswerPicture<FaredPlan, FaredLayout> {
  static override styles: CSSResultGroup = [
    AnswerPicture.styles,
    panelStyles,
    css`
      svg .head {
        font-weight: 700;
      }
      svg .label {
        fill: var(--ink2);
      }
      svg .bar {
        fill: var(--plan);
        opacity: 0.3;
      }
      svg .middle {
        stroke: var(--plan);
        stroke-width: 3;
      }
      svg .dot {
        fill: var(--ink);
        stroke: var(--paper);
        stroke-width: 2;
      }
      svg .dot.missed {
        fill: var(--paper);
        stroke: var(--warn);
        stroke-width: 3;
      }
      svg .point {
        fill: var(--warn);
      }
      @media (forced-colors: active) {
        svg .bar {
          fill: Highlight;
          opacity: 1;
        }
        svg .middle {
          stroke: CanvasText;
        }
        svg .dot {
          fill: CanvasText;
        }
      }
    `,
  ];

  @property(pictured) override answer: FaredPlan | null = null;

  protected override layoutOf({ years, ...calendar }: FaredPlan, width: number): FaredLayout {
    return faredLayout(years, { ...calendar, width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: FaredLayout): void {
    drawFared(svg, layout, this.reading);
  }

  private get rows(): readonly FaredYear[] {
    return this.answer?.years ?? [];
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading, rows } = this;
    if (!answer || !layout) return nothing;
    const row = reading === null ? undefined : rows[reading];
    const said = row ? yearWords(row, answer.lastYear) : words.noRow;
    return html`<section data-mark=${this.mark} aria-label=${words.picture(answer.name)}>
      <p class="visually-hidden">${faredSummary(rows, answer.lastYear)}</p>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.slider({ label: words.picture(answer.name), from: 1, to: Math.max(1, rows.length), words: said, plot: { left: 0, right: layout.width, top: layout.plot.top, bottom: layout.plot.bottom } })}
      </div>
      <p class="read" aria-hidden="true">${row ? said : html`<span class="keys">${words.keys}</span>`}</p>
    </section>`;
  }

  protected override get reading(): number | null {
    const { chosen, rows } = this;
    return chosen === null || chosen === undefined || rows.length === 0 ? null : Math.min(rows.length - 1, Math.max(0, chosen));
  }

  /** Counts from one, as it is read. */
  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  protected override placeFor(press: Press): number | null | undefined {
    const down = { ArrowDown: 'ArrowRight', ArrowUp: 'ArrowLeft' }[press.key];
    return yearAfter(down === undefined ? press : { ...press, key: down }, this.reading, 0, Math.max(0, this.rows.length - 1));
  }

  protected override placeAt({ clientY }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (!picture || !this.layout) return null;
    const far = this.layout.rows.map(({ y }) => Math.abs(y - (clientY - picture.top)));
    const least = Math.min(...far);
    return least > 30 ? null : far.indexOf(least);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-fared-picture': FaredPicture;
  }
}
