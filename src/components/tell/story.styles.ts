import { css } from 'lit';

export const storyStyles = css`
  :host {
    display: block;
    min-height: 100vh;
    background: var(--paper);
    color: var(--ink);
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 14px;
    padding: 12px 16px;
    border-bottom: 1px solid var(--rule);
  }
  header strong {
    font-family: var(--serif);
    font-size: var(--size-subhead);
    font-weight: 650;
  }
  main {
    max-width: 44rem;
    margin: 0 auto;
    padding: 14px 16px 40px;
  }
  main:focus {
    outline: none;
  }
  .steps {
    display: flex;
    gap: 6px;
    list-style: none;
    margin: 0 0 18px;
    padding: 0;
  }
  .steps li {
    flex: 1 1 0;
  }
  .steps button {
    width: 100%;
    min-width: 0;
    padding: 0;
    border: 0;
    border-top: 3px solid var(--rule);
    border-radius: 0;
    justify-content: start;
    color: var(--ink2);
  }
  .steps button[aria-current] {
    border-top-color: var(--ink);
    color: var(--ink);
    font-weight: 650;
  }
  h1 {
    font-size: var(--size-headline);
    font-weight: 500;
    text-wrap: pretty;
    overflow-wrap: anywhere;
  }
  h1:focus {
    outline: none;
  }
  h1 b {
    font-weight: 700;
  }
  h2 {
    margin-top: 26px;
    font-size: var(--size-section);
  }
  .text {
    margin-top: 12px;
    font-size: var(--size-lede);
    line-height: 1.5;
  }
  figure {
    margin: 18px 0 0;
    padding: 14px 10px 10px;
    background: #fff;
    border: 1px solid var(--rule);
  }
  figure {
    container-type: inline-size;
  }
  figure svg {
    display: block;
    width: 100%;
    height: auto;
    max-width: 420px;
    margin: 0 auto;
  }
  .least {
    display: none;
  }
  @container (max-width: 317px) {
    .phone {
      display: none;
    }
    .least {
      display: block;
    }
  }
  figure.ends {
    color: #23281f;
    padding: 14px 16px;
  }
  figure.ends ul {
    list-style: none;
    margin: 10px 0 0;
    padding: 0;
  }
  figure.ends li {
    display: flex;
    align-items: baseline;
    gap: 8px;
    line-height: 1.5;
  }
  figure.ends li svg {
    flex: none;
    width: 15px;
    margin: 0;
    align-self: center;
  }
  .asks {
    margin: 8px 0 0;
    padding: 0;
    list-style: none;
  }
  .asks li {
    padding: 10px 0;
    border-bottom: 1px solid var(--hair);
  }
  .asks .when {
    display: block;
    font-weight: 650;
  }
  .care {
    margin-top: 18px;
    padding-top: 12px;
    border-top: 1px solid var(--rule);
    color: var(--ink2);
  }
  .walk {
    display: flex;
    justify-content: space-between;
    gap: 8px;
    margin-top: 26px;
  }
  .walk button,
  .own button,
  .own a {
    flex: 1 1 0;
    min-height: 50px;
    text-align: center;
  }
  .own {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-top: 26px;
    padding-top: 18px;
    border-top: 1px solid var(--rule);
  }
  .own p {
    flex: 1 1 100%;
    color: var(--ink2);
  }
  .counting {
    margin-top: 14px;
    color: var(--ink2);
  }
  .note {
    margin-top: 14px;
  }
`;
