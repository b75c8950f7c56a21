import { Marked, type Tokens } from 'marked';
import { guide, type GuidePart } from '../../../text/guide.ts';

/** A heading of the second order, for the list on top. */
export interface Heading {
  readonly id: string;
  readonly words: string;
}

export interface Rendered {
  /** Markup of our own documents; nothing that a visitor wrote ever comes in here. */
  readonly markup: string;
  readonly headings: readonly Heading[];
}

/** Files of the guide, as they name each other. */
const FILES: Readonly<Record<string, GuidePart>> = { 'guide.md': 'guide', 'answers.md': 'answers', 'model.md': 'model' };

export const isPart = (name: string): name is GuidePart => Object.hasOwn(guide.parts, name);

/** The address of a part, or of a heading in it. */
export const addressOf = (part: GuidePart, heading = ''): string =>
  `#/guide${part === 'guide' && heading === '' ? '' : `/${part}`}${heading === '' ? '' : `/${heading}`}`;

/** Part and heading that an address asks for; what is not known leads to the guide itself. */
export function askedFor(address: string): { readonly part: GuidePart; readonly heading: string } {
  const [, , part = '', heading = ''] = address.split('/');
  return isPart(part) ? { part, heading: decodeURIComponent(heading) } : { part: 'guide', heading: '' };
}

/** The name that a heading gets where the files are shown as they are: small letters and digits, other signs left out, gaps as dashes. */
export function nameOf(words: string): string {
  return words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, '')
    .trim()
    .replace(/\s/g, '-');
}

/**
 * Where a link of the documents leads in the app; null for what is not part of it, as the records of decisions.
 * @param part that the link stands in
 */
export function linkInApp(href: string, part: GuidePart): string | null {
  const [file = '', heading = ''] = href.split('#');
  // Pages of the app itself, as “#/pay”.
  if (file === '' && heading.startsWith('/')) return href;
  const to = file === '' ? part : FILES[file];
  return to === undefined ? null : addressOf(to, heading);
}

const plainOf = (html: string): string =>
  html
    .replace(/<[^>]+>/g, '')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');
const quoted = (text: string): string => text.replace(/&/g, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;');

/**
 * Turns a document of the guide into markup: headings with names, links that lead within the app, wide tables in a box of their own that the
 * keyboard can move.
 * @param pictures addresses by file name; a picture that is not among them is left out
 */
export function render(text: string, part: GuidePart, pictures: Readonly<Record<string, string>>): Rendered {
  const headings: Heading[] = [];
  const taken = new Map<string, number>();
  const free = (name: string): string => {
    const before = taken.get(name) ?? 0;
    taken.set(name, before + 1);
    return before === 0 ? name : `${name}-${String(before)}`;
  };
  const marked = new Marked({
    renderer: {
      heading({ tokens, depth }: Tokens.Heading): string {
        const inner = this.parser.parseInline(tokens);
        const words = plainOf(inner);
        const id = free(nameOf(words));
        if (depth === 2) headings.push({ id, words });
        return `<h${String(depth)} id="${quoted(id)}" tabindex="-1">${inner}</h${String(depth)}>\n`;
      },
      link({ href, tokens }: Tokens.Link): string {
        const inner = this.parser.parseInline(tokens);
        const to = linkInApp(href, part);
        return to === null ? inner : `<a href="${quoted(to)}">${inner}</a>`;
      },
      image({ href, text: words }: Tokens.Image): string {
        const address = pictures[href.replace(/^.*\//, '')];
        return address === undefined ? '' : `<img src="${quoted(address)}" alt="${quoted(words)}" loading="lazy">`;
      },
    },
  });
  const markup = marked
    .parse(text, { async: false })
    .replace(/<table>/g, `<div class="wide" role="group" tabindex="0" aria-label="${quoted(guide.wide)}"><table>`)
    .replace(/<\/table>/g, '</table></div>')
    .replace(/<pre>/g, `<pre role="group" tabindex="0" aria-label="${quoted(guide.formula)}">`);
  return { markup, headings };
}
