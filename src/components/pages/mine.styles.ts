import { css } from 'lit';

export const mineStyles = css`
  .start {
    margin-top: 22px;
  }
  .promise {
    margin-top: 8px;
    max-width: 47em;
  }
  ul.list {
    list-style: none;
    margin: 14px 0 0;
    padding: 0;
    border-bottom: 1px solid var(--rule);
  }
  .list li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    gap: 4px 22px;
    padding: 12px 0;
    border-top: 1px solid var(--rule);
  }
  .list li.current {
    box-shadow:
      -11px 0 0 var(--paper),
      -14px 0 0 var(--ink);
  }
  .name {
    font-family: var(--serif);
    font-size: var(--size-plan);
    font-weight: 600;
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  .facts {
    color: var(--ink2);
  }
  .facts b {
    color: var(--ink);
    font-weight: 600;
  }
  .list .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  label {
    display: grid;
    gap: 2px;
    color: var(--ink2);
    font-size: var(--size-least);
  }
  label input {
    width: 100%;
    max-width: 34em;
    font-family: var(--serif);
    font-size: var(--size-subhead) !important;
    font-weight: 600;
  }
  .said {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 14px;
    min-height: var(--target);
    margin-top: 8px;
  }
  @media (max-width: 700px) {
    .list li {
      grid-template-columns: minmax(0, 1fr);
    }
    .list li.current {
      box-shadow:
        -8px 0 0 var(--paper),
        -11px 0 0 var(--ink);
    }
  }
`;
