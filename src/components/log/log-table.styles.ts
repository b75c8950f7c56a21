import { css } from 'lit';

export const tableStyles = css`
  table {
    margin-top: 14px;
  }
  th,
  td {
    padding: 9px 0 9px 14px;
  }
  th:first-child {
    padding-left: 0;
    width: 24%;
    min-width: 13em;
  }
  thead th {
    vertical-align: bottom;
  }
  .date {
    font: 600 var(--size-subhead) / 1.2 var(--serif);
    margin-right: 10px;
  }
  .year th {
    padding-top: 22px;
    border-bottom: 0;
  }
  .batch th button {
    justify-content: flex-start;
    text-align: left;
    padding: 0;
    font-size: var(--size-body);
    line-height: 1.3;
    overflow-wrap: anywhere;
  }
  .batch small > span {
    margin-right: 8px;
  }
  .batch small > .apart {
    display: block;
  }
  .batch td b {
    display: block;
    min-height: var(--target);
    padding-top: 9px;
    font-weight: 600;
  }
  .batch td,
  .sums th {
    padding-top: 9px;
    padding-bottom: 9px;
  }
  .batch td small {
    margin-top: -8px;
  }
  .none {
    color: var(--ink2);
    padding-top: 18px;
  }
  .batch td.none {
    padding-top: 18px;
  }
  .flagged b {
    text-decoration: underline wavy 1px var(--warn);
    text-underline-offset: 4px;
  }
  .head {
    display: none;
  }
  tr:has(+ .flags) :is(th, td),
  tr:has(+ .inside) :is(th, td) {
    border-bottom: 0;
  }
  .flags td {
    padding: 0 0 9px;
  }
  .unsaid {
    color: var(--ink2);
    font-size: var(--size-note);
  }
  .batch.open > th,
  .batch.open > td {
    background: var(--raise);
  }
  .batch.open > th:first-child,
  .inside > td:first-child {
    box-shadow: -14px 0 0 var(--raise);
  }
  .inside > td {
    padding: 0 14px 0 0;
    background: var(--raise);
  }
  .sums tr:first-child :is(th, td) {
    border-top: 2px solid var(--ink);
  }
  .sums th {
    font-weight: 600;
    padding-top: 18px;
  }
  .lost {
    margin-top: 14px;
  }
  /* Narrow: one block a batch, its numbers side by side under their names. */
  @media (max-width: 1000px) {
    table,
    tbody {
      display: block;
    }
    thead {
      display: none;
    }
    tr {
      display: grid;
      grid-template-columns: repeat(auto-fill, minmax(92px, 1fr));
      gap: 6px 14px;
      padding: 8px 0 12px;
      border-bottom: 1px solid var(--hair);
    }
    tr.year {
      padding: 22px 0 0;
      border-bottom: 1px solid var(--rule);
    }
    tr:has(+ .flags),
    tr:has(+ .inside) {
      border-bottom: 0;
    }
    th,
    td,
    .batch td,
    .sums th,
    .year th,
    .inside > td {
      display: block;
      border: 0;
      padding: 0;
      min-width: 0;
    }
    th:first-child,
    .flags td,
    .inside > td {
      grid-column: 1 / -1;
      width: auto;
    }
    .year th {
      padding-bottom: 6px;
    }
    .number {
      text-align: left;
    }
    .none,
    .batch td.none {
      display: none;
    }
    .head {
      display: block;
      color: var(--ink2);
      font-size: var(--size-least);
      line-height: 1.2;
    }
    .batch td b {
      min-height: 0;
      padding: 0;
      font-size: var(--size-subhead);
    }
    .batch td small {
      margin-top: 0;
    }
    tr.batch.open,
    tr.inside {
      background: var(--raise);
      box-shadow:
        -8px 0 0 var(--raise),
        8px 0 0 var(--raise);
    }
    .batch.open > th:first-child,
    .inside > td:first-child {
      box-shadow: none;
    }
    .sums {
      border-top: 2px solid var(--ink);
    }
    .sums tr:first-child :is(th, td) {
      border-top: 0;
    }
  }
`;
