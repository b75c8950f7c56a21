import { html, type TemplateResult } from 'lit';
import { rowNames } from '../../../charts/boughs/lane.ts';
import type { Outlook, Spread, YearSpread } from '../../../results/outlook.ts';
import { laneText, percentNumber, whole, yearRange } from '../../../text/charts.ts';

/** The figures behind the lanes: a line per generation. */
export function laneTable({ plans, lastYear }: Outlook): TemplateResult {
  const years = ({ p10, p50, p90 }: YearSpread) =>
    p10 === null ? '–' : `${p50 === null ? `after ${String(lastYear)}` : String(p50)} (${yearRange(p10, p90, lastYear)})`;
  const count = ({ p10, p50, p90 }: Spread) => `${whole(Math.round(p50))} (${whole(Math.round(p10))}–${whole(Math.round(p90))})`;
  return html`<table>
    <caption>
      ${laneText.tableNote}
    </caption>
    <thead>
      <tr>
        ${laneText.tableHeads.map((head) => html`<th scope="col">${head}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${plans.map((plan) => {
        const names = rowNames(plan.generations);
        return plan.generations.map(
          (row, index) =>
            html`<tr>
              <th scope="row">${plan.mark} ${plan.name}</th>
              <td>${names[index]}</td>
              <td>${percentNumber(row.reached)}</td>
              <td>${years(row.firstPollination)}</td>
              <td>${years(row.firstFruit)}</td>
              <td>${years(row.firstPick)}</td>
              <td>${years(row.lastJudged)}</td>
              <td>${count(row.stages.flowers)}</td>
              <td>${count(row.stages.seedlings)}</td>
              <td>${count(row.stages.fruiting)}</td>
              <td>${count(row.stages.kept)}</td>
            </tr>`,
        );
      })}
    </tbody>
  </table>`;
}
