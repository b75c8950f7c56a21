import { css } from 'lit';

/** One row: what it is on the left, its boxes on the right, what is known or wrong about it underneath. */
export const row = css`
  :host {
    display: block;
    min-width: 0;
    container-type: inline-size;
    font-size: var(--size-body);
    line-height: 1.35;
  }
  .row {
    display: grid;
    grid-template-columns: minmax(6em, 1fr) auto;
    gap: 2px 12px;
    align-items: center;
    padding: 10px 0 9px;
    border-bottom: 1px solid var(--hair);
  }
  .name {
    font-weight: 500;
    text-wrap: pretty;
  }
  .dragged {
    cursor: ew-resize;
    user-select: none;
    touch-action: pan-y;
  }
  .boxes {
    display: flex;
    align-items: center;
    justify-content: flex-end;
    gap: 8px;
    min-width: 0;
  }
  .boxes.many {
    flex-wrap: wrap;
  }
  .below,
  .remark,
  .choose,
  .understood,
  .problem {
    grid-column: 1 / -1;
    font-size: var(--size-note);
  }
  .below {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 12px;
    color: var(--ink2);
  }
  .remark {
    font-weight: 600;
  }
  .problem {
    color: var(--warn);
    font-weight: 600;
  }
  .problem:empty,
  .understood:empty {
    display: none;
  }
  .understood {
    color: var(--ink2);
    line-height: 1.35;
  }
  .understood .put-back {
    font-size: inherit;
    padding: 0 2px;
    margin-block: -8px;
    text-align: left;
  }
  /* Two readings of one text: side by side, neither of them the main one. */
  .choose {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    padding: 4px 0;
  }
  .choose button {
    font-size: var(--size-body);
    font-weight: 500;
    border-color: var(--warn);
    background: var(--raise);
  }
  .unit {
    color: var(--ink2);
    flex: 0 0 auto;
    width: 5em;
    line-height: 1.15;
    text-wrap: balance;
  }
  .number,
  select,
  .text,
  textarea {
    font-size: var(--size-body);
    font-weight: 500;
  }
  .number {
    width: max(66px, calc(var(--letters, 0) * 1ch + 24px));
    flex: 0 1 auto;
    min-width: 0;
  }
  @container (max-width: 23em) {
    .row {
      grid-template-columns: minmax(0, 1fr);
    }
    .boxes {
      justify-content: flex-start;
      flex-wrap: wrap;
    }
    .unit {
      width: auto;
      max-width: 7em;
    }
  }
`;

/** A choice that steps back: how something is given, beside what is given. */
export const quietChoice = css`
  select.quiet-choice {
    font-size: var(--size-note);
    font-weight: 400;
    color: var(--ink2);
    background: none;
    border-color: transparent;
    border-bottom: 0;
    padding: 0 2px;
    text-decoration: underline;
    text-decoration-style: dotted;
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
    field-sizing: content;
  }
  select.quiet-choice:hover {
    color: var(--ink);
  }
  select {
    field-sizing: content;
  }
  option {
    background: var(--raise);
    color: var(--ink);
  }
`;
