import { afterEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { OoSheet } from '../../../src/components/tell/sheet.ts';
import { storyFragment } from '../../../src/components/tell/story-link.ts';
import { OoStoryShare } from '../../../src/components/tell/story-share.ts';
import { OoStory } from '../../../src/components/tell/story.ts';
import { FIRST_CHOICES, NOTHING_LEFT_OUT } from '../../../src/handout/choices.ts';
import { CAUTIONS, handoutOf } from '../../../src/handout/handout.ts';
import { readLink } from '../../../src/storage/link.ts';
import { share } from '../../../src/text/share.ts';
import { story } from '../../../src/text/story.ts';
import { tell } from '../../../src/text/tell.ts';
import { breaches, find, settled } from '../fields/mount.ts';
import { button, expectSound, peachOutlook, PEACH, put, said, TODAY } from './desk.ts';

afterEach(() => void Reflect.deleteProperty(navigator, 'clipboard'));

describe('oo-sheet', () => {
  const open = async (width: number) => {
    const handout = handoutOf(PEACH, await peachOutlook(), FIRST_CHOICES, { date: TODAY, link: null }, '');
    return put(Object.assign(new OoSheet(), { handout }), { width });
  };

  it.each([1100, 390, 320])('has no breach of WCAG 2.2 AA at %i px, and nothing sideways', async (width) => {
    const sheet = await open(width);
    expect(await breaches(sheet)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('says every caution, and sets the paper only while it is there', async () => {
    const before = document.adoptedStyleSheets.length;
    const sheet = await open(1100);
    for (const caution of CAUTIONS) expect(said(sheet.renderRoot)).toContain(caution.replaceAll(/\s+/g, ' '));
    const rules = () => document.adoptedStyleSheets.slice(before).flatMap(({ cssRules }) => [...cssRules].map(({ cssText }) => cssText));
    expect(rules().join()).toMatch(/@page.*a4/i);
    sheet.remove();
    expect(document.adoptedStyleSheets).toHaveLength(before);
  });
});

describe('oo-story-share', () => {
  const LINK = 'https://orchard.example/#/story/abc';

  it.each([1100, 320])('is sound at %i px', async (width) => expectSound(await put(Object.assign(new OoStoryShare(), { link: LINK }), { width })));

  it('says that it was copied, and where the browser forbids that, marks it to be copied by hand', async () => {
    const element = await put(Object.assign(new OoStoryShare(), { link: LINK }));
    let allowed = true;
    const writeText = vi.fn(() => (allowed ? Promise.resolve() : Promise.reject(new Error('no'))));
    Object.defineProperty(navigator, 'clipboard', { value: { writeText }, configurable: true });
    button(element.renderRoot, share.copy).click();
    const status = () => said(find(element.renderRoot, HTMLElement, "[role='status']"));
    await vi.waitFor(() => expect(status()).toBe(share.copied));
    expect(writeText).toHaveBeenCalledWith(LINK);
    allowed = false;
    button(element.renderRoot, share.copy).click();
    await vi.waitFor(() => expect(status()).toBe(share.notCopied));
    const box = find(element.renderRoot, HTMLTextAreaElement, 'textarea');
    expect([box.selectionStart, box.selectionEnd]).toEqual([0, LINK.length]);
    expect(find(element.renderRoot, HTMLAnchorElement, 'a').textContent).toBe(tell.look);
  });
});

describe('oo-story', () => {
  const open = async (width = 390) => {
    const fragment = await storyFragment(PEACH, NOTHING_LEFT_OUT);
    const element = await put(Object.assign(new OoStory(), { fragment, read: readLink }), { width, fresh: true });
    await vi.waitFor(() => expect(said(find(element.renderRoot, HTMLElement, 'h1'))).not.toBe(story.waiting), { timeout: 10_000 });
    await vi.waitFor(() => expect(said(find(element.renderRoot, HTMLElement, '.counting'))).toBe(''), { timeout: 10_000 });
    return element;
  };

  it('is told in four steps by keyboard, each without a breach, and its heading takes the focus', async () => {
    const element = await open();
    const places = [];
    for (const step of story.steps) {
      expect(said(find(element.renderRoot, HTMLElement, "[aria-current='step']"))).toBe(String(story.steps.indexOf(step) + 1));
      // The page's own heading and landmark are the story's here.
      expect((await breaches(element)).filter((fault) => !/^(landmark|page-has-heading)/.test(fault))).toEqual([]);
      expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
      places.push(said(find(element.renderRoot, HTMLElement, 'h1')));
      if (step === story.steps.at(-1)) break;
      button(element.renderRoot, story.next).focus();
      await userEvent.keyboard('{Enter}');
      await settled();
      expect(element.shadowRoot?.activeElement?.localName).toBe('h1');
    }
    expect(new Set(places).size).toBe(story.steps.length);
    expect(button(element.renderRoot, story.next).disabled).toBe(true);
    await page.viewport(1100, 900);
  });

  it('gives the programme on as a copy, and says so where the link is damaged', async () => {
    const element = await open();
    const given = vi.fn();
    element.addEventListener('oo-link-choice', ({ detail }) => void given(detail));
    button(element.renderRoot, story.own).click();
    expect(given).toHaveBeenCalledWith(expect.objectContaining({ name: PEACH.title, how: 'keep' }));
    element.fragment = '#/story/nothing-of-the-kind';
    await vi.waitFor(() => expect(said(find(element.renderRoot, HTMLElement, "[role='alert'] h1"))).toBe(story.damaged));
  });
});
