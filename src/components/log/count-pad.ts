import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { COUNTED, type Batch, type Count, type CountedStage } from '../../model/log.ts';
import type { Problem } from '../../model/problem.ts';
import type { Programme } from '../../model/programme.ts';
import { noteCount, takeOutCount } from '../../seasonlog/edits.ts';
import { latestCount } from '../../seasonlog/standing.ts';
import { shared } from '../../styles/shared.ts';
import { countWords, log as words, stages, whenWords } from '../../text/log.ts';
import { logStyles } from './log.styles.ts';
import { box, choiceOf, emitLog, submits, trouble, wholeIn, type Choice } from './parts.ts';

type UnitName = NonNullable<Count['unit']>['name'];
const UNITS: readonly Choice<UnitName | 'flower'>[] = [
  { value: 'flower', words: words.count.flower },
  { value: 'cluster', words: 'cluster' },
  { value: 'bag', words: 'bag' },
  { value: 'bur', words: 'bur' },
  { value: 'branch', words: 'branch' },
];
const STAGES: readonly Choice<CountedStage>[] = COUNTED.map((value) => ({ value, words: stages[value].button }));

const padStyles = css`
  .stages .chips {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(9.5em, 1fr));
  }
  .stages .chip {
    min-height: 52px;
    text-align: center;
  }
  input[name='number'] {
    font-size: var(--size-chance-words);
    min-height: 52px;
    width: 6em;
  }
`;

/**
 * Notes a count of a batch: the stage, the number, the day. What was counted so far stands under it, each with its way out.
 * @fires oo-change with the batches of the log
 */
@customElement('oo-log-count')
export class LogCount extends LitElement {
  static override styles = [...shared, logStyles, padStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) batch!: Batch;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property() today = '';

  @state() private stage: CountedStage | '' = '';
  @state() private number = '';
  @state() private unit: UnitName | 'flower' = 'flower';
  @state() private inOne = '';
  /** Null: today. */
  @state() private day: string | null = null;
  @state() private problem = '';
  @query('input[name=number]') private readonly numberBox!: HTMLInputElement | null;

  private readonly chooseStage = (stage: CountedStage, byHand: boolean): void => {
    this.stage = stage;
    const last = latestCount(this.batch, stage)?.count.unit;
    this.unit = last?.name ?? 'flower';
    this.inOne = last ? String(last.flowers) : '';
    // A tap opens the number pad; keys that walk through the stages stay there.
    if (byHand) this.numberBox?.focus();
  };

  /** What would be noted, or null while something is missing. */
  private get count(): Count | null {
    const number = wholeIn(this.number, 0, 1e7);
    if (this.stage === '' || number === null) return null;
    const flowers = wholeIn(this.inOne, 1, 1000);
    const byUnit = this.stage === 'flowers' && this.unit !== 'flower';
    if (byUnit && flowers === null) return null;
    const when = this.day ?? this.today;
    return {
      stage: this.stage,
      count: number,
      ...(byUnit && this.unit !== 'flower' && flowers !== null ? { unit: { name: this.unit, flowers } } : {}),
      ...(when === '' ? {} : { when }),
    };
  }

  private readonly note = (): void => {
    const { count, batch, programme } = this;
    if (!count) {
      const unread = this.number.trim() !== '' && wholeIn(this.number, 0, 1e7) === null;
      const noUnit = this.stage === 'flowers' && this.unit !== 'flower' && wholeIn(this.inOne, 1, 1000) === null;
      this.problem = unread ? words.count.badNumber : noUnit && this.number.trim() !== '' ? words.count.badUnit : words.count.missing;
      return;
    }
    const next = noteCount(programme.log, batch.id, count);
    this.problem = next === programme.log ? words.count.full : '';
    if (next === programme.log) return;
    this.number = '';
    this.stage = '';
    emitLog(this, next, words.count.noted(countWords(count), batch.name));
  };

  private takeOut(place: number, count: Count): void {
    emitLog(this, takeOutCount(this.programme.log, this.batch.id, place), words.count.takenOut(countWords(count), this.batch.name));
  }

  protected override render(): TemplateResult {
    const { count, stage, batch } = this;
    const last = stage === '' ? null : latestCount(batch, stage)?.count;
    return html`<form novalidate @submit=${submits(this.note)}>
        <div class="stages">${choiceOf(words.count.stage, STAGES, stage, this.chooseStage)}</div>
        ${last ? html`<p class="quiet">${words.count.so(countWords(last), last.when === undefined ? '' : whenWords(last.when))}</p>` : nothing}
        ${stage === 'flowers' ? this.units() : nothing}
        <div class="fields">
          ${box({ label: words.count.number, value: this.number, mode: 'numeric', name: 'number', typed: (text) => (this.number = text) })}
          ${box({ label: words.count.when, value: this.day ?? this.today, mode: 'date', name: 'when', typed: (text) => (this.day = text) })}
          <button class="main">${count ? words.count.done(countWords(count)) : words.count.nothing}</button>
        </div>
        ${trouble(this.problem)}
      </form>
      ${this.counted()}`;
  }

  private units(): TemplateResult {
    return html`${choiceOf(words.count.per, UNITS, this.unit, (unit) => (this.unit = unit))}
    ${
      this.unit === 'flower'
        ? nothing
        : box({ label: words.count.inOne, value: this.inOne, mode: 'numeric', width: '6em', name: 'in-one', typed: (text) => (this.inOne = text) })
    }`;
  }

  private counted(): TemplateResult {
    const { counts } = this.batch;
    if (counts.length === 0) return html`<p class="quiet">${words.count.none}</p>`;
    return html`<ul class="noted" aria-label=${words.count.list}>
      ${counts.map((count, place) => {
        const flags = this.problems.filter(({ path }) => path[3] === 'counts' && path[4] === place);
        return html`<li>
          <span class="what"
            ><b>${countWords(count)}</b> <span class="quiet">${count.when === undefined ? '' : whenWords(count.when)}</span>
            <span class="quiet">${count.note ?? ''}</span></span
          >
          <button class="plain" aria-label=${words.count.takeOutThat(countWords(count))} type="button" @click=${() => this.takeOut(place, count)}>
            ${words.count.takeOut}
          </button>
          ${flags.map(({ message, path }) => html`<span class="flag">${words.table.flagged(path[5] === 'when' ? `The day ${message}` : message)}</span>`)}
        </li>`;
      })}
    </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-count': LogCount;
  }
}
