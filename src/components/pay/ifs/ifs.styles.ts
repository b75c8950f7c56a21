import { css } from 'lit';

/** A row for each thing that can happen: words, and the curve beside them. */
export const ifsStyles = css`
  .row {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.25fr);
    gap: 6px 54px;
    align-items: start;
    border-top: 1px solid var(--hair);
    padding: 18px 0 10px;
  }
  .rows {
    margin-top: 22px;
  }
  .row h3 {
    font-size: var(--size-subhead);
    font-weight: 600;
    margin: 0 0 6px;
  }
  .row p + p {
    margin-top: 8px;
  }
  .row .besides {
    color: var(--ink2);
  }
  .alone {
    grid-column: 1 / -1;
    max-width: 52em;
  }
  .trust {
    margin-top: 14px;
    max-width: 52em;
  }
  td.rank {
    font-family: var(--serif);
  }
  @media (max-width: 1000px) {
    .row {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
