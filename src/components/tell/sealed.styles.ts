import { css } from 'lit';

export const sealedStyles = css`
  :host {
    display: block;
  }
  .about {
    max-width: 47em;
    margin-top: 8px;
  }
  .said {
    margin-top: 14px;
  }
  .said:empty {
    display: none;
  }
  .opened {
    margin-top: 22px;
    padding-top: 14px;
    border-top: 1px solid var(--rule);
  }
  .opened ul {
    margin: 8px 0 14px;
    padding-left: 22px;
    max-width: 52em;
  }
  .opened .quiet {
    max-width: 52em;
  }
  table {
    width: auto;
    min-width: 60%;
    margin-top: 14px;
  }
  th,
  td {
    white-space: nowrap;
    padding-block: 6px;
  }
  td {
    text-align: right;
  }
  thead th {
    text-align: right;
  }
  thead th:first-child {
    text-align: left;
  }
  thead tr:first-child th {
    border-bottom: 0;
  }
  @media (max-width: 700px) {
    .buttons button {
      flex: 1 1 100%;
    }
  }
  @media print {
    :host {
      display: none;
    }
  }
`;
