import { css } from 'lit';

export const payStyles = css`
  .unknown {
    max-width: 47em;
    margin-top: 14px;
    color: var(--ink2);
  }
  .asked-of {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 14px;
    margin-top: 22px;
    font-weight: 600;
  }
  .asked-of select {
    max-width: 100%;
  }
`;
