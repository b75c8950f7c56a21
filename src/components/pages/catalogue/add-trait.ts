import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Programme, Tree } from '../../../model/programme.ts';
import { addTrait, traitOffers, type Shows, type TraitOffer } from '../../../start/add-trait.ts';
import { plainRule } from '../../../start/known-traits.ts';
import { shared } from '../../../styles/shared.ts';
import { catalogueText, knownInWords, ruleInWords } from '../../../text/catalogue.ts';
import { badge } from '../../fields/badge.ts';
import { badgeStyles } from '../../fields/badge.styles.ts';
import { emitChange } from '../../fields/change.ts';
import { catalogueStyles } from './catalogue.styles.ts';
import { figureList, groupsOf } from './figure-list.ts';
import { refused } from './refused.ts';

const words = catalogueText.trait;
const SHOWS: readonly Shows[] = ['unknown', 'yes', 'no'];

/**
 * Adds a trait whose inheritance is known, of a kind that the programme has: the trait, its genes and its rule, with the source.
 * @fires oo-change with the whole programme, so that undo takes it back in one step
 */
@customElement('oo-add-trait')
export class AddTrait extends LitElement {
  static override styles = [...shared, badgeStyles, catalogueStyles];

  @property({ attribute: false }) programme!: Programme;
  @state() private chosen = '';
  /** What was seen, by the id of a tree. */
  @state() private shows: Readonly<Record<string, Shows>> = {};
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
    this.shows = {};
    this.done = '';
  };

  private readonly onAdd = (offer: TraitOffer) => (): void => {
    const answer = addTrait(this.programme, offer, this.shows);
    if (!answer.ok) return;
    const { name } = offer.known;
    emitChange(this, { path: [], value: answer.programme, label: words.label(name) });
    this.done = catalogueText.took(words.added(name));
    this.chosen = '';
    this.toDone = true;
  };

  protected override render(): TemplateResult {
    const offers = traitOffers(this.programme);
    const kinds = [...new Set(offers.map(({ kind }) => kind))];
    const offer = offers.find(({ known }) => known.id === this.chosen);
    return html`
      ${
        offers.length === 0
          ? html`<p class="quiet">${words.noKinds}</p>`
          : html`<div class="choose">
              <label for="trait">${words.choose}</label>
              <select id="trait" @change=${this.onChoose}>
                <option value="" .selected=${live(offer === undefined)}>${words.none}</option>
                ${kinds.map(
                  (kind) =>
                    html`<optgroup label=${kind.name}>
                      ${offers
                        .filter((each) => each.kind === kind)
                        .map(({ known }) => html`<option value=${known.id} .selected=${live(known.id === this.chosen)}>${known.name}</option>`)}
                    </optgroup>`,
                )}
              </select>
            </div>`
      }
      <p class="done" role="status" tabindex="-1">${this.done}</p>
      ${offer ? this.offer(offer) : nothing}
    `;
  }

  private offer(offer: TraitOffer): TemplateResult {
    const { known, kind, trees } = offer;
    const answer = addTrait(this.programme, offer, this.shows);
    const groups = groupsOf({ traits: [known.trait] });
    return html`<div class="offer">
      <div>
        <p><b>${knownInWords(kind.name, known.name)}</b> ${ruleInWords[plainRule(known)]}</p>
        <p class="from">${badge(known.source)}<span class="note">${known.summary} ${known.source.note}</span></p>
      </div>
      ${
        trees.length === 0
          ? html`<p class="about">${words.noTrees(kind.name)}</p>`
          : html`<fieldset class="group">
              <legend>${words.trees}</legend>
              <p>${words.treesHelp}</p>
              ${trees.map((tree) => this.tree(tree))}
            </fieldset>`
      }
      <p class="comes" id="comes">
        ${words.comes(
          known.name,
          known.genes.map(({ name }) => name),
          trees.map(({ name }) => name),
        )}
      </p>
      ${answer.ok ? nothing : refused(this.programme, answer)}
      <div>
        <button class="main" aria-disabled=${answer.ok ? 'false' : 'true'} aria-describedby="comes refused" @click=${this.onAdd(offer)}>
          ${words.add(known.name)}
        </button>
      </div>
      ${figureList(groups)}
    </div>`;
  }

  private tree({ id, name }: Tree): TemplateResult {
    const now = this.shows[id] ?? 'unknown';
    const onChange = (event: Event): void => {
      const value = event.target instanceof HTMLSelectElement ? event.target.value : '';
      const shows = SHOWS.find((each) => each === value);
      if (shows) this.shows = { ...this.shows, [id]: shows };
    };
    return html`<div class="tree">
      <label for="tree-${id}">${name}</label>
      <select id="tree-${id}" @change=${onChange}>
        ${SHOWS.map((each) => html`<option value=${each} .selected=${live(each === now)}>${words.shows[each]}</option>`)}
      </select>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-add-trait': AddTrait;
  }
}
