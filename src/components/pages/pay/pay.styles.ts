import { css } from 'lit';

export const payStyles = css`
  .unknown {
    max-width: 47em;
    margin-top: 14px;
    color: var(--ink2);
  }
  /* Room for the longest opening, so that nothing moves when it comes. */
  h1.waiting {
    min-height: 5em;
  }
  h1.stale {
    color: var(--ink2);
  }
  .asked {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 36px;
    margin-top: 22px;
  }
  .asked label {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 14px;
    min-height: var(--target);
  }
  .asked label:not(.tick) {
    font-weight: 600;
  }
  .asked label,
  .asked select {
    min-width: 0;
    max-width: 100%;
  }
  .questions {
    display: flex;
    flex-wrap: wrap;
    gap: 0 14px;
    margin: 14px 0 0 -6px;
    padding: 0;
    list-style: none;
  }
  .part:focus {
    outline: none;
  }
  @media (max-width: 700px) {
    h1.waiting {
      min-height: 10em;
    }
  }
`;
