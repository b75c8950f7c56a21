/** Markup that is safe to put into more markup. Everything else that goes into a template is text, and is written as such. */
export class Markup {
  constructor(readonly text: string) {}
}

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
/** Letters that XML 1.0 (§2.2) forbids: an SVG file with one of them would not open. Halves of surrogate pairs among them. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text as markup shows it, in an element or between quotes. */
export const escaped = (text: string): string => text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);

type Part = string | number | Markup | readonly Markup[];

function written(part: Part): string {
  if (part instanceof Markup) return part.text;
  if (typeof part === 'string') return escaped(part);
  if (typeof part === 'number') return String(part);
  return part.map(({ text }) => text).join('');
}

/** HTML or SVG as text: what is put in is escaped, unless it is markup itself. */
export function markup(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return new Markup(strings.reduce((text, piece, at) => `${text}${written(parts[at - 1] ?? '')}${piece}`));
}

export const NOTHING = new Markup('');
