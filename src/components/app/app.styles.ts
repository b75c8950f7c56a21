import { css } from 'lit';

export const appStyles = css`
  :host {
    display: block;
    min-height: 100vh;
    background: var(--paper);
    color: var(--ink);
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 22px;
    padding: 12px 40px 12px 32px;
    border-bottom: 1px solid var(--rule);
  }
  .title {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 14px;
    margin-right: auto;
  }
  .title strong {
    font-family: var(--serif);
    font-size: var(--size-subhead);
    font-weight: 650;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px;
  }
  .saved {
    margin-right: 8px;
    line-height: 1.3;
  }
  .more {
    display: contents;
  }
  .menu {
    display: none;
  }
  @media (min-width: 1101px) {
    /* A long message takes a second line inside the header and moves nothing. */
    header,
    header > .tools {
      flex-wrap: nowrap;
    }
    .saved {
      text-align: right;
    }
    header button {
      flex: none;
      white-space: nowrap;
    }
  }
  .saved.problem {
    color: var(--warn);
    font-weight: 600;
  }
  .tools .plain[aria-disabled='true'] {
    color: var(--ink2);
    text-decoration: none;
    cursor: default;
    background: none;
  }
  .body {
    display: grid;
    grid-template-columns: 212px minmax(0, 1fr);
    max-width: 1440px;
  }
  nav {
    padding: 36px 8px 0 32px;
  }
  nav :is(ol, ul) {
    list-style: none;
    margin: 0;
    padding: 0;
    border-left: 1px solid var(--rule);
  }
  nav ul {
    margin-top: 22px;
  }
  nav ul a {
    font-family: var(--sans);
  }
  nav a {
    display: flex;
    align-items: center;
    min-height: var(--target);
    padding: 4px 8px 4px 14px;
    margin-left: -1px;
    border-left: 3px solid transparent;
    font-family: var(--serif);
    text-decoration: none;
    color: var(--ink2);
  }
  nav a[aria-current] {
    color: var(--ink);
    font-weight: 650;
    border-left-color: var(--ink);
  }
  @media (forced-colors: active) {
    /* The system shows borders that are transparent: only the page that is open is underlined. */
    nav a:not([aria-current]) {
      border-color: Canvas;
    }
  }
  main {
    padding: 36px 40px 54px 0;
    min-width: 0;
  }
  .message {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 22px;
    margin: 0;
    padding: 10px 40px 10px 32px;
    background: var(--paper2);
    border-bottom: 1px solid var(--rule);
  }
  .message p {
    margin: 0;
    max-width: 60em;
  }
  .skip {
    position: absolute;
    left: -999em;
  }
  .skip:focus {
    left: 8px;
    top: 8px;
    background: var(--raise);
    padding: 8px 14px;
    z-index: 2;
  }
  .drop {
    position: fixed;
    inset: 8px;
    display: grid;
    place-items: center;
    background: var(--raise);
    border: 2px dashed var(--edge);
    font-family: var(--serif);
    font-size: var(--size-section);
    z-index: 3;
  }
  @media (max-width: 1100px) {
    .body {
      grid-template-columns: minmax(0, 1fr);
    }
    nav {
      padding: 14px 40px 0 32px;
    }
    nav :is(ol, ul) {
      display: flex;
      flex-wrap: wrap;
      border-left: 0;
      border-bottom: 1px solid var(--rule);
    }
    nav ul {
      margin-top: 0;
    }
    nav a {
      border-left: 0;
      border-bottom: 3px solid transparent;
      padding: 4px 14px;
      margin: 0 0 -1px;
    }
    nav a[aria-current] {
      border-bottom-color: var(--ink);
    }
    main {
      padding: 22px 32px 54px;
    }
  }
  @media (max-width: 700px) {
    header,
    .message {
      padding: 10px 16px;
    }
    .tools {
      flex: 1 1 100%;
    }
    .saved {
      flex: 1 1 7em;
      margin-right: 0;
      font-size: var(--size-least);
    }
    .menu {
      display: inline-flex;
    }
    header:not(.open) .more > button,
    nav:not(.open) {
      display: none;
    }
    .open .more {
      display: flex;
      flex-wrap: wrap;
      flex-basis: 100%;
      gap: 8px;
    }
    nav {
      padding: 8px 16px 0;
    }
    nav.open :is(ol, ul) {
      display: block;
    }
    nav.open a {
      border-bottom: 0;
      border-left: 3px solid transparent;
    }
    nav.open a[aria-current] {
      border-left-color: var(--ink);
    }
    main {
      padding: 18px 16px 54px;
    }
  }
  @media print {
    header .tools,
    nav,
    .message,
    .skip {
      display: none;
    }
    header {
      padding: 0 0 8px;
    }
    .body {
      display: block;
    }
    main {
      padding: 0;
    }
  }
`;
