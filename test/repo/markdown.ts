/** A text of Markdown taken apart as far as the checks of this folder need it. */
export interface Taken {
  /** Addresses of links and pictures within the project, without what follows a #. */
  readonly links: readonly string[];
  /** What stands in `code`, and the lines of fenced blocks. */
  readonly code: readonly string[];
  /** The words outside of code, links' addresses taken out. */
  readonly prose: string;
}

const FENCE = /^```[^\n]*\n([\s\S]*?)^```$/gm;
const INLINE = /`([^`\n]+)`/g;
const LINK = /!?\[([^\]]*)\]\(([^)\s]+)\)/g;

export function takeApart(text: string): Taken {
  const blocks = [...text.matchAll(FENCE)].flatMap(([, block = '']) => block.split('\n'));
  const open = text.replace(FENCE, '');
  const links = [...open.matchAll(LINK)].map(([, , address = '']) => address.replace(/#.*$/, ''));
  return {
    links: links.filter((address) => address !== '' && !/^[a-z]+:/.test(address)),
    code: [...blocks, ...[...open.matchAll(INLINE)].map(([, code = '']) => code)].filter((code) => code !== ''),
    prose: open.replace(INLINE, '').replace(LINK, '$1'),
  };
}

/** Path of a link as seen from the document it stands in. */
export function linkedFrom(document: string, address: string): string {
  const parts = document.split('/').slice(0, -1);
  for (const step of address.split('/')) {
    if (step === '..') parts.pop();
    else if (step !== '.') parts.push(step);
  }
  return parts.join('/');
}
