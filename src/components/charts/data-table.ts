import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { common } from '../../text/charts.ts';
import { saving } from '../../text/exports.ts';
import { headingsOf } from './picture-words.ts';
import type { PictureKind, SavePicture } from './save-picture.ts';
import { saveTable } from './table-file.ts';

const buttonOf = ({ currentTarget }: Event): HTMLElement | null => (currentTarget instanceof HTMLElement ? currentTarget : null);

/** The tables that a button is for: those beside it, else those right above it. */
function tablesOf(button: Element): HTMLTableElement[] {
  const tools = button.closest('.saves');
  for (const place of [tools?.parentElement?.matches('.beneath') ? tools.parentElement : null, ...before(tools)]) {
    const found = place instanceof HTMLTableElement ? [place] : [...(place?.querySelectorAll('table') ?? [])];
    if (found.length > 0) return found;
  }
  return [];
}

function* before(element: Element | null): Generator<Element> {
  for (let at = element?.previousElementSibling ?? null; at !== null; at = at.previousElementSibling) yield at;
}

function onTable(event: Event): void {
  const button = buttonOf(event);
  if (!button) return;
  const { title, part } = headingsOf(button);
  const tables = tablesOf(button);
  if (tables.length > 0) saveTable(part === '' ? title : part, tables);
}

function onPicture(event: Event, kind: PictureKind): void {
  const button = buttonOf(event);
  const root = button?.getRootNode();
  const host = root instanceof ShadowRoot ? root.host : null;
  if (!button || !(host instanceof LitElement)) return;
  const { title, part, summary } = headingsOf(button);
  const status = button.closest('.saves')?.querySelector('[role=status]');
  const said = (words: string) => {
    if (status) status.textContent = words;
  };
  // Figures of before the last change would carry the source line of after.
  if (host.hasAttribute('stale')) {
    said(saving.stale);
    return;
  }
  // What is drawn from no outlook rests on no futures, unless what stands around it knows better.
  const futures = 'outlook' in host && host.outlook === null ? 0 : null;
  const detail: SavePicture = { host, title, name: part === '' ? title : part, summary: [part, summary].filter(Boolean).join('. '), kind, futures, said };
  button.dispatchEvent(new CustomEvent('oo-save-picture', { detail, bubbles: true, composed: true }));
}

const kinds = ['svg', 'png'] as const satisfies readonly PictureKind[];

/**
 * A quiet row of buttons that save the picture around it and the table above it.
 * @param what is there to save
 */
export const saveRow = ({ picture = false, table = true }: { readonly picture?: boolean; readonly table?: boolean }): TemplateResult =>
  html`<div class="saves">
    ${
      picture
        ? html`<span class="of"
            ><span aria-hidden="true">${saving.picture}</span>${kinds.map((kind) => {
              const name = kind.toUpperCase();
              return html`<button class="plain" type="button" aria-label=${saving.pictureAs(name)} @click=${(event: Event) => onPicture(event, kind)}>
                ${name}
              </button>`;
            })}</span
          >`
        : nothing
    }${
      table
        ? html`<span class="of"
            ><span aria-hidden="true">${saving.table}</span
            ><button class="plain" type="button" aria-label=${saving.tableAs} @click=${onTable}>CSV</button></span
          >`
        : nothing
    }<span class="said" role="status"></span>
  </div>`;

/**
 * The figures of a picture, as a table to unfold and to save.
 * @param picture whether there is a picture to save beside it
 */
export const dataTable = (table: TemplateResult, picture = false): TemplateResult =>
  html`<div class="beneath">
    <details class="data">
      <summary>${common.asTable}</summary>
      <div class="scroll" tabindex="0" role="group" aria-label=${common.asTable}>${table}</div>
    </details>
    ${saveRow({ picture })}
  </div>`;
