import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import { entriesFor, bare, type Path } from '../../model/walk.ts';
import type { Blank } from '../../model/blanks.ts';
import type { Estimate } from '../../model/estimate.ts';
import type { Programme } from '../../model/programme.ts';
import { fieldText } from '../../text/fields.ts';
import { fieldKind } from './field-kind.ts';
import { unitOf } from './number-reading.ts';
import type { Said } from './form-problems.ts';
import { pathKey, type FormItem, type ListEntry } from './form-items.ts';
import './choices.ts';
import './estimate.ts';
import './field.ts';
import './tasted.ts';

type Of<K extends FormItem['kind']> = Extract<FormItem, { kind: K }>;

/** What a drawn item needs of its form. */
export interface Pen {
  readonly programme: Programme | undefined;
  readonly saidAt: (path: Path, deep: boolean) => Said;
  /** Sends an edit that changes what fields there are; the focus goes to what was put in, or to what stands next to what was taken out. */
  readonly put: (path: Path, value: unknown, label: string) => void;
  readonly spread: (path: Path) => void;
}

/** Longest span of months that a slider can be set on by hand. */
const SLIDER_MONTHS = 60;

/** Counts of these vary between springs: by how much, the programme says. */
function springLuck(path: Path, programme: Programme | undefined): number | undefined {
  const key = path.at(-1);
  if (key === 'set') return programme?.weather.springLuckSet;
  return key === 'germination' ? programme?.weather.springLuckGermination : undefined;
}

function field({ path, schema, value, label, help }: Of<'field'>, pen: Pen, compact = false, hideUnit = false): TemplateResult {
  const { meta } = bare(schema);
  const { problem, remark } = pen.saidAt(path, true);
  const kind = fieldKind(schema);
  const slider = !compact && kind === 'number' && meta?.scale === 'months' && (meta.max ?? Infinity) <= SLIDER_MONTHS;
  const entries = meta?.refersTo ? entriesFor(pen.programme, meta.refersTo, path) : [];
  return html`<oo-field
    data-path=${pathKey(path)}
    .schema=${schema}
    .value=${value}
    .path=${path}
    .label=${label}
    .help=${compact ? '' : help}
    .entries=${entries}
    .problem=${problem}
    .remark=${remark}
    .slider=${slider}
    .compact=${compact}
    .hideUnit=${hideUnit}
  ></oo-field>`;
}

/** In a list the entry itself says what goes; a whole group is named on the button. */
function removeButton(path: Path, label: string, pen: Pen, inList = false): TemplateResult {
  // “S alleles” keep their letter.
  const what = fieldText.removeThat(/^\p{Lu} /u.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1));
  return html`<button type="button" class="plain" aria-label=${what} @click=${() => pen.put(path, undefined, label)}>
    ${inList ? fieldText.remove : what}
  </button>`;
}

function addButton(words: string, path: Path, blank: Blank, pen: Pen): TemplateResult {
  if (!blank.ok) return html`<span class="quiet">${words}: ${fieldText.needs(fieldText.addFirst[blank.needs])}</span>`;
  return html`<button type="button" @click=${() => pen.put(path, blank.value, words)}>${words}</button>`;
}

function estimate({ path, schema, value, label, help, removable }: Of<'estimate'>, pen: Pen): TemplateResult {
  const key = path.at(-1);
  const { problem, remark } = pen.saidAt(path, true);
  return html`<oo-estimate
      data-path=${pathKey(path)}
      .schema=${schema}
      .value=${value}
      .path=${path}
      .label=${label}
      .help=${help}
      .springLuck=${springLuck(path, pen.programme)}
      .clusters=${key === 'set' || key === 'straySet'}
      .problem=${problem}
      .remark=${remark}
    ></oo-estimate>
    ${tasted(path, label, pen)} ${removable ? html`<div class="after">${removeButton(path, label, pen)}</div>` : nothing}`;
}

/** On a tree's true value: a way to it from what was tasted. */
function tasted(path: Path, label: string, pen: Pen): TemplateResult | typeof nothing {
  const [section, , table, id] = path;
  const trait = section === 'trees' && table === 'values' ? pen.programme?.traits.find((each) => each.id === id) : undefined;
  if (trait?.type !== 'measured') return nothing;
  return html`<oo-tasted .trait=${trait} @oo-tasted=${(event: CustomEvent<Estimate>) => pen.put(path, event.detail, label)}></oo-tasted>`;
}

function choices({ path, schema, value, label, help, add }: Of<'choices'>, pen: Pen): TemplateResult {
  const { problem, remark } = pen.saidAt(path, true);
  return html`<oo-choices
    data-path=${pathKey(path)}
    .schema=${schema}
    .value=${value}
    .path=${path}
    .label=${label}
    .help=${help}
    .add=${add}
    .programme=${pen.programme}
    .problem=${problem}
    .remark=${remark}
  ></oo-choices>`;
}

/** The small fields of a line. Where all have one unit, the last one says it. */
function lineFields({ items }: Of<'line'>, pen: Pen): TemplateResult[] {
  const units = items.map((item) => (item.kind === 'field' ? unitOf(bare(item.schema).meta) : ''));
  const alike = units.every((unit) => unit === units[0]);
  return items.map((item, i) => (item.kind === 'field' ? field(item, pen, true, alike && i < items.length - 1) : drawItem(item, pen, '')));
}

function line(item: Of<'line'>, pen: Pen): TemplateResult {
  return html`<div class="line">${lineFields(item, pen)} ${spreadButton(item, pen)}</div>`;
}

function spreadButton({ path, canSpread }: Of<'line'>, pen: Pen): TemplateResult | typeof nothing {
  return canSpread ? html`<button type="button" class="plain small" @click=${() => pen.spread(path)}>${fieldText.rangesEach}</button>` : nothing;
}

const said = (words: string, kind: 'help' | 'problem' | 'remark'): TemplateResult | typeof nothing =>
  words === '' ? nothing : html`<p class=${kind}>${words}</p>`;

/** What the check of the whole document says of a group as such. */
function saidOf(path: Path, pen: Pen): TemplateResult {
  const { problem, remark } = pen.saidAt(path, false);
  return html`${said(problem, 'problem')}${said(remark, 'remark')}`;
}

const startsWith = (longer: string, start: string): boolean => start !== '' && longer.toLowerCase().startsWith(`${start.toLowerCase()} `);

/** A part needs no heading of its own under one of the same words, nor where it is all that stands under one. */
const saysAll = (above: string, label: string, only: boolean): boolean => above.toLowerCase() === label.toLowerCase() || (only && above !== '');

function group({ path, label, help, items, removable }: Of<'group'>, pen: Pen, above: string, only: boolean): TemplateResult {
  const body = html`${said(help, 'help')}${saidOf(path, pen)}${drawItems(items, pen, label)}
  ${removable ? html`<div class="after">${removeButton(path, label, pen)}</div>` : nothing}`;
  // A heading right above that says the same or the beginning of it, or one right below that says more, is enough.
  const [first] = items;
  const goesOn = help === '' && (first?.kind === 'list' || first?.kind === 'group') && startsWith(first.label, label);
  if (saysAll(above, label, only) || goesOn || startsWith(label, above)) return html`<div data-path=${pathKey(path)}>${body}</div>`;
  return html`<fieldset class="group" data-path=${pathKey(path)}>
    <legend>${label}</legend>
    ${body}
  </fieldset>`;
}

function formChoice({ path, options, chosen, removable }: Of<'forms'>, name: string, quiet: boolean, pen: Pen): TemplateResult {
  const onChange = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    const { value } = event.target;
    const blank: Blank | undefined = value === '' ? { ok: true, value: undefined } : options[Number(value)]?.blank;
    if (blank?.ok) pen.put(path, blank.value, name);
  };
  return html`<select class=${quiet ? 'quiet-choice' : ''} aria-label=${fieldText.formOf(name)} @change=${onChange}>
    ${removable ? html`<option value="">${fieldText.notStated}</option>` : nothing}
    ${options.map(({ words, blank }, i) => html`<option value=${i} ?disabled=${!blank.ok} .selected=${live(i === chosen)}>${blank.ok ? words : `${words} (${fieldText.addFirst[blank.needs]})`}</option>`)}
  </select>`;
}

/** A choice of forms. A line of small fields stands beside its name; in an entry of a list the choice is the first of the line. */
function forms(item: Of<'forms'>, pen: Pen, above: string, after: TemplateResult | typeof nothing = nothing): TemplateResult {
  const { path, label, help, items } = item;
  const name = label || above;
  const [first] = items;
  const only = items.length === 1 && first?.kind === 'line' ? first : undefined;
  const words = html`${said(help, 'help')}${saidOf(path, pen)}`;
  if (label === '') {
    return html`<div class="forms" data-path=${pathKey(path)}>
      <div class="line">
        <div class="stacked"><span class="above" aria-hidden="true">${above}</span>${formChoice(item, name, false, pen)}</div>
        ${only ? lineFields(only, pen) : nothing} ${after}
      </div>
      ${words}${only ? nothing : drawItems(items, pen, name)}
    </div>`;
  }
  const head = html`<div class="head">
    <span class="name">${label}</span>${only ? html`<div class="line">${lineFields(only, pen)}</div>` : formChoice(item, name, true, pen)}
  </div>`;
  return html`<div class="forms ${only ? '' : 'loose'}" data-path=${pathKey(path)}>
    ${head}${only ? html`<div class="tail">${formChoice(item, name, true, pen)}${spreadButton(only, pen)}</div>` : nothing}
    ${words}${only ? nothing : drawItems(items, pen, name)}
  </div>`;
}

function list({ path, label, help, entries, add, blank }: Of<'list'>, pen: Pen, above: string, only: boolean): TemplateResult {
  const whole = html`${said(help, 'help')}${saidOf(path, pen)}${entries.map((each) => entry(each, pen))}
    <div class="buttons">${blank ? addButton(add, [...path, entries.length], blank, pen) : nothing}</div>`;
  if (saysAll(above, label, only)) return html`<div data-path=${pathKey(path)}>${whole}</div>`;
  return html`<fieldset class="listed" data-path=${pathKey(path)}>
    <legend>${label}</legend>
    ${whole}
  </fieldset>`;
}

function entry({ path, label, items, removable }: ListEntry, pen: Pen): TemplateResult {
  const remove = removable ? removeButton(path, label, pen, true) : nothing;
  const [first] = items;
  if (items.length === 1 && first?.kind === 'forms' && first.label === '')
    return html`<div class="entry" role="group" aria-label=${label} data-path=${pathKey(path)}>${forms(first, pen, label, remove)}</div>`;
  if (items.length === 1 && first?.kind === 'line')
    return html`<div class="entry line" role="group" aria-label=${label} data-path=${pathKey(path)}>${lineFields(first, pen)}${remove}</div>`;
  return html`<fieldset class="entry" data-path=${pathKey(path)}>
    <legend>${label}</legend>
    ${saidOf(path, pen)}${drawItems(items, pen, label)} ${removable ? html`<div class="after">${remove}</div>` : nothing}
  </fieldset>`;
}

/** Draws one item of a form under the heading `above`. */
function drawItem(item: FormItem, pen: Pen, above: string, only = false): TemplateResult {
  switch (item.kind) {
    case 'field':
      return field(item, pen);
    case 'estimate':
      return estimate(item, pen);
    case 'choices':
      return choices(item, pen);
    case 'line':
      return line(item, pen);
    case 'group':
      return group(item, pen, above, only);
    case 'forms':
      return forms(item, pen, above);
    case 'list':
      return list(item, pen, above, only);
    case 'absent':
      return html`<div class="buttons" data-path=${pathKey(item.path)}>
        ${addButton(item.label, item.path, item.blank, pen)} ${tasted(item.path, item.label, pen)}
      </div>`;
    case 'table':
      return html`<fieldset class="group" data-path=${pathKey(item.path)}>
        <legend>${item.label}</legend>
        ${said(item.help, 'help')}${saidOf(item.path, pen)}${drawItems(item.items, pen, item.label)}
      </fieldset>`;
  }
}

/** Draws items one below the other; a field that stays keeps its element, and with it what is being typed. */
export function drawItems(items: readonly FormItem[], pen: Pen, above: string): unknown {
  return repeat(
    items,
    (item) => `${item.kind} ${pathKey(item.path)}`,
    (item) => drawItem(item, pen, above, items.length === 1),
  );
}
