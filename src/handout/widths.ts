import type { Measure } from '../charts/measure.ts';

/*
 * Widths of letters, thousandths of the font size, so that a sheet can be fitted to its page without a screen and comes out the same
 * everywhere. Source: measured in Chromium (canvas `measureText`, 1000 px) from the fonts that the page bundles; a test measures them again.
 */
const LETTERS = ' !"#$%&\'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~·–—×½±’“”…›é¼¾°';
const WIDTHS = {
  sans: [
    200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497, 497, 497, 497, 497, 497, 497, 497, 249, 249, 497, 497, 497,
    425, 847, 543, 588, 571, 615, 527, 494, 617, 652, 263, 479, 579, 486, 727, 647, 664, 566, 664, 569, 534, 536, 645, 515, 786, 513, 476, 539, 303, 350, 303,
    497, 500, 542, 504, 553, 456, 555, 496, 292, 504, 544, 246, 247, 495, 255, 829, 547, 542, 555, 555, 347, 419, 338, 544, 467, 719, 446, 467, 425, 303, 241,
    303, 497, 249, 480, 800, 497, 808, 497, 249, 426, 426, 948, 271, 496, 781, 796, 331,
  ],
  bold: [
    200, 315, 482, 513, 513, 841, 639, 275, 324, 324, 438, 513, 275, 322, 275, 344, 513, 513, 513, 513, 513, 513, 513, 513, 513, 513, 275, 275, 513, 513, 513,
    444, 875, 558, 597, 576, 625, 538, 510, 628, 663, 282, 494, 597, 502, 745, 657, 674, 582, 674, 592, 545, 546, 655, 536, 800, 541, 501, 540, 324, 344, 324,
    513, 500, 549, 516, 563, 462, 564, 507, 317, 520, 558, 262, 263, 522, 271, 843, 560, 549, 564, 564, 373, 431, 361, 556, 495, 748, 481, 495, 443, 324, 255,
    324, 513, 275, 480, 800, 513, 827, 513, 275, 482, 482, 964, 282, 507, 795, 807, 348,
  ],
  serif: [
    223, 199, 365, 714, 603, 860, 738, 206, 307, 307, 486, 510, 204, 385, 199, 392, 594, 500, 593, 564, 638, 577, 578, 558, 557, 578, 199, 204, 505, 510, 505,
    459, 932, 705, 683, 685, 751, 632, 576, 740, 777, 392, 430, 712, 597, 911, 748, 745, 615, 745, 707, 603, 621, 726, 687, 989, 670, 648, 584, 305, 392, 305,
    526, 405, 136, 535, 599, 505, 613, 526, 345, 547, 636, 321, 310, 588, 314, 943, 642, 565, 609, 602, 472, 470, 366, 604, 521, 782, 550, 520, 502, 310, 245,
    310, 510, 199, 500, 800, 470, 817, 510, 204, 373, 373, 605, 233, 526, 800, 843, 371,
  ],
} as const;

type Face = keyof typeof WIDTHS;

/** Letters of other scripts, thousandths: broad enough for most of them. */
const OTHER = 640;
/** Broad scripts (East Asian) take a whole square. */
const SQUARE = /[\u1100-\u11ff\u2e80-\ua4cf\uac00-\ud7af\uf900-\ufaff\uff00-\uffef]/;
/** Tabular figures are as wide as a nought, and the bold of headlines is broader than what was measured. */
const HEADLINE_BOLD = 1.06;

const places = new Map(Array.from(LETTERS).map((letter, place) => [letter, place]));

function widthOf(letter: string, face: Face): number {
  if (letter === '\u00a0' || letter === '\u2009') return WIDTHS[face][0];
  if (letter === '\u2060') return 0;
  if (face === 'serif' && letter >= '0' && letter <= '9') return 594;
  const place = places.get(letter) ?? places.get(letter.normalize('NFD').charAt(0));
  return (place === undefined ? undefined : WIDTHS[face][place]) ?? (SQUARE.test(letter) ? 1000 : OTHER);
}

const lengthOf = (text: string, face: Face): number => Array.from(text).reduce((sum, letter) => sum + widthOf(letter, face), 0) / 1000;

/** Width of a text in the sheet’s running font, px. */
export const sansMeasure: Measure = (text, size, bold = false) => lengthOf(text, bold ? 'bold' : 'sans') * size;
/** Width of a text in the font of headlines, px. */
export const serifMeasure: Measure = (text, size, bold = false) => lengthOf(text, 'serif') * size * (bold ? HEADLINE_BOLD : 1);
