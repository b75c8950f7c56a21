import { css } from 'lit';

export const catalogueStyles = css`
  :host {
    display: block;
  }
  .choose {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 14px;
  }
  .choose > label,
  .group > legend {
    font-weight: 500;
  }
  .choose select {
    min-width: min(22em, 100%);
  }
  .offer {
    display: grid;
    gap: 18px;
    margin-top: 18px;
    max-width: 47em;
  }
  .offer > * {
    min-width: 0;
  }
  .about {
    color: var(--ink2);
    font-size: var(--size-note);
  }
  .about + .about {
    margin-top: 4px;
  }
  .group {
    border: 0;
    margin: 0;
    padding: 0;
  }
  .group > legend {
    padding: 0 0 4px;
  }
  .tick,
  .tree {
    display: grid;
    gap: 0 14px;
    align-items: start;
    padding: 9px 0;
    border-top: 1px solid var(--hair);
  }
  .tick {
    grid-template-columns: 22px minmax(0, 1fr);
    padding: 0 0 9px;
  }
  .tick label {
    min-height: var(--target);
    padding-top: 9px;
    cursor: pointer;
  }
  .tick input {
    margin-top: 11px;
  }
  .tick span {
    padding-top: 9px;
  }
  .fixed {
    justify-self: center;
    font-family: var(--sans);
    font-weight: 700;
  }
  .tick p,
  .group > p {
    grid-column: 2;
    color: var(--ink2);
    font-size: var(--size-note);
  }
  .tree {
    grid-template-columns: minmax(0, 16em) minmax(0, 1fr);
    align-items: center;
  }
  .tree select {
    justify-self: start;
    min-width: min(14em, 100%);
  }
  .group > .tick:last-of-type,
  .group > .tree:last-of-type {
    border-bottom: 1px solid var(--hair);
  }
  .comes {
    padding-left: 14px;
    border-left: 3px solid var(--ink);
  }
  .refused {
    color: var(--warn);
  }
  .refused ul {
    margin: 4px 0 0;
    padding-left: 22px;
  }
  .done:empty {
    display: none;
  }
  .done {
    margin-top: 18px;
    padding-left: 14px;
    border-left: 3px solid var(--ink);
    max-width: 47em;
  }
  summary {
    display: flex;
    align-items: center;
    gap: 14px;
    min-height: var(--target);
    cursor: pointer;
  }
  summary::before {
    content: '▸';
    flex: none;
    width: 1em;
    color: var(--ink2);
    font-family: var(--sans);
    font-size: var(--size-least);
  }
  details[open] > summary::before {
    content: '▾';
  }
  .offer p.from {
    margin: 4px 0 8px;
  }
  .figures details {
    border-top: 1px solid var(--hair);
  }
  .figures details > summary {
    padding: 8px 0;
  }
  .figures b {
    margin-right: 8px;
    font: 600 var(--size-body) / 1.3 var(--serif);
  }
  .figures dl {
    margin: 0 0 14px;
  }
  .figure {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 2px 22px;
    padding: 9px 0;
    border-top: 1px solid var(--hair);
  }
  .figure dt {
    font-weight: 500;
  }
  .figure dd {
    margin: 0;
  }
  .figure .value {
    font-variant-numeric: tabular-nums lining-nums;
    text-align: right;
  }
  .figure .from {
    grid-column: 1 / -1;
  }
  .from {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 4px 14px;
    color: var(--ink2);
    font-size: var(--size-note);
  }
  .from .note {
    flex: 1 1 20em;
  }
  .from .badge {
    color: var(--ink);
  }
  @media (max-width: 700px) {
    .tree {
      grid-template-columns: minmax(0, 1fr);
    }
    .figure {
      gap: 2px 14px;
    }
    .badge {
      white-space: normal;
    }
  }
`;
