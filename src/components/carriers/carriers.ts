import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { carrierScreens, type CarrierScreen, type Suspect } from '../../genetics/carrier-screen.ts';
import { meanOf } from '../../model/mean.ts';
import type { Programme } from '../../model/programme.ts';
import { shared } from '../../styles/shared.ts';
import { carriersText as words } from '../../text/carriers.ts';
import { carriersStyles } from './carriers.styles.ts';

/** A chance worth a line of its own. */
const WORTH_SAYING = 0.005;

/** Trees that may hide a trait: the chance, what was seen, and the test cross that would tell. Takes no room where no tree may. */
@customElement('oo-carriers')
export class Carriers extends LitElement {
  static override styles = [...shared, carriersStyles];

  @property({ attribute: false }) programme: Programme | null = null;

  private screens: readonly CarrierScreen[] = [];

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('programme')) return;
    this.screens = this.programme ? carrierScreens(this.programme) : [];
    this.hidden = this.screens.length === 0;
  }

  protected override render(): TemplateResult | typeof nothing {
    if (this.screens.length === 0) return nothing;
    return html`<section aria-labelledby="title">
      <h2 id="title">${words.title}</h2>
      <p class="intro">${words.intro}</p>
      ${this.screens.map((screen) => this.screen(screen))}
      <p class="note">${words.exact}</p>
    </section>`;
  }

  private screen({ trait, suspects, silent, oneIsEnough }: CarrierScreen): TemplateResult {
    const { heads } = words;
    return html`${
      suspects.length === 0
        ? nothing
        : html`<table role="table">
            <caption>
              ${words.trait(trait.name)}
            </caption>
            <thead>
              <tr role="row">
                ${[heads.tree, heads.chance, heads.seen, heads.next].map((head) => html`<th role="columnheader" scope="col">${head}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${suspects.map((one) => row(one, trait.id, oneIsEnough))}
            </tbody>
          </table>`
    }
    ${silent.map(({ tree, why }) => html`<p class="note">${words.silent[why](tree.name)}</p>`)}
    ${meanOf(trait.falseShow) > 0 && oneIsEnough !== 'surely' ? html`<p class="note">${words.falseShow}</p>` : nothing}`;
  }
}

function row({ tree, carries, right, test, testers }: Suspect, trait: string, oneIsEnough: CarrierScreen['oneIsEnough']): TemplateResult {
  const { heads } = words;
  const step = words.next({
    carries,
    seedlings: test.seedlings,
    ifNone: test.ifNone,
    testers: testers.map(({ tree: { name }, years }) => ({ name, years })),
    oneIsEnough,
  });
  const cell = (head: string, content: unknown, small: string) =>
    html`<td role="cell"><span class="head">${head}</span><span>${content}${small === '' ? nothing : html`<small>${small}</small>`}</span></td>`;
  return html`<tr role="row">
    <th role="rowheader" scope="row">${tree.name}</th>
    ${cell(heads.chance, html`<b>${words.chance(carries)}</b>`, right >= WORTH_SAYING ? words.right(right) : '')}
    ${cell(heads.seen, words.seen(tree.seen[trait]), words.testCross(tree.testCrosses[trait]))} ${cell(heads.next, step, '')}
  </tr>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-carriers': Carriers;
  }
}
