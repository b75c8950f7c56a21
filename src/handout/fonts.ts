import serif from '@fontsource-variable/brygada-1918/files/brygada-1918-latin-wght-normal.woff2?inline';
import sans from '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2?inline';
import type { Fonts } from './look.ts';

/** The fonts of a file, within it: letters of Latin scripts; others fall back to what the reader's device has. */
export const FONTS: Fonts = { serif, sans };
