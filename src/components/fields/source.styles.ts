import { css } from 'lit';

export const sourceStyles = css`
  :host {
    display: contents;
  }
  button.open {
    border: 0;
    padding: 0;
    background: none;
    margin-left: auto;
    margin-bottom: -6px;
    flex: none;
  }
  .badge {
    display: inline-block;
    font-size: var(--size-least);
    font-weight: 500;
    line-height: 1;
    padding: 5px 8px;
    border: 1px solid var(--ink);
    border-radius: var(--radius-input);
    white-space: nowrap;
  }
  button.open:hover .badge {
    background: var(--paper2);
  }
  .counted .badge,
  button.open.counted:hover .badge {
    background: var(--ink);
    color: var(--paper);
  }
  .practice .badge {
    font-style: italic;
  }
  .remembered .badge {
    border-style: double;
    border-width: 3px;
    padding: 3px 6px;
  }
  .guess .badge {
    border-style: dashed;
  }
  .invented .badge {
    border-style: dotted;
    border-width: 2px;
    padding: 4px 7px;
  }
  .unsaid .badge {
    border-color: transparent;
    color: var(--ink2);
    font-weight: 400;
    padding: 5px 2px;
    text-decoration: underline;
    text-decoration-style: dotted;
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  .panel {
    order: 2;
    flex: 1 1 100%;
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    gap: 8px 14px;
    justify-content: start;
    align-items: end;
    margin: 12px 0 4px;
    padding: 10px 14px 12px;
    border: 1px solid var(--rule);
    background: var(--paper);
    color: var(--ink);
    min-width: 0;
  }
  .panel legend {
    float: left;
    grid-column: 1 / -1;
    font-weight: 600;
    padding: 0;
    min-width: 0;
  }
  .panel .note {
    grid-column: 1 / 3;
  }
  .panel label {
    display: grid;
    gap: 2px;
    min-width: 0;
    font-size: var(--size-least);
    color: var(--ink2);
  }
  .panel input,
  .panel select {
    width: 100%;
    min-width: 0;
  }
  @container (max-width: 23em) {
    .panel {
      grid-template-columns: minmax(0, 1fr);
      align-items: stretch;
    }
    .panel .note {
      grid-column: auto;
    }
  }
`;
