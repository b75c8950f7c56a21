/** What stands over a picture or a table of the page, wherever its heading is. */
export interface PictureHeadings {
  /** The finding, or the name of the picture. */
  readonly title: string;
  /** The heading right above it, under that title; empty where there is none. */
  readonly part: string;
  /** One sentence of what it shows; empty where none is said. */
  readonly summary: string;
}

const HEADINGS = 'h2, h3.inner, h3, h4';

/** Text of a heading as it is seen: with what was put into its slots. */
function textOf(node: Node): string {
  if (node instanceof Text) return node.data;
  if (!(node instanceof Element) || node.matches('.visually-hidden, small')) return '';
  return innerText(node);
}
const innerText = (element: Element): string =>
  (element instanceof HTMLSlotElement ? element.assignedNodes({ flatten: true }) : [...element.childNodes]).map(textOf).join('');
const plain = (element: Element): string => innerText(element).replace(/\s+/g, ' ').trim();

const isBefore = (heading: Element, place: Element): boolean => (heading.compareDocumentPosition(place) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
/** A heading of the same part: notes beside a picture have headings of their own. */
const isAbove = (heading: Element, place: Element): boolean => {
  const notes = heading.closest('.notes, .picture, .block, li, details');
  return isBefore(heading, place) && !heading.contains(place) && (notes === null || notes.contains(place));
};

/** @param place the button, table or picture; what it stands in is looked through outwards, shadow root by shadow root */
export function headingsOf(place: Element): PictureHeadings {
  const summary = summaryOf(place);
  const headings = outwards(place).find(({ title }) => title !== '') ?? { title: '', part: '' };
  return { ...headings, summary };
}

function outwards(place: Element): { readonly title: string; readonly part: string }[] {
  const root = place.getRootNode();
  if (!(root instanceof ShadowRoot)) return [];
  const above = [...root.querySelectorAll(HEADINGS)].filter((heading) => isAbove(heading, place) && plain(heading) !== '');
  const title = above.findLast((heading) => heading.matches('h2')) ?? above[0];
  // A heading that does not stand over the place itself is that of something beside it.
  const nearest = above.findLast((heading) => heading.parentElement?.contains(place) ?? heading.parentNode === root);
  const own = { title: title ? plain(title) : '', part: nearest && nearest !== title ? plain(nearest) : '' };
  return [own, ...outwards(root.host)];
}

function summaryOf(place: Element): string {
  const root = place.getRootNode();
  if (!(root instanceof ShadowRoot)) return '';
  const said = root.querySelector('#summary, .answer') ?? root.host.parentElement?.querySelector(':scope > .legend');
  return said ? plain(said) : '';
}
