import { kept, open, saysNothing, taken, trimmed, unguarded, type Cell } from './cell.ts';

/** Which comes first where a date is written in figures; null while nothing says so. */
export type DayOrder = 'dayFirst' | 'monthFirst' | null;
/** What a season such as 2004/05 is called after, where one year is needed. */
export type SeasonYear = 'first' | 'second';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const two = (value: number): string => String(value).padStart(2, '0');
const LAST = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** ISO day, or undefined where the calendar has none. */
function iso(year: number, month: number, day: number): string | undefined {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const last = month === 2 && !leap ? 28 : (LAST[month - 1] ?? 0);
  return day >= 1 && day <= last ? `${String(year)}-${two(month)}-${two(day)}` : undefined;
}

const FIGURES = /^(\d{1,2})\s?([./-])\s?(\d{1,2})\s?\2\s?(\d{4}|\d{2})$/;
const ISO = /^(\d{4})[-/.](\d{1,2})(?:[-/.](\d{1,2}))?$/;
const DAY_MONTH = /^(\d{1,2})(?:st|nd|rd|th)?[\s.-]*([a-z]{3,9})\.?,?[\s.-]*(\d{4}|\d{2})$/i;
const MONTH_DAY = /^([a-z]{3,9})\.?\s*(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/i;
const MONTH_YEAR = /^([a-z]{3,9})\.?\s*(\d{4})$/i;
/** Figures without a mark, with hyphens for what is not known: 20190403, 201904--, 2019----. */
const PLAIN_FIGURES = /^(\d{4})(\d{2}|--)(\d{2}|--)$/;
/** Day and month alone: 15/4, 15.4., 3 May. */
const NO_YEAR = /^(\d{1,2}(?:st|nd|rd|th)?[\s.-]*[a-z]{3,9}\.?|[a-z]{3,9}\.?\s*\d{1,2}(?:st|nd|rd|th)?|\d{1,2}\s?[/-]\s?\d{1,2}|\d{1,2}\.\s?\d{1,2}\.)$/i;
const DAY_AND_MONTH = /^(\d{1,2})\s?([/-])\s?(\d{1,2})$/;
const WEEKDAY = /^(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)(?:day|nesday|sday|rsday|urday)?\.?,?\s+(?=\S*\d)/i;
const TIME = /[T\s]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:Z|[ap]\.?m\.?)?$/i;
const monthOf = (word: string): number => (/^[a-z]+$/i.test(word) ? MONTHS.indexOf(word.slice(0, 3).toLowerCase()) + 1 : 0);

/** Two figures are a year of the last or of this century: up to 49 of this. */
const century = (text: string): number => (text.length > 2 ? Number(text) : Number(text) + (Number(text) < 50 ? 2000 : 1900));

function day(raw: string, text: string, year: string, month: number, dayNumber: number): Cell<string> {
  const when = iso(century(year), month, dayNumber);
  if (when === undefined) return kept('noSuchDay', raw);
  if (year.length === 2) return taken(when, 'shortYear', raw, when);
  return raw === text ? { value: when } : taken(when, 'spaces', raw, when);
}

/** The day with a year behind it, in the form that it has. */
const dated = (text: string, year: number): string => {
  const mark = /^\d{1,2}\s?([/-])/.exec(text)?.[1] ?? (/^\d{1,2}\.\s?\d/.test(text) ? '' : ' ');
  return `${text}${mark}${String(year)}`;
};

/**
 * A year, month or day as ISO writes it. Days in figures with points are day first, as everywhere where points are written; with strokes
 * or hyphens both orders are possible, and where both give a day neither is taken before somebody says which.
 * @param yearOfRow year of a date that gives none, as notebooks have it beside their year; undefined: such a date is none
 *
 * **Source:** 20190403, 201904--: FAO/Bioversity Multi-Crop Passport Descriptors V.2.1, COLLDATE.
 */
export function dateCell(raw: string, order: DayOrder, yearOfRow?: number): Cell<string> {
  const cell = dayCell(raw, order, yearOfRow);
  const time = TIME.exec(trimmed(unguarded(raw)))?.[0] ?? '';
  // Midnight is what a spreadsheet adds; another time somebody wrote.
  return cell.value !== undefined && !cell.flag && /[1-9]/.test(time) ? taken(cell.value, 'timeLeft', raw, cell.value) : cell;
}

function dayCell(raw: string, order: DayOrder, yearOfRow?: number): Cell<string> {
  const whole = trimmed(unguarded(raw));
  if (whole === '') return {};
  if (saysNothing(whole)) return kept('nothing', raw);
  const text = whole.replace(TIME, '').replace(WEEKDAY, '');
  if (yearOfRow !== undefined && NO_YEAR.test(text)) {
    const { value, flag } = dateCell(dated(text, yearOfRow), order);
    if (value !== undefined) return taken(value, 'rowsYear', raw, value);
    return flag ? { flag: { ...flag, raw } } : kept('notDate', raw);
  }
  const [, plainYear, plainMonth = '', plainDay = ''] = PLAIN_FIGURES.exec(text) ?? [];
  if (plainYear !== undefined && /^(1[5-9]|2\d|3000)/.test(plainYear)) {
    if (plainMonth === '--') return plainDay === '--' ? { value: plainYear } : kept('notDate', raw);
    if (plainDay !== '--') return day(raw, whole, plainYear, Number(plainMonth), Number(plainDay));
    return Number(plainMonth) >= 1 && Number(plainMonth) <= 12 ? { value: `${plainYear}-${plainMonth}` } : kept('noSuchDay', raw);
  }
  if (/^\d{4}$/.test(text)) return { value: text };
  const [, isoYear, isoMonth = '', isoDay] = ISO.exec(text) ?? [];
  if (isoYear !== undefined) {
    const month = Number(isoMonth);
    if (isoDay !== undefined) return day(raw, whole, isoYear, month, Number(isoDay));
    return month >= 1 && month <= 12 ? { value: `${isoYear}-${two(month)}` } : kept('noSuchDay', raw);
  }
  const [, first, mark, second, year = ''] = FIGURES.exec(text) ?? [];
  if (first !== undefined && second !== undefined) {
    const [a, b] = [Number(first), Number(second)];
    const [dayFirst, monthFirst] = [iso(century(year), b, a), iso(century(year), a, b)];
    if (mark === '.' || order === 'dayFirst') return day(raw, whole, year, b, a);
    if (order === 'monthFirst') return day(raw, whole, year, a, b);
    if (dayFirst && monthFirst && dayFirst !== monthFirst) return open('twoDates', raw, dayFirst, monthFirst);
    return dayFirst ? day(raw, whole, year, b, a) : day(raw, whole, year, a, b);
  }
  const [, dayText = '', dayMonth = '', dayYear] = DAY_MONTH.exec(text) ?? [];
  if (dayYear !== undefined && monthOf(dayMonth) > 0) return day(raw, whole, dayYear, monthOf(dayMonth), Number(dayText));
  const [, monthWord = '', monthDay = '', monthDayYear] = MONTH_DAY.exec(text) ?? [];
  if (monthDayYear !== undefined && monthOf(monthWord) > 0) return day(raw, whole, monthDayYear, monthOf(monthWord), Number(monthDay));
  const [, word = '', wordYear] = MONTH_YEAR.exec(text) ?? [];
  if (wordYear !== undefined && monthOf(word) > 0) return { value: `${wordYear}-${two(monthOf(word))}` };
  return kept('notDate', raw);
}

/** Whether a text looks like a date in any of the forms above (a bare year does not count). */
export const looksLikeDate = (raw: string): boolean => {
  const { value, flag } = dateCell(raw, null);
  return (value !== undefined && value.length > 4) || flag?.code === 'twoDates';
};

/** What the dates of a column tell of their order: a figure above 12 can only be the day. Null where none tells, or where they contradict. */
export function guessOrder(cells: readonly string[]): DayOrder {
  const said = new Set<DayOrder>();
  for (const raw of cells) {
    const text = trimmed(unguarded(raw)).replace(TIME, '').replace(WEEKDAY, '');
    const [, first, mark, second] = FIGURES.exec(text) ?? DAY_AND_MONTH.exec(text) ?? [];
    if (first === undefined || second === undefined || mark === '.') continue;
    if (Number(first) > 12 && Number(second) <= 12) said.add('dayFirst');
    if (Number(second) > 12 && Number(first) <= 12) said.add('monthFirst');
  }
  const [only = null] = said;
  return said.size === 1 ? only : null;
}

const SEASON = /^(\d{4}|\d{2})\s?[/–-]\s?(\d{4}|\d{2})$/;

/** First and second year of a season over the turn of a year: “2004/05”, “2004-2005”, “04/05”; undefined for anything else. */
export function seasonYears(text: string): readonly [number, number] | undefined {
  const [, first, second] = SEASON.exec(text) ?? [];
  if (first === undefined || second === undefined) return undefined;
  const from = century(first);
  const to = second.length === 4 ? Number(second) : Math.floor(from / 100) * 100 + Number(second) + (Number(second) === 0 && from % 100 === 99 ? 100 : 0);
  return to === from + 1 ? [from, to] : undefined;
}

/**
 * A year from a year, a date, or a season that is called after one of its two.
 * @param twoFigures whether “98” can only be a year; of a first fruit it could be an age
 */
export function yearCell(raw: string, order: DayOrder, season: SeasonYear, twoFigures = false): Cell<number> {
  const text = trimmed(unguarded(raw));
  if (text === '') return {};
  if (saysNothing(text)) return kept('nothing', raw);
  const bare = text.replace(/^(~|c\.|ca\.?|about)\s*/i, '');
  const years = seasonYears(bare);
  if (years) return taken(season === 'first' ? years[0] : years[1], 'seasonName', raw, String(years[0]), String(years[1]));
  const year = /^(1[5-9]\d\d|2\d\d\d|3000)$/.test(bare) ? Number(bare) : undefined;
  const short = twoFigures ? /^['’]?(\d{2})$/.exec(text)?.[1] : undefined;
  if (short !== undefined) return taken(century(short), 'shortYear', raw, String(century(short)));
  if (year !== undefined) return bare !== text ? taken(year, 'about', raw, bare) : raw === text ? { value: year } : taken(year, 'spaces', raw, text);
  // Either order gives the same year.
  const date = dateCell(raw, order ?? 'dayFirst');
  const other = date.value === undefined ? dateCell(raw, 'monthFirst') : date;
  if (other.value?.length === 4 && Number(other.value) >= 1500) return { value: Number(other.value) };
  if (other.value !== undefined && other.value.length > 4) return taken(Number(other.value.slice(0, 4)), 'dayLeft', raw, other.value.slice(0, 4));
  return kept('notYear', raw);
}
