import { css } from 'lit';

/** Frame of every picture: title, words, and how a stale or set-back picture looks. */
export const figure = css`
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
  .stale-words {
    display: inline-block;
    margin-bottom: 8px;
    padding: 1px 9px;
    border: 1px dashed var(--ink);
    border-radius: var(--radius-input);
    font-size: var(--size-least);
  }
  :host([stale]) .picture {
    opacity: var(--stale);
  }
  .picture {
    position: relative;
    transition: opacity var(--move) ease-out;
  }
  .resting {
    opacity: var(--lift-rest);
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
  details.data th,
  details.data td {
    padding: 6px 18px 6px 0;
  }
  @media print {
    details.data:not([open]) {
      display: none;
    }
  }
`;

/** Everything drawn. Classes are given by the drawing functions of src/charts. */
export const drawing = css`
  svg {
    display: block;
    max-width: 100%;
    height: auto;
    overflow: visible;
    print-color-adjust: exact;
    -webkit-print-color-adjust: exact;
  }
  svg text {
    font-family: var(--sans);
    font-size: 17px;
    font-variant-numeric: tabular-nums lining-nums;
    fill: var(--ink);
  }
  svg .words text,
  svg text.haloed {
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 5px;
    stroke-linejoin: round;
  }
  svg .words text.on-open {
    stroke: var(--raise);
  }
  svg .tick,
  svg .last-year {
    fill: var(--ink2);
    text-anchor: middle;
  }
  svg .last-year {
    fill: var(--ink);
    font-weight: 700;
    text-anchor: end;
  }
  svg .caption {
    font-size: 16px;
    font-weight: 600;
    text-anchor: end;
  }
  svg .note {
    font-size: 16px;
    fill: var(--ink2);
  }
  svg .hair {
    stroke: var(--hair);
    stroke-width: 1;
  }
  svg .baseline {
    stroke: var(--edge);
    stroke-width: 1;
  }
  svg .horizon {
    stroke: var(--ink);
    stroke-width: 2;
  }

  /* The letter of a plan */
  svg .letter circle {
    fill: var(--mark-ground);
    stroke: var(--plan);
    stroke-width: 3;
  }
  svg .letter.ringed circle.around {
    fill: none;
    stroke: var(--paper);
    stroke-width: 3;
  }
  svg .letter text {
    fill: var(--mark-ink);
    stroke: none;
    font-weight: 700;
    text-anchor: middle;
  }

  /* Boughs */
  svg .plan-stop {
    stop-color: var(--plan);
  }
  svg .alpha {
    mask-type: alpha;
  }
  svg .dots-ground {
    fill: var(--plan);
    opacity: 0.1;
  }
  svg .dots-dot {
    fill: var(--plan);
  }
  svg path.waiting {
    opacity: 0.24;
  }
  svg path.judging {
    opacity: 0.9;
  }
  svg path.contour {
    fill: none;
    stroke-width: 1.5;
    opacity: 0.9;
  }
  svg .descent {
    fill: none;
    stroke: var(--plan);
    stroke-linecap: round;
  }
  svg .ring {
    fill: var(--paper);
    stroke: var(--plan);
    stroke-width: 3;
  }
  svg .dot {
    fill: var(--plan);
    stroke: var(--paper);
    stroke-width: 2.5;
  }
  svg .bar-halo {
    fill: none;
    stroke: var(--paper);
    stroke-width: 7;
  }
  svg .bar {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2.5;
  }
  svg .chain .kept {
    font-weight: 650;
  }
  svg .chain .reached {
    font-style: italic;
    fill: var(--ink2);
  }
  svg .year {
    font-weight: 700;
    text-anchor: middle;
  }
  svg .open-ground {
    fill: var(--raise);
    stroke: var(--ink);
    stroke-width: 1;
  }

  /* The scale of a chance */
  svg .scale {
    fill: none;
    stroke: var(--edge);
  }
  svg .guesses {
    fill: var(--plan);
    fill-opacity: 0.26;
    stroke: var(--plan);
    stroke-width: 1;
  }
  svg rect.chance {
    fill: var(--plan);
  }
  @media (forced-colors: active) {
    svg .guesses {
      fill: none;
    }
    svg .hair {
      opacity: 0.5;
    }
  }

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

  /* Marks glide after a change of the figures, never after a change of size. */
  :host([data-moving]) svg .ring,
  :host([data-moving]) svg .dot,
  :host([data-moving]) svg .glide {
    transition: transform var(--move) ease-out;
  }
`;

export const chartStyles = [figure, drawing];
