import type { Programme } from '../model/programme.ts';
import { fileName, programmeText } from '../storage/file.ts';

/** Long enough for a slow browser to have taken the file, ms. */
const KEPT = 10_000;

/** Hands a text or a picture to the browser as a file to be saved. */
export function saveAsFile(name: string, content: string | Blob, type = 'application/json'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), KEPT);
}

/** Hands the programme to the browser as a file to be saved, and returns the name of the file. */
export function saveProgramme(programme: Programme): string {
  const name = fileName(programme);
  saveAsFile(name, programmeText(programme));
  return name;
}

/** Lets a person choose a programme file. */
export function chooseFile(chosen: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) chosen(file);
  });
  input.click();
}
