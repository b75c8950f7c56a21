import { clip, wrap, type Measure } from '../charts/measure.ts';
import { asksText, imprintText, restsText, timelineText } from '../text/handout.ts';
import { clipped } from '../model/problem.ts';
import type { Ask } from './asks.ts';
import type { Paper } from './choices.ts';
import { ledeOf, type Handout } from './handout.ts';
import type { Rest } from './rests.ts';
import { sheetScheme, timelineHeight, type Scheme } from './timeline.ts';
import { sansMeasure, serifMeasure } from './widths.ts';

/** Dots to the millimetre of paper, as style sheets count them: 96 to the inch. */
const PX_PER_MM = 96 / 25.4;
const MARGIN_X_MM = 15;
const MARGIN_Y_MM = 12;

export interface PaperSize {
  /** What a style sheet calls it. */
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** **Source:** ISO 216 (A4); ANSI/ASME Y14.1 (Letter, 8½ × 11 inches). */
export const PAPERS: Readonly<Record<Paper, PaperSize>> = {
  A4: { name: 'A4', widthMm: 210, heightMm: 297 },
  Letter: { name: 'letter', widthMm: 215.9, heightMm: 279.4 },
};

export const margins = `${String(MARGIN_Y_MM)}mm ${String(MARGIN_X_MM)}mm`;
export const roomMm = (paper: Paper): number => PAPERS[paper].heightMm - 2 * MARGIN_Y_MM;
export const roomPx = (paper: Paper): { readonly width: number; readonly height: number } => ({
  width: (PAPERS[paper].widthMm - 2 * MARGIN_X_MM) * PX_PER_MM,
  height: roomMm(paper) * PX_PER_MM,
});

/** Font sizes and heights of lines on paper, px; the style sheet says the same in its own unit. None is below 12 px, which is 9 points. */
export const TYPE = {
  base: 12.5,
  bar: 26,
  headline: { size: 24, line: 28.5, before: 9 },
  lede: { size: 13.5, line: 18.5, before: 6 },
  body: { size: 12.5, line: 16 },
  small: { size: 12, line: 15 },
  section: { height: 24.5 },
  gap: 11,
} as const;
export const COLUMNS = { left: 0.5, gap: 22, when: 78 } as const;
/** Room within a row above and below its words, with its hairline. */
const ROW_PAD = 5;
const REST_PAD = 6.5;
const DOTS = 48;
/** Lines are taken to be so much shorter than they are: browsers round letters to their dots, sizes between whole dots the most. */
const SURE = 0.98;
const SURE_SMALL = 0.99;
/** Beside a value stand its badge and the space between. */
const BADGE = 76;

/** What is shown of what there is to show. */
interface Amount {
  readonly row: number;
  readonly most: number;
  readonly asks: number;
  readonly rests: number;
  readonly sources: number;
  readonly hard: number;
  readonly wanted: number;
  /** Letters of one line of what is asked. */
  readonly letters: number;
}

/** What fits on one sheet. */
export interface Fitted {
  readonly wanted: string;
  readonly hard: string;
  readonly scheme: Scheme;
  readonly asks: readonly Ask[];
  readonly moreAsks: number;
  readonly rests: readonly (Rest & { readonly number: number | null })[];
  readonly moreRests: number;
  readonly sources: string;
  /** Height that it is reckoned to take, px. */
  readonly height: number;
}

const STEPS: readonly Partial<Amount>[] = [
  { row: 25, sources: 6 },
  { row: 23, rests: 12 },
  { row: 22, sources: 5, rests: 11 },
  { rests: 10, sources: 4 },
  { row: 21, rests: 9 },
  { sources: 3, asks: 10 },
  { row: 19, rests: 8 },
  { hard: 4, row: 18, asks: 9 },
  { rests: 7, sources: 2 },
  { row: 17, hard: 3, asks: 8 },
  { most: 5, row: 16 },
  { rests: 6 },
  { row: 15, sources: 1, hard: 2 },
  { most: 4, asks: 7 },
  { rests: 5, wanted: 160 },
  { most: 3, asks: 6 },
  { rests: 4 },
  { most: 2, asks: 5, hard: 1 },
  { rests: 3, asks: 4, wanted: 100, letters: 120 },
  { most: 1, hard: 0, sources: 0 },
  { row: 14, letters: 80 },
  { rests: 2, asks: 3, wanted: 60, letters: 60 },
];
const FULL: Amount = { row: 27, most: 8, asks: 14, rests: 14, sources: 7, hard: 6, wanted: 240, letters: 400 };

const GIVE_BACK: readonly (readonly [keyof Amount, number])[] = [
  ['most', FULL.most],
  ['row', 18],
  ['asks', FULL.asks],
  ['hard', FULL.hard],
  ['rests', 10],
  ['sources', 4],
  ['row', FULL.row],
];

function linesOf(text: string, width: number, size: number, measure: Measure, bold = false): number {
  return text === '' ? 0 : wrap(text, width * (size <= TYPE.small.size ? SURE_SMALL : SURE), size, measure, bold).length;
}

/** Sentences of a text, as many as asked. */
const firstSentences = (text: string, count: number): string =>
  text
    .split(/(?<=\.) (?=\p{Lu})/u)
    .slice(0, count)
    .join(' ');

/** Sources whose notes tell where a number comes from; a guess says what it is by its badge. */
const CITED: ReadonlySet<string> = new Set(['counted', 'published', 'practice', 'remembered']);

/** Numbers the notes of the estimates shown, one number for the same note; and the notes in a row, cut to so many lines. */
function cited(rests: readonly Rest[], width: number, lines: number): { readonly numbered: Fitted['rests']; readonly sources: string } {
  const notes: string[] = [];
  const room = width * SURE * lines * 0.96;
  const said = () => `${restsText.sources}${notes.map((note, at) => `${String(at + 1)}\u00a0${note.replace(/\.?$/, '.')}`).join(' ')}`;
  const numbered = rests.map((entry) => {
    if (entry.note === '' || !CITED.has(entry.source) || lines === 0) return { ...entry, number: null };
    const known = notes.indexOf(entry.note);
    if (known >= 0) return { ...entry, number: known + 1 };
    // A note that would not be read to its middle is better not begun.
    if (sansMeasure(said(), TYPE.small.size) > room - width * 0.5) return { ...entry, number: null };
    notes.push(entry.note);
    return { ...entry, number: notes.length };
  });
  // A last note that is too long ends with a whole sentence where one fits.
  const sentences = (notes.at(-1) ?? '').split(/(?<=\.) /);
  while (sentences.length > 1 && sansMeasure(said(), TYPE.small.size) > room) {
    sentences.pop();
    notes.splice(-1, 1, sentences.join(' '));
  }
  return { numbered, sources: notes.length === 0 ? '' : clip(said(), room, TYPE.small.size, sansMeasure) };
}

/** Reckoned as if all were bold, as its first words are. */
function rowHeight(words: string, width: number): number {
  return linesOf(words, width, TYPE.body.size, sansMeasure, true) * TYPE.body.line + ROW_PAD;
}

/** A value stands on one line; what is longer than this is cut, px. */
const LONGEST_VALUE = 170;

function restHeight({ label, value }: Rest, width: number): number {
  const room = width - BADGE - sansMeasure(value, TYPE.body.size) - 16;
  return linesOf(label, room, TYPE.body.size, sansMeasure) * TYPE.body.line + REST_PAD;
}

/** Headings may take two lines. */
const headingHeight = (words: string, width: number): number => TYPE.section.height + (linesOf(words, width, 15.5, serifMeasure, true) - 1) * 18.6;

const sum = (heights: readonly number[]): number => heights.reduce((all, height) => all + height, 0);

/** The last words of the sheet, without what is markup in them. */
function footText({ imprint: { futures, rerun, link, anew, file }, example }: Handout): string {
  const opened = link === null ? '' : `${imprintText.open} ${imprintText.address(link.replace(/#.*$/s, ''))}. `;
  return `${example ? imprintText.invented : ''} ${futures} ${rerun} ${opened}${imprintText.file(file)} ${anew ? imprintText.anew : ''}`;
}

function attempt(handout: Handout, amount: Amount): Fitted {
  const { width } = roomPx(handout.paper);
  const left = (width - COLUMNS.gap) * COLUMNS.left;
  const right = width - COLUMNS.gap - left;
  const { small, body, lede, headline, section, gap } = TYPE;
  const wanted = clip(handout.headline.wanted, amount.wanted * headline.size * 0.5, headline.size, serifMeasure);
  const hard = firstSentences(handout.hard, amount.hard);
  const scheme = sheetScheme(width, amount.row, amount.most);
  const asks = handout.asks
    .slice(0, amount.asks)
    .map((ask) => ({ ...ask, who: clipped(ask.who, amount.letters / 2), what: clipped(ask.what, amount.letters) }));
  const shown = handout.rests.slice(0, amount.rests).map((entry) => ({ ...entry, value: clip(entry.value, LONGEST_VALUE, body.size, sansMeasure) }));
  const { numbered, sources } = cited(shown, left, amount.sources);
  const moreAsks = handout.asks.length - asks.length;
  const moreRests = handout.rests.length - shown.length;

  const flat = (pieces: readonly { readonly text: string }[]) => pieces.map(({ text }) => text).join('');
  // A line too many in large letters costs more than it would be worth to know it to the letter.
  const h1 = sum([wanted, flat(handout.headline.answer)].map((words) => linesOf(words, width * 0.95, headline.size, serifMeasure)));
  const top =
    TYPE.bar +
    headline.before +
    h1 * headline.line +
    lede.before +
    linesOf(ledeOf(handout.said), width, lede.size, sansMeasure) * lede.line +
    (hard === '' ? 0 : 4 + linesOf(hard, width - 90, body.size, sansMeasure) * 17);
  const picture = gap + timelineHeight(handout.plans, scheme) + 4 + linesOf(timelineText.key, width, small.size, sansMeasure) * small.line;
  const leftHeight =
    headingHeight(handout.plans.length === 1 ? asksText.titleOnly : asksText.title(handout.lead.mark, handout.lead.name), left) +
    sum(asks.map(({ who, what }) => rowHeight(`${who}: ${what}`, left - COLUMNS.when))) +
    (moreAsks > 0 ? 21 : 0) +
    gap +
    linesOf(handout.tally, left, small.size, sansMeasure) * small.line +
    linesOf(sources, left, small.size, sansMeasure) * small.line;
  const rightHeight =
    section.height +
    linesOf(handout.nothing, right, body.size, sansMeasure, true) * body.line +
    4 +
    DOTS +
    handout.futures.length * body.line +
    14 +
    section.height +
    sum(shown.map((entry) => restHeight(entry, right))) +
    (moreRests > 0 ? 21 : 0);
  const care = gap + 5 + linesOf(`Take care. ${handout.cautions.join(' ')}`, width, small.size, sansMeasure) * small.line;
  const foot = gap - 4 + linesOf(footText(handout), width, small.size, sansMeasure) * small.line + 6;
  const height = top + picture + gap + Math.max(leftHeight, rightHeight) + care + foot;
  return { wanted, hard, scheme, asks, moreAsks, rests: numbered, moreRests, sources, height };
}

/** Takes away what matters least until the rest fits on one sheet of the paper chosen. Cautions, chances and the imprint always stay. */
export function fitted(handout: Handout): Fitted {
  const { height } = roomPx(handout.paper);
  let amount = FULL;
  let best = attempt(handout, amount);
  for (const step of STEPS) {
    if (best.height <= height) break;
    amount = { ...amount, ...step };
    best = attempt(handout, amount);
  }
  // The steps are coarse: what is left over goes back to what was cut, the picture's rows first.
  for (const [key, most] of GIVE_BACK) {
    for (let more = amount[key] + 1; more <= most; more += 1) {
      const larger = attempt(handout, { ...amount, [key]: more });
      if (larger.height > height) break;
      amount = { ...amount, [key]: more };
      best = larger;
    }
  }
  return best;
}
