import { css } from 'lit';

/** Leaves stand in the green of the leaf for every trait: what tells kinds apart is texture and fruit, never a second colour. */
const drawing = css`
  svg .leaf-ground {
    fill: var(--paper);
  }
  svg .leaf-ink {
    fill: var(--plan-b);
  }
  svg .stem,
  svg .leaf {
    stroke: var(--plan-b);
    stroke-width: 1.5;
    stroke-linejoin: round;
    stroke-linecap: round;
  }
  svg .stem {
    fill: none;
    stroke-width: 2;
  }
  svg .leaf {
    fill: var(--paper);
  }
  svg [data-kind='able'] .leaf {
    fill: var(--plan-b);
  }
  svg [data-kind='unable'] .leaf,
  svg [data-kind='carrier'] .leaf {
    fill: revert-layer;
  }
  svg .vein {
    fill: none;
    stroke: var(--plan-b);
    stroke-width: 1;
    opacity: 0.55;
  }
  svg [data-kind='able'] .vein {
    stroke: var(--paper);
  }
  svg .fruit {
    fill: var(--paper);
    stroke: var(--plan-d);
    stroke-width: 2.2;
  }
  svg [data-kind='able'] .fruit {
    fill: var(--plan-d);
  }
  svg .pot {
    fill: var(--paper);
    stroke: var(--edge);
    stroke-width: 1.5;
    stroke-linejoin: round;
  }
  svg .pot.wanted {
    fill: var(--ink2);
    stroke: var(--ink2);
  }
  svg .shelf {
    stroke: var(--ink);
    stroke-width: 2;
  }

  svg .level-rule {
    stroke: var(--rule);
    stroke-width: 1;
  }
  svg .level-rule.missed {
    stroke-dasharray: 2 5;
  }
  svg .drop {
    stroke: var(--edge);
    stroke-dasharray: 3 3;
  }
  svg .ceiling {
    stroke: var(--ink);
    stroke-width: 1.5;
    stroke-dasharray: 9 6;
  }
  svg .chance-of {
    fill: none;
    stroke: var(--plan-b);
    stroke-width: 3.5;
  }
  svg .read-off {
    fill: var(--paper);
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .raise {
    font-weight: 650;
  }
  svg .raise.missed {
    font-weight: 400;
    fill: var(--ink2);
  }
  svg .axis-name {
    font-size: 16px;
    fill: var(--ink2);
  }
  svg .need-words .tick {
    font-size: 16px;
  }

  svg .hill {
    fill: color-mix(in oklab, var(--plan-f) 22%, var(--paper));
    stroke: var(--plan-f);
    stroke-width: 1.5;
  }
  svg .mean-range {
    fill: var(--paper2);
    stroke: var(--edge);
  }
  svg .values .dot,
  svg .dot {
    fill: var(--plan-f);
  }
  svg .figures .ring {
    stroke: var(--ink);
    stroke-width: 2.5;
  }
  svg .goal-rule {
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .mark-name {
    font-size: 16px;
  }
  svg .mark-name.goal {
    font-weight: 650;
  }
  @media (forced-colors: active) {
    svg .hill {
      fill: none;
    }
    svg .pot.wanted {
      fill: CanvasText;
    }
  }
`;

const page = css`
  :host {
    container-type: inline-size;
  }
  .answer {
    font-family: var(--serif);
    font-size: var(--size-plan);
    line-height: 1.35;
    max-width: 36em;
    margin-top: 10px;
    text-wrap: pretty;
  }
  .answer b {
    font-weight: 700;
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 8px 22px;
    margin: 18px 0 26px;
  }
  .controls label {
    display: grid;
    gap: 3px;
    color: var(--ink2);
    font-size: var(--size-note);
    min-width: 0;
    max-width: 100%;
  }
  .controls .pair {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 8px 10px;
    min-width: 0;
  }
  .controls .times {
    line-height: var(--target);
  }
  select {
    max-width: min(100%, 18em);
  }
  .two {
    display: grid;
    grid-template-columns: minmax(0, 1.28fr) minmax(0, 1fr);
    gap: 36px 54px;
    align-items: start;
  }
  .two > * {
    min-width: 0;
  }
  .more {
    margin-top: 44px;
    padding-top: 22px;
    border-top: 1px solid var(--rule);
  }
  h3 {
    margin-bottom: 2px;
  }
  .intro {
    margin: 2px 0 14px;
    font-size: var(--size-note);
  }
  .note {
    margin-top: 10px;
    color: var(--ink2);
    font-size: var(--size-note);
    max-width: 42em;
  }
  .note.exact {
    margin-top: 30px;
  }

  .key {
    list-style: none;
    margin: 18px 0 0;
    padding: 0;
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto auto;
    column-gap: 12px;
    font-size: var(--size-label);
    line-height: 1.3;
  }
  .key li {
    display: grid;
    grid-column: 1 / -1;
    grid-template-columns: subgrid;
    align-items: center;
    border-top: 1px solid var(--hair);
    padding: 3px 0;
  }
  .key li:first-child {
    border-top: 0;
  }
  .key .of {
    font-weight: 650;
    text-align: right;
    white-space: nowrap;
  }
  .key .share {
    color: var(--ink2);
    text-align: right;
  }
  .key .fewer {
    grid-column: 3 / -1;
    text-align: right;
    color: var(--ink2);
  }

  .rules {
    list-style: none;
    margin: 12px 0 0;
    padding: 0;
    display: grid;
    gap: 14px;
  }
  .rules li {
    display: grid;
    grid-template-columns: minmax(0, 15em) minmax(0, 1fr) minmax(8em, 13em);
    gap: 4px 26px;
    align-items: center;
  }
  .rules .if {
    font-weight: 600;
  }
  .rules small {
    display: block;
    font-size: var(--size-least);
    font-weight: 400;
    color: var(--ink2);
  }
  .misfit {
    grid-column: 1 / -1;
    color: var(--warn);
    font-size: var(--size-note);
  }

  .value + .value {
    margin-top: 26px;
  }
  .value h4 {
    margin: 0 0 4px;
    font: 600 var(--size-label) / 1.3 var(--sans);
  }
  .value p {
    margin-top: 6px;
    max-width: 40em;
  }
  dl {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    gap: 9px 22px;
    margin: 12px 0 0;
  }
  dt {
    font-weight: 600;
  }
  dd {
    margin: 0;
  }
  .data table + table {
    margin-top: 22px;
  }

  @container (max-width: 860px) {
    .two {
      grid-template-columns: minmax(0, 1fr);
    }
    .rules li {
      grid-template-columns: minmax(0, 1fr);
    }
    .rules li + li {
      border-top: 1px solid var(--hair);
      padding-top: 12px;
    }
    .more {
      margin-top: 32px;
    }
  }
  @container (max-width: 480px) {
    dl {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
    }
    dd {
      margin-bottom: 10px;
    }
    .controls {
      gap: 8px 14px;
    }
    .controls .pair,
    .controls .pair label,
    .controls .trait,
    .controls select {
      width: 100%;
    }
    .controls .wanted {
      flex: 1;
    }
    .controls .times {
      display: none;
    }
  }
  @media print {
    .controls {
      display: none;
    }
    .two > *,
    .rules li,
    .value {
      break-inside: avoid;
    }
    .answer {
      margin-bottom: 18px;
    }
  }
`;

export const trayStyles = [drawing, page];
