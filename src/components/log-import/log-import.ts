import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Programme } from '../../model/programme.ts';
import { batchesCsv, treesCsv } from '../../seasonlog/export.ts';
import { textOf, type Encoding } from '../../seasonlog/import/bytes.ts';
import { asks, type ColumnChoice } from '../../seasonlog/import/columns.ts';
import { importOf, type Import, type ImportChoices } from '../../seasonlog/import/import.ts';
import { SEPARATORS, tableOf } from '../../seasonlog/import/table.ts';
import { slug } from '../../storage/file.ts';
import { shared } from '../../styles/shared.ts';
import { batchName, crossWords } from '../../text/log.ts';
import { logImport as words } from '../../text/log-import.ts';
import { saveAsFile } from '../files.ts';
import { emitLog, wholeIn } from '../log/parts.ts';
import { columnList, picker } from './columns.ts';
import { logImportStyles } from './log-import.styles.ts';
import { becomes, doubts, MORE, previewTable } from './preview.ts';

/** A table that was chosen or pasted, before it is added. */
interface Source {
  readonly name: string;
  readonly text: string;
  readonly encoding: Encoding;
}

const LARGEST = 20 * 1024 * 1024;

/**
 * Brings a table into the season log in steps that can be seen: how it was understood, what each column is, which cells are doubtful, what it
 * becomes; and takes the log out as tables.
 * @fires oo-change with the batches of the log, one step of undo
 */
@customElement('oo-log-import')
export class LogImport extends LitElement {
  static override styles = [...shared, logImportStyles];

  @property({ attribute: false }) programme!: Programme;

  @state() private source: Source | null = null;
  @state() private choices: ImportChoices = {};
  @state() private pasting = false;
  /** How many doubtful cells of each sort are shown, where it is more than a few. */
  @state() private shown: ReadonlyMap<string, number> = new Map();
  @state() private said = '';
  @query('.found') private readonly foundPart!: HTMLElement | null;
  @query('textarea') private readonly box!: HTMLTextAreaElement | null;
  @query('.status') private readonly status!: HTMLElement | null;
  @query('input[type=file]') private readonly file!: HTMLInputElement | null;

  /** What was pasted last, to be mended and looked at again. */
  private pasted = '';

  private seen: { readonly of: readonly unknown[]; readonly import: Import } | null = null;

  /** What the table says, worked out anew only if something it depends on has changed. */
  private understood({ text }: Source): Import {
    const of = [text, this.choices, this.programme];
    if (this.seen && of.every((each, i) => each === this.seen?.of[i])) return this.seen.import;
    const { programme } = this;
    const found = importOf(text, programme, this.choices, (parents, year) => batchName(crossWords(parents, programme), year));
    this.seen = { of, import: found };
    return found;
  }

  /** Looks at the text of a table, as if a file of that name had been chosen. */
  take(name: string, text: string, encoding: Encoding = 'utf-8'): void {
    if (encoding === 'no text' || tableOf(text).headers.length === 0) {
      this.tell(encoding === 'no text' ? words.noText : words.empty);
      return;
    }
    this.source = { name, text, encoding };
    this.pasting = false;
    this.choices = {};
    this.shown = new Map();
    this.said = '';
    void this.updateComplete.then(() => this.foundPart?.focus());
  }

  private tell(said: string): void {
    this.said = said;
    void this.updateComplete.then(() => this.status?.focus());
  }

  private readonly opened = async (): Promise<void> => {
    const input = this.file;
    const file = input?.files?.[0];
    if (!input || !file) return;
    if (file.size > LARGEST) {
      this.tell(words.tooLarge);
      return;
    }
    try {
      const { text, encoding } = textOf(new Uint8Array(await file.arrayBuffer()));
      this.take(file.name, text, encoding);
    } catch {
      this.tell(words.unreadable);
    }
    // The same file can be chosen again.
    input.value = '';
  };

  private readonly add = (): void => {
    const { source } = this;
    if (!source) return;
    const { log, newBatches, grown, newTrees } = this.understood(source).additions;
    const said = words.added(newBatches, grown, newTrees, source.name);
    this.leave();
    emitLog(this, log, said);
    this.tell(said);
  };

  private readonly leave = (): void => {
    this.source = null;
    this.pasting = false;
    this.seen = null;
  };

  private choose(column: number, choice: ColumnChoice): void {
    const columns = this.choices.columns ?? {};
    this.choices = { ...this.choices, columns: { ...columns, [column]: { ...columns[column], ...choice } } };
  }

  private readonly save = (which: 'batches' | 'trees'): void => {
    const { programme } = this;
    const csv = which === 'batches' ? batchesCsv(programme.log, programme) : treesCsv(programme.log, programme);
    saveAsFile(`${slug(programme.title)}-${words.fileNames[which]}.csv`, csv, 'text/csv;charset=utf-8');
  };

  protected override render(): TemplateResult {
    const { batches } = this.programme.log;
    return html`
      <h2>${words.title}</h2>
      <p class="quiet intro">${words.intro}</p>
      <div class="buttons">
        <button type="button" @click=${() => this.file?.click()}>${words.choose}</button>
        <button type="button" aria-expanded=${this.pasting ? 'true' : 'false'} @click=${this.togglePaste}>${words.paste}</button>
        <input type="file" accept=".csv,.tsv,.txt,.tab,text/csv,text/tab-separated-values,text/plain" hidden @change=${this.opened} />
      </div>
      ${this.pasting ? this.pasteBox() : nothing} ${this.source ? this.found(this.source) : nothing}
      <p class="status" role="status" tabindex="-1">${this.said}</p>
      ${
        batches.length === 0
          ? nothing
          : html`<div class="out">
              <h3>${words.out}</h3>
              <p class="quiet intro">${words.outIntro}</p>
              <div class="buttons">
                <button type="button" @click=${() => this.save('batches')}>${words.batchesFile}</button>
                ${batches.some(({ trees }) => trees.length > 0) ? html`<button type="button" @click=${() => this.save('trees')}>${words.treesFile}</button>` : nothing}
              </div>
            </div>`
      }
    `;
  }

  private readonly togglePaste = (): void => {
    this.pasting = !this.pasting;
    if (this.pasting) void this.updateComplete.then(() => this.box?.focus());
  };

  private readonly lookAtPasted = (): void => {
    this.pasted = this.box?.value ?? '';
    this.take(words.pasted, this.pasted);
  };

  private pasteBox(): TemplateResult {
    return html`<div class="paste">
      <label class="field"
        ><span>${words.pasteLabel}</span><textarea spellcheck="false" autocomplete="off" autocapitalize="off" .value=${this.pasted}></textarea>
      </label>
      <div class="buttons"><button type="button" class="main" @click=${() => this.lookAtPasted()}>${words.look}</button></div>
    </div>`;
  }

  private found(source: Source): TemplateResult {
    const found = this.understood(source);
    return html`<section class="found" tabindex="-1" aria-label=${source.name}>
      <p class="understood">${this.sentence(source, found)} ${this.readings(found)}</p>
      ${this.warnings(source, found).map((line) => html`<p>${line}</p>`)} ${this.tableChoices(found)}
      <h3>${words.columns}</h3>
      <p class="quiet">${words.columnsIntro}</p>
      ${columnList(found, this.programme.traits, (column, choice) => this.choose(column, choice))} ${this.kinds(found)} ${this.year(found)}
      ${previewTable(found)} ${doubts(found, this.shown, (key, number) => (this.shown = new Map(this.shown).set(key, number)))} ${becomes(found)}
      ${this.adding(found)}
    </section>`;
  }

  private sentence({ name, text }: Source, { table, read }: Import): string {
    const { rows, headers, separator, crlf } = table;
    return words.understood({
      name,
      rows: rows.length,
      columns: headers.length,
      separator,
      crlf,
      marked: text.startsWith('\ufeff') || this.source?.encoding === 'utf-8 marked',
      ofTrees: read.ofTrees,
    });
  }

  /** How figures, days and seasons are read, said once where all columns agree. */
  private readings({ table, columns }: Import): string {
    const { reads } = words;
    const said = { mark: new Set<string>(), order: new Set<string>(), season: new Set<string>() };
    columns.forEach((column, c) => {
      const asked = asks(
        column,
        table.rows.map((row) => row[c] ?? ''),
      );
      if (asked.mark) said.mark.add(reads.mark[column.mark ?? 'none']);
      if (asked.order) said.order.add(reads.order[column.order ?? 'none']);
      if (asked.season) said.season.add(reads.season[column.season]);
    });
    return [...new Set(Object.values(said).flatMap((each) => (each.size > 1 ? [reads.mixed] : [...each])))].join(' ');
  }

  private warnings({ encoding }: Source, { table, read, additions }: Import): string[] {
    const lines = [
      words.encodings[encoding] ?? '',
      table.above.length > 0 ? words.above(table.above) : '',
      table.ragged.length > 0 ? words.ragged(table.ragged.length) : '',
      table.looseQuotes ? words.looseQuotes : '',
      read.cutNotes > 0 ? words.cutNotes(read.cutNotes) : '',
      read.noRoom > 0 ? words.noRoomInside(read.noRoom) : '',
      additions.noRoom > 0 ? words.noRoom(additions.noRoom) : '',
    ];
    return lines.filter((line) => line !== '');
  }

  private tableChoices({ table }: Import): TemplateResult {
    // Other cuts make other columns: what was chosen of the old ones says nothing of the new.
    return html`<div class="fields">
      <div class="field">
        <span aria-hidden="true">${words.separator}</span>
        ${picker({
          label: words.separator,
          value: table.separator,
          options: SEPARATORS.map((separator) => [separator, words.separatorName(separator)] as const),
          chosen: (separator) => {
            this.choices = { ...this.choices, separator, columns: {} };
          },
        })}
      </div>
      <div class="field">
        <span aria-hidden="true">${words.firstLine}</span>
        ${picker({
          label: words.firstLine,
          value: table.headed ? 'yes' : 'no',
          options: [
            ['yes', words.headed.yes],
            ['no', words.headed.no],
          ],
          chosen: (headed) => {
            this.choices = { ...this.choices, headed: headed === 'yes', columns: {} };
          },
        })}
      </div>
    </div>`;
  }

  private kinds({ parents }: Import): TemplateResult | typeof nothing {
    if (parents.length === 0) return nothing;
    const options = [['', words.kind] as const, ...this.programme.kinds.map(({ id, name }) => [id, name] as const)];
    return html`<h3>${words.parents}</h3>
      <p class="quiet">${words.parentsIntro}</p>
      <div class="fields">
        ${parents.map(
          ({ key, name, batches }) =>
            html`<div class="field">
              <span aria-hidden="true">${words.parent(name, batches)}</span>
              ${picker({
                label: words.parent(name, batches),
                value: this.choices.kinds?.[key] ?? '',
                options,
                chosen: (kind) => {
                  this.choices = { ...this.choices, kinds: { ...this.choices.kinds, [key]: kind } };
                },
              })}
            </div>`,
        )}
      </div>`;
  }

  private year({ read }: Import): TemplateResult | typeof nothing {
    if (read.withoutYear === 0) return nothing;
    return html`<div class="fields">
      <label class="field"
        ><span>${words.year(read.withoutYear)}</span
        ><input
          type="text"
          name="year"
          inputmode="numeric"
          autocomplete="off"
          maxlength="4"
          .value=${live(String(this.choices.year ?? this.programme.startYear))}
          @change=${({ target }: Event) => {
            const year = target instanceof HTMLInputElement ? wholeIn(target.value, 1500, 3000) : null;
            if (year !== null) this.choices = { ...this.choices, year };
            else this.requestUpdate();
          }}
      /></label>
    </div>`;
  }

  private adding({ additions }: Import): TemplateResult {
    const { newBatches, grown, newTrees, rowsThere, rows, differs, log } = additions;
    const nothingNew = log === this.programme.log;
    return html`
      ${differs.slice(0, MORE).map(({ batch, tag }) => html`<p class="quiet">${words.differs(batch, tag)}</p>`)}
      <p>${rows === 0 ? words.noRows : nothingNew ? words.allThere(rows) : rowsThere > 0 ? words.there(rowsThere, rows) : nothing}</p>
      <div class="buttons">
        ${nothingNew ? nothing : html`<button type="button" class="main add" @click=${this.add}>${words.add(newBatches, grown, newTrees)}</button>`}
        <button type="button" class="plain leave" @click=${this.leave}>${words.leave}</button>
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-import': LogImport;
  }
}
