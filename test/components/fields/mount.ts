import axe from 'axe-core';
import { html, render, type TemplateResult } from 'lit';
import { afterEach, expect } from 'vitest';
import { page } from 'vitest/browser';
import type { OoChange } from '../../../src/components/fields/change.ts';
import { OoForm } from '../../../src/components/fields/form.ts';
import { setAt } from '../../../src/model/edits.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import type { Path } from '../../../src/model/walk.ts';
import { dressPage } from '../../../src/styles/page.ts';
import { samplePear } from './sample.ts';

dressPage(document);
document.documentElement.lang = 'en';
afterEach(() => document.body.replaceChildren());

/** Puts a template on the page and waits until every element in it has drawn itself. */
export async function mount(template: TemplateResult): Promise<HTMLElement> {
  const place = document.createElement('main');
  document.body.append(place);
  render(template, place);
  await settled();
  return place;
}

/** Waits until nothing inside is about to draw. */
export async function settled(): Promise<void> {
  for (let round = 0; round < 5; round++) {
    for (const element of everything(document.body)) if ('updateComplete' in element) await element.updateComplete;
    await Promise.resolve();
  }
}

/** Every element below a node, through open shadow roots. */
export function everything(root: ParentNode): Element[] {
  const own = root instanceof Element && root.shadowRoot ? everything(root.shadowRoot) : [];
  return [...own, ...[...root.querySelectorAll('*')].flatMap((element) => [element, ...(element.shadowRoot ? everything(element.shadowRoot) : [])])];
}

/** The one element that a selector finds below a node, through shadow roots; `place` chooses among several. */
export function find<T extends Element>(root: ParentNode, type: abstract new () => T, selector: string, place = 0): T {
  const found = everything(root).filter((element) => element.matches(selector))[place];
  if (!(found instanceof type)) throw new Error(`Nothing like “${selector}”.`);
  return found;
}

export const boxOf = (root: ParentNode, place = 0): HTMLInputElement => find(root, HTMLInputElement, 'input.number', place);
export const problemOf = (root: ParentNode): string =>
  everything(root)
    .filter((element) => element.matches('.problem'))
    .map((element) => element.textContent.trim())
    .filter(Boolean)
    .join(' | ')
    .replaceAll('\u00a0', ' ');

/** Collects the edits that leave a node. */
export function edits(place: EventTarget): OoChange[] {
  const seen: OoChange[] = [];
  place.addEventListener('oo-change', (event) => {
    if (event instanceof CustomEvent) seen.push(event.detail as OoChange);
  });
  return seen;
}

/** Sets what stands in a box the way typing over it does. */
export function typeInto(box: HTMLInputElement | HTMLTextAreaElement, text: string): void {
  box.value = text;
  box.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
}

export function choose(select: HTMLSelectElement, value: string): void {
  select.value = value;
  expect(select.value, 'an option that is there').toBe(value);
  select.dispatchEvent(new Event('change', { bubbles: true }));
}

/** Looks for breaches of WCAG 2.2 A and AA and of axe’s own good practice. */
export async function breaches(place: Element): Promise<string[]> {
  const { violations, passes } = await axe.run(place, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
  expect(passes.length, 'axe looked at something').toBeGreaterThan(3);
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`));
}

/** A form over a whole programme that takes every edit which leaves a sound document, as the app does. */
export class Desk {
  programme: Programme = samplePear();
  readonly edits: OoChange[] = [];
  readonly form = new OoForm();

  constructor(path: Path) {
    this.form.path = path;
    this.form.programme = this.programme;
    this.form.addEventListener('oo-change', (event) => {
      this.edits.push(event.detail);
      this.put(event.detail.path, event.detail.value);
    });
  }

  async open(width = 1100): Promise<this> {
    await page.viewport(width, 900);
    await mount(html`<div data-mark="D">${this.form}</div>`);
    return this;
  }

  /** An edit from anywhere: refused, with words beside it, if the document would not be sound. */
  put(path: Path, value: unknown): void {
    const read = programmeSchema.safeParse(setAt(this.programme, path, value));
    if (read.success) this.programme = read.data;
    this.form.programme = this.programme;
    this.form.problems = read.success
      ? []
      : read.error.issues.map((issue) => ({ path: issue.path.filter((key) => typeof key !== 'symbol'), message: issue.message }));
  }

  /** What is drawn for a path. */
  at(path: Path): HTMLElement {
    return find(this.form.renderRoot, HTMLElement, `[data-path="${path.join('/')}"]`);
  }

  /** A button by what a screen reader calls it. */
  button(name: string): HTMLButtonElement {
    const button = everything(this.form.renderRoot).find(
      (element) => element instanceof HTMLButtonElement && (element.ariaLabel ?? element.textContent.trim()) === name,
    );
    if (!(button instanceof HTMLButtonElement)) throw new Error(`No button “${name}”.`);
    return button;
  }

  get words(): string {
    return everything(this.form.renderRoot)
      .filter((element) => element.childElementCount === 0)
      .map((element) => element.textContent.trim())
      .join(' ');
  }
}
