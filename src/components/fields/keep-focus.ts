import type { LitElement } from 'lit';

/** What has the focus, through open shadow roots; the body if nothing has. */
export function focused(): Element | null {
  let element = document.activeElement;
  while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
  return element;
}

/** Nothing has the focus, or nothing that can be used: what had it is no longer there. */
export const focusLost = (): boolean => {
  const element = focused();
  return element === null || element === document.body || element === document.documentElement || element.matches(':disabled');
};

/**
 * Takes the focus back once an element has drawn itself anew, if it was lost with what was replaced.
 * A person who went on by Tab meanwhile is where they wanted to be.
 * @param target what takes it, looked for after drawing; left out, the element itself
 */
export function keepFocus(host: LitElement, target: () => HTMLElement | null | undefined = () => host): void {
  void host.updateComplete.then(() => {
    // Only after the move that is under way: leaving a box tells of it before the next thing has the focus.
    setTimeout(() => {
      if (host.isConnected && focusLost()) target()?.focus();
    });
  });
}
