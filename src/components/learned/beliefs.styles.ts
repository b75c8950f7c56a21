import { css } from 'lit';

/** How belief before and now is drawn: dashed and filled. */
export const beliefStyles = css`
  svg .belief-now {
    fill: var(--plan-f);
    fill-opacity: 0.26;
    stroke: var(--plan-f);
    stroke-width: 2;
    stroke-linejoin: round;
  }
  svg .belief-before {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.5;
    stroke-dasharray: 5 4;
  }
  svg .belief-middle {
    stroke: var(--plan-f);
    stroke-width: 3;
  }
  svg .belief-move {
    stroke: var(--plan-f);
    stroke-width: 3;
  }
  svg .belief-ring {
    fill: var(--paper);
    stroke: var(--ink);
    stroke-width: 1.5;
    stroke-dasharray: 4 3;
  }
  svg .belief-dot {
    fill: var(--plan-f);
    stroke: var(--paper);
    stroke-width: 1.5;
  }
  svg .rate-read {
    fill: var(--raise);
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .rate-end {
    font-size: 16px;
    fill: var(--ink2);
  }
  svg .rate-words[data-kind='name'],
  svg .rate-words[data-kind='now'],
  svg .rate-words[data-kind='strong'] {
    font-weight: 650;
    font-size: 18px;
  }
  svg .rate-words[data-kind='name'] {
    font-family: var(--serif);
  }
  svg .rate-words[data-kind='unit'],
  svg .rate-words[data-kind='note'],
  svg .rate-words[data-kind='plain'] {
    font-size: 16px;
    fill: var(--ink2);
  }
  .stale-room {
    min-height: 38px;
    padding-top: 6px;
  }
  .controls button {
    position: absolute;
    padding: 0 8px;
    background: var(--paper);
  }
  button[aria-disabled='true'] {
    color: var(--ink2);
    border-color: var(--rule);
    border-style: dashed;
    cursor: default;
  }
  @media (forced-colors: active) {
    svg .belief-now {
      fill: none;
    }
  }
  @media print {
    .controls {
      display: none;
    }
  }
`;
