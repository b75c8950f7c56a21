import { html, render, type TemplateResult } from 'lit';
import { page } from 'vitest/browser';
import ten from '../../../sims/examples/red-pear-ten-seasons.json';
import type { OoChange } from '../../../src/components/fields/change.ts';
import { setAt } from '../../../src/model/edits.ts';
import type { Batch } from '../../../src/model/log.ts';
import type { Problem } from '../../../src/model/problem.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { parseProgramme } from '../../../src/model/read.ts';
import { everything, mount, settled } from '../fields/mount.ts';

export const TODAY = '2036-11-25';
export const tenSeasons = (): Programme => programmeSchema.parse(ten);

/** Holds a document for a part of the log, takes every edit that reads, and remembers what undo would call it. */
export class LogDesk {
  problems: readonly Problem[] = [];
  readonly edits: OoChange[] = [];
  private place: HTMLElement | null = null;

  constructor(
    public programme: Programme,
    private readonly draw: (desk: LogDesk) => TemplateResult,
  ) {
    this.read(programme);
  }

  private read(document: unknown): void {
    const reading = parseProgramme(document);
    if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join('; '));
    this.programme = reading.programme;
    this.problems = reading.notes;
  }

  batch(id: string): Batch {
    const found = this.programme.log.batches.find((batch) => batch.id === id);
    if (!found) throw new Error(`There is no batch “${id}”.`);
    return found;
  }

  async open(width = 1100): Promise<HTMLElement> {
    await page.viewport(width, 900);
    this.place = await mount(this.wrapped());
    return this.place;
  }

  private wrapped(): TemplateResult {
    return html`<div @oo-change=${(event: CustomEvent<OoChange>) => this.take(event.detail)}>
      <h1>Log</h1>
      <h2>Season log</h2>
      ${this.draw(this)}
    </div>`;
  }

  private take(change: OoChange): void {
    this.edits.push(change);
    this.read(setAt(this.programme, change.path, change.value));
    if (this.place) render(this.wrapped(), this.place);
  }
}

/** A button by what a screen reader calls it. */
export function button(root: ParentNode, name: string): HTMLButtonElement {
  const found = everything(root).find(
    (element) => element instanceof HTMLButtonElement && (element.ariaLabel ?? element.textContent.replace(/\s+/g, ' ').trim()) === name,
  );
  if (!(found instanceof HTMLButtonElement)) throw new Error(`No button “${name}”.`);
  return found;
}

/** A choice or a box by the words of its label, inside the group of a legend where one is given. */
export function labelled(root: ParentNode, words: string, legend?: string): HTMLInputElement {
  const groups =
    legend === undefined ? [root] : everything(root).filter((each) => each.matches('fieldset') && each.querySelector('legend')?.textContent === legend);
  const found = groups
    .flatMap((group) => everything(group))
    .filter((element) => element.matches('label'))
    .find((label) => label.textContent.replace(/\s+/g, ' ').trim() === words)
    ?.querySelector('input');
  if (!found) throw new Error(`Nothing is labelled “${words}”.`);
  return found;
}

/** Buttons, boxes and lists to choose from that a finger would miss: lower than 44 px. A choice counts with the label around it. */
export async function tooSmall(root: ParentNode): Promise<string[]> {
  await settled();
  return everything(root)
    .filter((element) => element.matches('button, input, select, textarea, summary') && element.checkVisibility())
    .filter(
      (element) => (element.matches('[type=radio], [type=checkbox]') ? (element.closest('label') ?? element) : element).getBoundingClientRect().height < 43.5,
    )
    .map((element) => `${element.tagName} ${element.textContent.trim() || (element.closest('label')?.textContent.trim() ?? '')}`);
}
