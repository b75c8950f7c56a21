import { css } from 'lit';

export const logImportStyles = css`
  :host {
    display: block;
    font-size: var(--size-body);
    line-height: 1.4;
  }
  .intro {
    max-width: 47em;
    margin-top: 4px;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
    margin-top: 14px;
  }
  .found {
    margin-top: 18px;
    padding: 14px 22px 22px;
    background: var(--raise);
    border-left: 3px solid var(--ink);
  }
  .found:focus,
  .status:focus {
    outline: none;
  }
  .found h3 {
    margin: 26px 0 0;
    font-family: var(--serif);
    font-size: var(--size-subhead);
    font-weight: 600;
    line-height: 1.25;
  }
  .found > p {
    max-width: 47em;
  }
  .understood {
    font-weight: 500;
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-end;
    gap: 10px 18px;
    margin-top: 12px;
  }
  .field {
    display: grid;
    gap: 2px;
    min-width: 0;
    max-width: 100%;
  }
  .field > span {
    font-size: var(--size-note);
    color: var(--ink2);
    overflow-wrap: anywhere;
  }
  .field input {
    width: 7em;
  }
  textarea {
    display: block;
    width: 100%;
    min-height: 9em;
    margin-top: 2px;
    font-variant-numeric: tabular-nums;
    white-space: pre;
    overflow-x: auto;
  }
  .paste {
    margin-top: 14px;
  }
  .columns {
    list-style: none;
    margin: 10px 0 0;
    padding: 0;
  }
  .columns li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.35fr);
    gap: 4px 22px;
    padding: 10px 0;
    border-bottom: 1px solid var(--hair);
    align-items: center;
  }
  .columns b {
    display: block;
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  .columns small {
    display: block;
    font-size: var(--size-least);
    color: var(--ink2);
    overflow-wrap: anywhere;
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 10px;
  }
  .choices select {
    min-width: 0;
    max-width: 100%;
  }
  .choices .role {
    flex: 1 1 14em;
  }
  .choices .open {
    border-color: var(--warn);
    border-width: 2px;
  }
  .doubts {
    margin: 8px 0 0;
    padding: 0;
    list-style: none;
  }
  .doubts li {
    padding: 7px 0;
    border-bottom: 1px solid var(--hair);
    overflow-wrap: anywhere;
  }
  .doubts span {
    color: var(--ink2);
  }
  .doubts .open {
    border-left: 3px solid var(--warn);
    padding-left: 10px;
  }
  .scroll {
    margin-top: 8px;
  }
  .scroll table {
    width: auto;
    min-width: 100%;
    font-size: var(--size-note);
  }
  .scroll th,
  .scroll td {
    padding: 7px 16px 7px 0;
    min-width: 5.5em;
    max-width: 18em;
    overflow-wrap: break-word;
  }
  .scroll th:first-child {
    min-width: 3.5em;
  }
  .scroll td span {
    white-space: pre-wrap;
  }
  .scroll thead small {
    font-weight: 400;
  }
  .scroll td.flagged {
    border-bottom: 2px dotted var(--ink2);
  }
  .scroll td.open {
    border-bottom: 2px solid var(--warn);
  }
  .becomes {
    margin: 8px 0 0;
    padding: 0;
    list-style: none;
  }
  .becomes li {
    padding: 5px 0;
    overflow-wrap: anywhere;
  }
  .status {
    margin-top: 12px;
    font-weight: 500;
  }
  .out {
    margin-top: 26px;
  }
  @media (max-width: 699px) {
    .found {
      margin-inline: -8px;
      padding: 14px 8px 22px 11px;
    }
    .columns li {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media print {
    .buttons,
    .found,
    .paste {
      display: none;
    }
  }
`;
