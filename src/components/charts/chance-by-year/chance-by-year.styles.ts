import { css } from 'lit';

export const chanceStyles = css`
  .box {
    background: var(--raise);
    border: 1px solid var(--edge);
    padding: 12px 16px 8px;
    font-size: var(--size-label);
    line-height: 1.25;
  }
  .box.inside {
    position: absolute;
    pointer-events: none;
  }
  .box.under {
    margin-top: 8px;
    max-width: 440px;
  }
  .box.empty {
    visibility: hidden;
  }
  .box h3 {
    font: 650 1.25rem/1.2 var(--serif);
    margin-bottom: 8px;
  }
  .box ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .box li {
    display: flex;
    align-items: center;
    gap: 10px;
    min-height: 31px;
    padding: 3px 0;
  }
  .box li .mark {
    width: 22px;
    height: 22px;
    border-width: 2.5px;
  }
  .box li b {
    margin-left: auto;
    font-weight: 650;
    white-space: nowrap;
  }
  .box .keys {
    font-size: var(--size-least);
    color: var(--ink2);
    margin-top: 2px;
  }
  .under-words {
    margin-top: 8px;
    font-size: var(--size-note);
    font-style: italic;
    color: var(--ink2);
  }
  @media print {
    .box .keys {
      display: none;
    }
  }
`;
