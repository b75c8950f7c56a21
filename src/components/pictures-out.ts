import { fontFaces, LOOK, SANS, SERIF, type Fonts } from '../handout/look.ts';
import { dressed, part } from './pictures-out/dress.ts';
import { DOTS_AN_INCH, MM_AN_INCH, painted, withPrintSize } from './pictures-out/png.ts';

/** What a picture that leaves the page carries along. */
export interface PictureWords {
  readonly title: string;
  /** One sentence of what it shows. */
  readonly summary?: string;
  /** What it comes from: shuffle word, engine, futures, date. */
  readonly source: string;
}

/** A picture as a file that needs no page around it. */
export interface PictureFile {
  readonly svg: string;
  /** Of the drawing's own units. */
  readonly width: number;
  readonly height: number;
  /** In print. */
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What stands between title and source line. */
export interface Inside {
  readonly parts: readonly Element[];
  /** Where the parts begin, down from 0. */
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Room that print has between its margins on A4, mm. */
const PRINT_WIDTH = 170;
const PRINT_HEIGHT = 255;
const DOTS_OF_THE_PAGE = 96;
const MARGIN = 20;
const TITLE = { size: 23, line: 29, weight: '600', family: SERIF } as const;
const SUMMARY = { size: 17, line: 23, weight: '400', family: SANS } as const;
const SOURCE = { size: 14, line: 19, weight: '400', family: SANS } as const;
type Look = typeof TITLE | typeof SUMMARY | typeof SOURCE;

/** Lines of a text in a drawing, cut at words. */
function linesOf(text: string, room: number, { size, weight, family }: Look): string[] {
  const brush = document.createElement('canvas').getContext('2d');
  if (text === '') return [];
  if (!brush) return [text];
  brush.font = `${weight} ${String(size)}px ${family}`;
  return text.split(/[ \n]+/).reduce<string[]>((lines, word) => {
    const longer = lines.length === 0 ? word : `${lines.at(-1) ?? ''} ${word}`;
    return lines.length > 0 && brush.measureText(longer).width <= room ? [...lines.slice(0, -1), longer] : [...lines, word];
  }, []);
}

/** Widest line of running words, px: a line across a whole page is hard to read. */
const MEASURE = 860;

/** A drawing with all around it but its fonts. */
export interface Composed extends Omit<PictureFile, 'svg'> {
  readonly whole: Element;
}

/** Puts title, words and source line around a drawing. */
export function composed(inside: Inside, { title, summary = '', source }: PictureWords, paper: string = LOOK.paper): Composed {
  const { width } = inside;
  const room = Math.min(width, MEASURE);
  const [titles, summaries, sources] = [linesOf(title, width, TITLE), linesOf(summary, room, SUMMARY), linesOf(source, width, SOURCE)];
  const words = (lines: readonly string[], from: number, { size, line, weight, family }: Look, fill: string) =>
    lines.map((text, at) =>
      part('text', { x: MARGIN, y: from + at * line + size, fill, 'font-family': family, 'font-size': size, 'font-weight': weight }, text),
    );
  const summaryTop = MARGIN + titles.length * TITLE.line + 2;
  const top = summaryTop + summaries.length * SUMMARY.line + 16;
  const sourceTop = top + inside.height + 20;
  const all = { width: width + 2 * MARGIN, height: Math.ceil(sourceTop + sources.length * SOURCE.line + MARGIN - 6) };
  const widthMm = Math.min(PRINT_WIDTH, (all.width / DOTS_OF_THE_PAGE) * MM_AN_INCH, (PRINT_HEIGHT * all.width) / all.height);
  const heightMm = (widthMm * all.height) / all.width;
  const mm = (length: number): string => `${String(Math.round(length * 100) / 100)}mm`;
  const whole = part(
    'svg',
    { viewBox: `0 0 ${String(all.width)} ${String(all.height)}`, width: mm(widthMm), height: mm(heightMm), role: 'img' },
    part('title', {}, title),
    part('desc', {}, [summary, source].filter(Boolean).join(' ')),
    part('rect', { width: '100%', height: '100%', fill: paper }),
    ...words(titles, MARGIN, TITLE, LOOK.ink),
    ...words(summaries, summaryTop, SUMMARY, LOOK.ink2),
    part('g', { transform: `translate(${String(MARGIN)} ${String(top - inside.top)})` }, ...inside.parts),
    ...words(sources, sourceTop, SOURCE, LOOK.ink2),
  );
  whole.setAttribute('style', 'font-variant-numeric:tabular-nums lining-nums');
  return { whole, ...all, widthMm, heightMm };
}

/**
 * Writes it as a file.
 * @param faces rules that bring along its fonts
 */
export function written({ whole, ...sizes }: Composed, faces: string): PictureFile {
  whole.querySelector('desc')?.after(part('style', {}, faces));
  return { svg: `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(whole)}\n`, ...sizes };
}

/**
 * Turns one drawing of the page into a self-contained SVG: every style of the page written into it, fonts within, a title above it and
 * the line that says what it comes from below.
 * @param svg as it is drawn now, in the document: its computed styles are read
 */
export function pictureFile(svg: SVGSVGElement, words: PictureWords, fonts: Fonts): PictureFile {
  const { width, height } = svg.viewBox.baseVal;
  const copy = dressed(svg);
  for (const [name, value] of Object.entries({ x: 0, y: 0, width, height })) copy.setAttribute(name, String(value));
  if (!copy.hasAttribute('font-family')) copy.setAttribute('font-family', SANS);
  return written(composed({ parts: [copy], top: 0, width, height }, words), fontFaces(fonts));
}

/**
 * Paints such a file as a PNG at print size, 300 dots an inch.
 * @throws Error where the browser does not paint it
 */
export async function pictureBlob({ svg, widthMm, heightMm }: PictureFile): Promise<Blob> {
  const dots = (mm: number): number => Math.round((mm / MM_AN_INCH) * DOTS_AN_INCH);
  const [width, height] = [dots(widthMm), dots(heightMm)];
  const sized = svg.replace(/width="[\d.]+mm" height="[\d.]+mm"/, `width="${String(width)}" height="${String(height)}"`);
  return withPrintSize(await painted(sized, width, height));
}
