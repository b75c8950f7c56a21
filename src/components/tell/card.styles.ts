import { css } from 'lit';

export const cardStyles = css`
  :host {
    display: block;
  }
  h2 {
    font-size: var(--size-section);
    font-weight: 600;
  }
  .about {
    color: var(--ink2);
    max-width: 52em;
    margin-top: 4px;
  }
  .choices,
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 14px 22px;
    margin-top: 14px;
    align-items: end;
  }
  .choices label {
    display: grid;
    gap: 4px;
    max-width: 100%;
  }
  .choices select {
    max-width: 100%;
  }
  iframe {
    display: block;
    margin-top: 22px;
    border: 1px solid var(--edge);
    background: #fff;
    width: min(100%, 430px);
    aspect-ratio: 105 / 148;
    height: auto;
  }
  iframe.A5 {
    width: min(100%, 600px);
  }
`;
