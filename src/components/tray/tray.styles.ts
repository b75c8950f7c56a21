import { css } from 'lit';
import { trayDrawing } from './tray-drawing.styles.ts';

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
      max-width: 100%;
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

export const trayStyles = [trayDrawing, page];
