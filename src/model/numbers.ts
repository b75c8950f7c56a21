import type { Scale } from './fields.ts';

/** What a typed text says: one number, two that it could be, or why it is none. Values are in the document's units (shares 0–1). */
export type Reading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly reason: 'empty' }
  | { readonly ok: false; readonly reason: 'not a number' }
  | { readonly ok: false; readonly reason: 'ambiguous'; readonly readings: readonly [number, number] };

/** A plain decimal, kept as digits so that percent and share differ by a shift of the point and never by a rounding. */
interface Decimal {
  readonly negative: boolean;
  readonly whole: string;
  readonly decimals: string;
}

const NOT_A_NUMBER: Reading = { ok: false, reason: 'not a number' };
/** Blanks and apostrophes that only ever part thousands: space, no-break, figure, thin, narrow no-break, and two apostrophes. */
const GROUP_MARK = "[ \\u00a0\\u2007\\u2009\\u202f'’]";
const GROUPED = new RegExp(`^\\d{1,3}(?:${GROUP_MARK}\\d{3})+$`);
const GROUP_MARKS = new RegExp(GROUP_MARK, 'g');
const VULGAR = new Map([
  ['½', '5'],
  ['¼', '25'],
  ['¾', '75'],
]);

/** How many places the point moves between what is typed and what is kept: a share is typed in percent. */
const shiftOf = (scale: Scale): number => (scale === 'share' ? 2 : 0);

/** Moves the point `by` places to the left (negative: to the right) and returns the nearest double. */
function valueOf({ negative, whole, decimals }: Decimal, by: number): number {
  return Number(`${negative ? '-' : ''}${whole === '' ? '0' : whole}.${decimals === '' ? '0' : decimals}e${String(-by)}`) + 0;
}

/** Returns the digits of a whole part without its thousands marks, or nothing if they stand in the wrong places. */
function ungrouped(text: string): string | undefined {
  if (/^\d*$/.test(text)) return text;
  return GROUPED.test(text) ? text.replace(GROUP_MARKS, '') : undefined;
}

/** Splits at commas and points; the result says what the text can mean, before any shift of the point. */
function decimalsOf(body: string, negative: boolean): Decimal[] {
  const marks: readonly string[] = body.match(/[.,]/g) ?? [];
  const last = Math.max(body.lastIndexOf('.'), body.lastIndexOf(','));
  if (last < 0) {
    const whole = ungrouped(body);
    return whole ? [{ negative, whole, decimals: '' }] : [];
  }
  const before = body.slice(0, last);
  const after = body.slice(last + 1);
  const alone = marks.length === 1;
  const mixed = new Set(marks).size === 2 && marks.indexOf(marks.at(-1) ?? '') === marks.length - 1;
  const asDecimal = (whole: string | undefined): Decimal[] =>
    whole !== undefined && /^\d*$/.test(after) && whole + after !== '' ? [{ negative, whole, decimals: after }] : [];
  if (mixed) return new RegExp('^\\d{1,3}(?:[.,]\\d{3})+$').test(before) ? asDecimal(before.replace(/[.,]/g, '')) : [];
  const thousands = /^\d{1,3}(?:[.,]\d{3})+$/.test(body) && !body.startsWith('0') ? [{ negative, whole: body.replace(/[.,]/g, ''), decimals: '' }] : [];
  return alone ? [...asDecimal(ungrouped(before)), ...thousands] : thousands;
}

/** Reads `8½` and the like as what the half adds; nothing if there is no such sign at the end. */
function withFraction(body: string, negative: boolean): Decimal[] | undefined {
  const decimals = VULGAR.get(body.slice(-1));
  if (decimals === undefined) return undefined;
  const whole = ungrouped(body.slice(0, -1).trim());
  return whole === undefined ? [] : [{ negative, whole, decimals }];
}

/**
 * Reads a number as people type it: comma or point for decimals, blanks or apostrophes between thousands, ½ ¼ ¾, and `%` for a share.
 * “1,500” and “10.000” can be read in two ways and come back as both, the decimal one first; a share is never in thousands, so there it cannot.
 * A bare “½” for a share comes back as ½ % and as a half.
 * @param text what stands in the box
 * @param scale how the number is shown; a share is typed in percent and returned as 0–1
 * @returns the reading in the document's units
 */
export function readNumber(text: string, scale: Scale = 'number'): Reading {
  const trimmed = text.trim();
  if (trimmed === '') return { ok: false, reason: 'empty' };
  const percent = trimmed.endsWith('%');
  if (percent && scale !== 'share') return NOT_A_NUMBER;
  const signed = (percent ? trimmed.slice(0, -1) : trimmed).trim();
  const negative = /^[-−–]/.test(signed);
  const body = signed.replace(/^[-+−–]/, '').trim();
  const shift = shiftOf(scale);
  if (scale === 'share' && !percent && VULGAR.has(body)) {
    const [half] = withFraction(body, negative) ?? [];
    return half ? { ok: false, reason: 'ambiguous', readings: [valueOf(half, shift), valueOf(half, 0)] } : NOT_A_NUMBER;
  }
  const all = withFraction(body, negative) ?? decimalsOf(body, negative);
  const [first, second] = scale === 'share' ? all.slice(0, 1) : all;
  if (!first) return NOT_A_NUMBER;
  const value = valueOf(first, shift);
  if (!Number.isFinite(value)) return NOT_A_NUMBER;
  return second ? { ok: false, reason: 'ambiguous', readings: [value, valueOf(second, shift)] } : { ok: true, value };
}

/** Writes a finite double as plain digits, without an exponent, in the fewest digits that read back as the same double. */
function plainDigits(value: number): Decimal {
  const [, sign = '', whole = '', decimals = '', power = '0'] = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value)) ?? [];
  return moved({ negative: sign === '-', whole, decimals }, Number(power));
}

/** Moves the point `by` places to the right (negative: to the left) on the digits themselves. */
function moved({ negative, whole, decimals }: Decimal, by: number): Decimal {
  const digits = whole + decimals;
  const point = whole.length + by;
  const padded = point < 0 ? '0'.repeat(-point) + digits : digits.padEnd(point, '0');
  const at = Math.max(0, point);
  return { negative, whole: padded.slice(0, at).replace(/^0+(?=\d)/, ''), decimals: padded.slice(at).replace(/0+$/, '') };
}

/**
 * Prints a number as it stands in a box: a share in percent, a point for decimals, no thousands marks, no trailing zeros.
 * The one exception: three decimals get a nought behind them (1.234 → 1.2340), because “1.234” could be read as thousands.
 * @param value in the document's units; must be finite
 * @returns a text that `readNumber` reads back as exactly `value`
 * @throws RangeError for NaN and infinity
 */
export function printNumber(value: number, scale: Scale = 'number'): string {
  if (!Number.isFinite(value)) throw new RangeError(`Not a number that can be printed: ${String(value)}`);
  const { negative, whole, decimals } = moved(plainDigits(value), shiftOf(scale));
  const first = `${negative ? '-' : ''}${whole === '' ? '0' : whole}`;
  if (decimals === '') return first;
  const text = `${first}.${decimals}`;
  return readNumber(text, scale).ok ? text : `${text}0`;
}

/** How a reading is narrowed by what the field allows. */
export interface Allowed {
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
}

/**
 * Returns the step of an arrow key in the document's units: one percent, half a month, one of what is counted;
 * for hours, money and free numbers one of the second digit of where it stands (8 → 0.1, 0.02 → 0.001).
 */
export function stepOf(scale: Scale, whole: boolean, value: number): number {
  if (scale === 'share') return 0.01;
  if (whole || scale === 'years' || scale === 'year' || scale === 'count') return 1;
  if (scale === 'months') return 0.5;
  return value === 0 ? 0.1 : 10 ** (Math.floor(Math.log10(Math.abs(value))) - 1);
}

/** Adds `steps` steps and keeps within the bounds; the sum is rounded to 12 digits, so that 0.1 + 0.2 is 0.3. */
export function stepped(value: number, steps: number, step: number, { min, max }: Allowed): number {
  return Math.min(max, Math.max(min, Number((value + steps * step).toPrecision(12)))) + 0;
}
