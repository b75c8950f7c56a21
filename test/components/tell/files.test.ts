import { describe, expect, it, vi } from 'vitest';
import ICAL from 'ical.js';
import { Card } from '../../../src/components/tell/card.ts';
import { Figures } from '../../../src/components/tell/figures.ts';
import { OoSealed } from '../../../src/components/tell/sealed.ts';
import { cardText } from '../../../src/text/card.ts';
import { figures } from '../../../src/text/exports.ts';
import { sealed } from '../../../src/text/tell.ts';
import { choose, find, settled } from '../fields/mount.ts';
import { button, expectSound, give, peachOutlook, PEACH, put, said, saved, TODAY } from './desk.ts';

const WIDTHS = [1100, 320] as const;

describe('oo-card', () => {
  const open = (width: number) => put(Object.assign(new Card(), { today: TODAY }), { width });

  it.each(WIDTHS)('is sound at %i px', async (width) => expectSound(await open(width)));

  it('shows the jobs of the plan and season chosen, and its calendar holds the same ones', async () => {
    const card = await open(1100);
    const [mark, year] = [PEACH.plans[0]?.mark ?? '', PEACH.startYear + 1];
    choose(find(card.renderRoot, HTMLSelectElement, "select[name='season']"), String(year));
    await settled();
    const frame = find(card.renderRoot, HTMLIFrameElement, 'iframe');
    expect(frame.title).toBe(cardText.preview);
    expect(frame.srcdoc).toContain(cardText.title(`Season ${String(year)}`));
    const files = await saved(() => button(card.renderRoot, cardText.calendar).click(), 1);
    const [[name, text] = ['', '']] = files;
    expect(name).toMatch(new RegExp(`-${mark.toLowerCase()}-${String(year)}\\.ics$`));
    const events = new ICAL.Component(ICAL.parse(text) as ConstructorParameters<typeof ICAL.Component>[0]).getAllSubcomponents('vevent');
    expect(events.length).toBeGreaterThan(0);
    for (const event of events) expect(String(event.getFirstPropertyValue('dtstart'))).toMatch(new RegExp(`^(${String(year)}|${String(year + 1)})-`));
    await settled();
    expect(said(find(card.renderRoot, HTMLElement, "[role='status']"))).toContain(name);
  });
});

describe('oo-figures', () => {
  it.each(WIDTHS)('is sound at %i px', async (width) =>
    expectSound(await put(Object.assign(new Figures(), { outlook: await peachOutlook(), today: TODAY }), { width })),
  );

  it('saves every future, and waits as long as futures are counted', async () => {
    const element = await put(new Figures());
    expect(button(element.renderRoot, figures.runs).disabled).toBe(true);
    expect(said(find(element.renderRoot, HTMLElement, "[role='status']"))).toBe(figures.waiting);
    expect(button(element.renderRoot, figures.answers).disabled, 'no question was answered').toBe(true);
    element.outlook = await peachOutlook();
    await settled();
    const files = await saved(() => button(element.renderRoot, figures.runs).click(), 1);
    const lines = [...files.values()][0]?.trim().split('\n') ?? [];
    expect(lines.filter((line) => !line.startsWith('#')).length - 1).toBe(PEACH.runs * PEACH.plans.length);
  });
});

describe('oo-sealed', () => {
  const open = async (width = 1100) => put(Object.assign(new OoSealed(), { programme: PEACH, outlook: await peachOutlook(), today: TODAY }), { width });
  const sealedFile = async (element: OoSealed): Promise<string> =>
    [...(await saved(() => button(element.renderRoot, sealed.seal).click(), 1)).values()][0] ?? '';
  const openFile = async (element: OoSealed, content: string, awaited: string) => {
    give(button(element.renderRoot, sealed.open), 'peach.forecast.json', content);
    await vi.waitFor(() => expect(element.renderRoot.querySelector(awaited)).not.toBeNull());
    await settled();
  };

  it.each(WIDTHS)('is sound at %i px, with a forecast open', async (width) => {
    const element = await open(width);
    await openFile(element, await sealedFile(element), '.opened');
    await expectSound(element);
  });

  it('compares what was sealed with today, in words and a table; the same forecast makes no difference', async () => {
    const element = await open();
    await openFile(element, await sealedFile(element), '.opened');
    const opened = find(element.renderRoot, HTMLElement, '.opened');
    expect(said(find(element.renderRoot, HTMLElement, '.opened h3'))).toContain(sealed.headline('25 November 2026'));
    expect(said(opened)).toContain(sealed.same);
    const changes = [...opened.querySelectorAll('li')].map(said);
    expect(changes).toHaveLength(PEACH.plans.length);
    for (const change of changes) expect(change).toMatch(/no clear difference\.$/);
    const rows = [...opened.querySelectorAll('tbody tr')].map((row) => [...row.querySelectorAll('td')].map(said));
    expect(rows).toHaveLength(PEACH.lastYear - PEACH.startYear + 1);
    for (const [then, now] of rows) expect(then).toBe(now);
    button(element.renderRoot, sealed.close).click();
    await settled();
    expect(element.renderRoot.querySelector('.opened')).toBeNull();
  });

  it('refuses one that was changed, and says what to do', async () => {
    const element = await open();
    const text = await sealedFile(element);
    await openFile(element, text.replace('"title": "', '"title": "Not '), '.problems');
    expect(said(find(element.renderRoot, HTMLElement, "[role='alert']"))).toContain(sealed.damaged.broken);
    expect(element.renderRoot.querySelector('.opened')).toBeNull();
  });
});
