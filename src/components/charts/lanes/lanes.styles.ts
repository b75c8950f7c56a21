import { css } from 'lit';

export const laneStyles = css`
  .key,
  .axis {
    pointer-events: none;
  }
  .key {
    margin: 0 0 12px;
  }
  details.how summary {
    min-height: var(--target);
    display: inline-flex;
    align-items: center;
    cursor: pointer;
    font-style: italic;
    color: var(--ink2);
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-decoration-color: var(--edge);
    text-underline-offset: 4px;
    list-style: none;
  }
  details.how summary::-webkit-details-marker {
    display: none;
  }
  .key {
    --plan: var(--ink2);
  }
  .key .guesses {
    stroke: none;
    fill-opacity: 0.3;
  }
  @media (forced-colors: active) {
    .key .guesses {
      fill: none;
      stroke: var(--ink);
    }
  }
  .key-title {
    font-size: 16.5px;
    font-style: italic;
    fill: var(--ink2);
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .lane {
    position: relative;
    min-height: 170px;
    break-inside: avoid;
  }
  .compact .lane {
    min-height: 96px;
  }
  .lane + .lane {
    border-top: 1px solid var(--rule);
  }
  .lane > svg {
    position: absolute;
    inset: 0 auto auto 0;
    pointer-events: none;
  }
  .head {
    position: relative;
    padding: 8px 0 6px;
  }
  .compact .head {
    padding: 4px 0 0;
  }
  h3 {
    font-size: inherit;
    line-height: inherit;
  }
  .plan-name {
    display: inline-flex;
    align-items: center;
    justify-content: flex-start;
    gap: 10px;
    min-height: var(--target);
    font: 650 var(--size-plan) / 1.2 var(--serif);
    text-align: left;
  }
  .plan-name {
    padding: 8px 8px 8px 0;
  }
  button.plan-name {
    border: 0;
    max-width: 100%;
  }
  button.plan-name:hover {
    background: none;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 5px;
    text-decoration-color: var(--edge);
  }
  .note {
    margin: -7px 0 0 36px;
    font-size: var(--size-note);
    line-height: 1.35;
    color: var(--ink2);
    max-width: 44em;
    display: -webkit-box;
    -webkit-line-clamp: 2;
    -webkit-box-orient: vertical;
    overflow: hidden;
  }
  .phone .note {
    display: none;
  }
  /* Ticks pass behind words that stand above the rows. */
  .head .note > span,
  .plan-name > span:last-child {
    background: var(--paper);
    box-decoration-break: clone;
    -webkit-box-decoration-break: clone;
  }
  .actions {
    margin: 2px 0 0 36px;
  }

  /* Chance at the lane's end */
  .end {
    position: absolute;
    top: 8px;
    line-height: 1.35;
    font-size: var(--size-note);
  }
  .in-ten {
    font-family: var(--serif);
    font-weight: 500;
    font-size: var(--size-chance-words);
    line-height: 1;
    white-space: nowrap;
  }
  .in-ten b {
    font-size: var(--size-chance);
    font-weight: 600;
    letter-spacing: -0.01em;
    line-height: 0.95;
  }
  .in-ten b.long {
    font-size: var(--size-chance-words);
  }
  .end b,
  .short b {
    font-weight: 650;
  }
  .end svg {
    margin: 2px 0 1px;
  }
  .end .small {
    font-size: var(--size-least);
    color: var(--ink2);
  }
  .compact .end {
    display: grid;
    grid-template-columns: auto 1fr;
    align-items: baseline;
    width: 198px;
    top: 12px;
  }
  .compact .end svg {
    grid-column: 1 / -1;
    margin-top: 8px;
  }
  .compact .in-ten {
    font-size: var(--size-lede);
  }
  .compact .in-ten b {
    font-size: 1.875rem;
  }
  .compact .percent {
    text-align: right;
  }
  .short {
    margin: -6px 12px 4px 36px;
    font-size: var(--size-label);
    line-height: 1.35;
    color: var(--ink2);
  }
  .short b {
    color: var(--ink);
  }

  /* Rows */
  .row {
    position: relative;
    display: block;
    text-align: left;
    font-weight: 400;
    font-size: var(--size-label);
    line-height: 1.15;
    padding: 0;
    border: 0;
    border-radius: 0;
    width: 100%;
    min-height: 0;
  }
  button.row:hover {
    background: color-mix(in srgb, var(--ink) 4%, transparent);
  }
  .row:focus-visible {
    outline-offset: -3px;
  }
  .label {
    position: absolute;
    left: 36px;
    width: 132px;
    transform: translateY(-50%);
    display: -webkit-box;
    -webkit-line-clamp: 2;
    -webkit-box-orient: vertical;
    overflow: hidden;
  }
  .turn {
    position: absolute;
    left: 13px;
    width: 10px;
    height: 10px;
    transform: translateY(-50%);
    fill: var(--edge);
  }
  [aria-expanded='true'] .turn {
    transform: translateY(-50%) rotate(90deg);
    fill: var(--ink);
  }
  [aria-expanded='true'] .label {
    font-weight: 650;
  }
  .form {
    position: relative;
    background: var(--raise);
    border: 1px solid var(--ink);
    border-top: 0;
  }
  .phone .label {
    left: 0;
    width: auto;
    max-width: 100%;
    transform: none;
    top: 4px;
    padding-right: 5px;
    font-size: var(--size-least);
    font-weight: 600;
    background: var(--paper);
    -webkit-line-clamp: 1;
  }
  .phone button.row .label {
    padding-left: 15px;
  }
  .phone [aria-expanded='true'] .label {
    background: var(--raise);
    left: 8px;
  }
  .phone .turn {
    z-index: 1;
    left: 0;
    top: 14px;
  }
  .phone [aria-expanded='true'] .turn {
    left: 9px;
  }
  .nowrap {
    white-space: nowrap;
  }
  @media print {
    .note {
      display: block;
      overflow: visible;
    }
    .turn,
    details.how:not([open]) {
      display: none;
    }
  }
  .middle .label {
    width: 116px;
  }
`;
