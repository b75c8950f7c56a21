import { css } from 'lit';

export const carriersStyles = css`
  :host {
    display: block;
    container-type: inline-size;
  }
  .intro,
  .note {
    margin-top: 6px;
    max-width: 47em;
  }
  .note {
    margin-top: 10px;
    color: var(--ink2);
    font-size: var(--size-note);
  }
  table {
    margin-top: 18px;
  }
  caption {
    font: 600 var(--size-subhead) / 1.25 var(--serif);
    color: var(--ink);
  }
  th:first-child {
    width: 14em;
  }
  td:nth-child(2) {
    width: 9em;
  }
  td:nth-child(3) {
    width: 15em;
  }
  tbody th {
    font-weight: 600;
  }
  b {
    white-space: nowrap;
  }
  .head {
    display: none;
  }

  @container (max-width: 720px) {
    table,
    caption,
    tbody,
    tr,
    tbody th,
    td {
      display: block;
      width: auto;
    }
    /* Each cell says its own head then. */
    thead {
      display: none;
    }
    tr {
      padding: 10px 0;
      border-bottom: 1px solid var(--hair);
    }
    tbody th,
    td,
    th:first-child,
    td:nth-child(n) {
      width: auto;
      border: 0;
      padding: 2px 0;
    }
    td {
      display: grid;
      grid-template-columns: 7.5em minmax(0, 1fr);
      gap: 10px;
    }
    .head {
      display: block;
      color: var(--ink2);
      font-size: var(--size-note);
    }
  }
`;
