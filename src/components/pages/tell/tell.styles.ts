import { css } from 'lit';

export const tellStyles = css`
  .choices {
    display: grid;
    grid-template-columns: minmax(0, 1.4fr) minmax(0, 1fr);
    gap: 22px 36px;
    max-width: 66em;
    margin-top: 14px;
  }
  .choices > div {
    display: grid;
    gap: 18px;
    align-content: start;
  }
  .field {
    display: grid;
    gap: 4px;
  }
  .field > span,
  legend {
    font-size: var(--size-least);
    font-weight: 600;
    padding: 0;
  }
  .field input,
  .field select {
    width: 100%;
  }
  small {
    font-size: var(--size-least);
    color: var(--ink2);
    line-height: 1.4;
  }
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
    min-width: 0;
  }
  .checks {
    display: flex;
    flex-wrap: wrap;
    gap: 0 22px;
  }
  .checks label {
    display: inline-flex;
    align-items: center;
    gap: 8px;
    min-height: var(--target);
    max-width: 100%;
  }
  .checks input {
    flex: none;
  }
  .sheet-part {
    margin-top: 36px;
  }
  .sheet-head {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    justify-content: space-between;
    gap: 8px 22px;
    margin-bottom: 14px;
  }
  .sheet-head .buttons {
    margin: 0;
  }
  .said {
    min-height: 1.5em;
    margin-bottom: 4px;
  }
  oo-sheet {
    border: 1px solid var(--rule);
    background: #fff;
  }
  .link {
    max-width: 47em;
  }
  .link label {
    display: grid;
    gap: 4px;
    margin-top: 14px;
    font-size: var(--size-least);
    color: var(--ink2);
  }
  .link textarea {
    width: 100%;
    height: 6.5em;
    resize: vertical;
    overflow-wrap: anywhere;
    word-break: break-all;
  }
  .link p {
    margin-top: 8px;
  }
  @media (max-width: 900px) {
    .choices {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media (max-width: 700px) {
    .sheet-head .buttons button {
      flex: 1 1 40%;
    }
    oo-sheet {
      margin-inline: -16px;
      border-inline: 0;
    }
  }
  @media print {
    /* The sheet alone goes to paper, over all that stands around it. */
    :host {
      position: absolute;
      inset: 0 0 auto;
      z-index: 9;
      background: #fff;
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
    :host > * {
      display: none;
    }
    .sheet-part {
      display: block;
      margin: 0;
    }
    .sheet-part > :not(oo-sheet) {
      display: none;
    }
    oo-sheet {
      border: 0;
    }
  }
`;
