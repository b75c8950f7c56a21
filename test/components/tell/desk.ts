import { ContextProvider } from '@lit/context';
import { expect, vi } from 'vitest';
import { page } from 'vitest/browser';
import peach from '../../../sims/examples/peach-quick.json';
import { answersContext, programmeContext, runsContext } from '../../../src/components/contexts.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import type { Outlook } from '../../../src/results/outlook.ts';
import { AnswersStore } from '../../../src/state/answers-store.ts';
import { outlookOf } from '../../../src/state/outlook.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { RunsStore } from '../../../src/state/runs-store.ts';
import { inlineThread } from '../../../src/workers/inline.ts';
import { poolRunner } from '../../../src/workers/runner.ts';
import { breaches, everything, settled } from '../fields/mount.ts';

/** The quick peach with few futures: an invented example. */
export const PEACH: Programme = { ...programmeSchema.parse(peach), runs: 100 };
export const TODAY = '2026-11-25';

/** One count for all tests of a file. */
let counted: Promise<RunsStore> | null = null;
async function count(): Promise<RunsStore> {
  const runs = new RunsStore(poolRunner(() => inlineThread(), 1));
  await runs.update(PEACH);
  return runs;
}

export async function peachOutlook(): Promise<Outlook> {
  const found = outlookOf(PEACH, (await (counted ??= count())).state);
  if (!found) throw new Error('Nothing was counted.');
  return found;
}

/** Puts an element of the page “What do I tell others?” on a page with the peach and its results. */
export async function put<T extends HTMLElement>(element: T, { width = 1100, fresh = false } = {}): Promise<T> {
  await page.viewport(width, 900);
  const place = document.createElement('main');
  // Their titles are h2: on the page a h1 stands before them.
  place.innerHTML = '<h1>What do I tell others?</h1>';
  document.body.append(place);
  new ContextProvider(place, { context: programmeContext, initialValue: new ProgrammeStore(PEACH) });
  new ContextProvider(place, { context: runsContext, initialValue: fresh ? new RunsStore(poolRunner(() => inlineThread(), 1)) : await (counted ??= count()) });
  new ContextProvider(place, { context: answersContext, initialValue: new AnswersStore(PEACH, { ask: () => new Promise(() => undefined) }) });
  place.append(element);
  await document.fonts.ready;
  await settled();
  return element;
}

/** No breach of WCAG 2.2 AA in light and dark, no sideways scroll, and every target high enough for a thumb. */
export async function expectSound(element: HTMLElement): Promise<void> {
  for (const theme of ['light', 'dark']) {
    document.documentElement.dataset['theme'] = theme;
    expect(await breaches(element), theme).toEqual([]);
  }
  delete document.documentElement.dataset['theme'];
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(window.innerWidth);
  for (const target of everything(element).filter((each) => each.matches('button, select, a.button, summary')))
    if (target.getBoundingClientRect().height > 0)
      expect([target.textContent.trim(), target.getBoundingClientRect().height >= 44]).toEqual([target.textContent.trim(), true]);
}

export function button(root: ParentNode, name: string): HTMLButtonElement {
  const found = everything(root).find((each) => each instanceof HTMLButtonElement && (each.ariaLabel ?? each.textContent.trim()) === name);
  if (!(found instanceof HTMLButtonElement)) throw new Error(`No button “${name}”.`);
  return found;
}

/** Every word below a node, as it is read. */
export const said = (root: Element | DocumentFragment): string => root.textContent.replaceAll(/[\u00a0\s]+/gu, ' ').trim();

/** Another way to click until it is undone: the browser would save, or open a dialog of its own. */
function clicking(click: (this: HTMLElement) => void): () => void {
  const own = Object.getOwnPropertyDescriptor(HTMLElement.prototype, 'click');
  HTMLElement.prototype.click = click;
  return () => {
    if (own) Object.defineProperty(HTMLElement.prototype, 'click', own);
  };
}

/** Files that would be saved while something is done, by their names. */
export async function saved(deed: () => void, files: number): Promise<ReadonlyMap<string, string>> {
  const found: (readonly [string, Promise<string>])[] = [];
  const undo = clicking(function () {
    if (this instanceof HTMLAnchorElement) found.push([this.download, fetch(this.href).then((response) => response.text())]);
    else this.dispatchEvent(new MouseEvent('click', { bubbles: true, composed: true }));
  });
  deed();
  await vi.waitFor(() => expect(found).toHaveLength(files));
  undo();
  return new Map(await Promise.all(found.map(async ([name, text]) => [name, await text] as const)));
}

/** Presses a button that asks for a file, and answers with this one. */
export function give(asks: HTMLButtonElement, name: string, content: string): void {
  const undo = clicking(function () {
    if (!(this instanceof HTMLInputElement)) return;
    const given = new DataTransfer();
    given.items.add(new File([content], name));
    this.files = given.files;
    this.dispatchEvent(new Event('change'));
  });
  asks.dispatchEvent(new MouseEvent('click', { bubbles: true, composed: true }));
  undo();
}
