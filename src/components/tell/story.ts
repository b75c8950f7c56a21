import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { ifDefined } from 'lit/directives/if-defined.js';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import { FIRST_CHOICES } from '../../handout/choices.ts';
import { handoutOf, type Handout } from '../../handout/handout.ts';
import { hundredSvg, phoneTimeline, signSvg } from '../../handout/sheet.ts';
import { sentence } from '../../model/problem.ts';
import type { Programme } from '../../model/programme.ts';
import type { Reading } from '../../model/read.ts';
import { documentOf } from '../../state/keeping.ts';
import { outlookOf } from '../../state/outlook.ts';
import { shared } from '../../styles/shared.ts';
import { story } from '../../text/story.ts';
import type { LinkChoiceEvent } from '../app/opened-link.ts';
import { pieces } from '../pages/parts.ts';
import { StoreElement } from '../store-element.ts';
import { programmeFragment } from './story-link.ts';
import { storyStyles } from './story.styles.ts';

/**
 * Somebody’s programme out of a link, told in four steps to read. Its futures are counted here, in the one store of results; the document on
 * the page stays as it is, and its own results come back with it.
 */
@customElement('oo-story')
export class OoStory extends StoreElement {
  static override styles = [...shared, storyStyles];

  /** The address after “#”. */
  @property() fragment = '';
  @property({ attribute: false }) read: ((fragment: string) => Promise<Reading>) | null = null;

  @state() private reading: Reading | null = null;
  @state() private place = 0;
  @query('h1') private readonly heading!: HTMLElement | null;
  private stop: (() => void) | null = null;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop?.();
    this.stop = null;
    void this.runs.update(this.programmes.state.runnable);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('fragment') || !this.read) return;
    const { fragment } = this;
    this.reading = null;
    this.place = 0;
    void this.read(programmeFragment(fragment)).then((reading) => {
      if (fragment !== this.fragment || !this.isConnected) return;
      this.reading = reading;
      this.count();
    });
  }

  /** The programme that can be run; one with something to mend is not told. */
  private get programme(): Programme | null {
    return this.reading?.ok === true ? this.reading.programme : null;
  }

  /** Counts the futures of the story, and goes on doing so when a change of the own document would take the store back. */
  private count(): void {
    this.stop?.();
    const tell = () => {
      const { programme } = this;
      if (programme) void this.runs.update(programme);
    };
    this.stop = this.programmes.subscribe(tell);
    tell();
  }

  private readonly own = (): void => {
    const document = this.reading && documentOf(this.reading);
    if (!document) return;
    this.dispatchEvent(new CustomEvent('oo-link-choice', { detail: { document, name: document.title, how: 'keep' } }) satisfies LinkChoiceEvent);
  };

  private async go(place: number): Promise<void> {
    this.place = place;
    await this.updateComplete;
    window.scrollTo(0, 0);
    this.heading?.focus();
  }

  protected override render(): TemplateResult {
    const document = this.reading && documentOf(this.reading);
    return html`<header>
        <strong>${document ? document.title : story.product}</strong>
        ${document ? html`<span class="quiet">${document.example ? `${story.example} · ` : ''}${story.product}</span>` : nothing}
      </header>
      <main id="answer" tabindex="-1">${this.body()}</main>`;
  }

  private body(): TemplateResult {
    const { reading, programme } = this;
    if (!reading) return html`<h1 role="status" tabindex="-1">${story.reading}</h1>`;
    if (programme) return this.told(programme);
    const draft = documentOf(reading);
    if (draft)
      return html`<h1 tabindex="-1">${draft.title}</h1>
        <p class="text">${story.toMend}</p>
        ${this.ways()}`;
    return html`<div role="alert">
        <h1 tabindex="-1">${story.damaged}</h1>
        ${reading.ok ? nothing : reading.problems.slice(0, 3).map((problem) => html`<p class="note">${sentence(null, problem)}</p>`)}
        <p class="note">${story.ask}</p>
      </div>
      <div class="own"><a class="button main" href="#/mine">${story.leave}</a></div>`;
  }

  private told(programme: Programme): TemplateResult {
    const { runs } = this;
    const outlook = outlookOf(programme, runs.state);
    const fits = outlook !== null && runs.state.stale.size === 0;
    const handout = fits ? handoutOf(programme, outlook, FIRST_CHOICES, { date: '', link: null }, '') : null;
    const { done, wanted, failure } = runs.state;
    return html`<ol class="steps" aria-label=${story.stepsName}>
        ${story.steps.map(
          (name, at) =>
            html`<li>
              <button
                type="button"
                aria-label=${`${String(at + 1)}: ${name}`}
                aria-current=${ifDefined(at === this.place ? 'step' : undefined)}
                @click=${() => void this.go(at)}
              >
                ${at + 1}
              </button>
            </li>`,
        )}
      </ol>
      <p class="quiet">${story.step(this.place + 1, story.steps.length)} · ${story.steps[this.place]}</p>
      ${handout ? this.step(handout) : html`<h1 tabindex="-1">${story.waiting}</h1>`}
      <p class="counting" role="status">${failure !== null ? story.failed(failure) : done < wanted ? story.counting(done, wanted) : nothing}</p>
      <div class="walk">
        <button type="button" ?disabled=${this.place === 0} @click=${() => void this.go(this.place - 1)}>${story.before}</button>
        <button type="button" class="main" ?disabled=${this.place === story.steps.length - 1} @click=${() => void this.go(this.place + 1)}>
          ${story.next}
        </button>
      </div>
      ${this.ways()}`;
  }

  private ways(): TemplateResult {
    return html`<div class="own">
      <p>${story.readOnly} ${story.ownHelp}</p>
      <button type="button" @click=${this.own}>${story.own}</button>
      <a class="button" href="#/mine">${story.leave}</a>
    </div>`;
  }

  private step(handout: Handout): TemplateResult {
    const { headline, said, hard, futures, nothing: nothingAtAll, asks, lead, cautions } = handout;
    switch (this.place) {
      case 0:
        return html`<h1 tabindex="-1">${headline.wanted}</h1>
          <p class="text">${said.proven}</p>
          <p class="text">${hard}</p>`;
      case 1:
        return html`<h1 tabindex="-1">${said.half === '' ? story.steps[1] : said.half}</h1>
          <p class="text">${said.effort}</p>
          <figure>${unsafeHTML(phoneTimeline(handout, 'story'))}</figure>`;
      case 2:
        return html`<h1 tabindex="-1">${pieces(headline.answer)}</h1>
          <p class="text">${nothingAtAll}</p>
          <figure class="ends">
            ${unsafeHTML(hundredSvg(handout))}
            <ul>
              ${futures.map(
                ({ mark, count, words }) =>
                  html`<li>
                    ${unsafeHTML(signSvg(mark, handout))}<span><b>${count}</b>${story.inHundred(words)}</span>
                  </li>`,
              )}
            </ul>
          </figure>
          <p class="text">${said.trust} ${said.guesses}</p>`;
      default:
        return html`<h1 tabindex="-1">${story.steps[3]}</h1>
          <p class="text">${story.asks(lead.mark, lead.name)}</p>
          <ul class="asks">
            ${asks.map(({ who, what, when }) => html`<li><span class="when">${when}</span><b>${who}:</b> ${what}</li>`)}
          </ul>
          <div class="care">
            <p><b>${story.care}.</b> ${cautions.join(' ')}</p>
          </div>`;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-story': OoStory;
  }
}
