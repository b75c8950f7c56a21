import { html, LitElement, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { WordsByPlan } from '../../charts/marks.ts';
import type { Measure } from '../../charts/measure.ts';
import type { Outlook } from '../../results/outlook.ts';
import { chartStyles } from '../../styles/charts.ts';
import { shared } from '../../styles/shared.ts';
import { common } from '../../text/charts.ts';
import { dataTable, saveRow } from './data-table.ts';
import { pageMeasure } from './page-measure.ts';

/** Says that a plan is looked at (its id) or no longer (null), so that a page can lift it everywhere. */
export type LiftEvent = CustomEvent<{ plan: string | null }>;

/** Width of an A4 page inside its margins at 96 dots an inch, px: printing redraws at it instead of shrinking text. */
const PAPER_WIDTH = 680;
/** Below this nothing can be read: the last drawing stays. */
const LEAST_WIDTH = 200;

const LOOKS: ReadonlySet<PropertyKey> = new Set(['lifted', 'stale', 'chosen']);

/** A page may put the same parts together anew each time it is rendered: pictures are laid out again only for other figures. */
const otherOutlook = (now: Outlook | null, before?: Outlook | null): boolean =>
  !now ||
  !before ||
  now.plans !== before.plans ||
  now.comparisons !== before.comparisons ||
  now.runs !== before.runs ||
  now.startYear !== before.startYear ||
  now.lastYear !== before.lastYear;

/** For small plain data: whether it reads differently. */
export const otherText = (now: unknown, before?: unknown): boolean => JSON.stringify(now) !== JSON.stringify(before);

/**
 * What all pictures share: they redraw at the width they have, say when they are stale, and lift one plan above the others.
 *
 * @fires oo-lift - LiftEvent
 * @slot title - Another title
 * @slot intro - Other words under the title
 */
export abstract class ChartElement extends LitElement {
  static override styles: CSSResultGroup = [shared, chartStyles];

  /** What is drawn. */
  @property({ attribute: false, hasChanged: otherOutlook }) outlook: Outlook | null = null;
  /** Short names and notes of the plans, by id. */
  @property({ attribute: false, hasChanged: otherText }) words: WordsByPlan = {};
  /** Drawn from figures that the last change has overtaken. */
  @property({ type: Boolean, reflect: true }) stale = false;
  /** Without title and words under it: the page brings its own. */
  @property({ type: Boolean, reflect: true }) bare = false;
  /** Id of the plan that stands out; the others step back. */
  @property({ attribute: false }) lifted: string | null = null;

  @state() protected width = 0;
  @state() private printing = false;

  /** The element's own watcher of sizes; elements may let it watch more. */
  protected readonly sizes = new ResizeObserver(() => this.resized());
  private readonly paper = window.matchMedia('print');
  /** Texts are wider or narrower once their own font is there. */
  private readonly onFont = () => this.requestUpdate();
  private readonly onPrint = () => {
    this.printing = this.paper.matches;
    // The page is laid out for paper right after this event: a redraw later would come too late.
    this.resized();
    this.performUpdate();
  };

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizes.observe(this);
    this.paper.addEventListener('change', this.onPrint);
    document.fonts.addEventListener('loadingdone', this.onFont);
    this.resized();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
    this.paper.removeEventListener('change', this.onPrint);
    document.fonts.removeEventListener('loadingdone', this.onFont);
  }

  protected resized(): void {
    const width = Math.floor(this.getBoundingClientRect().width);
    // While a browser prepares paper it may lay the page out at a pixel's width.
    if (width < LEAST_WIDTH) return;
    this.width = this.printing ? Math.min(PAPER_WIDTH, width) : width;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.toggleAttribute('data-moving', changed.has('outlook') && this.hasUpdated);
  }

  /** Whether an update asks for another layout: which plan is lifted, what is read and whether it is stale only change how the same layout looks. */
  protected laysOut(changed: PropertyValues<this>): boolean {
    return changed.size === 0 || [...changed.keys()].some((name) => !LOOKS.has(name));
  }

  protected get measure(): Measure {
    return pageMeasure;
  }

  /** Lifts a plan here and tells the page. */
  protected lift(plan: string | null): void {
    if (this.lifted === plan) return;
    this.lifted = plan;
    this.dispatchEvent(new CustomEvent('oo-lift', { detail: { plan }, bubbles: true, composed: true }) satisfies LiftEvent);
  }

  /** Lifts the plan whose part of a picture the pointer is on. */
  protected readonly liftUnder = (event: Event): void => {
    const part = event.target instanceof Element ? event.target.closest<SVGElement | HTMLElement>('[data-plan]') : null;
    this.lift(part?.dataset['plan'] ?? null);
  };

  /** Title, words and the note of a stale picture. */
  protected head(title: string, intro: string): TemplateResult {
    return html`
      ${
        this.bare
          ? nothing
          : html`<h2 id="title"><slot name="title">${title}</slot></h2>
              <p class="intro"><slot name="intro">${intro}</slot></p>`
      }
      ${this.stale ? html`<p class="stale-words">${common.stale}</p>` : nothing}
    `;
  }

  /** The figures of a picture, as a table to unfold, and both to save. */
  protected data(table: TemplateResult): TemplateResult {
    return dataTable(table, true);
  }

  /** Saves the picture, where its figures stand elsewhere; with `table`, those right above too. */
  protected saves(table = false): TemplateResult {
    return saveRow({ picture: true, table });
  }
}
