import { css } from 'lit';

/** Leaves stand in the green of the leaf for every trait: what tells kinds apart is texture and fruit, never a second colour. */
export const trayDrawing = css`
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
  svg [data-kind='without'] .leaf,
  svg [data-kind='male'] .leaf,
  svg [data-kind='copy'] .leaf {
    fill: var(--paper);
  }
  svg [data-kind='able'] .leaf {
    fill: var(--plan-b);
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
  svg .stamens {
    fill: none;
    stroke: var(--plan-d);
    stroke-width: 1.8;
    stroke-linecap: round;
  }
  svg .label {
    fill: var(--paper);
    stroke: var(--ink);
    stroke-width: 1.5;
    stroke-linejoin: round;
  }
  svg .stump {
    fill: none;
    stroke: var(--ink2);
    stroke-width: 2;
    stroke-linecap: round;
  }
  svg .gap {
    fill: none;
    stroke: var(--ink2);
    stroke-width: 1.5;
    stroke-dasharray: 2 3;
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

  svg .hill {
    fill: color-mix(in oklab, var(--plan-f) 22%, var(--paper));
    stroke: var(--plan-f);
    stroke-width: 1.5;
  }
  svg .mean-range {
    fill: var(--paper2);
    stroke: var(--edge);
  }
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
