import { css } from 'lit';

export const mapStyles = css`
  .key {
    margin-top: 8px;
    color: var(--ink2);
    font-size: var(--size-note);
  }
  svg .graft-wins {
    fill: var(--plan);
    opacity: 0.13;
  }
  svg .own-wins {
    fill: var(--ink);
    opacity: 0.06;
  }
  svg .own-lines {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1;
    opacity: 0.4;
  }
  svg .level-hair,
  svg .grid .hair {
    stroke: var(--ink);
    opacity: 0.08;
  }
  svg .break-even {
    fill: none;
    stroke: var(--ink);
    stroke-width: 3;
  }
  svg .maybe {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1;
    stroke-dasharray: 4 4;
  }
  svg .guess-ring {
    fill: var(--plan);
    fill-opacity: 0.18;
    stroke: var(--plan);
    stroke-width: 1.6;
  }
  svg .guess-ring.inner {
    fill-opacity: 0.3;
    stroke-width: 2.4;
  }
  svg .month,
  svg .take {
    fill: var(--ink2);
  }
  svg .axis-caption,
  svg .map-label[data-kind='takes'] {
    font-weight: 600;
  }
  svg .map-label[data-kind='graft'],
  svg .map-label[data-kind='own'] {
    font-family: var(--serif);
    font-size: 27px;
    font-weight: 600;
  }
  svg .map-label[data-kind='between'] {
    font-style: italic;
    fill: var(--ink2);
  }
  svg .map-label[data-kind='line'],
  svg .map-label[data-kind='programme'] .first {
    font-weight: 650;
  }
  svg .map-label .more {
    font-weight: 400;
    fill: var(--ink2);
  }
  svg .words .leader {
    stroke: var(--ink);
    stroke-width: 1.3;
  }
  svg .leader-end {
    fill: var(--ink);
  }
  @media (max-width: 520px) {
    svg .map-label[data-kind='graft'],
    svg .map-label[data-kind='own'] {
      font-size: 22px;
    }
  }
  @media (forced-colors: active) {
    svg .graft-wins {
      fill: none;
    }
    svg .guess-ring {
      fill: none;
    }
  }
`;
