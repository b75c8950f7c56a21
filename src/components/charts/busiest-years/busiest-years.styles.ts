import { css } from 'lit';

export const busyStyles = css`
  fieldset {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px;
    border: 0;
    margin: 0 0 14px;
    padding: 0;
  }
  legend {
    float: left;
    padding: 0;
    margin-right: 6px;
    color: var(--ink2);
  }
  fieldset button[aria-pressed='true'] {
    background: var(--ink);
    color: var(--paper);
    border-color: var(--ink);
  }
  @media print {
    fieldset button[aria-pressed='false'],
    legend {
      display: none;
    }
    fieldset button {
      min-height: 0;
      padding: 0;
      border: 0;
      background: none;
      font-weight: 650;
    }
    fieldset button[aria-pressed='true'] {
      background: none;
      color: var(--ink);
    }
  }
`;
