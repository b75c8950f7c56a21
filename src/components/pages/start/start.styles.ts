import { css } from 'lit';

export const startStyles = css`
  .lead {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 8px 36px;
    max-width: 47em;
    margin-bottom: 22px;
    color: var(--ink2);
  }
  .lead b {
    color: var(--ink);
    margin-left: 8px;
  }
  h1:focus {
    outline: none;
  }

  /* A bough that tapers from left to right; a ring for each question. */
  .bough {
    position: relative;
    display: flex;
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .bough::before {
    content: '';
    position: absolute;
    left: 34px;
    right: 34px;
    top: 17px;
    height: 11px;
    background: var(--rule);
    clip-path: polygon(0 0, 100% 40%, 100% 60%, 0 100%);
  }
  .bough li,
  .bough button {
    position: relative;
    display: grid;
    justify-items: center;
    align-content: start;
    width: 68px;
    min-height: var(--target);
    padding: 12px 0 0;
    gap: 2px;
    font-size: var(--size-least);
    font-weight: 400;
    line-height: 1.2;
    color: var(--ink2);
  }
  .bough li.done {
    padding: 0;
  }
  .bough button {
    border: 0;
    background: none;
  }
  .bough i {
    width: 20px;
    height: 20px;
    border: 3px solid var(--edge);
    border-radius: 50%;
    background: var(--paper);
  }
  .bough .done i {
    border-color: var(--ink);
    background: var(--ink);
  }
  .bough .done span {
    text-decoration: underline;
    text-decoration-color: var(--edge);
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  .bough [aria-current='step'] {
    color: var(--ink);
    font-weight: 650;
  }
  .bough [aria-current='step'] i {
    border-color: var(--ink);
    box-shadow: inset 0 0 0 3px var(--paper);
    background: var(--ink);
  }

  .sheet {
    margin-top: 22px;
    max-width: 47em;
  }
  .answer {
    display: grid;
    grid-template-columns: minmax(0, 38em) 5.5em;
    align-items: start;
    column-gap: 14px;
  }
  .filled {
    justify-self: start;
    margin-top: 19px;
    padding: 0 8px;
    border: 1px dashed var(--edge);
    border-radius: var(--radius-input);
    font-size: var(--size-least);
    line-height: 1.5;
    color: var(--ink2);
    white-space: nowrap;
  }
  fieldset {
    border: 0;
    margin: 0;
    padding: 0;
    min-width: 0;
  }
  legend {
    padding: 0;
    font-weight: 500;
  }
  .partner {
    margin-bottom: 22px;
  }
  .together > legend {
    padding-top: 10px;
  }
  .partner > legend {
    font: 600 var(--size-subhead) / 1.3 var(--serif);
  }
  .together {
    padding: 0 0 9px;
    border-bottom: 1px solid var(--hair);
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: 0 22px;
  }
  .said {
    color: var(--ink2);
    font-size: var(--size-note);
  }
  .known {
    max-width: 38em;
    margin: 10px 0 4px;
    padding-left: 14px;
    border-left: 3px solid var(--ink);
  }
  details.known {
    margin: 0;
    padding-left: 0;
    border-left: 0;
    border-bottom: 1px solid var(--hair);
  }
  .known summary {
    display: flex;
    align-items: center;
    gap: 14px;
    min-height: var(--target);
    cursor: pointer;
  }
  .known summary::before {
    content: '▸';
    width: 1em;
    color: var(--ink2);
    font-size: var(--size-least);
  }
  .known[open] summary::before {
    content: '▾';
  }
  .known ul {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    list-style: none;
    margin: 8px 0 14px;
    padding: 0;
  }
  .known .take {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 14px;
  }
  .known .take:not(:last-child) {
    margin-bottom: 14px;
  }
  .known .rests {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 4px 14px;
    margin: 4px 0;
    color: var(--ink2);
    font-size: var(--size-note);
  }
  .known .rests > :last-child {
    flex: 1 1 18em;
  }
  .known .badge {
    color: var(--ink);
  }
  .caution {
    margin-top: 22px;
    color: var(--ink2);
    max-width: 44em;
  }
  .preview {
    margin-top: 36px;
  }
  .preview ol {
    list-style: none;
    margin: 8px 0 0;
    padding: 0;
  }
  .preview li {
    display: flex;
    gap: 14px;
    align-items: start;
    padding: 10px 0;
    border-top: 1px solid var(--rule);
  }
  .preview b {
    display: block;
    font: 600 var(--size-subhead) / 1.3 var(--serif);
  }
  .preview small {
    font-size: var(--size-note);
    color: var(--ink2);
  }
  .onward {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 14px;
    margin-top: 36px;
  }
  .onward .main {
    padding: 0 22px;
  }
  .so-far {
    margin-top: 36px;
    padding-left: 14px;
    border-left: 3px solid var(--ink);
    max-width: 47em;
  }
  @media (max-width: 700px) {
    .answer {
      grid-template-columns: minmax(0, 1fr);
    }
    .filled {
      order: -1;
      justify-self: end;
      margin: 8px 0 -8px;
    }
    .bough li,
    .bough button {
      width: 56px;
    }
    .bough::before {
      left: 28px;
      right: 28px;
    }
  }
  @media (forced-colors: active) {
    .bough .done i,
    .bough [aria-current='step'] i {
      forced-color-adjust: none;
      background: CanvasText;
      border-color: CanvasText;
    }
  }
`;
