import { focused } from '../fields/keep-focus.ts';

/**
 * Draws a page anew and leaves what has the focus where it stands in the window: a notice or a longer sentence above it must not push it away
 * under the fingers.
 */
export function holdPlace(page: Element, draw: () => void): void {
  const element = page.shadowRoot?.activeElement ? focused() : null;
  const before = element?.getBoundingClientRect().top;
  draw();
  if (!element?.isConnected || before === undefined) return;
  const moved = element.getBoundingClientRect().top - before;
  if (Math.abs(moved) >= 1) window.scrollBy({ top: moved, behavior: 'instant' });
}
