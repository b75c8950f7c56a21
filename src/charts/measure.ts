/** Tells how wide a text is, in px, at a font size in px. The page measures with its own font; tests use the rough one. */
export type Measure = (text: string, size: number, bold?: boolean) => number;

const NARROW = new Set("iljtfrI.,:;'|!()[]›‹· \u2009\u00a0");
const BROAD = new Set('mwMW%×–—½');

/** A guess from character classes, good to about a tenth for a humanist sans; never needs a page. */
export const roughMeasure: Measure = (text, size, bold = false) => {
  let ems = 0;
  for (const letter of text) ems += NARROW.has(letter) ? 0.27 : BROAD.has(letter) ? 0.75 : letter >= 'A' && letter <= 'Z' ? 0.58 : 0.5;
  return ems * size * (bold ? 1.06 : 1);
};

/** Breaks a text at spaces into lines no wider than `room` px; a single longer word keeps a line of its own. */
export function wrap(text: string, room: number, size: number, measure: Measure, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && measure(longer, size, bold) > room) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** Shortens a text with an ellipsis to `room` px, at a letter. */
export function clip(text: string, room: number, size: number, measure: Measure, bold = false): string {
  if (measure(text, size, bold) <= room) return text;
  let end = text.length;
  while (end > 1 && measure(`${text.slice(0, end).trimEnd()}…`, size, bold) > room) end--;
  return `${text.slice(0, end).trimEnd()}…`;
}
