import type { LitElement } from 'lit';

export type PictureKind = 'svg' | 'png';

/** What a picture comes from. */
export interface PictureSource {
  readonly title: string;
  readonly word: string;
  readonly engine: string;
  readonly futures: number;
  /** Calendar day, year-month-day. */
  readonly date: string;
}

/** Asks whoever knows the programme to save a picture. */
export interface SavePicture {
  readonly host: LitElement;
  /** What stands over the picture: its finding, or its name. */
  readonly title: string;
  /** What the file is called after. */
  readonly name: string;
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
