import { html, nothing, type TemplateResult } from 'lit';
import { SEEDLINGS, type SeedlingShares } from '../../genetics/tray/tray.ts';
import { percent, whole } from '../../text/charts.ts';
import { measuredNumber, trayText } from '../../text/tray.ts';
import type { MeasuredView, TraitView } from './tray-view.ts';

const head = (words: readonly string[]) =>
  html`<thead>
    <tr>
      ${words.map((word) => html`<th scope="col">${word}</th>`)}
    </tr>
  </thead>`;

const shares = (name: string, belief: number, of: SeedlingShares) =>
  html`<tr>
    <th scope="row">${name}</th>
    <td>${percent(belief)}</td>
    ${SEEDLINGS.map((kind) => html`<td>${percent(of[kind])}</td>`)}
  </tr>`;

/** Shares under each rule, and how many to raise. */
export function shareTables({ tray, targets }: TraitView): TemplateResult {
  return html`<table>
      ${head(trayText.tableHeads)}
      <tbody>
        ${tray.rules.map((rule) => shares(rule.name, rule.belief, rule.shares))}${tray.rules.length > 1 ? shares(trayText.allRules, 1, tray.shares) : nothing}
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
