import type { PictureSource } from './save-picture.ts';

/**
 * Saves the pictures that parts of the page ask to save. What makes them comes only then.
 * @param source what a picture comes from, at that moment
 */
export function servePictures(page: Document, source: () => PictureSource): void {
  page.addEventListener('oo-save-picture', ({ detail }) => {
    void import('../pictures-out/save.ts').then(({ savePicture }) => savePicture(detail, source()));
  });
}
