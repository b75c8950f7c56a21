import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { copyPlan, freeMark, freshId, movePlan, withoutPlan, withPlan } from '../../model/plans.ts';
import type { Generation, Plan, Programme } from '../../model/programme.ts';
import type { Columns } from '../../results/columns.ts';
import type { Outlook } from '../../results/outlook.ts';
import { effectOf } from '../../state/outlook.ts';
import { shared } from '../../styles/shared.ts';
import type { WordsByPlan } from '../../charts/marks.ts';
import type { Lanes, MoveEvent, PlanEvent, RowEvent, RowKey } from '../charts/lanes/lanes.ts';
import '../charts/lanes/lanes.ts';
import type { OoChange } from '../fields/change.ts';
import { StoreElement } from '../store-element.ts';
import { planPanel } from './plan-panel.ts';
import { planPatterns } from './plan-patterns.ts';
import './row-settings.ts';

/** The last change made under an open row, and the plan's results before it. */
interface Change {
  readonly plan: string;
  readonly field: string;
  readonly label: string;
  readonly before: Columns | null;
}

const styles = css`
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-top: 8px;
  }
  .plan-panel {
    padding: 8px 0 14px;
    max-width: 46em;
  }
  .why {
    margin-top: 8px;
    max-width: 46em;
  }
  .patterns {
    margin-top: 36px;
  }
  .patterns h2 {
    font-size: var(--size-subhead);
  }
  .patterns .buttons {
    margin-top: 14px;
  }
  @media print {
    .patterns,
    .plan-panel {
      display: none;
    }
  }
`;

const wordsOf = new WeakMap<Programme, WordsByPlan>();
/** Words under the plans' names, for all pictures; the same object as long as the document is the same. */
export function planWords(programme: Programme): WordsByPlan {
  const words = wordsOf.get(programme) ?? Object.fromEntries(programme.plans.map((plan) => [plan.id, plan.note === undefined ? {} : { note: plan.note }]));
  wordsOf.set(programme, words);
  return words;
}

/** The plans as boughs that can be edited in place: rows open their settings, names open what can be done with a plan, patterns add one. */
@customElement('oo-plan-lanes')
export class PlanLanes extends StoreElement {
  static override styles = [...shared, styles];

  @property({ attribute: false }) outlook: Outlook | null = null;
  @property({ type: Boolean }) stale = false;
  @property({ attribute: false }) lifted: string | null = null;
  @property({ type: Boolean }) compact = false;

  @state() private open: RowKey | null = null;
  @state() private openPlan: string | null = null;
  @state() private change: Change | null = null;
  /** A row that takes the focus once it stands. */
  private wanted: RowKey | null = null;

  constructor() {
    super();
    this.addEventListener('oo-change', this.noteChange);
  }

  /** Keeps the results from before the first edit of a field, so that what it did can be told on the same futures. */
  private readonly noteChange = (event: CustomEvent<OoChange>): void => {
    const { open } = this;
    if (!open) return;
    const { path, label } = event.detail;
    const field = path.join('/');
    const settled = this.settledColumns(open.plan);
    const before = this.change?.field === field && this.change.plan === open.plan ? this.change.before : settled;
    this.change = { plan: open.plan, field, label, before };
  };

  private settledColumns(plan: string): Columns | null {
    const { plans, columns, stale } = this.runs.state;
    const at = plans.findIndex(({ id }) => id === plan);
    return stale.has(plan) ? null : (columns[at] ?? null);
  }

  private edit(next: Programme | null, label: string): void {
    if (next) this.programmes.edit(next, label);
  }

  protected override render(): TemplateResult {
    const { programme } = this.programmes.state;
    return html`
      <oo-lanes
        .outlook=${this.outlook}
        .words=${planWords(programme)}
        .open=${this.open}
        .lifted=${this.lifted}
        ?stale=${this.stale}
        ?compact=${this.compact}
        @oo-row=${this.onRow}
        @oo-plan=${this.onPlan}
        @oo-move=${this.onMove}
        @oo-close-row=${this.closeRow}
        @oo-undo=${() => this.programmes.undo()}
        @oo-copy-plan=${() => this.open && this.copy(this.open.plan)}
        @oo-add-generation=${() => this.addGeneration()}
        @oo-remove-generation=${() => this.removeGeneration()}
        >${this.settings()} ${this.planPanel()}</oo-lanes
      >
      ${planPatterns(programme, this.add)}
    `;
  }

  private settings(): TemplateResult | typeof nothing {
    const { open } = this;
    const { programme, problems, undo } = this.programmes.state;
    const plan = programme.plans.findIndex(({ id }) => id === open?.plan);
    const generation = programme.plans[plan]?.generations.findIndex(({ id }) => id === open?.generation) ?? -1;
    if (!open || plan < 0 || generation < 0) return nothing;
    return html`<oo-row-settings
      slot="settings"
      .programme=${programme}
      .problems=${problems}
      .plan=${plan}
      .generation=${generation}
      .change=${this.told(open.plan)}
      ?canUndo=${undo.length > 0}
      ?canCopy=${freeMark(programme) !== null}
    ></oo-row-settings>`;
  }

  private told(plan: string) {
    const { change } = this;
    // Undone, or something else was changed since: nothing to tell.
    const { undo, problems } = this.programmes.state;
    if (change?.plan !== plan || undo.at(-1)?.label !== change.label) return null;
    // Nothing runs now: what stands in the pictures is from before, and no effect of this change.
    const stop = problems.find(({ stops, path }) => stops && path.join('/') === change.field) ?? problems.find(({ stops }) => stops);
    if (stop) return { label: change.label, effect: null, stop: stop.message };
    const after = this.settledColumns(plan);
    return { label: change.label, stop: null, effect: change.before && after && after !== change.before ? effectOf(change.before, after) : null };
  }

  private planPanel(): TemplateResult | typeof nothing {
    const { programme, problems } = this.programmes.state;
    const plan = programme.plans.find(({ id }) => id === this.openPlan);
    if (!plan) return nothing;
    return planPanel(programme, problems, plan, {
      copy: () => this.copy(plan.id),
      move: (by, button) => this.moveFrom(button, plan.id, by),
      remove: () => this.removePlan(plan),
      close: this.closePlan,
    });
  }

  /** Adds a plan and opens its first row, which takes the focus as soon as it stands. */
  private readonly add = (plan: Plan): void => {
    this.edit(withPlan(this.programmes.state.programme, plan), `${plan.name} added`);
    const first = plan.generations[0];
    if (!first) return;
    this.open = { plan: plan.id, generation: first.id };
    this.wanted = this.open;
  };

  private get lanes(): Lanes | null {
    return this.renderRoot.querySelector('oo-lanes');
  }

  /** Does something once all that is due has been drawn. */
  private async afterwards(act: (lanes: Lanes) => void): Promise<void> {
    await this.updateComplete;
    const { lanes } = this;
    await lanes?.updateComplete;
    if (lanes) act(lanes);
  }

  protected override updated(_changed: PropertyValues): void {
    const { wanted } = this;
    if (!wanted) return;
    void this.afterwards((lanes) => {
      if (this.wanted === wanted && lanes.focusRow(wanted)) this.wanted = null;
    });
  }

  private readonly closePlan = (): void => {
    const id = this.openPlan;
    this.openPlan = null;
    if (id !== null) void this.afterwards((lanes) => lanes.focusPlan(id));
  };

  /** Moves a plan by a button, which at the end of the list can no longer hold the focus. */
  private moveFrom(button: EventTarget | null, id: string, by: -1 | 1): void {
    this.move(id, by);
    void this.afterwards((lanes) => {
      if (button instanceof HTMLButtonElement && button.disabled) lanes.focusPlan(id);
    });
  }

  private readonly onRow = (event: RowEvent): void => {
    this.open = event.detail.open ? event.detail : null;
  };

  private readonly onPlan = (event: PlanEvent): void => {
    this.openPlan = this.openPlan === event.detail.plan ? null : event.detail.plan;
  };

  private readonly onMove = (event: MoveEvent): void => this.move(event.detail.plan, event.detail.by);

  private readonly closeRow = (): void => {
    const { open } = this;
    this.open = null;
    // Back to where it was opened, as with Escape.
    if (open) void this.afterwards((lanes) => lanes.focusRow(open));
  };

  private copy(id: string): void {
    const { programme } = this.programmes.state;
    const name = programme.plans.find((plan) => plan.id === id)?.name ?? '';
    this.edit(copyPlan(programme, id), `${name} copied`);
  }

  private move(id: string, by: -1 | 1): void {
    this.edit(movePlan(this.programmes.state.programme, id, by), 'plans put in another order');
  }

  private removePlan(plan: Plan): void {
    this.openPlan = null;
    if (this.open?.plan === plan.id) this.open = null;
    const { programme } = this.programmes.state;
    const at = programme.plans.indexOf(plan);
    const neighbour = programme.plans[at + 1] ?? programme.plans[at - 1];
    this.edit(withoutPlan(programme, plan.id), `${plan.name} removed`);
    if (neighbour) void this.afterwards((lanes) => lanes.focusPlan(neighbour.id));
  }

  /** After the open generation, from its own picks. */
  private addGeneration(): void {
    const { programme } = this.programmes.state;
    const plan = programme.plans.find(({ id }) => id === this.open?.plan);
    const at = plan?.generations.findIndex(({ id }) => id === this.open?.generation) ?? -1;
    const before = plan?.generations[at];
    if (!plan || !before) return;
    const id = freshId(
      'round',
      plan.generations.map((generation) => generation.id),
    );
    const { rescue: _rescue, test: _test, look: _look, backup: _backup, after: _after, ...base } = before;
    const picks = [{ picksOf: before.id }];
    const next = {
      ...base,
      id,
      name: 'Pick × pick',
      seedParents: picks,
      pollen: picks,
      flowers: Math.max(100, before.flowers),
      judge: programme.goal.crops,
      repeat: 1,
    };
    this.put(plan, plan.generations.toSpliced(at + 1, 0, next), 'generation added');
    this.open = { plan: plan.id, generation: id };
  }

  private removeGeneration(): void {
    const { programme } = this.programmes.state;
    const plan = programme.plans.find(({ id }) => id === this.open?.plan);
    const gone = this.open?.generation;
    if (!plan || plan.generations.length < 2) return;
    this.open = null;
    this.put(
      plan,
      plan.generations.filter(({ id }) => id !== gone),
      'generation removed',
    );
    void this.afterwards((lanes) => lanes.focusPlan(plan.id));
  }

  private put(plan: Plan, generations: Generation[], label: string): void {
    const { programme } = this.programmes.state;
    this.edit({ ...programme, plans: programme.plans.map((entry) => (entry === plan ? { ...plan, generations } : entry)) }, label);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-plan-lanes': PlanLanes;
  }
}
