import { css } from 'lit';

export const guideStyles = css`
  .parts,
  .contents {
    display: flex;
    flex-wrap: wrap;
    gap: 0 22px;
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .parts {
    border-bottom: 1px solid var(--rule);
    margin-bottom: 36px;
  }
  .parts a {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
    border-bottom: 3px solid transparent;
    margin-bottom: -1px;
    font-family: var(--serif);
    color: var(--ink2);
    text-decoration: none;
  }
  .parts a[aria-current] {
    color: var(--ink);
    font-weight: 650;
    border-bottom-color: var(--ink);
  }
  .contents a {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
  }
  details.contents-of {
    margin-bottom: 22px;
    max-width: 47em;
  }
  details.contents-of > summary {
    min-height: var(--target);
    display: flex;
    align-items: center;
    gap: 8px;
    cursor: pointer;
    color: var(--ink2);
  }
  details.contents-of > summary::before {
    content: '▸';
  }
  details.contents-of[open] > summary::before {
    content: '▾';
  }
  .text {
    font-size: 18px;
    line-height: 1.55;
    overflow-wrap: break-word;
  }
  .text > :is(p, ul, ol, h3, blockquote) {
    max-width: 38em;
  }
  .text > p:has(img) {
    max-width: 62em;
  }
  .text :is(p, ul, ol) {
    margin: 14px 0 0;
  }
  .text :is(ul, ol) {
    padding-left: 26px;
  }
  .text li {
    margin-top: 8px;
  }
  .text li > :is(p, ul, ol) {
    margin-top: 8px;
  }
  .text h2 {
    margin-top: 54px;
    padding-top: 14px;
    border-top: 1px solid var(--rule);
    max-width: none;
  }
  .text h3 {
    margin-top: 36px;
  }
  .text :is(h1, h2, h3) {
    scroll-margin-top: 22px;
  }
  .text :is(h1, h2, h3):focus {
    outline: none;
  }
  .text img {
    display: block;
    max-width: min(100%, 62em);
    height: auto;
    margin-top: 22px;
    border: 1px solid var(--rule);
  }
  .text code {
    font-size: max(0.9em, 1rem);
    overflow-wrap: anywhere;
  }
  .text pre {
    overflow-x: auto;
    margin: 14px 0 0;
    padding: 14px 22px;
    background: var(--raise);
  }
  .text pre code {
    overflow-wrap: normal;
  }
  .text blockquote {
    margin: 14px 0 0;
    padding: 0 22px;
    border-left: 3px solid var(--edge);
  }
  .wide {
    overflow-x: auto;
    margin-top: 14px;
    max-width: 62em;
  }
  table {
    border-collapse: collapse;
    font-size: var(--size-least);
    line-height: 1.45;
    font-variant-numeric: tabular-nums lining-nums;
  }
  th,
  td {
    text-align: left;
    vertical-align: top;
    padding: 8px 22px 8px 0;
    border-bottom: 1px solid var(--rule);
  }
  th {
    font-weight: 600;
    border-bottom-color: var(--edge);
  }
  td:first-child {
    min-width: 7em;
  }
  @media (min-width: 1300px) {
    .sheet {
      display: grid;
      grid-template-columns: minmax(0, 62em) 15em;
      gap: 54px;
    }
    details.contents-of {
      grid-column: 2;
      grid-row: 1;
      position: sticky;
      top: 22px;
      align-self: start;
      max-height: calc(100vh - 44px);
      overflow-y: auto;
      padding-left: 14px;
      border-left: 1px solid var(--rule);
    }
    .text {
      grid-column: 1;
      grid-row: 1;
    }
    .contents {
      display: block;
    }
    .text > h1 {
      margin-top: 0;
    }
  }
  @media (max-width: 700px) {
    .text {
      font-size: 17px;
    }
    .text h2 {
      margin-top: 36px;
    }
    /* Two columns wrap; more are moved sideways in their own box. */
    .wide:has(th:nth-child(4)) table {
      min-width: 34em;
    }
    td:first-child {
      min-width: 5.5em;
    }
    th,
    td {
      padding-right: 14px;
    }
  }
  @media print {
    .parts,
    .contents-of {
      display: none;
    }
    .text h2,
    .text h3 {
      break-after: avoid;
    }
    .text img {
      break-inside: avoid;
    }
  }
`;
