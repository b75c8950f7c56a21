import { css } from 'lit';

/** Ranked unknowns: a table whose second column is the picture; on a phone every row is a block. */
export const unknownsTableStyles = css`
  :host {
    display: block;
    container-type: inline-size;
  }
  .ranked {
    margin-top: 14px;
    table-layout: fixed;
  }
  .ranked col.what {
    width: 19%;
  }
  .ranked col.matters {
    width: 27%;
  }
  .ranked col.way {
    width: 20%;
  }
  .ranked col.rests {
    width: 9em;
  }
  .ranked td,
  .ranked th {
    padding-right: 18px;
  }
  .ranked tbody tr:first-child th {
    font-weight: 600;
  }
  .ranked svg {
    display: block;
    max-width: none;
  }
  .share {
    display: flex;
    flex-wrap: wrap;
    gap: 0 12px;
    align-items: baseline;
    margin-top: 2px;
  }
  .share b {
    font-weight: 600;
  }
  .share small {
    display: inline;
  }
  .phone-only {
    display: none;
  }
  svg .alone {
    fill: var(--plan);
  }
  svg .together {
    fill: none;
    stroke: var(--plan);
    stroke-width: 1.5;
  }
  svg .whisker {
    stroke: var(--ink);
    stroke-width: 2;
  }
  svg .whisker-ground {
    stroke: var(--paper);
    stroke-width: 4.5;
  }
  svg .scale-number {
    font-size: 16px;
    font-weight: 400;
    fill: var(--ink2);
  }
  :host([stale]) .ranked {
    opacity: var(--stale);
  }
  @media (forced-colors: active) {
    svg .alone {
      fill: Highlight;
    }
    svg .together,
    svg .whisker {
      stroke: CanvasText;
    }
  }
  @container (max-width: 899px) {
    .ranked,
    .ranked tbody,
    .ranked tr,
    .ranked th,
    .ranked td {
      display: block;
      width: auto;
      padding-right: 0;
      border: 0;
    }
    .ranked thead,
    .ranked colgroup {
      display: none;
    }
    .ranked tr {
      padding: 14px 0;
      border-bottom: 1px solid var(--hair);
    }
    .ranked th,
    .ranked td {
      padding: 2px 0;
    }
    .ranked tbody th {
      font-weight: 600;
      font-size: var(--size-body);
    }
    .ranked caption {
      display: block;
    }
    .ranked td.rests {
      padding: 6px 0;
    }
    .phone-only {
      display: inline;
      color: var(--ink2);
    }
  }
`;
