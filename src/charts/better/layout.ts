import { max, min, scaleLinear, ticks } from 'd3';
import type { BetterAnswer } from '../../decisions/better.ts';
import type { BetterPlan } from '../../decisions/better/final.ts';
import { betterText, numberOf } from '../../text/pay-better.ts';
import { apart } from '../apart.ts';
import { boxAt, gap, inset, type Box } from '../boxes.ts';
import type { Letter } from '../letter.ts';
import type { Measure } from '../measure.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A plan's place, and how far its years and seedlings reach, px. */
export interface Cross extends Point {
  readonly id: string;
  readonly mark: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Ring extends Cross {
  readonly number: number;
  /** Another has better means on both, though not clearly. */
  readonly unclear: boolean;
  /** Where its number stands; null where there is no room. */
  readonly label: Point | null;
}

export interface BetterLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: Box;
  readonly years: readonly { readonly x: number; readonly text: string }[];
  readonly trees: readonly { readonly y: number; readonly text: string }[];
  /** x of the end of the last judging year; null where it lies beyond the picture. */
  readonly lastYear: { readonly x: number; readonly text: string } | null;
  readonly seen: readonly (Point & { readonly mark: string })[];
  /** The front as a step line from the top of the soonest to the right edge; empty without one. */
  readonly front: readonly Point[];
  readonly crosses: readonly Cross[];
  readonly rings: readonly Ring[];
  readonly letters: readonly Letter[];
  /** From a letter that was pushed aside to its place. */
  readonly leaders: readonly { readonly from: Point; readonly to: Point }[];
  readonly corner: { readonly x: number; readonly y: number; readonly lines: readonly string[] } | null;
  readonly captions: { readonly years: string; readonly trees: string };
  /** Plans in reading order, from the soonest on, by id. */
  readonly order: readonly string[];
}

export interface BetterOptions {
  readonly width: number;
  readonly measure: Measure;
}

const PHONE = 520;
const TEXT = 17;
const NUMBER = 16;
export const RING = 6.5;

/** Lays out the mean year of the tree (across) against the seedlings raised (up): the lower left is better. */
export function betterLayout(answer: BetterAnswer, { width, measure }: BetterOptions): BetterLayout {
  const { plans, seen, lastYear } = answer;
  const phone = width < PHONE;
  const plot: Box = { left: phone ? 40 : 56, right: width - 14, top: 40, bottom: 40 + (phone ? 340 : Math.min(460, Math.round(width * 0.66))) };
  const places = plans.length > 0 ? plans.map(({ years, trees }) => ({ years: years.value, trees: trees.value })) : seen;
  const from = Math.floor((min(places, ({ years }) => years) ?? lastYear - 10) - 0.6);
  const x = scaleLinear([Math.min(from, lastYear - 2), lastYear + 1.4], [plot.left, plot.right]);
  const y = scaleLinear([0, 1.08 * Math.max(4, max(places, ({ trees }) => trees) ?? 0)], [plot.bottom, plot.top]);
  const inside = (point: Point) => point.x >= plot.left && point.y >= plot.top;
  const cross = ({ id, mark, years, trees }: BetterPlan): Cross => ({
    id,
    mark,
    x: x(years.value),
    y: y(trees.value),
    left: x(years.low),
    right: x(years.high),
    top: y(trees.high),
    bottom: y(trees.low),
  });
  const own = plans.length > 0 ? plans.filter((plan) => plan.own).map(cross) : ownSeen(answer, x, y);
  const letters = apart(own.map(({ id, mark, x: at, y: up }): Letter => ({ plan: id, mark, x: at, y: up, r: phone ? 12 : 14 })));
  const found = plans.filter((plan) => !plan.own);
  const front = stepsOf(plans.filter(({ standing }) => standing === 'front').map(cross), plot);
  const rings = labelled(
    found.map((plan): Ring => ({ ...cross(plan), number: numberOf(plan, plans), unclear: plan.standing === 'noClearDifference', label: null })),
    letters,
    plot,
    measure,
  );
  const yearTicks = ticks(x.domain()[0] ?? from, lastYear, phone ? 4 : 8).filter((year) => Number.isInteger(year));
  const corner = front[0] && front.at(-1) ? cornerAt(front, plot, measure) : null;
  return {
    width,
    height: plot.bottom + 62,
    plot,
    years: yearTicks.map((year) => ({ x: x(year), text: String(year) })),
    trees: y.ticks(phone ? 5 : 6).map((n) => ({ y: y(n), text: String(n) })),
    lastYear: { x: x(lastYear), text: String(lastYear) },
    seen: seen
      .filter((plan) => !plan.own)
      .map((plan) => ({ mark: plan.mark, x: x(plan.years), y: y(plan.trees) }))
      .filter(inside),
    front,
    crosses: plans.map(cross),
    rings,
    letters,
    leaders: letters.flatMap((letter, i) => {
      const place = own[i];
      return place && Math.hypot(place.x - letter.x, place.y - letter.y) > 3 ? [{ from: { x: letter.x, y: letter.y }, to: { x: place.x, y: place.y } }] : [];
    }),
    corner,
    captions: { years: phone ? betterText.yearsShort : betterText.years, trees: betterText.trees },
    order: [...plans].sort((a, b) => a.years.value - b.years.value || a.trees.value - b.trees.value).map(({ id }) => id),
  };
}

type Scale = (value: number) => number;

/** While the search goes on: the user's plans by what was seen of them so far. */
function ownSeen({ seen }: BetterAnswer, x: Scale, y: Scale): readonly Cross[] {
  return seen
    .filter(({ own }) => own)
    .map(({ mark, years, trees }) => ({ id: mark, mark, x: x(years), y: y(trees), left: x(years), right: x(years), top: y(trees), bottom: y(trees) }));
}

/** Down the side of the soonest, then along each plan's height to the next: whatever lies above and to the right is beaten. */
function stepsOf(front: readonly Cross[], plot: Box): readonly Point[] {
  const sorted = [...front].sort((a, b) => a.x - b.x || b.y - a.y);
  const [first] = sorted;
  const last = sorted.at(-1);
  if (!first || !last) return [];
  const steps = sorted.flatMap((point, i): Point[] => {
    const before = sorted[i - 1];
    return before ? [{ x: point.x, y: before.y }, point] : [point];
  });
  return [{ x: first.x, y: plot.top }, ...steps.map(({ x, y }) => ({ x, y })), { x: plot.right, y: last.y }];
}

/** Numbers beside their rings, where they cover nothing else: below and left first, which is the free side of a front. */
function labelled(rings: readonly Ring[], letters: readonly Letter[], plot: Box, measure: Measure): readonly Ring[] {
  const around = (point: Point, r: number) => boxAt(point.x - r, point.y - r, 2 * r, 2 * r);
  const taken: Box[] = [...rings.map((ring) => around(ring, RING + 1)), ...letters.map((letter) => around(letter, letter.r + 2))];
  return rings.map((ring) => {
    const width = measure(String(ring.number), NUMBER, true);
    const tries = [
      [-1, 1],
      [0, 1],
      [-1, 0],
      [1, -1],
      [0, -1],
      [1, 0],
      [1, 1],
      [-1, -1],
    ] as const;
    for (const [right, down] of tries) {
      const reach = right === 0 || down === 0 ? 12 : 9;
      const middle = { x: ring.x + right * (reach + width / 2), y: ring.y + down * (reach + 7) };
      const box = boxAt(middle.x - width / 2, middle.y - 8, width, 16);
      if (inset(box, { ...plot, left: plot.left + 2 }) < 0 || taken.some((other) => other !== box && gap(box, other) < 1)) continue;
      taken.push(box);
      return { ...ring, label: { x: middle.x, y: middle.y + 5.5 } };
    }
    return ring;
  });
}

/** Words in the empty corner below the front, where they fit. */
function cornerAt(front: readonly Point[], plot: Box, measure: Measure): BetterLayout['corner'] {
  const lines = betterText.corner;
  const width = max(lines, (line) => measure(line, TEXT)) ?? 0;
  const box = boxAt(plot.left + 12, plot.bottom - 16 - 21 * lines.length, width, 21 * lines.length + 4);
  const over = front.some((point, i) => {
    const next = front[i + 1];
    return next !== undefined && Math.min(point.x, next.x) < box.right + 14 && Math.max(point.y, next.y) > box.top - 12;
  });
  return over ? null : { x: box.left, y: box.top + 16, lines };
}
