import { describe, expect, it } from 'vitest';
import { isTypedIn } from '../../../src/components/app/typing.ts';

function element(markup: string): Element {
  document.body.innerHTML = markup;
  const found = document.body.firstElementChild;
  if (!found) throw new Error(`Nothing in ${markup}.`);
  return found;
}

describe('whether the keys of undo are the field’s own', () => {
  it.each([
    '<input>',
    '<input type="text" inputmode="decimal">',
    '<input type="search">',
    '<input type="date">',
    '<textarea></textarea>',
    '<p contenteditable></p>',
  ])('they are where text is typed: %s', (markup) => expect(isTypedIn(element(markup))).toBe(true));

  it.each([
    '<input type="checkbox">',
    '<input type="radio">',
    '<input type="range">',
    '<select></select>',
    '<button></button>',
    '<textarea readonly></textarea>',
    '<p tabindex="0"></p>',
  ])('they are the page’s elsewhere: %s', (markup) => expect(isTypedIn(element(markup))).toBe(false));
});
