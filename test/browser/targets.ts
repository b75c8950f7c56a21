import type { Page } from 'playwright';

/** Something to press or fill in that is lower or narrower than a finger needs, px. */
export interface SmallTarget {
  readonly what: string;
  readonly width: number;
  readonly height: number;
}

/**
 * Finds visible buttons, inputs, selects, summaries and links of a list below a height (px), shadow roots included. A checkbox counts with the
 * label around it; what is hidden until it is focused does not count.
 */
export function smallTargets(page: Page, least: number, within = 'body'): Promise<SmallTarget[]> {
  return page.evaluate(
    ({ selector, smallest }) => {
      const found: { what: string; width: number; height: number }[] = [];
      const visit = (node: Element | ShadowRoot): void => {
        for (const child of node.children) {
          if (child.matches('button, input, select, textarea, summary, nav a') && child.checkVisibility({ opacityProperty: true, visibilityProperty: true })) {
            const around = child.matches('input[type=checkbox], input[type=radio]') ? (child.closest('label') ?? child) : child;
            const { width, height, right } = around.getBoundingClientRect();
            const what = `${child.tagName.toLowerCase()} ${(child.getAttribute('aria-label') ?? child.textContent).replace(/\s+/g, ' ').trim() || child.id}`;
            if (right > 0 && height < smallest - 0.5) found.push({ what, width, height });
          }
          if (child.shadowRoot) visit(child.shadowRoot);
          visit(child);
        }
      };
      for (const root of document.querySelectorAll(selector)) visit(root);
      return found;
    },
    { selector: within, smallest: least },
  );
}
