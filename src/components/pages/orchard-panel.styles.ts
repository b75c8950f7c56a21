import { css } from 'lit';

export const panelStyles = css`
  details {
    border-top: 1px solid var(--rule);
  }
  summary {
    display: flex;
    align-items: center;
    gap: 14px;
    min-height: var(--target);
    cursor: pointer;
  }
  summary::before {
    content: '▸';
    width: 1em;
    color: var(--ink2);
    font-family: var(--sans);
    font-size: var(--size-least);
  }
  details[open] > summary::before {
    content: '▾';
  }
  .section > summary {
    font-family: var(--serif);
    font-size: var(--size-subhead);
    font-weight: 600;
  }
  .entry {
    margin-left: 22px;
  }
  .entry > div,
  .whole {
    padding: 0 0 22px;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    padding: 8px 0 22px 22px;
  }
  .help {
    padding: 0 0 8px 22px;
    color: var(--ink2);
    font-size: var(--size-note);
    max-width: var(--measure);
  }
  .type {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 14px;
    padding: 4px 0 10px;
    border-bottom: 1px solid var(--hair);
  }
  .type label {
    font-weight: 500;
  }
  .type p {
    flex: 1 1 20em;
    font-size: var(--size-note);
    max-width: var(--measure);
  }
  .flag {
    color: var(--warn);
  }
  @media (max-width: 700px) {
    .entry,
    .help,
    .buttons {
      margin-left: 0;
      padding-left: 0;
    }
  }
`;
