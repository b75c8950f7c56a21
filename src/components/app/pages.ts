import { html, type TemplateResult } from 'lit';
import { app, could, have, likely } from '../../text/app.ts';
import { pay } from '../../text/pay.ts';
import '../pages/do.ts';
import '../pages/likely.ts';

/** The pages that answer a question, by their address after “#/”, in the order of the rail. */
export const PAGES = {
  have: { question: have.question, draw: () => html`<oo-have></oo-have>` },
  do: { question: could.question, draw: () => html`<oo-do></oo-do>` },
  likely: { question: likely.question, draw: () => html`<oo-likely></oo-likely>` },
  pay: { question: pay.question, draw: () => html`<oo-pay></oo-pay>` },
  happened: { question: app.rail.happened, draw: () => html`<oo-happened></oo-happened>` },
  tell: { question: app.rail.tell, draw: () => html`<oo-tell></oo-tell>` },
} as const satisfies Readonly<Record<string, { readonly question: string; readonly draw: () => TemplateResult }>>;

export type PageName = keyof typeof PAGES;
/** What an address leads to: a page, the list of programmes, the questions for a new one, the guide, a programme that came with a link, or its story. */
export type Place = PageName | 'mine' | 'start' | 'guide' | 'open' | 'story';

/** Pages that were asked for by names that no longer exist, or none, lead to the answer. */
export function placeOf(address: string): Place {
  const name = address.replace(/^#\//, '');
  if (name.startsWith('open/')) return 'open';
  if (name.startsWith('story/')) return 'story';
  if (name.startsWith('start/')) return 'start';
  if (name.startsWith('guide/') || name === 'guide') return 'guide';
  if (name === 'mine' || name === 'start' || isPage(name)) return name;
  return 'likely';
}

/** Forms, for which the first pictures need not wait: nobody types before they stand. */
const forms = () => import('../fields/form.ts');

/** Code of places that few visits begin with, or that comes after what stands there first. */
const LATER: Partial<Record<Place, () => Promise<unknown>>> = {
  have: () => import('../pages/have.ts'),
  do: forms,
  likely: forms,
  pay: () => import('../pages/pay/pay.ts'),
  happened: () => import('../pages/happened/happened.ts'),
  tell: () => import('../pages/tell/tell.ts'),
  story: () => import('../tell/story.ts'),
  open: () => import('./opened-link.ts'),
  mine: () => import('../pages/mine.ts'),
  start: () => import('../pages/start/start.ts'),
  guide: () => import('../pages/guide/guide.ts'),
};

/**
 * Fetches the code of a place, unless it is here.
 * @throws TypeError when it cannot be had, as without a connection before the page was kept on the device
 */
export async function fetchPlace(place: Place): Promise<void> {
  await LATER[place]?.();
}

const isPage = (name: string): name is PageName => Object.hasOwn(PAGES, name);
