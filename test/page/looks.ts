import type { Page } from 'playwright';
import { LATIN } from '../../src/components/pictures-out/faces.ts';

/** What each look needs in the page: every element through all shadow roots, and whether it is seen. */
const HELPERS = `
  const all = (root = document.body, found = []) => {
    for (const child of root.children) {
      if (['SCRIPT', 'STYLE', 'TEMPLATE'].includes(child.tagName)) continue;
      found.push(child);
      if (child.shadowRoot) all(child.shadowRoot, found);
      all(child, found);
    }
    return found;
  };
  const isSeen = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !element.closest('.visually-hidden');
  const plain = (text) => (text ?? '').replace(/\\s+/g, ' ').trim();
  const named = (element) => element.tagName.toLowerCase() + (element.className?.baseVal ?? element.className ? '.' + (element.className?.baseVal ?? element.className) : '') + ' ' + plain(element.textContent).slice(0, 60);
`;

/** As one text: Playwright would go through thousands of small objects one by one, on both sides. */
const ask = async <T>(page: Page, script: string): Promise<T> =>
  JSON.parse(await page.evaluate<string>(`JSON.stringify((() => { ${HELPERS} ${script} })())`)) as T;

/** Texts that their own box cuts off, sideways or below. */
export const cutTexts = (page: Page): Promise<string[]> =>
  ask(
    page,
    `// A box as high as its lines may cut off room below the letters, not letters.
    const TAIL = 4;
    return all()
      .filter((element) => element instanceof HTMLElement && isSeen(element) && plain(element.textContent) !== '' && !element.closest('select, textarea'))
      .filter((element) => {
        const { overflowX, overflowY } = getComputedStyle(element);
        const hides = (how) => how === 'hidden' || how === 'clip';
        return (hides(overflowX) && element.scrollWidth > element.clientWidth + 1) || (hides(overflowY) && element.scrollHeight > element.clientHeight + TAIL);
      })
      .map(named);`,
  );

/** Elements that would move or fade, and whatever is moving now. */
export const moving = (page: Page): Promise<string[]> =>
  ask(
    page,
    `const lasts = (list) => list.split(',').some((time) => parseFloat(time) > 0);
    return [
      ...all().filter((element) => {
        const { transitionDuration, animationName, animationDuration, scrollBehavior } = getComputedStyle(element);
        return lasts(transitionDuration) || (animationName !== 'none' && lasts(animationDuration)) || scrollBehavior === 'smooth';
      }).map(named),
      ...document.getAnimations().map((animation) => 'under way: ' + animation.constructor.name),
    ];`,
  );

/** How a drawn part or the border of a control stands out from the page, as its best contrast; 1 where nothing is painted. */
export interface Painted {
  readonly what: string;
  readonly contrast: number;
}

/** Every drawn part of the pictures and every border of a control, in the order of the page. */
export const painted = (page: Page): Promise<Painted[]> =>
  ask(
    page,
    `const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    const channels = (colour) => {
      pen.clearRect(0, 0, 1, 1);
      pen.fillStyle = '#0000';
      pen.fillStyle = colour;
      pen.fillRect(0, 0, 1, 1);
      return [...pen.getImageData(0, 0, 1, 1).data];
    };
    // WCAG 2.2, definitions of “relative luminance” and “contrast ratio”.
    const light = ([r, g, b]) => [r, g, b].map((c) => c / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)).reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
    const known = new Map();
    const ground = light(channels(getComputedStyle(document.documentElement).backgroundColor));
    const contrast = (colour) => {
      if (!known.has(colour)) {
        const found = colour === 'none' || colour.startsWith('url') ? null : channels(colour);
        const own = found && found[3] > 100 ? light(found) : null;
        known.set(colour, own === null ? 1 : (Math.max(own, ground) + 0.05) / (Math.min(own, ground) + 0.05));
      }
      return known.get(colour);
    };
    // A tint under other marks is no mark of its own.
    const shown = (style, own) => parseFloat(style.opacity) * parseFloat(style[own]) > 0.4;
    return all().filter(isSeen).flatMap((element) => {
      const style = getComputedStyle(element);
      if (element instanceof SVGGeometryElement) return [{ what: named(element), contrast: Math.max(shown(style, 'fillOpacity') ? contrast(style.fill) : 1, parseFloat(style.strokeWidth) > 0 && shown(style, 'strokeOpacity') ? contrast(style.stroke) : 1) }];
      if (!element.matches('button, input, select, textarea') || element.matches('[type=checkbox], [type=radio], [type=range]')) return [];
      const widest = ['Top', 'Bottom', 'Left'].map((side) => parseFloat(style['border' + side + 'Width']) > 0 && style['border' + side + 'Style'] !== 'none' ? contrast(style['border' + side + 'Color']) : 1);
      return [{ what: named(element), contrast: Math.max(...widest) }];
    });`,
  );

/** Letters drawn in pictures that the fonts in a saved picture do not hold: whoever opens it sees those of another font. */
export async function lettersNotInFonts(page: Page): Promise<string[]> {
  const drawn = await ask<string>(
    page,
    `return all().filter((element) => element instanceof SVGTextElement && isSeen(element)).map((element) => element.textContent).join('');`,
  );
  const within = [...LATIN.matchAll(/U\+([\dA-F]+)(?:-([\dA-F]+))?/g)].map(([, from = '', to]) => [parseInt(from, 16), parseInt(to ?? from, 16)] as const);
  return [...new Set(drawn)].filter((letter) => !within.some(([from, to]) => (letter.codePointAt(0) ?? 0) >= from && (letter.codePointAt(0) ?? 0) <= to));
}

/** A picture and what is read aloud in its place. */
export interface Spoken {
  readonly picture: string;
  /** Its name: the heading or label. */
  readonly name: string;
  /** What is said of it beside its name. */
  readonly says: string;
}

/**
 * Every picture that is seen, as wide as a picture: what its own label says, or the description of the part it stands in, or else the title of that part, which
 * may be the finding itself. A sketch inside a line of words that say the same is left out.
 */
export const spoken = (page: Page): Promise<Spoken[]> =>
  ask(
    page,
    `const byId = (element, attribute) => (element.getAttribute(attribute) ?? '').split(' ').filter(Boolean).map((id) => plain(element.getRootNode().getElementById?.(id)?.textContent)).join(' ').trim();
    const outwards = (element) => element.parentElement ?? (element.getRootNode() instanceof ShadowRoot ? element.getRootNode().host : null);
    const up = (element, fits) => {
      for (let at = element; at; at = outwards(at)) if (fits(at)) return at;
      return null;
    };
    const isSketch = (svg) => plain(svg.closest('[aria-hidden=true]')?.closest('li, td, th, p, label, button, dd, dt')?.textContent) !== '';
    return all().filter((element) => element instanceof SVGSVGElement && isSeen(element) && !isSketch(element) && element.getBoundingClientRect().width > 150 && element.querySelector('path, line, circle, rect, text')).map((svg) => {
      const image = up(svg, (at) => at.matches('[role=img]'));
      const parts = [];
      for (let at = svg; at; at = outwards(at)) if (at.matches('section[aria-labelledby], section[aria-label]')) parts.push(at);
      const name = parts.map((part) => part.getAttribute('aria-label') ?? byId(part, 'aria-labelledby')).join(' ');
      const described = parts.map((part) => byId(part, 'aria-describedby')).join(' ');
      const label = image ? image.getAttribute('aria-label') ?? byId(image, 'aria-labelledby') : '';
      return {
        picture: (svg.getRootNode().host?.localName ?? '') + ' ' + (svg.getAttribute('class') ?? svg.parentElement?.className ?? ''),
        name,
        says: plain([label, described].join(' ')) || name,
      };
    });`,
  );
