import { css } from 'lit';

export const trialStyles = css`
  svg .zone-line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1;
    opacity: 0.3;
  }
  svg .zone-lines {
    stroke: none;
  }
`;
