import { html, nothing, type TemplateResult } from 'lit';
import { BY_FATE, BY_GENES, type Seedling, type SeedlingShares } from '../../genetics/tray/tray.ts';
import { percent, whole } from '../../text/charts.ts';
import { measuredNumber, trayText } from '../../text/tray.ts';
import type { MeasuredView, TraitView } from './tray-view.ts';

const head = (words: readonly string[]) =>
  html`<thead>
    <tr>
      ${words.map((word) => html`<th scope="col">${word}</th>`)}
    </tr>
  </thead>`;

const sharesRow = (name: string, belief: number, of: SeedlingShares, kinds: readonly Seedling[]) =>
  html`<tr>
    <th scope="row">${name}</th>
    <td>${percent(belief)}</td>
    ${kinds.map((kind) => html`<td>${percent(of[kind])}</td>`)}
  </tr>`;

/** Shares under each rule, and how many to raise. */
export function shareTables({ tray, targets }: TraitView): TemplateResult {
  const kinds = [...BY_GENES, ...BY_FATE.filter((kind) => tray.shares[kind] > 0)];
  return html`<table>
      ${head(trayText.tableHeads(kinds))}
      <tbody>
        ${tray.rules.map((rule) => sharesRow(rule.name, rule.belief, rule.shares, kinds))}${tray.rules.length > 1 ? sharesRow(trayText.allRules, 1, tray.shares, kinds) : nothing}
      </tbody>
    </table>
    <table>
      ${head(trayText.needHeads)}
      <tbody>
        ${targets.map(
          ({ chance, seedlings }) =>
            html`<tr>
              <th scope="row">${percent(chance)}</th>
              <td>${Number.isFinite(seedlings) ? whole(seedlings) : trayText.need.raise(seedlings)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
}

/** Means and spreads of the measured traits. */
export function valueTable(views: readonly MeasuredView[]): TemplateResult {
  return html`<table>
    ${head(trayText.valueHeads)}
    <tbody>
      ${views.map(
        ({ name, family: { mean, within, between } }) =>
          html`<tr>
            <th scope="row">${name}</th>
            <td>${measuredNumber(mean, within)}</td>
            <td>${measuredNumber(within, within)}</td>
            <td>${measuredNumber(between, within)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
