import type { Path } from '../../model/walk.ts';

/** An edit made by hand: what now stands at a path of the document (undefined: taken out), and a name for it that undo can show. */
export interface OoChange {
  readonly path: Path;
  readonly value: unknown;
  readonly label: string;
}

declare global {
  interface HTMLElementEventMap {
    'oo-change': CustomEvent<OoChange>;
  }
}

/** Tells the page of an edit. Fired for what a person does only, never for a property that is set. */
export function emitChange(host: EventTarget, detail: OoChange): void {
  host.dispatchEvent(new CustomEvent('oo-change', { detail, bubbles: true, composed: true }));
}
