import type { Page } from 'playwright';

/** Two texts that cover each other, with the size of what they share, px. */
export interface Overlap {
  readonly a: string;
  readonly b: string;
  readonly width: number;
  readonly height: number;
}

/** A text smaller than it may be, as it stands on the screen, px. */
export interface SmallText {
  readonly text: string;
  readonly size: number;
}

export interface OverlapOptions {
  /** CSS selector of the element to look into, shadow roots included; the whole page by default. */
  readonly within?: string;
  /** Common px that are let pass, in both directions: rounding, and letters' side space. */
  readonly slack?: number;
}

/**
 * Finds texts that overlap: every visible run of text, in light and shadow DOM and in SVG, against every other, by the box of its letters
 * (the line box less the space above capitals and below the baseline).
 */
export function textOverlaps(page: Page, { within = 'body', slack = 1.5 }: OverlapOptions = {}): Promise<Overlap[]> {
  return page.evaluate(
    ({ selector, allowed }) => {
      interface Box {
        text: string;
        left: number;
        right: number;
        top: number;
        bottom: number;
      }
      const boxes: Box[] = [];
      const visit = (node: Node): void => {
        if (node instanceof Text) {
          const text = node.data.trim();
          const holder = node.parentElement;
          if (text === '' || !holder || !holder.checkVisibility({ opacityProperty: true, visibilityProperty: true })) return;
          const range = document.createRange();
          range.selectNodeContents(node);
          for (const { left, right, top, bottom, width, height } of range.getClientRects()) {
            // What is hidden from eyes but read aloud is a pixel wide.
            if (width < 2 || height < 2 || holder.closest('.visually-hidden')) continue;
            boxes.push({ text, left, right, top: top + 0.24 * height, bottom: bottom - 0.22 * height });
          }
          return;
        }
        if (!(node instanceof Element) && !(node instanceof ShadowRoot)) return;
        if (node instanceof HTMLSlotElement && node.assignedNodes().length > 0) return;
        if (node instanceof Element && ['SCRIPT', 'STYLE', 'TITLE', 'OPTION'].includes(node.tagName.toUpperCase())) return;
        if (node instanceof HTMLDetailsElement && !node.open) {
          for (const child of node.children) if (child.tagName === 'SUMMARY') visit(child);
          return;
        }
        if (node instanceof Element && node.shadowRoot) visit(node.shadowRoot);
        for (const child of node.childNodes) visit(child);
      };
      for (const root of document.querySelectorAll(selector)) visit(root);
      boxes.sort((a, b) => a.top - b.top);
      return boxes.flatMap((a, index) => {
        const found = [];
        for (let other = index + 1; other < boxes.length; other++) {
          const b = boxes[other];
          if (!b || b.top >= a.bottom) break;
          const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
          const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
          if (width > allowed && height > allowed) found.push({ a: a.text, b: b.text, width, height });
        }
        return found;
      });
    },
    { selector: within, allowed: slack },
  );
}

/**
 * Finds visible texts below a size, as they stand on the screen: an SVG that is scaled down shrinks its texts.
 * @param except CSS selector of elements that are not looked into; none by default
 */
export function smallTexts(page: Page, least = 16, within = 'body', except = ''): Promise<SmallText[]> {
  return page.evaluate(
    ({ selector, smallest, left }) => {
      const found: { text: string; size: number }[] = [];
      const visit = (node: Node): void => {
        if (node instanceof Text) {
          const holder = node.parentElement;
          const text = node.data.trim();
          if (
            text === '' ||
            !holder?.checkVisibility() ||
            holder.closest('.visually-hidden') ||
            ['SCRIPT', 'STYLE', 'TITLE'].includes(holder.tagName.toUpperCase())
          )
            return;
          const scale = holder instanceof SVGGraphicsElement ? (holder.getScreenCTM()?.a ?? 1) : 1;
          const size = parseFloat(getComputedStyle(holder).fontSize) * scale;
          if (size < smallest - 0.05) found.push({ text, size });
          return;
        }
        if (node instanceof Element && left !== '' && node.matches(left)) return;
        if (node instanceof Element && node.shadowRoot) visit(node.shadowRoot);
        for (const child of node.childNodes) visit(child);
      };
      for (const root of document.querySelectorAll(selector)) visit(root);
      return found;
    },
    { selector: within, smallest: least, left: except },
  );
}
