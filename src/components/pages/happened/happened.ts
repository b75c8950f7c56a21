import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Programme } from '../../../model/programme.ts';
import { standingToday } from '../../../seasonlog/standing.ts';
import { shared } from '../../../styles/shared.ts';
import { log as words } from '../../../text/log.ts';
import '../../log/add-batch.ts';
import '../../log/log-table.ts';
import type { LogTable } from '../../log/log-table.ts';
import { todayHere } from '../../log/parts.ts';
import { StoreElement } from '../../store-element.ts';
import { pageStyles } from '../page.styles.ts';
import { care, pieces, problemList } from '../parts.ts';
import { happenedStyles } from './happened.styles.ts';
import { AFTER_THE_LOG, BEFORE_THE_LOG, SECTIONS, type SectionName } from './sections.ts';

/** “What has happened?”: the season log, and what its counts say. */
@customElement('oo-happened')
export class Happened extends StoreElement {
  static override styles = [...shared, pageStyles, happenedStyles];

  /** Calendar day, year-month-day. */
  @property() today = todayHere();

  @state() private adding = false;
  @state() private open = '';
  /** How many steps of undo there were after the last edit on this page; 0: none yet. */
  @state() private steps = 0;
  @query('oo-log-table') private readonly table!: LogTable | null;
  @query('button.add') private readonly addButton!: HTMLButtonElement | null;

  constructor() {
    super();
    // The store takes the edit after it has left this page.
    this.addEventListener('oo-change', () => queueMicrotask(() => (this.steps = this.programmes.state.undo.length)));
  }

  private readonly added = ({ detail: id }: CustomEvent<string>): void => {
    this.adding = false;
    this.open = id;
    void this.updateComplete.then(() => this.table?.focusBatch(id));
  };

  private readonly undo = (): void => {
    this.programmes.undo();
    this.steps = 0;
    // The bar goes, and with it the focus: back to the batch that is open, or to the button that adds one.
    const here = this.programmes.state.programme.log.batches.some(({ id }) => id === this.open);
    void this.updateComplete.then(() => (here ? void this.table?.focusBatch(this.open) : this.addButton?.focus()));
  };

  private readonly leaveAdding = (): void => {
    this.adding = false;
    void this.updateComplete.then(() => this.addButton?.focus());
  };

  protected override render(): TemplateResult {
    const { programme, problems } = this.programmes.state;
    const empty = programme.log.batches.length === 0;
    return html`
      <h1>${pieces(words.headline(standingToday(programme)))}</h1>
      <p class="lede">${empty ? words.ledeEmpty : words.lede}</p>
      ${problemList(
        programme,
        problems.filter(({ stops }) => stops),
      )}
      ${empty ? nothing : this.parts(BEFORE_THE_LOG, programme)}
      <section class="part" aria-labelledby="log-title">
        <h2 id="log-title">${words.title}</h2>
        ${empty ? nothing : html`<p class="quiet">${words.intro}</p>`} ${this.adder(programme, empty)}
        <oo-log-table
          .programme=${programme}
          .problems=${problems}
          .today=${this.today}
          .open=${this.open}
          @oo-open-batch=${({ detail }: CustomEvent<string | null>) => (this.open = detail ?? '')}
        ></oo-log-table>
      </section>
      ${this.parts(empty ? ['files'] : AFTER_THE_LOG, programme)}
      <p class="keep quiet">${words.keep}</p>
      ${care(programme, this.runs.engine)} ${this.undoBar()}
    `;
  }

  private parts(names: readonly SectionName[], programme: Programme): unknown {
    const drawn = names.flatMap((name) => {
      const part = SECTIONS[name]?.(programme) ?? null;
      return part ? [{ name, part }] : [];
    });
    // By name: the part that brings tables in stays the same one, with what it has to say, when the first batch brings others before it.
    return repeat(
      drawn,
      ({ name }) => name,
      ({ part }) => html`<div class="part">${part}</div>`,
    );
  }

  private adder(programme: Programme, empty: boolean): TemplateResult {
    if (!this.adding)
      return html`<div class="buttons">
        <button type="button" class="add ${empty ? 'main' : ''}" @click=${() => (this.adding = true)}>${words.addBatch}</button>
      </div>`;
    return html`<div class="adding">
      <h3>${words.add.title}</h3>
      <oo-log-add .programme=${programme} .today=${this.today} @oo-batch-added=${this.added} @oo-cancel=${this.leaveAdding}></oo-log-add>
    </div>`;
  }

  /** What was noted last, with its way back, within reach of the thumb. */
  private undoBar(): TemplateResult {
    const { undo } = this.programmes.state;
    const last = this.steps > 0 && undo.length === this.steps ? undo.at(-1) : undefined;
    return html`<div class="noted" role="status">
      ${
        last
          ? html`<span>${last.named}</span><button type="button" aria-label=${words.count.undo(last.named)} @click=${this.undo}>${words.undo}</button>`
          : nothing
      }
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-happened': Happened;
  }
}
