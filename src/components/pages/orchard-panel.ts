import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { filledBlank } from '../../model/blanks.ts';
import { insertAt, removeAt } from '../../model/edits.ts';
import { freshId } from '../../model/plans.ts';
import { programmeSchema, type Programme, type Trait } from '../../model/programme.ts';
import { isRecord, type Problem } from '../../model/problem.ts';
import { blankTrait, withTraitType } from '../../model/trait-type.ts';
import { entrySchema, schemaAt } from '../../model/walk.ts';
import { shared } from '../../styles/shared.ts';
import { have, likely, SECTION_WORDS } from '../../text/app.ts';
import { groupWords } from '../../text/fields.ts';
import { panelText } from '../../text/tasted.ts';
import { emitChange } from '../fields/change.ts';
import type { FormSection } from '../fields/form.ts';
import type { FromCatalogueTool, ToCatalogueEvent } from './catalogue/from-catalogue.ts';
import { panelStyles } from './orchard-panel.styles.ts';

export type PanelSection = keyof typeof SECTION_WORDS;
const SECTIONS: readonly PanelSection[] = ['trees', 'kinds', 'traits', 'crosses', 'pools', 'stocks', 'facts', 'genes', 'gardens'];

/** Settings of the whole programme, above its entries. */
const WHOLE: readonly FormSection[] = [
  { title: 'Goal', keys: ['goal'], column: 1 },
  { title: 'Years', keys: ['title', 'startYear', 'lastYear'], column: 2 },
  { title: 'Limits', keys: ['limits'], column: 2 },
  { title: 'Weather', keys: ['weather'], column: 1 },
  { title: 'Hours', keys: ['hours'], column: 2 },
  { title: 'Money', keys: ['money'], column: 2 },
  { title: 'Inheritance', keys: ['incompatibility', 'origin'], column: 2 },
  { title: 'Futures', keys: ['runs', 'shuffleWord', 'guessesAsTheyStand', 'defaultPool'], column: 1 },
];

/** Problems of other sections are said there. */
const isWhole = ({ path: [first] }: Problem): boolean => first === undefined || WHOLE.some(({ keys }) => keys.some((key) => key === first));

/** Lists that the catalogue can add to. */
const IN_CATALOGUE: Partial<Record<PanelSection, FromCatalogueTool>> = { kinds: 'kind', crosses: 'kind', stocks: 'kind', traits: 'trait', genes: 'trait' };

const TYPES: readonly Trait['type'][] = ['shown', 'measured'];

/** All numbers of the programme: its own settings and its lists of trees, kinds, traits, crosses and so on, each a generated form. */
@customElement('oo-orchard-panel')
export class OrchardPanel extends LitElement {
  static override styles = [...shared, panelStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  /** Folded lists are not drawn: a form is only built when it is looked at. */
  @state() private opened: ReadonlySet<string> = new Set();
  /** Lists that are unfolded at first. */
  @property({ attribute: false }) start: readonly string[] = [];
  /** The page has the catalogue: lists of what it knows lead there. */
  @property({ type: Boolean }) catalogue = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.opened = new Set(this.start);
  }

  private readonly toggled = (key: string) => (event: Event) => {
    const { target } = event;
    if (!(target instanceof HTMLDetailsElement) || target !== event.currentTarget) return;
    const next = new Set(this.opened);
    if (target.open) next.add(key);
    else next.delete(key);
    this.opened = next;
  };

  /** Adds an entry filled with what the schema and the document suggest, under a fresh id. */
  private add(section: PanelSection): void {
    const list = schemaAt(programmeSchema, [section], this.programme);
    const schema = list && entrySchema(list);
    const blank = schema && filledBlank(schema, this.programme, [section, this.programme[section].length]);
    if (!blank?.ok || !isRecord(blank.value)) return;
    const used = this.programme[section].map(({ id }) => id);
    const name = `New ${SECTION_WORDS[section].one.replace(/^an? /, '')}`;
    const entry = { ...blank.value, id: freshId(name, used), name };
    this.replace([section], insertAt(this.programme, [section, used.length], entry), likely.added(name));
    this.opened = new Set([...this.opened, section, `${section}/${entry.id}`]);
    this.goTo(`${section}/${entry.id}`);
  }

  /** To the line of an entry, once the document has come back and it is drawn. */
  private goTo(key: string): void {
    setTimeout(() => {
      void this.updateComplete.then(() => this.summaryOf(key)?.focus());
    });
  }

  private summaryOf(key: string): HTMLElement | null {
    return [...this.renderRoot.querySelectorAll<HTMLElement>('details')].find((each) => each.dataset['key'] === key)?.querySelector('summary') ?? null;
  }

  private removeEntry(section: PanelSection, at: number, name: string): void {
    const list = this.programme[section];
    const next = list[at + 1] ?? list[at - 1];
    this.replace([section], removeAt(this.programme, [section, at]), likely.removed(name));
    // Even where the same button now stands for the next entry: a second press must not take that out too.
    this.goTo(next ? `${section}/${next.id}` : section);
  }

  private setType(at: number, type: Trait['type']): void {
    const next = withTraitType(this.programme, at, type);
    const name = this.programme.traits[at]?.name ?? '';
    if (next !== this.programme) emitChange(this, { path: [], value: next, label: panelText.typeChanged(name, panelText[type]) });
  }

  private replace(path: readonly string[], document: unknown, label: string): void {
    const [section] = path;
    if (isRecord(document) && section !== undefined) emitChange(this, { path, value: document[section], label });
  }

  private flag(path: readonly (string | number)[]): TemplateResult | typeof nothing {
    const isFlagged = this.problems.some((problem) => path.every((key, i) => problem.path[i] === key));
    return isFlagged ? html`<span class="flag">${likely.toMend}</span>` : nothing;
  }

  protected override render(): TemplateResult {
    return html`
      <details class="section" ?open=${this.opened.has('whole')} @toggle=${this.toggled('whole')}>
        <summary>${likely.whole}</summary>
        ${
          this.opened.has('whole')
            ? html`<div class="whole">
                <oo-form
                  .path=${[]}
                  .schema=${programmeSchema}
                  .value=${this.programme}
                  .programme=${this.programme}
                  .problems=${this.problems.filter(isWhole)}
                  .sections=${WHOLE}
                ></oo-form>
              </div>`
            : ''
        }
      </details>
      ${SECTIONS.map((section) => this.section(section))}
    `;
  }

  private section(section: PanelSection): TemplateResult {
    const { title, one } = SECTION_WORDS[section];
    const entries = this.programme[section];
    const open = this.opened.has(section);
    const help = groupWords([section])?.help;
    return html`<details class="section" data-key=${section} ?open=${open} @toggle=${this.toggled(section)}>
      <summary>${title} <span class="quiet">${String(entries.length)}</span>${this.flag([section])}</summary>
      ${
        open
          ? html`${help === undefined ? nothing : html`<p class="help">${help}</p>`}${entries.map((entry, i) => this.entry(section, entry, i))}
              <div class="buttons">
                <button @click=${() => this.add(section)}>${likely.addEntry(one)}</button>
                ${this.toCatalogue(section)}
              </div>`
          : ''
      }
    </details>`;
  }

  private toCatalogue(section: PanelSection): TemplateResult | typeof nothing {
    const detail = IN_CATALOGUE[section];
    if (!this.catalogue || detail === undefined) return nothing;
    const go = () => this.dispatchEvent(new CustomEvent('oo-to-catalogue', { detail, bubbles: true, composed: true }) satisfies ToCatalogueEvent);
    return html`<button class="plain" @click=${go}>${have.fromCatalogue[detail]}</button>`;
  }

  /** A few words behind the name, so that a list can be read without unfolding it. */
  private hint(section: PanelSection, at: number): string {
    const { programme } = this;
    const kind = (id: string | undefined) => programme.kinds.find((entry) => entry.id === id)?.name ?? '';
    // A hybrid as a parent: “pear × (pear × quince)”.
    const parent = (id: string) => (kind(id).includes('×') ? `(${kind(id)})` : kind(id));
    switch (section) {
      case 'trees':
        return [kind(programme.trees[at]?.kind), programme.trees[at]?.s ?? ''].filter(Boolean).join(', ');
      case 'crosses': {
        const cross = programme.crosses[at];
        return cross ? `${parent(cross.seed)} × ${parent(cross.pollen)}, gives ${kind(cross.gives)}` : '';
      }
      case 'traits':
        return panelText[programme.traits[at]?.type ?? 'shown'];
      case 'gardens':
        return at === 0 ? panelText.home : '';
      default:
        return '';
    }
  }

  /** What kind of trait it is can be changed in place; what that takes along is said beside it. */
  private typeChoice(at: number): TemplateResult {
    const type = this.programme.traits[at]?.type ?? 'shown';
    const id = `type-${String(at)}`;
    const onChange = (event: Event): void => {
      const chosen = event.target instanceof HTMLSelectElement ? event.target.value : '';
      const wanted = TYPES.find((each) => each === chosen);
      if (wanted) this.setType(at, wanted);
    };
    return html`<div class="type">
      <label for=${id}>${panelText.traitType}</label>
      <select id=${id} aria-describedby="${id}-note" @change=${onChange}>
        ${TYPES.map((each) => {
          const can = each === type || blankTrait(each, this.programme).ok;
          return html`<option value=${each} ?disabled=${!can} .selected=${live(each === type)}>
            ${can ? panelText[each] : `${panelText[each]} (${panelText.needsGene})`}
          </option>`;
        })}
      </select>
      <p class="quiet" id="${id}-note">${panelText.typeNote}</p>
    </div>`;
  }

  private entry(section: PanelSection, { id, name }: { readonly id: string; readonly name: string }, at: number): TemplateResult {
    const key = `${section}/${id}`;
    const open = this.opened.has(key);
    return html`<details class="entry" data-key=${key} ?open=${open} @toggle=${this.toggled(key)}>
      <summary>${name} <span class="quiet">${this.hint(section, at)}</span>${this.flag([section, at])}</summary>
      ${
        open
          ? html`<div>
              ${section === 'traits' ? this.typeChoice(at) : nothing}
              <oo-form .path=${[section, at]} .programme=${this.programme} .problems=${this.problems}></oo-form>
              <div class="buttons"><button @click=${() => this.removeEntry(section, at, name)}>${likely.removeEntry(name)}</button></div>
            </div>`
          : ''
      }
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-orchard-panel': OrchardPanel;
  }
}
