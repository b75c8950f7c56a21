import { css } from 'lit';

export const betterPictureStyles = css`
  svg .beaten {
    fill: var(--ink);
    opacity: 0.045;
  }
  svg .seen-dot {
    fill: var(--plan);
    opacity: 0.4;
  }
  svg .front-line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2.4;
    stroke-linejoin: round;
  }
  svg .cross {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.6;
  }
  svg .found {
    fill: var(--paper);
    stroke: var(--plan);
    stroke-width: 3;
  }
  svg .found.unclear {
    stroke-dasharray: 3 2.5;
  }
  svg .words .number {
    font-size: 16px;
    font-weight: 700;
    text-anchor: middle;
  }
  svg .amount {
    fill: var(--ink2);
  }
  svg .axis-caption {
    font-weight: 600;
  }
  svg .corner {
    font-style: italic;
    fill: var(--ink2);
  }
  svg .leaders .leader {
    stroke: var(--ink);
    stroke-width: 1.3;
  }
  @media (forced-colors: active) {
    svg .beaten {
      fill: none;
    }
  }
`;
