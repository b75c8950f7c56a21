import { css } from 'lit';

export const betterStyles = css`
  .scroll tbody th[scope='row'] {
    min-width: 17em;
    font-weight: 400;
  }
  th .who {
    display: grid;
    grid-template-columns: 1.9em minmax(0, 1fr);
    align-items: start;
    gap: 0 8px;
  }
  th .who > :last-child {
    grid-column: 2;
  }
  .number {
    display: inline-grid;
    place-items: center;
    width: 1.75em;
    height: 1.75em;
    border: 3px solid var(--plan);
    border-radius: 50%;
    box-sizing: border-box;
    font-size: var(--size-least);
    font-weight: 700;
    line-height: 1;
  }
  .with-notes + .scroll {
    margin-top: 22px;
  }
  th .name {
    font-weight: 600;
  }
  td.act {
    min-width: 8.6em;
  }
  tbody.found tr:first-child > * {
    border-top: 1px solid var(--ink);
  }
  .legend {
    margin-top: 4px;
    color: var(--ink2);
    max-width: 52em;
  }
  td small,
  td.against div {
    white-space: nowrap;
  }
  td.against div + div {
    margin-top: 4px;
  }
  @media (max-width: 699px) {
    .scroll tbody th[scope='row'] {
      min-width: 11.5em;
    }
  }
`;
