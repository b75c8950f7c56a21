import { scaleLinear } from 'd3';

/** Phone: labels above the boughs. Middle and wide: gutters beside the years. */
export type Room = 'phone' | 'middle' | 'wide';

/** Widths of the picture, px, from which each room begins. */
export const roomFor = (width: number): Room => (width < 640 ? 'phone' : width < 900 ? 'middle' : 'wide');

const GUTTERS: Readonly<Record<Room, { left: number; right: number }>> = {
  phone: { left: 0, right: 6 },
  middle: { left: 158, right: 226 },
  wide: { left: 176, right: 250 },
};

export interface Tick {
  readonly year: number;
  readonly x: number;
}

export interface Calendar {
  readonly room: Room;
  readonly width: number;
  /** px of the first and last point of the drawing space. */
  readonly left: number;
  readonly right: number;
  readonly firstYear: number;
  readonly lastYear: number;
  /** px of the end of the last judging year. */
  readonly horizon: number;
  /** Years written on top; the last judging year is not among them. */
  readonly ticks: readonly Tick[];
  /** px of a year: its middle. The end of a year is at year + ½. */
  readonly x: (year: number) => number;
  /** The year, with its fraction, at a px. */
  readonly yearAt: (x: number) => number;
}

export interface CalendarOptions {
  readonly startYear: number;
  readonly lastYear: number;
  /** Width of the whole picture, px. */
  readonly width: number;
  /** First year drawn, where the empty years before it are dropped; the picture must say so. */
  readonly from?: number;
  readonly left?: number;
  readonly right?: number;
}

/** Least width of the years, px, however narrow the picture. */
const LEAST_YEARS = 60;
/** Room a written year needs, px, with the space beside it. */
const YEAR_ROOM = 58;

/** The one scale of calendar years that every picture of a page shares. */
export function calendar({ startYear, lastYear, width, from = startYear, ...gutter }: CalendarOptions): Calendar {
  const room = roomFor(width);
  const left = gutter.left ?? GUTTERS[room].left;
  const right = Math.max(left + LEAST_YEARS, width - (gutter.right ?? GUTTERS[room].right));
  const scale = scaleLinear([from - 0.45, lastYear + (room === 'phone' ? 0.5 : 1)], [left, right]);
  const x = (year: number) => scale(year);
  return {
    room,
    width,
    left,
    right,
    firstYear: from,
    lastYear,
    horizon: x(lastYear + 0.5),
    ticks: ticksOf(x, from, lastYear, room),
    x,
    yearAt: (at) => scale.invert(at),
  };
}

function ticksOf(x: (year: number) => number, from: number, last: number, room: Room): Tick[] {
  const perYear = x(from + 1) - x(from);
  const step = [1, 2, 5, 10, 20, 50].find((years) => years * perYear >= YEAR_ROOM) ?? 100;
  // The last year's own number ends at the horizon rule, so it reaches further left than one centred on its year.
  const free = x(last + 0.5) - 1.5 * YEAR_ROOM + 12;
  const years: number[] = [];
  for (let year = Math.ceil(from / step) * step; x(year) <= free; year += step) years.push(year);
  if (room !== 'phone' && years[0] !== from && (years[0] === undefined || x(years[0]) - x(from) >= YEAR_ROOM - 8)) years.unshift(from);
  return years.filter((year) => x(year) >= (room === 'phone' ? YEAR_ROOM / 2 - 10 : 0)).map((year) => ({ year, x: x(year) }));
}
