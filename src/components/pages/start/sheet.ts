import { html, nothing, type TemplateResult } from 'lit';
import type { z } from 'zod';
import type { Entry, Path } from '../../../model/walk.ts';
import { valueAt } from '../../../model/walk.ts';
import type { Answers, Draft } from '../../../start/answers.ts';
import type { KnownRule } from '../../../start/known-traits.ts';
import type { Found } from '../../../start/problems.ts';
import { start, startTroubles } from '../../../text/start.ts';
import '../../fields/field.ts';

/** All that the questions are drawn from. */
export interface Sheet {
  readonly draft: Draft;
  readonly answers: Answers;
  readonly found: readonly Found[];
}

/** What a question can do besides taking answers. */
export interface Hands {
  readonly addPartner: () => void;
  readonly removePartner: (place: number) => void;
  /** Takes what the catalogue knows of the trait for its inheritance; where nothing was typed, its name too. */
  readonly takeKnown: (known: KnownRule) => void;
  readonly dropKnown: () => void;
}

interface Words {
  readonly label?: string;
  readonly help?: string;
  readonly remark?: string;
  readonly entries?: readonly Entry[];
}

export const keyOf = (path: Path): string => path.join('/');
const troubleAt = ({ found }: Sheet, path: Path): string =>
  found
    .filter((each) => keyOf(each.path) === keyOf(path))
    .map(({ trouble }) => startTroubles[trouble])
    .join(' ');

/**
 * One answer: what was given, else what stands for it, marked as filled in.
 * @param filled what stands there while nothing was given; undefined leaves the box empty
 */
export function answer(sheet: Sheet, schema: z.ZodType, path: Path, filled: unknown, words: Words = {}): TemplateResult {
  const given = valueAt(sheet.draft, path);
  const marked = given === undefined && filled !== undefined && filled !== '';
  return html`<div class="answer">
    ${field(sheet, schema, path, given ?? filled, words)} ${marked ? html`<span class="filled">${start.filled}</span>` : nothing}
  </div>`;
}

function field(
  sheet: Sheet,
  schema: z.ZodType,
  path: Path,
  value: unknown,
  { label = '', help = '', remark = '', entries = [] }: Words,
  compact = false,
): TemplateResult {
  return html`<oo-field
    data-path=${keyOf(path)}
    .schema=${schema}
    .value=${value === '' ? undefined : value}
    .path=${path}
    .entries=${entries}
    .label=${label}
    .help=${help}
    .remark=${remark}
    .problem=${troubleAt(sheet, path)}
    noPicture
    ?compact=${compact}
  ></oo-field>`;
}

/** Numbers that belong together, side by side under one name. */
export function together(
  sheet: Sheet,
  title: string,
  said: string,
  boxes: readonly { readonly schema: z.ZodType; readonly path: Path; readonly filled?: unknown; readonly label: string }[],
): TemplateResult {
  const marked = boxes.some(({ path, filled }) => filled !== undefined && valueAt(sheet.draft, path) === undefined);
  return html`<div class="answer">
    <fieldset class="together">
      <legend>${title}</legend>
      <div class="line">
        ${boxes.map(({ schema, path, filled, label }) => field(sheet, schema, path, valueAt(sheet.draft, path) ?? filled, { label }, true))}
      </div>
      ${said === '' ? nothing : html`<p class="said">${said}</p>`}
    </fieldset>
    ${marked ? html`<span class="filled">${start.filled}</span>` : nothing}
  </div>`;
}
