import { css } from 'lit';

export const formStyles = css`
  :host {
    display: block;
    container-type: inline-size;
    font-size: var(--size-body);
    line-height: 1.35;
  }
  .columns {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: 0 52px;
  }
  .columns.one {
    grid-template-columns: minmax(0, 1fr);
  }
  .column {
    min-width: 0;
  }
  fieldset {
    border: 0;
    margin: 0 0 22px;
    padding: 0;
    min-width: 0;
  }
  legend {
    padding: 0;
    font-weight: 600;
    width: 100%;
  }
  .section > legend {
    font: 600 var(--size-subhead) / 1.3 var(--serif);
    border-bottom: 1px solid var(--ink);
  }
  .group {
    margin: 0;
  }
  .group > legend,
  .listed > legend {
    padding-top: 16px;
    font: 600 var(--size-body) / 1.3 var(--serif);
  }
  .listed {
    margin: 0;
  }
  .entry {
    margin: 0;
    padding: 2px 0 4px;
    border-bottom: 1px solid var(--hair);
  }
  .entry > legend {
    font-size: var(--size-note);
    font-weight: 500;
    color: var(--ink2);
    padding-top: 8px;
  }
  .head {
    display: flex;
    align-items: baseline;
    justify-content: space-between;
    flex-wrap: wrap;
    gap: 0 12px;
  }
  .help {
    color: var(--ink2);
    font-size: var(--size-note);
    padding: 6px 0 2px;
  }
  .problem {
    color: var(--warn);
    font-weight: 600;
    font-size: var(--size-note);
  }
  .remark {
    font-weight: 600;
    font-size: var(--size-note);
  }
  .problem:empty {
    display: none;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: 0 14px;
    padding: 4px 0 6px;
  }
  .line > oo-field {
    flex: 0 1 auto;
  }
  .line > button {
    align-self: flex-end;
    margin-bottom: 4px;
  }
  .forms {
    padding: 6px 0 4px;
    border-bottom: 1px solid var(--hair);
  }
  .entry .forms {
    border-bottom: 0;
    padding: 0;
  }
  .forms.loose {
    border-bottom: 0;
    padding-bottom: 0;
  }
  .forms > .head {
    align-items: center;
  }
  .forms > .head > .line {
    justify-content: flex-end;
    gap: 0 6px;
    padding: 0;
  }
  .tail {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 0 12px;
  }
  .small {
    font-size: var(--size-note);
    color: var(--ink2);
  }
  .stacked {
    display: grid;
    gap: 1px;
    padding: 4px 0;
  }
  .above {
    font-size: var(--size-note);
    color: var(--ink2);
    line-height: 1.25;
  }
  .forms .name {
    font-weight: 500;
  }
  .forms select {
    max-width: 100%;
    min-width: 0;
    font-size: var(--size-body);
    field-sizing: content;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 10px;
    align-items: center;
    padding: 6px 0;
  }
  .after {
    display: flex;
    justify-content: flex-end;
  }
  .finer {
    margin-top: 14px;
    border-top: 1px solid var(--rule);
  }
  .finer > summary {
    display: flex;
    align-items: center;
    gap: 10px;
    min-height: var(--target);
    cursor: pointer;
    color: var(--ink2);
  }
  .finer > summary::before {
    content: '▸';
    font-size: var(--size-least);
  }
  .finer[open] > summary::before {
    content: '▾';
  }
  @container (max-width: 56em) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
