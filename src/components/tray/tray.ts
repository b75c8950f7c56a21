import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { cellsLayout, columnsFor } from '../../charts/tray/cells.ts';
import { drawCells } from '../../charts/tray/draw-cells.ts';
import { drawNeed } from '../../charts/tray/draw-need.ts';
import { drawValue } from '../../charts/tray/draw-value.ts';
import { needLayout } from '../../charts/tray/need.ts';
import { valueLayout } from '../../charts/tray/value.ts';
import { courseOf, type Course } from '../../genetics/tray/course.ts';
import { WANTED } from '../../genetics/tray/tray.ts';
import type { Programme } from '../../model/programme.ts';
import { counted } from '../../text/charts.ts';
import { answer, trayText, valueText } from '../../text/tray.ts';
import { ChartElement } from '../charts/chart-element.ts';
import { courseList } from './course-list.ts';
import { shareTables, valueTable } from './tray-table.ts';
import {
  barrenWords,
  chosenOf,
  isWanted,
  measuredViews,
  shownTraits,
  traitView,
  type Chosen,
  type KindCount,
  type MeasuredView,
  type TraitView,
} from './tray-view.ts';
import { trayStyles } from './tray.styles.ts';

/** Most that can be asked for. */
const MOST_WANTED = 10;
/** Widest cell of the tray, of the key’s sample and of a strip, px. */
const CELL = 76;
const KEY_CELL = 40;
const STRIP_CELL = 30;

/** What is shown: worked out when the choice or the programme changes, not when the page gets wider. */
interface View {
  readonly chosen: Chosen;
  readonly trait: TraitView | null;
  readonly course: Course;
  readonly measured: readonly MeasuredView[];
}

/** Twenty seedlings of a chosen pair, drawn for what they would be, and how many to raise for so many of a kind. */
@customElement('oo-tray')
export class TrayElement extends ChartElement {
  static override styles: CSSResultGroup = [ChartElement.styles, trayStyles];

  @property({ attribute: false }) programme: Programme | null = null;
  /** Ids of the pair and of the trait looked at; what is not said, or no longer there, is chosen by the plans’ first cross. */
  @property() mother = '';
  @property() father = '';
  @property() trait = '';

  @state() private wanted: (typeof WANTED)[number] = 'able';
  @state() private least = 1;

  private chosen: Chosen | null = null;
  /** A view, or the sentence that stands instead. */
  private view: View | string = '';

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const inputs: ReadonlySet<PropertyKey> = new Set(['programme', 'mother', 'father', 'trait', 'wanted', 'least']);
    if ([...changed.keys()].some((name) => inputs.has(name))) this.look();
  }

  private look(): void {
    const { programme, wanted, least } = this;
    this.chosen = programme && chosenOf(programme, { mother: this.mother, father: this.father, trait: this.trait, wanted, least });
    if (!programme || !this.chosen) {
      this.view = trayText.nothing;
      return;
    }
    const { chosen } = this;
    const { mother, father, trait } = chosen;
    const barren = barrenWords(programme, chosen);
    if (barren !== undefined) {
      this.view = barren;
      return;
    }
    const course = courseOf(programme, mother, father);
    if (!course) {
      const nameOf = (id: string) => programme.kinds.find((kind) => kind.id === id)?.name ?? id;
      this.view = trayText.noEntry(nameOf(mother.kind), nameOf(father.kind));
      return;
    }
    try {
      this.view = { chosen, course, trait: trait && traitView(programme, trait, chosen), measured: measuredViews(programme, chosen) };
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.view = trayText.tooMany;
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { programme, chosen, view } = this;
    if (!programme || this.width === 0) return nothing;
    const words = typeof view === 'string' ? view : view.trait ? this.answer(view.chosen, view.trait) : trayText.noShown;
    return html`<section aria-labelledby="title">
      <h2 id="title"><slot name="title">${trayText.title}</slot></h2>
      <p class="answer" role="status">${words}</p>
      ${chosen ? this.controls(programme, chosen) : nothing} ${typeof view === 'string' ? nothing : this.pictures(view)}
    </section>`;
  }

  private answer({ mother, father, wanted, least }: Chosen, { tray, many, others, targets, atAll }: TraitView) {
    const pieces = answer({
      mother: mother.name,
      father: mother === father ? null : father.name,
      trait: tray.trait.name,
      wanted,
      ofTwenty: many,
      others,
      least,
      targets,
      atAll,
    });
    return pieces.map(({ text, strong }) => (strong ? html`<b>${text}</b>` : text));
  }

  private controls(programme: Programme, { mother, father, trait, wanted, least }: Chosen) {
    const traits = shownTraits(programme);
    const select = (name: string, label: string, value: string, options: readonly { value: string; text: string }[], set: (value: string) => void) =>
      html`<label class=${name}
        >${label}
        <select name=${name} @change=${(event: Event) => (event.target instanceof HTMLSelectElement ? set(event.target.value) : undefined)}>
          ${options.map((option) => html`<option value=${option.value} .selected=${option.value === value}>${option.text}</option>`)}
        </select></label
      >`;
    const trees = programme.trees.map((tree) => ({ value: tree.id, text: tree.name }));
    const fathers = trees.map((one) => (one.value === mother.id ? { ...one, text: trayText.ownPollen(one.text) } : one));
    return html`<div class="controls">
      <div class="pair">
        ${select('mother', trayText.seedParent, mother.id, trees, (id) => (this.mother = id))}
        <span class="times" aria-hidden="true">×</span>
        ${select('father', trayText.pollenParent, father.id, fathers, (id) => (this.father = id))}
      </div>
      ${
        trait
          ? html`${select(
              'trait',
              trayText.trait,
              trait.id,
              traits.map(({ id, name }) => ({ value: id, text: name })),
              (id) => (this.trait = id),
            )}
            ${select(
              'least',
              trayText.least,
              String(least),
              Array.from({ length: MOST_WANTED }, (_, i) => ({ value: String(i + 1), text: counted(i + 1) })),
              (n) => (this.least = Number(n)),
            )}
            ${select(
              'wanted',
              trayText.wanted,
              wanted,
              WANTED.map((kind) => ({ value: kind, text: trayText.wantedKind[kind] })),
              (kind) => (this.wanted = WANTED.find((one) => one === kind) ?? 'able'),
            )}`
          : nothing
      }
    </div>`;
  }

  private pictures({ chosen, trait, course, measured }: View) {
    const unknown = trait?.tray.unknown.map(({ name }) => name) ?? [];
    return html`${trait ? this.tray(chosen, trait) : nothing}
      <div class="two more">
        ${measured.length > 0 ? this.values(measured) : nothing}
        <div>${courseList(course, chosen.mother.name)}</div>
      </div>
      ${unknown.length > 0 ? html`<p class="note exact">${trayText.unknown(unknown)} ${trayText.exact}</p>` : html`<p class="note exact">${trayText.exact}</p>`}
      ${this.data(html`${trait ? shareTables(trait) : nothing}${measured.length > 0 ? valueTable(measured) : nothing}`)}`;
  }

  private tray({ mother, father, wanted, least }: Chosen, { tray, counts, rules, luck, targets, need, inTwenty, atAll }: TraitView) {
    const { name } = tray.trait;
    const summary = trayText.summary(mother.name, mother === father ? null : father.name, name, counts);
    const seen = counts.filter(({ share }) => share > 0);
    return html`<div class="two">
        <div>
          <div class="picture tray-picture" role="img" aria-label=${summary}><svg></svg></div>
          <ul class="key">
            ${seen.map(({ kind, count, share }) => {
              const words = trayText.count(count, share);
              return html`<li>
                <svg class="sample" data-kind=${kind} aria-hidden="true"></svg>
                <span>${trayText.kind(kind, name)}</span>
                <span class="of">${words.of}</span><span class="share">${words.share}</span>
              </li>`;
            })}
          </ul>
          <p class="note">${trayText.pots} ${trayText.luck(...luck, name, wanted)}</p>
        </div>
        ${
          atAll > 0
            ? html`<div>
                <h3>${trayText.need.title}</h3>
                <p class="intro">${trayText.need.intro(least)}</p>
                <div class="picture need-picture" role="img" aria-label=${trayText.need.summary(least, targets)}><svg></svg></div>
                <p class="note">${trayText.need.twenty(least, inTwenty)} ${need.atAll < 1 - 1e-9 ? trayText.need.ceiling(atAll) : nothing}</p>
              </div>`
            : nothing
        }
      </div>
      ${
        rules.length > 1
          ? html`<div class="more">
              <h3>${trayText.rules.title}</h3>
              <p class="intro">${trayText.rules.intro}</p>
              <ul class="rules">
                ${rules.map(
                  (rule) =>
                    html`<li>
                      <span class="if">${trayText.rules.rule(rule.name)} <small>${trayText.rules.belief(rule.belief)}</small></span>
                      <span class="strip" aria-hidden="true"><svg></svg></span>
                      <span>${trayText.rules.line(rule.many, wanted)}</span>
                      ${rule.misfits.length > 0 ? html`<span class="misfit">${trayText.rules.misfit(rule.misfits)}</span>` : nothing}
                    </li>`,
                )}
              </ul>
            </div>`
          : nothing
      }`;
  }

  private values(views: readonly MeasuredView[]) {
    return html`<div>
      <h3>${valueText.title}</h3>
      <p class="intro">${valueText.intro}</p>
      ${views.map(
        ({ name, sentences }) =>
          html`<div class="value">
            <h4>${name}</h4>
            <div class="picture value-picture" role="img" aria-label=${sentences.join(' ')}><svg></svg></div>
            <p>${sentences.join(' ')}</p>
          </div>`,
      )}
    </div>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const { view } = this;
    if (typeof view === 'string') return;
    const { trait, measured } = view;
    if (trait) this.drawTray(trait, view.chosen);
    this.drawEach('.value-picture', (svg, width, i) => {
      const picture = measured[i]?.picture;
      if (picture) drawValue(svg, valueLayout(picture, { width, measure: this.measure }));
    });
  }

  /** Draws into each picture of a class at the width it has. Widths are read before anything is drawn. */
  private drawEach(selector: string, draw: (svg: SVGSVGElement, width: number, index: number) => void): void {
    const places = [...this.renderRoot.querySelectorAll<HTMLElement>(selector)];
    const widths = places.map((place) => Math.floor(place.getBoundingClientRect().width));
    places.forEach((place, i) => {
      const svg = place.querySelector('svg');
      if (svg) draw(svg, widths[i] ?? 0, i);
    });
  }

  private drawTray({ counts, rules, need }: TraitView, { wanted }: Chosen): void {
    const groups = (of: readonly KindCount[]) => of.map(({ kind, count }) => ({ kind, count, wanted: isWanted(kind, wanted) }));
    this.drawEach('.tray-picture', (svg, width) => {
      drawCells(svg, cellsLayout(groups(counts), { width, columns: columnsFor(width), most: CELL, pots: true }), 'tray');
    });
    this.drawEach('.need-picture', (svg, width) => drawNeed(svg, needLayout(need, { width, measure: this.measure })));
    this.renderRoot.querySelectorAll<SVGSVGElement>('svg.sample').forEach((svg) => {
      const kind = svg.dataset['kind'] ?? '';
      drawCells(svg, cellsLayout([{ kind, count: 1, wanted: false }], { width: KEY_CELL, columns: 1, most: KEY_CELL, pots: false }), `sample-${kind}`);
    });
    this.drawEach('.strip', (svg, width, i) => {
      const columns = columnsFor(width, true);
      drawCells(svg, cellsLayout(groups(rules[i]?.counts ?? []), { width, columns, most: STRIP_CELL, pots: false }), `strip-${String(i)}`);
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-tray': TrayElement;
  }
}
