import { LitElement } from 'lit';
import { LIGHT } from './light.ts';

/**
 * How wide pictures are drawn for print, px. Print is 170 mm wide: words of 17 px come out at 8.7 points there, while what is drawn for a wide
 * screen would come out too small to read, and what is drawn for a phone would be longer than a page.
 */
const WIDTH = 900;
/** What the moment gives a picture: which plan is looked at, which place is read, how wide it is. */
const OF_THE_MOMENT: ReadonlySet<PropertyKey> = new Set(['lifted', 'chosen', 'stale', 'width', 'printing', 'bare', 'open']);
/** What belongs to the page around a picture, not to it. */
const BARE = `h2,.intro,.finding,.answer,.stale-words,.read,.screen-only,.beneath,.saves,details,fieldset,.keys,.plot,.place,.controls{display:none!important}
*,*::before,*::after{transition:none!important;animation:none!important}`;

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/**
 * Draws a picture of the page once more, out of sight: in light colours on white, as wide as paper wants it, with nothing looked at.
 * @param give does something with the element that holds it, before it goes again
 */
export async function redrawn<T>(host: LitElement, give: (drawn: HTMLElement) => T | Promise<T>): Promise<T> {
  const again = host.ownerDocument.createElement(host.localName);
  if (!(again instanceof LitElement)) throw new TypeError('This is no picture.');
  const { elementProperties } = host.constructor as typeof LitElement;
  for (const name of elementProperties.keys()) if (!OF_THE_MOMENT.has(name)) Reflect.set(again, name, Reflect.get(host, name));
  if ('still' in again) again.still = true;
  const room = host.ownerDocument.createElement('div');
  room.inert = true;
  room.setAttribute('aria-hidden', 'true');
  room.style.cssText = `position:fixed;left:0;top:0;z-index:-1;clip-path:inset(50%);pointer-events:none;width:${String(WIDTH)}px;color-scheme:light;forced-color-adjust:none;color:var(--ink)`;
  for (const [name, value] of LIGHT) room.style.setProperty(name, value);
  room.append(again);
  host.ownerDocument.body.append(room);
  try {
    await again.updateComplete;
    const bare = new CSSStyleSheet();
    bare.replaceSync(BARE);
    const { shadowRoot } = again;
    if (!shadowRoot) throw new TypeError('This is no picture.');
    shadowRoot.adoptedStyleSheets = [...shadowRoot.adoptedStyleSheets, bare];
    // Some parts are drawn once their widths are known.
    again.requestUpdate();
    await again.updateComplete;
    await pause(60);
    await again.updateComplete;
    const drawn = [...shadowRoot.children].find((child) => child instanceof HTMLElement && !child.matches('style, link'));
    if (!(drawn instanceof HTMLElement)) throw new TypeError('There is no picture.');
    return await give(drawn);
  } finally {
    room.remove();
  }
}
