import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { EstimateForm } from '../../model/estimate.ts';
import { fieldText } from '../../text/fields.ts';
import type { Slot } from './estimate-slots.ts';
import { numberBox } from './number-box.ts';

export interface EstimateBoxes {
  readonly slots: readonly Slot[];
  readonly form: EstimateForm;
  readonly unit: string;
  /** Words behind the two numbers of a count. */
  readonly words: readonly [string, string];
  /** Keys of boxes marked for a reason outside of themselves. */
  readonly bad: readonly string[];
  readonly describedBy: string;
  readonly lots: boolean;
  readonly clusters: boolean;
  readonly onDone: (good: boolean) => void;
  readonly onLeave: (slot: Slot) => void;
  readonly onClusters: (flowers: number | undefined) => void;
  readonly onAlternative: (change: 'more' | number) => void;
}

/** How many flowers a cluster is first taken to have; the breeder then says better. */
const FLOWERS_IN_CLUSTER = 5;
const MOST_ALTERNATIVES = 12;
const idOf = (key: string): string => key.replace(' ', '-');

function box({ form, bad, describedBy, onDone, onLeave }: EstimateBoxes, slot: Slot, labelledBy = `name ${idOf(slot.key)}-name`): TemplateResult {
  const { key, draft, rules, takes } = slot;
  const leave = (): void => onLeave(slot);
  return numberBox({
    draft,
    rules,
    takes,
    id: idOf(key),
    labelledBy,
    describedBy,
    bad: bad.includes(key),
    letters: form === 'known' || form === 'ranged',
    onDone,
    onLeave: leave,
  });
}

const hiddenName = (slot: Slot, words = ''): TemplateResult => html`<span hidden id=${`${idOf(slot.key)}-name`}>${`${slot.label} ${words}`.trim()}</span>`;

function known(boxes: EstimateBoxes): TemplateResult {
  return html`<div class="boxes">${boxes.slots.map((slot) => box(boxes, slot, 'name'))}<span class="unit">${boxes.unit}</span></div>`;
}

function ranged(boxes: EstimateBoxes): TemplateResult {
  const { slots } = boxes;
  return html`<div class="boxes" role="group" aria-labelledby="name">
    <div class="three">
      ${slots.map((slot) => html`<label for=${slot.key} id=${`${slot.key}-name`}>${slot.label}</label>`)}<span
      ></span> ${slots.map((slot) => box(boxes, slot))}<span class="unit">${boxes.unit}</span>
    </div>
  </div>`;
}

function counted(boxes: EstimateBoxes): TemplateResult {
  const [hits, of, lots, flowers] = boxes.slots;
  const [gained, tried] = boxes.words;
  if (!hits || !of || !lots) return html``;
  const inLots = boxes.lots || lots.draft.value !== 1;
  return html`<div class="boxes" role="group" aria-labelledby="name">
      ${hiddenName(hits, gained)} ${hiddenName(of, tried)} ${box(boxes, hits)} <span>${`${gained} ${fieldText.of}`.trim()}</span> ${box(boxes, of)}
      ${tried === '' ? nothing : html`<span class="unit">${flowers ? `${fieldText.cluster}s` : tried}</span>`}
    </div>
    ${
      inLots || boxes.clusters || flowers
        ? html`<div class="lots" role="group" aria-labelledby="name">
            ${inLots ? html`<label for="lots" id="lots-name">${fieldText.countedIn}</label>${box(boxes, lots, 'name lots-name lots-word')}<span id="lots-word">${fieldText.lots}${boxes.clusters || flowers ? ',' : ''}</span>` : nothing}
            ${boxes.clusters || flowers ? clusterChoice(boxes, flowers) : nothing}
          </div>`
        : nothing
    }`;
}

function clusterChoice(boxes: EstimateBoxes, flowers: Slot | undefined): TemplateResult {
  const onChange = (event: Event): void => {
    if (event.target instanceof HTMLSelectElement) boxes.onClusters(event.target.value === 'cluster' ? FLOWERS_IN_CLUSTER : undefined);
  };
  return html`<label for="per">${fieldText.per}</label>
    <select id="per" class="quiet-choice" aria-label=${fieldText.per} @change=${onChange}>
      <option value="flower" .selected=${live(!flowers)}>${fieldText.flower}</option>
      <option value="cluster" .selected=${live(flowers !== undefined)}>${flowers ? fieldText.clusterOf : fieldText.cluster}</option>
    </select>
    ${flowers ? html`${hiddenName(flowers)}${box(boxes, flowers)}<span>${boxes.words[1] || fieldText.flower}</span>` : nothing}`;
}

function alternatives(boxes: EstimateBoxes): TemplateResult {
  const { slots, unit, onAlternative } = boxes;
  const pairs = slots.flatMap((slot, i) => {
    const next = slots[i + 1];
    return i % 2 === 0 && next ? [[slot, next] as const] : [];
  });
  return html`<div class="alternatives" role="group" aria-labelledby="name">
    ${pairs.map(
      ([value, weight], i) =>
        html`<div>
          ${hiddenName(value)} ${hiddenName(weight)} ${box(boxes, value)}<span class="unit">${unit}</span>
          <span class="weight"><label for=${idOf(weight.key)}>${fieldText.weight}</label>${box(boxes, weight)}</span>
          <button type="button" class="plain" aria-label=${fieldText.removeAlternative(i + 1)} ?disabled=${pairs.length <= 2} @click=${() => onAlternative(i)}>
            ${fieldText.remove}
          </button>
        </div>`,
    )}
    <button type="button" class="plain" ?disabled=${pairs.length >= MOST_ALTERNATIVES} @click=${() => onAlternative('more')}>
      ${fieldText.addAlternative}
    </button>
  </div>`;
}

const BY_FORM: Readonly<Record<EstimateForm, (boxes: EstimateBoxes) => TemplateResult>> = { known, ranged, counted, alternatives };

/** Draws the boxes of an estimate by its form; names and descriptions are ids in the same shadow root. */
export const estimateBoxes = (boxes: EstimateBoxes): TemplateResult => BY_FORM[boxes.form](boxes);
