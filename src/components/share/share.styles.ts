import { css } from 'lit';

export const shareStyles = css`
  /* Behind the menu of a narrow page; the panel, once open, stays. */
  @media (max-width: 700px) {
    :host([tucked]) > button {
      display: none;
    }
  }
  :host {
    display: contents;
  }
  dialog {
    width: min(44em, calc(100vw - 32px));
    max-height: calc(100dvh - 32px);
    padding: var(--space-4) var(--space-5) var(--space-5);
    overflow: auto;
    border: 1px solid var(--edge);
    border-radius: 0;
    background: var(--raise);
    color: var(--ink);
    font-size: var(--size-body);
    line-height: 1.5;
  }
  dialog::backdrop {
    background: color-mix(in oklab, var(--paper) 70%, transparent);
  }
  .parts {
    display: grid;
    gap: var(--space-3);
  }
  label {
    display: grid;
    gap: var(--space-1);
    font-size: var(--size-least);
    color: var(--ink2);
  }
  textarea {
    width: 100%;
    height: 7.5em;
    resize: vertical;
    overflow-wrap: anywhere;
    word-break: break-all;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2);
  }
  .buttons .last {
    margin-left: auto;
  }
  .said:empty {
    display: none;
  }
  @media (max-width: 700px) {
    dialog {
      padding: var(--space-3) 16px var(--space-4);
    }
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
