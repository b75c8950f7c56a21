import { html, type TemplateResult } from 'lit';

/** One choice above an answer: a list with its words before it. */
export function choice(
  words: string,
  options: readonly { readonly id: string; readonly name: string }[],
  chosen: string,
  choose: (id: string) => void,
): TemplateResult {
  const onChange = (event: Event): void => {
    if (event.target instanceof HTMLSelectElement) choose(event.target.value);
  };
  return html`<label
    ><span>${words}</span>
    <select @change=${onChange}>
      ${options.map(({ id, name }) => html`<option value=${id} ?selected=${id === chosen}>${name}</option>`)}
    </select></label
  >`;
}
