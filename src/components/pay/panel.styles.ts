import { css } from 'lit';

/** Lines, bands and words of the panels that several questions draw. */
export const panelStyles = css`
  svg .stretch {
    fill: var(--paper2);
  }
  svg .level-hair {
    stroke: var(--hair);
  }
  svg .panel-curve {
    fill: none;
    stroke: var(--ink);
    stroke-linejoin: round;
  }
  svg .panel-curve[data-of='plan'] {
    stroke: var(--plan);
  }
  svg .panel-curve[stroke-dasharray='2 5'] {
    stroke-linecap: round;
  }
  svg .panel-band {
    fill: var(--ink);
    opacity: 0.1;
  }
  svg .panel-band[data-of='plan'] {
    fill: var(--plan);
    opacity: 0.24;
  }
  svg .panel-rule {
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  svg .panel-rule[data-kind='level'] {
    stroke-dasharray: 4 4;
    stroke-width: 1;
  }
  svg .across,
  svg .up {
    fill: var(--ink2);
  }
  svg .panel-words[data-kind='strong'],
  svg .panel-words[data-kind='caption'] {
    font-weight: 600;
  }
  svg .panel-words[data-kind='aside'] {
    font-style: italic;
    fill: var(--ink2);
  }
  svg .end-words .name {
    font-weight: 500;
  }
  svg .end-words[data-of='plan'] .name {
    font-weight: 700;
  }
  svg .end-words .value {
    font-size: 16.5px;
    fill: var(--ink2);
  }
  @media (forced-colors: active) {
    svg .panel-band,
    svg .stretch {
      fill: none;
      stroke: GrayText;
      opacity: 1;
    }
  }
`;
