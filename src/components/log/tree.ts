import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Batch, LoggedTree } from '../../model/log.ts';
import type { Problem } from '../../model/problem.ts';
import type { Programme, Trait } from '../../model/programme.ts';
import { addCopy, noteSeason, setFirstFruit, setPicked, setStatus, takeOutCopy, takeOutSeason, type Season, type Status } from '../../seasonlog/edits.ts';
import { shared } from '../../styles/shared.ts';
import { log as words, statuses } from '../../text/log.ts';
import { logStyles } from './log.styles.ts';
import { box, choiceOf, emitLog, submits, trouble, wholeIn, type Choice } from './parts.ts';
import '../fields/form.ts';

const STATUSES: readonly Choice<Status>[] = (['alive', 'dead', 'culled', 'labelLost'] as const).map((value) => ({ value, words: statuses[value] }));

const treeStyles = css`
  .parts {
    display: grid;
    gap: 18px;
    padding: 4px 0 18px;
  }
  h4 {
    margin: 0;
    font: 600 var(--size-body) / 1.3 var(--serif);
  }
  .traits {
    display: grid;
    gap: 10px;
  }
`;

/** A measured value as it was typed; comma or point. */
function measured(text: string): number | null {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && Math.abs(value) <= 1e6 ? value : null;
}

/**
 * One tree of a batch: status, first fruit, seasons judged, copies elsewhere. It is never taken out of the log.
 * @fires oo-change with the batches of the log, or from the form of everything with a path of its own
 */
@customElement('oo-log-tree')
export class LogTree extends LitElement {
  static override styles = [...shared, logStyles, treeStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) batch!: Batch;
  /** Place of the tree among those of its batch. */
  @property({ type: Number }) place = 0;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property() today = '';

  /** Null: this year. */
  @state() private season: string | null = null;
  /** Typed so far, by “trait showed”, “trait cut” and “trait value”. */
  @state() private typed: Readonly<Record<string, string>> = {};
  @state() private where = '';
  @state() private whose = '';
  @state() private problem = '';
  @state() private copyProblem = '';
  @state() private everything = false;

  private get tree(): LoggedTree | undefined {
    return this.batch.trees[this.place];
  }

  private get year(): number {
    return Number(this.today.slice(0, 4));
  }

  /** Sends an edit, or says that there is no room for it. */
  private send(next: Programme['log'], label: string): boolean {
    if (next === this.programme.log) return false;
    emitLog(this, next, label);
    return true;
  }

  private setStatus(tree: LoggedTree, status: Status): void {
    const { programme, batch, place } = this;
    if (status !== tree.status) this.send(setStatus(programme.log, batch.id, place, status, this.year), words.tree.statusNow(tree.tag, statuses[status]));
  }

  private setBears(tree: LoggedTree, year: number | undefined): void {
    const { programme, batch, place } = this;
    if (year === tree.firstFruit) return;
    this.send(setFirstFruit(programme.log, batch.id, place, year), year === undefined ? words.tree.bearsNot(tree.tag) : words.tree.bearsNow(tree.tag, year));
  }

  /** The season as it was typed; null if a number cannot be read, or nothing was said. */
  private get seasonTyped(): Season | null {
    const year = wholeIn(this.season ?? String(this.year), 1500, 3000);
    const at = (trait: Trait, what: string): string => this.typed[`${trait.id} ${what}`]?.trim() ?? '';
    const shown = this.programme.traits.filter((trait) => trait.type === 'shown' && at(trait, 'cut') !== '');
    const values = this.programme.traits.filter((trait) => trait.type === 'measured' && at(trait, 'value') !== '');
    const seen = shown.map((trait) => [trait.id, { showed: wholeIn(at(trait, 'showed') || '0', 0, 1000), cut: wholeIn(at(trait, 'cut'), 1, 1000) }] as const);
    const read = values.map((trait) => [trait.id, measured(at(trait, 'value'))] as const);
    if (year === null || seen.length + read.length === 0) return null;
    const season: Season = { year, seen: {}, values: {} };
    for (const [id, { showed, cut }] of seen) {
      if (showed === null || cut === null) return null;
      season.seen[id] = { showed, cut };
    }
    for (const [id, value] of read) {
      if (value === null) return null;
      season.values[id] = value;
    }
    return season;
  }

  private readonly judge = (): void => {
    const { tree, seasonTyped, programme, batch, place } = this;
    this.problem = seasonTyped ? '' : words.tree.judgeBad;
    if (!tree || !seasonTyped) return;
    if (this.send(noteSeason(programme.log, batch.id, place, seasonTyped), words.tree.judged(tree.tag, seasonTyped.year))) this.typed = {};
    else this.problem = words.tree.full;
  };

  private readonly copy = (): void => {
    const { tree, programme, batch, place } = this;
    const where = this.where.trim();
    this.copyProblem = where === '' ? words.tree.copyBad : '';
    if (!tree || where === '') return;
    if (this.send(addCopy(programme.log, batch.id, place, { where, whose: this.whose.trim(), number: 1 }), words.tree.copyAdded(tree.tag, where))) {
      this.where = '';
      this.whose = '';
    } else this.copyProblem = words.tree.full;
  };

  protected override render(): TemplateResult | typeof nothing {
    const { tree, programme, batch, place } = this;
    if (!tree) return nothing;
    const at = ['log', 'batches', programme.log.batches.findIndex(({ id }) => id === batch.id), 'trees', place] as const;
    return html`<div class="parts">
      ${choiceOf(words.tree.status, STATUSES, tree.status, (status) => this.setStatus(tree, status))} ${this.bears(tree)} ${this.seasons(tree)}
      ${this.copies(tree)}
      <label class="tick"
        ><input
          type="checkbox"
          .checked=${live(tree.picked)}
          @change=${() => this.send(setPicked(programme.log, batch.id, place, !tree.picked), words.tree.pickNow(tree.tag, !tree.picked))}
        /><span>${words.tree.pick}</span></label
      >
      <details
        @toggle=${({ target }: Event) => {
          if (target instanceof HTMLDetailsElement) this.everything = target.open;
        }}
      >
        <summary>${words.tree.everything}</summary>
        ${this.everything ? html`<oo-form .path=${at} .programme=${programme} .problems=${this.problems}></oo-form>` : nothing}
      </details>
    </div>`;
  }

  private bears(tree: LoggedTree): TemplateResult {
    const years = [0, 1, 2].map((back) => this.year - back);
    const all = tree.firstFruit === undefined || years.includes(tree.firstFruit) ? years : [...years, tree.firstFruit];
    return choiceOf(
      words.tree.bearsSince,
      [{ value: '', words: words.tree.notBorne }, ...all.map((year) => ({ value: String(year), words: String(year) }))],
      tree.firstFruit === undefined ? '' : String(tree.firstFruit),
      (year) => this.setBears(tree, year === '' ? undefined : Number(year)),
    );
  }

  private seasons(tree: LoggedTree): TemplateResult {
    const season = this.season ?? String(this.year);
    const put = (key: string) => (text: string) => (this.typed = { ...this.typed, [key]: text });
    const small = (trait: Trait, what: string, label: string, mode: 'numeric' | 'decimal') =>
      box({ label, value: this.typed[`${trait.id} ${what}`] ?? '', mode, width: '5em', name: `${trait.id}-${what}`, typed: put(`${trait.id} ${what}`) });
    return html`<div>
      <h4>${words.tree.judge}</h4>
      ${
        tree.seasons.length === 0
          ? nothing
          : html`<ul class="noted">
              ${tree.seasons.map((each) => this.seasonLine(tree, each))}
            </ul>`
      }
      <form novalidate @submit=${submits(this.judge)}>
        ${box({ label: words.tree.season, value: season, mode: 'numeric', width: '5em', name: 'season', typed: (text) => (this.season = text) })}
        <div class="traits">
          ${this.programme.traits.map((trait) =>
            trait.type === 'measured'
              ? small(trait, 'value', words.tree.measured(trait.name, trait.unit), 'decimal')
              : html`<div class="fields">
                  ${small(trait, 'showed', `${trait.name}: ${words.tree.showedOf}`, 'numeric')}
                  ${small(trait, 'cut', `${trait.name}: ${words.tree.cut}`, 'numeric')}
                </div>`,
          )}
        </div>
        <div class="buttons"><button>${words.tree.judgeDone(season)}</button></div>
        ${trouble(this.problem)}
      </form>
    </div>`;
  }

  private seasonLine(tree: LoggedTree, { year, seen, values, note }: Season): TemplateResult {
    const { programme, batch, place } = this;
    const name = (id: string): string => programme.traits.find((trait) => trait.id === id)?.name ?? id;
    const said = [
      ...Object.entries(seen).map(([id, { showed, cut }]) => words.tree.showed(name(id), showed, cut, 1).replace(/, [^,]*$/, '')),
      ...Object.entries(values).map(([id, value]) => `${name(id)} ${String(value)}`),
      ...(note === undefined ? [] : [note]),
    ];
    const at = tree.seasons.findIndex((season) => season.year === year);
    const flags = this.problems.filter(({ path }) => path[5] === 'seasons' && path[6] === at);
    return html`<li>
      <span class="what"><b>${String(year)}</b> ${said.join('; ')}</span>
      <button
        class="plain"
        type="button"
        aria-label=${words.tree.takeOutSeason(year)}
        @click=${() => this.send(takeOutSeason(programme.log, batch.id, place, year), words.tree.seasonOut(tree.tag, year))}
      >
        ${words.tree.takeOut}
      </button>
      ${flags.map(({ message }) => html`<span class="flag">${words.table.flagged(message)}</span>`)}
    </li>`;
  }

  private copies(tree: LoggedTree): TemplateResult {
    const { programme, batch, place } = this;
    return html`<div>
      <h4>${words.tree.copiesTitle}</h4>
      ${
        tree.copies.length === 0
          ? nothing
          : html`<ul class="noted">
              ${tree.copies.map(
                ({ where, whose, number }, copy) =>
                  html`<li>
                    <span class="what"><b>${number === 1 ? where : `${where} (${String(number)})`}</b> <span class="quiet">${whose}</span></span>
                    <button
                      class="plain"
                      type="button"
                      aria-label=${words.tree.takeOutCopy(where)}
                      @click=${() => this.send(takeOutCopy(programme.log, batch.id, place, copy), words.tree.copyOut(tree.tag, where))}
                    >
                      ${words.tree.takeOut}
                    </button>
                  </li>`,
              )}
            </ul>`
      }
      <form novalidate @submit=${submits(this.copy)}>
        <div class="fields">
          ${box({ label: words.tree.where, value: this.where, name: 'where', typed: (text) => (this.where = text) })}
          ${box({ label: words.tree.whose, value: this.whose, name: 'whose', typed: (text) => (this.whose = text) })}
          <button>${words.tree.copyAdd}</button>
        </div>
        <p class="quiet">${words.tree.copyCare}</p>
        ${trouble(this.copyProblem)}
      </form>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-tree': LogTree;
  }
}
