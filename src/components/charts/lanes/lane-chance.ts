import { html, nothing, type TemplateResult } from 'lit';
import type { PlanOutlook } from '../../../results/outlook.ts';
import { inTen, inTenWords, laneText, percent, plusMinus } from '../../../text/charts.ts';

/** On a phone: the chance in a line under the plan's name. */
export function shortChance({ chance, guesses, trulyGood }: PlanOutlook): TemplateResult {
  return html`<p class="short">
    <b>${inTenWords(chance.value)}</b>&ensp;${percent(chance.value)}
    ${plusMinus(chance.low, chance.high)}${guesses ? html` <span class="nowrap">· ${laneText.guessesShort(guesses.low, guesses.high)}</span>` : nothing}${
      trulyGood ? html`<br />${laneText.trulyGood(trulyGood.value)}` : nothing
    }
  </p>`;
}

/**
 * The chance at a lane's end.
 * @param left px of its left edge
 */
export function chanceEnd({ chance, guesses, trulyGood, runs }: PlanOutlook, left: number, compact: boolean): TemplateResult {
  const { numeral, words } = inTen(chance.value);
  return html`<div class="end" style="left: ${String(Math.round(left))}px">
    <p class="in-ten"><b class=${numeral.length > 3 ? 'long' : ''}>${numeral}</b> ${words}</p>
    <p class="percent">
      <b>${percent(chance.value)}</b>
      <span class="quiet">${compact ? plusMinus(chance.low, chance.high) : laneText.from(chance.low, chance.high, runs)}</span>
    </p>
    <svg class="scale-picture" aria-hidden="true"></svg>
    ${
      compact
        ? nothing
        : html`<p class="small">${guesses ? laneText.guesses(guesses.low, guesses.high) : laneText.guessesComing}</p>
            ${trulyGood ? html`<p class="small" title=${laneText.trulyGoodHelp}>${laneText.trulyGood(trulyGood.value)}</p>` : nothing}`
    }
  </div>`;
}
