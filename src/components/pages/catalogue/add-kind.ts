import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { kinds } from '../../../catalogue/catalogue.ts';
import { printEstimate } from '../../../model/estimate-forms.ts';
import type { Programme } from '../../../model/programme.ts';
import { tallySources } from '../../../model/sources.ts';
import { addKind, ITSELF, kindOffer, STOCKS, wantedParts, type KindOffer, type Part } from '../../../start/add-kind.ts';
import { shared } from '../../../styles/shared.ts';
import { catalogueText, type Coming } from '../../../text/catalogue.ts';
import { badgeStyles } from '../../fields/badge.styles.ts';
import { emitChange } from '../../fields/change.ts';
import { catalogueStyles } from './catalogue.styles.ts';
import { figureList, groupsOf, sourced } from './figure-list.ts';
import { refused } from './refused.ts';

const words = catalogueText.kind;

function coming(parts: readonly Part[]): Coming {
  const list = <T>(pick: (part: Part) => readonly T[]): T[] => parts.flatMap(pick);
  return {
    kinds: list(({ kinds: added }) => added.map(({ name }) => name)),
    crosses: list(({ crosses }) => crosses).length,
    stocks: list(({ stocks }) => stocks).length,
    figures: tallySources(parts.map(({ kinds: added, crosses, stocks }) => [added, crosses, stocks])),
  };
}

/**
 * Adds a kind of the catalogue to the programme: itself, its crosses with the kinds that are there, its rootstocks. What is there already
 * is left as it is and not offered again.
 * @fires oo-change with the whole programme, so that undo takes it back in one step
 */
@customElement('oo-add-kind')
export class AddKind extends LitElement {
  static override styles = [...shared, badgeStyles, catalogueStyles];

  @property({ attribute: false }) programme!: Programme;
  @state() private chosen = '';
  /** Parts that were ticked otherwise than they stand at first. */
  @state() private turned: ReadonlySet<string> = new Set();
  @state() private done = '';
  private toDone = false;

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('select')?.focus(options);
  }

  protected override updated(): void {
    if (!this.toDone) return;
    this.toDone = false;
    this.renderRoot.querySelector<HTMLElement>('.done')?.focus();
  }

  private readonly onChoose = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    this.chosen = event.target.value;
    this.turned = new Set();
    this.done = '';
  };

  private wanted({ parts }: KindOffer): ReadonlySet<string> {
    return new Set(parts.filter(({ id, pair }) => (pair?.known !== 'unheard-of') !== this.turned.has(id)).map(({ id }) => id));
  }

  private readonly onAdd = (offer: KindOffer) => (): void => {
    const wanted = this.wanted(offer);
    const parts = wantedParts(offer, wanted);
    const answer = addKind(this.programme, offer, wanted);
    if (!answer.ok || parts.length === 0) return;
    const { name } = offer.entry;
    emitChange(this, { path: [], value: answer.programme, label: offer.present ? words.labelMissing(name) : words.label(name) });
    this.done = catalogueText.took(words.added(coming(parts)));
    this.chosen = '';
    this.toDone = true;
  };

  protected override render(): TemplateResult {
    return html`
      <div class="choose">
        <label for="kind">${words.choose}</label>
        <select id="kind" @change=${this.onChoose}>
          <option value="" .selected=${live(this.chosen === '')}>${words.none}</option>
          ${kinds.map(({ id }) => this.option(id))}
        </select>
      </div>
      <p class="done" role="status" tabindex="-1">${this.done}</p>
      ${this.chosen === '' ? nothing : this.offer(kindOffer(this.programme, this.chosen))}
    `;
  }

  private option(id: string): TemplateResult {
    const { entry, present, parts } = kindOffer(this.programme, id);
    const said = !present ? entry.name : parts.length === 0 ? words.complete(entry.name) : words.partly(entry.name);
    return html`<option value=${id} ?disabled=${parts.length === 0} .selected=${live(this.chosen === id)}>${said}</option>`;
  }

  private offer(offer: KindOffer): TemplateResult {
    const { entry, present } = offer;
    const wanted = this.wanted(offer);
    const parts = wantedParts(offer, wanted);
    const answer = addKind(this.programme, offer, wanted);
    const can = answer.ok && parts.length > 0;
    const groups = groupsOf({
      kinds: parts.flatMap((part) => part.kinds),
      crosses: parts.flatMap(({ crosses }) => crosses),
      stocks: parts.flatMap(({ stocks }) => stocks),
    });
    return html`<div class="offer">
      <div>
        <p class="about"><i>${entry.botanical}</i>. ${words.seed(entry.name)} ${printEstimate(entry.chilling)} ${words.days}.</p>
        <p class="from">${sourced(entry.chilling.source)}</p>
        ${entry.notes.map((note) => html`<p class="about">${note}</p>`)}
      </div>
      <fieldset class="group">
        <legend>${words.what}</legend>
        ${offer.parts.map((part) => this.partLine(offer, part, wanted.has(part.id)))}
      </fieldset>
      <p class="comes" id="comes">${parts.length === 0 ? words.nothing : words.comes(coming(parts))}</p>
      ${answer.ok ? nothing : refused(this.programme, answer)}
      <div>
        <button class="main" aria-disabled=${can ? 'false' : 'true'} aria-describedby="comes refused" @click=${this.onAdd(offer)}>
          ${present ? words.addMissing(entry.name) : words.add(entry.name)}
        </button>
      </div>
      ${figureList(groups)}
    </div>`;
  }

  private partLine({ entry, present }: KindOffer, part: Part, wanted: boolean): TemplateResult {
    const fixed = part.id === ITSELF && !present;
    const onChange = (): void => {
      const turned = new Set(this.turned);
      if (!turned.delete(part.id)) turned.add(part.id);
      this.turned = turned;
    };
    const note = fixed ? words.always : part.pair ? words.pair[part.pair.known] : part.id === STOCKS ? part.stocks.map(({ name }) => name).join('; ') : '';
    const name = this.partName(entry.name, present, part);
    return html`<div class="tick">
      ${
        fixed
          ? html`<span class="fixed" aria-hidden="true">✓</span><span>${name}</span>`
          : html`<input type="checkbox" id=${part.id} .checked=${live(wanted)} aria-describedby="${part.id}-note" @change=${onChange} />
              <label for=${part.id}>${name}</label>`
      }
      <p id="${part.id}-note">${note}</p>
    </div>`;
  }

  private partName(name: string, present: boolean, { id, pair, kinds: added, crosses, stocks }: Part): string {
    if (pair) return words.crosses(pair.name, crosses.length, pair.ways, added[0]?.name);
    if (id === STOCKS) return words.stocks(stocks.length, name);
    return present ? words.within(name) : words.itself(name);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-add-kind': AddKind;
  }
}
