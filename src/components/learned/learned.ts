import { css, html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Batch } from '../../model/log.ts';
import { putsBack } from '../../seasonlog/puts.ts';
import type { Learned, Put } from '../../seasonlog/learned-types.ts';
import type { Lessons } from '../../state/lessons/lessons.ts';
import { learnedText, leftOut as reasons, myCounts } from '../../text/log-learned.ts';
import { lessons as words, rateNumber, rowName } from '../../text/log-lessons.ts';
import { events as eventWords, whenWords } from '../../text/log.ts';
import { emitChange } from '../fields/change.ts';
import { pieces } from '../pages/parts.ts';
import { LessonElement } from './lesson-element.ts';
import { farOff, shownRate } from './shown-rates.ts';
import './rates-picture.ts';

const learnedStyles = css`
  .apart {
    list-style: none;
    padding: 0;
  }
  .apart label {
    display: flex;
    align-items: center;
    gap: 10px;
    min-height: var(--target);
  }
  .apart input {
    flex: none;
    width: 24px;
    height: 24px;
    accent-color: var(--ink);
  }
`;

/**
 * What the counts teach about the programme's numbers: before and now, with one click to take them over and a way back.
 * @fires oo-change
 */
@customElement('oo-learned')
export class LearnedPart extends LessonElement {
  static override styles: CSSResultGroup = [LessonElement.styles, learnedStyles];

  private backOf({ used, puts }: Learned): Put[] | null {
    if (!used || this.overtaken) return null;
    const earlier = this.programmes.state.undo.toReversed().map(({ document }) => document);
    return putsBack(this.programme, puts, earlier, myCounts);
  }

  protected override render(): TemplateResult {
    const { lessons } = this.said;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.title}</h2>
      ${lessons ? this.taught(lessons) : this.stateWords()} ${this.apart()} ${lessons ? this.leftOut(lessons) : nothing}
    </section>`;
  }

  private taught({ rates }: Lessons): TemplateResult {
    const backs = new Map(rates.map((one) => [one.id, this.backOf(one)]));
    const rows = rates.map((one) => shownRate(one, backs.get(one.id) ?? null));
    const open = rates.filter(({ used, newer }) => !used || newer);
    if (rows.length === 0)
      return html`${this.stateWords()}
        <p>${learnedText.nothing}</p>`;
    const nameOf = (id: string): string => rowName(rows.find((row) => row.id === id) ?? { name: id, of: '' });
    const waves = rates.flatMap(({ id, wave }) => (wave ? [words.wave(nameOf(id), wave.winter, rateNumber(wave.took, 'share'))] : []));
    return html`<p class="finding">${pieces(words.finding(rows.length, rows.length - open.length, farOff(rows)))}</p>
      <p class="quiet intro">${words.intro}</p>
      <div class="buttons">
        ${
          open.length > 1
            ? html`<button
                type="button"
                class="main all"
                aria-disabled=${this.overtaken ? 'true' : 'false'}
                @click=${() =>
                  this.put(
                    open.flatMap(({ puts }) => puts),
                    words.usedAll(open.length),
                  )}
              >
                ${words.useAll(open.length)}
              </button>`
            : nothing
        }
        ${this.stateWords()}
      </div>
      <oo-rates-picture
        .answer=${rows}
        ?stale=${this.overtaken}
        @oo-use-counts=${({ detail: id }: CustomEvent<string>) => this.put(rates.find((one) => one.id === id)?.puts ?? [], words.used(nameOf(id)))}
        @oo-go-back=${({ detail: id }: CustomEvent<string>) => this.put(backs.get(id) ?? [], words.wentBack(nameOf(id)))}
      ></oo-rates-picture>
      <ul>
        ${waves.map((line) => html`<li>${line}</li>`)} ${rates.some(({ of }) => of.section === 'weather') ? html`<li>${words.luckNote}</li>` : nothing}
      </ul>`;
  }

  /** Batches that something befell, each with the switch that keeps it out of the rates. */
  private apart(): TemplateResult | typeof nothing {
    const { batches } = this.programme.log;
    const struck = batches.flatMap((batch, at) => (batch.events.length > 0 || batch.apart ? [{ batch, at }] : []));
    if (struck.length === 0) return nothing;
    return html`<h3>${words.apart}</h3>
      <p class="quiet intro">${words.apartNote}</p>
      <ul class="apart">
        ${struck.map(
          ({ batch, at }) =>
            html`<li>
              <label
                ><input type="checkbox" .checked=${live(batch.apart)} @change=${(event: Event) => this.setApart(event, batch, at)} /><span
                  >${words.apartFor(batch.name, batch.events.map(({ what, when }) => `${eventWords[what]} ${whenWords(when)}`).join('; '))}</span
                ></label
              >
            </li>`,
        )}
      </ul>`;
  }

  private setApart({ target }: Event, { name }: Batch, at: number): void {
    if (!(target instanceof HTMLInputElement)) return;
    const batches = this.programme.log.batches.map((batch, i) => (i === at ? { ...batch, apart: target.checked } : batch));
    emitChange(this, { path: ['log', 'batches'], value: batches, label: words.apartSet(name, target.checked) });
  }

  private leftOut({ leftOut }: Lessons): TemplateResult | typeof nothing {
    if (leftOut.length === 0) return nothing;
    return html`<details class="more">
      <summary>${words.leftOut(leftOut.length)}</summary>
      <ul>
        ${leftOut.map(({ name, why, about }) => html`<li>${name}: ${reasons[why]}${about === '' ? '' : ` (${about})`}</li>`)}
      </ul>
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-learned': LearnedPart;
  }
}
