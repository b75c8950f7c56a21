import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { z } from 'zod';
import { describeEdit } from '../../model/edits.ts';
import { programmeSchema, type Programme } from '../../model/programme.ts';
import { isRecord, schemaAt, valueAt, type Path } from '../../model/walk.ts';
import { shared } from '../../styles/shared.ts';
import { groupLabels } from '../../text/fields.ts';
import { emitChange, type OoChange } from './change.ts';
import { OoField } from './field.ts';
import { finerLine, isFiner } from './finer.ts';
import { drawItems, type Pen } from './form-draw.ts';
import { itemAt, itemsOf, pathKey, type FormContext, type FormItem } from './form-items.ts';
import { splitColumns } from './form-columns.ts';
import { formStyles } from './form.styles.ts';
import { keepFocus } from './keep-focus.ts';
import { quietChoice } from './row.styles.ts';
import { saidAt, unplaced, type Problem } from './form-problems.ts';

/** A field of the form: by its keys from the form’s own value (“rescue.month”), or by a path from the top of the programme. */
export type FormKey = string | { readonly key?: string; readonly at?: Path; readonly label?: string; readonly help?: string };

/** Some fields under a heading. */
export interface FormSection {
  readonly title: string;
  readonly keys: readonly FormKey[];
  readonly column?: 1 | 2;
}

/**
 * A form generated from a schema: every field of a value in the order of the schema, or some of them under headings.
 * @fires oo-change with the path from the top of the programme and a name for undo
 */
@customElement('oo-form')
export class OoForm extends LitElement {
  static override styles = [...shared, formStyles, quietChoice];

  /** Schema of the value; left out, the programme’s schema is followed to the path. */
  @property({ attribute: false }) schema: z.ZodType | undefined = undefined;
  /** Left out, what stands at the path. */
  @property({ attribute: false }) value: unknown = undefined;
  @property({ attribute: false }) path: Path = [];
  @property({ attribute: false }) programme: Programme | undefined = undefined;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property({ attribute: false }) sections: readonly FormSection[] | undefined = undefined;
  /** All in one column, however wide. */
  @property({ type: Boolean }) narrow = false;

  /** Whether the finer points were unfolded or folded; undefined: as is called for. */
  @state() private unfolded: boolean | undefined = undefined;
  @state() private spread: ReadonlySet<string> = new Set();
  /** Where the focus goes after something was added or taken out, by path: the first of these that is there. */
  private focusNext: readonly string[] = [];
  /** Edits of one field in one go. */
  private run: { readonly key: string; readonly before: unknown; readonly sent: unknown } | undefined = undefined;

  private get shape(): z.ZodType {
    return this.schema ?? schemaAt(programmeSchema, this.path, this.programme) ?? z.strictObject({});
  }

  private get whole(): unknown {
    return this.value ?? valueAt(this.programme, this.path);
  }

  private get context(): FormContext {
    return { programme: this.programme, spread: this.spread };
  }

  private itemFor(field: FormKey): FormItem | undefined {
    const { key = '', at, label, help } = typeof field === 'string' ? { key: field } : field;
    if (at) {
      const schema = schemaAt(programmeSchema, at, this.programme);
      return schema && itemAt(schema, valueAt(this.programme, at), at, this.context, { label, help }, valueAt(this.programme, at.slice(0, -1)));
    }
    const steps = key.split('.');
    const schema = schemaAt(this.shape, steps, this.whole);
    return (
      schema && itemAt(schema, valueAt(this.whole, steps), [...this.path, ...steps], this.context, { label, help }, valueAt(this.whole, steps.slice(0, -1)))
    );
  }

  private readonly onChange = (event: CustomEvent<OoChange>): void => {
    event.stopPropagation();
    const { path, value, label } = event.detail;
    this.send(path, value, label, this.valueBefore(path, value));
    // A range typed into a small box: the whole estimate is drawn in its place, and goes on having the focus.
    if (event.composedPath()[0] instanceof OoField && isRecord(value)) keepFocus(this, () => this.drawnAt([pathKey(path)]));
  };

  private send(path: Path, value: unknown, label: string, before: unknown): void {
    const { programme } = this;
    const named = programme ? describeEdit(path, before, value, programme, groupLabels) : label;
    emitChange(this, { path, value, label: named });
  }

  /** What stood at a path before the run of keystrokes that this edit belongs to: “400 → 650”, not “65 → 650”. */
  private valueBefore(path: Path, value: unknown): unknown {
    const key = pathKey(path);
    const now = valueAt(this.programme, path);
    const goesOn = this.run?.key === key && JSON.stringify(this.run.sent) === JSON.stringify(now);
    this.run = { key, before: goesOn ? this.run?.before : now, sent: value };
    return this.run.before;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    // Another entry begins folded.
    if (changed.has('path') && pathKey(changed.get('path') ?? []) !== pathKey(this.path)) this.unfolded = undefined;
  }

  private get pen(): Pen {
    return {
      programme: this.programme,
      saidAt: (path, deep) => saidAt(this.problems, path, deep),
      put: (path, value, label) => {
        this.focusNext = value === undefined ? neighbours(path) : [pathKey(path)];
        this.run = undefined;
        this.send(path, value, label, valueAt(this.programme, path));
      },
      spread: (path) => {
        this.spread = new Set([...this.spread, pathKey(path)]);
      },
    };
  }

  override updated(_changed: PropertyValues<this>): void {
    if (this.focusNext.length === 0) return;
    const target = this.drawnAt(this.focusNext);
    if (!target) return;
    this.focusNext = [];
    // Fields that have just been made draw themselves first.
    void this.settled().then(() => focusFirst(target));
  }

  private drawnAt(keys: readonly string[]): HTMLElement | undefined {
    const drawn = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-path]')];
    return keys.map((key) => drawn.find((element) => element.dataset['path'] === key)).find((element) => element !== undefined);
  }

  private async settled(): Promise<void> {
    for (const inner of this.renderRoot.querySelectorAll('*')) if (inner instanceof LitElement) await inner.updateComplete;
  }

  override render(): TemplateResult {
    const { pen } = this;
    const items = this.sections ? [] : itemsOf(this.shape, this.whole, this.path, this.context);
    const finer = items.filter((item) => isFiner(this.path, item));
    const columns = this.sections ? this.sectionColumns(this.sections) : this.itemColumns(items.filter((item) => !finer.includes(item)));
    const all = [...columns.flatMap((column) => column.flatMap((part) => part.items)), ...finer];
    const lost = unplaced(this.problems, this.path, all);
    return html`<div @oo-change=${this.onChange}>
      <p class="problem" aria-live="polite">${lost.join(' ')}</p>
      ${this.columns(columns, pen)} ${this.finer(finer, pen)}
    </div>`;
  }

  private columns(columns: readonly (readonly Part[])[], pen: Pen): TemplateResult {
    return html`<div class="columns ${columns.length < 2 || this.narrow ? 'one' : ''}">
      ${columns.map(
        (column) =>
          html`<div class="column">
            ${column.map(({ title, items }) =>
              title === ''
                ? drawItems(items, pen, '')
                : html`<fieldset class="section">
                    <legend>${title}</legend>
                    ${drawItems(items, pen, title)}
                  </fieldset>`,
            )}
          </div>`,
      )}
    </div>`;
  }

  /** What few need, folded under what it comes to; unfolded by itself where something in it is to be mended. */
  private finer(items: readonly FormItem[], pen: Pen): TemplateResult | typeof nothing {
    const line = items.length === 0 ? '' : finerLine(this.path, this.programme);
    if (line === '') return nothing;
    const open = this.unfolded ?? items.some(({ path }) => saidAt(this.problems, path, true).problem !== '');
    const onToggle = (event: Event): void => {
      if (event.target === event.currentTarget && event.target instanceof HTMLDetailsElement) this.unfolded = event.target.open;
    };
    return html`<details class="finer" ?open=${open} @toggle=${onToggle}>
      <summary>${line}</summary>
      ${open ? this.columns(this.itemColumns(items), pen) : nothing}
    </details>`;
  }

  private sectionColumns(sections: readonly FormSection[]): readonly (readonly Part[])[] {
    const parts = sections
      .map((section) => ({ title: section.title, column: section.column, items: section.keys.flatMap((key) => this.itemFor(key) ?? []) }))
      .filter(({ items }) => items.length > 0);
    const half = Math.ceil(parts.length / 2);
    const inColumn = (n: 1 | 2): readonly Part[] => parts.filter((part, i) => (part.column ?? (i < half ? 1 : 2)) === n);
    return [inColumn(1), inColumn(2)].filter((column) => column.length > 0);
  }

  private itemColumns(items: readonly FormItem[]): readonly (readonly Part[])[] {
    return (this.narrow ? [items] : splitColumns(items)).map((column) => [{ title: '', items: column }]);
  }
}

interface Part {
  readonly title: string;
  readonly items: readonly FormItem[];
}

/** What stands where something was taken out: what has moved up, what was before it, the button that would put it in again. */
function neighbours(path: Path): readonly string[] {
  const place = path.at(-1);
  const list = path.slice(0, -1);
  if (typeof place !== 'number') return [pathKey(path), pathKey(list)];
  return [pathKey(path), ...(place > 0 ? [pathKey([...list, place - 1])] : []), pathKey(list)];
}

/** Puts the focus on the first thing inside that takes it. */
function focusFirst(target: HTMLElement): void {
  const inner = target.matches('oo-field, oo-estimate, oo-choices, button, select')
    ? target
    : target.querySelector<HTMLElement>('oo-field, oo-estimate, oo-choices, button, select');
  inner?.focus();
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-form': OoForm;
  }
}
