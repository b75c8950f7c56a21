import { css } from 'lit';
import { drawing } from './drawing.ts';
import { pictures } from './pictures.ts';

/** Frame of every picture: title, words, and how a stale or set-back picture looks. */
const figure = css`
  :host {
    display: block;
    min-width: 0;
    font-size: var(--size-body);
    line-height: 1.5;
  }
  .intro {
    margin: 4px 0 16px;
    color: var(--ink2);
    max-width: var(--measure);
  }
  .finding {
    max-width: var(--measure);
    margin-bottom: 12px;
  }
  /* Plans in words, under a picture */
  .plans {
    list-style: none;
    margin: 10px 0 0;
    padding: 0;
    display: grid;
    gap: 8px;
  }
  .plans li {
    display: flex;
    gap: 10px;
    line-height: 1.35;
  }
  /* Where a reading rule moves over a picture */
  .plot {
    position: absolute;
    touch-action: pan-y;
    cursor: crosshair;
  }
  /* What is read at a place, in words under the picture */
  .read {
    display: flex;
    gap: 10px;
    min-height: 3.1em;
    margin-top: 10px;
    line-height: 1.35;
    max-width: var(--measure);
  }
  .read .keys {
    font-size: var(--size-least);
    font-style: italic;
    color: var(--ink2);
  }
  @media (max-width: 699px) {
    .read {
      min-height: 5.6em;
    }
  }
  @media print {
    .read:has(.keys) {
      display: none;
    }
  }
  .stale-words {
    display: inline-block;
    margin-bottom: 8px;
    padding: 1px 9px;
    border: 1px dashed var(--ink);
    border-radius: var(--radius-input);
    font-size: var(--size-least);
  }
  /* Drawings step back; words and forms stay readable. */
  :host([stale]) .picture svg {
    opacity: var(--stale);
  }
  .picture {
    position: relative;
    transition: opacity var(--move) ease-out;
  }
  svg .resting:not(text, .letter),
  .resting svg > :not(.words) {
    opacity: var(--lift-rest);
  }
  svg text.resting,
  .resting svg .words text,
  .resting svg .words tspan {
    fill: var(--ink2);
  }
  .lane,
  [data-plan] {
    transition: opacity var(--move) ease-out;
  }
  details.data {
    margin-top: 10px;
    color: var(--ink2);
    font-size: var(--size-least);
  }
  details.data summary {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-decoration-color: var(--edge);
    text-underline-offset: 4px;
    list-style: none;
  }
  details.data summary::-webkit-details-marker {
    display: none;
  }
  details.data table {
    font-size: var(--size-least);
    color: var(--ink);
    width: auto;
    min-width: min(100%, 480px);
  }
  details.data table + table {
    margin-top: 22px;
  }
  details.data th,
  details.data td {
    padding: 6px 18px 6px 0;
  }
  @media print {
    :host {
      --lift-rest: 1;
    }
    details.data:not([open]),
    details.data summary {
      display: none;
    }
  }
`;

export const chartStyles = [figure, drawing, pictures];
