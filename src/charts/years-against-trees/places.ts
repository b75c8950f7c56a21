import { readText, type CloudStep } from '../../text/charts-read.ts';
import type { CloudLayout } from './layout.ts';

/** A place that can be read: a step of a cloud, or the strip of the futures without a tree. */
export interface CloudPlace {
  readonly plan: string;
  readonly mark: string;
  readonly group: string;
  readonly words: string;
  readonly x: number;
  readonly y: number;
  /** Radius of the ring that marks it, px: around the letter where that sits on it. */
  readonly r: number;
  /** Lines that lead from it to the axes; none from a strip. */
  readonly rules: boolean;
}

const AROUND_LETTER = 18.5;
const ALONE = 8;
const STEPS: readonly CloudStep[] = ['tenth', 'half', 'most'];

/** All places in reading order: plan by plan, each from its early futures to those without a tree. */
export function cloudPlaces({ clouds, strips, calendar, y, plot }: CloudLayout, nameOf: (plan: string) => string): CloudPlace[] {
  return clouds.flatMap(({ plan, mark, steps, noTree, failedSeedlings }, index) => {
    const own = { plan, mark, group: plan };
    const name = nameOf(plan);
    const strip = strips[index];
    return [
      ...steps.map(({ year, seedlings }, step): CloudPlace => {
        const words = readText.cloud(name, STEPS[step] ?? 'half', year, seedlings);
        return { ...own, words, x: calendar.x(year), y: y(seedlings), r: STEPS[step] === 'half' ? AROUND_LETTER : ALONE, rules: true };
      }),
      ...(noTree > 0 && strip
        ? [
            {
              ...own,
              words: readText.noTree(name, calendar.lastYear, noTree, failedSeedlings === null ? null : Math.round(failedSeedlings)),
              x: strip.x,
              y: failedSeedlings === null ? plot.bottom : y(failedSeedlings),
              r: ALONE,
              rules: false,
            },
          ]
        : []),
    ];
  });
}
