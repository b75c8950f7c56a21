import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Batch, LoggedTree } from '../../model/log.ts';
import type { Problem } from '../../model/problem.ts';
import type { Programme } from '../../model/programme.ts';
import { addTrees, hasRoomFor, lookedInVain, MOST, nextTag, rowOfTrees, tagAfter } from '../../seasonlog/edits.ts';
import { stands } from '../../seasonlog/standing.ts';
import { shared } from '../../styles/shared.ts';
import { log as words, placeWords, statuses } from '../../text/log.ts';
import { logStyles } from './log.styles.ts';
import { box, emitLog, submits, trouble, wholeIn } from './parts.ts';
import './tree.ts';

/** Lines drawn at first, and by how many more at a time: a list of two thousand trees must not be. */
const AT_ONCE = 24;
const FURTHER = 100;
/** From here on a tag is looked for rather than scrolled to. */
const MANY = 12;

const treesStyles = css`
  ul.trees {
    list-style: none;
    margin: 8px 0 0;
    padding: 0;
    border-bottom: 1px solid var(--hair);
  }
  .trees > li {
    border-top: 1px solid var(--hair);
  }
  .line {
    display: grid;
    grid-template-columns: 8em 11em 7em minmax(0, 1fr);
    align-items: center;
    gap: 0 14px;
    min-height: var(--target);
  }
  .line button {
    justify-content: flex-start;
    text-align: left;
    font-weight: 600;
    padding: 0;
    overflow-wrap: anywhere;
  }
  .gone {
    color: var(--ink2);
  }
  .trees > li.open {
    border-left: 3px solid var(--ink);
    padding-left: 11px;
  }
  .flag {
    padding-bottom: 8px;
  }
  .buttons {
    margin-top: 8px;
  }
  @media (max-width: 699px) {
    .line {
      grid-template-columns: minmax(5em, 1fr) auto;
      padding: 4px 0;
    }
    .line .place,
    .line .seen {
      grid-row: auto;
      grid-column: 1 / -1;
    }
    .line .status {
      grid-row: 1;
      grid-column: 2;
    }
    .line span:empty {
      display: none;
    }
  }
`;

/**
 * The trees of a batch: added a row at a time, found by tag, opened one at a time.
 * @fires oo-change with the batches of the log
 */
@customElement('oo-log-trees')
export class LogTrees extends LitElement {
  static override styles = [...shared, logStyles, treesStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) batch!: Batch;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property() today = '';

  @state() private open = -1;
  @state() private drawn = AT_ONCE;
  @state() private wanted = '';
  @state() private number = '';
  /** Null: the tag that follows. */
  @state() private firstTag: string | null = null;
  @state() private block = '';
  @state() private row = '';
  @state() private firstPlace = '';
  @state() private problem = '';

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('batch');
    if (before !== undefined && before.id !== this.batch.id) {
      this.open = -1;
      this.drawn = AT_ONCE;
      this.wanted = '';
    }
  }

  private get tag(): string {
    return (this.firstTag ?? nextTag(this.batch)).trim();
  }

  private readonly add = (): void => {
    const { programme, batch, tag } = this;
    const number = wholeIn(this.number, 1, 1e7);
    this.problem = number === null || tag === '' ? words.trees.bad : hasRoomFor(programme.log, batch.id, number) ? '' : words.trees.full;
    if (number === null || this.problem !== '') return;
    const row = rowOfTrees({ number, firstTag: tag, block: this.block.trim(), row: this.row.trim(), firstPlace: this.firstPlace.trim() });
    this.number = '';
    this.firstTag = null;
    emitLog(this, addTrees(programme.log, batch.id, row), words.trees.added(number, batch.name));
  };

  protected override render(): TemplateResult {
    const { trees } = this.batch;
    return html`${
      trees.length === 0
        ? html`<p class="quiet">${words.trees.none}</p>`
        : html`<p class="quiet">${words.trees.tally(trees.filter(stands).length, trees.length)}</p>
            ${trees.length > MANY ? this.finder() : nothing} ${this.list(trees)} ${this.inVain()}`
    }
    ${this.adding()}`;
  }

  /** One tap for all that stand without fruit: trees still waiting say something of their kind as well. */
  private inVain(): TemplateResult | typeof nothing {
    const { programme, batch } = this;
    const year = Number(this.today.slice(0, 4));
    const next = lookedInVain(programme.log, batch.id, year);
    if (next === programme.log || year <= batch.year) return nothing;
    return html`<div class="buttons">
      <button type="button" @click=${() => emitLog(this, next, words.trees.lookedInVain(year, batch.name))}>${words.trees.inVain(year)}</button>
    </div>`;
  }

  private finder(): TemplateResult {
    return box({
      label: words.trees.find,
      value: this.wanted,
      name: 'find',
      typed: (text) => {
        this.wanted = text;
        this.drawn = AT_ONCE;
      },
    });
  }

  private list(trees: readonly LoggedTree[]): TemplateResult {
    const wanted = this.wanted.trim().toLowerCase();
    const places = trees.flatMap(({ tag }, place) => (wanted === '' || tag.toLowerCase().includes(wanted) ? [place] : []));
    if (places.length === 0) return html`<p role="status">${words.trees.notFound(this.wanted.trim())}</p>`;
    const shown = places.slice(0, this.drawn);
    const left = places.length - shown.length;
    return html`<ul class="trees">
        ${shown.map((place) => {
          const tree = trees[place];
          return tree ? this.line(tree, place) : nothing;
        })}
      </ul>
      ${
        left > 0
          ? html`<div class="buttons">
              <button type="button" @click=${() => (this.drawn += FURTHER)}>${words.trees.more(Math.min(left, FURTHER))}</button
              ><span class="quiet">${words.trees.shown(shown.length, places.length)}</span>
            </div>`
          : nothing
      }`;
  }

  private line(tree: LoggedTree, place: number): TemplateResult {
    const open = this.open === place;
    const flags = this.problems.filter(({ path }) => path[4] === place);
    return html`<li class=${open ? 'open' : ''}>
      <div class="line ${stands(tree) ? '' : 'gone'}">
        <button type="button" class="plain" aria-expanded=${open ? 'true' : 'false'} @click=${() => (this.open = open ? -1 : place)}>${tree.tag}</button>
        <span class="place">${placeWords(tree.place)}</span>
        <span class="status">${statuses[tree.status]}${tree.statusSince === undefined ? '' : ` ${words.tree.since(tree.statusSince)}`}</span>
        <span class="seen">${this.said(tree)}</span>
      </div>
      ${flags.map(({ message }) => html`<p class="flag">${words.table.flagged(message)}</p>`)}
      ${
        open
          ? html`<oo-log-tree .programme=${this.programme} .batch=${this.batch} .place=${place} .problems=${flags} .today=${this.today}></oo-log-tree>`
          : nothing
      }
    </li>`;
  }

  /** What is known of a tree, in one line. */
  private said({ firstFruit, lookedUntil, seasons, copies, picked }: LoggedTree): string {
    const seen = this.programme.traits.flatMap(({ id, name }) => {
      const looks = seasons.flatMap((season) => season.seen[id] ?? []);
      const sum = (key: 'showed' | 'cut') => looks.reduce((all, look) => all + look[key], 0);
      return looks.length === 0 ? [] : [words.tree.showed(name, sum('showed'), sum('cut'), looks.length)];
    });
    return [
      firstFruit !== undefined ? words.tree.bears(firstFruit) : lookedUntil === undefined ? '' : words.tree.notYet(lookedUntil),
      ...seen,
      picked ? words.tree.picked : '',
      copies.length === 0 ? '' : words.tree.copies(copies.reduce((all, { number }) => all + number, 0)),
    ]
      .filter((part) => part !== '')
      .join('; ');
  }

  private adding(): TemplateResult {
    const { trees } = words;
    const number = wholeIn(this.number, 1, MOST.trees);
    return html`<form novalidate @submit=${submits(this.add)} aria-label=${trees.add}>
      <div class="fields">
        ${box({ label: trees.number, value: this.number, mode: 'numeric', width: '5em', name: 'number', typed: (text) => (this.number = text) })}
        ${box({ label: trees.firstTag, value: this.firstTag ?? nextTag(this.batch), name: 'first-tag', most: 60, typed: (text) => (this.firstTag = text) })}
        ${box({ label: trees.block, value: this.block, width: '5em', name: 'block', most: 20, typed: (text) => (this.block = text) })}
        ${box({ label: trees.row, value: this.row, width: '5em', name: 'row', most: 20, typed: (text) => (this.row = text) })}
        ${box({ label: trees.firstPlace, value: this.firstPlace, width: '5em', name: 'first-place', most: 10, typed: (text) => (this.firstPlace = text) })}
      </div>
      <div class="buttons">
        <button>${number === null ? trees.add : trees.done(number)}</button>
        ${number === null || this.tag === '' ? nothing : html`<span class="quiet">${trees.will(this.tag, tagAfter(this.tag, number - 1), number)}</span>`}
      </div>
      ${trouble(this.problem)}
    </form>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-trees': LogTrees;
  }
}
