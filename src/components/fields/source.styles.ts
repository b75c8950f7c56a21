import { css } from 'lit';
import { badgeStyles } from './badge.styles.ts';

export const sourceStyles = css`
  ${badgeStyles}
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
  button.open:hover .badge {
    background: var(--paper2);
  }
  button.open.counted:hover .badge {
    background: var(--ink);
    color: var(--paper);
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
