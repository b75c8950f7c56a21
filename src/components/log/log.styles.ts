import { css } from 'lit';

/** What the parts of the log share: boxes under their labels, choices as buttons, quiet lists. */
export const logStyles = css`
  :host {
    display: block;
    font-size: var(--size-body);
    line-height: 1.35;
  }
  form {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 14px;
    margin-top: 8px;
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-end;
    gap: 10px 18px;
  }
  .field {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 2px;
    min-width: 0;
    max-width: 100%;
  }
  .field > span,
  legend {
    padding: 0;
    font-size: var(--size-note);
    color: var(--ink2);
  }
  .field > input {
    width: 9em;
    font-size: var(--size-body);
    font-weight: 500;
  }
  .field > select {
    font-size: var(--size-body);
  }
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
    min-width: 0;
  }
  .chips {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-top: 4px;
  }
  .chip {
    position: relative;
    display: inline-flex;
    align-items: center;
    justify-content: center;
    min-height: var(--target);
    min-width: var(--target);
    padding: 4px 14px;
    border: 1px solid var(--edge);
    border-radius: var(--radius-button);
    font-weight: 500;
    cursor: pointer;
    overflow-wrap: anywhere;
  }
  .chip:hover {
    background: var(--paper2);
  }
  .chip input {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    opacity: 0;
    cursor: pointer;
  }
  .chip:has(:checked) {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--paper);
  }
  .chip:has(:focus-visible) {
    outline: var(--stroke-focus) solid var(--focus);
    outline-offset: 2px;
  }
  @media (forced-colors: active) {
    .chip:has(:checked) {
      forced-color-adjust: none;
    }
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 14px;
  }
  .problem {
    color: var(--warn);
    font-weight: 600;
    font-size: var(--size-note);
  }
  .problem:empty {
    display: none;
  }
  .flag {
    color: var(--warn);
    font-size: var(--size-note);
    font-weight: 500;
  }
  .tick {
    display: flex;
    align-items: center;
    gap: 10px;
    min-height: var(--target);
  }
  ul.noted {
    list-style: none;
    margin: 8px 0 0;
    padding: 0;
  }
  .noted li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    gap: 0 14px;
    min-height: var(--target);
    border-top: 1px solid var(--hair);
  }
  .noted .what {
    padding: 6px 0;
    overflow-wrap: anywhere;
  }
  .noted b {
    font-weight: 500;
    margin-right: 10px;
  }
  .noted .quiet {
    margin-right: 10px;
  }
  .noted .flag {
    grid-column: 1 / -1;
    padding-bottom: 8px;
  }
  details > summary {
    display: flex;
    align-items: center;
    min-height: var(--target);
    width: fit-content;
    font-weight: 500;
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-decoration-color: var(--edge);
    text-underline-offset: 4px;
  }
  @media (max-width: 699px) {
    .chip {
      padding: 4px 12px;
    }
  }
`;
