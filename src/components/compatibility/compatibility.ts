import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Programme } from '../../model/programme.ts';
import { shared } from '../../styles/shared.ts';
import { compatibilityText as words, type Match } from '../../text/inheritance.ts';
import { compatibilityStyles } from './compatibility.styles.ts';
import { countPairs, pairTable, type Pair, type PairTable, type STree } from './pairs.ts';

/** More columns than this are not read across: each seed parent then has a list of its own, as on a phone. */
const MOST_COLUMNS = 10;
const MATCHES: readonly Match[] = ['full', 'part', 'none'];

/** Which trees set fruit with the pollen of which, by their S alleles; nothing where none is stated. */
@customElement('oo-compatibility')
export class CompatibilityElement extends LitElement {
  static override styles = [...shared, compatibilityStyles];

  @property({ attribute: false }) programme: Programme | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const table = this.programme && pairTable(this.programme);
    if (!table) return nothing;
    const { full, part, none } = countPairs(table);
    return html`<section aria-labelledby="title" class=${table.fathers.length > MOST_COLUMNS ? 'long' : ''}>
      <h2 id="title">${words.title}</h2>
      ${full + part + none > 0 ? html`<p class="said">${words.said(full, part, none)}</p>` : nothing}
      <p class="intro"><span class="wide">${words.intro}</span> ${table.pairs.flat().some(({ unsure }) => unsure) ? words.notKnown : nothing}</p>
      ${this.wide(table)} ${this.list(table)}
      <p class="note">${words.key} <span class="wide">${words.shaded}</span></p>
    </section>`;
  }

  private wide({ mothers, fathers, pairs }: PairTable): TemplateResult {
    return html`<table class="wide">
      <thead>
        <tr>
          <td>${words.corner}</td>
          ${fathers.map((father) => html`<th scope="col">${this.head(father)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${mothers.map(
          (mother, m) =>
            html`<tr>
              <th scope="row">${this.head(mother)}</th>
              ${fathers.map((father, f) => this.cell(pairs[m]?.[f], mother.tree.id === father.tree.id))}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  private head({ tree, alleles }: STree): TemplateResult {
    return html`${tree.name}<small>${alleles || words.unknown}</small>`;
  }

  private cell(pair: Pair | undefined, own: boolean): TemplateResult {
    if (!pair) return html`<td></td>`;
    const { match, share, unsure } = pair;
    return html`<td data-match=${match} class=${own ? 'own' : ''}>
      <i aria-hidden="true">${words.mark[match]}</i>${words.word(match, share)}${unsure ? words.unsure : ''}
    </td>`;
  }

  private list({ mothers, fathers, pairs }: PairTable): TemplateResult {
    return html`<ul class="list">
      ${mothers.map(
        (mother, m) =>
          html`<li>
            <b>${mother.tree.name}</b> <span class="quiet">${mother.alleles || words.unknown}</span>
            <dl>
              ${MATCHES.map((match) => {
                const names = fathers.flatMap((father, f) => {
                  const pair = pairs[m]?.[f];
                  const name = father.tree.id === mother.tree.id ? words.own : father.tree.name;
                  return pair?.match === match ? [`${name}${pair.unsure ? ` ${words.unsure}` : ''}`] : [];
                });
                return names.length === 0
                  ? nothing
                  : html`<dt><i aria-hidden="true">${words.mark[match]}</i>${words.with[match]}</dt>
                      <dd>${names.join(', ')}</dd>`;
              })}
            </dl>
          </li>`,
      )}
    </ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-compatibility': CompatibilityElement;
  }
}
