/**
 * Drawings as they look on the page, made to stand alone: what style sheets say of them is written into them, in the plain words of SVG,
 * so that a program that knows no style sheets draws the same.
 */

export const SVG = 'http://www.w3.org/2000/svg';

/** Tenths of a px are enough, and keep files small. */
export const px = (value: number): string => String(Math.round(value * 10) / 10);

/** A part of a drawing. */
export function part(name: string, attributes: Readonly<Record<string, string | number>>, ...inside: (Element | string)[]): Element {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, typeof value === 'number' ? px(value) : value);
  element.append(...inside);
  return element;
}

/** What style sheets say of a drawing, and what it is where nothing is said; only the difference is written. */
const STYLES: Readonly<Record<string, string>> = {
  'stroke-width': '1px',
  'stroke-dasharray': 'none',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  opacity: '1',
  'text-anchor': 'start',
  'dominant-baseline': 'auto',
  'paint-order': 'normal',
};
const TEXT_STYLES: Readonly<Record<string, string>> = { 'font-weight': '400', 'font-style': 'normal' };
type Paint = 'fill' | 'stroke' | 'stop-color';

export interface Colour {
  /** As SVG of any age reads it. */
  readonly hex: string;
  readonly alpha: number;
}

const brush = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
const mixed = new Map<string, Colour>();
const two = (channel: number): string => Math.round(channel).toString(16).padStart(2, '0');

/** A colour of a style sheet, however it is mixed there. */
export function colourOf(style: string): Colour {
  const known = mixed.get(style);
  if (known) return known;
  const plain = /^rgba?\((\d+), (\d+), (\d+)(?:, ([\d.]+))?\)$/.exec(style);
  const colour = plain
    ? { hex: `#${[plain[1], plain[2], plain[3]].map((channel) => two(Number(channel))).join('')}`, alpha: Number(plain[4] ?? 1) }
    : painted(style);
  mixed.set(style, colour);
  return colour;
}

function painted(style: string): Colour {
  if (!brush) return { hex: '#000000', alpha: 1 };
  brush.clearRect(0, 0, 1, 1);
  brush.fillStyle = style;
  brush.fillRect(0, 0, 1, 1);
  const [red = 0, green = 0, blue = 0, alpha = 255] = brush.getImageData(0, 0, 1, 1).data;
  return { hex: `#${[red, green, blue].map(two).join('')}`, alpha: alpha / 255 };
}

function paint(copy: Element, look: CSSStyleDeclaration, name: Paint): void {
  const value = look.getPropertyValue(name);
  const opacity = Number(look.getPropertyValue(name === 'stop-color' ? 'stop-opacity' : `${name}-opacity`));
  const attribute = name === 'stop-color' ? 'stop-opacity' : `${name}-opacity`;
  copy.removeAttribute(attribute);
  if (value === 'none' || value.startsWith('url(')) {
    copy.setAttribute(name, value.replaceAll('"', '').replace(/^url\([^#)]*#/, 'url(#'));
    if (opacity !== 1) copy.setAttribute(attribute, String(opacity));
    return;
  }
  const { hex, alpha } = colourOf(value);
  copy.setAttribute(name, hex);
  if (alpha * opacity !== 1) copy.setAttribute(attribute, String(Math.round(alpha * opacity * 1000) / 1000));
}

/** Shapes are filled and stroked; stops have a colour; what only holds others needs neither. */
const isShape = (drawn: Element): boolean => drawn instanceof SVGGeometryElement || drawn instanceof SVGTextContentElement;

function dressOne(copy: Element, drawn: Element, look: CSSStyleDeclaration): void {
  const isText = drawn instanceof SVGTextContentElement;
  if (isShape(drawn)) {
    paint(copy, look, 'fill');
    paint(copy, look, 'stroke');
  }
  if (drawn instanceof SVGStopElement) paint(copy, look, 'stop-color');
  const names = isShape(drawn) ? STYLES : { opacity: '1' };
  for (const [name, plain] of Object.entries(isText ? { ...names, ...TEXT_STYLES } : names)) {
    const value = look.getPropertyValue(name);
    copy.removeAttribute(name);
    if (value === '' || value === plain || (name.startsWith('stroke-') && look.stroke === 'none')) continue;
    copy.setAttribute(name, value.replace(/(\d)px\b/g, '$1'));
  }
  if (isText) {
    copy.setAttribute('font-size', look.fontSize.replace('px', ''));
    copy.setAttribute('font-family', look.fontFamily.replaceAll('"', "'"));
  }
  if (drawn instanceof SVGMaskElement && look.getPropertyValue('mask-type') === 'alpha') copy.setAttribute('style', 'mask-type:alpha');
  else copy.removeAttribute('style');
  if (look.transform !== 'none' && drawn instanceof SVGGraphicsElement && !(drawn instanceof SVGSVGElement)) copy.setAttribute('transform', look.transform);
  copy.removeAttribute('class');
  for (const { name } of [...copy.attributes]) if (/^(data-|on|tabindex$|aria-|role$)/.test(name)) copy.removeAttribute(name);
}

/** Whether a style sheet hides it. */
export const isHidden = ({ display, visibility }: CSSStyleDeclaration): boolean => display === 'none' || visibility === 'hidden';

/** Never shown itself, so that some browsers give it no display. */
const REFERRED_TO = 'defs, linearGradient, radialGradient, pattern, mask, clipPath';

function dress(copy: Element, drawn: Element): void {
  const look = getComputedStyle(drawn);
  if (isHidden(look) && drawn.closest(REFERRED_TO) === null) {
    copy.remove();
    return;
  }
  const inner = [...copy.children];
  [...drawn.children].forEach((child, at) => {
    const twin = inner[at];
    if (twin) dress(twin, child);
  });
  dressOne(copy, drawn, look);
}

/** Several drawings in one file must not take each other's patterns. */
function rename(copy: SVGSVGElement, prefix: string): void {
  const names = new Set([...copy.querySelectorAll('[id]')].map(({ id }) => id));
  if (names.size === 0) return;
  for (const element of copy.querySelectorAll('*'))
    for (const { name, value } of [...element.attributes]) {
      if (name === 'id') element.setAttribute(name, `${prefix}${value}`);
      else if (name === 'href' && names.has(value.slice(1))) element.setAttribute(name, `#${prefix}${value.slice(1)}`);
      else if (value.includes('url(#'))
        element.setAttribute(
          name,
          value.replace(/url\(#([^)]+)\)/g, (whole, id: string) => (names.has(id) ? `url(#${prefix}${id})` : whole)),
        );
    }
}

/**
 * A copy of a drawing that needs no style sheet.
 * @param drawn in the document: its computed styles are read
 * @param prefix begins every id in it
 */
export function dressed(drawn: SVGSVGElement, prefix = ''): SVGSVGElement {
  const copy = drawn.cloneNode(true);
  if (!(copy instanceof SVGSVGElement)) throw new TypeError('This is no picture.');
  dress(copy, drawn);
  // Lit marks its places with comments.
  const comments = document.createTreeWalker(copy, NodeFilter.SHOW_COMMENT);
  const found: Node[] = [];
  while (comments.nextNode()) found.push(comments.currentNode);
  for (const comment of found) comment.parentNode?.removeChild(comment);
  if (prefix !== '') rename(copy, prefix);
  return copy;
}
