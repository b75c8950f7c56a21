/** Letters with the accents of further Latin alphabets: fetched for pictures that have some. */
export { default as serifFurther } from '@fontsource-variable/brygada-1918/files/brygada-1918-latin-ext-wght-normal.woff2?inline';
export { default as sansFurther } from '@fontsource-variable/source-sans-3/files/source-sans-3-latin-ext-wght-normal.woff2?inline';
