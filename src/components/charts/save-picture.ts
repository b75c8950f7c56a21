import type { LitElement } from 'lit';
import type { PictureSource } from '../pictures-out/save.ts';

export type PictureKind = 'svg' | 'png';

/** Asks whoever knows the programme to save a picture. */
export interface SavePicture {
  readonly host: LitElement;
  /** What stands over the picture: its finding, or its name. */
  readonly title: string;
  readonly summary: string;
  readonly kind: PictureKind;
  /** Futures behind it, where they are others than the programme's; set on the way by what knows. */
  futures: number | null;
  /** Says how it goes, in words. */
  readonly said: (words: string) => void;
}
export type SavePictureEvent = CustomEvent<SavePicture>;

declare global {
  interface GlobalEventHandlersEventMap {
    'oo-save-picture': SavePictureEvent;
  }
}

/**
 * Saves the pictures that parts of the page ask to save. What makes them comes only then.
 * @param source what a picture comes from, at that moment
 */
export function servePictures(page: Document, source: () => PictureSource): void {
  page.addEventListener('oo-save-picture', ({ detail }) => {
    void import('../pictures-out/save.ts').then(({ savePicture }) => savePicture(detail, source()));
  });
}
