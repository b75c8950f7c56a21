import { html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Batch } from '../../model/log.ts';
import type { Programme } from '../../model/programme.ts';
import { noteEvent, takeOutEvent, type LogEvent } from '../../seasonlog/edits.ts';
import { shared } from '../../styles/shared.ts';
import { events as eventWords, log as words, whenWords } from '../../text/log.ts';
import { logStyles } from './log.styles.ts';
import { box, choiceOf, emitLog, submits, trouble, wholeIn, type Choice } from './parts.ts';

const WHAT: readonly Choice<LogEvent['what']>[] = (['frost', 'drought', 'waterlogging', 'rodents', 'disease', 'moved', 'other'] as const).map((value) => ({
  value,
  words: eventWords[value],
}));

/**
 * What befell a batch and says nothing of its rates: frost, rodents, a move.
 * @fires oo-change with the batches of the log
 */
@customElement('oo-log-event')
export class LogEvents extends LitElement {
  static override styles = [...shared, logStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) batch!: Batch;
  @property() today = '';

  @state() private what: LogEvent['what'] | '' = '';
  @state() private day: string | null = null;
  @state() private lost = '';
  @state() private words = '';
  @state() private problem = '';

  private readonly note = (): void => {
    const lost = this.lost.trim() === '' ? 0 : wholeIn(this.lost, 0, 1e7);
    const when = this.day ?? this.today;
    this.problem = lost === null ? words.event.badLost : when === '' || this.what === '' ? words.event.badWhen : '';
    if (lost === null || this.what === '' || when === '') return;
    const { what, programme, batch } = this;
    const next = noteEvent(programme.log, batch.id, { what, when, lost, ...(this.words.trim() === '' ? {} : { note: this.words.trim() }) });
    this.problem = next === programme.log ? words.event.full : '';
    if (next === programme.log) return;
    this.what = '';
    this.lost = '';
    this.words = '';
    emitLog(this, next, words.event.noted(eventWords[what], batch.name));
  };

  protected override render(): TemplateResult {
    const { programme, batch } = this;
    return html`<p class="quiet">${words.event.note}</p>
      ${
        batch.events.length === 0
          ? ''
          : html`<ul class="noted">
              ${batch.events.map(
                ({ what, when, lost, note }, place) =>
                  html`<li>
                    <span class="what"
                      ><b>${eventWords[what]}${words.event.lostWords(lost)}</b> <span class="quiet">${whenWords(when)}</span>
                      <span class="quiet">${note ?? ''}</span></span
                    >
                    <button
                      class="plain"
                      type="button"
                      aria-label=${words.count.takeOutThat(`${eventWords[what]}, ${whenWords(when)}`)}
                      @click=${() => emitLog(this, takeOutEvent(programme.log, batch.id, place), words.event.takenOut(eventWords[what], batch.name))}
                    >
                      ${words.count.takeOut}
                    </button>
                  </li>`,
              )}
            </ul>`
      }
      <form novalidate @submit=${submits(this.note)}>
        ${choiceOf(words.event.what, WHAT, this.what, (what) => (this.what = what))}
        <div class="fields">
          ${box({ label: words.event.when, value: this.day ?? this.today, mode: 'date', typed: (text) => (this.day = text) })}
          ${box({ label: words.event.lost, value: this.lost, mode: 'numeric', width: '6em', typed: (text) => (this.lost = text) })}
          ${box({ label: words.event.words, value: this.words, width: '16em', most: 2000, typed: (text) => (this.words = text) })}
          <button ?disabled=${this.what === ''}>${words.event.done}</button>
        </div>
        ${trouble(this.problem)}
      </form>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-event': LogEvents;
  }
}
