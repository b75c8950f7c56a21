import '@fontsource-variable/brygada-1918/wght.css';
import '@fontsource-variable/brygada-1918/wght-italic.css';
import '@fontsource-variable/source-sans-3/wght.css';
import '@fontsource-variable/source-sans-3/wght-italic.css';
import './tokens.css';
import { shared } from './shared.ts';

/** Gives the page outside of any shadow root the same rules as inside; fonts and tokens come with importing this file. */
export function dressPage(page: Document): void {
  const sheets = shared.flatMap(({ styleSheet }) => (styleSheet ? [styleSheet] : []));
  page.adoptedStyleSheets = [...page.adoptedStyleSheets, ...sheets];
}
