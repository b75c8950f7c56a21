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
    grid-template-columns: minmax(0, auto);
    gap: 4px;
    max-width: 100%;
  }
  .choices select {
    max-width: 100%;
  }
  .choices label span {
    font-size: var(--size-least);
    font-weight: 600;
  }
  .said:empty {
    display: none;
  }
  /* The paper in its own size; on a screen that is narrower, smaller as a whole. */
  .frame {
    --wide: 105mm;
    --high: 148mm;
    --scale: 1;
    margin-top: 22px;
    width: calc(var(--wide) * var(--scale) + 2px);
    height: calc(var(--high) * var(--scale) + 2px);
    border: 1px solid var(--edge);
    background: #fff;
    overflow: hidden;
  }
  .frame.A5 {
    --wide: 148mm;
    --high: 210mm;
  }
  iframe {
    display: block;
    border: 0;
    width: var(--wide);
    height: var(--high);
    transform: scale(var(--scale));
    transform-origin: 0 0;
  }
  @media (max-width: 640px) {
    .frame.A5 {
      --scale: 0.62;
    }
  }
  @media (max-width: 450px) {
    .frame {
      --scale: 0.87;
    }
  }
  @media (max-width: 385px) {
    .frame {
      --scale: 0.7;
    }
    .frame.A5 {
      --scale: 0.5;
    }
  }
`;
