import { css } from 'lit';

/** What all questions share: the finding as a title, the picture with words beside it, tables. */
export const answerStyles = css`
  :host {
    display: block;
  }
  .name {
    color: var(--ink2);
    font-size: var(--size-label);
    font-weight: 600;
  }
  h2 {
    font-size: var(--size-section);
    font-weight: 600;
    max-width: 32em;
    text-wrap: pretty;
  }
  .about,
  .cannot {
    color: var(--ink2);
    max-width: 52em;
    margin-top: 4px;
  }
  .cannot {
    margin-top: 14px;
    color: var(--ink);
  }
  /* Keeps its line, so that nothing below moves when futures come and go. */
  .state {
    min-height: 30px;
  }
  .state p {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 14px;
  }
  .problem {
    color: var(--warn);
  }
  .with-notes {
    display: grid;
    grid-template-columns: minmax(0, 2fr) minmax(15em, 1fr);
    gap: 22px 54px;
    align-items: start;
    margin-top: 14px;
  }
  h3.inner {
    font-size: var(--size-plan);
    margin-top: 36px;
  }
  .said {
    max-width: 52em;
    margin: 4px 0 8px;
  }
  .coming {
    min-height: 330px;
  }
  .notes h3 {
    font-size: var(--size-subhead);
    font-weight: 600;
    margin: 22px 0 4px;
  }
  .notes h3:first-child {
    margin-top: 0;
  }
  .notes p + p {
    margin-top: 8px;
  }
  .notes dl {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    gap: 8px 14px;
    margin: 8px 0 0;
  }
  .notes dt {
    font-weight: 600;
  }
  .notes dd {
    margin: 0;
    color: var(--ink2);
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 14px 22px;
    margin-top: 14px;
    align-items: end;
  }
  .choices label {
    display: grid;
    gap: 4px;
  }
  .worth {
    border-left: 3px solid var(--ink);
    padding-left: 14px;
    font-family: var(--serif);
    font-size: var(--size-subhead);
    line-height: 1.4;
    max-width: 36em;
    margin-top: 22px;
  }
  /* A shade at an edge says that the table goes on there; it goes with the last of it. */
  .scroll {
    overflow-x: auto;
    background:
      linear-gradient(to right, var(--paper) 40%, transparent) 0 0 / 40px 100% no-repeat local,
      linear-gradient(to left, var(--paper) 40%, transparent) 100% 0 / 40px 100% no-repeat local,
      linear-gradient(to right, color-mix(in srgb, var(--edge) 55%, transparent), transparent) 0 0 / 14px 100% no-repeat scroll,
      linear-gradient(to left, color-mix(in srgb, var(--edge) 55%, transparent), transparent) 100% 0 / 14px 100% no-repeat scroll;
  }
  /* Figures stay on one line: a narrow page scrolls the table instead. */
  .figure,
  .figure small {
    white-space: nowrap;
  }
  .scroll tbody th {
    min-width: 7em;
  }
  .method {
    margin-top: 14px;
    color: var(--ink2);
    max-width: 60em;
  }
  .method summary {
    min-height: 44px;
    display: list-item;
    align-content: center;
    cursor: pointer;
  }
  @media (max-width: 1000px) {
    .with-notes {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
