import { css } from 'lit';

/** Rules every element with its own shadow root starts from: boxes, links, headings, focus ring, hidden words. */
const base = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  [hidden] {
    display: none !important;
  }
  h1,
  h2,
  h3 {
    font-family: var(--serif);
    font-weight: 600;
    line-height: 1.25;
    margin: 0;
    text-wrap: pretty;
  }
  h2 {
    font-size: var(--size-section);
    max-width: 34em;
  }
  h3 {
    font-size: var(--size-subhead);
  }
  p {
    margin: 0;
  }
  a {
    color: inherit;
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
    text-decoration-color: var(--edge);
  }
  a:hover {
    text-decoration-color: currentColor;
  }
  :focus-visible {
    outline: var(--stroke-focus) solid var(--focus);
    outline-offset: 2px;
  }
  .quiet {
    color: var(--ink2);
  }
  .visually-hidden {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    padding: 0;
    border: 0;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;

/** Buttons, inputs and selects: 44 px targets, thin borders, no shadows. */
const controls = css`
  button,
  .button,
  input,
  select,
  textarea {
    font: inherit;
    font-size: var(--size-least);
    color: var(--ink);
    font-variant-numeric: tabular-nums lining-nums;
  }
  button,
  .button {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: 8px;
    font-weight: 500;
    min-height: var(--target);
    min-width: var(--target);
    padding: 0 14px;
    background: none;
    border: 1px solid var(--edge);
    border-radius: var(--radius-button);
    text-decoration: none;
    cursor: pointer;
  }
  button:hover,
  .button:hover {
    background: var(--paper2);
  }
  button:active,
  .button:active {
    border-color: var(--ink);
  }
  button.main,
  .button.main {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--paper);
  }
  button.main:hover,
  .button.main:hover {
    background: var(--ink2);
  }
  @media (forced-colors: active) {
    /* The system puts a plate of its own ground behind words: on a filled button nothing would be left to see. */
    button.main,
    .button.main,
    button[aria-pressed='true'] {
      forced-color-adjust: none;
    }
  }
  button.plain {
    border-color: transparent;
    padding: 0 6px;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-decoration-color: var(--edge);
    text-underline-offset: 4px;
  }
  button:disabled {
    color: var(--ink2);
    border-color: var(--rule);
    cursor: default;
    background: none;
  }
  input:not([type='checkbox'], [type='radio'], [type='range'], [type='file']),
  select,
  textarea {
    min-height: var(--target);
    max-width: 100%;
    padding: 0 10px;
    background: var(--paper);
    border: 1px solid var(--edge);
    border-bottom: 2px solid var(--ink);
    border-radius: var(--radius-input);
  }
  ::placeholder {
    color: var(--ink2);
    opacity: 1;
  }
  textarea {
    padding: 8px 10px;
    line-height: 1.4;
  }
  input[inputmode='decimal'],
  input[inputmode='numeric'],
  input[type='number'] {
    text-align: right;
  }
  input[aria-invalid='true'],
  select[aria-invalid='true'],
  textarea[aria-invalid='true'] {
    border-color: var(--warn);
    border-width: 2px;
  }
  input[type='checkbox'],
  input[type='radio'] {
    width: 22px;
    height: 22px;
    margin: 0;
    accent-color: var(--ink);
  }
  input[type='range'] {
    accent-color: var(--ink);
    min-height: var(--target);
  }
  input:disabled,
  select:disabled {
    color: var(--ink2);
    border-color: var(--rule);
  }
`;

/** Tables: a 2 px ink rule under the head, hairlines between rows, small second lines. */
const tables = css`
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: var(--size-body);
  }
  th,
  td {
    text-align: left;
    vertical-align: top;
    padding: 11px 14px 11px 0;
    border-bottom: 1px solid var(--hair);
  }
  thead th {
    border-bottom: 2px solid var(--ink);
    font-weight: 600;
    line-height: 1.25;
  }
  tbody th {
    font-weight: 400;
  }
  th small,
  td small {
    display: block;
    color: var(--ink2);
    font-size: var(--size-least);
    line-height: 1.35;
  }
  caption {
    text-align: left;
    color: var(--ink2);
    padding-bottom: 8px;
  }
  .number {
    text-align: right;
  }
  .scroll {
    overflow-x: auto;
    max-width: 100%;
  }
`;

/** Anything inside an element with data-mark="A" … "H" finds the plan's colour in --plan, its large fill in --fill, and what may be written on each. */
const plans = css`
  [data-mark='A'] {
    --plan: var(--plan-a);
    --fill: var(--fill-a);
  }
  [data-mark='B'] {
    --plan: var(--plan-b);
    --fill: var(--fill-b);
  }
  [data-mark='C'] {
    --plan: var(--plan-c);
    --fill: var(--fill-c);
  }
  [data-mark='D'] {
    --plan: var(--plan-d);
    --fill: var(--fill-d);
  }
  [data-mark='E'] {
    --plan: var(--plan-e);
    --fill: var(--fill-e);
  }
  [data-mark='F'] {
    --plan: var(--plan-f);
    --fill: var(--fill-f);
  }
  [data-mark='G'] {
    --plan: var(--plan-g);
    --fill: var(--fill-g);
  }
  [data-mark='H'] {
    --plan: var(--plan-h);
    --fill: var(--fill-h);
  }
  [data-mark] {
    --mark-ground: var(--plan);
    --mark-ink: var(--on-plan);
    --fill-ink: var(--on-fill);
  }
  :is([data-mark='E'], [data-mark='F'], [data-mark='G'], [data-mark='H']) {
    --mark-ground: var(--paper);
    --mark-ink: var(--ink);
    --fill-ink: var(--ink);
  }
  .mark {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    flex: none;
    width: 26px;
    height: 26px;
    border-radius: 50%;
    border: 3px solid var(--plan);
    background: var(--mark-ground);
    color: var(--mark-ink);
    font: 700 16px/1 var(--sans);
    print-color-adjust: exact;
    -webkit-print-color-adjust: exact;
  }
  @media (forced-colors: active) {
    .mark {
      forced-color-adjust: none;
    }
  }
`;

/** The quiet row under a picture or a table that saves it; beside “as a table” where the two fit one line. */
const saves = css`
  .beneath {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 22px;
    margin-top: 10px;
  }
  .beneath details.data {
    margin-top: 0;
    max-width: 100%;
  }
  .beneath details.data[open] {
    flex: 1 0 100%;
  }
  .saves {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 22px;
    font-size: var(--size-least);
    color: var(--ink2);
  }
  .saves .of {
    display: inline-flex;
    flex-wrap: wrap;
    align-items: center;
  }
  .saves .said:empty {
    display: none;
  }
  @media print {
    .saves {
      display: none;
    }
  }
`;

/** The whole set, in the order it must be applied. */
export const shared = [base, controls, tables, plans, saves];
