import { css } from 'lit';

export const estimateStyles = css`
  .three {
    display: grid;
    grid-template-columns: repeat(3, auto) 5em;
    gap: 5px 6px;
    align-items: center;
    min-width: 0;
  }
  .three label {
    font-size: var(--size-least);
    color: var(--ink2);
    text-align: right;
    padding-right: 2px;
    line-height: 1.2;
  }
  .three .number {
    width: max(66px, calc(var(--letters, 0) * 1ch + 24px));
  }
  .three .unit {
    padding-left: 2px;
  }
  .lots {
    grid-column: 1 / -1;
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    align-items: center;
    gap: 4px 8px;
    color: var(--ink2);
  }
  .lots .number,
  .weight .number {
    width: max(48px, calc(var(--letters, 0) * 1ch + 24px));
  }
  .alternatives {
    display: grid;
    gap: 6px;
    justify-items: end;
  }
  .alternatives > div,
  .weight {
    display: flex;
    align-items: center;
    gap: 8px;
    flex-wrap: wrap;
  }
  .alternatives label {
    font-size: var(--size-note);
    color: var(--ink2);
  }
  .below .words {
    flex: 1 1 9em;
    min-width: 0;
    line-height: 1.25;
  }
  /* Beside a long badge the words would stand in a column of their own: better the badge goes below. */
  .below .roomy {
    flex-basis: 14em;
  }
  .sketch {
    display: block;
    flex: none;
    overflow: visible;
  }
  .sketch .axis {
    stroke: var(--edge);
  }
  .sketch .tint {
    fill: var(--plan, currentColor);
    opacity: 0.28;
  }
  .sketch .line,
  .sketch .bar {
    fill: none;
    stroke: var(--plan, currentColor);
    stroke-width: 1.8;
    stroke-linejoin: round;
  }
  .sketch .bar {
    stroke-width: 5;
  }
  .below > .help {
    flex: 1 1 100%;
    order: 1;
  }
  .below > select {
    margin-bottom: -6px;
  }
  .alternatives .unit {
    width: auto;
    min-width: 1.2em;
  }
  @container (max-width: 23em) {
    .three {
      grid-template-columns: repeat(3, auto) minmax(0, 5em);
    }
    .below .words {
      flex: 1 1 calc(100% - 92px);
    }
    .below > select {
      margin-left: -2px;
    }
    .lots,
    .alternatives {
      justify-content: flex-start;
      justify-items: start;
    }
  }
`;
