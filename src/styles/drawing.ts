import { css } from 'lit';

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
  svg .proven-label {
    font-size: 16px;
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
      stroke: var(--ink);
    }
    svg .hair {
      opacity: 0.5;
    }
  }

  /* Marks glide after a change of the figures, never after a change of size. */
  :host([data-moving]) svg .ring,
  :host([data-moving]) svg .dot,
  :host([data-moving]) svg .glide {
    transition: transform var(--move) ease-out;
  }
`;
