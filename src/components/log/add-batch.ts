import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Batch } from '../../model/log.ts';
import type { Programme } from '../../model/programme.ts';
import { addBatch, MOST, rowOfTrees, type NewBatch } from '../../seasonlog/edits.ts';
import { kindOfBatch } from '../../seasonlog/standing.ts';
import { shared } from '../../styles/shared.ts';
import { batchName, crossWords, log as words } from '../../text/log.ts';
import { logStyles } from './log.styles.ts';
import { box, choiceOf, emitLog, submits, trouble, wholeIn, type Choice } from './parts.ts';

type Parent = Batch['pollen'];
/** What was chosen: “tree ID”, “pick TAG”, or a word. Empty: nothing yet. */
type Chosen = string;

const FIXED = ['unknown', 'open', 'self', 'mixed'] as const;
const fixed = (chosen: Chosen) => FIXED.find((word) => word === chosen);

/**
 * A new batch in a few taps: year, seed parent, pollen; or seedlings that stand already.
 * @fires oo-change with the batches of the log
 * @fires oo-batch-added with the id of the new batch, after the edit
 * @fires oo-cancel
 */
@customElement('oo-log-add')
export class LogAdd extends LitElement {
  static override styles = [...shared, logStyles];

  @property({ attribute: false }) programme!: Programme;
  @property() today = '';

  @state() private standing = false;
  /** Null: this year. */
  @state() private year: string | null = null;
  @state() private seed: Chosen = '';
  @state() private pollen: Chosen = '';
  @state() private seedTag = '';
  @state() private pollenTag = '';
  @state() private seedKind = '';
  @state() private pollenKind = '';
  @state() private number = '';
  @state() private firstTag = '';
  /** Null: named after the cross and the year. */
  @state() private named: string | null = null;
  @state() private problem = '';

  private parent(chosen: Chosen, tag: string): Parent | null {
    const word = fixed(chosen);
    if (word) return word;
    if (chosen === 'tag') return tag.trim() === '' ? null : { tag: tag.trim() };
    if (chosen.startsWith('pick ')) return { tag: chosen.slice('pick '.length) };
    return chosen === '' ? null : { tree: chosen.replace(/^tree /, '') };
  }

  private get yearRead(): number | null {
    return wholeIn(this.year ?? this.today.slice(0, 4), 1500, 3000);
  }

  /** The batch as it would be added, or null while something is missing. */
  private get batch(): NewBatch | null {
    const [seed, pollen, year] = [this.parent(this.seed, this.seedTag), this.parent(this.pollen, this.pollenTag), this.yearRead];
    if (seed === null || pollen === null || year === null) return null;
    const mother = typeof seed === 'object' ? seed : 'unknown';
    const kind = (parent: Parent, said: string): string =>
      typeof parent === 'object' && 'tree' in parent ? '' : said || this.onlyKind || this.loggedKind(parent);
    const [seedKind, pollenKind] = [kind(mother, this.seedKind), typeof pollen === 'object' || pollen === 'unknown' ? kind(pollen, this.pollenKind) : ''];
    return {
      name: (this.named ?? batchName(crossWords({ seed: mother, pollen }, this.programme), year)).trim(),
      year,
      seed: mother,
      pollen,
      ...(seedKind === '' ? {} : { seedKind }),
      ...(pollenKind === '' ? {} : { pollenKind }),
    };
  }

  /** Where all trees are of one kind there is nothing to ask. */
  private get onlyKind(): string {
    const { kinds } = this.programme;
    return kinds.length === 1 ? (kinds[0]?.id ?? '') : '';
  }

  /** The kind of a tree of the log, by its tag; empty where no tree, or several of different kinds, carry it. */
  private loggedKind(parent: Parent): string {
    if (typeof parent !== 'object' || !('tag' in parent)) return '';
    const owners = this.programme.log.batches.filter(({ trees }) => trees.some(({ tag }) => tag === parent.tag));
    const kinds = new Set(owners.map((batch) => kindOfBatch(this.programme, batch)));
    const [kind] = kinds;
    return kinds.size === 1 ? (kind ?? '') : '';
  }

  private get whyNot(): string {
    if (this.yearRead === null) return words.add.badYear;
    const noTag = (this.seed === 'tag' && this.seedTag.trim() === '') || (this.pollen === 'tag' && this.pollenTag.trim() === '');
    return noTag ? words.add.missingTag : words.add.missing;
  }

  private readonly add = (): void => {
    const { batch, programme } = this;
    const number = this.standing ? wholeIn(this.number, 1, MOST.trees) : 0;
    this.problem = batch === null || batch.name === '' ? this.whyNot : number === null ? words.add.badNumber : '';
    if (batch === null || number === null || batch.name === '') return;
    const firstTag = this.firstTag.trim() || `${String(batch.year)}-1`;
    const { log, id } = addBatch(programme.log, batch, rowOfTrees({ number, firstTag, block: '', row: '', firstPlace: '' }));
    if (id === null) {
      this.problem = words.add.full;
      return;
    }
    emitLog(this, log, words.add.added(batch.name));
    this.dispatchEvent(new CustomEvent('oo-batch-added', { detail: id }));
  };

  /** Trees of the programme, and picks of the log by their tags. */
  private get trees(): readonly Choice<string>[] {
    const { trees, log } = this.programme;
    const picks = new Set(log.batches.flatMap((batch) => batch.trees.flatMap(({ tag, picked }) => (picked ? [tag] : []))));
    return [...trees.map(({ id, name }) => ({ value: `tree ${id}`, words: name })), ...[...picks].map((tag) => ({ value: `pick ${tag}`, words: tag }))];
  }

  protected override render(): TemplateResult {
    const { add } = words;
    const word = (value: (typeof FIXED)[number]): Choice<string> => ({ value, words: add[value] });
    const byTag: Choice<string> = { value: 'tag', words: add.byTag };
    const { batch } = this;
    return html`<form novalidate @submit=${submits(this.add)} aria-label=${add.title}>
      ${choiceOf(
        add.kind,
        [
          { value: 'seed', words: add.seedOf },
          { value: 'standing', words: add.standing },
        ],
        this.standing ? 'standing' : 'seed',
        (kind) => this.setStanding(kind === 'standing'),
      )}
      ${box({
        label: this.standing ? add.yearStanding : add.year,
        value: this.year ?? this.today.slice(0, 4),
        mode: 'numeric',
        width: '6em',
        name: 'year',
        typed: (text) => (this.year = text),
      })}
      ${choiceOf(add.seed, [...this.trees, word('unknown'), byTag], this.seed, (chosen) => (this.seed = chosen))} ${this.more('seed')}
      ${choiceOf(add.pollen, [...this.trees, word('open'), word('self'), word('mixed'), word('unknown'), byTag], this.pollen, (chosen) => (this.pollen = chosen))}
      ${this.more('pollen')} ${this.standing ? this.standingFields() : nothing}
      ${box({ label: add.name, value: this.named ?? batch?.name ?? '', width: '26em', name: 'name', typed: (text) => (this.named = text) })}
      ${trouble(this.problem)}
      <div class="buttons">
        <button class="main">${add.done}</button>
        <button type="button" class="plain" @click=${() => this.dispatchEvent(new CustomEvent('oo-cancel'))}>${add.cancel}</button>
      </div>
    </form>`;
  }

  /** Standing seedlings are often of parents that nobody wrote down. */
  private setStanding(standing: boolean): void {
    this.standing = standing;
    if (standing && this.seed === '') this.seed = 'unknown';
    if (standing && this.pollen === '') this.pollen = 'unknown';
  }

  private standingFields(): TemplateResult {
    const { add } = words;
    return html`<div class="fields">
      ${box({ label: add.number, value: this.number, mode: 'numeric', width: '6em', name: 'number', typed: (text) => (this.number = text) })}
      ${box({ label: add.firstTag, value: this.firstTag, name: 'first-tag', most: 60, typed: (text) => (this.firstTag = text) })}
    </div>`;
  }

  /** The tag of a parent that is no tree of the programme, and the kind of one that is not known. */
  private more(which: 'seed' | 'pollen'): TemplateResult | typeof nothing {
    const { add } = words;
    const chosen = which === 'seed' ? this.seed : this.pollen;
    if (chosen !== 'tag' && chosen !== 'unknown') return nothing;
    const kinds = this.programme.kinds.map(({ id, name }) => ({ value: id, words: name }));
    const kind = which === 'seed' ? this.seedKind : this.pollenKind;
    return html`<div class="fields">
      ${
        chosen === 'tag'
          ? box({
              label: add.tag,
              value: which === 'seed' ? this.seedTag : this.pollenTag,
              name: `${which}-tag`,
              most: 60,
              typed: (text) => (which === 'seed' ? (this.seedTag = text) : (this.pollenTag = text)),
            })
          : nothing
      }
      ${
        kinds.length > 1
          ? html`<label class="field"
              ><span>${which === 'seed' ? add.seedKind : add.pollenKind}</span
              ><select
                @change=${({ target }: Event) => {
                  if (!(target instanceof HTMLSelectElement)) return;
                  if (which === 'seed') this.seedKind = target.value;
                  else this.pollenKind = target.value;
                }}
              >
                <option value="">${add.noKind}</option>
                ${kinds.map(({ value, words: name }) => html`<option value=${value} ?selected=${value === kind}>${name}</option>`)}
              </select></label
            >`
          : nothing
      }
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-add': LogAdd;
  }
}
