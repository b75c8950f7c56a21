import { html, nothing, type TemplateResult } from 'lit';
import type { Difference, Outcome } from '../../decisions/outcome.ts';
import { common } from '../../text/charts.ts';
import { chanceLines, differenceInWords, differenceRange, spreadLines } from '../../text/pay-figures.ts';

/** Cells that tables of outcomes share: the figure, and under it its interval or range. */

const two = ([figure, range]: readonly [string, string]): TemplateResult => html`<td class="figure">${figure}<small>${range}</small></td>`;

export const chanceCell = ({ chance }: Pick<Outcome, 'chance'>): TemplateResult => two(chanceLines(chance));

export const trulyGoodCell = ({ trulyGood }: Pick<Outcome, 'trulyGood'>): TemplateResult =>
  trulyGood ? two(chanceLines(trulyGood)) : html`<td class="figure">${common.noValue}</td>`;

/** The year by which half of all futures have a proven tree, and those of 1 and 9 in 10. */
export function halfByCell({ yearProven: { p10, p50, p90 } }: Pick<Outcome, 'yearProven'>, lastYear: number): TemplateResult {
  const year = (at: number | null) => (at === null ? `after ${String(lastYear)}` : String(at));
  return html`<td class="figure">${year(p50)}<small>${p10 === null ? nothing : `${String(p10)}–${year(p90)}`}</small></td>`;
}

export const amountCell = (spread: Outcome['seedlings']): TemplateResult => two(spreadLines(spread));

/** A difference of chances; null: this is what the others are compared with. */
export const differenceCell = (difference: Difference | null, same: string = common.noValue): TemplateResult =>
  difference ? two([differenceInWords(difference.chance, difference.clear), differenceRange(difference.chance)]) : html`<td class="figure">${same}</td>`;
