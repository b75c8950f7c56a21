import type { GenerationOutlook } from '../../results/outlook.ts';
import { keyText } from '../../text/charts.ts';
import { calendar, type Calendar } from '../calendar.ts';
import { bough, type Bough } from './bough.ts';
import { chanceMark, type ChanceMark } from './chance-mark.ts';

interface KeyWord {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly text: string;
}

export interface KeyLayout {
  /** All on one line, in the lanes' gutters. */
  readonly oneLine: boolean;
  readonly width: number;
  readonly height: number;
  readonly title: { readonly x: number; readonly y: number; readonly text: string } | null;
  readonly bough: Bough;
  readonly y: number;
  readonly ring: { readonly x: number; readonly y: number; readonly r: number };
  readonly proven: { readonly x: number; readonly y: number; readonly r: number; readonly from: number; readonly to: number };
  readonly chance: { readonly x: number; readonly y: number; readonly mark: ChanceMark };
  readonly words: readonly KeyWord[];
}

const ROW = 84;
const MIDDLE = 40;
const FULL = 38;
const SCALE_WIDTH = 198;
/** Widths of the bough and of the words about the proven tree. */
const BOUGH = 332;
const PROVEN = 246;

/** A generation of plain numbers, drawn once in grey: three years of seed and nursery, fruit in the seventh, a pick in the twelfth. */
const exact = (year: number, give: number) => ({ p10: year - give, p50: year, p90: year + give });
const none = { mean: 0, p10: 0, p50: 0, p90: 0 };
const EXAMPLE: GenerationOutlook = {
  id: 'key',
  round: 1,
  name: keyText.name,
  grownFrom: null,
  reached: 1,
  picked: 1,
  firstPollination: exact(0, 0),
  firstSeedling: exact(1, 0.5),
  firstFruit: exact(7, 0.8),
  firstPick: exact(12, 1),
  lastJudged: exact(12.4, 1.6),
  going: [1, 1, 1, 1, 1, 1, 0.99, 0.94, 0.87, 0.8, 0.73, 0.66, 0.58, 0.5, 0.42],
  stages: { flowers: none, fruits: none, seeds: none, seedlings: none, aliveAtGraft: none, fruiting: none, showing: none, kept: none },
};

/** Lays out the key: on one line with the lanes' gutters where there is room, else below one another. */
export function keyLayout({ room, width, left, horizon }: Pick<Calendar, 'room' | 'width' | 'left' | 'horizon'>): KeyLayout {
  const wide = room === 'wide' && horizon >= left + 24 + BOUGH + 32 + PROVEN;
  const boughLeft = wide ? left + 24 : 0;
  const boughWidth = Math.min(BOUGH, width);
  const years = calendar({ startYear: 0, lastYear: 14, width: boughLeft + boughWidth, left: boughLeft, right: 0 });
  const shape = bough(EXAMPLE, 0, years, FULL);
  if (!shape) throw new Error('The key always has a bough.');
  const at = { proven: wide ? boughLeft + boughWidth + 32 : 0, chance: wide ? horizon + 22 : width >= 560 ? 300 : 0 };
  const row = { proven: wide ? 0 : ROW, chance: wide ? 0 : width >= 560 ? ROW : 2 * ROW };
  const y = MIDDLE;
  const middle = at.proven + PROVEN / 2;
  return {
    oneLine: wide,
    width,
    height: Math.max(row.proven, row.chance) + ROW,
    title: wide ? { x: 0, y: y + 6, text: keyText.name } : null,
    bough: shape,
    y,
    ring: { x: years.x(11.5), y, r: 7 },
    proven: { x: middle - 8, y: y + row.proven, r: 9, from: middle - 70, to: middle + 68 },
    chance: {
      x: at.chance,
      y: y + row.chance,
      mark: chanceMark({ chance: { value: 0.6, low: 0.585, high: 0.615 }, guesses: { low: 0.35, high: 0.75 } }, SCALE_WIDTH),
    },
    words: [
      { x: boughLeft, y: y - 26, anchor: 'start', text: keyText.nursery },
      { x: years.x(4.6), y: y + 37, anchor: 'middle', text: keyText.waiting },
      { x: years.x(8.9), y: y - 26, anchor: 'middle', text: keyText.judging },
      { x: years.x(11.7), y: y + 37, anchor: 'middle', text: keyText.pick },
      { x: middle, y: y + row.proven - 26, anchor: 'middle', text: keyText.proven },
      { x: middle, y: y + row.proven + 37, anchor: 'middle', text: keyText.bar },
      { x: at.chance, y: y + row.chance - 26, anchor: 'start', text: keyText.chance },
      { x: at.chance, y: y + row.chance + 37, anchor: 'start', text: keyText.guesses },
    ],
  };
}
