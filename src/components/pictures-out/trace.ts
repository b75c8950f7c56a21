import { colourOf, dressed, isHidden, part } from './dress.ts';

/**
 * Pictures are drawings with words, letters and tables of the page around them. This turns all of it into one drawing: every line of text
 * as it was broken, every ground and rule, every drawing in its place.
 */

/** What has been drawn, from 0, 0 of the element. */
export interface Traced {
  readonly parts: readonly Element[];
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

interface Tracing {
  /** Corner of the whole, in the window. */
  readonly x: number;
  readonly y: number;
  drawings: number;
  top: number;
  bottom: number;
}

const EVERYWHERE: Box = { left: -Infinity, top: -Infinity, right: Infinity, bottom: Infinity };
/** Text only for those who listen is none of the picture, and neither is what one works a page with. */
const LEFT_OUT = '.visually-hidden, .plot, .saves, .beneath, button, input, select, textarea, details:not([open]), summary, slot[name]:empty';

export function trace(root: HTMLElement): Traced {
  const { left, top, width } = root.getBoundingClientRect();
  const tracing: Tracing = { x: left, y: top, drawings: 0, top: Infinity, bottom: -Infinity };
  const parts = traceElement(root, tracing, EVERYWHERE);
  return Number.isFinite(tracing.top) ? { parts, top: tracing.top, bottom: tracing.bottom, width } : { parts, top: 0, bottom: 0, width };
}

const within = (box: Box, clip: Box): boolean => {
  const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  return x >= clip.left && x <= clip.right && y >= clip.top && y <= clip.bottom;
};

function note(tracing: Tracing, { top, bottom }: Box): void {
  tracing.top = Math.min(tracing.top, top - tracing.y);
  tracing.bottom = Math.max(tracing.bottom, bottom - tracing.y);
}

function traceElement(element: HTMLElement, tracing: Tracing, clip: Box): Element[] {
  if (element.matches(LEFT_OUT)) return [];
  const look = getComputedStyle(element);
  if (isHidden(look)) return [];
  const rect = element.getBoundingClientRect();
  const inner = look.overflow === 'visible' ? clip : rect;
  const inside = [...(element instanceof HTMLSlotElement ? element.assignedNodes({ flatten: true }) : element.childNodes)].flatMap((child) =>
    traceNode(child, look, tracing, inner),
  );
  const all = [...grounds(element, look, tracing), ...inside];
  return look.opacity === '1' || all.length === 0 ? all : [part('g', { opacity: look.opacity }, ...all)];
}

function traceNode(node: Node, look: CSSStyleDeclaration, tracing: Tracing, clip: Box): Element[] {
  if (node instanceof Text) return lines(node, look, tracing, clip);
  if (node instanceof SVGSVGElement) return drawing(node, tracing);
  return node instanceof HTMLElement ? traceElement(node, tracing, clip) : [];
}

function drawing(svg: SVGSVGElement, tracing: Tracing): Element[] {
  const rect = svg.getBoundingClientRect();
  if (rect.width === 0 || isHidden(getComputedStyle(svg))) return [];
  tracing.drawings += 1;
  const copy = dressed(svg, `p${String(tracing.drawings)}-`);
  const place = { x: rect.left - tracing.x, y: rect.top - tracing.y, width: rect.width, height: rect.height };
  for (const [name, value] of Object.entries(place)) copy.setAttribute(name, String(Math.round(value * 100) / 100));
  copy.setAttribute('overflow', 'visible');
  note(tracing, rect);
  return [copy];
}

/** Ground and border of an element, of each line where it runs over several. */
function grounds(element: HTMLElement, look: CSSStyleDeclaration, tracing: Tracing): Element[] {
  const ground = colourOf(look.backgroundColor);
  const sides = (['Top', 'Right', 'Bottom', 'Left'] as const).map((side) => ({
    width: look[`border${side}Style`] === 'none' ? 0 : Number.parseFloat(look[`border${side}Width`]),
    colour: look[`border${side}Color`],
    dashed: look[`border${side}Style`] === 'dashed',
  }));
  if (ground.alpha === 0 && sides.every(({ width }) => width === 0)) return [];
  const [first] = sides;
  const even = first !== undefined && first.width > 0 && sides.every(({ width, colour }) => width === first.width && colour === first.colour);
  return [...element.getClientRects()].flatMap((rect) => {
    if (rect.width === 0 || rect.height === 0) return [];
    const [x, y] = [rect.left - tracing.x, rect.top - tracing.y];
    const fill = ground.alpha === 0 ? { fill: 'none' } : { fill: ground.hex, ...(ground.alpha < 1 ? { 'fill-opacity': String(ground.alpha) } : {}) };
    const round = look.borderTopLeftRadius.endsWith('%') ? rect.width / 2 : Math.min(Number.parseFloat(look.borderTopLeftRadius), rect.height / 2);
    if (ground.alpha > 0 || even) note(tracing, rect);
    if (even) {
      const half = first.width / 2;
      const stroke = { stroke: colourOf(first.colour).hex, 'stroke-width': first.width, ...(first.dashed ? { 'stroke-dasharray': '3 2' } : {}) };
      return [
        part('rect', {
          x: x + half,
          y: y + half,
          width: rect.width - first.width,
          height: rect.height - first.width,
          rx: Math.max(0, round - half),
          ...fill,
          ...stroke,
        }),
      ];
    }
    const shape = ground.alpha === 0 ? [] : [part('rect', { x, y, width: rect.width, height: rect.height, ...(round > 0 ? { rx: round } : {}), ...fill })];
    return [...shape, ...rules(sides, { x, y, width: rect.width, height: rect.height })];
  });
}

function rules(
  sides: readonly { readonly width: number; readonly colour: string }[],
  { x, y, width, height }: Readonly<Record<'x' | 'y' | 'width' | 'height', number>>,
): Element[] {
  const [top, right, bottom, left] = sides.map((side) => side.width);
  const places = [
    { x, y, width, height: top ?? 0 },
    { x: x + width - (right ?? 0), y, width: right ?? 0, height },
    { x, y: y + height - (bottom ?? 0), width, height: bottom ?? 0 },
    { x, y, width: left ?? 0, height },
  ];
  return places.flatMap((place, at) => {
    const colour = colourOf(sides[at]?.colour ?? '');
    return place.width === 0 || place.height === 0 || colour.alpha === 0 ? [] : [part('rect', { ...place, fill: colour.hex })];
  });
}

interface Run extends Box {
  readonly from: number;
  readonly to: number;
}

const range = document.createRange();

function boxOf(node: Text, from: number, to: number): readonly DOMRect[] {
  range.setStart(node, from);
  range.setEnd(node, to);
  return [...range.getClientRects()].filter(({ width, height }) => width > 0 && height > 0);
}

/** Words of a text with their places; a word that is broken comes letter by letter. */
function runs(node: Text): Run[] {
  return [...node.data.matchAll(/[^\s]+/g)].flatMap((word) => {
    const [from, to] = [word.index, word.index + word[0].length];
    const rects = boxOf(node, from, to);
    const [only] = rects;
    if (!only) return [];
    if (rects.length === 1) return [{ from, to, left: only.left, top: only.top, right: only.right, bottom: only.bottom }];
    return Array.from(word[0], (_, at) => from + at).flatMap((at) =>
      boxOf(node, at, at + 1).map(({ left, top, right, bottom }) => ({ from: at, to: at + 1, left, top, right, bottom })),
    );
  });
}

const brush = document.createElement('canvas').getContext('2d');

/** How far below its top a line of text has its baseline, as a share of its height. */
function ascent({ fontStyle, fontWeight, fontSize, fontFamily }: CSSStyleDeclaration): number {
  if (!brush) return 0.8;
  brush.font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`;
  const { fontBoundingBoxAscent: up, fontBoundingBoxDescent: down } = brush.measureText('x');
  return up / (up + down);
}

function lines(node: Text, look: CSSStyleDeclaration, tracing: Tracing, clip: Box): Element[] {
  const seen = runs(node).filter((run) => within(run, clip));
  if (seen.length === 0) return [];
  const broken = seen.reduce<Run[]>((rows, run) => {
    const last = rows.at(-1);
    if (!last || Math.abs(last.top - run.top) > 1) return [...rows, run];
    return [...rows.slice(0, -1), { ...last, to: run.to, right: run.right }];
  }, []);
  const share = ascent(look);
  return broken.map((line) => {
    note(tracing, line);
    return part(
      'text',
      {
        x: line.left - tracing.x,
        y: line.top - tracing.y + share * (line.bottom - line.top),
        fill: colourOf(look.color).hex,
        'font-size': look.fontSize.replace('px', ''),
        'font-family': look.fontFamily.replaceAll('"', "'"),
        ...(look.fontWeight === '400' ? {} : { 'font-weight': look.fontWeight }),
        ...(look.fontStyle === 'normal' ? {} : { 'font-style': look.fontStyle }),
        ...(look.letterSpacing === 'normal' ? {} : { 'letter-spacing': look.letterSpacing.replace('px', '') }),
      },
      node.data.slice(line.from, line.to).replace(/[ \t\r\n]+/g, ' '),
    );
  });
}
