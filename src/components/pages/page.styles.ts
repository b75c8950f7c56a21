import { css } from 'lit';

/** What all pages share: the opening sentence, parts by white space, problems in words, cautions. */
export const pageStyles = css`
  :host {
    display: block;
  }
  h1 {
    font-size: var(--size-headline);
    font-weight: 500;
    max-width: 27em;
    text-wrap: pretty;
  }
  h1 b {
    font-weight: 700;
  }
  .lede {
    font-size: 20px;
    line-height: 1.5;
    max-width: 47em;
    margin-top: 14px;
  }
  .part {
    margin-top: 54px;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-top: 8px;
  }
  .problems {
    margin: 22px 0 0;
    padding: 14px 22px;
    border-left: 3px solid var(--warn);
    background: var(--raise);
    max-width: 60em;
  }
  .problems.notes {
    border-left-color: var(--edge);
  }
  .problems ul {
    margin: 8px 0 0;
    padding-left: 22px;
  }
  .care {
    margin-top: 36px;
    padding-top: 14px;
    border-top: 1px solid var(--rule);
    max-width: 60em;
    color: var(--ink2);
  }
  .care ul {
    margin: 4px 0 14px;
    padding-left: 22px;
  }
  .progress {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 18px;
    margin-top: 14px;
    min-height: 26px;
  }
  .track {
    width: 210px;
    height: 2px;
    background: var(--rule);
  }
  .track i {
    display: block;
    height: 100%;
    background: var(--ink);
  }
  .more > summary {
    font-family: var(--serif);
    font-size: var(--size-section);
    font-weight: 600;
    min-height: var(--target);
    cursor: pointer;
  }
  @media (max-width: 700px) {
    h1 {
      font-size: 27px;
    }
    .lede {
      font-size: 18px;
    }
    .part {
      margin-top: 36px;
    }
  }
  @media print {
    .screen-only,
    .more:not([open]),
    .more > summary,
    .progress .track {
      display: none;
    }
    h1 {
      font-size: 24px;
    }
    .lede {
      font-size: 17px;
    }
    .part {
      margin-top: 24px;
      break-inside: avoid;
    }
  }
`;
