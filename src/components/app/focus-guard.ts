import type { ReactiveController, ReactiveControllerHost } from 'lit';

const FOCUSABLE = 'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, [tabindex="0"]';
/** Longer than the page takes to redraw after an edit, ms. */
const REDRAWN_MS = 150;
const ACTS = ['keydown', 'click'] as const;

/** First thing in there that can have the focus, through shadow roots, in reading order. */
function firstFocusable(root: ParentNode): HTMLElement | null {
  for (const element of root.querySelectorAll<HTMLElement>('*')) {
    if (element.matches(FOCUSABLE) && element.checkVisibility()) return element;
    const inside = element.shadowRoot && firstFocusable(element.shadowRoot);
    if (inside) return inside;
  }
  return null;
}

/**
 * Keeps the focus on the page: when what had it is taken away or switched off by an edit, an undo or a panel that closes, it goes to the
 * nearest thing that is left, and does not fall back to the top.
 */
export class FocusGuard implements ReactiveController {
  /** What was worked with last, and all that it lay in. Focus events would not do: they do not leave a shadow root that both ends lie in. */
  private path: readonly EventTarget[] = [];
  private timer = 0;

  constructor(
    private readonly host: ReactiveControllerHost & HTMLElement,
    private readonly otherwise: () => HTMLElement | null,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    for (const type of ACTS) this.host.addEventListener(type, this.onAct, { capture: true });
  }

  hostDisconnected(): void {
    for (const type of ACTS) this.host.removeEventListener(type, this.onAct, { capture: true });
    clearTimeout(this.timer);
  }

  /** Something is about to be redrawn that may hold the focus. */
  watch(): void {
    clearTimeout(this.timer);
    requestAnimationFrame(() => requestAnimationFrame(() => this.check()));
    this.timer = window.setTimeout(() => this.check(), REDRAWN_MS);
  }

  private readonly onAct = (event: Event): void => {
    this.path = event.composedPath();
  };

  private check(): void {
    const [last] = this.path;
    const fell = document.activeElement === document.body || document.activeElement === null;
    // Whoever clicks beside everything has let go of it: what they left is still there.
    if (!fell || !(last instanceof HTMLElement) || (last.isConnected && !last.closest(':disabled') && last.checkVisibility())) return;
    const nearest = this.nearest() ?? this.otherwise();
    nearest?.focus({ preventScroll: true });
    nearest?.scrollIntoView({ block: 'nearest' });
  }

  private nearest(): HTMLElement | null {
    for (const target of this.path.slice(1)) {
      if (target === this.host) return null;
      if (!(target instanceof HTMLElement) || !target.isConnected) continue;
      const found = firstFocusable(target) ?? (target.shadowRoot && firstFocusable(target.shadowRoot));
      if (found) return found;
    }
    return null;
  }
}
