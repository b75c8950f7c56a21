import { css } from 'lit';

export const openStyles = css`
  svg .way-line[data-kind='name'] {
    font-weight: 650;
  }
  svg .way-line[data-kind='truly'],
  svg .way-line[data-kind='parents'] {
    font-size: 16px;
    fill: var(--ink2);
  }
  svg .way-line[data-kind='figure'] {
    font-weight: 600;
  }
  svg .way-bar {
    stroke: var(--plan);
    stroke-width: 3;
    stroke-dasharray: 7 4;
  }
  svg .way-bar.stands {
    stroke-dasharray: none;
    stroke-width: 5;
  }
  svg .way-end,
  svg .way-on {
    fill: none;
    stroke: var(--plan);
    stroke-width: 3;
  }
  svg .way-half {
    fill: var(--paper);
    stroke: var(--plan);
    stroke-width: 3;
  }
  svg .way-half.stands {
    fill: var(--plan);
  }
  svg .way-year {
    font-weight: 600;
  }
  svg .read-row {
    fill: var(--paper2);
  }
  .plot {
    cursor: default;
  }
`;
