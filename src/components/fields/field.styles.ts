import { css } from 'lit';

export const fieldStyles = css`
  select {
    max-width: min(100%, 22em);
    min-width: 0;
    padding-right: 6px;
  }
  .text {
    width: 100%;
    min-width: 0;
  }
  textarea {
    width: 100%;
    resize: vertical;
  }
  .row.wide {
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.6fr);
  }
  .row.tall {
    grid-template-columns: minmax(0, 1fr);
  }
  input.slider {
    flex: 1 1 140px;
    width: 200px;
    min-width: 100px;
    accent-color: var(--plan, var(--ink));
  }

  /* One of two or three: a strip whose chosen part is inked. */
  .strip {
    display: flex;
    flex-wrap: wrap;
    row-gap: 4px;
    min-width: 0;
    border: 0;
    margin: 0;
    padding: 0;
  }
  .strip label {
    display: flex;
    align-items: center;
    gap: 8px;
    min-height: var(--target);
    padding: 4px 13px;
    border: 1px solid var(--edge);
    margin-left: -1px;
    cursor: pointer;
    white-space: nowrap;
  }
  .strip label:first-of-type {
    margin-left: 0;
  }
  .strip label:hover {
    background: var(--paper2);
  }
  .strip label:has(:checked) {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--paper);
  }
  .strip input {
    appearance: none;
    width: 18px;
    height: 18px;
    flex: none;
    border: 1.5px solid currentColor;
    border-radius: 50%;
    display: grid;
    place-content: center;
    color: inherit;
  }
  .strip input:checked::before {
    content: '';
    width: 10px;
    height: 10px;
    border-radius: 50%;
    background: currentColor;
  }
  .strip input:focus-visible {
    outline: none;
  }
  .strip label:has(:focus-visible) {
    outline: var(--stroke-focus) solid var(--focus);
    outline-offset: 2px;
    z-index: 1;
  }
  .yes-no {
    display: contents;
    cursor: pointer;
  }
  .tick {
    display: flex;
    align-items: center;
    justify-content: flex-end;
    width: var(--target);
    height: var(--target);
  }

  /* In a line with others: the name stands above the box. */
  :host([compact]) {
    container-type: normal;
    width: max-content;
    max-width: 100%;
  }
  :host([compact]) .row {
    grid-template-columns: minmax(0, auto);
    justify-items: start;
    padding: 4px 0;
    border-bottom: 0;
    gap: 1px;
  }
  :host([compact]) .name {
    font-size: var(--size-note);
    font-weight: 400;
    color: var(--ink2);
    line-height: 1.25;
  }
  :host([compact]) .unit {
    width: auto;
  }
  :host([compact]) .boxes {
    justify-content: flex-start;
    gap: 6px;
  }
  :host([compact]) .problem {
    max-width: 16em;
  }

  @container (max-width: 23em) {
    .row.wide {
      grid-template-columns: minmax(0, 1fr);
    }
    .row.ticked {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    input.slider {
      flex: 1 1 100%;
      order: 1;
    }
    .strip {
      flex-wrap: wrap;
    }
    .strip label {
      flex: 1 1 auto;
    }
  }
  @media (forced-colors: active) {
    .strip label:has(:checked) {
      forced-color-adjust: none;
      background: Highlight;
      color: HighlightText;
    }
  }
`;
