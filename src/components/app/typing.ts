/** Kinds of input that hold no text: what is undone on them is the edit before, not letters. */
const NO_TEXT: ReadonlySet<string> = new Set(['button', 'checkbox', 'color', 'file', 'image', 'radio', 'range', 'reset', 'submit']);

/** Whether text can be typed there, so that the keys of undo are the field's own. */
export function isTypedIn(target: EventTarget): boolean {
  if (target instanceof HTMLInputElement) return !NO_TEXT.has(target.type) && !target.readOnly;
  return (target instanceof HTMLTextAreaElement && !target.readOnly) || (target instanceof HTMLElement && target.isContentEditable);
}
