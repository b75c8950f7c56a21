import { css } from 'lit';

/** A badge in a thing whose class is the kind of source: fill and line tell it apart. */
export const badgeStyles = css`
  .badge {
    display: inline-block;
    font-size: var(--size-least);
    font-weight: 500;
    line-height: 1;
    padding: 5px 8px;
    border: 1px solid var(--ink);
    border-radius: var(--radius-input);
    white-space: nowrap;
  }
  .counted .badge {
    background: var(--ink);
    color: var(--paper);
  }
  .practice .badge {
    font-style: italic;
  }
  .remembered .badge {
    border-style: double;
    border-width: 3px;
    padding: 3px 6px;
  }
  .guess .badge {
    border-style: dashed;
  }
  .invented .badge {
    border-style: dotted;
    border-width: 2px;
    padding: 4px 7px;
  }
`;
