import { ContextProvider } from '@lit/context';
import { html } from 'lit';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { programmeContext } from '../../../src/components/contexts.ts';
import { reachOf } from '../../../src/components/share/reach.ts';
import { MOST_FOR_MAIL, OoShare } from '../../../src/components/share/share.ts';
import { programmeSchema } from '../../../src/model/programme.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { LINK, readLink } from '../../../src/storage/link.ts';
import { share as words } from '../../../src/text/share.ts';
import { document as programmeDocument, generation, plans } from '../../engine/programmes.ts';
import { breaches, find, mount, settled } from '../fields/mount.ts';

const redPear = programmeSchema.parse(pear);
/** Two trees, one gene, one generation. */
const small = programmeDocument({ plans: plans([generation('g', 3)]) });

afterEach(() => void Reflect.deleteProperty(navigator, 'clipboard'));

async function open(input: unknown, width = 1100): Promise<OoShare> {
  await page.viewport(width, 900);
  const store = new ProgrammeStore(programmeSchema.parse(input));
  const element = new OoShare();
  // The page of the tests has an address of its own computer.
  element.reach = 'all';
  const place = document.createElement('div');
  new ContextProvider(place, { context: programmeContext, initialValue: store });
  place.append(element);
  await mount(html`${place}`);
  await userEvent.click(find(element.renderRoot, HTMLButtonElement, 'button'));
  await vi.waitFor(() => expect(element.renderRoot.querySelector('textarea')).not.toBeNull());
  await settled();
  return element;
}

const shown = (element: OoShare): string => find(element.renderRoot, HTMLTextAreaElement, 'textarea').value;
const text = (element: OoShare): string => find(element.renderRoot, HTMLDialogElement, 'dialog').textContent.replace(/\s+/g, ' ');
const button = (element: OoShare, name: string): HTMLButtonElement => {
  const found = [...element.renderRoot.querySelectorAll('button')].find((each) => each.textContent.trim() === name);
  if (!found) throw new Error(`no “${name}”`);
  return found;
};

describe('oo-share', () => {
  it.each([1100, 320])('has no breach of WCAG 2.2 AA, and no sideways scroll, at %i px', async (width) => {
    const element = await open(pear, width);
    expect(await breaches(element)).toEqual([]);
    const dialog = find(element.renderRoot, HTMLDialogElement, 'dialog');
    expect(dialog.open).toBe(true);
    expect(dialog.scrollWidth).toBeLessThanOrEqual(dialog.clientWidth);
    expect(dialog.getBoundingClientRect().right).toBeLessThanOrEqual(width);
    for (const each of element.renderRoot.querySelectorAll('button')) expect(each.getBoundingClientRect().height).toBeGreaterThanOrEqual(44);
  });

  it('shows a link to this page that holds the programme', async () => {
    const element = await open(pear);
    const [address, fragment] = shown(element).split('#');
    expect(address).toBe(location.href.split('#')[0]);
    expect(`#${String(fragment)}`.startsWith(LINK)).toBe(true);
    const reading = await readLink(`#${String(fragment)}`);
    expect(reading.ok && reading.programme).toEqual(redPear);
  });

  it('says how long it is, and offers the file where it is too long for mail', async () => {
    const element = await open(pear);
    const { length } = shown(element);
    expect(length).toBeGreaterThan(MOST_FOR_MAIL);
    expect(text(element).replace(/,/g, '')).toContain(`${String(length)} letters`);
    expect(text(element)).toMatch(/send the file/);
    expect(button(element, words.file).classList).toContain('main');
  });

  it('says so where it is short enough', async () => {
    const element = await open(small);
    // The page of the tests has an address of its own length; what counts is the whole.
    const { length } = shown(element);
    expect(length).toBeLessThanOrEqual(MOST_FOR_MAIL);
    expect(text(element)).toMatch(/short enough for a mail/);
    expect(button(element, words.copy).classList).toContain('main');
  });

  it('says so where nobody else can open it, and offers the file', async () => {
    const element = await open(small);
    element.reach = 'computer';
    await element.updateComplete;
    expect(text(element)).toContain(words.onlyHere);
    expect(button(element, words.file).classList).toContain('main');
    // Names of the computer itself: RFC 6761 (localhost), RFC 1122 (127/8), RFC 4291 (::1).
    for (const hostname of ['localhost', '127.0.0.1', '127.9.0.3', '[::1]']) expect(reachOf({ protocol: 'http:', hostname }), hostname).toBe('computer');
    for (const hostname of ['orchard.example', '192.0.2.7', 'localhost.example']) expect(reachOf({ protocol: 'https:', hostname }), hostname).toBe('all');
  });

  it('copies the link, or marks it where the browser forbids that', async () => {
    const taken: string[] = [];
    let allowed = true;
    const clipboard = {
      writeText: (words_: string) => (allowed ? Promise.resolve(void taken.push(words_)) : Promise.reject(new DOMException('no', 'NotAllowedError'))),
    };
    // Over the browser's own, which asks for a permission; taken away again below.
    Object.defineProperty(navigator, 'clipboard', { value: clipboard, configurable: true });
    const element = await open(pear);
    await userEvent.click(button(element, words.copy));
    await vi.waitFor(() => expect(find(element.renderRoot, HTMLElement, '[role=status]').textContent).toBe(words.copied));
    expect(taken).toEqual([shown(element)]);
    allowed = false;
    await userEvent.click(button(element, words.copy));
    await vi.waitFor(() => expect(find(element.renderRoot, HTMLElement, '[role=status]').textContent).toBe(words.notCopied));
    const area = find(element.renderRoot, HTMLTextAreaElement, 'textarea');
    expect(area.selectionEnd - area.selectionStart).toBe(shown(element).length);
  });

  it('closes on Escape and gives the focus back', async () => {
    const element = await open(pear);
    await userEvent.keyboard('{Escape}');
    expect(find(element.renderRoot, HTMLDialogElement, 'dialog').open).toBe(false);
    expect(element.shadowRoot?.activeElement?.textContent).toBe(words.open);
  });
});
