import { css } from 'lit';

export const todayStyles = css`
  :host {
    display: block;
  }
  .intro,
  .ground {
    max-width: 47em;
    margin-top: 8px;
  }
  .said {
    list-style: none;
    margin: 18px 0 0;
    padding: 0;
    display: grid;
    gap: 8px;
    max-width: 52em;
  }
  .said li {
    display: flex;
    gap: 10px;
    line-height: 1.4;
  }
  .pictures {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(480px, 100%), 1fr));
    gap: 28px 44px;
    margin-top: 22px;
  }
  .pictures h3 {
    display: flex;
    gap: 10px;
    align-items: center;
    margin-bottom: 8px;
  }
  .pictures > * {
    min-width: 0;
  }
  .switch {
    margin-top: 8px;
    padding: 14px 22px;
    background: var(--raise);
    border-left: 3px solid var(--ink);
    max-width: 52em;
  }
  .switch .tick {
    display: flex;
    align-items: center;
    gap: 10px;
    min-height: var(--target);
    font-weight: 600;
  }
  .switch input[type='checkbox'] {
    flex: none;
    width: 22px;
    height: 22px;
    accent-color: var(--ink);
  }
  .switch .year {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 12px;
    margin-top: 6px;
  }
  select {
    min-height: var(--target);
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 8px 22px;
    margin-top: 14px;
  }
  .choices label {
    display: grid;
    gap: 4px;
    min-width: 0;
    max-width: 100%;
  }
  .choices select {
    width: 100%;
    min-width: 0;
  }
  details {
    margin-top: 8px;
  }
  summary {
    display: flex;
    align-items: center;
    min-height: var(--target);
    cursor: pointer;
    font-weight: 600;
  }
  summary::before {
    content: '+';
    width: 1.1em;
  }
  details[open] > summary::before {
    content: '−';
  }
  .left-out {
    margin: 4px 0 0;
    padding-left: 22px;
    max-width: 52em;
  }
  .fared {
    margin-top: 44px;
  }
  .fared ul.missed {
    margin: 4px 0 0;
    padding-left: 22px;
    max-width: 52em;
  }
  .fared .told {
    margin-top: 18px;
    font-weight: 600;
  }
  .fared table {
    margin-top: 14px;
  }
  .fared td,
  .fared th {
    padding-block: 6px;
  }
  oo-from-today-picture {
    margin-top: 18px;
  }
  th.number,
  td.number {
    text-align: right;
    white-space: nowrap;
  }
  td.missed {
    font-weight: 700;
    color: var(--warn);
  }
  .stale-words {
    display: inline-block;
    margin-top: 10px;
    padding: 1px 9px;
    border: 1px dashed var(--ink);
    border-radius: var(--radius-input);
    font-size: var(--size-least);
  }
  @media (max-width: 699px) {
    .switch {
      margin-inline: -8px;
      padding: 14px 11px;
    }
  }
  @media print {
    .switch,
    .choices,
    .fared .buttons {
      display: none;
    }
  }
`;
