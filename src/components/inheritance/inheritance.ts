import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { LearnedInheritance } from '../../seasonlog/inheritance.ts';
import { candidates, leftOut as reasons, settling, speaksFor } from '../../text/log-learned.ts';
import { inheritanceText as words } from '../../text/log-lessons.ts';
import { LessonElement } from '../learned/lesson-element.ts';
import type { ShownChance } from './chances-picture.ts';
import './chances-picture.ts';

const rowOf = ({ name, before, after, factor }: LearnedInheritance['rules'][number]): ShownChance => ({
  id: name,
  name,
  note: '',
  before,
  after,
  strong: words.chance(after),
  plain: words.was(before),
  words: words.place(name, before, after),
  cells: [name, words.chance(before), words.chance(after), speaksFor(factor)],
});

/**
 * Which explanation of each shown-or-not trait the counts speak for, and what would settle it.
 * @fires oo-change
 */
@customElement('oo-inheritance')
export class InheritancePart extends LessonElement {
  protected override render(): TemplateResult {
    return html`${this.said.lessons?.inheritance.map((one) => this.trait(one)) ?? nothing}`;
  }

  private trait(one: LearnedInheritance): TemplateResult {
    const { name, families, rules } = one;
    const sum = (key: 'showed' | 'of') => families.reduce((all, family) => all + family[key], 0);
    const best = rules.reduce((most, rule) => (rule.after > most.after ? rule : most)).name;
    const family = families.find(({ batch }) => batch === one.settling?.batch)?.name ?? '';
    return html`<section aria-label=${words.title(name)}>
      <h2>${words.title(name)}</h2>
      <p class="verdict">${settling(one.settled, one.settling && { ...one.settling, family }, best)}</p>
      <p class="quiet intro">${words.families(families.length, sum('showed'), sum('of'))}</p>
      <oo-chances-picture
        .answer=${rules.map(rowOf)}
        .heads=${words.heads}
        reads=${words.slider}
        summary=${words.summary(name)}
        ?stale=${this.overtaken}
      ></oo-chances-picture>
      ${this.buttons(one)} ${this.further(one)}
    </section>`;
  }

  private buttons({ name, used, puts, backs }: LearnedInheritance): TemplateResult | typeof nothing {
    if (puts.length === 0) return nothing;
    const off = this.overtaken ? 'true' : 'false';
    return html`${used ? html`<p class="intro">${words.used}</p>` : nothing}
      <div class="buttons">
        ${
          used
            ? nothing
            : html`<button type="button" class="main" aria-label=${words.useFor(name)} aria-disabled=${off} @click=${() => this.put(puts, words.label(name))}>
                ${words.use}
              </button>`
        }
        ${
          backs.length === 0
            ? nothing
            : html`<button type="button" aria-disabled=${off} @click=${() => this.put(backs, words.wentBack(name))}>${words.back}</button>`
        }
      </div>`;
  }

  private further({ further, families, leftOut }: LearnedInheritance): TemplateResult {
    return html`${
        further.length === 0
          ? nothing
          : html`<h3>${words.further}</h3>
              <ul>
                ${further.map(({ key, factor }) => html`<li>${words.furtherLine(candidates[key], speaksFor(factor))}</li>`)}
              </ul>`
      }
      <details class="more">
        <summary>${words.byFamily}</summary>
        <table>
          <thead>
            <tr>
              ${words.familyHeads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${families.map(
              ({ name, showed, of }) =>
                html`<tr>
                  <th scope="row">${name}</th>
                  <td>${String(showed)}</td>
                  <td>${String(of)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
        ${
          leftOut.length === 0
            ? nothing
            : html`<p>${words.leftOut}</p>
                <ul>
                  ${leftOut.map(({ name, why, about }) => html`<li>${name}: ${reasons[why]}${about === '' ? '' : ` (${about})`}</li>`)}
                </ul>`
        }
      </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-inheritance': InheritancePart;
  }
}
