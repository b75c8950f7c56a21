import { css } from 'lit';

/** What single pictures draw beyond axes, letters and boughs. */
export const pictures = css`
  /* Chance by year */
  svg .band {
    fill: var(--plan);
    opacity: 0.13;
  }
  svg .band.resting {
    opacity: 0.04;
  }
  svg .chance-line {
    fill: none;
    stroke: var(--plan);
    stroke-width: 3.5;
  }
  svg .reading-rule {
    stroke: var(--ink);
    stroke-dasharray: 3 3;
  }
  svg .reading-rule,
  svg .read-ring,
  svg .read-halo,
  svg .read-frame {
    fill: none;
  }
  svg .read-ring {
    stroke: var(--ink);
    stroke-width: 2.5;
  }
  svg .read-halo {
    stroke: var(--paper);
    stroke-width: 6;
  }
  svg .read-frame {
    stroke: var(--ink);
    stroke-width: 3;
  }
  svg .read-band {
    fill: none;
    stroke: var(--edge);
  }
  svg .tie {
    fill: none;
    stroke: var(--edge);
    stroke-dasharray: 3 3;
  }
  svg .pointer {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  svg .leader {
    fill: none;
    stroke: var(--edge);
    stroke-width: 1;
  }
  svg .meeting {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .share {
    fill: var(--ink2);
  }
  svg .level,
  svg .end-label .name {
    font-weight: 650;
  }
  svg .end-label .value {
    font-size: 16.5px;
    font-weight: 400;
    fill: var(--ink2);
  }
  svg .aside {
    font-size: 16.5px;
    font-style: italic;
    fill: var(--ink2);
  }
  @media (forced-colors: active) {
    svg .band {
      fill: none;
      stroke: GrayText;
      opacity: 1;
    }
  }

  /* Years against trees */
  svg .cloud {
    fill: var(--plan);
    stroke: var(--plan);
  }
  svg .cloud.resting {
    opacity: var(--lift-rest);
  }
  svg .strip {
    fill: var(--plan);
    opacity: 0.85;
  }
  svg .strip.resting {
    opacity: var(--lift-rest);
  }
  svg .cloud-label {
    text-anchor: end;
  }
  svg .cloud-label .name,
  svg .strip-head,
  svg .strip-number,
  svg .step-count .name,
  svg .bar-name,
  svg .on-bar.name {
    font-weight: 650;
  }
  svg .strip-number {
    text-anchor: middle;
  }

  /* Why futures fail */
  svg .segment {
    stroke: var(--edge);
    stroke-width: 1;
  }
  svg .segment[data-ground='success'] {
    fill: var(--fill);
    stroke: var(--plan);
  }
  svg .segment[data-ground='plain'] {
    fill: var(--paper2);
  }
  svg .ground-paper {
    fill: var(--paper2);
  }
  svg .ground-hatch,
  svg .ground-lines {
    fill: none;
    stroke: var(--edge);
    stroke-width: 1.3;
    opacity: 0.7;
  }
  svg .ground-dots {
    fill: none;
    stroke: var(--edge);
    stroke-width: 2.6;
    stroke-linecap: round;
  }
  svg .on-bar {
    paint-order: stroke;
    stroke: var(--paper2);
    stroke-width: 6px;
    stroke-linejoin: round;
  }
  svg .on-bar[data-ground='success'] {
    fill: var(--fill-ink);
    stroke: none;
  }
  /* On a bar that has stepped back, what was written on its full colour is written on paper. */
  svg .on-bar.resting[data-ground='success'] {
    fill: var(--ink);
  }
  svg .bar-name {
    font-size: 16px;
  }

  /* From flower to pick */
  svg .step,
  svg .step-count {
    font-size: 16px;
  }
  svg .step,
  svg .step-count .value {
    fill: var(--ink2);
  }

  /* Busiest years */
  svg .limit {
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .limit-word {
    fill: var(--ink);
    font-weight: 650;
  }
  svg .over-hatch {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.2;
    opacity: 0.7;
  }
  svg .over-bar {
    fill: var(--plan);
  }
  svg .strip-name,
  svg .said.first {
    font-weight: 650;
  }
  svg .said {
    font-size: 16px;
    fill: var(--ink2);
  }
  svg .said.first {
    fill: var(--ink);
  }
`;
