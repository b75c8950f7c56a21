import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { kindOf } from '../../../catalogue/catalogue.ts';
import { setAt } from '../../../model/edits.ts';
import { sentence } from '../../../model/problem.ts';
import type { Programme } from '../../../model/programme.ts';
import { draftSchema, EMPTY, filledIn, type Answers, type Draft } from '../../../start/answers.ts';
import { buildProgramme } from '../../../start/build.ts';
import { isRuleFor } from '../../../start/inheritance.ts';
import { firstTroubled, QUESTIONS, troubles, type Found } from '../../../start/problems.ts';
import { shared } from '../../../styles/shared.ts';
import { start } from '../../../text/start.ts';
import { badgeStyles } from '../../fields/badge.styles.ts';
import type { OoChange } from '../../fields/change.ts';
import { OoField } from '../../fields/field.ts';
import type { OpenEvent } from '../examples.ts';
import { pageStyles } from '../page.styles.ts';
import { isOfStart, stepOf, writeStep } from './address.ts';
import { keepAnswers, loadAnswers } from './kept.ts';
import { aboutCounts, aboutCross, aboutGoal, aboutMeans, aboutTree } from './questions.ts';
import { keyOf, type Hands, type Sheet } from './sheet.ts';
import { startStyles } from './start.styles.ts';

const isKind = (id: string): boolean => kindOf(id) !== undefined;
const JUNE = 5;

/** Another kind does not inherit as the one before: a rule that the catalogue knows in that one only is not kept. */
function withoutStrangeRule(draft: Draft): Draft {
  const { rule, ...known } = draft.known;
  return rule === undefined || isRuleFor(draft.tree.kind ?? '', rule) ? draft : { ...draft, known };
}

/** From June on, the next spring to pollinate in is next year’s. */
function springToCome(): number {
  const now = new Date();
  return now.getFullYear() + (now.getMonth() >= JUNE ? 1 : 0);
}

/**
 * “Start your own”: five questions, one at a time, from which a first programme with three plans is built.
 * @fires oo-open with the finished programme
 */
@customElement('oo-start')
export class OoStart extends LitElement {
  static override styles = [...shared, pageStyles, badgeStyles, startStyles];

  /** The first spring, where none was said. */
  @property({ type: Number }) spring = springToCome();

  @state() private draft: Draft = EMPTY;
  @state() private step = 0;
  /** Troubles of this question are shown from the first try to leave it on. */
  @state() private tried = false;
  @state() private refused: readonly string[] = [];
  private focusNext: string | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    const { step, draft } = loadAnswers();
    this.draft = draft;
    this.step = this.within(stepOf(location.hash) ?? step);
    writeStep(this.step, true);
    window.addEventListener('hashchange', this.onAddress);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('hashchange', this.onAddress);
  }

  /** Back and Forward of the browser go from question to question; nobody gets past one that lacks something. */
  private readonly onAddress = (): void => {
    if (!isOfStart(location.hash)) return;
    const step = this.within(stepOf(location.hash) ?? this.step);
    if (step !== this.step) this.show(step);
    writeStep(this.step, true);
  };

  /** No question after one that lacks something; a kind may have left the catalogue since it was chosen. */
  private within(step: number): number {
    const first = firstTroubled(this.draft, this.answers, isKind);
    return first === undefined ? step : Math.min(step, QUESTIONS.indexOf(first));
  }

  private get answers(): Answers {
    return filledIn(this.draft, this.spring);
  }

  private foundNow(): readonly Found[] {
    const question = QUESTIONS[this.step];
    return question ? troubles(question, this.draft, this.answers, isKind) : [];
  }

  private keep(draft: Draft, step = this.step): void {
    this.draft = draft;
    this.step = step;
    keepAnswers({ draft, step });
  }

  private readonly onChange = (event: CustomEvent<OoChange>): void => {
    // These are answers, not edits of the programme that is open.
    event.stopPropagation();
    const read = draftSchema.safeParse(setAt(this.draft, event.detail.path, event.detail.value));
    this.refused = [];
    if (read.success) this.keep(withoutStrangeRule(read.data));
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    const [target] = event.composedPath();
    if (event.key !== 'Enter' || event.isComposing || !(target instanceof HTMLInputElement)) return;
    event.preventDefault();
    this.goOn();
  };

  /** A box with text that cannot be read: what it last said would be taken silently. */
  private get unread(): OoField | undefined {
    return [...this.renderRoot.querySelectorAll('oo-field')].find((field) => field.problem === '' && field.renderRoot.querySelector('[aria-invalid="true"]'));
  }

  private readonly goOn = (): void => {
    this.tried = true;
    const [first] = this.foundNow();
    if (first) {
      this.focusNext = `[data-path="${keyOf(first.path)}"]`;
      this.requestUpdate();
      return;
    }
    const { unread } = this;
    if (unread) {
      unread.focus();
      return;
    }
    if (this.step < QUESTIONS.length - 1) this.goTo(this.step + 1);
    else this.finish();
  };

  private goTo(step: number): void {
    this.show(step);
    writeStep(this.step, false);
  }

  private show(step: number): void {
    this.tried = false;
    this.refused = [];
    this.focusNext = 'h1';
    this.keep(this.draft, step);
    this.requestUpdate();
  }

  private finish(): void {
    const reading = buildProgramme(this.answers);
    if (!reading.ok) {
      const document = reading.draft ?? null;
      this.refused = reading.problems.map((problem) => sentence(document, problem));
      return;
    }
    keepAnswers({ draft: this.draft, step: 0 });
    const detail = { document: reading.programme, name: reading.programme.title };
    this.dispatchEvent(new CustomEvent('oo-open', { detail, bubbles: true, composed: true }) satisfies OpenEvent);
  }

  private readonly hands: Hands = {
    takeKnown: ({ id, trait }) => {
      this.focusNext = '.known button';
      this.takeRule(id, this.draft.tree.trait ?? trait.name);
    },
    dropKnown: () => {
      this.focusNext = '[data-path="tree/trait"]';
      this.takeRule(undefined);
    },
    addPartner: () => {
      this.focusNext = `[data-path="partners/${String(this.draft.partners.length)}/name"]`;
      this.keep({ ...this.draft, partners: [...this.draft.partners, {}] });
    },
    removePartner: (place) => {
      this.focusNext = '[data-path="partners/0/name"]';
      this.keep({ ...this.draft, partners: this.draft.partners.toSpliced(place, 1) });
    },
  };

  private takeRule(rule: string | undefined, trait?: string): void {
    const { tree, known } = this.draft;
    const { rule: _old, ...rest } = known;
    const named = trait === undefined ? tree : { ...tree, trait };
    this.keep({ ...this.draft, tree: named, known: rule === undefined ? rest : { ...rest, rule } });
  }

  private readonly empty = (): void => {
    this.keep(EMPTY, 0);
    this.goTo(0);
  };

  protected override updated(_changed: PropertyValues): void {
    const { focusNext } = this;
    if (focusNext === undefined) return;
    this.focusNext = undefined;
    const target = this.renderRoot.querySelector<HTMLElement>(focusNext);
    if (focusNext === 'h1') window.scrollTo(0, 0);
    // A field that has just been made draws itself first.
    if (target instanceof OoField) void target.updateComplete.then(() => target.focus());
    else target?.focus();
  }

  protected override render(): TemplateResult {
    const { step } = this;
    const last = step === QUESTIONS.length - 1;
    return html`
      <div class="lead">
        <p>${start.lead} <b>${start.progress(step + 1, QUESTIONS.length)}</b></p>
        ${this.bough()}
      </div>
      <h1 tabindex="-1">${start.titles[step]}</h1>
      <p class="lede">${start.ledes[step]}</p>
      <div class="sheet" @oo-change=${this.onChange} @keydown=${this.onKey}>${this.question()}</div>
      ${
        this.refused.length > 0
          ? html`<div class="problems" role="alert">
              <p>${start.refused}</p>
              <ul>
                ${this.refused.map((line) => html`<li>${line}</li>`)}
              </ul>
            </div>`
          : nothing
      }
      <div class="onward">
        <button class="main" @click=${this.goOn}>${last ? start.finish : start.on}</button>
        ${step > 0 ? html`<button @click=${() => this.goTo(step - 1)}>${start.back}</button>` : nothing}
        ${step === 0 && this.draft !== EMPTY ? html`<button class="plain" @click=${this.empty}>${start.empty}</button>` : nothing}
      </div>
      ${this.soFar()}
    `;
  }

  /** The way through, drawn as a bough with a ring for each question; those answered lead back. */
  private bough(): TemplateResult {
    return html`<nav aria-label=${start.steps}>
      <ol class="bough">
        ${start.short.map((name, place) =>
          place < this.step
            ? html`<li class="done">
                <button aria-label=${start.goBack(name)} @click=${() => this.goTo(place)}><i></i><span>${name}</span></button>
              </li>`
            : html`<li aria-current=${place === this.step ? 'step' : 'false'}><i></i><span>${name}</span></li>`,
        )}
      </ol>
    </nav>`;
  }

  private question(): TemplateResult {
    const sheet: Sheet = { draft: this.draft, answers: this.answers, found: this.tried ? this.foundNow() : [] };
    switch (QUESTIONS[this.step]) {
      case 'cross':
        return aboutCross(sheet, this.hands);
      case 'means':
        return aboutMeans(sheet);
      case 'known':
        return aboutCounts(sheet);
      case 'goal':
        return aboutGoal(sheet, this.foundNow().length === 0 ? this.built() : undefined);
      default:
        return aboutTree(sheet, this.hands);
    }
  }

  private built(): Programme | undefined {
    const reading = buildProgramme(this.answers);
    return reading.ok ? reading.programme : undefined;
  }

  /** What was said so far, as a breeder would tell it. */
  private soFar(): TemplateResult | typeof nothing {
    const { tree, partners, way, means, counts } = this.answers;
    const said = [
      start.so.tree(tree.name, kindOf(tree.kind)?.name ?? '', tree.trait, tree.showed, tree.seasons, tree.standing),
      start.so.cross(
        way.how,
        partners.map(({ name }) => name),
      ),
      start.so.means(means.places, means.hours, means.firstSpring, means.lastYear),
      start.so.known(Object.keys(counts).length),
    ].slice(0, this.step);
    if (said.length === 0) return nothing;
    return html`<section class="so-far" aria-label=${start.soFar}>
      <p>${said.join(' ')}</p>
      <p class="quiet">${start.kept}</p>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-start': OoStart;
  }
}
