import type { Programme } from '../../model/programme.ts';
import { fileName, programmeText } from '../../storage/file.ts';

/** Long enough for a slow browser to have taken the file, in ms. */
const KEPT = 10_000;

/** Hands the programme to the browser as a file to save. */
export function downloadProgramme(programme: Programme): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([programmeText(programme)], { type: 'application/json' }));
  link.download = fileName(programme);
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), KEPT);
}
