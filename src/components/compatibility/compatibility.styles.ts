import { css } from 'lit';

export const compatibilityStyles = css`
  :host {
    display: block;
    container-type: inline-size;
  }
  .said {
    font-family: var(--serif);
    font-size: var(--size-plan);
    line-height: 1.35;
    max-width: 36em;
    margin-top: 10px;
    text-wrap: pretty;
  }
  .intro,
  .note {
    margin: 10px 0 14px;
    color: var(--ink2);
    font-size: var(--size-note);
    max-width: 42em;
  }
  table {
    border-collapse: collapse;
    width: auto;
  }
  th,
  td {
    padding: 8px 14px;
    border-top: 1px solid var(--hair);
    text-align: left;
    font-size: var(--size-label);
    line-height: 1.3;
    white-space: nowrap;
  }
  thead th,
  thead td {
    border-top: 0;
    border-bottom: 1px solid var(--ink);
    vertical-align: bottom;
    white-space: normal;
    max-width: 8em;
  }
  th small {
    display: block;
    font-size: var(--size-least);
    font-weight: 400;
    color: var(--ink2);
  }
  td i,
  dt i {
    display: inline-block;
    width: 1.3em;
    font-style: normal;
    color: var(--ink2);
  }
  td[data-match='none'] {
    font-weight: 650;
  }
  td[data-match='none'],
  td[data-match='none'] i {
    color: var(--warn);
  }
  td.own {
    background: var(--paper2);
  }
  .list {
    display: none;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .long .wide {
    display: none;
  }
  .long .list {
    display: block;
  }
  .list > li {
    padding: 12px 0;
    border-top: 1px solid var(--rule);
  }
  .list b {
    font-weight: 650;
  }
  dl {
    display: grid;
    grid-template-columns: minmax(7em, max-content) minmax(0, 1fr);
    gap: 4px 14px;
    margin: 6px 0 0;
    font-size: var(--size-label);
  }
  dt {
    color: var(--ink2);
  }
  dd {
    margin: 0;
  }
  @container (max-width: 620px) {
    .wide {
      display: none;
    }
    .list {
      display: block;
    }
    dl {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
    }
    dd {
      margin-bottom: 6px;
    }
  }
`;
