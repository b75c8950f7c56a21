import { consume } from '@lit/context';
import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { Answer, AskOptions, CannotSay } from '../../decisions/question.ts';
import { isAnswerTo, type AnswerTo, type QuestionId } from '../../decisions/questions.ts';
import type { Programme } from '../../model/programme.ts';
import { NEVER_ASKED, type Asked, type AnswersStore } from '../../state/answers-store.ts';
import { shared } from '../../styles/shared.ts';
import { pay } from '../../text/pay.ts';
import type { Piece } from '../../text/headline.ts';
import { answersContext } from '../contexts.ts';
import { pieces } from '../pages/parts.ts';
import { StoreController } from '../store-controller.ts';
import { StoreElement } from '../store-element.ts';
import { answerStyles } from './answer.styles.ts';

/** What is said of a question whatever its answer. */
export interface QuestionWords {
  /** The question as a title. */
  readonly asking: string;
  /** One small sentence under it: what is compared, or what it rests on. */
  readonly about: string;
  /** How the answer is worked out, by method and source, for whoever wants to check. */
  readonly method: string;
  /** On the button of a question that is much work; one without is asked as soon as it is seen. */
  readonly button?: string;
}

/**
 * A question on the page and its answer: asked when it comes into view, or at a button where it is much work. The finding is its title;
 * picture, words and table are the subclass's.
 */
export abstract class AnswerElement<Id extends QuestionId, Options extends AskOptions = AskOptions> extends StoreElement {
  static override styles: CSSResultGroup = [...shared, answerStyles];

  @consume({ context: answersContext, subscribe: true })
  @state()
  protected answers!: AnswersStore;

  /** Id of the plan that is asked about. */
  @property({ attribute: false }) plan = '';

  @state() private seen = false;
  /** Much work was asked for with the button. */
  @state() private wanted = false;
  private readonly sight = new IntersectionObserver(
    (entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) this.seen = true;
    },
    { rootMargin: '300px' },
  );

  protected abstract readonly question: Id;
  /** What is said of it whatever the answer. */
  protected abstract readonly words: QuestionWords;
  /** Asked without waiting to be seen: the page opens with its finding. */
  protected readonly atOnce: boolean = false;

  constructor() {
    super();
    new StoreController(this, () => this.answers);
    // A picture of an answer says how many futures are behind the answer, not behind the programme.
    this.addEventListener('oo-save-picture', ({ detail }) => {
      const { answer } = this.asked;
      if (answer !== null && 'futures' in answer) detail.futures = answer.futures;
    });
  }

  /** The question as a title, until there is an answer. */
  protected get asking(): string {
    return this.words.asking;
  }
  /** The finding, as the title. */
  protected abstract finding(answer: AnswerTo<Id>): readonly Piece[];
  /** Picture, side words, table. */
  protected abstract body(answer: AnswerTo<Id>, stale: boolean): TemplateResult;
  /** What is chosen before asking: above the answer, there from the start. */
  protected choices(): TemplateResult | typeof nothing {
    return nothing;
  }

  /** The question's own options beside the plan: plain data, equal for the same question. */
  protected options(): Options | AskOptions {
    return { plan: this.plan };
  }

  /** Why the plan cannot be asked, where that is known without running a future; the button is not offered then. */
  protected get cannotAsk(): CannotSay | null {
    return null;
  }

  /** Words for the answer's own “cannot say”, where they can be more than the common ones. */
  protected cannotSay(why: CannotSay): string {
    return pay.cannotSay[why];
  }

  /** The document that the answer is about; until there is one, the document that is asked about. */
  protected get programme(): Programme {
    return this.asked.of ?? this.programmes.state.runnable;
  }

  /** Letter of a plan: its colour. */
  protected markOf(plan: string): string {
    return this.programme.plans.find(({ id }) => id === plan)?.mark ?? 'A';
  }

  private get button(): string | null {
    return this.words.button ?? null;
  }

  private get asked(): Asked {
    return this.answers.state.get(this.question) ?? NEVER_ASKED;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sight.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sight.disconnect();
    this.answers.leave(this.question);
  }

  protected override updated(_changed: PropertyValues): void {
    // An update that was due when the page was left asks nothing: two pages must never ask in turn.
    if (!this.isConnected || this.plan === '' || !(this.seen || this.atOnce)) return;
    if (this.button === null || this.wanted) this.answers.ask(this.question, this.options(), this.button === null);
    // Much work is not begun again by itself.
    else this.answers.reword(this.question, this.options());
    this.wanted = false;
  }

  private readonly want = (): void => {
    this.wanted = true;
    this.seen = true;
  };

  protected override render(): TemplateResult {
    const { asked } = this;
    const { answer, stale } = asked;
    const found = answer !== null && isAnswerTo(this.question, answer) ? answer : null;
    const noAnswer = answer !== null && found === null && answer.cannotSay !== null ? answer.cannotSay : null;
    return html`<section aria-labelledby="name title">
      <p class="name" id="name">${pay.names[this.question]}</p>
      <h2 id="title">${found ? pieces(this.finding(found)) : this.asking}</h2>
      <p class="about">${this.words.about}</p>
      ${this.choices()}
      <div class="state" role="status">${this.stateWords(asked)}</div>
      ${found ? this.body(found, stale) : nothing} ${noAnswer === null ? nothing : html`<p class="cannot">${this.cannotSay(noAnswer)}</p>`}
      ${found ? this.fineprint(found) : nothing}
    </section>`;
  }

  private stateWords({ answer, stale, asking, failure }: Asked): TemplateResult | typeof nothing {
    if (failure !== null)
      return html`<p class="problem">${pay.failed(failure)} <button @click=${() => this.answers.retry(this.question)}>${pay.retry}</button></p>`;
    if (asking) {
      const words = answer === null || stale ? pay.working : pay.sharpening;
      return html`<p class="quiet">
        ${words} ${this.button === null ? nothing : html`<button @click=${() => this.answers.leave(this.question)}>${pay.stop}</button>`}
      </p>`;
    }
    if (this.button === null) return stale ? html`<p class="quiet">${pay.stale}</p>` : nothing;
    if (answer === null) {
      const { cannotAsk } = this;
      return cannotAsk === null ? html`<p><button class="main" @click=${this.want}>${this.button}</button></p>` : html`<p>${this.cannotSay(cannotAsk)}</p>`;
    }
    return stale ? html`<p class="quiet">${pay.stale} <button @click=${this.want}>${pay.again}</button></p>` : nothing;
  }

  private fineprint({ futures }: Answer): TemplateResult {
    return html`<details class="method">
      <summary>${pay.howSummary(futures)}</summary>
      <p>${this.words.method}</p>
    </details>`;
  }
}
