import { css } from 'lit';

export const happenedStyles = css`
  .adding {
    margin-top: 14px;
    padding: 14px 22px 22px;
    background: var(--raise);
    border-left: 3px solid var(--ink);
  }
  .keep {
    margin-top: 36px;
    max-width: 47em;
  }
  oo-log-table {
    outline: none;
  }
  .noted {
    position: sticky;
    bottom: 0;
    z-index: 1;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 22px;
    margin-top: 22px;
  }
  .noted:not(:empty):has(button) {
    padding: 8px 14px;
    background: var(--paper2);
    border-top: 2px solid var(--ink);
  }
  .noted span {
    font-weight: 500;
  }
  @media (max-width: 699px) {
    .adding {
      margin-inline: -8px;
      padding: 14px 8px 22px 11px;
    }
    .noted button {
      margin-left: auto;
    }
  }
  @media print {
    .buttons,
    .noted {
      display: none;
    }
  }
`;
