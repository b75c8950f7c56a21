import { css } from 'lit';

export const sideStyles = css`
  .sides {
    table-layout: fixed;
  }
  .sides th,
  .sides td {
    line-height: 1.35;
  }
  .sides thead td {
    border-bottom: 2px solid var(--ink);
    width: 21%;
  }
  .sides thead .mark {
    display: flex;
    margin-bottom: 6px;
  }
  .sides thead .words {
    width: 19%;
  }
  b {
    font-weight: 650;
  }
  .even {
    color: var(--ink2);
    font-style: italic;
  }
  .block {
    border-top: 1px solid var(--rule);
    padding: 10px 0 12px;
    break-inside: avoid;
  }
  .block h3 {
    font: 600 var(--size-body) / 1.35 var(--sans);
  }
  .block .small {
    font-size: var(--size-least);
    color: var(--ink2);
    line-height: 1.35;
  }
  .block ul {
    list-style: none;
    margin: 6px 0;
    padding: 0;
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 156px), 1fr));
    gap: 8px 14px;
  }
  .block li {
    display: flex;
    align-items: baseline;
    gap: 8px;
    line-height: 1.35;
  }
  .block .clear,
  .block .plain {
    color: var(--ink2);
  }
  .block .mark {
    align-self: flex-start;
  }
`;
